import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";

/** What the program reads, and what only tests hold it against. */
const ROOTS = ["../../../src/standards/", "../../reference/"].map((path) => new URL(path, import.meta.url));
const MODULES = ROOTS.flatMap((root) =>
  readdirSync(root, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap((folder) => readdirSync(new URL(`${folder.name}/`, root)).map((file) => `${folder.name}/${file}`))
    .map((name): [name: string, href: string] => [name, new URL(name, root).href]),
);

interface Row {
  readonly source: string;
  readonly confidence: string;
}

/** Every object in a value that names a source, wherever it stands. */
function sourcedRows(value: unknown): Row[] {
  if (typeof value !== "object" || value === null) return [];
  const own = "source" in value && "confidence" in value ? [value as Row] : [];
  return [...own, ...Object.values(value).flatMap(sourcedRows)];
}

/** Rows of a table or list: what has to carry a source. */
function listed(value: unknown): unknown[] {
  if (Array.isArray(value)) return value.flatMap((item) => (typeof item === "object" ? [item] : []));
  if (typeof value !== "object" || value === null) return [];
  return "rows" in value
    ? listed(value.rows)
    : Object.values(value).flatMap((item) => (Array.isArray(item) ? item : []));
}

/** Tables, and whatever else names an edition, at any depth. */
function titled(value: unknown): unknown[] {
  if (typeof value !== "object" || value === null) return [];
  const own = "rows" in value || "edition" in value ? [value] : [];
  return [...own, ...Object.values(value).flatMap(titled)];
}

describe("every row says where it comes from", () => {
  it("finds one folder a publication and edition", () => {
    expect(MODULES.length).toBeGreaterThan(40);
    const names = MODULES.map(([name]) => name);
    expect(names).toContain("aisc-360-22/base-plate-holes.ts");
    expect(names).toContain("plate-weights/weights.ts");
  });

  it.each(MODULES)("%s", async (_name, href) => {
    const exports: Record<string, unknown> = await import(href);
    const rows = sourcedRows(exports);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row.source.length).toBeGreaterThan(2);
      expect(row.confidence.length).toBeGreaterThan(2);
    }
    for (const row of Object.values(exports).flatMap(listed)) {
      expect(row).toMatchObject({ source: expect.any(String), confidence: expect.any(String) });
    }
    for (const row of rows) {
      if (row.source.startsWith("from memory")) expect(row.confidence).toMatch(/from memory/);
      if (row.source === "common practice") expect(row.confidence).toBe("common practice");
    }
  });

  it.each(MODULES)("%s: tables and single values carry edition and clause", async (_name, href) => {
    const exports: Record<string, unknown> = await import(href);
    for (const value of Object.values(exports).flatMap(titled)) {
      expect(value).toMatchObject({ edition: expect.stringMatching(/\S/), clause: expect.stringMatching(/\S/) });
    }
  });

  it("finds tables and single values", async () => {
    const titles = await Promise.all(
      MODULES.map(async ([, href]) => Object.values(await import(href)).flatMap(titled).length),
    );
    expect(titles.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(50);
  });
});

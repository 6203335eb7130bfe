import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";

const ROOT = new URL("../../../src/standards/", import.meta.url);
const MODULES = readdirSync(ROOT, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .flatMap((folder) => readdirSync(new URL(`${folder.name}/`, ROOT)).map((file) => `${folder.name}/${file}`));

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

describe("every row says where it comes from", () => {
  it("finds one folder a publication and edition", () => {
    expect(MODULES.length).toBeGreaterThan(40);
    expect(MODULES).toContain("aisc-360-22/base-plate-holes.ts");
  });

  it.each(MODULES)("%s", async (file) => {
    const exports: Record<string, unknown> = await import(new URL(file, ROOT).href);
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

  it.each(MODULES)("%s: tables carry edition and clause", async (file) => {
    const exports: Record<string, unknown> = await import(new URL(file, ROOT).href);
    for (const value of Object.values(exports)) {
      if (typeof value !== "object" || value === null || !("rows" in value)) continue;
      expect(value).toMatchObject({ edition: expect.stringMatching(/\S/), clause: expect.stringMatching(/\S/) });
    }
  });
});

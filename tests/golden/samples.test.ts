/**
 * Each sample's package, byte for byte, and its spreadsheet twins. A mismatch writes `NAME.changed` beside the golden;
 * `npm run samples` renews all goldens, to be reviewed as a diff.
 */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Summary } from "../../src/summary/model.js";
import { builtPackage } from "./package.js";

const samples = fileURLToPath(new URL("../../samples", import.meta.url));
const names = readdirSync(samples).filter((name) => statSync(join(samples, name)).isDirectory());

/** Files that are no text are not kept, but for the set: `summary.json`, which is, has the hash of each. */
const isKept = (path: string): boolean => /_set\.pdf$|\.(svg|csv|dxf|json|txt|yaml)$/.test(path);

function listFiles(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(folder, name)).isFile() && !name.endsWith(".changed"))
    .map((name) => relative(".", name))
    .sort();
}

/** What says all that a job says: the rest of a package is made of the same values, and what lists files of these. */
const TWIN_KINDS = [
  ...([
    "cut-joined",
    "cut-r12",
    "drill-list",
    "sheet-svg",
    "piece-sheet-svg",
    "setting-sheet-svg",
    "plan-svg",
  ] as const),
  ...([
    "setting-out-csv",
    "setting-out-bare-csv",
    "check-distances-csv",
    "plan-dxf",
    "cut-list-csv",
    "rod-lists-csv",
    "quote-csv",
  ] as const),
  ...(["letter-text", "question-register-json", "ledger", "questions"] as const),
];

describe("samples", () => {
  it("are three jobs or more", () => {
    expect(names.length).toBeGreaterThanOrEqual(3);
  });

  it.each(names)("%s gives its expected package, byte for byte", async (name) => {
    const expected = join(samples, name, "expected");
    const files = await builtPackage(join(samples, name), "job.yaml");
    const changed: string[] = [];
    for (const [path, bytes] of files) {
      if (!isKept(path)) continue;
      const golden = join(expected, path);
      if (existsSync(golden) && Buffer.compare(readFileSync(golden), bytes) === 0) continue;
      changed.push(path);
      if (existsSync(golden)) writeFileSync(`${golden}.changed`, bytes);
    }
    expect(changed).toEqual([]);
    expect([...files.keys()].filter(isKept).sort()).toEqual(listFiles(expected));
  });

  it.each(names.flatMap((name) => ["job-csv.yaml", "job-xlsx.yaml"].map((twin) => [name, twin] as const)))(
    "%s as %s gives the same files",
    async (name, twin) => {
      const folder = join(samples, name);
      const fromTwin = await builtPackage(folder, twin, TWIN_KINDS);
      const kinds: ReadonlySet<string> = new Set(TWIN_KINDS);
      const fromYaml = await builtPackage(folder, "job.yaml");
      const { bases, files }: Summary = JSON.parse(String(fromYaml.get("summary.json")));
      const listed = [...bases.flatMap((base) => base.files), ...files].filter(({ kind }) => kinds.has(kind));
      expect([...fromTwin.keys()].sort()).toEqual([...new Set(listed.map(({ path }) => path))].sort());
      for (const [path, bytes] of fromTwin)
        expect(Buffer.compare(fromYaml.get(path) ?? Buffer.alloc(0), bytes), path).toBe(0);
    },
  );
});

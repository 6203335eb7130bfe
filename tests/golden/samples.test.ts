/**
 * Each sample's package, byte for byte, and its spreadsheet twins. A mismatch writes `NAME.changed` beside the golden;
 * `npm run samples` renews all goldens, to be reviewed as a diff.
 */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
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
    "%s as %s gives the same package",
    async (name, twin) => {
      const folder = join(samples, name);
      const [fromYaml, fromTwin] = [await builtPackage(folder, "job.yaml"), await builtPackage(folder, twin)];
      expect([...fromTwin.keys()]).toEqual([...fromYaml.keys()]);
      for (const [path, bytes] of fromYaml)
        expect(Buffer.compare(fromTwin.get(path) ?? Buffer.alloc(0), bytes), path).toBe(0);
    },
  );
});

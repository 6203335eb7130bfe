/** Defaults and kinds as a user meets them: the package is that of the job written out, but for who gave what. Invented data. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { filesIn, newFolder, runProgram } from "./program.js";

const HEAD =
  'job: { number: "7", title: Once for all, revision: A, status: released, date: 2026-11-24 }\nunits: in\nrules: us\nshop: plasma\n';

/** A hole that departs from its table, a washer for all, rods of a kind: what notes and sheets print of a value's origin. */
const WITH_LAYERS = `${HEAD}
defaults:
  rods: { grade: 36, finish: plain, torqued: no, projection: 8, embedment: 18 }
  basePlate: { thickness: 1, washer: { shape: square, size: 3, thickness: 3/8 } }
  concrete: { x: 24, y: 24, exposure: exposed }
  grout: 1-1/2
  levelling: nuts
  template: { thickness: 1/4, support: bearers, hole: 1-1/8, height: 3 }
kinds:
  heavy: { rods: { grade: 105, finish: galvanized }, concrete: { diameter: 40 }, template: { hole: ~, thickness: 3/8 } }
bases:
  - { mark: B1, quantity: 4, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 12 }, basePlate: { x: 18, y: 18, hole: 1-13/16 } }
  - { mark: B2, kind: heavy, rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 14, y: 10 }, basePlate: { x: 20, y: 16 } }
  - { mark: B3, grout: ~, groups: [{ rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 8 } }, { rods: { diameter: 3/4 }, pattern: { kind: points, at: [[0, 0]] }, hole: 13/16 }] }
`;

const WRITTEN_OUT = `${HEAD}
bases:
  - mark: B1
    quantity: 4
    rods: { diameter: 1, grade: 36, finish: plain, torqued: no, projection: 8, embedment: 18 }
    pattern: { kind: rectangle, x: 12, y: 12 }
    basePlate: { x: 18, y: 18, hole: 1-13/16, thickness: 1, washer: { shape: square, size: 3, thickness: 3/8 } }
    concrete: { x: 24, y: 24, exposure: exposed }
    grout: 1-1/2
    levelling: nuts
    template: { thickness: 1/4, support: bearers, hole: 1-1/8, height: 3 }
  - mark: B2
    rods: { diameter: 1-1/4, grade: 105, finish: galvanized, torqued: no, projection: 8, embedment: 18 }
    pattern: { kind: rectangle, x: 14, y: 10 }
    basePlate: { x: 20, y: 16, thickness: 1, washer: { shape: square, size: 3, thickness: 3/8 } }
    concrete: { diameter: 40, exposure: exposed }
    grout: 1-1/2
    levelling: nuts
    template: { thickness: 3/8, support: bearers, height: 3 }
  - mark: B3
    groups:
      - rods: { diameter: 1, grade: 36, finish: plain, torqued: no, projection: 8, embedment: 18 }
        pattern: { kind: rectangle, x: 12, y: 8 }
      - rods: { diameter: 3/4, grade: 36, finish: plain, torqued: no, projection: 8, embedment: 18 }
        pattern: { kind: points, at: [[0, 0]] }
        hole: 13/16
    basePlate: { thickness: 1, washer: { shape: square, size: 3, thickness: 3/8 } }
    concrete: { x: 24, y: 24, exposure: exposed }
    levelling: nuts
    template: { thickness: 1/4, support: bearers, hole: 1-1/8, height: 3 }
`;

async function makePackage(job: string): Promise<ReadonlyMap<string, string>> {
  const folder = newFolder();
  writeFileSync(join(folder, "job.yaml"), job);
  const ran = await runProgram(folder, ["make", "job.yaml", "--out", "out"]);
  expect([ran.status === 0 || ran.status === 1, ran.stderr]).toEqual([true, expect.not.stringContaining("fault")]);
  return new Map(filesIn(join(folder, "out")).map((name) => [name, readFileSync(join(folder, "out", name), "latin1")]));
}

const withoutLast = (csv: string): string => csv.replace(/,(?:"[^"\n]*"|[^,"\r\n]*)\r$/gm, "");
/** The ledger, and what names its hash. */
const WITH_ITS_HASH = ["7_rev-A_set.pdf", "START-HERE.txt", "engineer/7_rev-A_checking.pdf", "engineer/ledger.csv"];
const withoutKindAndLedger = (json: string): string =>
  json
    .replace(/"kind":"heavy",/, "")
    .split("\n")
    .filter((line) => !WITH_ITS_HASH.some((path) => line.includes(`"path":"${path}"`)) && !line.includes('"seal"'))
    .join("\n");

describe("the same job with defaults and kinds, and written out", () => {
  it("gives the same package but for the ledger's last column and the kind in the summary", async () => {
    const [layers, whole] = [await makePackage(WITH_LAYERS), await makePackage(WRITTEN_OUT)];
    expect([...layers.keys()]).toEqual([...whole.keys()]);
    const differing = [...layers].filter(([name, bytes]) => whole.get(name) !== bytes).map(([name]) => name);
    expect(differing.sort()).toEqual([...WITH_ITS_HASH, "summary.json"]);
    const [ledger = "", other = ""] = [layers.get("engineer/ledger.csv"), whole.get("engineer/ledger.csv")];
    expect(withoutLast(ledger)).toBe(withoutLast(other));
    const [summary = "", plain = ""] = [layers.get("summary.json"), whole.get("summary.json")];
    expect(withoutKindAndLedger(summary)).toBe(withoutKindAndLedger(plain));
    expect(JSON.parse(summary).bases.map(({ kind }: { kind?: string }) => kind)).toEqual([
      undefined,
      "heavy",
      undefined,
    ]);
  });

  it("says in the ledger who gave what each rule takes, in one way whatever the order of the keys", async () => {
    const ledger = (await makePackage(WITH_LAYERS)).get("engineer/ledger.csv") ?? "";
    const givers = (base: string, rule: string) =>
      new Set(
        ledger
          .split("\n")
          .flatMap((line) =>
            line.startsWith(`${base},${base},`) && line.includes(`,${rule},`)
              ? [/,([^,"\n]*|"[^"\n]*")$/.exec(line.trimEnd())?.[1]]
              : [],
          ),
      );
    expect([...givers("B1", "washer-cover")]).toEqual(["row; default: basePlate.washer"]);
    expect([...givers("B2", "rod-grade")]).toEqual(['"row; kind heavy: rods.finish, rods.grade"']);
    expect([...givers("B1", "rod-count")]).toEqual(["row"]);
    expect([...givers("B2", "template-hole")]).toEqual(['"row; kind heavy: rods.finish, template.thickness"']);
    expect([...givers("B3", "rod-play")]).toEqual(["row; default: template.hole"]);
  });

  it("says so on the terminal where every row is asked for", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "job.yaml"), WITH_LAYERS);
    const all = await runProgram(folder, ["check", "job.yaml", "--all"], { terminal: 300 });
    expect(all.stdout).toContain("; given by row; default: basePlate.washer");
    const short = await runProgram(folder, ["check", "job.yaml"], { terminal: 300 });
    expect(short.stdout).not.toContain("given by");
  });
});

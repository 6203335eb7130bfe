/** A package laid out and named as earlier programs did: compared, made over, proved. Invented data. */
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { filesIn, givePackage, newFolder, packageFaults, runProgram, writeJob } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string) => runProgram(folder, text.split(" "));
const give = (make: string) => givePackage(folder, make.split(" "));

interface Listed {
  path: string;
  kind: string;
}

interface Told {
  readonly sealed?: boolean;
  readonly seal?: string;
  bases: { mark: string; template: Record<string, unknown>; files: Listed[] }[];
  files: Listed[];
}

const KEPT = new Set(["ledger", "questions", "sheet-set-pdf"]);

/** Puts a package back into a folder a base, with the names and the summary of earlier programs. */
/** Files of a base that an earlier package had. */
const OLD_KINDS: ReadonlySet<string> = new Set(["cut-joined", "cut-r12", "sheet-svg"]);

function ageFolder(name: string): void {
  const out = join(folder, name);
  const told: Told = JSON.parse(readFileSync(join(out, "summary.json"), "utf8"));
  const move = (file: Listed, to: string) => {
    mkdirSync(dirname(join(out, to)), { recursive: true });
    renameSync(join(out, file.path), join(out, to));
    file.path = to;
  };
  for (const { mark, template, files } of told.bases) {
    for (const key of ["material", "grade", "scribeLength"]) delete template[key];
    for (const file of files.filter(({ kind }) => !OLD_KINDS.has(kind))) rmSync(join(out, file.path));
    files.splice(0, files.length, ...files.filter(({ kind }) => OLD_KINDS.has(kind)));
    for (const file of files) {
      const ending = { "cut-joined": "joined.dxf", "cut-r12": "r12.dxf" }[file.kind] ?? "sheet.svg";
      move(file, `${mark}/${mark}_rev-A_${ending}`);
    }
  }
  for (const file of told.files.filter(({ kind }) => !KEPT.has(kind))) rmSync(join(out, file.path));
  told.files = told.files.filter(({ kind }) => KEPT.has(kind));
  for (const file of told.files) move(file, file.path.split("/").at(-1) ?? "");
  for (const old of ["cut", "sheets", "rods", "engineer", "field", "machine"])
    rmSync(join(out, old), { recursive: true, force: true });
  const { sealed: _sealed, seal: _seal, ...unsealed } = told;
  writeFileSync(join(out, "summary.json"), JSON.stringify(unsealed, null, 2));
}

describe("a package of an earlier layout", () => {
  beforeEach(async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out old");
    ageFolder("old");
    expect(filesIn(join(folder, "old"))).toContain("B1/B1_rev-A_joined.dxf");
    expect(packageFaults(join(folder, "old"))).toEqual([]);
  });

  it("is the same plates as the package of today, whatever its files are called", async () => {
    await give("make job.yaml --out new");
    for (const sides of ["old new", "old job.yaml", "new old"]) {
      const compared = await run(`compare ${sides}`);
      expect([compared.status, compared.stderr]).toEqual([0, ""]);
      expect(compared.stdout).toContain("2 templates: 2 unchanged.\n");
    }
  });

  it("is proved as it stands", async () => {
    expect((await run("proof old --against job.yaml")).status).toBe(0);
  });

  it("is replaced by the same revision, file by file, and leaves no folder of its own", async () => {
    const made = await run("make job.yaml --out old");
    expect([made.status, made.stderr]).toEqual([0, ""]);
    expect(packageFaults(join(folder, "old"))).toEqual([]);
    expect(filesIn(join(folder, "old")).filter((path) => /^B\d\/|superseded/.test(path))).toEqual([]);
  });

  it("is kept whole under another revision, and what is to be cut again is told from it", async () => {
    const before = filesIn(join(folder, "old"));
    writeJob(folder, "job.yaml", { revision: "B" });
    const text = readFileSync(join(folder, "job.yaml"), "utf8").replace("x: 8, y: 8", "x: 8-1/2, y: 8");
    writeFileSync(join(folder, "job.yaml"), text);
    const made = await run("make job.yaml --out old");
    expect(made.stdout).toMatch(/CUT AGAIN: B1/);
    const kept = filesIn(join(folder, "old")).filter((path) => path.startsWith("superseded/"));
    expect(kept).toEqual(before.map((path) => `superseded/rev-A/${path}`).sort());
    expect(packageFaults(join(folder, "old"))).toEqual([]);
  });
});

describe("names of files", () => {
  it("that the shop names otherwise, or that carry another grade, are no other plates but where the grade is", async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out first");
    const job = readFileSync(join(folder, "job.yaml"), "utf8");
    const shop = readFileSync(new URL("../../templates/shops/plasma.yaml", import.meta.url), "utf8");
    writeFileSync(
      join(folder, "my.yaml"),
      shop
        .replace(/^ {2}flavour: .*\n/m, "")
        .replace(/^( {2}origin: lower left.*)$/m, "$1\n  name: [thickness, mark]\n  flavour: lines"),
    );
    writeFileSync(join(folder, "job.yaml"), job.replace("shop: plasma", "shop: ./my.yaml"));
    await give("make job.yaml --out second");
    expect(filesIn(join(folder, "second")).filter((path) => path.endsWith(".dxf"))).toEqual([
      "cut/PL1-4_B1.dxf",
      "cut/PL1-4_B2.dxf",
      "cut/polyline/PL1-4_B1_polyline.dxf",
      "cut/polyline/PL1-4_B2_polyline.dxf",
    ]);
    expect((await run("compare first second")).stdout).toContain("2 templates: 2 unchanged.\n");
    writeFileSync(
      join(folder, "job.yaml"),
      job.replace("bases:\n", "defaults: { template: { grade: A36 } }\nbases:\n"),
    );
    const named = await run("compare first job.yaml");
    expect([named.status, named.stdout.includes("2 templates: 2 unchanged.")]).toEqual([0, true]);
    await give("make job.yaml --out third");
    writeFileSync(
      join(folder, "job.yaml"),
      job.replace("bases:\n", "defaults: { template: { grade: S235JR } }\nbases:\n"),
    );
    const other = await run("compare third job.yaml");
    expect(other.status).toBe(1);
    expect(other.stdout).toContain("material grade A36 -> S235JR");
  });
});

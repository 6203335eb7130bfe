/** `rodplate compare` as a user runs it: jobs, packages, damage, exit codes, machine form. */
import { appendFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { filesIn, givePackage, newFolder, readSummary, runProgram, writeJob } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string) => runProgram(folder, text.split(" "));
const give = (make: string) => givePackage(folder, make.split(" "));

/** Writes `to` as `from` with one text put for another. */
function change(from: string, to: string, text: string | RegExp, by: string): void {
  const before = readFileSync(join(folder, from), "utf8");
  const after = before.replace(text, by);
  expect(after).not.toBe(before);
  writeFileSync(join(folder, to), after);
}

describe("exit codes", () => {
  it("0: a job and its own package are the same, whichever comes first", async () => {
    writeJob(folder, "job.yaml");
    expect((await give("make job.yaml --out out")).status).toBe(0);
    const before = filesIn(folder);
    for (const [old, fresh] of [
      ["job.yaml", "out"],
      ["out", "job.yaml"],
      ["out/summary.json", "out"],
      ["job.yaml", "job.yaml"],
    ]) {
      const compared = await run(`compare ${old} ${fresh}`);
      expect([compared.status, compared.stderr]).toEqual([0, ""]);
      expect(compared.stdout).toContain("2 templates: 2 unchanged.\n");
    }
    expect(filesIn(folder)).toEqual(before);
  });

  it("1: a moved hole of a template that is cut already, told with tag and way, the worst first", async () => {
    writeJob(folder, "job.yaml");
    expect((await give("make job.yaml --out out")).status).toBe(0);
    const points = "kind: points, at: [[-4.5, 4], [4.5, 4], [4.5625, -4], [-4.5, -4]]";
    change("job.yaml", "new.yaml", "kind: rectangle, x: 9, y: 8", points);
    const compared = await run("compare out new.yaml");
    expect(compared.status).toBe(1);
    expect(compared.stdout).toMatch(
      /^RECUT .*\n {2}B2 {2}base B2, 2 off {2}hole A3 moved 1\/16 in \(x \+1\/16, y 0\)$/m,
    );
    expect(compared.stdout.indexOf("RECUT")).toBeLessThan(compared.stdout.indexOf("UNCHANGED"));
    expect(compared.stdout).toContain("To cut again: 2 plates.");
    expect(compared.stdout).not.toContain("\u001b");
  });

  it("0: a revision letter alone is marks only, and says that it is no recut", async () => {
    writeJob(folder, "a.yaml");
    writeJob(folder, "b.yaml", { revision: "B", status: "preliminary" });
    const compared = await run("compare a.yaml b.yaml");
    expect(compared.status).toBe(0);
    expect(compared.stdout).toMatch(/^MARKS ONLY .*no recut/m);
    expect(compared.stdout).toContain("revision A -> B");
    expect(compared.stdout).toContain("NOT RELEASED");
    expect(compared.stdout).toContain("2 templates: 2 marks only.");
  });

  it("a template held in OLD was never cut; one held in NEW has nothing to cut by", async () => {
    writeJob(folder, "held.yaml", { held: true });
    writeJob(folder, "good.yaml");
    expect((await give("make held.yaml --out held")).status).toBe(1);
    for (const held of ["held.yaml", "held"]) {
      const freed = await run(`compare ${held} good.yaml`);
      expect([freed.status, freed.stdout.includes("TO CUT")]).toEqual([0, true]);
      const caught = await run(`compare good.yaml ${held}`);
      expect([caught.status, caught.stdout.includes("held now")]).toEqual([0, true]);
    }
  });

  it("a job in millimetres that is the same plate as one in inches", async () => {
    writeJob(folder, "inches.yaml", { bases: 1 });
    const text = readFileSync(join(folder, "inches.yaml"), "utf8");
    const metric = text
      .replace("units: in", "units: mm")
      .replace(/\b(x|y|projection|embedment|hole|thickness|size|diameter): (\d+(?:[-/]\d+)*)(?=[ ,}\n])/g, "$1: $2 in");
    expect(metric).toContain("x: 8 in");
    writeFileSync(join(folder, "metric.yaml"), metric);
    const compared = await run("compare inches.yaml metric.yaml");
    expect([compared.stderr, compared.status]).toEqual(["", 0]);
    expect(compared.stdout).toMatch(/1 template: 1 (marks|file) only\./);
  });
});

describe("2: what is wrong with OLD and NEW is told together, with its place", () => {
  it("missing files and folders that are no packages", async () => {
    mkdirSync(join(folder, "empty"));
    mkdirSync(join(folder, ".killed.old"));
    expect((await run("compare killed empty")).stderr).toMatch(
      /^killed: .*an interrupted make left an earlier one in \.killed\.old$/m,
    );
    const compared = await run("compare no.yaml empty");
    expect([compared.status, compared.stdout]).toEqual([2, ""]);
    expect(compared.stderr).toMatch(/^no\.yaml: there is no such job file or package$/m);
    expect(compared.stderr).toMatch(/^empty.summary\.json: .*not a package/m);
  });

  it("a package whose cut files were changed; what it does not need is named beside them", async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out out");
    const files = readSummary(join(folder, "out")).bases[1]?.files ?? [];
    appendFileSync(join(folder, "out", files[0]?.path ?? ""), "x");
    writeFileSync(
      join(folder, "out", files[1]?.path ?? ""),
      readFileSync(join(folder, "out", files[1]?.path ?? "")).fill(32, 0, 1),
    );
    rmSync(join(folder, "out", "engineer", "questions.csv"));
    const compared = await run("compare out job.yaml");
    expect([compared.status, compared.stdout]).toEqual([2, ""]);
    expect(compared.stderr).toMatch(/^out.summary\.json bases\[1\]\.files\[0\]: cut\/B2.* bytes, listed are/m);
    expect(compared.stderr).toMatch(
      /^out.summary\.json bases\[1\]\.files\[1\]: cut\/lines\/B2.* another hash.*put back/m,
    );
    expect(compared.stderr).toMatch(
      /^warning: out.summary\.json files\[\d\]: engineer\/questions\.csv is listed and is not there$/m,
    );
  });

  it.each([
    ["another schema", '"schema": 1', '"schema": 2', /schema: is not 1/],
    [
      "a figure that is text",
      /"x":-?[\d.]+/,
      '"x":"left"',
      /bases\[0\]\.template\.holes\[\d\]\.x: is not a finite number/,
    ],
    [
      "a way out of the folder",
      /"path":"cut\/B1[^"]*"/,
      '"path":"../job.yaml"',
      /files\[0\]\.path: is not a path inside the package/,
    ],
    ["a row that is none", /"rule":"hole-edge"/, '"rule":7', /bases\[0\]\.checks\[\d+\]\.rule: is not text/],
    ["a file that is cut off", /,\s*"checks"[\s\S]*/, "", /:\d+:\d+: is not JSON/],
    ["bases that are none", /"bases": \[/, '"bases": [7,', /bases\[0\]: is not a base/],
  ])("a summary with %s", async (_, text, by, message) => {
    writeJob(folder, "job.yaml", { bases: 1 });
    await give("make job.yaml --out out");
    change("out/summary.json", "out/summary.json", text, by);
    const compared = await run("compare job.yaml out");
    expect([compared.status, compared.stdout]).toEqual([2, ""]);
    expect(compared.stderr).toMatch(message);
  });

  it("a job at fault, in machine form", async () => {
    writeJob(folder, "job.yaml");
    change("job.yaml", "bad.yaml", "diameter: 3/4", "diameter: 7/9");
    const compared = await run("compare job.yaml bad.yaml --json");
    expect([compared.status, compared.stderr]).toEqual([2, ""]);
    expect(JSON.parse(compared.stdout).findings[0].at.file).toBe("bad.yaml");
  });
});

describe("a package that somebody worked with is compared", () => {
  beforeEach(async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out out");
  });

  it.each<[string, () => void, RegExp]>([
    [
      "with papers saved again",
      () => appendFileSync(join(folder, "out/engineer/ledger.csv"), "x"),
      /^warning: out.summary\.json files\[\d\]: engineer\/ledger\.csv has .* changed after it was written; nothing is read from it$/m,
    ],
    [
      "with a file added",
      () => writeFileSync(join(folder, "out/cut/scan.pdf"), "x"),
      /^warning: out: cut\/scan\.pdf is not of the package: summary\.json does not list it$/m,
    ],
    [
      "with a folder added",
      () => mkdirSync(join(folder, "out/photos")),
      /^warning: out: photos is not of the package/m,
    ],
    [
      "with a cut file taken away",
      () => rmSync(join(folder, "out/cut/B1_2-off_PL1-4_steel_rev-A.dxf")),
      /^warning: out.summary\.json bases\[0\]\.files\[0\]: cut\/B1.* is not there; compared by what summary\.json says of it$/m,
    ],
  ])("%s", async (_, spoil, message) => {
    spoil();
    const compared = await run("compare out job.yaml");
    expect([compared.status, compared.stderr.split("\n").length]).toEqual([0, 2]);
    expect(compared.stderr).toMatch(message);
    expect(compared.stdout).toContain("2 templates: 2 unchanged.\n");
  });

  it("and what was kept or set aside in it is its own, and not told", async () => {
    appendFileSync(join(folder, "out/engineer/ledger.csv"), "x");
    await give("make job.yaml --out out");
    writeJob(folder, "job.yaml", { revision: "B" });
    await give("make job.yaml --out out");
    expect(await run("compare out job.yaml")).toMatchObject({ status: 0, stderr: "" });
  });
});

describe("rods", () => {
  it("1: a longer rod is scrap, though no template changes", async () => {
    writeJob(folder, "job.yaml");
    change("job.yaml", "new.yaml", "projection: 8", "projection: 10");
    await give("make job.yaml --out out");
    const compared = await run("compare out new.yaml");
    expect([compared.status, compared.stderr]).toEqual([1, ""]);
    expect(compared.stdout).toMatch(/^RODS REMADE .*scrap.*\n {2}B1 A, 8 rods 3\/4 {2}projection 8 -> 10 in$/m);
    expect(compared.stdout).toContain("2 templates: 2 unchanged.\nRods: 8 to be made again, 8 unchanged.\n");
  });

  it("0: more bases are more rods, none of them scrap", async () => {
    writeJob(folder, "job.yaml");
    change("job.yaml", "new.yaml", "quantity: 2", "quantity: 3");
    const compared = await run("compare job.yaml new.yaml");
    expect(compared.status).toBe(0);
    expect(compared.stdout).toMatch(/^RODS, QUANTITY .*\n {2}B1 A, 12 rods 3\/4 {2}quantity 8 -> 12: 4 more to make$/m);
  });

  it("of a package whose summary lists none cannot be compared, and it is said", async () => {
    writeJob(folder, "job.yaml");
    await give("make job.yaml --out out");
    const text = readFileSync(join(folder, "out/summary.json"), "utf8");
    writeFileSync(join(folder, "out/summary.json"), text.replace(/ *"rods": \[[^\]]*\],\n/g, ""));
    change("job.yaml", "new.yaml", "projection: 8", "projection: 10");
    const compared = await run("compare out new.yaml");
    expect([compared.status, compared.stderr]).toEqual([0, ""]);
    expect(compared.stdout).toContain("Rods are not compared: ");
    const { remade, rods } = JSON.parse((await run("compare out new.yaml --json")).stdout);
    expect([remade, rods]).toEqual([null, null]);
  });
});

describe("--json", () => {
  it("holds every template with its changes, in NEW's unit", async () => {
    writeJob(folder, "job.yaml");
    change("job.yaml", "new.yaml", "x: 22, y: 12", "x: 22-1/2, y: 12");
    const compared = await run("compare job.yaml new.yaml --json");
    expect([compared.status, compared.stderr]).toEqual([1, ""]);
    const { schema, unit, recut, remade, counts, templates, rods } = JSON.parse(compared.stdout);
    expect([schema, unit, recut, remade, counts.recut, counts.unchanged]).toEqual([1, "in", 1, 0, 1, 1]);
    expect(rods.map(({ verdict }: { verdict: string }) => verdict)).toEqual(["unchanged", "unchanged"]);
    expect(templates[0]).toMatchObject({
      verdict: "recut",
      old: { base: "B1", template: "B1", quantity: 2, delivered: true },
      new: { base: "B1", template: "B1", quantity: 2, delivered: true },
      changes: [
        { what: "outline", recut: true, from: { extent: [-11, -6, 11, 6] }, to: { extent: [-11.25, -6, 11.25, 6] } },
      ],
    });
    expect(templates[1]).toMatchObject({ verdict: "unchanged", changes: [] });
  });

  it("warns of another job's number on standard error", async () => {
    writeJob(folder, "job.yaml");
    change("job.yaml", "other.yaml", "26-007", "26-008");
    const compared = await run("compare job.yaml other.yaml --json");
    expect([compared.status, compared.stderr]).toEqual([0, "warning: OLD is job 26-007, NEW is job 26-008\n"]);
  });
});

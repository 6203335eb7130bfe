/** `rodplate survey` as a user runs it: exit codes, the contract's machine form, tables and sheets, whole or not at all. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import papaparse from "papaparse";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { givePackage, newFolder, runProgram } from "./program.js";

const JOB = `job: { number: "26-040", title: Invented depot, revision: A, status: released, date: 2026-11-24 }
units: in
rules: us
shop: plasma
grid: { x: { names: [A, B], at: [0, 20'] }, y: { names: [1], at: [0] } }
placements: [{ base: B1, at: A-1 }, { base: B1, at: B-1 }]
site: { topOfConcrete: 100' }
survey: { line: 1/4, turn: 0.5 }
bases:
  - { mark: B1, quantity: 2, rods: { diameter: 3/4, projection: 6 }, pattern: { kind: rectangle, x: 8, y: 8 }, basePlate: { x: 12, y: 12, thickness: 1, hole: 1-5/16, washer: { shape: round, size: 2, thickness: 1/4 } }, template: { thickness: 1/4 } }
`;

/** Feet: A-1 off by a hair, B-1's first rod off by 1.2 in; a stray point. */
const POINTS = `A-1_A1,0.3333,-0.3333,100.5,ROD
A-1_A2,0.3350,0.3333,100.5,ROD
A-1_A3,-0.3333,0.3333,100.5,ROD
A-1_A4,-0.3333,-0.3333,100.5,ROD
B-1_A1,0.4333,19.6667,100.5,ROD
B-1_A2,0.3333,20.3333,100.5,ROD
B-1_A3,-0.3333,20.3333,100.6,ROD
B-1_A4,-0.3333,19.6667,100.5,ROD
gate,9,9,100,GATE
`;

let folder: string;
beforeEach(() => {
  folder = newFolder();
  writeFileSync(join(folder, "job.yaml"), JOB);
  writeFileSync(join(folder, "built_PNEZD_ft-intl.csv"), POINTS);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string) => runProgram(folder, text.split(" "));
const give = (make: string) => givePackage(folder, make.split(" "));
const STATED = "--accuracy 1/16 --height top";

describe("rodplate survey", () => {
  it("prints groups worst first, both answers, what would let it drop on, what is unmatched; exit code 1", async () => {
    const { status, stdout, stderr } = await run(`survey job.yaml built_PNEZD_ft-intl.csv ${STATED}`);
    expect([status, stderr]).toEqual([1, ""]);
    const rows = stdout.split("\n").filter((line) => /^B1 +[AB]-1 +(does not fit|fits) +(FAIL|within)/.test(line));
    expect(rows.map((line) => line.split(/ +/)[1])).toEqual(["B-1", "A-1"]);
    expect(stdout).toContain("would let it drop on, engineer to decide:");
    expect(stdout).toMatch(/washer-cover FAIL by/);
    expect(stdout).toContain("line 9, gate: no rod stands near");
    expect(stdout).toMatch(/local\s+coordinates \(by nearness\)/);
    expect(stdout.trimEnd().endsWith("Engineer to decide.")).toBe(true);
    expect(stdout).not.toMatch(/acceptable/i);
    expect(readdirSync(folder).sort()).toEqual(["built_PNEZD_ft-intl.csv", "job.yaml"]);
  });

  it("--json: the contract's form and nothing else, the same every time", async () => {
    const command = `survey job.yaml built_PNEZD_ft-intl.csv ${STATED} --json`;
    const { status, stdout, stderr } = await run(command);
    expect([status, stderr]).toEqual([1, ""]);
    expect((await run(command)).stdout).toBe(stdout);
    const { groups, unmatched, survey, file } = JSON.parse(stdout);
    expect(file).toMatchObject({ order: "PNEZD", unit: "ft", coordinates: "local", headed: false });
    expect(survey).toEqual({ accuracy: 0.0625, height: "top", within: 2 });
    expect(unmatched.map(({ name }: { name: string }) => name)).toEqual(["gate"]);
    const [worst, other] = groups;
    expect(worst).toMatchObject({ mark: "B1", at: "B-1", verdict: "does not fit" });
    expect(worst.spare).toBeLessThan(-0.0625);
    expect(Object.keys(worst.shift)).toEqual(["x", "y"]);
    expect(typeof worst.turn).toBe("number");
    expect(worst.best.certainTo).toBeLessThan(1e-6);
    expect(worst.rods[0]).toMatchObject({
      tag: "A1",
      dx: expect.closeTo(0, 3),
      dy: expect.closeTo(1.2, 2),
      dz: 0,
      clearance: 0.28125,
    });
    expect(Math.min(...worst.rods.map(({ margin }: { margin: number }) => margin))).toBeCloseTo(worst.spare, 5);
    expect(worst.rods[2]).toMatchObject({ dz: expect.closeTo(1.2, 6), projection: expect.closeTo(7.2, 6) });
    expect(worst.remedies.every(({ decision }: { decision: string }) => decision === "engineer to decide")).toBe(true);
    expect([other.verdict, other.missing]).toEqual(["fits", []]);
    expect(
      other.checks
        .filter(({ rule }: { rule: string }) => rule === "stands-on-line")
        .map(({ status: each }: { status: string }) => each),
    ).toEqual(["pass", "pass"]);
  });

  it("asks for accuracy and height where nobody states them, and says that they are not known", async () => {
    const { stdout, stderr } = await run("survey job.yaml built_PNEZD_ft-intl.csv");
    expect(stderr).toContain("the accuracy of its points is not stated: ask the surveyor");
    expect(stderr).toContain("at what height on the rods they were taken is not stated: ask the surveyor");
    expect(stdout).toContain("Accuracy of the survey NOT STATED");
  });

  it("a plate that drops on: exit code 0; within the accuracy: neither", async () => {
    writeFileSync(join(folder, "a_PNEZD_ft-intl.csv"), POINTS.split("\n").slice(0, 4).join("\n"));
    const fits = await run(`survey job.yaml a_PNEZD_ft-intl.csv ${STATED}`);
    expect([fits.status, fits.stdout.includes("Not surveyed")]).toEqual([0, true]);
    const unsure = await run("survey job.yaml a_PNEZD_ft-intl.csv --accuracy 1/2 --height top");
    expect([unsure.status, unsure.stdout.includes("within measuring uncertainty")]).toEqual([0, true]);
  });

  it("--out: tables and a sheet for each group that does not plainly fit; --all: for all", async () => {
    expect((await run(`survey job.yaml built_PNEZD_ft-intl.csv ${STATED} --out out`)).status).toBe(1);
    const tables = [
      "survey-checks.csv",
      "survey-groups.csv",
      "survey-report.pdf",
      "survey-report.txt",
      "survey-rods.csv",
    ];
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["B1_B-1_survey.svg", ...tables]);
    const read = (name: string) =>
      papaparse.parse<Record<string, string>>(readFileSync(join(folder, "out", name), "utf8").trim(), { header: true })
        .data;
    expect(read("survey-groups.csv").map(({ at, verdict }) => [at, verdict])).toEqual([
      ["B-1", "does not fit"],
      ["A-1", "fits"],
    ]);
    expect(read("survey-rods.csv")).toHaveLength(8);
    expect(new Set(read("survey-checks.csv").map(({ rule }) => rule))).toContain("washer-on-plate");
    const sheet = readFileSync(join(folder, "out", "B1_B-1_survey.svg"), "utf8");
    expect(sheet).toContain("DOES NOT FIT");
    expect(sheet).toContain("29 CFR 1926.755(b)");
    expect(sheet).not.toContain(folder);
    const report = readFileSync(join(folder, "out", "survey-report.txt"), "utf8");
    expect(report.replace(/\n +/g, " ")).toMatch(/Rod A1 OUT, .* in north/);
    expect(report).not.toContain(folder);
    expect(
      readFileSync(join(folder, "out", "survey-report.pdf"))
        .subarray(0, 5)
        .toString(),
    ).toBe("%PDF-");
    await run(`survey job.yaml built_PNEZD_ft-intl.csv ${STATED} --out all --all`);
    expect(readdirSync(join(folder, "all")).filter((name) => name.endsWith(".svg"))).toEqual([
      "B1_A-1_survey.svg",
      "B1_B-1_survey.svg",
    ]);
    expect((await run(`survey job.yaml built_PNEZD_ft-intl.csv ${STATED} --out out`)).status).toBe(2);
  });

  it("a plate that drops on over rods out of tolerance: both verdicts, worst first, its sheet, exit code 1", async () => {
    // every rod of A-1 0.27 in east: the plate follows, ACI 117-10 allows 1/4 in at 3/4 in rods, and survey.line 1/4
    const off = POINTS.split("\n")
      .slice(0, 4)
      .map((line) => {
        const [name, north, east, ...rest] = line.split(",");
        return [name, north, (Number(east) + 0.27 / 12).toFixed(4), ...rest].join(",");
      });
    const good = POINTS.split("\n")
      .slice(4, 8)
      .map((line) => line.replace("0.4333,19", "0.3333,19").replace("100.6", "100.5"));
    writeFileSync(join(folder, "b_PNEZD_ft-intl.csv"), [...good, ...off].join("\n"));
    const { status, stdout } = await run(`survey job.yaml b_PNEZD_ft-intl.csv ${STATED} --out out`);
    expect(status).toBe(1);
    const rows = stdout.split("\n").filter((line) => /^B1 +[AB]-1 +fits/.test(line));
    expect(rows[0]).toMatch(/^B1 +A-1 +fits +FAIL A1 A2 A3 A4, off line /);
    expect(rows[1]).toMatch(/^B1 +B-1 +fits +within /);
    expect(stdout).toContain("fits; placing FAIL A1 A2 A3 A4, off line");
    expect(stdout.trimEnd().split("\n").at(-1)).toBe(
      "4 rods outside ACI 117-10; 1 column does not stand on line; 2 drop on. Engineer to decide.",
    );
    const sheet = readFileSync(join(folder, "out", "B1_A-1_survey.svg"), "utf8");
    expect(sheet).toContain("BASE B1 AT A-1: PLACING FAIL; FITS: 0.271 in TO SPARE");
    expect(sheet).toContain("FAIL A1 A2 A3 A4, off line");
    const { totals, groups } = JSON.parse((await run(`survey job.yaml b_PNEZD_ft-intl.csv ${STATED} --json`)).stdout);
    expect(totals).toMatchObject({ drop: 2, fail: 0, rodsOutside: 4, columnsOffLine: 1 });
    expect(groups[0].placing).toEqual({ verdict: "outside", rods: ["A1", "A2", "A3", "A4"], offLine: true });
  });

  it("--unit ft on metres is refused before anything is shown", async () => {
    const metres = POINTS.split("\n").map((line) => {
      const [name, north, east, high, what] = line.split(",");
      const m = (text: string | undefined) => (Number(text) * 0.3048).toFixed(4);
      return north === undefined ? "" : [name, m(north), m(east), m(high), what].join(",");
    });
    writeFileSync(join(folder, "site.csv"), metres.join("\n"));
    const { status, stdout, stderr } = await run(`survey job.yaml site.csv --order PNEZD --unit ft ${STATED}`);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/with its numbers in the unit metre 8 of 9 points lie where they should.*\(--unit m\)/);
    expect((await run(`survey job.yaml site.csv --order PNEZD --unit m ${STATED}`)).status).toBe(1);
  });

  it.each(["9999999", "-99999999999", "50375000000000000000"])(
    "a lost decimal point in one line (%s): a finding with it, and the report for the others",
    async (far) => {
      writeFileSync(join(folder, "c_PNEZD_ft-intl.csv"), POINTS.replace("A-1_A2,0.3350", `A-1_A2,${far}`));
      const { status, stdout, stderr } = await run(`survey job.yaml c_PNEZD_ft-intl.csv ${STATED}`);
      expect(status).toBe(1);
      expect(stderr).toMatch(/c_PNEZD_ft-intl\.csv:2:1: point "A-1_A2" lies more than 100 km from the job/);
      expect(stdout).toContain("line 2, A-1_A2: it lies more than 100 km from the job");
      expect(stdout).toMatch(/no point of A2/);
      expect(stdout).toMatch(/^B1 +B-1 +does not fit/m);
    },
  );

  it("sheets of lines A and A', and of names that differ by case alone, do not overwrite each other", async () => {
    const names = `[A, "A'", Ap, a]`;
    const job = JOB.replace("names: [A, B], at: [0, 20']", `names: ${names}, at: [0, 20', 40', 60']`)
      .replace("[{ base: B1, at: A-1 }, { base: B1, at: B-1 }]", `[{ base: B1, every: [${names}, [1]] }]`)
      .replace("quantity: 2", "quantity: 4");
    writeFileSync(join(folder, "prime.yaml"), job);
    await give("make prime.yaml --out package");
    const file = readdirSync(join(folder, "package", "field")).find((name) => /local_PNEZD_ft-intl\.csv$/.test(name));
    const text = readFileSync(join(folder, "package", "field", file ?? ""), "utf8");
    expect(text).toContain("ROD B1 Ap-1 A1");
    writeFileSync(join(folder, file ?? ""), text);
    const { status } = await run(`survey prime.yaml ${file} ${STATED} --out out --all`);
    expect(status).toBe(0);
    expect(readdirSync(join(folder, "out")).filter((name) => name.endsWith(".svg"))).toEqual([
      "B1_A-1_survey.svg",
      "B1_Ap-1_2_survey.svg",
      "B1_Ap-1_survey.svg",
      "B1_a-1_2_survey.svg",
    ]);
  });

  it("budget and survey into one folder at once: one is whole there, the other is refused", async () => {
    const [one, other] = await Promise.all([
      run("budget job.yaml --out out"),
      run(`survey job.yaml built_PNEZD_ft-intl.csv ${STATED} --out out`),
    ]);
    expect([one.status, other.status].filter((status) => status === 2)).toHaveLength(1);
    const made = readdirSync(join(folder, "out"));
    expect(new Set(made.map((name) => /budget|survey/.exec(name)?.[0])).size).toBe(1);
    expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });

  it("bad input: every fault at once, exit code 2, nothing written", async () => {
    writeFileSync(join(folder, "bad.csv"), "A-1_A1,x,1\n");
    const bad = await run("survey job.yaml bad.csv --out out");
    expect([bad.status, existsSync(join(folder, "out"))]).toEqual([2, false]);
    expect(bad.stderr).toContain("--unit m, mm, ft or ft-us");
    const number = await run("survey job.yaml bad.csv --unit m --order PNEZD");
    expect(number.stderr).toContain("bad.csv:1:2 northing:");
    const options = await run("survey job.yaml none.csv --unit inch --order NEZ --accuracy soon --height low");
    expect(options.status).toBe(2);
    for (const word of ["--unit", "--order", "--accuracy", "--height", "there is no such file"])
      expect(options.stderr).toContain(word);
  });

  it("northing and easting changed round: a finding with its hint, exit code 2", async () => {
    writeFileSync(join(folder, "built_PENZD_ft-intl.csv"), POINTS);
    const { status, stdout } = await run(`survey job.yaml built_PENZD_ft-intl.csv ${STATED} --json`);
    expect(status).toBe(2);
    expect(JSON.parse(stdout).findings[0]).toMatchObject({
      code: "survey-swapped",
      hint: expect.stringContaining("--order PNEZD"),
    });
  });
});

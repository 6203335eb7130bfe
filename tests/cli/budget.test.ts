/** `rodplate budget` as a user runs it: exit codes, machine form, tables and sheets, whole or not at all. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import papaparse from "papaparse";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { newFolder, runProgram } from "./program.js";

const JOB = `job: { number: "26-031", title: Invented depot, revision: A, status: released, date: 2026-11-24 }
units: in
rules: us
shop: plasma
budget: { standardError: 0.01, target: 95 %, seed: 3 }
bases:
  - { mark: B1, quantity: 6, rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { hole: 1-3/4 }, template: { thickness: 1/4 } }
  - { mark: B2, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 8, y: 8 }, basePlate: { hole: 1-5/16 }, template: { thickness: 1/4 } }
  - { mark: B3, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 8, y: 8 }, template: { thickness: 1/4 } }
`;

let folder: string;
beforeEach(() => {
  folder = newFolder();
  writeFileSync(join(folder, "job.yaml"), JOB);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string) => runProgram(folder, text.split(" "));

describe("rodplate budget", () => {
  it("prints the bases worst first, and the ones not checked with what is wanting; exit code 0", async () => {
    const { status, stdout, stderr } = await run("budget job.yaml");
    expect([status, stderr]).toEqual([0, ""]);
    const rows = stdout.split("\n").filter((line) => /^B\d +\d/.test(line));
    expect(rows.map((line) => line.slice(0, 2))).toEqual(["B1", "B2", "B3"]);
    expect(rows[0]).toContain("A1-A2: placing (100 %)");
    expect(rows[1]).toContain("100 %");
    expect(rows[2]).toContain("basePlate.hole");
    expect(stdout).toContain("A1-A2: errors of both 3/4 > clearance 1/2 in: need not drop on");
    expect(stdout).toContain("3 bases, 1 not checked; 1 base below the target. Engineer to decide.");
    expect(stdout).not.toMatch(/acceptable/i);
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("--json: the documented machine form and nothing else, the same every time", async () => {
    const { status, stdout, stderr } = await run("budget job.yaml --json");
    expect([status, stderr]).toEqual([0, ""]);
    expect((await run("budget job.yaml --json")).stdout).toBe(stdout);
    const { schema, job, bases, cautions } = JSON.parse(stdout);
    expect([schema, job.number, job.unit, cautions.length > 0]).toEqual([1, "26-031", "in", true]);
    const [first, second, third] = bases;
    expect(first).toMatchObject({
      mark: "B1",
      status: "reckoned",
      worst: { free: { subject: "A1-A2", error: 0.75, clearance: 0.5, spare: -0.125, holds: false } },
      probability: { seed: 3, certain: false },
      governs: { subject: "A1-A2", term: "placing", share: 1 },
      target: { target: 0.95, met: false, holes: { change: [{ size: "1-1/4", hole: 1.9375 }] } },
    });
    expect(first.probability.standardError).toBeLessThanOrEqual(0.01);
    expect(first.rods).toHaveLength(4);
    expect(first.rods[0]).toMatchObject({
      tag: "A1",
      x: -6,
      y: 5,
      clearance: 0.25,
      terms: [{ name: "placing", radius: 0.375 }],
    });
    expect(second.probability).toMatchObject({ free: 1, certain: true });
    expect(third).toEqual({
      mark: "B3",
      quantity: 1,
      status: "not-checked",
      why: [expect.stringContaining("basePlate.hole")],
    });
  });

  it("--out: tables and a sheet a base", async () => {
    expect((await run("budget job.yaml --out out")).status).toBe(0);
    expect(readdirSync(join(folder, "out")).sort()).toEqual([
      "B1_budget.svg",
      "B2_budget.svg",
      "budget-rods.csv",
      "budget.csv",
    ]);
    expect(readdirSync(folder).sort()).toEqual(["job.yaml", "out"]);
    const read = (name: string) =>
      papaparse.parse<Record<string, string>>(readFileSync(join(folder, "out", name), "utf8"), {
        header: true,
        skipEmptyLines: true,
      });
    const table = read("budget.csv");
    expect(table.errors).toEqual([]);
    expect(table.data.map(({ base, status }) => [base, status])).toEqual([
      ["B1", "reckoned"],
      ["B2", "reckoned"],
      ["B3", "not-checked"],
    ]);
    expect(table.data[0]).toMatchObject({
      "worst spare": "-0.125",
      "always drops on": "no",
      "hole for target": "rod 1-1/4: 1.9375",
    });
    expect(read("budget-rods.csv").data).toHaveLength(8);
    expect(readFileSync(join(folder, "out", "B1_budget.svg"), "utf8")).toContain("WORST CASE SHORT BY 0.125 in");
  });

  it("2: a folder that is not empty stays as it is; so does one when the job is at fault", async () => {
    mkdirSync(join(folder, "out"));
    writeFileSync(join(folder, "out", "mine.txt"), "mine");
    const { status, stderr } = await run("budget job.yaml --out out");
    expect([status, stderr]).toEqual([2, expect.stringContaining("not empty")]);
    expect(readdirSync(join(folder, "out"))).toEqual(["mine.txt"]);
    writeFileSync(
      join(folder, "job.yaml"),
      JOB.replace("target: 95 %", "target: 200 %").replace("quantity: 6", "quantity: x"),
    );
    const faulty = await run("budget job.yaml --out new");
    expect(faulty.status).toBe(2);
    expect(faulty.stderr).toMatch(/job\.yaml:5:\d+ budget\.target/);
    expect(faulty.stderr).toContain("bases[0].quantity");
    expect(existsSync(join(folder, "new"))).toBe(false);
    const { findings } = JSON.parse((await run("budget job.yaml --json")).stdout);
    expect(findings.length).toBe(2);
  });

  it("help", async () => {
    expect((await run("help budget")).stdout).toContain("rodplate budget JOB [--out DIR] [--json]");
    expect((await run("budget")).status).toBe(2);
    expect((await run("budget --ouut x job.yaml")).stderr).toContain("did you mean --out");
  });
});

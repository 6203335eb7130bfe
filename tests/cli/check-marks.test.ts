/** `check JOB` on one screen, and `check JOB MARK`. The job is that of the samples, invented. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { newFolder, runProgram } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const base = (mark: string, template: string, x: number, washer: string): string =>
  `  - { mark: ${mark}, rods: { diameter: 1-1/4, projection: 9 }, pattern: { kind: rectangle, x: ${x}, y: 10 }, basePlate: { x: 22, y: 18, hole: 2-1/16, washer: { shape: square, size: ${washer}, thickness: 1/2 } }, template: { mark: ${template}, thickness: 1/4 } }\n`;

function write(bases: readonly string[]): void {
  const head = 'job: { number: "1", revision: A, status: released, date: 2026-11-24 }\nunits: in\nbases:\n';
  writeFileSync(join(folder, "job.yaml"), head + bases.join(""));
}

const check = (...args: string[]) => runProgram(folder, ["check", "job.yaml", ...args]);

describe("check JOB", () => {
  it.each([1, 40, 300])(
    "prints one screen for %i bases: every question counted, and where the rest is",
    async (count) => {
      write(Array.from({ length: count }, (_, i) => base(`B${i}`, `T${i}`, 12 + (i % 8) / 4, "2-1/2")));
      const { stdout } = await check();
      expect(stdout.split("\n").length).toBeLessThan(50);
      for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
      expect(stdout).toContain("Questions to the engineer of record: 1 open");
      expect(stdout).toMatch(/together \d+ of \d+/);
      expect(stdout).toContain("rodplate check job.yaml MARK");
    },
  );

  it("names every held base, or how many more there are", async () => {
    write(Array.from({ length: 30 }, (_, i) => base(`B${i}`, `T${i}`, 1.5 + i / 100, "3")));
    const { stdout, status } = await check();
    expect(status).toBe(1);
    expect(stdout).toContain("HELD: 30 of 30 bases, 30 templates not to be cut");
    expect(stdout.split("\n").length).toBeLessThan(70);
  });
});

describe("check JOB MARK", () => {
  beforeEach(() => write([base("B1", "T1", 12, "3"), base("B2", "T1", 12, "3"), base("C9", "T9", 14, "2-1/2")]));

  it("shows one base with its values, in whatever case", async () => {
    const { stdout, status } = await check("c9");
    expect(status).toBe(0);
    expect(stdout).toMatch(/^C9 {2}1 base, template T9/m);
    expect(stdout).not.toMatch(/^B1/m);
    expect(stdout).toMatch(/pass +template-hole .* to spare/);
    expect(stdout).toContain("Q-1  Base C9");
  });

  it("takes the mark of a template for every base that it serves", async () => {
    expect((await check("T1")).stdout).toContain("2 bases");
    expect(JSON.parse((await check("t1", "--json")).stdout).bases.map(({ mark }: { mark: string }) => mark)).toEqual([
      "B1",
      "B2",
    ]);
  });

  it("in machine form has these bases alone, with the numbers that the whole job gives their questions", async () => {
    const one = JSON.parse((await check("C9", "--json")).stdout);
    const all = JSON.parse((await check("--json")).stdout);
    expect(one.bases).toEqual(all.bases.slice(2));
    expect(one.questions).toEqual(all.questions.filter(({ bases }: { bases: string[] }) => bases.includes("C9")));
    expect(JSON.parse((await check("B1", "--json")).stdout).questions).toEqual([]);
  });

  it("refuses a mark that is none, with the nearest", async () => {
    const { status, stdout, stderr } = await check("B3");
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain('"B3" is the mark of no base and of no template of the job; its marks are B1, B2');
    const json = await check("B3", "--json");
    expect(JSON.parse(json.stdout).findings).toHaveLength(1);
  });
});

it("the ledger keeps every row", async () => {
  write([base("B1", "T1", 12, "3")]);
  await runProgram(folder, ["make", "job.yaml", "--out", "out"]);
  const rows = readFileSync(join(folder, "out", "engineer", "ledger.csv"), "utf8").split("\n");
  const summary = JSON.parse(readFileSync(join(folder, "out", "summary.json"), "utf8"));
  expect(rows.filter((row) => row.startsWith("B1,"))).toHaveLength(summary.bases[0].checks.length);
  const kinds = summary.files.map(({ kind }: { kind: string }) => kind);
  expect(kinds).toContain("checking-pdf");
});

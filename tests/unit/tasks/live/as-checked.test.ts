/** What tables of the page say of a job is what `check` says of it: states, worst margins, counts of rows, questions. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Summary, SummaryCheck } from "../../../../src/summary/model.js";
import { checkJob } from "../../../../src/tasks/check.js";
import { openLive } from "../../../../src/tasks/live/open-live.js";
import { openJob } from "../../../../src/tasks/open.js";

const DATE = "2026-11-24";
const at = (path: string) => new URL(`../../../../${path}`, import.meta.url);
const SHOPS = ["plasma", "laser-metric", "laser"].map((name) => `templates/shops/${name}.yaml`);

/** Rods so near to each other that the base is held, a question that is asked, and one that is clear. Invented. */
const INVENTED = `job: { number: "1", title: Annex, revision: A, status: released, date: 2026-11-24 }
units: in
bases:
  - mark: A1
    rods: &rods { diameter: 1-1/2, grade: 55, projection: 9, embedment: 24 }
    pattern: { kind: rectangle, x: 2, y: 10 }
    basePlate: { x: 18, y: 16, thickness: 1-1/2, hole: 2-5/16 }
    template: { thickness: 1/4 }
  - mark: A2
    rods: *rods
    pattern: { kind: rectangle, x: 12, y: 10 }
    basePlate: { x: 18, y: 16, thickness: 1-1/2, hole: 1-7/8 }
    template: { thickness: 1/4 }
  - mark: A3
    rods: *rods
    pattern: { kind: rectangle, x: 12, y: 10 }
    basePlate: { x: 22, y: 20, thickness: 1-1/2, hole: 2-5/16 }
    template: { thickness: 1/4 }
`;

const sample = (name: string, job: string, beside: readonly string[] = []) =>
  new Map([job, ...beside].map((file) => [file, readFileSync(at(`samples/${name}/${file}`), "utf8")]));

const JOBS: readonly (readonly [string, string, ReadonlyMap<string, string>])[] = [
  ["a hall with a plan, in inches", "job.yaml", sample("packing-hall", "job.yaml")],
  [
    "the same of spreadsheets",
    "job-csv.yaml",
    sample("packing-hall", "job-csv.yaml", ["schedule.csv", "placements.csv"]),
  ],
  ["a hall in millimetres", "job.yaml", sample("machine-hall", "job.yaml")],
  ["a mast", "job.yaml", sample("signal-mast", "job.yaml", ["own-laser.yaml"])],
  ["bases that share their rods", "job.yaml", new Map([["job.yaml", INVENTED]])],
];

function inputsOf(job: string, files: ReadonlyMap<string, string>) {
  return { job, files: new Map([...files, ...SHOPS.map((path) => [path, readFileSync(at(path), "utf8")] as const)]) };
}

function checked(job: string, files: ReadonlyMap<string, string>): Summary {
  const opened = openJob(inputsOf(job, files), { date: DATE });
  if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("\n"));
  return checkJob(opened.value);
}

function live(job: string, files: ReadonlyMap<string, string>) {
  const opened = openLive(inputsOf(job, files), { date: DATE });
  while (opened.work());
  return opened;
}

const shareOf = ({ margin, limit, value }: SummaryCheck): number =>
  (margin ?? 0) / (Math.abs(limit ?? 0) || Math.abs(value ?? 0) || 1);

const isAgainst = ({ status, severity, answer, accepted }: SummaryCheck): boolean =>
  status === "fail" && (severity === "stop" || (severity === "ask" && answer === undefined && accepted === undefined));

/** The least share of those rows; of no rows null. */
function leastShare(rows: readonly SummaryCheck[]): number | null {
  return rows.reduce<number | null>((least, row) => Math.min(least ?? Infinity, shareOf(row)), null);
}

describe.each(JOBS)("%s", (_name, job, files) => {
  const summary = checked(job, files);
  const opened = live(job, files);
  const state = opened.state();

  it("has the states and worst margins of its bases", () => {
    expect(state.bases.map(({ mark }) => mark)).toEqual(summary.bases.map(({ mark }) => mark));
    for (const [i, base] of summary.bases.entries()) {
      const shown = state.bases[i];
      const against = base.checks.filter(isAgainst);
      const holds = against.filter(({ severity }) => severity === "stop");
      expect(shown?.held.length !== 0, base.mark).toBe(base.held);
      expect(shown?.state, base.mark).toBe(base.held ? "held" : against.length > 0 ? "asked" : "clear");
      const worst = shown?.worst ?? null;
      if (against.length > 0) {
        expect(worst?.status, base.mark).toBe("fail");
        expect(worst?.share, base.mark).toBe(leastShare(holds.length > 0 ? holds : against));
      } else {
        // passes that say yes or no have no margin, though they are written with 0
        const passes = base.checks.filter(({ status, margin }) => status === "pass" && (margin ?? 0) > 0);
        expect(worst?.status, base.mark).toBe("pass");
        const least = leastShare(passes);
        if (worst?.share !== 0) expect(worst?.share, base.mark).toBeCloseTo(least ?? -1, 6);
      }
    }
  });

  it("shows what its bases say, wherever they stand", () => {
    for (const [i, { rods }] of summary.bases.entries()) {
      const { written = {}, given = {} } = state.bases[i] ?? {};
      const sizes = [
        ...Object.entries(written),
        ...Object.entries(given).map(([key, { text }]) => [key, text] as const),
      ]
        .filter(([key]) => /(^|\.)(rods\.diameter|groups\[\d+\]\.rods\.diameter)$/.test(key))
        .map(([, text]) => text.replace(/\s*(in|")$/, ""));
      expect(sizes.toSorted(), state.bases[i]?.mark).toEqual(rods.map(({ size }) => size).toSorted());
    }
  });

  it("has its counts of rows, and every row", () => {
    const rows = [...summary.bases.flatMap(({ checks }) => checks), ...summary.checks];
    const count = (status: string) => rows.filter((row) => row.status === status).length;
    expect(opened.digest()).toMatchObject({
      rows: rows.length,
      failed: count("fail"),
      passed: count("pass"),
      notChecked: count("not-checked"),
      notApplicable: count("not-applicable"),
      heldBases: summary.bases.filter(({ held }) => held).length,
    });
    const all = { statuses: [], rule: null, mark: null, words: "", from: 0, count: 0 };
    expect(opened.ledger(all).total).toBe(rows.length);
  });

  it("has its questions, each with its number and status", () => {
    const asked = (summary.questions ?? []).map(({ number, status }) => [number, status]);
    expect(opened.questions()?.asked.map(({ number, status }) => [number, status])).toEqual(asked);
    expect(state.questions.map(({ number }) => number)).toEqual(asked.map(([number]) => number));
  });
});

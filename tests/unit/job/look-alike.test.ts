/** The limit of `look-alike` is the job's own, with a grid and without one. */
import { describe, expect, it } from "vitest";
import { lookAlike } from "../../../src/checks/job-rules/look-alike.js";
import { runJobRules } from "../../../src/checks/job-run.js";
import { placeRods } from "../../../src/rods/index.js";
import { makePlateOutline } from "../../../src/template/index.js";
import { jobOf } from "./files.js";

const GRID = [
  "grid: { x: { names: [A, B], spacing: 20' }, y: { names: [1, 2], spacing: 20' } }",
  "placements: [{ base: B1, at: A-1 }, { base: B2, at: B-1 }]",
];

/** Two marks whose rods are `error` apart in x: the gauges differ by twice that. */
function twoMarks(units: "in" | "mm", gauge: number, error: number, extra: readonly string[]): string {
  const base = (mark: string, x: number) =>
    `  - { mark: ${mark}, rods: { diameter: ${units === "in" ? "1" : "M24"} }, pattern: { kind: rectangle, x: ${x}, y: ${gauge} }, template: { thickness: ${units === "in" ? "1/4" : "6"} } }`;
  return [
    'job: { number: "1" }',
    `units: ${units}`,
    ...extra,
    "bases:",
    base("B1", gauge),
    base("B2", gauge + 2 * error),
    "",
  ].join("\n");
}

function rowsOf(text: string) {
  const job = jobOf(text);
  const bases = job.bases.map((base) => {
    const rods = placeRods(base);
    const outline = rods.ok ? makePlateOutline(job, base, rods.value) : rods;
    if (!rods.ok || !outline.ok) throw new Error(base.mark);
    return { base, rods: rods.value, outline: outline.value };
  });
  return runJobRules([lookAlike], { job, plan: null, bases }).map(({ subject, status, clause }) => [
    subject,
    status,
    clause,
  ]);
}

describe.each([
  ["without a grid", []],
  ["with a grid", GRID],
])("%s", (_, grid) => {
  it.each([
    ["metric, at the default of 25 mm", "mm", 300, 25, [], "marks", "pass", "lookAlike: default 25 mm"],
    ["metric, 25.2 mm", "mm", 300, 25.2, [], "marks", "pass", "lookAlike: default 25 mm"],
    ["metric, a nanometre under 25 mm", "mm", 300, 24.999999, [], "B1 / B2", "fail", "lookAlike: default 25 mm"],
    ["at the default of 1 in", "in", 12, 1, [], "marks", "pass", "lookAlike: default 1 in"],
    ["under 1 in", "in", 12, 0.99, [], "B1 / B2", "fail", "lookAlike: default 1 in"],
    ["1/2 in apart, 1/4 in asked for", "in", 12, 0.5, ["lookAlike: 1/4"], "marks", "pass", "lookAlike: job"],
    ["1/2 in apart, 3/4 in asked for", "in", 12, 0.5, ["lookAlike: 3/4"], "B1 / B2", "fail", "lookAlike: job"],
  ] as const)("%s", (_what, units, gauge, error, extra, ...row) => {
    expect(rowsOf(twoMarks(units, gauge, error, [...grid, ...extra]))).toEqual([row]);
  });
});

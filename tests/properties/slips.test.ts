/**
 * One slip of the hand in a job that was good: the job is refused, held, or asked about. Invented jobs, drawn at random; the
 * base-plate holes are those of AISC Design Guide 1, 2nd ed., Table 2.3.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkJob, openJob } from "../../src/index.js";
import { inputsOf } from "../unit/job/files.js";

/** What a job comes to, the worst first. */
type Outcome = "refused" | "held" | "asked" | "advised" | "silent";

/** A base in inches, each value as it is typed. */
interface Typed {
  readonly diameter: string;
  readonly projection: string;
  readonly embedment: string;
  readonly x: string;
  readonly y: string;
  readonly plateX: string;
  readonly plateY: string;
  readonly plateThickness: string;
  readonly hole: string;
  readonly pierX: string;
  readonly pierY: string;
  readonly thickness: string;
  readonly outlineX: string;
  readonly outlineY: string;
}

const RODS = [
  ["3/4", 0.75, "1-5/16"],
  ["1", 1, "1-13/16"],
  ["1-1/4", 1.25, "2-1/16"],
  ["1-1/2", 1.5, "2-5/16"],
  ["2", 2, "3-1/4"],
] as const;

const step = (from: number, to: number) => fc.integer({ min: 2 * from, max: 2 * to }).map((halves) => halves / 2);

/** Gauges of 6 to 18 rods, plate and pier as they usually stand round them. */
const good: fc.Arbitrary<Typed> = fc
  .record({
    rod: fc.constantFrom(...RODS),
    gaugeX: fc.integer({ min: 6, max: 18 }),
    gaugeY: fc.integer({ min: 6, max: 12 }),
    more: step(0, 3),
    thickness: fc.constantFrom("1/4", "3/8"),
  })
  .map(({ rod: [diameter, d, hole], gaugeX, gaugeY, more, thickness }) => {
    const [x, y] = [Math.ceil(gaugeX * d), Math.ceil(gaugeY * d)];
    const [plateX, plateY] = [x + Math.ceil(5 * d), y + Math.ceil(5 * d)];
    return {
      diameter,
      projection: String(Math.ceil(7 * d) + more),
      embedment: String(Math.ceil(15 * d) + more),
      x: String(x),
      y: String(y),
      plateX: String(plateX),
      plateY: String(plateY),
      plateThickness: String(Math.ceil(2 * d) / 2),
      hole,
      pierX: String(plateX + 6),
      pierY: String(plateY + 6),
      thickness,
      outlineX: String(x + Math.ceil(4 * d)),
      outlineY: String(y + Math.ceil(4 * d)),
    };
  });

function jobText(typed: Typed, units: "in" | "mm" = "in"): string {
  const { diameter, projection, embedment, x, y, plateX, plateY, plateThickness, hole } = typed;
  return [
    'job: { number: "1", status: released }',
    `units: ${units}`,
    "bases:",
    "  - mark: B1",
    `    rods: { diameter: ${diameter}, projection: ${projection}, embedment: ${embedment} }`,
    `    pattern: { kind: rectangle, x: ${x}, y: ${y} }`,
    `    basePlate: { x: ${plateX}, y: ${plateY}, thickness: ${plateThickness}, hole: ${hole} }`,
    `    concrete: { x: ${typed.pierX}, y: ${typed.pierY} }`,
    `    template: { support: bearers, thickness: ${typed.thickness}, key: none, outline: { kind: rectangle, x: ${typed.outlineX}, y: ${typed.outlineY} } }`,
    "",
  ].join("\n");
}

/** Every slip is made in the same good jobs, which are checked once. */
const failsOfGood = new Map<string, ReadonlyMap<string, string> | null>();

function failsBefore(text: string): ReadonlyMap<string, string> | null {
  const fails = failsOf(text);
  failsOfGood.set(text, fails);
  return fails;
}

/** Failing rows by severity, each as rule, subject and value. */
function failsOf(text: string): ReadonlyMap<string, string> | null {
  const known = failsOfGood.get(text);
  if (known !== undefined) return known;
  const opened = openJob(inputsOf(text), { date: "2026-01-01" });
  if (!opened.ok) return null;
  const rows = checkJob(opened.value).bases.flatMap(({ checks }) => checks);
  const fails = rows.filter(({ status }) => status === "fail");
  return new Map(fails.map(({ rule, subject, value, severity }) => [`${rule} ${subject} ${value}`, severity]));
}

/** What the slip brought that the good job had not. */
function outcomeOf(text: string, before: ReadonlyMap<string, string>): Outcome {
  const fails = failsOf(text);
  if (fails === null) return "refused";
  const fresh = [...fails].flatMap(([row, severity]) => (before.has(row) ? [] : [severity]));
  if (fresh.includes("stop")) return "held";
  if (fresh.includes("ask")) return "asked";
  return fresh.length > 0 ? "advised" : "silent";
}

/** How a slip changes what was typed; null where it cannot be made of this base. */
type Slip = (typed: Typed) => string | null;

const inFeet =
  (key: keyof Typed): Slip =>
  (typed) =>
    jobText({ ...typed, [key]: `"${typed[key]} ft"` });

const inMillimetres =
  (key: keyof Typed): Slip =>
  (typed) =>
    jobText({ ...typed, [key]: String(Math.round(25.4 * inchesOf(typed[key]))) });

/** `1-5/16` as 1.3125. */
function inchesOf(text: string): number {
  const [whole = "0", fraction] = text.includes("/") && !text.includes("-") ? ["0", text] : text.split("-");
  const [above = "0", below = "1"] = (fraction ?? "0/1").split("/");
  return Number(whole) + Number(above) / Number(below);
}

/** All of a base typed in millimetres, the rods by their size. */
function allInMillimetres(typed: Typed): string {
  const keys = Object.keys(typed) as (keyof Typed)[];
  const changed = keys.map((key) => [
    key,
    key === "diameter" ? typed[key] : String(Math.round(25.4 * inchesOf(typed[key]))),
  ]);
  return jobText({ ...typed, ...Object.fromEntries(changed) });
}

function swapped(typed: Typed): string | null {
  const apart = Math.abs(Number(typed.x) - Number(typed.y));
  // Swapped rods leave the plate, which reaches 2.5 rods past them less half the hole, when the gauges differ by more than that.
  if (apart <= 5 * inchesOf(typed.diameter) + 1) return null;
  return jobText({ ...typed, x: typed.y, y: typed.x });
}

const lostSpace =
  (key: "diameter" | "hole"): Slip =>
  (typed) =>
    typed[key].includes("-") ? jobText({ ...typed, [key]: typed[key].replace("-", "") }) : null;

const HELD: readonly Outcome[] = ["refused", "held"];
const FOUND: readonly Outcome[] = ["refused", "held", "asked"];
const TOLD: readonly Outcome[] = [...FOUND, "advised"];

describe("a slip in a good job", () => {
  it.each<[string, Slip, readonly Outcome[]]>([
    ["x and y of the pattern swapped", swapped, HELD],
    ["pattern x in feet", inFeet("x"), HELD],
    ["pattern y in feet", inFeet("y"), HELD],
    ["pattern x in millimetres", inMillimetres("x"), HELD],
    ["template thickness in feet", inFeet("thickness"), HELD],
    ["template thickness in millimetres", inMillimetres("thickness"), HELD],
    ["base-plate hole in feet", inFeet("hole"), HELD],
    ["base-plate hole in millimetres", inMillimetres("hole"), HELD],
    ["outline x in feet", inFeet("outlineX"), HELD],
    ["outline y in feet", inFeet("outlineY"), HELD],
    ["outline x in millimetres", inMillimetres("outlineX"), HELD],
    ["everything in millimetres", allInMillimetres, HELD],
    [
      "everything in inches, in a metric job",
      (typed) => jobText({ ...typed, diameter: `"${typed.diameter} in"` }, "mm"),
      HELD,
    ],
    ["a lost space in the rod's size", lostSpace("diameter"), HELD],
    ["a lost space in the base plate's hole", lostSpace("hole"), FOUND],
    ["projection in feet", inFeet("projection"), FOUND],
    ["projection in millimetres", inMillimetres("projection"), FOUND],
    ["embedment in feet", inFeet("embedment"), FOUND],
    ["embedment in millimetres", inMillimetres("embedment"), FOUND],
    ["base plate x in feet", inFeet("plateX"), FOUND],
    ["base plate y in millimetres", inMillimetres("plateY"), FOUND],
    ["base plate's thickness in feet", inFeet("plateThickness"), TOLD],
    ["pier x in feet", inFeet("pierX"), TOLD],
    ["pier y in millimetres", inMillimetres("pierY"), TOLD],
  ])("%s never passes in silence", (_name, slip, allowed) => {
    const counts: Partial<Record<Outcome, number>> = {};
    fc.assert(
      fc.property(good, (typed) => {
        const before = failsBefore(jobText(typed));
        const text = slip(typed);
        fc.pre(text !== null);
        if (before === null || text === null) throw new Error("the job itself is refused");
        const outcome = outcomeOf(text, before);
        counts[outcome] = (counts[outcome] ?? 0) + 1;
        expect({ outcome, typed: allowed.includes(outcome) ? null : typed }).toEqual({ outcome, typed: null });
      }),
      { numRuns: 8 },
    );
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(0);
  });

  it("the jobs themselves are neither refused nor held", () => {
    fc.assert(
      fc.property(good, (typed) => {
        const fails = failsOf(jobText(typed));
        expect([...(fails ?? [["refused", "stop"]])].filter(([, severity]) => severity === "stop")).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  // What nothing in the job speaks against cannot be found: one plausible figure for another. A second source finds these.
  it.each<[string, Slip]>([
    ["a gauge an inch larger", (typed) => jobText({ ...typed, x: String(Number(typed.x) + 1) })],
    ["an embedment of another base", (typed) => jobText({ ...typed, embedment: String(Number(typed.embedment) + 6) })],
    [
      "the next stocked thickness",
      (typed) => jobText({ ...typed, thickness: typed.thickness === "1/4" ? "3/8" : "1/4" }),
    ],
    [
      "x and y swapped on a plate that takes both",
      (typed) => (typed.x === typed.y ? null : jobText({ ...typed, x: typed.y, y: typed.x })),
    ],
  ])("%s may pass: not every slip can be found", (_name, slip) => {
    const outcomes = fc.sample(good, 25).flatMap((typed) => {
      const [before, text] = [failsBefore(jobText(typed)), slip(typed)];
      return before === null || text === null ? [] : [outcomeOf(text, before)];
    });
    expect(outcomes).toContain("silent");
  });
});

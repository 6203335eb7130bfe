/** Details of rods: dimensions that tell the truth, words over nothing, what is not given said so, every lot once with its count. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Rod } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { findCollisions, type Scene, type SceneGroup } from "../../../src/sheets/index.js";
import { drawRodDetails } from "../../../src/sheets/rods/rod-details.js";
import { drawTravellers } from "../../../src/sheets/rods/travellers.js";
import { inches, type Length, millimetres, parseLength, type Unit } from "../../../src/units/index.js";
import { bottomsOf, papersOf, rodGroup } from "./rod-cases.js";
import { groupsOf, textsOf, wordsOf } from "./scene-walk.js";

const none = missing("rods.test", "not given in this test");
const NAMES = Object.keys(bottomsOf(inches(1)));

const viewsOf = (scenes: readonly Scene[]): readonly SceneGroup[] =>
  scenes.flatMap(({ items }) => groupsOf(items, "rod-view"));

/** Value, end points on paper and printed figure say the same; a dimension over a break says that it does not measure. */
function expectTruth(view: SceneGroup, unit: Unit): void {
  const scale = Number(view.data.scale);
  for (const { data, items } of groupsOf(view.items, "dimension")) {
    const [figure] = textsOf(items);
    const parsed = parseLength(figure?.text ?? "", unit);
    if (!parsed.ok) throw new Error(`${figure?.text}: ${parsed.message}`);
    expect(Math.abs(parsed.value - Number(data.valueNm))).toBeLessThan(unit === "in" ? 1271 : 501);
    const paper = Math.hypot(Number(data.x1) - Number(data.x0), Number(data.y1) - Number(data.y0));
    if (data.broken === undefined) expect(Math.abs((paper / scale) * 1e6 - Number(data.valueNm))).toBeLessThan(2);
  }
  if (view.data.broken === 0 && !wordsOf({ items: view.items } as Scene).includes("NOT GIVEN"))
    expect(groupsOf(view.items, "dimension").filter(({ data }) => data.broken === 1)).toEqual([]);
}

const rods = fc.record({
  unit: fc.constantFrom<Unit>("in", "mm"),
  size: fc.constantFrom(0, 1, 2, 3),
  bottom: fc.constantFrom(...NAMES),
  projection: fc.integer({ min: 3, max: 14 }),
  embedment: fc.integer({ min: 6, max: 60 }),
  thread: fc.constantFrom<number | "full" | null>(2, 3, 5, "full", null),
  lower: fc.constantFrom<number | null>(1.5, 3, null),
  lacks: fc.subarray(["projection", "embedment", "grade", "finish", "nut", "threadClass"] as const, { maxLength: 2 }),
  length: fc.constantFrom<number | null>(null, null, 3, 20),
});

const INCH = [["3/4", inches(0.75)], ["1", inches(1)], ["1-1/4", inches(1.25)], ["2", inches(2)]] as const;
const METRIC = [["M16", millimetres(16)], ["M24", millimetres(24)], ["M30", millimetres(30)], ["M48", millimetres(48)]] as const;

type Spec = typeof rods extends fc.Arbitrary<infer T> ? T : never;

function changesOf({ unit, size, bottom, projection, embedment, thread, lower, lacks, length }: Spec): Partial<Rod> {
  const [name, diameter] = (unit === "in" ? INCH : METRIC)[size] ?? INCH[0];
  const times = (factor: number) => given(Math.round(diameter * factor) as Length, "job");
  const whole = Math.round(diameter * (projection + embedment)) + Math.round(diameter * (length ?? 0));
  return {
    size: name,
    diameter,
    projection: times(projection),
    embedment: times(embedment),
    threadLength: thread === null || thread === "full" ? none : times(thread),
    fullThread: thread === "full",
    bottomThread: lower === null ? none : times(lower),
    bottom: bottomsOf(diameter)[bottom] ?? none,
    ...(length === null ? {} : { length: given(whole as Length, "job") }),
    ...Object.fromEntries(lacks.map((key) => [key, none])),
  };
}

const scenesOf = (spec: Spec): readonly Scene[] => {
  const papers = papersOf([rodGroup(spec.unit, changesOf(spec))], { unit: spec.unit, status: "for approval" }, ["B1"]);
  return [...drawRodDetails(papers), ...drawTravellers(papers)];
};

describe("details and travellers of arbitrary rods", () => {
  it("have dimensions that tell the truth", () => {
    fc.assert(
      fc.property(rods, (spec) => {
        const views = viewsOf(scenesOf(spec));
        expect(views).toHaveLength(2);
        for (const view of views) expectTruth(view, spec.unit);
      }),
      { numRuns: 150 },
    );
  });

  it("have no words over words or lines, in or out of their frames", () => {
    fc.assert(
      fc.property(rods, (spec) => {
        for (const scene of scenesOf(spec)) expect(findCollisions(scene)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

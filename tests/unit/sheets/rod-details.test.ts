/** Details of rods: dimensions that tell the truth, words over nothing, what is not given said so, every lot once with its count. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Rod } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Scene, SceneGroup } from "../../../src/sheets/index.js";
import { drawLabels } from "../../../src/sheets/rods/labels.js";
import { drawRodDetails } from "../../../src/sheets/rods/rod-details.js";
import { titleWords } from "../../../src/sheets/rods/rod-words.js";
import { drawTravellers } from "../../../src/sheets/rods/travellers.js";
import { inches, type Length, millimetres, parseLength, type Unit } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import { collisionsOf } from "./collisions.js";
import { bottomsOf, onlyLot, papersOf, rodGroup } from "./rod-cases.js";
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

const INCH = [
  ["3/4", inches(0.75)],
  ["1", inches(1)],
  ["1-1/4", inches(1.25)],
  ["2", inches(2)],
] as const;
const METRIC = [
  ["M16", millimetres(16)],
  ["M24", millimetres(24)],
  ["M30", millimetres(30)],
  ["M48", millimetres(48)],
] as const;

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
      { numRuns: 80 },
    );
  });

  it("have no words over words or lines, in or out of their frames", () => {
    fc.assert(
      fc.property(rods, (spec) => {
        for (const scene of scenesOf(spec)) expect(collisionsOf(scene)).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });
});

const wordsOfAll = (scenes: readonly Scene[]): string => scenes.map(wordsOf).join("\n");

describe("a detail", () => {
  const one = (changes: Partial<Rod>, held: readonly string[] = []) => {
    const papers = papersOf([rodGroup("in", changes)], {}, held);
    return { papers, scenes: drawRodDetails(papers), words: wordsOfAll(drawRodDetails(papers)).replaceAll("\n", " ") };
  };

  it("says how many, of what, with the colour of its end as word and hatching", () => {
    const { scenes, words } = one({ bottomThread: given(inches(4), "job") });
    expect(words).toContain("24 OFF");
    expect(words).toContain("F1554 55");
    expect(words).toContain("YELLOW END");
    expect(words).toContain("1-1/4-7 UNC-2A, BOTH ENDS");
    expect(scenes.flatMap(({ items }) => groupsOf(items, "color-swatch"))).toHaveLength(1);
  });

  it("adds the cut length up, term by term", () => {
    const { words } = one({});
    // 9 + 24 + 1.251 (ASME B18.2.2 heavy hex, greatest height) + 1/2 + rounding up to 1/8 = 34-7/8
    expect(words).toMatch(/CUT LENGTH 34-7\/8 in = projection 9 \+/);
    expect(words).toContain("nut 1.251");
    expect(words).toContain("rounded up 0.124");
  });

  it.each([
    ["projection", { projection: none }],
    ["embedment", { embedment: none }],
    ["thread", { threadLength: none }],
    ["lower end", { bottom: none }],
  ] as const)("says NOT GIVEN and NOT TO SCALE without %s", (_, changes) => {
    const { words } = one(changes);
    expect(words).toContain("NOT GIVEN");
    expect(words).toContain("NOT TO SCALE");
  });

  it("says HELD of a lot with a held base, and which; not of another", () => {
    expect(one({}, ["B1"]).words).toMatch(/HELD: B1 .*B1: 6 x 4 = 24 HELD/);
    expect(one({}, ["B9"]).words).not.toContain("HELD");
  });

  it("forbids welds on grade 105 and shows the tack weld that is ordered on grade 36", () => {
    const bottom = bottomsOf(inches(1.25))["welded nut"] ?? none;
    expect(one({ grade: given("F1554 105", "job") }).words).toContain("no tack weld on this grade");
    expect(one({ grade: given("F1554 36", "job"), bottom }).words).toContain("TACK WELD, UNDERSIDE OF THE NUT");
  });

  it("names the tolerances of F1554, for short and long rods", () => {
    expect(one({}).words).toContain("ASTM F1554: length +/- 1 in; thread length + 1 in - 0");
    expect(one({ embedment: given(inches(12), "job") }).words).toContain("ASTM F1554: length +/- 1/2 in");
  });

  it("draws each lot once, bases of like rods together", () => {
    const papers = papersOf([rodGroup("in"), rodGroup("in"), rodGroup("in", { projection: given(inches(10), "job") })]);
    const drawn = drawRodDetails(papers).flatMap(({ items }) => groupsOf(items, "rod-detail"));
    expect(drawn.map(({ data }) => [data.lot, data.quantity])).toEqual([
      ["R1", 48],
      ["R2", 24],
    ]);
  });

  it("stays on its page with a hundred bases, and the traveller lists them all", () => {
    const papers = papersOf(Array.from({ length: 100 }, () => rodGroup("in")));
    const pages = [...drawRodDetails(papers), ...drawTravellers(papers)];
    for (const page of pages) expect(collisionsOf(page)).toEqual([]);
    const names = drawTravellers(papers).flatMap(({ items }) =>
      groupsOf(items, "bundles").flatMap((each) => textsOf(each.items)),
    );
    expect(names.filter(({ text }) => /^B\d+$/.test(text))).toHaveLength(100);
  });

  it("has letters of 2.5 mm or more", () => {
    for (const unit of ["in", "mm"] as const)
      for (const name of NAMES) {
        const bottom = bottomsOf(unit === "in" ? inches(1.25) : millimetres(30))[name] ?? none;
        const papers = papersOf([rodGroup(unit, { bottom })], { unit });
        for (const page of [...drawRodDetails(papers), ...drawTravellers(papers)])
          expect(Math.min(...textsOf(page.items).map(({ height }) => height))).toBeGreaterThanOrEqual(2.5);
      }
  });
});

describe("a traveller", () => {
  it.each(["in", "mm"] as const)("is one page a lot, with a box for each operation, in %s", (unit) => {
    const diameter = unit === "in" ? inches(1.25) : millimetres(30);
    const groups = Object.values(bottomsOf(diameter)).map((bottom) => rodGroup(unit, { bottom }));
    const papers = papersOf(groups, { unit });
    const pages = drawTravellers(papers);
    expect(pages.map(({ items }) => groupsOf(items, "traveller-head")[0]?.data.lot)).toEqual(
      papers.lots.map(({ mark }) => mark),
    );
    for (const [i, page] of pages.entries()) {
      const words = groupsOf(page.items, "operations").flatMap(({ items }) => textsOf(items).map(({ text }) => text));
      for (const { name } of papers.lots[i]?.detail.operations ?? []) expect(words).toContain(name.toUpperCase());
    }
  });
});

describe("what must not be cut", () => {
  it.each(["in", "mm"] as const)("the count on a label, in %s", (unit) => {
    const words = Array.from({ length: 120 }, (_, i) => `R${i + 1}   ${i % 7 === 0 ? 12 : 4} RODS`);
    const labels = words.map((each) => ({
      ...{
        large: ["B1", each],
        lines: [],
        code: "x",
        count: 1,
        each: "BUNDLE # OF 1",
        from: 1,
        isHeld: false,
        data: {},
      },
    }));
    const drawn = [...drawLabels({ job: jobFixture({ unit }), version: "0", labels })].flatMap(({ items }) =>
      textsOf(items).map(({ text }) => text),
    );
    for (const each of words) expect(drawn).toContain(each);
  });

  it.each(["in", "mm"] as const)("the grade on a detail and a traveller, in %s", (unit) => {
    const grade = given("F1554 55", "job");
    const papers = papersOf([rodGroup(unit, { grade, weldable: true })], { unit, number: "24-118-EXTENSION" });
    for (const page of [...drawRodDetails(papers), ...drawTravellers(papers)])
      expect(textsOf(page.items).map(({ text }) => text)).toContain("F1554 55 S1");
  });
});

// ASTM F1554 measures a bent rod to the inside of its bend: 9 + 24 here, whatever the bar is.
it("a hooked rod is called by its length to the inside of the hook, and the reach of that", () => {
  const hook = given({ kind: "hook", reach: inches(5), radius: null } as const, "job");
  const lot = onlyLot(papersOf([rodGroup("in", { bottom: hook })]));
  expect(titleWords(lot.detail, "in")).toBe("1-1/4 x 33 TO HOOK x 5, HOOKED");
});

/** Sheets of arbitrary plates: dimensions that tell the truth, text over nothing, every hole in the table, the same bytes twice. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import type { Base, Corner, OpeningSpec, OutlineSpec, Pattern } from "../../src/job/model/job.js";
import { given, missing } from "../../src/job/model/job.js";
import {
  drawSettingSheet,
  drawSheet,
  findCollisions,
  type SceneGroup,
  type SheetRequest,
} from "../../src/sheets/index.js";
import type { Scene } from "../../src/sheets/scene.js";
import { inches, type Length, millimetres, parseLength, type Unit } from "../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";
import { placementAt, planFixture } from "../setting-out-plan.js";
import { collisionsOf } from "../unit/sheets/collisions.js";
import { groupsOf, textsOf } from "../unit/sheets/scene-walk.js";
import { trySheetCase } from "../unit/sheets/sheet-case.js";

const zero = inches(0);
const origin = { x: zero, y: zero };

/** Whole ticks of 1/16 in or 1 mm between two lengths in inches. */
function ticks(unit: Unit, low: number, high: number): fc.Arbitrary<Length> {
  const perInch = unit === "in" ? 16 : 25.4;
  const make = (count: number) => (unit === "in" ? inches(count / 16) : millimetres(count));
  return fc.integer({ min: Math.ceil(low * perInch), max: Math.floor(high * perInch) }).map(make);
}

function patterns(unit: Unit, side: number): fc.Arbitrary<Pattern> {
  const spacing = ticks(unit, side * 0.3, side * 0.8);
  const count = fc.integer({ min: 2, max: 6 });
  const rectangle = fc.record({
    kind: fc.constant("rectangle" as const),
    x: spacing,
    y: spacing,
    nx: count,
    ny: count,
    perimeter: fc.boolean(),
  });
  const bolts = fc.record({
    kind: fc.constant("circle" as const),
    diameter: spacing,
    count: fc.integer({ min: 3, max: 16 }),
    start: fc.oneof(
      fc.constant({ kind: "straddle" as const }),
      fc.constant({ kind: "on-axis" as const }),
      fc.integer({ min: 0, max: 359 }).map((degrees) => ({ kind: "degrees" as const, degrees })),
    ),
  });
  const place = ticks(unit, -side * 0.4, side * 0.4);
  const points = fc
    .uniqueArray(fc.record({ x: place, y: place }), {
      minLength: 1,
      maxLength: 12,
      selector: ({ x, y }) => `${x} ${y}`,
    })
    .map((at) => ({ kind: "points" as const, at }));
  return fc.oneof(rectangle, bolts, points);
}

function outlines(unit: Unit, side: number): fc.Arbitrary<OutlineSpec> {
  const length = ticks(unit, side, side * 1.2);
  const leg = ticks(unit, side * 0.02, side * 0.05);
  const shift = ticks(unit, -side * 0.05, side * 0.05);
  const at = fc.oneof(fc.constant(origin), fc.record({ x: shift, y: shift }));
  const corner: fc.Arbitrary<Corner> = fc.oneof(
    fc.constant({ kind: "square" as const }),
    fc.record({ kind: fc.constant("chamfer" as const), x: leg, y: leg }),
    leg.map((radius) => ({ kind: "round" as const, radius })),
    fc.record({ kind: fc.constant("notch" as const), x: leg, y: leg }),
  );
  return fc.oneof(
    fc.record({ kind: fc.constant("rectangle" as const), x: length, y: length, at, corner }),
    length.map((diameter) => ({ kind: "circle" as const, diameter, at: origin })),
  );
}

function openings(unit: Unit, side: number): fc.Arbitrary<OpeningSpec> {
  const width = ticks(unit, side * 0.05, side * 0.2);
  return fc.oneof(
    fc.constant({ kind: "none" as const }),
    width.map((diameter) => ({ kind: "circle" as const, diameter, at: origin })),
    fc.record({
      kind: fc.constant("rectangle" as const),
      x: width,
      y: width,
      radius: fc.constant(zero),
      at: fc.constant(origin),
    }),
  );
}

const marks = fc.oneof(
  fc.constant("T1"),
  fc.integer({ min: 1, max: 60 }).map((n) => "TEMPLATE-W".repeat(6).slice(0, n)),
);

/** What a sheet is made from; small, so that a counterexample can be read. Sides of 6 in to 12 ft. */
const specs = fc
  .record({ unit: fc.constantFrom<Unit>("in", "mm"), side: fc.constantFrom(6, 9, 14, 20, 30, 48, 80, 120) })
  .chain(({ unit, side }) =>
    fc.record({
      unit: fc.constant(unit),
      pattern: patterns(unit, side),
      outline: outlines(unit, side),
      opening: openings(unit, side),
      mark: marks,
      title: fc.oneof(fc.constant("Packing hall"), fc.string({ minLength: 0, maxLength: 120 })),
      held: fc.array(fc.constantFrom("Web A1-A2 is 1/8, at least 1/2 is needed.", "Nut room ".repeat(12)), {
        maxLength: 5,
      }),
      status: fc.constantFrom("preliminary" as const, "for approval" as const, "released" as const),
      neighbours: fc.boolean(),
    }),
  );

type Spec = typeof specs extends fc.Arbitrary<infer T> ? T : never;

/** Null where the plate stage finds that no plate can be made. */
function requestOf({
  unit,
  pattern,
  outline,
  opening,
  mark,
  title,
  held,
  status,
  neighbours,
}: Spec): SheetRequest | null {
  const fixture = baseFixture();
  const rod = unit === "in" ? { size: "3/4", diameter: inches(0.75) } : { size: "M20", diameter: millimetres(20) };
  const hole = unit === "in" ? inches(0.8125) : millimetres(22);
  const base: Base = {
    ...fixture,
    groups: [groupFixture({ pattern, hole: given(hole, "job") }, rod)],
    basePlate: neighbours ? fixture.basePlate : { ...fixture.basePlate, shape: missing("basePlate", "none") },
    template: { ...fixture.template, mark, outline, opening },
  };
  return trySheetCase(jobFixture({ unit, title, status }), base, { held });
}

interface Drawn {
  readonly request: SheetRequest;
  readonly scene: Scene;
}

/** The properties draw the same cases from the one seed; each is made and drawn once. */
const drawn = new Map<string, Drawn | null>();

/** The sheet of a case; skips the run where there is none. */
function sheetOf(spec: Spec): Drawn {
  const key = JSON.stringify(spec);
  let sheet = drawn.get(key);
  if (sheet === undefined) {
    const request = requestOf(spec);
    sheet = request === null ? null : { request, scene: drawSheet(request) };
    drawn.set(key, sheet);
  }
  fc.pre(sheet !== null);
  return sheet as Drawn;
}

const RUNS = { numRuns: 40 };

describe("sheets of arbitrary plates", () => {
  it("the text of a dimension is the distance between its own end points", () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const { scene } = sheetOf(spec);
        const scale = Number(groupsOf(scene.items, "plan")[0]?.data.scale);
        const dimensions = groupsOf(scene.items, "dimension");
        expect(dimensions.length).toBeGreaterThanOrEqual(1);
        for (const dimension of dimensions) expectTruth(dimension, scale, spec.unit);
      }),
      RUNS,
    );
  });

  it("no text lies over a text or a line, or leaves the sheet", () => {
    fc.assert(
      fc.property(specs, (spec) => {
        expect(collisionsOf(sheetOf(spec).scene)).toEqual([]);
      }),
      RUNS,
    );
  });

  it("the setting sheet is one upright page on which nothing lies over anything, with every rod to be measured", () => {
    fc.assert(
      fc.property(specs, fc.integer({ min: 0, max: 359 }), (spec, turn) => {
        const { request } = sheetOf(spec);
        const { plate, measures, weight, base } = request;
        const pieces = [{ role: "template", plate, measures, weight }] as const;
        const placements = [placementAt(["A", "1"], { turn, mark: base.mark })];
        const job = { ...request.job, plan: planFixture({ placements }) };
        const scene = drawSettingSheet({ ...request, job, pieces });
        expect(findCollisions(scene)).toEqual([]);
        expect(scene.height).toBeGreaterThan(scene.width);
        const blanks = groupsOf(scene.items, "setting-blanks").flatMap(({ items }) => textsOf(items));
        const isEach = request.rods.length <= 24;
        for (const { tag } of isEach ? request.rods : [])
          expect(blanks.filter(({ text }) => text === tag)).toHaveLength(2);
      }),
      RUNS,
    );
  });

  it("the hole table, where there is one, has a row for every hole", () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const { request, scene } = sheetOf(spec);
        const tables = groupsOf(scene.items, "hole-table");
        if (request.plate.holes.length > 8) expect(tables.length).toBeGreaterThan(0);
        if (tables.length === 0) return;
        const words = tables.flatMap((table) => textsOf(table.items).map(({ text }) => text));
        for (const { tag } of request.plate.holes) expect(words.filter((word) => word === tag)).toHaveLength(1);
        expect(words.some((word) => word.startsWith(`COUNT ${request.plate.holes.length}:`))).toBe(true);
      }),
      RUNS,
    );
  });

  it("is the same, byte for byte, when drawn and written twice", () => {
    const write = (scene: Scene) => writeSheetSvg(scene, newLeanDocument());
    fc.assert(
      fc.property(specs, (spec) => {
        const { request, scene } = sheetOf(spec);
        expect(write(scene)).toBe(write(drawSheet(structuredClone(request))));
      }),
      { ...RUNS, numRuns: 10 },
    );
  });
});

/** Value, end points on paper, arrow tips and printed figure all say the same. */
function expectTruth({ data, items }: SceneGroup, scale: number, unit: Unit): void {
  const { x0, y0, x1, y1, valueNm } = Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, Number(value)]),
  );
  const onPaper = Math.hypot(Number(x1) - Number(x0), Number(y1) - Number(y0));
  expect(Math.abs((onPaper / scale) * 1e6 - Number(valueNm))).toBeLessThan(2);
  for (const item of items) {
    if (item.kind !== "fill") continue;
    const [tip] = item.points;
    const away = [
      [x0, y0],
      [x1, y1],
    ].map(([x, y]) => Math.hypot(Number(x) - Number(tip?.x), Number(y) - Number(tip?.y)));
    expect(Math.min(...away)).toBeLessThan(1e-6);
  }
  const [figure] = textsOf(items);
  for (const { nanometres, lastPlace } of figuresOf(figure?.text ?? "", unit))
    expect(Math.abs(nanometres - Number(valueNm))).toBeLessThanOrEqual(lastPlace / 2 + 1);
}

/** `12`, `(12)` for reference, or as a tape has it with the exact figure in brackets: each with its last place, in nanometres. */
function figuresOf(words: string, unit: Unit): readonly { readonly nanometres: number; readonly lastPlace: number }[] {
  const exact = unit === "in" ? 2540 : 1000;
  const taped = unit === "in" ? 25.4e6 / 16 : 1e6;
  const [, plain = "", bracketed] = /^([^(]*?) ?(?:\((.*)\))?$/.exec(words.replace("Ø", "")) ?? [];
  const read = (text: string, lastPlace: number) => {
    const parsed = parseLength(text, unit);
    if (!parsed.ok) throw new Error(`${words}: ${parsed.message}`);
    return { nanometres: parsed.value, lastPlace };
  };
  if (bracketed === undefined) return [read(plain, exact)];
  return plain === "" ? [read(bracketed, taped)] : [read(plain, taped), read(bracketed, exact)];
}

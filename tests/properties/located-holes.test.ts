/**
 * Every hole is located on its sheet, and no extension line is read as another hole's. Read back from the drawn scene alone: ends of
 * dimensions, rows of the hole table, words of the bolt circles' callouts. What decides it in the program is not asked.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Base, OpeningSpec, Pattern, RodGroup } from "../../src/job/model/job.js";
import { given, missing } from "../../src/job/model/job.js";
import { SHEET_NAMES } from "../../src/job/model/sheet-names.js";
import {
  drawSheet,
  hasRoomOn,
  type Scene,
  type SceneGroup,
  type SceneItem,
  type SheetRequest,
} from "../../src/sheets/index.js";
import type { Hole } from "../../src/template/model.js";
import { inches, type Length, millimetres, nanometres, parseLength, type Unit } from "../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";
import { groupsOf, type SceneText, textsOf } from "../unit/sheets/scene-walk.js";
import { trySheetCase } from "../unit/sheets/sheet-case.js";

/** Whole ticks of 1/16 in or 1 mm between two lengths in inches. */
function ticks(unit: Unit, low: number, high: number): fc.Arbitrary<Length> {
  const perInch = unit === "in" ? 16 : 25.4;
  const make = (count: number) => (unit === "in" ? inches(count / 16) : millimetres(count));
  return fc.integer({ min: Math.ceil(low * perInch), max: Math.floor(high * perInch) }).map(make);
}

type Box = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

/** Rods in a box given in inches: lines, staggered rows, a skewed four, as built, anywhere. */
function patternsIn(unit: Unit, { x0, x1, y0, y1 }: Box): fc.Arbitrary<Pattern> {
  const point = fc.record({ x: ticks(unit, x0, x1), y: ticks(unit, y0, y1) });
  const points = (at: readonly { x: number; y: number }[]): Pattern => ({
    kind: "points",
    at: at.map(({ x, y }) => ({ x: nanometres(x), y: nanometres(y) })),
  });
  const distinct = { selector: ({ x, y }: { x: number; y: number }) => `${x} ${y}` };
  const anywhere = fc.uniqueArray(point, { minLength: 2, maxLength: 9, ...distinct }).map(points);
  const off = ticks(unit, -0.5, 0.5);
  const asBuilt = fc.array(fc.record({ x: off, y: off }), { minLength: 4, maxLength: 4 }).map((offs) => {
    const corners = [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ].map(([x = 0, y = 0]) => ({ x: inches(x), y: inches(y) }));
    return points(corners.map(({ x, y }, i) => ({ x: x + (offs[i]?.x ?? 0), y: y + (offs[i]?.y ?? 0) })));
  });
  const staggered = fc.record({ shift: ticks(unit, 0.1, 2), rise: ticks(unit, 0.1, 2) }).map(({ shift, rise }) => {
    const [step, low] = [inches((x1 - x0) / 3), inches(y0)];
    return points(
      [0, 1, 2].flatMap((i) => [
        { x: inches(x0) + i * step, y: low + (i % 2) * rise },
        { x: inches(x0) + i * step + shift, y: inches(y1) - (i % 2) * rise },
      ]),
    );
  });
  const line = (low: number, high: number) => fc.uniqueArray(ticks(unit, low, high), { minLength: 1, maxLength: 3 });
  const lines = fc
    .record({ x: line(x0, x1), y: line(y0, y1), perimeter: fc.boolean() })
    .map((pattern): Pattern => ({ kind: "lines", ...pattern }));
  return fc.oneof(anywhere, asBuilt, staggered, lines);
}

function centred(unit: Unit, side: number): fc.Arbitrary<Pattern> {
  const count = fc.integer({ min: 2, max: 4 });
  const spacing = ticks(unit, side * 0.3, side * 0.7);
  const start = fc.oneof(
    fc.constant({ kind: "straddle" as const }),
    fc.integer({ min: 0, max: 359 }).map((degrees) => ({ kind: "degrees" as const, degrees })),
  );
  return fc.oneof(
    fc.record({
      kind: fc.constant("rectangle" as const),
      x: spacing,
      y: spacing,
      nx: count,
      ny: count,
      perimeter: fc.boolean(),
    }),
    fc.record({
      kind: fc.constant("circle" as const),
      diameter: spacing,
      count: fc.integer({ min: 3, max: 8 }),
      start,
    }),
  );
}

/** One group, or two of two sizes at either side of the working point. */
function patterns(unit: Unit, side: number): fc.Arbitrary<readonly Pattern[]> {
  const h = side * 0.4;
  const left = patternsIn(unit, { x0: -h, x1: -0.1 * side, y0: -h, y1: h });
  const right = patternsIn(unit, { x0: 0.1 * side, x1: h, y0: -h, y1: h });
  const whole = patternsIn(unit, { x0: -h, x1: h, y0: -h, y1: h });
  return fc.oneof(
    whole.map((pattern) => [pattern]),
    centred(unit, side).map((pattern) => [pattern]),
    fc.tuple(left, right),
    fc.tuple(left, centred(unit, side * 0.2)),
  );
}

const origin = { x: inches(0), y: inches(0) };
const openings = (unit: Unit, side: number): fc.Arbitrary<OpeningSpec> => {
  const size = ticks(unit, side * 0.05, side * 0.15);
  const at = fc.record({ x: ticks(unit, -side * 0.2, side * 0.2), y: ticks(unit, -side * 0.2, side * 0.2) });
  return fc.oneof(
    fc.constant({ kind: "none" as const }),
    fc.record({ kind: fc.constant("circle" as const), diameter: size, at: fc.oneof(fc.constant(origin), at) }),
    fc.record({ kind: fc.constant("rectangle" as const), x: size, y: size, radius: fc.constant(inches(0)), at }),
  );
};

const specs = fc
  .record({ unit: fc.constantFrom<Unit>("in", "mm"), side: fc.constantFrom(14, 20, 30, 48, 80) })
  .chain(({ unit, side }) =>
    fc.record({
      unit: fc.constant(unit),
      side: fc.constant(side),
      patterns: patterns(unit, side),
      opening: openings(unit, side),
      shift: fc.oneof(
        fc.constant(origin),
        fc.record({ x: ticks(unit, 0, side * 0.08), y: ticks(unit, 0, side * 0.08) }),
      ),
      round: fc.boolean(),
      nails: fc.boolean(),
    }),
  );

type Spec = typeof specs extends fc.Arbitrary<infer T> ? T : never;

const RODS = {
  in: [
    { size: "3/4", diameter: inches(0.75), hole: inches(0.8125) },
    { size: "1", diameter: inches(1), hole: inches(1.0625) },
  ],
  mm: [
    { size: "M20", diameter: millimetres(20), hole: millimetres(22) },
    { size: "M24", diameter: millimetres(24), hole: millimetres(26) },
  ],
} as const;

function requestOf({ unit, side, patterns: all, opening, shift, round, nails }: Spec): SheetRequest | null {
  const fixture = baseFixture();
  const groups = all.map((pattern, i): RodGroup => {
    const { size, diameter, hole } = RODS[unit][i === 0 ? 0 : 1];
    return groupFixture({ letter: "AB"[i] ?? "A", pattern, hole: given(hole, "job") }, { size, diameter });
  });
  const base: Base = {
    ...fixture,
    groups,
    basePlate: { ...fixture.basePlate, shape: missing("basePlate", "none") },
    template: {
      ...fixture.template,
      outline: round
        ? { kind: "circle", diameter: inches(side * 1.3), at: shift }
        : { kind: "rectangle", x: inches(side), y: inches(side), at: shift, corner: { kind: "square" } },
      opening,
      nailHoles: nails ? [{ at: { x: inches(side * 0.45), y: inches(0) }, diameter: inches(0.25) }] : [],
    },
  };
  return trySheetCase(jobFixture({ unit }), base);
}

interface Drawn {
  readonly request: SheetRequest;
  readonly scene: Scene;
}

const drawn = new Map<string, Drawn | null>();

function sheetOf(spec: Spec, size: number | null = null): Drawn {
  const key = JSON.stringify([spec, size]);
  const known = drawn.get(key);
  const request = known === undefined ? chosen(requestOf(spec), size) : null;
  const sheet = known ?? (request === null ? null : { request, scene: drawSheet(request) });
  drawn.set(key, sheet);
  fc.pre(sheet !== null);
  return sheet as Drawn;
}

/** On a size of its series, by index; null: that which the program takes, or none where this one is refused. */
function chosen(request: SheetRequest | null, size: number | null): SheetRequest | null {
  const sheet = size === null ? null : request && SHEET_NAMES[request.job.unit][size];
  if (request === null || sheet === null || sheet === undefined) return request;
  return hasRoomOn(request, sheet) ? { ...request, job: { ...request.job, sheet } } : null;
}

/** The scene's own frame: where the working point stands, and paper over real. */
interface Frame {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

function frameOf({ items }: Scene): Frame {
  const point = groupsOf(items, "working-point")[0]?.data;
  return { x: Number(point?.x), y: Number(point?.y), scale: Number(groupsOf(items, "plan")[0]?.data.scale) };
}

type Axis = "x" | "y";

/** Places along an axis, in millimetres, that chains join to an edge of the plate or to the working point. */
function chained({ request, scene }: Drawn, axis: Axis): readonly number[] {
  const frame = frameOf(scene);
  const spans = groupsOf(groupsOf(scene.items, "plan"), "dimension").flatMap(({ data }) => {
    const [along, across] = axis === "x" ? (["x", "y"] as const) : (["y", "x"] as const);
    const isAlong = Math.abs(Number(data[`${across}0`]) - Number(data[`${across}1`])) < 1e-6;
    const real = (end: 0 | 1) => (Number(data[`${along}${end}`]) - frame[along]) / frame.scale;
    return isAlong ? [[real(0), real(1)] as const] : [];
  });
  const { extent } = request.measures;
  const edges = axis === "x" ? [extent.x0, extent.x1] : [extent.y0, extent.y1];
  return clusters(spans)
    .filter((places) => isAnchored(places, edges))
    .flat();
}

/** Sets of places that are joined by spans. */
function clusters(spans: readonly (readonly [number, number])[]): readonly (readonly number[])[] {
  return spans.reduce<readonly (readonly number[])[]>((some, span) => {
    const touches = (places: readonly number[]) => places.some((place) => span.some((end) => isNear(end, place)));
    return [...some.filter((places) => !touches(places)), [...span, ...some.filter(touches).flat()]];
  }, []);
}

/** From an edge, from the working point, or evenly about it (a symmetric pattern on its centre line: common practice). */
function isAnchored(places: readonly number[], edges: readonly number[]): boolean {
  const has = (value: number) => places.some((place) => isNear(place, value));
  return edges.some(has) || has(0) || places.every((place) => has(-place));
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-3;
}

/** Rows of the hole table by tag, in millimetres. */
function tabled({ request, scene }: Drawn): ReadonlyMap<string, { readonly x: number; readonly y: number }> {
  const { unit } = request.job;
  const rows = new Map<string, SceneText[]>();
  groupsOf(scene.items, "hole-table").forEach((table, i) => {
    for (const item of textsOf(table.items)) {
      const key = `${i} ${item.at.y.toFixed(3)}`;
      rows.set(key, [...(rows.get(key) ?? []), item]);
    }
  });
  const read = (words: string | undefined) => {
    const reading = parseLength(words ?? "", unit);
    return reading.ok ? reading.value / 1e6 : Number.NaN;
  };
  const cells = [...rows.values()].map((row) => [...row].sort((a, b) => a.at.x - b.at.x).map(({ text }) => text));
  return new Map(cells.map(([tag = "", x, y]) => [tag, { x: read(x), y: read(y) }]));
}

/** What callouts and notes say of bolt circles: diameter in millimetres, count, tag and angle of the first. */
function circlesOf({ request, scene }: Drawn) {
  const callouts = [...groupsOf(scene.items, "callout"), ...groupsOf(scene.items, "notes")];
  return callouts.flatMap(({ items }) => {
    const words = textsOf(items)
      .map(({ text }) => text)
      .join(" ");
    const found = /ON Ø(\S+) BOLT CIRCLE, (\d+) SPACED .*?([A-Z]+\d+) AT ([\d.]+)°/.exec(words);
    if (found === null) return [];
    const diameter = parseLength(found[1] ?? "", request.job.unit);
    if (!diameter.ok) throw new Error(words);
    return [{ radius: diameter.value / 2e6, count: Number(found[2]), tag: found[3] ?? "", start: Number(found[4]) }];
  });
}

/** True where the words alone would set the hole within 0.1 mm, or the thousandth of its radius that 0.01 degrees is. */
function isOnCircle({ center }: Hole, { radius, count, start }: ReturnType<typeof circlesOf>[number]): boolean {
  return Array.from({ length: count }).some((_, k) => {
    const angle = ((start + (360 * k) / count) * Math.PI) / 180;
    const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    return Math.hypot(center.x - x, center.y - y) < 0.1 + radius / 1000;
  });
}

function expectLocated(sheet: Drawn): void {
  const lines = { x: chained(sheet, "x"), y: chained(sheet, "y") };
  const rows = tabled(sheet);
  const circles = circlesOf(sheet);
  for (const hole of sheet.request.plate.holes) {
    const { tag, center, role } = hole;
    const row = rows.get(tag);
    const inTable = row !== undefined && Math.hypot(row.x - center.x, row.y - center.y) < 2e-3;
    const inChains = (["x", "y"] as const).every((axis) => lines[axis].some((place) => isNear(place, center[axis])));
    const letter = tag.replace(/\d+/, "");
    const onCircle = circles.some((circle) => circle.tag.startsWith(letter) && isOnCircle(hole, circle));
    const onAxes = role === "opening" && center.x === 0 && center.y === 0;
    expect(inTable || inChains || onCircle || onAxes, `${tag} at ${center.x}, ${center.y}`).toBe(true);
  }
}

/** Distance on paper from a straight line to a hole's edge. */
function distanceToHole(hole: Hole, frame: Frame, from: Point, to: Point): number {
  const center = { x: frame.x + hole.center.x * frame.scale, y: frame.y + hole.center.y * frame.scale };
  const { shape } = hole;
  const [w, h] =
    shape.kind === "circle" ? [0, 0] : [(shape.width / 2e6) * frame.scale, (shape.height / 2e6) * frame.scale];
  const radius = shape.kind === "circle" ? (shape.diameter / 2e6) * frame.scale : 0;
  const dx = Math.max(0, Math.min(from.x, to.x) - center.x - w, center.x - w - Math.max(from.x, to.x));
  const dy = Math.max(0, Math.min(from.y, to.y) - center.y - h, center.y - h - Math.max(from.y, to.y));
  return Math.hypot(dx, dy) - radius;
}

type Point = { readonly x: number; readonly y: number };

function linesOf(items: readonly SceneItem[]): readonly (readonly [Point, Point])[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return linesOf(item.items);
    if (item.kind !== "stroke" || item.role !== "extension") return [];
    return item.parts.flatMap((part) => (part.kind === "line" ? [[part.from, part.to] as const] : []));
  });
}

function expectApart({ request, scene }: Drawn): void {
  const frame = frameOf(scene);
  const plan: readonly SceneGroup[] = groupsOf(scene.items, "plan");
  for (const [from, to] of linesOf(plan)) {
    const axis = from.x === to.x ? "x" : "y";
    for (const hole of request.plate.holes) {
      const isOwn = Math.abs(frame[axis] + hole.center[axis] * frame.scale - from[axis]) < 1e-5;
      if (!isOwn) expect(distanceToHole(hole, frame, from, to), `${axis} past ${hole.tag}`).toBeGreaterThanOrEqual(2);
    }
  }
}

describe("holes of arbitrary patterns", () => {
  it("have x and y on their sheet, by chains, by a bolt circle's callout, or in the hole table, and no extension line of another within 2 mm", () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const sheet = sheetOf(spec);
        expectLocated(sheet);
        expectApart(sheet);
      }),
    );
  });

  it("are located on every size of sheet that a job may choose, which is the one that is drawn", () => {
    fc.assert(
      fc.property(specs, fc.integer({ min: 0, max: 3 }), (spec, size) => {
        const sheet = sheetOf(spec, size);
        expect(sheet.scene.size).toBe(SHEET_NAMES[sheet.request.job.unit][size]);
        expectLocated(sheet);
      }),
    );
  });
});

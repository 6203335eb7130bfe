/** What is scribed on random plates: nothing reads as one with its neighbour, tags stand at their holes, rank decides. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Extent, Point } from "../../src/geometry/index.js";
import type { Base, Job, Pattern } from "../../src/job/model/job.js";
import { given } from "../../src/job/model/job.js";
import { placeRods } from "../../src/rods/index.js";
import type { Mark, OmittedMark, Plate } from "../../src/template/index.js";
import { makePlate } from "../../src/template/index.js";
import { inches } from "../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../fixture.js";
import { pointGap } from "../point-gap.js";
import { placementAt, planFixture } from "../setting-out-plan.js";

const eighths = (least: number, most: number) =>
  fc.integer({ min: least * 8, max: most * 8 }).map((n) => inches(n / 8));
const pattern: fc.Arbitrary<Pattern> = fc.oneof(
  fc
    .record({ x: eighths(4, 20), y: eighths(4, 20) })
    .map((size) => ({ kind: "rectangle", ...size, nx: 2, ny: 2, perimeter: false }) as const),
  fc
    .record({
      x: eighths(12, 24),
      y: eighths(12, 24),
      nx: fc.integer({ min: 2, max: 4 }),
      ny: fc.integer({ min: 2, max: 4 }),
    })
    .map((size) => ({ kind: "rectangle", ...size, perimeter: true }) as const),
  fc
    .record({ diameter: eighths(12, 30), count: fc.integer({ min: 3, max: 12 }) })
    .map((size) => ({ kind: "circle", ...size, start: { kind: "straddle" } }) as const),
  fc
    .uniqueArray(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -2, max: 2 })), {
      minLength: 2,
      maxLength: 9,
      selector: String,
    })
    .map(
      (cells) =>
        ({ kind: "points", at: cells.map(([x, y]) => ({ x: inches(3.5 * x + y / 2), y: inches(4 * y) })) }) as const,
    ),
);
const letters = fc.constantFrom([0.5, 0.25], [0.625, 0.625], [0.75, 0.5]);
const mark = fc.constantFrom("T1", "T-204", "TEMPLATE-12-EAST");
/** The properties draw the same plates from the one seed; each is made once. */
const made = new Map<string, Plate>();
const plates = fc
  .record({ pattern, letters, mark, isAuto: fc.boolean(), turn: fc.constantFrom(null, 0, 90, 30) })
  .map((drawn) => {
    const key = JSON.stringify(drawn);
    const {
      pattern: rods,
      letters: [most = 0.5, least = 0.5],
      ...rest
    } = drawn;
    const plate = made.get(key) ?? plateOf(rods, inches(most), inches(least), rest);
    made.set(key, plate);
    return plate;
  });

function plateOf(
  rodPattern: Pattern,
  textHeight: Job["shop"]["marking"]["textHeight"],
  leastTextHeight: typeof textHeight,
  { mark: name, isAuto, turn }: { readonly mark: string; readonly isAuto: boolean; readonly turn: number | null },
): Plate {
  const shop = shopFixture({ marking: { how: "scribe", textHeight, leastTextHeight, clearance: inches(0.125) } });
  const plan = turn === null ? null : planFixture({ placements: [placementAt(["A", "1"], { turn })] });
  const fixture = baseFixture({ groups: [groupFixture({ pattern: rodPattern })] });
  const base: Base = {
    ...fixture,
    template: {
      ...fixture.template,
      mark: name,
      support: given("bearers", "job"),
      outline: { kind: "auto", corner: { kind: "square" } },
      opening: isAuto ? { kind: "auto" } : { kind: "none" },
    },
  };
  const rods = placeRods(base);
  const plate = rods.ok ? makePlate(jobFixture({ shop, plan }), base, rods.value) : rods;
  if (!plate.ok) throw new Error(plate.findings.map(({ message }) => message).join());
  return plate.value;
}

const isLettered = ({ text }: Mark) => text !== "";
const texts = (list: readonly (Mark | OmittedMark)[], kind: string) => list.filter((each) => each.kind === kind);

function gapOf(a: Extent, b: Extent): { readonly x: number; readonly y: number } {
  return { x: Math.max(a.x0 - b.x1, b.x0 - a.x1, 0), y: Math.max(a.y0 - b.y1, b.y0 - a.y1, 0) };
}

describe("what is scribed", () => {
  test("between the letters of two marks at least their height is clear, and twice that at the ends of a line", () => {
    fc.assert(
      fc.property(plates, ({ marks }) => {
        const lettered = marks.filter(isLettered);
        for (const [i, one] of lettered.entries())
          for (const other of lettered.slice(i + 1)) {
            const height = Math.max(one.textHeight, other.textHeight) / 1e6;
            const gap = gapOf(one.extent, other.extent);
            expect(Math.hypot(gap.x, gap.y)).toBeGreaterThanOrEqual(height - 1e-4);
            const reads = [one, other].every(({ extent }) => extent.x1 - extent.x0 > extent.y1 - extent.y0);
            const later = Math.min(one.textHeight, other.textHeight) / 1e6;
            if (reads && gap.y === 0) expect(gap.x).toBeGreaterThanOrEqual(height + later - 1e-4);
          }
      }),
      { numRuns: 50 },
    );
  });

  test("a tag stands nearer to its own hole than to any other, measured to its edge and to its middle", () => {
    fc.assert(
      fc.property(plates, ({ marks, holes }) => {
        for (const { text, extent } of marks.filter(({ kind }) => kind === "tag")) {
          const middle: Extent = {
            x0: (extent.x0 + extent.x1) / 2,
            x1: (extent.x0 + extent.x1) / 2,
            y0: (extent.y0 + extent.y1) / 2,
            y1: (extent.y0 + extent.y1) / 2,
          };
          const own = holes.find(({ tag }) => text === `ROD ${tag}`);
          if (own === undefined) throw new Error(`no hole for ${text}`);
          for (const other of holes.filter((hole) => hole !== own && hole.role === "rod"))
            for (const box of [extent, middle])
              expect(pointGap(other.center, box)).toBeGreaterThan(pointGap(own.center, box));
        }
      }),
      { numRuns: 50 },
    );
  });

  test("everything that belongs on a plate is scribed or left out, once; rod sizes stand once", () => {
    fc.assert(
      fc.property(plates, ({ marks, omitted, holes, mark: name }) => {
        const all = [...marks, ...omitted];
        expect(texts(all, "mark").map(({ text }) => text)).toEqual([`${name} REV B`]);
        expect(texts(all, "top")).toHaveLength(1);
        expect(
          texts(all, "axis")
            .map(({ text }) => text)
            .sort(),
        ).toEqual(["+X", "+Y"]);
        expect(texts(all, "size").map(({ text }) => text)).toEqual(["RODS 1-1/4"]);
        const tags = holes.filter(({ role }) => role === "rod").map(({ tag }) => `ROD ${tag}`);
        expect(
          texts(all, "tag")
            .map(({ text }) => text)
            .sort(),
        ).toEqual([...tags].sort());
      }),
      { numRuns: 30 },
    );
  });

  test("a piece mark is left out only where it finds no room on the bare plate, with nothing else scribed", () => {
    let leftOut = 0;
    fc.assert(
      fc.property(
        fc.record({ x: eighths(3, 7), y: eighths(3, 7) }),
        fc.constantFrom("T-1", "T-1234", "T-12345678", "TEMPLATE-OF-THE-CROWDED-KIND"),
        (size, name) => {
          const rodPattern = { kind: "rectangle", ...size, nx: 2, ny: 2, perimeter: false } as const;
          const plate = plateOf(rodPattern, inches(0.625), inches(0.625), { mark: name, isAuto: true, turn: null });
          if (plate.omitted.every(({ kind }) => kind !== "mark")) return;
          leftOut += 1;
          expect(roomOnBarePlate(plate, boxesOf(plate, inches(0.625) / 1e6))).toBe(false);
        },
      ),
      { numRuns: 40 },
    );
    expect(leftOut).toBeGreaterThan(3);
  });
});

/** A box that is surely large enough for the mark in one line or two, either way round: as wide as its letters at least are. */
function boxesOf({ mark: name }: Plate, height: number): readonly { readonly w: number; readonly h: number }[] {
  const wide = (text: string) => 1.1 * text.length * height;
  const one = { w: wide(`${name} REV B`), h: 1.4 * height };
  const two = { w: Math.max(wide(name), wide("REV B")), h: 3.2 * height };
  return [one, two].flatMap(({ w, h }) => [
    { w, h },
    { w: h, h: w },
  ]);
}

/** A fine sweep: off the edges of the square plate and its rod holes by twice the shop's clearance. */
function roomOnBarePlate({ region, holes }: Plate, boxes: ReturnType<typeof boxesOf>): boolean {
  if (region.outer.kind !== "path") throw new Error("a rectangle was expected");
  const corners = region.outer.segments.map(({ from }) => from);
  const [x0, x1] = [Math.min(...corners.map(({ x }) => x)), Math.max(...corners.map(({ x }) => x))];
  const [y0, y1] = [Math.min(...corners.map(({ y }) => y)), Math.max(...corners.map(({ y }) => y))];
  const off = 2 * 3.175;
  const rods = holes.flatMap(({ role, shape, center }) =>
    role === "rod" && shape.kind === "circle" ? [{ center, radius: shape.diameter / 2e6 }] : [],
  );
  const isClear = (at: Point, { w, h }: { readonly w: number; readonly h: number }) =>
    rods.every(
      ({ center, radius }) => pointGap(center, { x0: at.x, y0: at.y, x1: at.x + w, y1: at.y + h }) >= radius + off,
    );
  return boxes.some((box) => {
    for (let x = x0 + off; x + box.w <= x1 - off; x += 3)
      for (let y = y0 + off; y + box.h <= y1 - off; y += 3) if (isClear({ x, y }, box)) return true;
    return false;
  });
}

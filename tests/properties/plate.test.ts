/** Invariants of patterns and plates: order of rows, moves, mirrors; automatic sizes; marks. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../src/geometry/index.js";
import { containsPoint, measureArea, twiceDepthInside, twiceEdgeWeb, twiceWeb } from "../../src/geometry/index.js";
import type { Base, Corner, Offset, Pattern, TemplateSpec } from "../../src/job/model/job.js";
import { given } from "../../src/job/model/job.js";
import { clockwiseFromNorthWest, placeRods } from "../../src/rods/index.js";
import type { Plate } from "../../src/template/index.js";
import { makePlate, measurePlate } from "../../src/template/index.js";
import { inches, nanometres } from "../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";
import { strokeDistance } from "../strokes.js";

/** Lengths on the inch grid to 1/64: every other one is an odd number of nanometres. */
const inchGrid = (least: number, most: number) =>
  fc.integer({ min: least * 64, max: most * 64 }).map((n) => inches(n / 64));
const offset: fc.Arbitrary<Offset> = fc.record({ x: inchGrid(-10, 10), y: inchGrid(-10, 10) });
const spots: fc.Arbitrary<readonly Offset[]> = fc
  .uniqueArray(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 })), {
    minLength: 1,
    maxLength: 12,
    selector: ([x, y]) => `${x} ${y}`,
  })
  .map((cells) => cells.map(([x, y]) => ({ x: inches(3 * x + x / 64), y: inches(3 * y + y / 64) })));
const corner: fc.Arbitrary<Corner> = fc.oneof(
  fc.constant({ kind: "square" } as const),
  fc.record({ kind: fc.constant("chamfer" as const), x: inchGrid(1, 4), y: inchGrid(1, 4) }),
  fc.record({ kind: fc.constant("round" as const), radius: inchGrid(1, 4) }),
  fc.record({ kind: fc.constant("notch" as const), x: inchGrid(1, 4), y: inchGrid(1, 4) }),
);

const job = jobFixture();
const points = (at: readonly Offset[]): Pattern => ({ kind: "points", at });

function baseWith(pattern: Pattern, template: Partial<TemplateSpec>): Base {
  const base = baseFixture({ groups: [groupFixture({ pattern })] });
  return { ...base, template: { ...base.template, support: given("bearers", "job"), ...template } };
}

function plateOf(base: Base): Plate {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("the pattern has faults");
  const outcome = makePlate(job, base, rods.value);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join());
  return outcome.value;
}

const auto = (treatment: Corner): Partial<TemplateSpec> => ({
  outline: { kind: "auto", corner: treatment },
  opening: { kind: "auto" },
});

describe("patterns", () => {
  test("the order in which points are typed changes no plate", () => {
    fc.assert(
      fc.property(spots, corner, fc.integer(), (at, treatment, seed) => {
        const shuffled = [...at].sort((a, b) => (a.x ^ seed) - (b.x ^ seed) || a.y - b.y);
        expect(plateOf(baseWith(points(shuffled), auto(treatment)))).toEqual(
          plateOf(baseWith(points(at), auto(treatment))),
        );
      }),
      { numRuns: 40 },
    );
  });

  test("moving the points moves the tags with them", () => {
    fc.assert(
      fc.property(spots, offset, (at, by) => {
        const order = (list: readonly Offset[]) => {
          const all = list.map(({ x, y }): Point => ({ x: x / 1e6, y: y / 1e6 }));
          return clockwiseFromNorthWest(all).map((one) => all.indexOf(one));
        };
        const moved = at.map(({ x, y }) => ({ x: nanometres(x + by.x), y: nanometres(y + by.y) }));
        expect(order(moved)).toEqual(order(at));
      }),
    );
  });
});

describe("automatic plates", () => {
  test("edge, seat and opening rules hold by construction, sizes are whole increments", () => {
    fc.assert(
      fc.property(spots, corner, (at, treatment) => {
        const plate = plateOf(baseWith(points(at), auto(treatment)));
        const seat = inches(2.309) + inches(0.0625);
        const opening = plate.holes.find(({ role }) => role === "opening");
        for (const hole of plate.holes) {
          expect(twiceEdgeWeb(hole.contour, plate.region.outer)).toBeGreaterThanOrEqual(2 * job.shop.edge.value);
          if (hole.role !== "rod") continue;
          expect(twiceDepthInside(hole.center, plate.region.outer)).toBeGreaterThanOrEqual(seat);
          if (opening === undefined) continue;
          expect(twiceWeb(hole.contour, opening.contour)).toBeGreaterThanOrEqual(2 * job.shop.web.value);
          expect(-twiceDepthInside(hole.center, opening.contour)).toBeGreaterThanOrEqual(seat);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("one increment less both ways breaks a rule: the size is the least", () => {
    fc.assert(
      fc.property(spots, (at) => {
        const plate = plateOf(baseWith(points(at), auto({ kind: "square" })));
        const { x0, x1, y0, y1 } = measurePlate(plate).extent;
        const step = job.shop.increment.value / 1e6;
        const seat = inches(2.309) + inches(0.0625);
        const least = (axis: "x" | "y", from: number, to: number) =>
          Math.min(
            ...plate.holes
              .filter(({ role }) => role === "rod")
              .flatMap(({ center }) => [center[axis] - from, to - center[axis]]),
          );
        expect(2 * (least("x", x0, x1) - step / 2) * 1e6).toBeLessThan(seat);
        expect(2 * (least("y", y0, y1) - step / 2) * 1e6).toBeLessThan(seat);
      }),
      { numRuns: 40 },
    );
  });
});

describe("plates", () => {
  test("area = outer - holes; moving everything changes no figure, no tag and no mark's text", () => {
    fc.assert(
      fc.property(spots, offset, (at, by) => {
        const plateAt = (shift: Offset) => {
          const move = ({ x, y }: Offset) => ({ x: nanometres(x + shift.x), y: nanometres(y + shift.y) });
          const outline = {
            kind: "rectangle",
            x: inches(26),
            y: inches(26),
            at: shift,
            corner: { kind: "square" },
          } as const;
          const nailHoles = [{ at: move({ x: inches(12), y: inches(12) }), diameter: inches(0.5) }];
          return plateOf(baseWith(points(at.map(move)), { outline, opening: { kind: "none" }, nailHoles }));
        };
        const [still, moved] = [plateAt({ x: nanometres(0), y: nanometres(0) }), plateAt(by)];
        const [a, b] = [measurePlate(still), measurePlate(moved)];
        expect(a.netArea).toBeCloseTo(
          measureArea(still.region.outer) - still.region.inner.reduce((sum, hole) => sum + measureArea(hole), 0),
          6,
        );
        expect(b.netArea).toBeCloseTo(a.netArea, 6);
        expect(b.cutLength).toBeCloseTo(a.cutLength, 6);
        expect(b.pierces).toBe(a.pierces);
        expect(moved.holes.map(({ tag }) => tag)).toEqual(still.holes.map(({ tag }) => tag));
      }),
      { numRuns: 40 },
    );
  });

  test("marks keep off edges and holes on any plate", () => {
    const clearance = job.shop.marking.clearance / 1e6 - 2e-6;
    fc.assert(
      fc.property(spots, corner, offset, (at, treatment, place) => {
        const outline = { kind: "rectangle", x: inches(20), y: inches(16), at: place, corner: treatment } as const;
        const plate = plateOf(
          baseWith(points(at), { outline, opening: { kind: "circle", diameter: inches(5), at: place } }),
        );
        for (const { strokes } of plate.marks) {
          for (const stroke of strokes) {
            for (const contour of [plate.region.outer, ...plate.region.inner]) {
              expect(strokeDistance(stroke, contour)).toBeGreaterThanOrEqual(clearance);
            }
            for (const spot of stroke) {
              expect(containsPoint(plate.region.outer, spot)).toBe(true);
              expect(plate.region.inner.some((hole) => containsPoint(hole, spot))).toBe(false);
            }
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});

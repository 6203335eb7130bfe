/** Every turn in which a base plate drops on, against a plain search: every quarter of a degree, laid middle on middle. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/index.js";
import type { Pattern, RodGroup } from "../../src/job/model/job.js";
import { given } from "../../src/job/model/job.js";
import type { TurnedPlate } from "../../src/orientation/index.js";
import { turnedPlates } from "../../src/orientation/index.js";
import type { PlacedRod } from "../../src/rods/index.js";
import { placeRods } from "../../src/rods/index.js";
import { inches, nanometres } from "../../src/units/index.js";
import { baseFixture, groupFixture } from "../fixture.js";

const at = (x: number, y: number) => ({ x: nanometres(inches(1) * x), y: nanometres(inches(1) * y) });

const ring = fc
  .record({
    count: fc.integer({ min: 2, max: 12 }),
    degrees: fc.integer({ min: 0, max: 719 }).map((half) => half / 2),
    diameter: fc.integer({ min: 18, max: 40 }),
  })
  .map(({ count, degrees, diameter }): Pattern => {
    return { kind: "circle", count, diameter: inches(diameter), start: { kind: "degrees", degrees } };
  });
const box = fc
  .tuple(fc.integer({ min: 40, max: 60 }), fc.integer({ min: 40, max: 60 }), fc.integer({ min: 2, max: 3 }))
  .map(
    ([x, y, nx]): Pattern => ({ kind: "rectangle", x: inches(x / 4), y: inches(y / 4), nx, ny: 2, perimeter: true }),
  );
/** A ring about any middle whose rods are off by up to 3/8 in: laid on itself by the clearances or not. */
const shaken = fc
  .record({
    count: fc.integer({ min: 3, max: 8 }),
    middle: fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })),
    off: fc.array(fc.tuple(fc.integer({ min: -24, max: 24 }), fc.integer({ min: -24, max: 24 })), {
      minLength: 8,
      maxLength: 8,
    }),
  })
  .map(({ count, middle: [x, y], off }): Pattern => {
    const spots = Array.from({ length: count }, (_, k) => {
      const angle = (2 * Math.PI * k) / count;
      const [dx = 0, dy = 0] = off[k] ?? [];
      return at(x + 10 * Math.cos(angle) + dx / 64, y + 10 * Math.sin(angle) + dy / 64);
    });
    return { kind: "points", at: spots };
  });
const pattern = fc.oneof(ring, box, shaken);
/** H - d from 1/8 to 1 in. */
const play = fc.integer({ min: 8, max: 64 }).map((n) => n / 64);

function placed(groups: readonly RodGroup[]) {
  const base = baseFixture({ groups });
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("the pattern has faults");
  return { base, rods: rods.value };
}

function clearance(rods: readonly PlacedRod[], rod: number, hole: number): number {
  const base = rods[hole]?.group.baseHole;
  const size = base?.kind === "given" ? base.value : 0;
  return (size - (rods[rod]?.group.rod.diameter ?? 0)) / 2e6;
}

type Pose = Pick<TurnedPlate, "cos" | "sin" | "shift">;

/** Of each rod the hole that stands over it, where the plate lies as it drops on; null where it does not. */
function partnersIn(rods: readonly PlacedRod[], { cos, sin, shift }: Pose, spare: number): readonly number[] | null {
  const holes = rods.map(({ center: { x, y } }): Point => {
    return { x: cos * x - sin * y + shift.x, y: sin * x + cos * y + shift.y };
  });
  const over = rods.map(({ center }, rod) =>
    holes.findIndex((hole, j) => Math.hypot(hole.x - center.x, hole.y - center.y) <= clearance(rods, rod, j) + spare),
  );
  return over.includes(-1) || new Set(over).size < over.length ? null : over;
}

/** Middle on middle, at every quarter of a degree and every whole share of a turn by the number of rods. */
function searched(rods: readonly PlacedRod[]): ReadonlySet<string> {
  const x = rods.reduce((sum, { center }) => sum + center.x, 0) / rods.length;
  const y = rods.reduce((sum, { center }) => sum + center.y, 0) / rods.length;
  const angles = [
    ...Array.from({ length: 1440 }, (_, k) => k / 4),
    ...Array.from({ length: rods.length }, (_, k) => (360 * k) / rods.length),
  ];
  const found = angles.flatMap((degrees) => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const shift = { x: x - (cos * x - sin * y), y: y - (sin * x + cos * y) };
    const partners = partnersIn(rods, { cos, sin, shift }, -1e-6);
    return partners === null || partners.every((hole, rod) => hole === rod) ? [] : [partners.join()];
  });
  return new Set(found);
}

function holds(groups: readonly RodGroup[], pin: Point = { x: 0, y: 0 }): void {
  const { base, rods } = placed(groups);
  const turned = turnedPlates(base, rods, pin);
  if (turned === "any") throw new Error("a single rod");
  const found = turned.map((plate) => partnersIn(rods, plate, 2e-6)?.join());
  expect(found).not.toContain(undefined);
  expect(new Set(found).size).toBe(found.length);
  expect(found).not.toContain(rods.map((_, rod) => rod).join());
  expect(found).toEqual(expect.arrayContaining([...searched(rods)]));
}

describe("turned base plates", () => {
  it("are all that a search by quarter degrees finds, each dropping on as it says", () => {
    fc.assert(
      fc.property(pattern, play, fc.integer({ min: -200, max: 200 }), (each, share, x) => {
        holds([groupFixture({ pattern: each, baseHole: given(inches(1.25 + share), "job") })], { x, y: 0 });
      }),
      { numRuns: 250 },
    );
  });

  it("are so too where rods of two sizes stand on two rings", () => {
    fc.assert(
      fc.property(ring, fc.integer({ min: 2, max: 8 }), play, play, (outer, count, share, other) => {
        const inner = { kind: "circle", count, diameter: inches(10), start: { kind: "on-axis" } } as const;
        holds([
          groupFixture({ pattern: outer, baseHole: given(inches(1.25 + share), "job") }),
          groupFixture(
            { letter: "B", pattern: inner, baseHole: given(inches(0.75 + other), "job") },
            { size: "3/4", diameter: inches(0.75) },
          ),
        ]);
      }),
      { numRuns: 120 },
    );
  });
});

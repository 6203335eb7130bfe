/** Properties of keys, wrong ways round and look-alikes, whatever the pattern and the outline. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { holeEdge } from "../../src/checks/rules/hole-edge.js";
import { seatOnPlate } from "../../src/checks/rules/seat-on-plate.js";
import { runRules } from "../../src/checks/run.js";
import { containsPoint, measureArea, pathFaults } from "../../src/geometry/index.js";
import type { Base, Corner, Offset, OutlineSpec, Pattern } from "../../src/job/model/job.js";
import { isSilent, matters, outlineSymmetryOrder, showsAtEdge, symmetryOrder } from "../../src/orientation/index.js";
import type { PlacedRod } from "../../src/rods/index.js";
import { placeRods } from "../../src/rods/index.js";
import type { Plate } from "../../src/template/index.js";
import { makePlate } from "../../src/template/index.js";
import { inches, millimetres, nanometres } from "../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";

const zero = nanometres(0);
const offset = (x: number, y: number): Offset => ({ x: inches(x), y: inches(y) });

const rectangular = fc
  .tuple(fc.integer({ min: 8, max: 16 }), fc.integer({ min: 8, max: 16 }), fc.integer({ min: 2, max: 3 }))
  .map(([x, y, nx]): Pattern => ({ kind: "rectangle", x: inches(x), y: inches(y), nx, ny: 2, perimeter: true }));
const bolts = fc
  .tuple(fc.integer({ min: 3, max: 9 }), fc.constantFrom("on-axis" as const, "straddle" as const))
  .map(([count, kind]): Pattern => ({ kind: "circle", diameter: inches(14), count, start: { kind } }));
const scattered = fc
  .uniqueArray(fc.tuple(fc.integer({ min: -1, max: 1 }), fc.integer({ min: -1, max: 1 })), {
    minLength: 2,
    maxLength: 5,
    selector: ([x, y]) => `${x} ${y}`,
  })
  .map((cells): Pattern => ({ kind: "points", at: cells.map(([x, y]) => offset(6 * x, 6 * y)) }));
const pattern = fc.oneof(rectangular, bolts, scattered);

const corner = fc.constantFrom<Corner>(
  { kind: "square" },
  { kind: "chamfer", x: inches(1), y: inches(1) },
  { kind: "round", radius: inches(1.5) },
  { kind: "notch", x: inches(1), y: inches(1) },
);
/** Plates with 3 in and more between any rod of the patterns above and the edge. */
const roomy = fc.oneof(
  fc
    .tuple(fc.integer({ min: 24, max: 27 }), fc.integer({ min: 24, max: 27 }), corner)
    .map(([x, y, each]): OutlineSpec => {
      return { kind: "rectangle", x: inches(x), y: inches(y), at: { x: zero, y: zero }, corner: each };
    }),
  fc.constant<OutlineSpec>({ kind: "circle", diameter: inches(30), at: { x: zero, y: zero } }),
  fc.constant<OutlineSpec>({ kind: "ring", outer: inches(32), inner: inches(3), at: { x: zero, y: zero } }),
  fc.tuple(fc.integer({ min: 3, max: 8 }), corner).map(([sides, each]): OutlineSpec => {
    const radius = 20 / Math.cos(Math.PI / sides);
    const at = Array.from({ length: sides }, (_, k) => {
      const angle = (2 * Math.PI * k) / sides + 0.1;
      return offset(radius * Math.cos(angle), radius * Math.sin(angle));
    });
    return { kind: "polygon", at: at.map(({ x, y }) => ({ x: nanometres(x), y: nanometres(y) })), corner: each };
  }),
);

interface Made {
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly plate: Plate;
}

function make(pattern: Pattern, outline: OutlineSpec, key: "auto" | "none"): Made {
  const fixture = baseFixture();
  const opening = { kind: "none" } as const;
  const base = baseFixture({
    groups: [groupFixture({ pattern })],
    template: { ...fixture.template, outline, opening, key },
  });
  const rods = placeRods(base);
  const plate = rods.ok ? makePlate(jobFixture(), base, rods.value) : rods;
  if (!rods.ok || !plate.ok) throw new Error(plate.findings.map(({ message }) => message).join("; "));
  return { base, rods: rods.value, plate: plate.value };
}

const failing = (made: Made) =>
  runRules([holeEdge, seatOnPlate], { job: jobFixture(), ...made })
    .filter(({ status }) => status === "fail")
    .map(({ rule, subject }) => `${rule} ${subject}`);

describe("a key", () => {
  it("is cut where something would go unseen, and only there; then nothing goes unseen", () => {
    fc.assert(
      fc.property(pattern, roomy, (rods, outline) => {
        const bare = make(rods, outline, "none");
        const keyed = make(rods, outline, "auto");
        expect(keyed.plate.keyed !== null).toBe(bare.plate.wrong.some((each) => isSilent(bare.base, each)));
        expect(keyed.plate.wrong.filter((each) => isSilent(keyed.base, each))).toEqual([]);
      }),
    );
  });

  it("leaves the outline no symmetry: no wrong way round maps it onto itself, and each that matters is seen", () => {
    fc.assert(
      fc.property(pattern, roomy, (rods, outline) => {
        const { plate } = make(rods, outline, "auto");
        if (plate.keyed === null) return;
        const { outer } = plate.region;
        expect(outer.kind === "path" && outlineSymmetryOrder(outer)).toBe(1);
        expect(plate.wrong.filter(({ outlineTwice }) => outlineTwice === 0)).toEqual([]);
        expect(plate.wrong.filter(matters).every(showsAtEdge)).toBe(true);
      }),
    );
  });

  it("only takes material away, leaves a sound outline, and leaves holes and seats their room", () => {
    fc.assert(
      fc.property(pattern, roomy, (rods, outline) => {
        const made = make(rods, outline, "auto");
        const { keyed, region } = made.plate;
        if (keyed === null || region.outer.kind === "circle") return;
        expect(pathFaults(region.outer)).toEqual([]);
        expect(measureArea(region.outer)).toBeLessThan(measureArea(keyed.bare));
        // A joint on a rim is snapped: up to 1 nm outside.
        const inward = region.outer.segments.map(({ from: { x, y } }) => ({ x: x * (1 - 1e-8), y: y * (1 - 1e-8) }));
        expect(inward.every((at) => containsPoint(keyed.bare, at))).toBe(true);
        expect(failing(made)).toEqual(failing(make(rods, outline, "none")));
      }),
    );
  });

  it("takes no room that a crowded plate does not have", () => {
    const tight = fc.tuple(fc.integer({ min: 10, max: 20 }), fc.integer({ min: 10, max: 20 }));
    fc.assert(
      fc.property(rectangular, tight, corner, (rods, [dx, dy], each) => {
        if (rods.kind !== "rectangle") return;
        const [x, y] = [nanometres(rods.x + inches(dx / 8)), nanometres(rods.y + inches(dy / 8))];
        const outline: OutlineSpec = { kind: "rectangle", x, y, at: { x: zero, y: zero }, corner: each };
        expect(failing(make(rods, outline, "auto"))).toEqual(failing(make(rods, outline, "none")));
      }),
    );
  });
});

describe("a notched rim", () => {
  it("keeps an edge distance that meets its limit exactly", () => {
    const count = fc.constantFrom(3, 5, 6, 7);
    fc.assert(
      fc.property(
        count,
        fc.integer({ min: 0, max: 359 }),
        fc.integer({ min: 14, max: 30 }),
        (rods, degrees, across) => {
          const start = { kind: "degrees", degrees } as const;
          const circle: Pattern = { kind: "circle", diameter: inches(across), count: rods, start };
          // Bolt circle + hole 1-5/16 + 1/2 in at both ends: the least edge of the shop, to the nanometre.
          const diameter = nanometres(inches(across) + inches(1.3125) + 2 * inches(0.5));
          const made = make(circle, { kind: "circle", diameter, at: offset(0, 0) }, "auto");
          const bare = make(circle, { kind: "circle", diameter, at: offset(0, 0) }, "none");
          // Rods snapped to the lattice may stand 1 nm too far out already: then the bare rim fails.
          expect(failing(bare)).toEqual(expect.arrayContaining(failing(made)));
          expect(made.plate.keyed).not.toBeNull();
        },
      ),
    );
  });
});

describe("symmetry of a pattern", () => {
  it("does not change when the whole pattern is shifted", () => {
    fc.assert(
      fc.property(pattern, fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }), (typed, dx, dy) => {
        const rods = make(typed, { kind: "auto", corner: { kind: "square" } }, "none").rods;
        const shifted = rods.map((rod) => ({ ...rod, center: { x: rod.center.x + dx, y: rod.center.y + dy } }));
        expect(symmetryOrder(shifted)).toBe(symmetryOrder(rods));
      }),
    );
  });

  it("is that of its ways round: a way that sets the same rods is one of the symmetries", () => {
    fc.assert(
      fc.property(pattern, (typed) => {
        const { rods, plate } = make(typed, { kind: "circle", diameter: millimetres(900), at: offset(0, 0) }, "none");
        const same = plate.wrong.filter(({ errorTwice }) => errorTwice === 0).length + 1;
        expect(same).toBeLessThanOrEqual(symmetryOrder(rods));
        if (typed.kind === "circle") expect(same).toBe(2 * typed.count);
      }),
    );
  });
});

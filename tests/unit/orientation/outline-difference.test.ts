/** How far a moved outline lies off, against every end and middle held against the whole other outline. */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { Contour, Move, Path } from "../../../src/geometry/index.js";
import {
  mirror,
  moveContour,
  moveInTurn,
  nearestOnContour,
  positionAlong,
  rectangle,
  shift,
  turn,
  twiceToLattice,
} from "../../../src/geometry/index.js";
import { outlineProbe } from "../../../src/orientation/index.js";
import { millimetres } from "../../../src/units/index.js";

const size = fc.integer({ min: 60, max: 200 }).map(millimetres);
const outline = fc
  .tuple(
    size,
    size,
    fc.constantFrom(
      { kind: "square" } as const,
      { kind: "chamfer", x: millimetres(10), y: millimetres(15) } as const,
      { kind: "round", radius: millimetres(12) } as const,
    ),
  )
  .map(([x, y, corner]) => rectangle({ x: 0, y: 0 }, x, y, corner));

const move = fc
  .record({
    degrees: fc.constantFrom(0, 30, 90, 123, 180, 270),
    dx: fc.constantFrom(0, 0.5, 7),
    turned: fc.boolean(),
  })
  .map(({ degrees, dx, turned }): Move => {
    const moves = [turn(degrees), shift({ dx, dy: -dx })];
    return moveInTurn(...(turned ? [mirror("y"), ...moves] : moves));
  });

function farthest(from: Path, to: Contour): number {
  const points = from.segments.flatMap((segment) => [segment.from, positionAlong(segment, 0.5)]);
  return Math.max(...points.map((at) => nearestOnContour(at, to).distance));
}

it("is the largest of all distances, and at least as much as that and no more", () => {
  fc.assert(
    fc.property(outline, move, (path, moved) => {
      const image = moveContour(path, moved);
      if (image.kind !== "path") throw new Error("a path was moved");
      const expected = twiceToLattice(Math.max(farthest(path, image), farthest(image, path)));
      const probe = outlineProbe(path);
      const found = probe.difference(moved);
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(2);
      expect(probe.isAtLeast(moved, found)).toBe(true);
      expect(probe.isAtLeast(moved, found + 1)).toBe(false);
    }),
    { numRuns: 500 },
  );
});

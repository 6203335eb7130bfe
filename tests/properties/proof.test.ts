/** Whatever the origin and the turn, a file is the plate it is; a hole that is moved is the one that is told. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/vocabulary.js";
import { codesOf, draw, prove, targetOf } from "../proof-case.js";

const place = fc.record({
  turn: fc.double({ min: 0, max: 360, noNaN: true, maxExcluded: true }),
  dx: fc.double({ min: -1000, max: 1000, noNaN: true }),
  dy: fc.double({ min: -1000, max: 1000, noNaN: true }),
  mirrored: fc.boolean(),
});
const moveBy = ({ turn, dx, dy, mirrored }: { turn: number; dx: number; dy: number; mirrored: boolean }) => {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return ({ x, y }: Point): Point => {
    const across = mirrored ? -x : x;
    return { x: cos * across - sin * y + dx, y: sin * across + cos * y + dy };
  };
};

describe("proof against a job", () => {
  it("does not change with origin and turn, and tells a mirror", () => {
    fc.assert(
      fc.property(place, (at) => {
        const file = prove(draw(targetOf("T4"), { move: moveBy(at), mirrored: at.mirrored }), "T4.dxf");
        expect(codesOf(file, "stop")).toEqual(at.mirrored ? ["mirrored"] : []);
        expect(file.match).toMatchObject({ mark: "T4", mirrored: at.mirrored, scale: 1, missing: 0, extra: 0 });
        const off = Math.abs((file.match?.turn ?? 0) - at.turn) % 360;
        expect(Math.min(off, 360 - off)).toBeLessThan(1e-3);
        expect(file.match?.positionError).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
  });

  it("names the hole that was moved, and how far on the plate", () => {
    const size = fc.double({ min: 0.3, max: 20, noNaN: true });
    const way = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    fc.assert(
      fc.property(place, fc.nat(4), size, way, (at, index, distance, angle) => {
        const { holes, outline } = targetOf("T4");
        const moved = holes.map((hole, i) =>
          i === index
            ? { ...hole, at: { x: hole.at.x + distance * Math.cos(angle), y: hole.at.y + distance * Math.sin(angle) } }
            : hole,
        );
        const file = prove(draw({ holes: moved, outline }, { move: moveBy(at), mirrored: at.mirrored }), "T4.dxf");
        const told = file.findings.filter(({ code }) => code === "hole-position");
        expect(told.map(({ message }) => message.split(" ")[1])).toEqual([holes[index]?.tag]);
        expect(Math.abs((file.match?.positionError ?? 0) * 25.4 - distance)).toBeLessThan(1e-3);
      }),
      { numRuns: 60 },
    );
  });
});

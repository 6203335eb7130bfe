import { describe, expect, it } from "vitest";
import {
  circle,
  measureArea,
  type PartingLine,
  partition,
  point,
  pointAt,
  rectangle,
  region,
  samePoint,
} from "../../../src/geometry/index.js";
import type { Path, Point } from "../../../src/geometry/vocabulary.js";
import { millimetres, nanometres } from "../../../src/units/index.js";

const mm = millimetres;
const origin = pointAt(nanometres(0), nanometres(0));
const upright = (x: number, left: number): PartingLine => ({
  from: { x, y: 1000 },
  to: { x, y: -1000 },
  left,
  right: left - 1,
});
const byX =
  (...xs: readonly number[]) =>
  ({ x }: Point) =>
    xs.filter((at) => x > at).length;

function isClosed({ segments }: Path): boolean {
  return segments.every(({ to }, i) => samePoint(to, segments[(i + 1) % segments.length]?.from ?? { x: 1e9, y: 0 }));
}

describe("a region parted by lines", () => {
  it("a rectangle through its opening: the opening becomes part of the outlines", () => {
    const plate = region(rectangle(origin, mm(200), mm(100)), [circle(origin, mm(40))]);
    const { cells, stretches } = partition(plate, [upright(0, 1)], 2, byX(0));
    expect(cells.map((paths) => paths.length)).toEqual([1, 1]);
    const areas = cells.flat().map(measureArea);
    for (const area of areas) expect(area).toBeCloseTo(200 * 50 - (Math.PI * 400) / 2, 6);
    expect(stretches[0]?.map(({ from, to }) => [from.y, to.y])).toEqual([
      [50, 20],
      [-20, -50],
    ]);
  });

  it("leaves contours that no line meets", () => {
    const plate = region(rectangle(origin, mm(200), mm(100)), [circle(point(60, 0), mm(40))]);
    const { cells } = partition(plate, [upright(0, 1)], 2, byX(0));
    expect(cells.flat().map(measureArea)).toEqual([10_000, 10_000]);
  });

  it("tells the loose pieces of a cut through a hollow outline", () => {
    const u = rectangle(origin, mm(200), mm(100), { kind: "notch", x: mm(20), y: mm(20) });
    const { cells } = partition(region(u), [upright(-90, 1)], 2, byX(-90));
    expect(cells.map((paths) => paths.length)).toEqual([1, 1]);
  });

  // A ring, its joints where the halves of a circle meet, and turned to angles that are no round figures.
  it.each([0, 7.5, 33.3, 90, 119.99])(
    "a ring in three from %d degrees: closed, of a third of its area each",
    (start) => {
      const rays = [0, 1, 2].map((i): PartingLine => {
        const angle = ((start + 120 * i) * Math.PI) / 180;
        return {
          from: origin,
          to: { x: 9000 * Math.cos(angle), y: 9000 * Math.sin(angle) },
          left: i,
          right: (i + 2) % 3,
        };
      });
      const cellOf = ({ x, y }: Point) =>
        Math.floor(((((Math.atan2(y, x) * 180) / Math.PI - start + 720) % 360) / 120) % 3);
      const ring = region(circle(origin, nanometres(4_300_000_001)), [circle(origin, mm(3700))]);
      const { cells } = partition(ring, rays, 3, cellOf);
      expect(cells.map((paths) => paths.length)).toEqual([1, 1, 1]);
      for (const path of cells.flat()) {
        expect(isClosed(path)).toBe(true);
        expect(path.segments).toHaveLength(4);
        expect(measureArea(path)).toBeCloseTo((Math.PI * (4300.000001 ** 2 - 3700 ** 2)) / 12, 1);
      }
    },
  );
});

import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/geometry/index.js";
import type { CircleStart } from "../../../src/patterns/index.js";
import { countRods, rodPositions, standsToAxes } from "../../../src/patterns/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { circle, rectangle } from "../../pattern-fixtures.js";

const mm = millimetres;

describe("positions", () => {
  test("counts and perimeter", () => {
    const full = rectangle({ nx: 4, ny: 3 });
    expect(countRods(full)).toBe(12);
    expect(rodPositions(full)).toHaveLength(12);
    const ring = rectangle({ nx: 4, ny: 3, perimeter: true });
    expect(countRods(ring)).toBe(10);
    expect(rodPositions(ring).filter(({ x, y }) => Math.abs(x) < 150 && y === 0)).toEqual([]);
    expect(countRods(rectangle({ nx: 2, ny: 5, perimeter: true }))).toBe(10);
    expect(rodPositions(rectangle({ nx: 1, ny: 2 })).map(({ x }) => x)).toEqual([0, 0]);
  });

  test("spacings of an odd number of nanometres: halves are rounded away from zero, on both sides", () => {
    const positions = rodPositions(rectangle({ x: inches(12 + 1 / 64), y: nanometres(1) }));
    expect(new Set(positions.map(({ x }) => Math.abs(x)))).toEqual(new Set([(304_800_000 + 396_875 + 1) / 2e6]));
    expect(new Set(positions.map(({ y }) => Math.abs(y)))).toEqual(new Set([1e-6]));
    const thirds = rodPositions(rectangle({ x: nanometres(100), nx: 4 })).map(({ x }) => Math.round(x * 1e6));
    expect(thirds.slice(0, 4)).toEqual([-50, -17, 17, 50]);
  });

  test.each([
    ["on-axis", [100, 0]],
    ["straddle", [70.710_678, 70.710_678]],
  ] as const)("a bolt circle of four, %s", (kind, first) => {
    expect(rodPositions(circle(4, { kind }))[0]).toEqual({ x: first[0], y: first[1] });
  });

  describe("a named start about a named axis", () => {
    const spots = (count: number, start: CircleStart) => rodPositions(circle(count, start));
    const on = (points: readonly Point[], axis: "x" | "y") =>
      points.filter((at) => at[axis] > 0 && Math.abs(at[axis === "x" ? "y" : "x"]) < 1e-9).length;

    test.each([2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 15])("%i rods", (count) => {
      for (const axis of ["x", "y"] as const) {
        expect(on(spots(count, { kind: "on-axis", axis }), axis)).toBe(1);
        const straddling = spots(count, { kind: "straddle", axis });
        expect(on(straddling, axis)).toBe(0);
        const across = axis === "x" ? "y" : "x";
        const [most, next] = [...straddling].sort((a, b) => b[axis] - a[axis]);
        expect(next?.[axis]).toBe(most?.[axis]);
        expect(next?.[across]).toBe(-(most?.[across] ?? Number.NaN));
      }
    });

    test.each(["straddle", "on-axis"] as const)("%s without an axis is that of x", (kind) => {
      for (const count of [3, 6, 8, 10]) expect(spots(count, { kind })).toEqual(spots(count, { kind, axis: "x" }));
    });

    test.each([4, 8, 12, 16])("%i rods stand alike to both axes", (count) => {
      const sorted = (points: readonly Point[]) => points.map(({ x, y }) => `${x + 0} ${y + 0}`).sort();
      for (const kind of ["straddle", "on-axis"] as const) {
        expect(sorted(spots(count, { kind, axis: "y" }))).toEqual(sorted(spots(count, { kind, axis: "x" })));
        expect(standsToAxes({ diameter: mm(200), count, start: { kind } })).toBeNull();
      }
    });

    test.each([
      [6, { kind: "straddle" }, "straddles the x axis; rods stand on the y axis"],
      [10, { kind: "straddle", axis: "y" }, "straddles the y axis; rods stand on the x axis"],
      [6, { kind: "on-axis" }, "rods stand on the x axis; straddles the y axis"],
      [2, { kind: "straddle" }, "straddles the x axis; rods stand on the y axis"],
      [5, { kind: "straddle", axis: "y" }, "straddles +y; a rod stands on -y"],
      [3, { kind: "on-axis" }, "a rod stands on +x; straddles -x"],
      [6, { kind: "degrees", degrees: 0 }, null],
    ] as const)("says how %i rods stand to the axes, and truly", (count, start, words) => {
      expect(standsToAxes({ diameter: mm(200), count, start })).toBe(words);
      const points = spots(count, start);
      const flipped = points.map(({ x, y }) => ({ x: -x, y: -y }));
      for (const [, sign, axis] of words?.matchAll(/(?:stand|stands) on (?:the )?([+-]?)([xy])/g) ?? []) {
        if (axis !== "x" && axis !== "y") throw new Error(`no axis in ${words}`);
        if (sign !== "-") expect(on(points, axis)).toBe(1);
        if (sign !== "+") expect(on(flipped, axis)).toBe(1);
      }
      for (const [, sign, axis] of words?.matchAll(/straddles (?:the )?([+-]?)([xy])/g) ?? []) {
        if (axis !== "x" && axis !== "y") throw new Error(`no axis in ${words}`);
        if (sign !== "-") expect(on(points, axis)).toBe(0);
        if (sign !== "+") expect(on(flipped, axis)).toBe(0);
      }
    });
  });

  test("degrees are counter-clockwise from +x", () => {
    const [first, second] = rodPositions(circle(4, { kind: "degrees", degrees: 30 }));
    expect(first).toEqual({ x: 86.602_54, y: 50 });
    expect(second).toEqual({ x: -50, y: 86.602_54 });
    expect(rodPositions(circle(3, { kind: "degrees", degrees: 90 }))[0]).toEqual({ x: 0, y: 100 });
  });

  test.each([3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 36, 40])(
    "a straddled or on-axis circle of %d is symmetric on the lattice",
    (count) => {
      for (const kind of ["straddle", "on-axis"] as const) {
        for (const diameter of [mm(200), inches(27 + 5 / 64), nanometres(123_456_789)]) {
          const positions = rodPositions(circle(count, { kind }, diameter));
          const keys = new Set(positions.map(({ x, y }) => `${x} ${y}`));
          expect(keys.size).toBe(count);
          for (const { x, y } of positions) expect(keys.has(`${x} ${-y + 0}`)).toBe(true);
          if (count % 2 === 0) for (const { x, y } of positions) expect(keys.has(`${-x + 0} ${y}`)).toBe(true);
          if (count % 4 === 0) for (const { x, y } of positions) expect(keys.has(`${-y + 0} ${x}`)).toBe(true);
        }
      }
    },
  );
});

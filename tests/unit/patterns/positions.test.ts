import { describe, expect, test } from "vitest";
import { countRods, rodPositions } from "../../../src/patterns/index.js";
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

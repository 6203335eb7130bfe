import { describe, expect, it } from "vitest";
import { twiceClear } from "../../../src/checks/geometry/clear-distance.js";
import { circle, moveContour, point, polygon, rectangle, turn } from "../../../src/geometry/index.js";
import { millimetres } from "../../../src/units/index.js";

const box = (x: number, y: number, width: number, height: number) =>
  rectangle(point(x, y), millimetres(width), millimetres(height));
const nm = (mm: number) => 2 * millimetres(mm);

describe("clear distance between shapes", () => {
  it.each([
    ["apart", box(0, 0, 10, 10), box(30, 0, 10, 10), nm(20)],
    ["touching along an edge", box(0, 0, 10, 10), box(10, 0, 10, 10), 0],
    ["touching at a corner", box(0, 0, 10, 10), box(10, 10, 10, 10), 0],
    ["a corner 3 mm inside", box(0, 0, 10, 10), box(7, 7, 10, 10), -nm(3)],
    ["one inside the other", box(0, 0, 100, 100), box(0, 0, 10, 10), -nm(50)],
    ["the same", box(0, 0, 10, 10), box(0, 0, 10, 10), -nm(5)],
    ["crossing like a plus", box(0, 0, 100, 10), box(0, 0, 10, 100), -nm(5)],
    ["crossing like a T, no corner inside the bar", box(0, 0, 100, 10), box(0, 30, 10, 60), -nm(5)],
    [
      "round ones overlapping by 5",
      circle(point(0, 0), millimetres(20)),
      circle(point(15, 0), millimetres(20)),
      -nm(5),
    ],
    ["round beside straight", circle(point(0, 0), millimetres(20)), box(20, 0, 10, 10), nm(5)],
    ["round over straight by 5", circle(point(0, 0), millimetres(20)), box(10, 0, 10, 100), -nm(5)],
  ] as const)("%s", (_name, a, b, twice) => {
    expect(twiceClear(a, b)).toBe(twice);
    expect(twiceClear(b, a)).toBe(twice);
  });

  it("finds an overlap inside the notch of an L only where there is one", () => {
    const l = polygon([point(0, 0), point(100, 0), point(100, 20), point(20, 20), point(20, 100), point(0, 100)]);
    expect(twiceClear(l, box(60, 60, 60, 60))).toBe(nm(10));
    expect(twiceClear(l, box(50, 50, 70, 70))).toBeLessThan(0);
  });

  it("does not change when both are turned a quarter", () => {
    const [a, b] = [box(3, 4, 50, 20), box(30, 10, 40, 30)];
    const move = turn(90);
    expect(twiceClear(moveContour(a, move), moveContour(b, move))).toBe(twiceClear(a, b));
  });
});

import { describe, expect, it } from "vitest";
import type { GridLine } from "../../../src/job/index.js";
import { chooseCrossing, given, missing } from "../../../src/job/index.js";
import { lineCrossing } from "../../../src/plan/index.js";
import { millimetres } from "../../../src/units/index.js";

const at = (x: number, y: number) => ({ x: millimetres(x), y: millimetres(y) });
const x = (mm: number): GridLine => ({ kind: "x", name: "X", at: millimetres(mm) });
const y = (mm: number): GridLine => ({ kind: "y", name: "Y", at: millimetres(mm) });
const skewed = (px: number, py: number, degrees: number): GridLine => ({
  kind: "skewed",
  name: "S",
  through: at(px, py),
  degrees,
});
const radial = (px: number, py: number, degrees: number): GridLine => ({
  kind: "radial",
  name: "R",
  center: at(px, py),
  degrees,
});
const arc = (px: number, py: number, radius: number): GridLine => ({
  kind: "arc",
  name: "K",
  center: at(px, py),
  radius: millimetres(radius),
});

const none = missing("near", "not given");

describe("crossings of grid lines", () => {
  it.each<[string, GridLine, GridLine, (readonly [number, number])[]]>([
    ["x and y, exactly", x(7500.000001), y(-3), [[7500.000001, -3]]],
    ["two x lines", x(0), x(10), []],
    ["one line with itself", x(10), x(10), []],
    ["a skewed line and x", skewed(0, 0, 45), x(100), [[100, 100]]],
    ["a skewed line and y, behind its point", skewed(100, 100, 45), y(-50), [[-50, -50]]],
    ["skewed lines that are parallel", skewed(0, 0, 30), skewed(0, 10, 210), []],
    ["a line at 30 degrees: 3-4-5 scaled by its tangent", skewed(0, 0, 30), y(1000), [[1732.050808, 1000]]],
    ["a radial line ahead", radial(0, 0, 60), y(1000), [[577.350269, 1000]]],
    ["a radial line does not go behind its centre", radial(0, 0, 60), y(-1000), []],
    ["two radial lines meet at their centre", radial(5, 5, 0), radial(5, 5, 90), [[5, 5]]],
    [
      "an arc and a line twice: 3-4-5",
      arc(0, 0, 500),
      y(300),
      [
        [-400, 300],
        [400, 300],
      ],
    ],
    ["an arc and a line that touches it", arc(0, 0, 500), x(500), [[500, 0]]],
    ["an arc and a line that misses it", arc(0, 0, 500), x(500.001), []],
    ["an arc and a radial line of the same centre", arc(0, 0, 500), radial(0, 0, 90), [[0, 500]]],
    [
      "a radial line from outside crosses twice",
      arc(0, 0, 500),
      radial(-1000, 0, 0),
      [
        [-500, 0],
        [500, 0],
      ],
    ],
    [
      "two arcs: 3-4-5",
      arc(0, 0, 500),
      arc(800, 0, 500),
      [
        [400, -300],
        [400, 300],
      ],
    ],
    ["two arcs that touch", arc(0, 0, 500), arc(1000, 0, 500), [[500, 0]]],
    ["two arcs about one centre", arc(0, 0, 500), arc(0, 0, 400), []],
    ["an arc inside another", arc(0, 0, 500), arc(10, 0, 100), []],
  ])("%s", (_name, a, b, expected) => {
    const found = (one: GridLine, other: GridLine) =>
      lineCrossing(one, other)
        .map((point): readonly [number, number] => [point.x, point.y])
        .sort((p, q) => p[0] - q[0] || p[1] - q[1]);
    expect(found(a, b)).toEqual(expected);
    expect(found(b, a)).toEqual(expected);
  });

  it("of two, the one nearest to the point is meant; a tie is neither", () => {
    const near = (px: number, py: number) => chooseCrossing(arc(0, 0, 500), y(300), given(at(px, py), "job"));
    expect(near(1, 0)).toEqual({ ok: true, at: { x: 400, y: 300 } });
    expect(near(-1, 0)).toEqual({ ok: true, at: { x: -400, y: 300 } });
    expect(near(0, 0)).toMatchObject({ ok: false, why: "several" });
    expect(chooseCrossing(arc(0, 0, 500), y(300), none)).toMatchObject({ ok: false, why: "several" });
    expect(chooseCrossing(x(0), x(1), none)).toMatchObject({ ok: false, why: "none" });
  });
});

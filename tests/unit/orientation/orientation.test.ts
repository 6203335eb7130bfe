import { describe, expect, it } from "vitest";
import type { Contour } from "../../../src/geometry/index.js";
import { circle, pointAt, rectangle } from "../../../src/geometry/index.js";
import type { Base, Pattern } from "../../../src/job/model/job.js";
import { isSilent, matters, symmetryOrder, wrongPlacements } from "../../../src/orientation/index.js";
import type { WrongPlacement } from "../../../src/orientation/model.js";
import { placeRods } from "../../../src/rods/index.js";
import { inches } from "../../../src/units/length.js";
import { baseFixture, groupFixture } from "../../fixture.js";

const origin = { x: 0, y: 0 };
const rectangular = (x: number, y: number): Pattern => ({
  kind: "rectangle",
  x: inches(x),
  y: inches(y),
  nx: 2,
  ny: 2,
  perimeter: false,
});
const bolts = (count: number): Pattern => ({ kind: "circle", diameter: inches(14), count, start: { kind: "on-axis" } });
const points = (...at: readonly (readonly [number, number])[]): Pattern => ({
  kind: "points",
  at: at.map(([x, y]) => ({ x: inches(x), y: inches(y) })),
});

function layoutOf(base: Base) {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("no layout");
  return rods.value;
}

function placementsOf(pattern: Pattern, outline: Contour = rectangle(origin, inches(20), inches(20))) {
  const base = baseFixture({ groups: [groupFixture({ pattern })] });
  return wrongPlacements(base, layoutOf(base), outline);
}

const inchesOf = (twice: number) => twice / 2 / 25_400_000;
const byWords = (placements: readonly WrongPlacement[], words: string) =>
  placements.find(({ way }) => way.words === words);

describe("wrongPlacements", () => {
  it("lists seven ways about the working point", () => {
    expect(placementsOf(rectangular(12, 12)).map(({ way }) => way.words)).toEqual([
      "turned 90",
      "turned 180",
      "turned 270",
      "face down",
      "face down and turned 90",
      "face down and turned 180",
      "face down and turned 270",
    ]);
  });

  it("leaves a square pattern as it is, whichever way round", () => {
    const placements = placementsOf(rectangular(12, 12));
    expect(placements.every(({ errorTwice, outlineTwice }) => errorTwice === 0 && outlineTwice === 0)).toBe(true);
  });

  it("adds the pitches of a bolt circle, which are the same rods to the lattice", () => {
    const placements = placementsOf(bolts(6), circle(origin, inches(20)));
    expect(placements.length).toBe(15);
    expect(placements.filter(matters).map(({ way }) => way.words)).toEqual([
      "turned 90",
      "turned 270",
      "face down and turned 90",
      "face down and turned 270",
    ]);
    // Turned by 90, a rod lies 30 degrees from the nearest place: chord 14 sin 15, by hand.
    const error = inchesOf(byWords(placements, "turned 90")?.errorTwice ?? 0);
    expect(error).toBeCloseTo(14 * Math.sin(Math.PI / 12), 6);
  });

  it.each(["straddle", "on-axis"] as const)("lays a ring on itself about the axis that %s names", (kind) => {
    const about = (axis: "x" | "y") =>
      placementsOf(
        { kind: "circle", diameter: inches(14), count: 6, start: { kind, axis } },
        circle(origin, inches(20)),
      );
    for (const axis of ["x", "y"] as const) {
      expect(about(axis)).toHaveLength(15);
      expect(about(axis).filter((each) => !matters(each))).toHaveLength(11);
    }
  });

  it("finds the plate that drops on off its place", () => {
    const turned = byWords(placementsOf(points([-5, 7], [5, 7], [5, -3], [-5, -3])), "turned 180");
    expect(inchesOf(turned?.errorTwice ?? 0)).toBe(4);
    expect(turned?.dropsOn).toMatchObject({ kind: "known", shiftTwice: 2 * inches(4) });
  });

  it("lays a plate off the working point by its own edges too", () => {
    const outline = rectangle(pointAt(inches(1), inches(2)), inches(20), inches(16));
    const placements = placementsOf(points([-5, 6], [7, 6], [7, -2], [-5, -1.5]), outline);
    const byEdges = placements.filter(({ way }) => way.words.endsWith("by its edges"));
    expect(byEdges.map(({ way, outlineTwice }) => [way.words, outlineTwice])).toEqual([
      ["turned 180 by its edges", 0],
      ["face down by its edges", 0],
      ["face down and turned 180 by its edges", 0],
    ]);
    // About (1, 2) each rod lands at its like but for the one at -1.5, which is 1/2 off.
    expect(byEdges.map(({ errorTwice }) => inchesOf(errorTwice))).toEqual([0.5, 0.5, 0.5]);
  });

  it("tells rods of one size apart by what else is ordered", () => {
    const [left, right] = [points([-6, 0]), points([6, 0])];
    const short = groupFixture({ letter: "A", pattern: left });
    const long = groupFixture(
      { letter: "B", pattern: right },
      { embedment: { kind: "given", value: inches(36), from: "job" } },
    );
    const base = baseFixture({ groups: [short, long] });
    const turned = byWords(
      wrongPlacements(base, layoutOf(base), rectangle(origin, inches(20), inches(20))),
      "turned 180",
    );
    expect(turned).toMatchObject({ errorTwice: 2 * inches(12), swapped: ["A1 at B1", "B1 at A1"] });
  });

  it("is silent only where the outline does not show it", () => {
    const base = baseFixture();
    const rods = layoutOf(base);
    const silent = (x: number, y: number) =>
      wrongPlacements(base, rods, rectangle(origin, inches(x), inches(y))).some((each) => isSilent(base, each));
    expect(silent(20, 20)).toBe(true);
    // 1/4 in at each edge is not seen; 3/8 is: what a corner cut of 1/2 x 1/2 shows is 0.354.
    expect(silent(20, 20.5)).toBe(true);
    expect(silent(20, 20.75)).toBe(false);
  });
});

describe("symmetryOrder", () => {
  const order = (...patterns: readonly Pattern[]) =>
    symmetryOrder(
      layoutOf(
        baseFixture({ groups: patterns.map((pattern, i) => groupFixture({ letter: "AB"[i] ?? "C", pattern })) }),
      ),
    );

  it.each([
    ["a square", rectangular(12, 12), 8],
    ["a rectangle", rectangular(12, 10), 4],
    ["a pair", points([-3, 0], [3, 0]), 4],
    ["a right triangle of unequal legs", points([0, 0], [3, 0], [0, 5]), 1],
    ["a kite", points([0, 6], [3, 0], [0, -2], [-3, 0]), 2],
    ["a parallelogram", points([-5, -2], [1, -2], [5, 2], [-1, 2]), 2],
    ["three on a circle", bolts(3), 6],
    ["six on a circle", bolts(6), 12],
    ["seven on a circle", bolts(7), 14],
    ["sixteen on a circle", bolts(16), 32],
    ["one rod", points([2, 1]), Infinity],
  ] as const)("of %s", (_name, pattern, expected) => {
    expect(order(pattern)).toBe(expected);
  });

  it("does not turn on where the pattern lies", () => {
    expect(order(points([1, 1], [13, 1], [13, 13], [1, 13]))).toBe(8);
  });

  it("tells kinds of rods apart", () => {
    const large = groupFixture({ letter: "A", pattern: points([-6, 6], [6, -6]) });
    const small = groupFixture({ letter: "B", pattern: points([6, 6], [-6, -6]) }, { size: "1", diameter: inches(1) });
    expect(symmetryOrder(layoutOf(baseFixture({ groups: [large, small] })))).toBe(4);
  });
});

import { describe, expect, test } from "vitest";
import { ProgramFault } from "../../../src/diagnostics/program-fault.js";
import type { Pattern } from "../../../src/job/model/job.js";
import { rodPositions } from "../../../src/patterns/index.js";
import { clockwiseFromNorthWest, placeRods } from "../../../src/rods/index.js";
import { millimetres } from "../../../src/units/index.js";
import { baseFixture, groupFixture } from "../../fixture.js";
import { circle, rectangle } from "../../pattern-fixtures.js";

const mm = millimetres;
const baseOf = (...patterns: Pattern[]) =>
  baseFixture({ groups: patterns.map((pattern, i) => groupFixture({ letter: "ABC".charAt(i), pattern })) });

function tagged(...patterns: Pattern[]): Record<string, readonly [number, number]> {
  const outcome = placeRods(baseOf(...patterns));
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join());
  return Object.fromEntries(outcome.value.map(({ tag, center }) => [tag, [center.x, center.y] as const]));
}

describe("positions", () => {
  test("a rectangle, tagged clockwise from the north-west", () => {
    expect(tagged(rectangle())).toEqual({ A1: [-150, 100], A2: [150, 100], A3: [150, -100], A4: [-150, -100] });
  });

  test("lines are taken as typed, nothing is re-centred", () => {
    const lines: Pattern = { kind: "lines", x: [mm(100), mm(0)], y: [mm(50), mm(10), mm(30)], perimeter: true };
    expect(tagged(lines)).toEqual({
      A1: [0, 50],
      A2: [100, 50],
      A3: [100, 30],
      A4: [100, 10],
      A5: [0, 10],
      A6: [0, 30],
    });
  });
});

describe("tags", () => {
  test("letter of the group, its own numbering", () => {
    const found = tagged(rectangle(), { kind: "points", at: [{ x: mm(0), y: mm(0) }] });
    expect(Object.keys(found)).toEqual(["A1", "A2", "A3", "A4", "B1"]);
  });

  test("three by three: round the box, the centre last", () => {
    const found = tagged(rectangle({ nx: 3, ny: 3 }));
    expect(Object.values(found)).toEqual([
      [-150, 100],
      [0, 100],
      [150, 100],
      [150, 0],
      [150, -100],
      [0, -100],
      [-150, -100],
      [-150, 0],
      [0, 0],
    ]);
  });

  test("on one ray the farther comes first", () => {
    const cross = [-2, -1, 1, 2].flatMap((k) => [
      { x: mm(50 * k), y: mm(0) },
      { x: mm(0), y: mm(50 * k) },
    ]);
    expect(Object.values(tagged({ kind: "points", at: cross }))).toEqual([
      [0, 100],
      [0, 50],
      [100, 0],
      [50, 0],
      [0, -100],
      [0, -50],
      [-100, 0],
      [-50, 0],
    ]);
  });

  test("ties for north-west: greater y, then smaller x", () => {
    const diagonal = [0, 10, 20].map((k) => ({ x: mm(k), y: mm(k) }));
    expect(tagged({ kind: "points", at: diagonal }).A1).toEqual([20, 20]);
    expect(Object.values(tagged(circle(8, { kind: "straddle" })))[0]?.[1]).toBeGreaterThan(90);
    expect(tagged({ kind: "points", at: [{ x: mm(3), y: mm(0) }] })).toEqual({ A1: [3, 0] });
  });

  test("one nanometre of rounding changes no tag", () => {
    const eight = rodPositions(circle(8, { kind: "straddle" }));
    const order = clockwiseFromNorthWest(eight);
    for (let i = 0; i < 8; i++) {
      for (const [dx, dy] of [
        [1e-6, 0],
        [-1e-6, 0],
        [0, 1e-6],
        [0, -1e-6],
      ] as const) {
        const moved = eight.map((at, j) => (i === j ? { x: at.x + dx, y: at.y + dy } : at));
        const again = clockwiseFromNorthWest(moved);
        expect(again.map((at) => moved.indexOf(at))).toEqual(order.map((at) => eight.indexOf(at)));
      }
    }
  });
});

describe("faults", () => {
  test("coincident rods are all named, with tags and place in both units", () => {
    const outcome = placeRods(
      baseOf(rectangle(), {
        kind: "points",
        at: [
          { x: mm(-150), y: mm(100) },
          { x: mm(-150), y: mm(100) },
        ],
      }),
    );
    expect(outcome.ok).toBe(false);
    expect(outcome.findings.map(({ code, message }) => [code, message])).toEqual([
      [
        "coincident-rods",
        "rods A1 and B1 stand on one spot, (-5.9055, 3.937) in or (-150, 100) mm: each rod needs its own",
      ],
      [
        "coincident-rods",
        "rods A1 and B2 stand on one spot, (-5.9055, 3.937) in or (-150, 100) mm: each rod needs its own",
      ],
      [
        "coincident-rods",
        "rods B1 and B2 stand on one spot, (-5.9055, 3.937) in or (-150, 100) mm: each rod needs its own",
      ],
    ]);
    expect(outcome.findings[0]?.at).toEqual({ file: "job.yaml", line: 1, column: 1, path: "bases[0]" });
  });

  test("two hundred rods are placed; none, or more than the reader lets through, is a fault of the program", () => {
    const many = (count: number) => () => placeRods(baseOf(circle(count, { kind: "on-axis" }, mm(9000))));
    expect(many(200)().ok).toBe(true);
    expect(many(201)).toThrow(ProgramFault);
    expect(() => placeRods(baseOf(rectangle({ nx: 1e9, ny: 1e9 })))).toThrow(ProgramFault);
    expect(() => placeRods(baseOf({ kind: "points", at: [] }))).toThrow(ProgramFault);
  });
});

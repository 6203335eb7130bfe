import { describe, expect, it } from "vitest";
import { dropTest } from "../../../src/fit/drop-test.js";
import { drawErrors } from "../../../src/fit/errors.js";
import { certifyFit, fitPlate, fitProbability } from "../../../src/fit/index.js";
import { randomSource } from "../../../src/fit/random.js";

const square = (clearance: number) => [-100, 100].flatMap((x) => [-100, 100].map((y) => ({ x, y, clearance })));

const request = {
  holes: square(3),
  rodError: { kind: "disc", size: 4 },
  maxTurn: 0.05,
  samples: 4000,
  seed: 5,
} as const;

describe("fitProbability", () => {
  it("gives the same shares for the same seed, and others for another", () => {
    expect(fitProbability(request)).toEqual(fitProbability(request));
    expect(fitProbability({ ...request, seed: 6 })).not.toEqual(fitProbability(request));
  });

  it("keeps its stream from version to version", () => {
    const random = randomSource(1);
    expect([random.signed(), random.signed(), random.normal()]).toMatchInlineSnapshot(`
      [
        -0.9490450171288103,
        -0.7146892778109759,
        1.03443824915113,
      ]
    `);
  });

  it("is 1 without error and 0 without room", () => {
    expect(fitProbability({ ...request, rodError: { kind: "normal", size: 0 } }).fixed).toBe(1);
    expect(fitProbability({ ...request, holes: square(-0.1) }).free).toBe(0);
  });

  it("a single rod always drops on when the plate may shift", () => {
    const one = fitProbability({ ...request, holes: [{ x: 50, y: 0, clearance: 1 }], samples: 20_000 });
    expect(one.shifted).toBe(1);
    // area of the clearance over the area of the error: 1/16
    expect(Math.abs(one.fixed - 1 / 16)).toBeLessThan(4 * Math.sqrt((1 / 16) * (15 / 16) * (1 / 20_000)));
  });

  it("refuses what cannot be tried", () => {
    expect(() => fitProbability({ ...request, holes: [] })).toThrow(RangeError);
    expect(() => fitProbability({ ...request, samples: 1.5 })).toThrow("samples");
    expect(() => fitProbability({ ...request, maxTurn: -1 })).toThrow("maxTurn");
    expect(() => fitProbability({ ...request, seed: 0.5 })).toThrow("seed");
    expect(() => fitProbability({ ...request, rodError: { kind: "disc", size: -1 } })).toThrow("zero or above");
    expect(() => fitProbability({ ...request, holes: [{ x: Number.NaN, y: 0, clearance: 1 }] })).toThrow(
      "not a number",
    );
  });
});

describe("the drop test", () => {
  it.each([4, 6, 8])("says of every trial of %i rods what the fit says", (count) => {
    const holes = Array.from({ length: count }, (_, i) => ({
      x: 150 * Math.cos((2 * Math.PI * i) / count),
      y: 110 * Math.sin((2 * Math.PI * i) / count),
      clearance: 2 + (i % 3),
    }));
    const dx = new Float64Array(count);
    const dy = new Float64Array(count);
    const term = { zone: "disc", spread: { kind: "uniform" }, reach: holes.map(() => 4), common: false } as const;
    const draw = drawErrors([term], randomSource(count), dx, dy);
    const test = dropTest(holes, 0.02);
    const seen = new Set<string>();
    for (let trial = 0; trial < 1500; trial++) {
      draw();
      const rods = holes.map(({ x, y }, i) => ({ x: x + (dx[i] ?? 0), y: y + (dy[i] ?? 0) }));
      const drop = test.judge(dx, dy);
      seen.add(drop);
      const held = rods.every((rod, i) => {
        const hole = holes[i] ?? { x: 0, y: 0, clearance: 0 };
        return Math.hypot(rod.x - hole.x, rod.y - hole.y) <= hole.clearance;
      });
      expect(drop === "held").toBe(held);
      expect(drop === "held" || drop === "shifted").toBe(fitPlate(holes, rods, { maxTurn: 0 }).value <= 0);
      expect(drop !== "none").toBe(certifyFit(holes, rods, { maxTurn: 0.02 }).value <= 0);
    }
    expect([...seen].sort()).toEqual(["held", "none", "shifted", "turned"]);
  });
});

describe("random numbers", () => {
  it("normals have the moments and the tail of a normal", () => {
    const random = randomSource(3);
    const n = 200_000;
    const draws = Array.from({ length: n }, () => random.normal());
    const mean = draws.reduce((sum, x) => sum + x, 0) / n;
    const square = draws.reduce((sum, x) => sum + x * x, 0) / n;
    const fourth = draws.reduce((sum, x) => sum + x ** 4, 0) / n;
    // standard errors of the first, second and fourth moments: 1, sqrt 2, sqrt 96, over sqrt n
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(square - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(fourth - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
    // P(|x| > 1.96) = 0.05: any table of the normal distribution
    const tail = draws.filter((x) => Math.abs(x) > 1.959964).length / n;
    expect(Math.abs(tail - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / n));
  });

  it.each([
    ["disc", 0.5],
    ["square", 2 / 3],
  ] as const)("an even %s has the mean square radius of its area", (zone, expected) => {
    const dx = new Float64Array(1);
    const dy = new Float64Array(1);
    const draw = drawErrors(
      [{ zone, spread: { kind: "uniform" }, reach: [1], common: false }],
      randomSource(9),
      dx,
      dy,
    );
    let sum = 0;
    for (let i = 0; i < 50_000; i++) {
      draw();
      sum += (dx[0] ?? 0) ** 2 + (dy[0] ?? 0) ** 2;
    }
    expect(Math.abs(sum / 50_000 - expected)).toBeLessThan(0.01);
  });

  it("a cut-off normal stays in its zone, and a common error moves all rods alike", () => {
    const dx = new Float64Array(3);
    const dy = new Float64Array(3);
    const spread = { kind: "normal", sigma: 0.8, truncated: true } as const;
    const draw = drawErrors([{ zone: "square", spread, reach: [2, 2, 2], common: true }], randomSource(4), dx, dy);
    for (let i = 0; i < 2000; i++) {
      draw();
      expect([dx[1], dx[2], dy[1], dy[2]]).toEqual([dx[0], dx[0], dy[0], dy[0]]);
      expect(Math.max(Math.abs(dx[0] ?? 9), Math.abs(dy[0] ?? 9))).toBeLessThanOrEqual(2);
    }
  });
});

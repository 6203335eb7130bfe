/** Best-fit motions against a general matrix library, and against the published theorem worked by hand. */
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { describe, expect, it } from "vitest";
import type { Pair } from "../../src/survey/motion.js";
import { bestMotion } from "../../src/survey/motion.js";
import { drawFrom } from "../seed.js";

/**
 * Orthogonal Procrustes problem by singular values (P. H. Schonemann, A generalized solution of the orthogonal Procrustes
 * problem, Psychometrika 31, 1966; with the reflection kept out as in S. Umeyama, IEEE PAMI 13, 1991), by ml-matrix.
 */
function byMatrices(pairs: readonly Pair[]) {
  const from = new Matrix(pairs.map((pair) => [pair.from.x, pair.from.y]));
  const to = new Matrix(pairs.map((pair) => [pair.to.x, pair.to.y]));
  const [fromMean, toMean] = [from.mean("column"), to.mean("column")];
  const products = to.clone().subRowVector(toMean).transpose().mmul(from.clone().subRowVector(fromMean));
  const { leftSingularVectors: u, rightSingularVectors: v } = new SingularValueDecomposition(products);
  const side =
    (u.get(0, 0) * u.get(1, 1) - u.get(0, 1) * u.get(1, 0)) * (v.get(0, 0) * v.get(1, 1) - v.get(0, 1) * v.get(1, 0));
  const turn = u.mmul(Matrix.diag([1, side < 0 ? -1 : 1])).mmul(v.transpose());
  const [fx = 0, fy = 0] = fromMean;
  const [tx = 0, ty = 0] = toMean;
  return {
    turn: (Math.atan2(turn.get(1, 0), turn.get(0, 0)) * 180) / Math.PI,
    x: tx - (turn.get(0, 0) * fx + turn.get(0, 1) * fy),
    y: ty - (turn.get(1, 0) * fx + turn.get(1, 1) * fy),
  };
}

describe("best fit of rods", () => {
  it.each(Array.from({ length: 20 }, (_, i) => i + 1))("set %i agrees with the singular values", (set) => {
    const draw = drawFrom(set);
    const next = () => 2 * draw() - 1;
    const angle = next() * Math.PI;
    const [sx, sy] = [next() * 1000, next() * 1000];
    const pairs = Array.from({ length: 2 + (set % 9) }, (): Pair => {
      const from = { x: next() * 400 + 90, y: next() * 300 - 55 };
      const x = Math.cos(angle) * from.x - Math.sin(angle) * from.y + sx + next() * 8;
      return { from, to: { x, y: Math.sin(angle) * from.x + Math.cos(angle) * from.y + sy + next() * 8 } };
    });
    const ours = bestMotion(pairs);
    const theirs = byMatrices(pairs);
    expect(ours.turn ?? Number.NaN).toBeCloseTo(theirs.turn, 9);
    expect(ours.x / 1e6).toBeCloseTo(theirs.x, 5);
    expect(ours.y / 1e6).toBeCloseTo(theirs.y, 5);
  });

  it("by hand: a square turned by 90 degrees and shifted by (10, 20) is found exactly", () => {
    const square = [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
    ] as const;
    const pairs = square.map(([x, y]) => ({ from: { x, y }, to: { x: 10 - y, y: 20 + x } }));
    expect(bestMotion(pairs)).toEqual({ x: 10e6, y: 20e6, turn: 90 });
  });
});

/**
 * Wrong ways round, symmetry and look-alikes against brute force that shares no code with the program: every assignment of rods
 * is tried (all permutations), every way round is a matrix written out, symmetries are counted as permutations that keep all
 * distances (an isometry of the plane is one, and the other way round). Integers of 1/4 in, so that nothing rounds.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { extentOf, rectangle } from "../../src/geometry/index.js";
import type { Base } from "../../src/job/model/job.js";
import { findLookAlikes, outlineSymmetryOrder, symmetryOrder, wrongPlacements } from "../../src/orientation/index.js";
import type { PlacedRod } from "../../src/rods/index.js";
import { placeRods } from "../../src/rods/index.js";
import { inches } from "../../src/units/length.js";
import { baseFixture, groupFixture } from "../fixture.js";

interface Spot {
  readonly x: number;
  readonly y: number;
  /** 0 or 1: which group of rods. */
  readonly kind: number;
}

const QUARTER = 0.25;
const NM = 25_400_000;

/** Rows of the eight matrices, in no order of the program's. */
const MATRICES = [
  [1, 0, 0, 1],
  [0, -1, 1, 0],
  [-1, 0, 0, -1],
  [0, 1, -1, 0],
  [-1, 0, 0, 1],
  [1, 0, 0, -1],
  [0, 1, 1, 0],
  [0, -1, -1, 0],
] as const;
type Matrix = (typeof MATRICES)[number];

/** Which matrix a way's words mean: face down changes the sign of x, the turn follows. */
const MATRIX_OF: Readonly<Record<string, Matrix>> = {
  "turned 90": [0, -1, 1, 0],
  "turned 180": [-1, 0, 0, -1],
  "turned 270": [0, 1, -1, 0],
  "face down": [-1, 0, 0, 1],
  "face down and turned 90": [0, -1, -1, 0],
  "face down and turned 180": [1, 0, 0, -1],
  "face down and turned 270": [0, 1, 1, 0],
};

const moved = ([a, b, c, d]: Matrix, { x, y, kind }: Spot): Spot => ({ x: a * x + b * y, y: c * x + d * y, kind });

function permutations(count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return permutations(count - 1).flatMap((rest) =>
    Array.from({ length: count }, (_, at) => [...rest.slice(0, at), count - 1, ...rest.slice(at)]),
  );
}
const PERMUTATIONS = [0, 1, 2, 3, 4, 5, 6].map(permutations);

/** Least over all assignments within each kind of the largest distance, squared, in quarter inches. */
function leastLargest(from: readonly Spot[], to: readonly Spot[]): number {
  let best = Infinity;
  for (const order of PERMUTATIONS[from.length] ?? []) {
    let worst = 0;
    order.forEach((j, i) => {
      const [a, b] = [from[i] as Spot, to[j] as Spot];
      worst = Math.max(worst, a.kind === b.kind ? (a.x - b.x) ** 2 + (a.y - b.y) ** 2 : Infinity);
    });
    best = Math.min(best, worst);
  }
  return best;
}

/** Isometries of the plane that keep the set: distance-keeping permutations; twice as many where all lie on one line. */
function countSymmetries(spots: readonly Spot[]): number {
  if (spots.length === 1) return Infinity;
  const square = (a: Spot, b: Spot) => (a.x - b.x) ** 2 + (a.y - b.y) ** 2;
  const kept = (PERMUTATIONS[spots.length] ?? []).filter((order) =>
    spots.every((a, i) =>
      spots.every((b, j) => {
        const [c, d] = [spots[order[i] ?? 0] as Spot, spots[order[j] ?? 0] as Spot];
        return a.kind === c.kind && square(a, b) === square(c, d);
      }),
    ),
  ).length;
  const [first, second] = spots as [Spot, Spot];
  const onLine = spots.every(
    ({ x, y }) => (second.x - first.x) * (y - first.y) === (second.y - first.y) * (x - first.x),
  );
  return onLine ? 2 * kept : kept;
}

const spot = fc.record({ x: fc.integer({ min: -8, max: 8 }), y: fc.integer({ min: -8, max: 8 }), kind: fc.nat(1) });
const spread = fc.uniqueArray(spot, { minLength: 1, maxLength: 6, selector: ({ x, y }) => `${x} ${y}` });
/** Patterns with symmetry: a seed of one or two rods with all images under some of the matrices. */
const symmetric = fc
  .tuple(
    fc.uniqueArray(fc.record({ x: fc.integer({ min: -4, max: 4 }), y: fc.integer({ min: -4, max: 4 }) }), {
      minLength: 1,
      maxLength: 2,
      selector: ({ x, y }) => `${x} ${y}`,
    }),
    fc.constantFrom([0, 2], [0, 4], [0, 4, 5, 2], [0, 1, 2, 3], [0, 6]),
  )
  .map(([seeds, group]) => {
    const all = seeds.flatMap((at) => group.map((g) => moved(MATRICES[g] as Matrix, { ...at, kind: 0 })));
    return [...new Map(all.map((each) => [`${each.x + 0} ${each.y + 0}`, each])).values()].slice(0, 6);
  });
const pattern = fc.oneof(spread, symmetric);

function baseOf(spots: readonly Spot[], mark = "B1"): Base {
  const groups = [0, 1].flatMap((kind) => {
    const at = spots
      .filter((each) => each.kind === kind)
      .map(({ x, y }) => ({ x: inches(x * QUARTER), y: inches(y * QUARTER) }));
    const size = kind === 0 ? {} : { size: "1", diameter: inches(1) };
    return at.length === 0 ? [] : [groupFixture({ letter: "AB"[kind] ?? "", pattern: { kind: "points", at } }, size)];
  });
  return baseFixture({ mark, groups });
}

function rodsOf(base: Base): readonly PlacedRod[] {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("no rods");
  return rods.value;
}

const errorTwice = (square: number) => 2 * Math.sqrt(square) * QUARTER * NM;
const outline = rectangle({ x: 0, y: 0 }, inches(20), inches(20));

describe("against brute force", () => {
  it("the rod error of every way round", () => {
    fc.assert(
      fc.property(pattern, (spots) => {
        const base = baseOf(spots);
        for (const { way, errorTwice: found } of wrongPlacements(base, rodsOf(base), outline)) {
          const matrix = MATRIX_OF[way.words];
          if (matrix === undefined) throw new Error(way.words);
          const images = spots.map((each) => moved(matrix, each));
          expect(Math.abs(found - errorTwice(leastLargest(images, spots)))).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("which ways round leave the holes as they are", () => {
    fc.assert(
      fc.property(pattern, (spots) => {
        const base = baseOf(spots);
        const found = wrongPlacements(base, rodsOf(base), outline).filter((each) => each.errorTwice === 0);
        const there = new Set(spots.map(({ x, y, kind }) => `${x + 0} ${y + 0} ${kind}`));
        const expected = Object.entries(MATRIX_OF).filter(([, matrix]) =>
          spots.every((each) => {
            const { x, y, kind } = moved(matrix, each);
            return there.has(`${x + 0} ${y + 0} ${kind}`);
          }),
        );
        expect(found.map(({ way }) => way.words)).toEqual(expected.map(([words]) => words));
      }),
      { numRuns: 300 },
    );
  });

  it("the order of the pattern's symmetry group", () => {
    fc.assert(
      fc.property(pattern, (spots) => {
        expect(symmetryOrder(rodsOf(baseOf(spots)))).toBe(countSymmetries(spots));
      }),
      { numRuns: 400 },
    );
  });

  it("marks that look alike, and how much they differ", () => {
    const three = fc.array(fc.integer({ min: 3, max: 6 }), { minLength: 4, maxLength: 4 });
    const job = fc.array(fc.tuple(three, fc.nat(1)), { minLength: 2, maxLength: 9 }).map((items) =>
      items.map(([[a = 0, b = 0, c = 0, d = 0], kind]): readonly Spot[] => [
        { x: -a, y: b, kind: 0 },
        { x: c, y: d, kind: 0 },
        { x: 0, y: -a - c, kind },
      ]),
    );
    fc.assert(
      fc.property(job, (patterns) => {
        const made = patterns.map((spots, i) => {
          const base = baseOf(spots, `B${i}`);
          return { base, rods: rodsOf(base), outline };
        });
        const { same, near } = findLookAlikes(made, inches(0.5));
        const found = new Map<string, number>();
        for (const { marks } of same) addPairs(found, marks, marks, 0);
        // Marks of one pattern whose templates differ stand in several rows with the same first mark.
        for (const a of same) for (const b of same) if (a.marks[0] === b.marks[0]) addPairs(found, a.marks, b.marks, 0);
        for (const { marks, errorTwice: error } of near) addPairs(found, marks[0], marks[1], error);
        expect([...found.keys()].sort()).toEqual([...bruteLookAlikes(patterns).keys()].sort());
        for (const [pair, error] of bruteLookAlikes(patterns)) {
          expect(Math.abs((found.get(pair) ?? Infinity) - error)).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("the symmetries of outlines: images of the corners under every isometry that takes one side to another", () => {
    const corner = fc.constantFrom("square", "chamfer", "notch");
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 12 }),
        fc.integer({ min: 8, max: 12 }),
        corner,
        fc.nat(2),
        (x, y, kind, more) => {
          const legs = { x: inches(1), y: inches(1 + more * QUARTER) };
          const path = rectangle(
            { x: 0, y: 0 },
            inches(x),
            inches(y),
            kind === "square" ? { kind } : { kind, ...legs },
          );
          const corners = path.segments.map(
            ({ from }) => `${Math.round(from.x * 1e4) + 0} ${Math.round(from.y * 1e4) + 0}`,
          );
          const { x0, y0 } = extentOf(path);
          expect([x0, y0]).toEqual([-x * 12.7, -y * 12.7].map((edge) => expect.closeTo(edge, 5)));
          // A treated rectangle about 0,0 is kept by those of the eight that keep its set of corners.
          const kept = MATRICES.filter(([a, b, c, d]) =>
            path.segments.every(({ from: { x: px, y: py } }) =>
              corners.includes(`${Math.round((a * px + b * py) * 1e4) + 0} ${Math.round((c * px + d * py) * 1e4) + 0}`),
            ),
          );
          expect(outlineSymmetryOrder(path)).toBe(kept.length);
        },
      ),
    );
  });
});

function addPairs(found: Map<string, number>, a: readonly string[], b: readonly string[], error: number): void {
  for (const one of a) for (const other of b) if (one !== other) found.set([one, other].sort().join("/"), error);
}

/** Every pair of marks with the same sizes whose least error over the eight ways is below 1/2 in. */
function bruteLookAlikes(patterns: readonly (readonly Spot[])[]): ReadonlyMap<string, number> {
  const pairs = patterns.flatMap((a, i) => patterns.slice(i + 1).map((b, k) => ({ a, b, i, j: i + 1 + k })));
  return new Map(
    pairs.flatMap(({ a, b, i, j }): readonly (readonly [string, number])[] => {
      const least = Math.min(
        ...MATRICES.map((matrix) =>
          leastLargest(
            a.map((each) => moved(matrix, each)),
            b,
          ),
        ),
      );
      return Math.sqrt(least) * QUARTER < 0.5 ? [[[`B${i}`, `B${j}`].sort().join("/"), errorTwice(least)]] : [];
    }),
  );
}

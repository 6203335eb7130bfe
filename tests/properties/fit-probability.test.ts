import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitPlate, fitProbability } from "../../src/fit/index.js";

const pattern = fc.array(
  fc.record({ x: fc.integer({ min: -300, max: 300 }), y: fc.integer({ min: -300, max: 300 }) }),
  {
    minLength: 1,
    maxLength: 8,
  },
);
const error = fc.record({
  kind: fc.constantFrom("disc", "normal"),
  size: fc.double({ min: 0, max: 6, noNaN: true }),
});

describe("probability of dropping on", () => {
  it("lies in 0 to 1, rises with freedom, and never falls with a bigger hole", () => {
    fc.assert(
      fc.property(
        pattern,
        error,
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.integer(),
        (places, rodError, c, seed) => {
          const run = (clearance: number) =>
            fitProbability({
              holes: places.map((place) => ({ ...place, clearance })),
              rodError,
              maxTurn: 0.05,
              samples: 200,
              seed,
            });
          const [small, big] = [run(c), run(c + 0.5)];
          for (const { fixed, shifted, free, standardError } of [small, big]) {
            expect(0 <= fixed && fixed <= shifted && shifted <= free && free <= 1).toBe(true);
            expect(standardError).toBeGreaterThanOrEqual(0);
          }
          expect(big.fixed).toBeGreaterThanOrEqual(small.fixed);
          expect(big.shifted).toBeGreaterThanOrEqual(small.shifted);
          expect(big.free).toBeGreaterThanOrEqual(small.free);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("worst case of a free plate", () => {
  const figures = fc.record({
    x: fc.integer({ min: -300, max: 300 }),
    y: fc.integer({ min: -300, max: 300 }),
    clearance: fc.integer({ min: 10, max: 50 }),
    share: fc.double({ min: 0.1, max: 2, noNaN: true }),
    angle: fc.double({ min: 0, max: 6.3, noNaN: true }),
  });

  /** Error radii scaled so that the governing pair meets its two clearances exactly. */
  function atLimit(rods: readonly { readonly clearance: number; readonly share: number }[]): number[] {
    const scale = Math.min(
      ...rods.flatMap((a, i) => rods.slice(i + 1).map((b) => (a.clearance + b.clearance) / (a.share + b.share))),
    );
    return rods.map(({ share }) => share * scale);
  }

  it("rods at the ends of their errors, every pair within its clearances: it always drops on", () => {
    fc.assert(
      fc.property(fc.array(figures, { minLength: 2, maxLength: 6 }), (rods) => {
        const reach = atLimit(rods);
        const placed = rods.map(({ x, y, angle }, i) => ({
          x: x + (reach[i] ?? 0) * Math.cos(angle),
          y: y + (reach[i] ?? 0) * Math.sin(angle),
        }));
        expect(fitPlate(rods, placed, { maxTurn: 0 }).value).toBeLessThanOrEqual(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it("a thousandth more, along the line of the governing pair: it does not", () => {
    fc.assert(
      fc.property(fc.array(figures, { minLength: 2, maxLength: 6 }), (rods) => {
        fc.pre(rods.every((a, i) => rods.slice(i + 1).every((b) => Math.hypot(a.x - b.x, a.y - b.y) > 1)));
        const reach = atLimit(rods).map((radius) => radius * 1.001);
        const pairs = rods.flatMap((a, i) => rods.slice(i + 1).map((b, k) => ({ a, b, i, j: i + 1 + k })));
        const over = ({ a, b, i, j }: (typeof pairs)[number]) =>
          (reach[i] ?? 0) + (reach[j] ?? 0) - a.clearance - b.clearance;
        const worst = pairs.reduce((most, pair) => (over(pair) > over(most) ? pair : most));
        const { a, b, i, j } = worst;
        const apart = Math.hypot(b.x - a.x, b.y - a.y);
        const [ux, uy] = [(b.x - a.x) / apart, (b.y - a.y) / apart];
        const placed = rods.map(({ x, y }, k) => {
          const move = k === i ? -(reach[i] ?? 0) : k === j ? (reach[j] ?? 0) : 0;
          return { x: x + move * ux, y: y + move * uy };
        });
        expect(fitPlate(rods, placed).value).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});

/** Comparisons, whatever the job. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Comparison } from "../../src/compare/index.js";
import { compareSides, countRecuts } from "../../src/compare/index.js";
import type { Base } from "../../src/job/model/job.js";
import { inches, nanometres } from "../../src/units/length.js";
import { sideOf } from "../compared-sides.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";

/** Rods in cells of 2-1/2 in, off the middle of their cells by up to 1/4 in, so that no two are near each other. */
const rods = fc
  .uniqueArray(fc.tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: -3, max: 3 })), {
    minLength: 2,
    maxLength: 10,
    selector: ([x, y]) => `${x},${y}`,
  })
  .chain((cells) =>
    fc.tuple(
      ...cells.map(([x, y]) =>
        fc
          .tuple(fc.integer({ min: -16, max: 16 }), fc.integer({ min: -16, max: 16 }))
          .map(([dx, dy]) => ({ x: inches(2.5 * x + dx / 64), y: inches(2.5 * y + dy / 64) })),
      ),
    ),
  );

const bases = fc
  .array(rods, { minLength: 1, maxLength: 4 })
  .map((patterns) => patterns.map((at, index) => baseOf(at, index)));

function baseOf(
  at: readonly { readonly x: ReturnType<typeof inches>; readonly y: ReturnType<typeof inches> }[],
  index: number,
): Base {
  const { template } = baseFixture();
  return baseFixture({
    mark: `B${index}`,
    groups: [
      groupFixture({ pattern: { kind: "points", at }, hole: { kind: "given", value: inches(1.3125), from: "job" } }),
    ],
    template: { ...template, mark: `T${index}`, opening: { kind: "none" } },
  });
}

const verdicts = ({ templates }: Comparison) => templates.map(({ verdict, changes }) => [verdict, changes.length]);

describe("a comparison", () => {
  it("of a job with itself finds nothing, in whatever order the bases stand", () => {
    fc.assert(
      fc.property(bases, (list) => {
        const [same, turned] = [
          sideOf(jobFixture({ bases: list })),
          sideOf(jobFixture({ bases: [...list].reverse() })),
        ];
        for (const other of [same, turned])
          expect(verdicts(compareSides(same, other))).toEqual(list.map(() => ["unchanged", 0]));
      }),
      { numRuns: 15 },
    );
  });

  it("tells a rod that moved by 1/16 in, and that alone", () => {
    const direction = fc.constantFrom([1, 0], [-1, 0], [0, 1], [0, -1]);
    fc.assert(
      fc.property(rods, fc.nat(), direction, (at, pick, [dx = 0, dy = 0]) => {
        const index = pick % at.length;
        const { x, y } = at[index] ?? { x: 0, y: 0 };
        const away = { x: nanometres(x + dx * inches(1 / 16)), y: nanometres(y + dy * inches(1 / 16)) };
        const [old, fresh] = [at, at.with(index, away)].map((points) =>
          sideOf(jobFixture({ bases: [baseOf(points, 0)] })),
        );
        if (old === undefined || fresh === undefined) throw new Error("two sides");
        const comparison = compareSides(old, fresh);
        const moves = comparison.templates.flatMap(({ changes }) => changes.filter(({ what }) => what !== "tag"));
        expect(moves).toEqual([
          expect.objectContaining({ what: "hole-moved", from: { x, y }, to: away, distance: inches(1 / 16) }),
        ]);
        expect(countRecuts(comparison)).toBe(1);
        expect(countRecuts(compareSides(fresh, old))).toBe(1);
      }),
      { numRuns: 40 },
    );
  });
});

/** The assignment of least cost, against every assignment there is. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assignRows } from "../../../src/compare/assign.js";

/** The least sum over all ways to give each row a column of its own. */
function leastByTrying(costs: readonly (readonly number[])[], taken: readonly number[] = []): number {
  const row = costs[taken.length];
  if (row === undefined) return 0;
  const sums = row.flatMap((cost, column) =>
    taken.includes(column) ? [] : [cost + leastByTrying(costs, [...taken, column])],
  );
  return Math.min(...sums);
}

describe("assignRows", () => {
  it("finds the least sum, each column once", () => {
    const sizes = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 2 }));
    const matrices = sizes.chain(([rows, more]) => {
      const row = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: rows + more, maxLength: rows + more });
      return fc.array(row, { minLength: rows, maxLength: rows });
    });
    fc.assert(
      fc.property(matrices, (costs) => {
        const assigned = assignRows(costs);
        expect(new Set(assigned).size).toBe(costs.length);
        const sum = assigned.reduce((total, column, row) => total + (costs[row]?.[column] ?? Number.NaN), 0);
        expect(sum).toBe(leastByTrying(costs));
      }),
      { numRuns: 300 },
    );
  });

  // Worked by hand: taking the cheapest first (1 at row 0) would cost 1 + 100.
  it("does not take the cheapest first", () => {
    expect(
      assignRows([
        [1, 2],
        [2, 100],
      ]),
    ).toEqual([1, 0]);
    expect(assignRows([])).toEqual([]);
  });
});

/** The ledger does not change when the whole base is moved, and does not depend on the order of rods typed as points. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../src/checks/index.js";
import { runChecks } from "../../src/checks/index.js";
import type { Offset } from "../../src/job/model/job.js";
import { given } from "../../src/job/model/job.js";
import { nanometres } from "../../src/units/index.js";
import { contextOf, inch } from "../unit/checks/context.js";

const offset = (x: number, y: number): Offset => ({ x: nanometres(x), y: nanometres(y) });
const moved = (by: Offset, x = 0, y = 0) => offset(by.x + x, by.y + y);
/** Four rods, half spacings in nanometres, all off the working point by `by`. */
const corners = (hx: number, hy: number) => [offset(-hx, hy), offset(hx, hy), offset(hx, -hy), offset(-hx, -hy)];

function ledger(hx: number, hy: number, by: Offset, order: readonly number[] = [0, 1, 2, 3]): readonly CheckRow[] {
  const rods = corners(hx, hy);
  const at = order.map((i) => moved(by, rods[i]?.x, rods[i]?.y));
  return runChecks(
    contextOf({
      group: { pattern: { kind: "points", at } },
      base: {
        column: given(
          {
            kind: "wide flange",
            depth: inch(8),
            width: inch(8),
            flange: inch(0.5),
            web: inch(0.25),
            depthAlong: "y",
            at: by,
          },
          "job",
        ),
      },
      basePlate: {
        at: by,
        pattern: given(
          at.map((hole) => ({ at: hole, diameter: given(inch(2.0625), "job") })),
          "job",
        ),
      },
      concrete: { at: by, depth: given(inch(30), "job") },
      template: {
        outline: {
          kind: "rectangle",
          x: inch(26),
          y: inch(18),
          at: by,
          corner: { kind: "chamfer", x: inch(1), y: inch(1) },
        },
        opening: { kind: "circle", diameter: inch(6), at: by },
      },
    }),
  );
}

const half = fc.integer({ min: inch(3), max: inch(8) });
const shift = fc.integer({ min: -inch(200), max: inch(200) });
/** What a wrong way round does turns on where the working point lies; it is the point about which templates are turned. */
const FIXED = ["marks-room", "wrong-placement"];
const judged = (rows: readonly CheckRow[]) =>
  rows
    .filter(({ rule }) => !FIXED.includes(rule))
    .map(({ rule, clause, subject, value, limit, status }) => ({ rule, clause, subject, value, limit, status }));

describe("checks", () => {
  it("do not change when the whole base is moved", () => {
    fc.assert(
      fc.property(half, half, shift, shift, (hx, hy, dx, dy) => {
        expect(judged(ledger(hx, hy, offset(dx, dy)))).toEqual(judged(ledger(hx, hy, offset(0, 0))));
      }),
      { numRuns: 60 },
    );
  });

  it("do not depend on the order in which rods are typed", () => {
    const order = fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 });
    fc.assert(
      fc.property(half, half, order, (hx, hy, typed) => {
        const rods = (rows: readonly CheckRow[]) => judged(rows).filter(({ subject }) => !subject.startsWith("BP"));
        expect(rods(ledger(hx, hy, offset(0, 0), typed))).toEqual(rods(ledger(hx, hy, offset(0, 0))));
      }),
      { numRuns: 40 },
    );
  });
});

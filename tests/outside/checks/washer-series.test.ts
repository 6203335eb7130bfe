/**
 * ASTM F844 / ASME B18.21.1 Type A has two series up to 1-1/2 in: 7/8 in is 1.750 narrow and 2.250 wide. F844-07a s.7.1 (secondary
 * copy) furnishes the narrow one where none is named; Design Guide 1, Table 2.3, note 3, speaks of USS Standard, which is the
 * wide one (from memory). Where a job names none, what must cover is held as narrow, what needs room as wide.
 */
import { describe, expect, it } from "vitest";
import { washerCover } from "../../../src/checks/rules/washer-cover.js";
import { washerOnPlate } from "../../../src/checks/rules/washer-on-plate.js";
import { washerRoom } from "../../../src/checks/rules/washer-room.js";
import { given } from "../../../src/job/model/job.js";
import { inches, nanometres } from "../../../src/units/index.js";
import { contextOf, onLine } from "../../unit/checks/context.js";
import { jobOf, withBase } from "../../unit/job/files.js";

const [NARROW, WIDE] = [inches(1.75), inches(2.25)];
const ROD = inches(0.875);

/** The washer of a job that writes this for a 7/8 rod. */
function washerOf(written: string) {
  const base = jobOf(withBase({ rods: "{ diameter: 7/8 }", basePlate: `{ washer: ${written} }` })).bases[0];
  const washer = base?.groups[0]?.washer;
  if (washer === undefined) throw new Error("the job has no group");
  return washer;
}

/** Status of the rows of both rods, spaced so, in holes of this size. */
function rowsOf(
  rule: typeof washerCover | typeof washerRoom | typeof washerOnPlate,
  written: string,
  [hole, spacing]: readonly [number, number],
  side = inches(40),
) {
  const shape = given(
    { kind: "rectangle", x: nanometres(side), y: inches(40), corner: { kind: "square" } } as const,
    "job",
  );
  const context = contextOf({
    rod: { size: "7/8", diameter: ROD },
    group: { washer: washerOf(written), baseHole: given(nanometres(hole), "job"), pattern: onLine(0, spacing) },
    basePlate: { shape, at: { x: nanometres(spacing), y: nanometres(0) } },
  });
  return rule.check(context).flatMap((row) => {
    if (row.kind !== "compared" || row.value.kind !== "length" || row.limit.kind !== "length") return [];
    if (/thickness/.test(row.clause ?? "")) return [];
    return row.value.twice >= row.limit.twice ? "pass" : "fail";
  });
}

const HOLE = inches(1.3125);
const FAR = inches(12);

describe.each([
  ["F844", NARROW, WIDE],
  ["F844 narrow", NARROW, NARROW],
  ["F844 wide", WIDE, WIDE],
])("%s", (written, covers, needs) => {
  it.each([
    [-2, "pass"],
    [0, "pass"],
    [2, "fail"],
  ])("covers a hole of (W + d)/2 %i nm: %s", (delta, status) => {
    const hole = (covers + ROD) / 2 + delta;
    expect(new Set(rowsOf(washerCover, written, [hole, FAR]))).toEqual(new Set([status]));
  });

  it.each([
    [-1, "fail"],
    [0, "pass"],
    [1, "pass"],
  ])("needs a spacing of W + play %i nm: %s", (delta, status) => {
    expect(rowsOf(washerRoom, written, [HOLE, needs + HOLE - ROD + delta])[0]).toBe(status);
  });

  it.each([
    [-1, "fail"],
    [0, "pass"],
    [1, "pass"],
  ])("needs an edge of (W + play)/2 %i nm: %s", (delta, status) => {
    const side = needs + HOLE - ROD + 2 * delta;
    expect(rowsOf(washerOnPlate, written, [HOLE, FAR], nanometres(side)).at(-1)).toBe(status);
  });
});

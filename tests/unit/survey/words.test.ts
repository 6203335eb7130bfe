import { describe, expect, it } from "vitest";
import { washerCover } from "../../../src/checks/rules/washer-cover.js";
import { given } from "../../../src/job/model/job.js";
import { remedyRows } from "../../../src/survey/words.js";
import type { Unit } from "../../../src/units/index.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, rowsOf } from "../checks/context.js";

/** Rows of a washer that lacks, or has to spare, this much of 2 x 2-1/16 - 1-1/4 in. */
function wordsOf(delta: number, unit: Unit): readonly string[] {
  const size = nanometres(inch(2.875) + delta);
  const washer = given({ shape: "round", size, thickness: given(inch(0.5), "job") } as const, "job");
  const rows = rowsOf(washerCover, { group: { washer } }).filter(({ clause }) => clause.includes("2 H - d"));
  const hole = nanometres(inch(2.0625));
  return remedyRows({ kind: "hole", tags: ["A1"], by: nanometres(0), hole, slot: null, spare: hole, rows }, unit);
}

describe("words of a remedy", () => {
  it.each([
    [-inch(0.0625), "in", "washer-cover FAIL by 1/16 in"],
    [-1, "in", "washer-cover FAIL by 0.00000004 in"],
    [-1, "mm", "washer-cover FAIL by 0.000001 mm"],
    [0, "in", "washer-cover pass, exactly"],
    [1, "in", "washer-cover pass, 0.00000004 in to spare"],
    [1, "mm", "washer-cover pass, 0.000001 mm to spare"],
  ] as const)("%d nm in %s: never a difference of 0", (delta, unit, words) => {
    expect(wordsOf(delta, unit)).toEqual([words]);
  });
});

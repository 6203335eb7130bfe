/** Marks as schedules write them: one, a list, a range, a number of each (common practice). */
import { describe, expect, it } from "vitest";
import type { Marks } from "../../../../src/schedule/grammar/index.js";
import { MOST_IN_RANGE, readMarks } from "../../../../src/schedule/grammar/index.js";

const shown = ({ marks, quantity }: Marks): string => marks.join(" ") + (quantity === null ? "" : ` (${quantity})`);

function marksOf(text: string): string {
  const reading = readMarks(text);
  if (reading.kind === "marks") return shown(reading);
  return reading.kind === "choice" ? reading.readings.map(shown).join(" | ") : `fault: ${reading.message}`;
}

describe("marks", () => {
  it.each([
    ["B1", "B1"],
    ["Base 1", "Base 1"],
    ["BP-1", "BP-1"],
    ["C-12", "C-12"],
    ["B4-1", "B4-1"],
    ["B4-A", "B4-A"],
    ["B1 - NORTH", "B1 - NORTH"],
    ["007", "007"],
    ["B4-B7", "B4 B5 B6 B7"],
    ["b4-B6", "b4 b5 b6"],
    ["B4–B7", "B4 B5 B6 B7"],
    ["B4 THRU B7", "B4 B5 B6 B7"],
    ["B4 TO B7", "B4 B5 B6 B7"],
    ["B4 thru 7", "B4 B5 B6 B7"],
    ["1 - 4", "1 2 3 4"],
    ["B1-B3 INCL.", "B1 B2 B3"],
    ["B 1 - B 3", "B 1 B 2 B 3"],
    ["A & B", "A B"],
    ["A1-A4", "A1 A2 A3 A4"],
    ["B9-B11", "B9 B10 B11"],
    ["B01-B03", "B01 B02 B03"],
    ["B08-B11", "B08 B09 B10 B11"],
    ["BP-1-BP-4", "BP-1 BP-2 BP-3 BP-4"],
    ["BP-1 THRU BP-3", "BP-1 BP-2 BP-3"],
    ["B1A-B1D", "B1A B1B B1C B1D"],
    ["A THRU D", "A B C D"],
    ["B1, B3 & B5", "B1 B3 B5"],
    ["B1, B3, and B5", "B1 B3 B5"],
    ["B1/B2", "B1 B2"],
    ["B1 AND B2", "B1 B2"],
    ["B1; B2 + B3", "B1 B2 B3"],
    ["B4 - B7, B9", "B4 B5 B6 B7 B9"],
    ["B3 (4)", "B3 (4)"],
    ["B3 (TYP OF 4)", "B3 (4)"],
    ["B3 (4 REQ'D)", "B3 (4)"],
    ["B3 (NORTH)", "B3 (NORTH)"],
  ])("%s", (text, marks) => {
    expect(marksOf(text)).toBe(marks);
  });

  it.each([
    ["B1-3", "B1-3 | B1 B2 B3"],
    ["1-4", "1-4 | 1 2 3 4"],
    ["BP-1-3", "BP-1-3 | BP-1 BP-2 BP-3"],
    ["B1,3,5", "B1 B3 B5 | B1 3 5"],
    ["B4-B7 (4)", "B4 B5 B6 B7 | B4 B5 B6 B7 (4)"],
    ["B1-3, B9", "B1-3 B9 | B1 B2 B3 B9"],
  ])("%s may be two things", (text, marks) => {
    expect(marksOf(text)).toBe(marks);
  });

  it.each([
    ["B7-B4", "does not ascend"],
    ["B4-B4", "does not ascend"],
    ["A/1", "one mark or several"],
    ["B1 B2 B3", "may be several marks"],
    ["C1 @ GRID A-1", "may be several marks"],
    ["B1 (2 REQ'D), B2", "brackets in a list"],
    ["B1 (SIM)", "not the same"],
    ["ALL", "names no mark"],
    ["B4 THRU C7", "differ in more than their number"],
    ["B1 THRU NORTH", "is no range"],
    ["B1-B010", "padded differently"],
    ["B1, B2, B1", 'names "B1" twice'],
    ["B1,, B2", "nothing between"],
    ["B4-B7 (8)", "8 beside 4 marks: of each, or of all?"],
    [`B1-B${MOST_IN_RANGE + 1}`, `a range of ${MOST_IN_RANGE + 1} marks`],
    ["B1 THRU B999999999", "at most 200"],
  ])("%s is told", (text, words) => {
    expect(marksOf(text)).toMatch(/^fault: /);
    expect(marksOf(text)).toContain(words);
  });

  it("a range of as many as are allowed is read", () => {
    expect(marksOf(`B1-B${MOST_IN_RANGE}`).split(" ")).toHaveLength(MOST_IN_RANGE);
  });

  it("readings of a choice are called by texts that read back to them", () => {
    for (const text of ["B1-3", "1-4", "B1,3,5", "B4-B7 (4)", "B1-3, B9", "1-100", "B8-10"]) {
      const reading = readMarks(text);
      expect([text, reading.kind]).toEqual([text, "choice"]);
      if (reading.kind !== "choice") continue;
      for (const one of reading.readings) expect([one.how, marksOf(one.how)]).toEqual([one.how, shown(one)]);
    }
  });
});

/** Sentences of the readers, without the lines of a job file that the page writes itself. */
import { describe, expect, it } from "vitest";
import { saidHere } from "../../../../src/web/begin/said-here.js";

describe("sentences of the readers", () => {
  it.each([
    [
      "the spreadsheet made a date of what was typed here (2023-03-15); allowed is what is meant in the job, as cells: { H8: 3/4 }, or the column formatted as text and the value typed again",
      "the spreadsheet made a date of what was typed here (2023-03-15); allowed is what is meant, or the column formatted as text and the value typed again",
    ],
    [
      "a fault; allowed is the text that holds, in the cell or in the job, as cells: { B2: 9 }",
      "a fault; allowed is the text that holds, in the cell",
    ],
    [
      "2 headings are not known and kept as notes: A, B (columns: { HEADING: NAME } says what one stands for, or note, or left out)",
      "2 headings are not known and kept as notes: A, B",
    ],
    [
      "a.csv: no table was found (write Mark over the column of the marks, or name the sheet that is meant: sheet: NAME)",
      "a.csv: no table was found (write Mark over the column of the marks)",
    ],
    ["no heading is Mark (answer in the job: columns: { POS (N): Mark })", "no heading is Mark"],
    ['"9 x 9 (TYP)" in C2: cannot be read', '"9 x 9 (TYP)" in C2: cannot be read'],
    ["a\u202Eb", "a\\u202eb"],
  ])("%s", (sentence, said) => {
    expect(saidHere(sentence)).toBe(said);
  });
});

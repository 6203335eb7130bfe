/** Names of cells as spreadsheets write them (ECMA-376 part 1, 18.17.2.3: names of sheets in quotation marks). */
import { expect, it } from "vitest";
import { columnLetters, columnNumber, nameCell, placeOfCell } from "../../../src/readers/cell-place.js";

it.each([
  [1, "A"],
  [26, "Z"],
  [27, "AA"],
  [52, "AZ"],
  [53, "BA"],
  [702, "ZZ"],
  [703, "AAA"],
  [16_384, "XFD"],
])("column %d is %s", (column, letters) => {
  expect([columnLetters(column), columnNumber(letters)]).toEqual([letters, column]);
});

it.each([
  ["Bases", "Bases!E7"],
  ["", "E7"],
  ["Anchor rods", "'Anchor rods'!E7"],
  ["Owner's", "'Owner''s'!E7"],
  ["S-201", "'S-201'!E7"],
  ["2026", "'2026'!E7"],
  ["B1", "'B1'!E7"],
  ["R1C1", "'R1C1'!E7"],
  ["Fu\u00dfplatten", "Fu\u00dfplatten!E7"],
])("a cell of the sheet %j is %s", (sheet, name) => {
  expect(nameCell(sheet, { line: 7, column: 5 })).toBe(name);
});

it("the row is the sheet's where a text has it on another line", () => {
  const cell = { text: "x", line: 9, column: 2, row: 7 };
  expect(placeOfCell("s.csv", "", cell, "row 7 X")).toEqual({
    ...{ file: "s.csv", line: 9, column: 2 },
    ...{ label: "row 7 X", cell: "B7" },
  });
});

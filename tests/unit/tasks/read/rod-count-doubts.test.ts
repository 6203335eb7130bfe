/** Rods counted on the sheet against those of its pattern: told when the sheet is read, with the cells of both. Invented data. */
import { expect, it } from "vitest";
import { readSheetAsSent } from "../../../../src/tasks/read.js";

const told = (...rows: readonly string[]): readonly string[] => {
  const file = ["MARK,RODS,X,Y,nx,ny", ...rows].join("\n");
  const reading = readSheetAsSent({ name: "s.csv", file, job: null, unit: "in" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value.findings.map(({ at, message }) => `${at.cell}: ${message}`);
};

it.each([
  [
    "five on a rectangle",
    "B1,(5) 1,12,10,,",
    ["B2: 5 rods are written, but the pattern of C2 and D2 has 4; write the number or the pattern that is meant"],
  ],
  [
    "six on two by two",
    "B1,(6) 1,12,10,2,2",
    ["B2: 6 rods are written, but the pattern of C2 and D2 has 4; write the number or the pattern that is meant"],
  ],
  ["six on three by two", "B1,(6) 1,12,10,3,2", []],
  ["four", "B1,(4) 1,12,10,,", []],
  ["spaces in the cells", "B1,(8) 1,3 SPA @ 6,10,,", []],
  [
    "spaces in the cells that are fewer",
    "B1,(8) 1,2 SPA @ 6,10,,2",
    ["B2: 8 rods are written, but the pattern of C2 and D2 has 6; write the number or the pattern that is meant"],
  ],
  ["two on a line", "B1,(2) 1,12,0,,", []],
])("%s", (_, row, expected) => {
  expect(told(row)).toEqual(expected);
});

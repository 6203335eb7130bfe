/** What proves the unit of a sheet, and what does not. */
import { expect, it } from "vitest";
import { readCsv } from "../../../src/readers/csv.js";
import { provedUnits } from "../../../src/schedule/index.js";

function unitsOf(rows: readonly string[]): string[] {
  const table = readCsv(rows.join("\n"), "a.csv");
  if (!table.ok) throw new Error("no table");
  return provedUnits(table.value).map(({ unit, cell }) => `${unit} ${cell.text}`);
}

it.each([
  ['Mark\tSize\nB1\t1 1/4"Ø', ['in 1 1/4"Ø']],
  ["Mark\tSize\nB1\t1¼ DIA", ["in 1¼ DIA"]],
  ["Mark\tX\nB1\t2'-0", ["in 2'-0"]],
  ["Mark\tX\nB1\t12 in", ["in 12 in"]],
  ["Mark\tX (IN)\nB1\t12", ["in X (IN)"]],
  ["Mark\tX\n\tin.\nB1\t12", ["in in."]],
  ["Mark\tX\nB1\t300 mm", ["mm 300 mm"]],
  ["Mark\tX [mm]\nB1\t300", ["mm X [mm]"]],
  ["ALL DIMENSIONS IN MILLIMETRES\nMark\tX\nB1\t300", ["mm ALL DIMENSIONS IN MILLIMETRES"]],
  ["Mark\tRod\tX\tY\tP\nB1\tM24\t300\t250\t450", ["mm M24"]],
  ["Mark\tRod\tX\nB1\t1-1/4\t25 mm", ["in 1-1/4", "mm 25 mm"]],
])("%j proves %j", (text, proofs) => {
  expect(unitsOf([text])).toEqual(proofs);
});

it.each([
  "Mark\tX\nB1\t12",
  "SHEET 1/2\nMark\tX\nB1\t12",
  "SCALE 1/4\nMark\tX\nB1\t12",
  "ISSUED 3/4/2026\nMark\tX\nB1\t12",
  "SEE 3 in this table\nMark\tX\nB1\t12",
  "Mark\tRod\tX\nB1\tM24\t12",
  "Mark\tGrade\nB1\tF1554 GR 36",
  'Mark\tGrade\nB1\t""""',
])("%j proves none", (text) => {
  expect(unitsOf([text])).toEqual([]);
});

/** What was understood of an untidy sheet, by hand: 4 bases, each kind of line, two questions. Invented data. */
import type { ReadAs, ReadLine } from "../src/schedule/index.js";

function line(changes: Partial<ReadLine>): ReadLine {
  return {
    ...{ mark: "", cell: "", heading: "", written: "", key: "", taken: "", unit: "", origin: "row", remark: "" },
    ...changes,
  };
}

const PLATE = "BASE PLATE / SIZE";
const size = "ANCHOR RODS / SIZE";
const left = "left out" as const;

const LINES: readonly Partial<ReadLine>[] = [
  { cell: "Bases!A1", written: "COLUMN SCHEDULE", origin: left, remark: "title" },
  { cell: "Bases!A3", heading: "MK", written: "MK", origin: left, remark: "heading: Mark" },
  { cell: "Bases!B3", heading: size, written: "SIZE", origin: left, remark: "heading: Rod dia" },
  { mark: "B1", cell: "Bases!A5", heading: "MK", written: "B1", key: "mark", taken: "B1" },
  { mark: "B1", cell: "Bases!B5", heading: size, written: "1¼ DIA", key: "rods.diameter", taken: "1-1/4", unit: "in" },
  { mark: "B1", cell: "Bases!C5", heading: PLATE, written: "18x16 PL 1½", key: "basePlate.x", taken: "18", unit: "in" },
  { mark: "B1", cell: "Bases!C5", heading: PLATE, written: "18x16 PL 1½", key: "basePlate.y", taken: "16", unit: "in" },
  {
    ...{ mark: "B1", cell: "Bases!C5", heading: PLATE, written: "18x16 PL 1½" },
    ...{ key: "basePlate.thickness", taken: "1-1/2", unit: "in" },
  },
  { mark: "B1", heading: "", key: "template.thickness", taken: "1/4", unit: "in", origin: "default" },
  {
    ...{ mark: "B1", cell: "Bases!D5", heading: "ERECT", written: "=SEQ 2", key: "note", taken: "ERECT: =SEQ 2" },
    ...{ origin: "kept", remark: "kept as a note of the base" },
  },
  ...["B4", "B5", "B6"].map(
    (mark): Partial<ReadLine> => ({
      ...{ mark, cell: "Bases!A6", heading: "MK", written: "B4-B6", key: "mark", taken: mark },
      remark: "B4-B6 stands for B4, B5, B6",
    }),
  ),
  {
    ...{ mark: "B4, B5, B6", cell: "Bases!B6", heading: size, written: "DO", key: "rods.diameter", taken: "1-1/4" },
    ...{ unit: "in", origin: "above", remark: "as Bases!B5" },
  },
  {
    ...{ mark: "B4, B5, B6", cell: "Bases!C6", heading: PLATE, written: "SEE NOTE 2", key: "basePlate.x", taken: "14" },
    ...{ unit: "in", origin: "note", remark: "note 2" },
  },
  { cell: "Bases!A8", written: "NOTES:", origin: left, remark: "footnote" },
  { mark: "B1", cell: "Bases!E5", heading: "SPACING", written: "6", origin: "asked" },
];

/** Two questions: of one heading, and of two cells. */
export const readAsCase: ReadAs = {
  file: "bases.xlsx",
  sheet: "Bases",
  isPlain: false,
  lines: LINES.map(line),
  questions: [
    {
      cells: ["Bases!E3"],
      text: 'does "SPACING" mean from rod to rod, or from the first rod to the last?',
      choices: [
        { line: "columns: { SPACING: Pitch X }", means: "from rod to rod" },
        { line: "columns: { SPACING: Overall X }", means: "from the first to the last" },
      ],
    },
    {
      cells: ["Bases!F5", "Bases!F6"],
      text: "what does 11/4 mean?",
      choices: [
        { line: "cells: { F5: 1-1/4, F6: 1-1/4 }", means: "a dash is missing" },
        { line: "cells: { F5: 2-3/4, F6: 2-3/4 }", means: "as it stands" },
      ],
    },
    {
      cells: [],
      text: "the sheet gives no thickness of the templates",
      choices: [{ line: "defaults: { template: { thickness: } }", means: "the plate that they are cut from" }],
    },
  ],
};

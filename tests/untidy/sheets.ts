/** Untidy sheets, drawn as lines of text, each with the bases that a job file would have for it. Invented data only. */
import type { Unit } from "../../src/units/index.js";
import type { SheetLooks } from "../unit/schedule/drawn-sheet.js";
import type { Answers } from "./read-sheet.js";

/** A sheet, the job's answers about it, and what it gives. */
export interface UntidySheet {
  readonly name: string;
  readonly unit?: Unit;
  readonly lines: readonly string[];
  readonly looks?: SheetLooks;
  readonly answers?: Answers;
  /** Bases of a job file, one a line. */
  readonly bases: readonly string[];
  /** Codes of what is told without holding the job up. */
  readonly told?: readonly string[];
}

/** A sheet that is asked about or at fault, with the codes of that. */
export type RefusedSheet = Omit<UntidySheet, "bases" | "told"> & { readonly codes: readonly string[] };

const B1 = "{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }";
const ROWS = ["B1 | 3/4 | 9 | 9", "B2 | 1 | 12 | 10"];
const TWO = [B1, "{ mark: B2, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 } }"];

/** Sheets that are read without a question. */
export const READ: readonly UntidySheet[] = [
  {
    name: "titles above, blank rows between, footnotes below",
    lines: [
      "INVENTED HALL",
      "ANCHOR ROD SCHEDULE",
      "",
      "MARK | ROD DIA | X | Y",
      ROWS[0] ?? "",
      "",
      ROWS[1] ?? "",
      "",
      "NOTES:",
      "1. RODS ARE SET BY TEMPLATE.",
    ],
    bases: TWO,
  },
  { name: "one row of units", lines: ["MARK | ROD DIA | X | Y", " | IN | IN | IN", ...ROWS], bases: TWO },
  {
    name: "a row of units in millimetres beside a job in inches",
    lines: ["MARK | ROD DIA | X | Y", " | in | mm | mm", "B1 | 3/4 | 228.6 | 228.6"],
    bases: [B1],
  },
  {
    name: "groups over headings",
    lines: ["MARK | ANCHOR RODS | | | PATTERN | ", " | SIZE | GRADE | EMBED | X | Y", "B1 | 3/4 | 36 | 12 | 9 | 9"],
    looks: { merges: ["B1:D1", "E1:F1", "A1:A2"] },
    bases: [
      "{ mark: B1, rods: { diameter: 3/4, grade: 36, embedment: 12 }, pattern: { kind: rectangle, x: 9, y: 9 } }",
    ],
  },
  {
    name: "bases across the columns",
    lines: ["MARK | B1 | B2", "ROD DIA | 3/4 | 1", "X | 9 | 12", "Y | 9 | 10"],
    bases: TWO,
  },
  {
    name: "an unknown column is kept as a note",
    lines: ["MARK | ROD DIA | X | Y | PAINT", "B1 | 3/4 | 9 | 9 | NONE ABOVE GRADE"],
    bases: [
      '{ mark: B1, note: "PAINT: NONE ABOVE GRADE", rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }',
    ],
    told: ["headings-not-known"],
  },
  {
    name: "remarks and unknown columns share the note",
    lines: ["MARK | ROD DIA | X | Y | REMARKS | PAINT", "B1 | 3/4 | 9 | 9 | NORTH SIDE | PRIMER"],
    bases: [
      '{ mark: B1, note: "NORTH SIDE; PAINT: PRIMER", rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }',
    ],
    told: ["headings-not-known"],
  },
  {
    name: "diameter signs",
    lines: ["MARK | ROD DIA | X | Y", 'B1 | 3/4"Ø | 9" | 9"', 'B2 | Ø1 | 1\'-0" | 10"'],
    bases: TWO,
  },
  {
    name: "a fraction as one sign",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 1¼ DIA | 9 | 9"],
    bases: ["{ mark: B1, rods: { diameter: 1-1/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }"],
  },
  {
    name: "rods in one cell with their number",
    lines: ["MARK | ANCHOR RODS | X | Y", 'B1 | (4) 3/4" | 9 | 9'],
    bases: ["{ mark: B1, rods: { count: 4, diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }"],
  },
  {
    name: "rods in one cell with their length",
    lines: ["MARK | ANCHOR RODS | X | Y", 'B1 | 4 - 1" Ø x 2\'-0" | 9 | 9'],
    bases: ["{ mark: B1, rods: { count: 4, diameter: 1, length: 24 }, pattern: { kind: rectangle, x: 9, y: 9 } }"],
  },
  {
    name: "a plate with its thickness in one cell",
    lines: [
      "MARK | ROD DIA | X | Y | BASE PLATE",
      "B1 | 3/4 | 9 | 9 | 14x14 PL 1",
      "B2 | 1 | 12 | 10 | PL1 1/2x18x1'-4\"",
    ],
    bases: [
      "{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 }, basePlate: { x: 14, y: 14, thickness: 1 } }",
      "{ mark: B2, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { x: 18, y: 16, thickness: 1-1/2 } }",
    ],
  },
  {
    name: "a pattern in one cell",
    lines: ["MARK | ROD DIA | ROD PATTERN", "B1 | 3/4 | 9x9", "B2 | 1 | 12 x 10"],
    bases: TWO,
  },
  { name: "a square pattern", lines: ["MARK | ROD DIA | ROD PATTERN", "B1 | 3/4 | 9 SQ"], bases: [B1] },
  {
    name: "centre to centre of two lines is the whole",
    lines: ["MARK | NO. OF RODS | ROD DIA | ROD PATTERN", "B1 | 4 | 3/4 | 9 x 9 C/C"],
    bases: ["{ mark: B1, rods: { count: 4, diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }"],
  },
  {
    name: "a pitch with its number of lines",
    lines: ["MARK | ROD DIA | PITCH X | NX | Y", "B1 | 3/4 | 6 | 3 | 9"],
    bases: ["{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 12, nx: 3, y: 9 } }"],
  },
  {
    name: "a pitch in millimetres stays exact",
    lines: ["MARK | ROD DIA | PITCH X | NX | Y", "B1 | 3/4 | 100 mm | 4 | 9"],
    bases: ["{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 300 mm, nx: 4, y: 9 } }"],
  },
  {
    name: "spaces that say their whole",
    lines: ["MARK | ROD DIA | X | Y", 'B1 | 3/4 | 3 SPA @ 6" = 1\'-6" | 9'],
    bases: ["{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 18, nx: 4, y: 9 } }"],
  },
  {
    name: "3 @ 6 that the number of rods proves",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y", "B1 | 8 | 3/4 | 3 @ 6 | 9"],
    bases: ["{ mark: B1, rods: { count: 8, diameter: 3/4 }, pattern: { kind: rectangle, x: 18, nx: 4, ny: 2, y: 9 } }"],
  },
  {
    name: "six rods on three known lines",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y | NX", "B1 | 6 | 3/4 | 12 | 9 | 3"],
    bases: ["{ mark: B1, rods: { count: 6, diameter: 3/4 }, pattern: { kind: rectangle, x: 12, nx: 3, ny: 2, y: 9 } }"],
  },
  {
    name: "six rods whose lines the job answers",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y", "B1 | 6 | 3/4 | 12 | 9"],
    answers: { cells: { B2: "3 x 2" } },
    bases: ["{ mark: B1, rods: { count: 6, diameter: 3/4 }, pattern: { kind: rectangle, x: 12, nx: 3, ny: 2, y: 9 } }"],
  },
  {
    name: "a gauge of one length that the job says holds both ways",
    lines: ["MARK | NO. OF RODS | ROD DIA | GAGE", 'B1 | 4 | 3/4 | 9"', "B2 | 4 | 1 | 12 x 10"],
    answers: { columns: { GAGE: "Pattern size" }, cells: { D2: "9 SQ" } },
    bases: TWO.map((base) => base.replace("diameter", "count: 4, diameter")),
  },
  {
    name: "gauges of one length each, square by the job",
    lines: ["MARK | ROD DIA | GAGE", 'B1 | 3/4 | 9"', "B2 | 1 | DO"],
    answers: { columns: { GAGE: "square" } },
    bases: [B1, B1.replace("B1", "B2").replace("3/4", "1")],
  },
  {
    name: "lines of rods answered for cells that say their size too",
    lines: ["MARK | RODS | X | Y", 'B1 | (6) 1 1/4"Ø x 2\'-6" | 14 | 16', "B2 | (8) 1 | 14 | 16"],
    answers: { cells: { B2: "2 x 3", B3: "3 x 3 perimeter" } },
    bases: [
      "{ mark: B1, rods: { count: 6, diameter: 1 1/4, length: 30 }, pattern: { kind: rectangle, x: 14, y: 16, nx: 2, ny: 3 } }",
      "{ mark: B2, rods: { count: 8, diameter: 1 }, pattern: { kind: rectangle, x: 14, y: 16, nx: 3, ny: 3, perimeter: yes } }",
    ],
  },
  {
    name: "two rods and one gauge",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y", "B1 | 2 | 3/4 | 6 | -"],
    bases: ["{ mark: B1, rods: { count: 2, diameter: 3/4 }, pattern: { kind: lines, x: [-3, 3], y: [0] } }"],
  },
  {
    name: "a bolt circle takes the number of rods",
    lines: ["MARK | NO. OF RODS | ROD DIA | B.C. | START", "B1 | 8 | 1 | 24 | straddle"],
    bases: [
      "{ mark: B1, rods: { count: 8, diameter: 1 }, pattern: { kind: circle, diameter: 24, count: 8, start: straddle } }",
    ],
  },
  {
    name: "a bolt circle whose start the job answers",
    lines: ["MARK | NO. OF RODS | ROD DIA | B.C.", "B1 | 8 | 1 | 24"],
    answers: { cells: { D2: "24 straddle" } },
    bases: [
      "{ mark: B1, rods: { count: 8, diameter: 1 }, pattern: { kind: circle, diameter: 24, count: 8, start: straddle } }",
    ],
  },
  {
    name: "a bolt circle that agrees with its gauges",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y | B.C.", "B1 | 4 | 1 | 12 | 12 | 17"],
    bases: ["{ mark: B1, rods: { count: 4, diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 12 } }"],
  },
  {
    name: "ditto marks",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9", 'B2 | DO | " | DO'],
    bases: [B1, B1.replace("B1", "B2")],
  },
  {
    name: "a chain of ditto marks",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9", "B2 | DO | DO | DO", "B3 | DO | DO | DO"],
    bases: [B1, B1.replace("B1", "B2"), B1.replace("B1", "B3")],
  },
  {
    name: "a ditto mark passes over the rods of another size where it is for the whole base",
    lines: ["MARK | ROD DIA | X | Y | PIER X", "B1 | 3/4 | 9 | 9 | 24", " | 1/2 | 4 | 4 | ", "B2 | 1 | 9 | 9 | DO"],
    bases: [
      "{ mark: B1, concrete: { x: 24 }, groups: [{ rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }, { rods: { diameter: 1/2 }, pattern: { kind: rectangle, x: 4, y: 4 } }] }",
      "{ mark: B2, concrete: { x: 24 }, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 9, y: 9 } }",
    ],
  },
  {
    name: "the same as another base, in one column",
    lines: ["MARK | ROD DIA | X | Y", "B1 | SAME AS B2 | 9 | 9", "B2 | 3/4 | 9 | 9"],
    bases: [B1, B1.replace("B1", "B2")],
  },
  {
    name: "the same as another base, whole",
    lines: ["MARK | QTY | ROD DIA | X | Y", "B1 | 2 | 3/4 | 9 | 9", "B2 | 3 | SAME AS B1 | | "],
    bases: [B1.replace("mark: B1", "mark: B1, quantity: 2"), B1.replace("mark: B1", "mark: B2, quantity: 3")],
  },
  {
    name: "the same as another base, in the remarks",
    lines: ["MARK | ROD DIA | X | Y | REMARKS", "B1 | 3/4 | 9 | 9 | ", "B2 | | | | SAME AS B1"],
    bases: [B1, B1.replace("B1", "B2")],
  },
  {
    name: "the same as a base with two sizes of rods",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9", " | 1/2 | 4 | 4", "B2 | SAME AS B1 | | "],
    bases: ["B1", "B2"].map(
      (mark) =>
        `{ mark: ${mark}, groups: [{ rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }, { rods: { diameter: 1/2 }, pattern: { kind: rectangle, x: 4, y: 4 } }] }`,
    ),
  },
  {
    name: "a range of marks",
    lines: ["MARK | QTY | ROD DIA | X | Y", "B4 THRU B6 | 3 | 3/4 | 9 | 9"],
    told: ["count-of-marks"],
    bases: ["B4", "B5", "B6"].map((mark) => B1.replace("mark: B1", `mark: ${mark}, quantity: 1`)),
  },
  {
    name: "a list of marks",
    lines: ["MARK | ROD DIA | X | Y", "B1, B3 & B5 | 3/4 | 9 | 9"],
    bases: ["B1", "B3", "B5"].map((mark) => B1.replace("B1", mark)),
  },
  {
    name: "each of several marks",
    lines: ["MARK | NO. OF BASES | ROD DIA | X | Y", "B1, B3 | 4 EACH | 3/4 | 9 | 9"],
    bases: ["B1", "B3"].map((mark) => B1.replace("mark: B1", `mark: ${mark}, quantity: 4`)),
  },
  {
    name: "a note that the job answers",
    lines: [
      "MARK | ROD DIA | X | Y | FINISH",
      "B1 | 3/4 | 9 | 9 | SEE NOTE 2",
      "",
      "NOTES:",
      "2. RODS IN THE PIT ARE HOT-DIP GALVANIZED.",
    ],
    answers: { notes: { "2": "HDG" } },
    bases: ["{ mark: B1, rods: { diameter: 3/4, finish: galvanized }, pattern: { kind: rectangle, x: 9, y: 9 } }"],
  },
  {
    name: "a note that is answered for several columns",
    lines: ["MARK | ROD DIA | X | Y | ROD GRADE", "B1 | 3/4 | 9 | 9 | SEE NOTE 1"],
    answers: { notes: { "1": { Grade: "55", Finish: "galvanized" } } },
    bases: [
      "{ mark: B1, rods: { diameter: 3/4, grade: 55, finish: galvanized }, pattern: { kind: rectangle, x: 9, y: 9 } }",
    ],
  },
  {
    name: "a cell that the job answers",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | VARIES | 9"],
    answers: { cells: { C2: "9" } },
    bases: [B1],
  },
  {
    name: "a heading that the job answers",
    lines: ["MARK | ROD DIA | SPACING X | Y | NX", "B1 | 3/4 | 6 | 9 | 3"],
    answers: { columns: { "SPACING X": "Pitch X" } },
    bases: ["{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 12, nx: 3, y: 9 } }"],
  },
  {
    name: "a column that the job leaves out",
    lines: ["MARK | ROD DIA | X | Y | PAINT", "B1 | 3/4 | 9 | 9 | GREY"],
    answers: { columns: { PAINT: "left out" } },
    bases: [B1],
  },
  {
    name: "one number over both gauges",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | "],
    looks: { merges: ["C2:D2"] },
    bases: [B1],
  },
  {
    name: "both gauges in one cell over both columns",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 x 9 | "],
    looks: { merges: ["C2:D2"] },
    bases: [B1],
  },
  {
    name: "values merged down over several bases",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9", "B2 | | | "],
    looks: { merges: ["B2:B3", "C2:C3", "D2:D3"] },
    bases: [B1, B1.replace("B1", "B2")],
  },
  {
    name: "a mark merged down over rods of two sizes",
    lines: ["MARK | PIER X | ROD DIA | X | Y", "B1 | 24 | 3/4 | 9 | 9", " | | 1/2 | 4 | 4"],
    looks: { merges: ["A2:A3", "B2:B3"] },
    bases: [
      "{ mark: B1, concrete: { x: 24 }, groups: [{ rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }, { rods: { diameter: 1/2 }, pattern: { kind: rectangle, x: 4, y: 4 } }] }",
    ],
  },
  {
    name: "signs for nothing",
    lines: ["MARK | ROD DIA | X | Y | GROUT | WASHER", "B1 | 3/4 | 9 | 9 | - | N/A"],
    bases: [B1],
  },
  {
    name: "a row that is struck out",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9", "B2 | 1 | 9 | 9"],
    looks: { struck: ["A3:D3"] },
    bases: [B1],
  },
  {
    name: "hidden rows are read",
    lines: ["MARK | ROD DIA | X | Y", ...ROWS],
    looks: { hidden: ["A3:D3"] },
    bases: TWO,
  },
  {
    name: "grade and finish in one cell",
    lines: ["MARK | ROD DIA | X | Y | GRADE", "B1 | 3/4 | 9 | 9 | F1554 GR 55 HDG"],
    bases: [
      "{ mark: B1, rods: { diameter: 3/4, grade: F1554 55, finish: galvanized }, pattern: { kind: rectangle, x: 9, y: 9 } }",
    ],
  },
  {
    name: "metric, its threads by name",
    unit: "mm",
    lines: ["MARK | BOLTS | X | Y", "C1 | 4 NO. M24 | 240 | 240"],
    bases: ["{ mark: C1, rods: { count: 4, diameter: M24 }, pattern: { kind: rectangle, x: 240, y: 240 } }"],
  },
  {
    name: "sections by their names",
    lines: ["MARK | ROD DIA | X | Y | COLUMN", "B1 | 3/4 | 9 | 9 | W12x65", "B2 | 3/4 | 9 | 9 | 254x254x73 UC"],
    bases: [
      "{ mark: B1, column: W12x65, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }",
      "{ mark: B2, column: 254x254x73 UC, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }",
    ],
  },
  {
    name: "a wrapped line of remarks",
    lines: ["MARK | ROD DIA | X | Y | PAINT", "B1 | 3/4 | 9 | 9 | PRIMER", " | | | | TWO COATS"],
    bases: [
      '{ mark: B1, note: "PAINT: PRIMER; PAINT: TWO COATS", rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }',
    ],
    told: ["headings-not-known"],
  },
  {
    name: "a total that adds up",
    lines: ["MARK | QTY | ROD DIA | X | Y", "B1 | 2 | 3/4 | 9 | 9", "B2 | 3 | 3/4 | 9 | 9", "TOTAL | 5 | | | "],
    bases: [B1.replace("mark: B1", "mark: B1, quantity: 2"), B1.replace("mark: B1", "mark: B2, quantity: 3")],
  },
  {
    name: "a total that does not add up is told",
    lines: ["MARK | QTY | ROD DIA | X | Y", "B1 | 2 | 3/4 | 9 | 9", "TOTAL | 5 | | | "],
    bases: [B1.replace("mark: B1", "mark: B1, quantity: 2")],
    told: ["total-differs"],
  },
  {
    name: "a plate that does not hold its rods is told",
    lines: ["MARK | ROD DIA | X | Y | BASE PLATE X | BASE PLATE Y", "B1 | 3/4 | 9 | 9 | 9 | 14"],
    bases: [
      "{ mark: B1, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 }, basePlate: { x: 9, y: 14 } }",
    ],
    told: ["plate-size-differs"],
  },
  {
    name: "a rod longer than its parts is told",
    lines: ["MARK | ROD DIA | X | Y | EMBEDMENT | PROJECTION | O.A.L.", "B1 | 3/4 | 9 | 9 | 12 | 6 | 48"],
    bases: [
      "{ mark: B1, rods: { diameter: 3/4, embedment: 12, projection: 6, length: 48 }, pattern: { kind: rectangle, x: 9, y: 9 } }",
    ],
    told: ["length-differs"],
  },
  {
    name: "elevations that do not add up are told",
    lines: ["MARK | ROD DIA | X | Y | GROUT | T.O.C. | B.O.P.", "B1 | 3/4 | 9 | 9 | 1-1/2 | 99'-0\" | 99'-2\""],
    bases: ["{ mark: B1, grout: 1-1/2, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: 9, y: 9 } }"],
    told: ["elevations-differ"],
  },
];

/** Sheets that must be asked about or are at fault; the codes say how. */
export const REFUSED: readonly RefusedSheet[] = [
  {
    name: "marks that may be a range, beside a count of bases",
    lines: ["MARK | QTY | ROD DIA | X | Y", "B1-3 | 1 | 3/4 | 9 | 9", "1-4 | 2 | 3/4 | 9 | 9"],
    codes: ["asked-reading"],
  },
  {
    name: "a mark with the number of a note, which may be a count",
    lines: ["MARK | ROD DIA | X | Y", "B3 (2) | 3/4 | 9 | 9", "B4 (3) | 3/4 | 9 | 9", "(2) EXISTING PIER"],
    codes: ["asked-reading"],
  },
  {
    name: "a mark with the sign of a note",
    lines: ["MARK | ROD DIA | X | Y", "B3* | 3/4 | 9 | 9", "B4 | 3/4 | 9 | 9", "* EXISTING PIER"],
    codes: ["asked-reading"],
  },
  {
    name: "overall or pitch",
    lines: ["MARK | ROD DIA | SPACING X | Y | NX", "B1 | 3/4 | 6 | 9 | 3"],
    codes: ["asked-heading"],
  },
  {
    name: "a note that nobody answered",
    lines: ["MARK | ROD DIA | X | Y | FINISH", "B1 | 3/4 | 9 | 9 | SEE NOTE 2"],
    codes: ["asked-note"],
  },
  {
    name: "how six rods stand",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y", "B1 | 6 | 3/4 | 12 | 9"],
    codes: ["asked-rod-lines"],
  },
  {
    name: "where the rods of a circle start",
    lines: ["MARK | NO. OF RODS | ROD DIA | B.C.", "B1 | 8 | 1 | 24"],
    codes: ["asked-start"],
  },
  { name: "3 @ 6 alone", lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 3 @ 6 | 9"], codes: ["asked-reading"] },
  {
    name: "a count on several marks",
    lines: ["MARK | NO. OF BASES | ROD DIA | X | Y", "B1, B3 | 8 | 3/4 | 9 | 9"],
    codes: ["asked-quantity"],
  },
  {
    name: "a row of a whole base without a mark",
    lines: ["MARK | QTY | ROD DIA | X | Y | PIER X", "B1 | 2 | 3/4 | 9 | 9 | 24", " | 3 | 1 | 9 | 9 | 24"],
    codes: ["asked-mark"],
  },
  {
    name: "a circle of references",
    lines: ["MARK | ROD DIA | X | Y", "B1 | SAME AS B2 | 9 | 9", "B2 | SAME AS B1 | 9 | 9"],
    codes: ["cell-fault"],
  },
  {
    name: "a circle of whole bases",
    lines: ["MARK | ROD DIA | X | Y", "B1 | SAME AS B2 | | ", "B2 | SAME AS B1 | | "],
    codes: ["cell-fault"],
  },
  {
    name: "a base that is not there",
    lines: ["MARK | ROD DIA | X | Y", "B1 | SAME AS B9 | 9 | 9"],
    codes: ["cell-fault"],
  },
  { name: "a ditto mark below nothing", lines: ["MARK | ROD DIA | X | Y", "B1 | DO | 9 | 9"], codes: ["cell-fault"] },
  {
    name: "a cell that is struck out",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9"],
    looks: { struck: ["C2"] },
    codes: ["cell-fault"],
  },
  {
    name: "a cell over unlike columns",
    lines: ["MARK | ROD DIA | X | Y | GROUT", "B1 | 3/4 | 9 | 9 | "],
    looks: { merges: ["D2:E2"] },
    codes: ["cell-fault"],
  },
  {
    name: "a bolt circle that is not that of its gauges",
    lines: ["MARK | NO. OF RODS | ROD DIA | X | Y | B.C.", "B1 | 4 | 1 | 12 | 12 | 20"],
    codes: ["circle-differs"],
  },
  {
    name: "an answer for no cell",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9"],
    answers: { cells: { Q9: "9" } },
    codes: ["answer-without-match"],
  },
  {
    name: "an answer for no note",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9"],
    answers: { notes: { "7": "9" } },
    codes: ["answer-without-match"],
  },
  {
    name: "an answer for no heading",
    lines: ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 9 | 9"],
    answers: { columns: { PAINT: "note" } },
    codes: ["answer-without-match"],
  },
  {
    name: "two tables that may be meant",
    lines: [
      "MARK | ROD DIA | X | Y",
      "B1 | 3/4 | 9 | 9",
      "",
      "OTHER BASES",
      "MARK | ROD DIA | X | Y",
      "C1 | 3/4 | 9 | 9",
    ],
    codes: ["asked-table"],
  },
];

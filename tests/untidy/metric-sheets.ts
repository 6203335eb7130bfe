/** Untidy sheets in millimetres, with British and European habits of writing. Invented data only. */
import type { RefusedSheet, UntidySheet } from "./sheets.js";

const C1 = "{ mark: C1, rods: { count: 4, diameter: M24 }, pattern: { kind: rectangle, x: 400, y: 300 } }";
const SQUARE = C1.replace("y: 300", "y: 400");
const ACROSS = [
  "Base mark | Unit | C1 | C2",
  "HD bolts |  |  | ",
  "Size | mm | M24 | M20",
  "Overall X | mm | 400 | 250",
  "Overall Y | mm | 300 | 200",
  "Length | mm | 600 | 500",
  "No. off | nr | 4 | 4",
  "Base plate |  |  | ",
  "Thickness | mm | 30 | 25",
];
const ACROSS_BASES = [
  "{ mark: C1, rods: { count: 4, diameter: M24, length: 600 }, pattern: { kind: rectangle, x: 400, y: 300 }, basePlate: { thickness: 30 } }",
  "{ mark: C2, rods: { count: 4, diameter: M20, length: 500 }, pattern: { kind: rectangle, x: 250, y: 200 }, basePlate: { thickness: 25 } }",
];
const ANSWERED = { columns: { "HD bolts / No. off": "Rod count" } };

/** Sheets that are read without a question. */
export const METRIC: readonly UntidySheet[] = [
  {
    name: "one spacing from rod to rod, of four rods",
    unit: "mm",
    lines: ["Mark | HD Bolts | Centres", "C1 | 4No. M24 | 400 CRS", "C2 | 4/M24 | 400 c/c each way"],
    bases: [SQUARE, SQUARE.replace("C1", "C2")],
  },
  {
    name: "one spacing from rod to rod, of four rods, in inches",
    lines: ["MARK | RODS | SPACING", 'B1 | (4) 3/4 | 12" O.C.'],
    bases: ["{ mark: B1, rods: { count: 4, diameter: 3/4 }, pattern: { kind: rectangle, x: 12, y: 12 } }"],
  },
  {
    name: "bolts with their number before a metric size",
    unit: "mm",
    lines: [
      "Mark | Bolts | X | Y",
      "C1 | 4M24 | 400 | 300",
      "C2 | 4 M24 | 400 | 300",
      "C3 | 4/M24 x 750 HD | 400 | 300",
    ],
    bases: [C1, C1.replace("C1", "C2"), C1.replace("C1", "C3").replace("M24", "M24, length: 750")],
  },
  {
    name: "stanchions that are the marks",
    unit: "mm",
    lines: ["Stanchion | HD Bolts | Overall X | Overall Y", "C1 | 4No. M24 | 400 | 300"],
    bases: [C1],
  },
  {
    name: "positions that are the marks, with sections",
    unit: "mm",
    lines: ["Pos | Column | Anchor bolts | X | Y | hef", "C1 | HEB 300 | 4 x M24 | 400 | 300 | 500"],
    bases: [C1.replace("M24 }", "M24, embedment: 500 }, column: HEB 300")],
  },
  {
    name: "distances along the axes",
    unit: "mm",
    lines: ["Mark | Bolts | c/c distance along X (mm) | c/c distance along Y (mm)", "C1 | 4 Nos. M24 | 400 | 300"],
    bases: [C1],
  },
  {
    name: "all dimensions in the job's own unit",
    unit: "mm",
    lines: ["ALL DIMENSIONS IN MM, LEVELS IN METRES", "Mark | Bolts | X | Y", "C1 | 4 M24 | 400 | 300"],
    bases: [C1],
  },
  ...["LEVELS IN METRES, ALL DIMENSIONS IN MM", "NO. OF UNITS: 4", "SIZES AS PER DRAWING IN FILE"].map(
    (title): UntidySheet => ({
      name: `a title without another unit: ${title}`,
      unit: "mm",
      lines: [title, "Mark | Bolts | X | Y", "C1 | 4 M24 | 400 | 300"],
      bases: [C1],
    }),
  ),
  {
    name: "all dimensions in another unit, beside units of their own",
    lines: ["ALL DIMENSIONS IN MM", "MARK | RODS | X (MM) | Y (MM)", "C1 | 4 M24 | 400 | 300"],
    bases: [C1.replace("400", "400 mm").replace("300", "300 mm")],
  },
  {
    name: "words on dimensions that the job says do not hold",
    unit: "mm",
    lines: ["ALL DIMENSIONS IN INCHES", "Mark | Bolts | X | Y", "C1 | 4 M24 | 400 | 300"],
    answers: { cells: { A1: "-" } },
    bases: [C1],
  },
  {
    name: "a decimal comma",
    unit: "mm",
    lines: ["Mark | Bolts | X | Y | Grout", "C1 | 4 M24 | 400,0 | 300,5 mm | 25,5"],
    bases: [C1.replace("y: 300", "y: 300.5").replace("} }", "}, grout: 25.5 }")],
  },
  {
    name: "sections with the mass behind the letters, bolts tightened by hand",
    unit: "mm",
    lines: ["Mark | Column | Bolts | Grade | X | Y", "C1 | 254 x 254 UC 89 | 4 M24 | 8.8/S | 400 | 300"],
    bases: [C1.replace("M24 }", 'M24, grade: "8.8" }, column: 254 x 254 UC 89')],
  },
  {
    name: "plates with words behind their thickness",
    unit: "mm",
    lines: ["Mark | Bolts | X | Y | Base plate", "C1 | 4 M24 | 400 | 300 | 500 x 400 x 30 thk"],
    bases: [C1.replace("y: 300 }", "y: 300 }, basePlate: { x: 500, y: 400, thickness: 30 }")],
  },
  {
    name: "a remark that is struck out",
    unit: "mm",
    lines: ["Mark | Bolts | X | Y | Remarks", "C1 | 4 M24 | 400 | 300 | OLD"],
    looks: { struck: ["E2"] },
    bases: [C1],
  },
  {
    name: "a plate that holds its rods as it lies",
    unit: "mm",
    lines: ["Mark | Bolts | Centres | Base plate (L x W x T)", "C1 | (4) M24 | 400 x 300 | 500 x 400 x 30"],
    bases: [C1.replace("y: 300 }", "y: 300 }, basePlate: { x: 500, y: 400, thickness: 30 }")],
  },
  {
    name: "a heading merged down beside a group",
    unit: "mm",
    lines: [
      "Mark | HD BOLTS |  |  | BASE PLATE | GROUT",
      " | SIZE | OVERALL X | OVERALL Y | THK | ",
      "C1 | 4 M24 | 400 | 300 | 30 | 25",
    ],
    looks: { merges: ["A1:A2", "B1:D1", "F1:F2"] },
    bases: [C1.replace("y: 300 }", "y: 300 }, basePlate: { thickness: 30 }, grout: 25")],
  },
  {
    name: "bolts with their length under a heading that may count them",
    unit: "mm",
    lines: ["Mark | HD bolt | No. of bolts | X | Y", "C1 | M24x600 | 4 | 400 | 300"],
    bases: [C1.replace("M24 }", "M24, length: 600 }")],
  },
  {
    name: "two tables of which the job names one",
    unit: "mm",
    lines: ["Mark | Bolts | X | Y", "C1 | 4 M24 | 400 | 300", "", "Mark | Bolts | Y | X", "C2 | 4 M24 | 300 | 400"],
    answers: { table: "A1" },
    bases: [C1],
    told: ["other-tables"],
  },
  {
    name: "bases across, with units and groups in rows of their own",
    unit: "mm",
    lines: ACROSS,
    answers: ANSWERED,
    bases: ACROSS_BASES,
  },
  {
    name: "bases across, with groups merged over the sheet",
    unit: "mm",
    lines: ACROSS,
    looks: { merges: ["A2:D2", "A8:D8"] },
    answers: ANSWERED,
    bases: ACROSS_BASES,
  },
];

/** Sheets that are asked about or at fault. */
export const METRIC_REFUSED: readonly RefusedSheet[] = [
  {
    name: "one spacing from rod to rod, where nothing says how many rods",
    unit: "mm",
    lines: ["Mark | Bolts | Bolt spacing", "C1 | M24 | 400 c/c"],
    codes: ["asked-both-ways"],
  },
  {
    name: "a plate that holds its rods the other way round alone",
    unit: "mm",
    lines: ["Mark | Bolts | Centres | Base plate (L x W x T)", "C1 | (4) M24 | 200 x 400 | 500 x 300 x 30"],
    codes: ["plate-turned"],
  },
  {
    name: "a comma that may be of thousands or of decimals",
    unit: "mm",
    lines: ["Mark | Rod dia | X | Y", "C1 | M24 | 1,200 | 300"],
    codes: ["cell-fault"],
  },
  {
    name: "marks that the job keeps as notes",
    unit: "mm",
    lines: ["Mark | Rod dia | X | Y", "C1 | M24 | 400 | 300"],
    answers: { columns: { Mark: "note" } },
    codes: ["no-marks"],
  },
  {
    name: "all dimensions in millimetres, of a job in inches",
    lines: ["BASES - ALL DIMENSIONS IN MM", "MARK | ROD DIA | X | Y", "B1 | M24 | 400 | 300"],
    codes: ["stated-unit-differs"],
  },
  ...["ALL DIMENSIONS AND LEVELS IN METRES", "DIMS. SHOWN ARE IN INCHES", "Units: in", "ALL DIMENSIONS INCHES"].map(
    (title): RefusedSheet => ({
      name: `a title of other units: ${title}`,
      unit: "mm",
      lines: [title, "Mark | Rod dia | X | Y", "B1 | M24 | 400 | 300"],
      codes: ["stated-unit-differs"],
    }),
  ),
  {
    name: "a note that dimensions are in inches, of a job in millimetres",
    unit: "mm",
    lines: ["Mark | Rod dia | X | Y", "B1 | M24 | 400 | 300", "", "NOTES:", "1. ALL DIMENSIONS ARE IN INCHES U.N.O."],
    codes: ["stated-unit-differs"],
  },
];

/** The same bases as YAML, CSV and XLSX give the same job, but for where each base stands. */
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import type { Job } from "../../../src/job/index.js";
import { openWorkbook } from "../../../src/readers/workbook.js";
import { jobOf } from "../job/files.js";

const HEAD = `job: { number: "1", date: 2026-01-01 }
units: in
rules: us
shop: laser
`;

const YAML = `${HEAD}bases:
  - mark: "007"
    quantity: 6
    member: post
    note: Ends of the row
    rods:
      diameter: 1-1/4
      thread: 8UN
      grade: 55
      finish: galvanized
      zincGrowth: 0.005
      nut: heavy hex
      torqued: false
      projection: 9
      embedment: 2'-0"
      length: 36
      threads: 8
      bottom: { kind: plate, shape: square, size: 3, thickness: 1/2 }
      stickOut: 1/4
      wrenchRoom: 3-1/2
    pattern: { kind: rectangle, x: 12, y: 10, nx: 3, ny: 2, perimeter: true }
    basePlate:
      x: 18
      y: 16
      at: [0, 1/2]
      corner: { kind: round, radius: 1 }
      thickness: 1-1/2
      hole: 2-1/16
      washer: { shape: square, size: 3, thickness: 1/2 }
      pattern: { hole: 2-1/16, at: [[-6, 5], [6, 5], [6, -5], [-6, -5]] }
    column: { kind: wide flange, depth: 12, width: 8, flange: 5/8, web: 3/8, depthAlong: y }
    concrete: { x: 24, y: 24, at: [0, 3], corner: { kind: chamfer, size: 3/4 }, depth: 48, exposure: against ground }
    grout: 1-1/2
    levelling: nuts
    template:
      mark: T1
      quantity: 2
      use: template left as setting plate
      support: form
      material: steel
      thickness: 1/4
      hole: 1-5/16
      outline: { kind: rectangle, x: 20, y: 18, at: [0, 1/2], corner: { kind: chamfer, x: 1, y: 2 } }
      opening: { x: 8, y: 6, radius: 1, at: [0, 1] }
      key: none
      height: 3
      nails: { diameter: 1/8, at: [[-9, 8], [9, 8]] }
      groutHoles: { diameter: 2, at: [[0, 0]] }
  - mark: B2
    groups:
      - rods: { diameter: 1, grade: 36, finish: plain }
        pattern: { kind: rectangle, x: 12, y: 12 }
        hole: 1-1/16
        baseHole: 1-13/16
        washer: F844
      - rods: { diameter: 3/4, grade: 36, finish: plain, bottom: { kind: hook, reach: 3 } }
        pattern: { kind: points, at: [[0, 6], [0, -6]] }
        baseHole: 1-5/16
    basePlate: { x: 16, y: 16 }
    template: { thickness: 1/4, outline: { kind: auto, corner: { kind: notch, size: 1 } }, opening: auto }
  - mark: B3
    rods: { diameter: M30, grade: 8.8, bottom: nut }
    pattern: { kind: circle, diameter: 24, count: 8, start: straddle }
    basePlate: { diameter: 30, hole: 36 mm }
    column: { kind: pipe, diameter: 8-5/8, at: [0, 1] }
    concrete: { diameter: 36 }
    template: { thickness: 3/8, hole: 33 mm, outline: { kind: ring, outer: 30, inner: 18 } }
  - mark: B4
    rods: { diameter: 1 }
    pattern: { kind: lines, x: [-9, 0, 9], y: [-6, 6] }
    template:
      thickness: 1/4
      outline: { kind: polygon, at: [[-12, -9], [12, -9], [12, 9], [-12, 9]] }
      opening: { diameter: 6 }
  - mark: B5
    rods: { diameter: 1 }
    pattern: { kind: circle, diameter: 24, count: 8, start: 22.5 }
    template: { thickness: 1/4, outline: { kind: circle, diameter: 30 } }
`;

const HEADINGS = [
  "MARK",
  "Quantity",
  "Member",
  "Remarks",
  "Rod Ø",
  "Thread",
  "Grade",
  "Finish",
  "Zinc growth (in)",
  "Nut",
  "Torqued?",
  "Projection",
  "Embedment",
  "Rod length",
  "Threads",
  "Bottom",
  "Stick out",
  "Wrench room",
  "Pattern",
  "X",
  "Y",
  "nx",
  "NY",
  "Perimeter",
  "Base plate X",
  "Base-plate Y",
  "Base plate at",
  "Base plate corner",
  "Base plate thickness",
  "BP hole",
  "Washer",
  "Second source",
  "Column",
  "Pier X",
  "Pier Y",
  "Pier at",
  "Pier corner",
  "Pier depth",
  "Exposure",
  "Grout",
  "Leveling",
  "Template mark",
  "Template qty.",
  "Use",
  "Support",
  "Material",
  "Template thk.",
  "Template hole",
  "Outline",
  "Corner",
  "Opening",
  "Key",
  "Template height",
  "Nails",
  "Grout holes",
  "Points",
  "Bolt circle",
  "Count",
  "Start",
  "Base plate dia.",
  "Pier dia",
  "Lines X",
  "Lines Y",
] as const;

type Row = Partial<Record<(typeof HEADINGS)[number], string | number | boolean>>;

const ROWS: readonly Row[] = [
  {
    MARK: "007",
    Quantity: 6,
    Member: "Post",
    Remarks: "Ends of the row",
    "Rod Ø": "1-1/4",
    Thread: "8UN",
    Grade: 55,
    Finish: "HDG",
    "Zinc growth (in)": 0.005,
    Nut: "Heavy Hex",
    "Torqued?": false,
    Projection: 9,
    Embedment: "2'-0\"",
    "Rod length": 36,
    Threads: 8,
    Bottom: "plate 3 x 1/2",
    "Stick out": "1/4",
    "Wrench room": "3 1/2",
    Pattern: "Rectangle",
    X: 12,
    Y: 10,
    nx: 3,
    NY: 2,
    Perimeter: "yes",
    "Base plate X": 18,
    "Base-plate Y": 16,
    "Base plate at": "0, 1/2",
    "Base plate corner": "round 1",
    "Base plate thickness": 1.5,
    "BP hole": "2-1/16",
    Washer: "square 3 x 1/2",
    "Second source": "2-1/16: -6,5; 6,5; 6,-5; -6,-5",
    Column: "wide flange 12 x 8 x 5/8 x 3/8 along y",
    "Pier X": 24,
    "Pier Y": 24,
    "Pier at": "0, 3",
    "Pier corner": "chamfer 3/4",
    "Pier depth": 48,
    Exposure: "Against ground",
    Grout: 1.5,
    Leveling: "nuts",
    "Template mark": "T1",
    "Template qty.": 2,
    Use: "Template left as setting plate",
    Support: "Form",
    Material: "Steel",
    "Template thk.": 0.25,
    "Template hole": "1-5/16",
    Outline: "20 x 18 at 0, 1/2",
    Corner: "chamfer 1 x 2",
    Opening: "8 x 6 r 1 at 0, 1",
    Key: "none",
    "Template height": 3,
    Nails: "1/8: -9,8; 9,8",
    "Grout holes": "2: 0,0",
  },
  {},
  {
    MARK: "B2",
    "Rod Ø": 1,
    Grade: 36,
    Finish: "plain",
    X: 12,
    Y: 12,
    "Template hole": "1-1/16",
    "BP hole": "1-13/16",
    Washer: "F844",
    "Base plate X": 16,
    "Base-plate Y": 16,
    "Template thk.": "1/4",
    Corner: "notch 1",
    Opening: "auto",
  },
  { "Rod Ø": "3/4", Grade: 36, Finish: "Plain", Bottom: "hook 3", Points: "0,6; 0,-6", "BP hole": "1-5/16" },
  {
    MARK: "B3",
    "Rod Ø": "M30",
    Grade: 8.8,
    Bottom: "Nut",
    "Bolt circle": 24,
    Count: 8,
    Start: "straddle",
    "BP hole": "36 mm",
    "Base plate dia.": 30,
    "Pier dia": 36,
    "Template thk.": "3/8",
    "Template hole": "33 mm",
    Outline: "30 / 18 ring",
    Column: "pipe 8-5/8 at 0, 1",
  },
  {
    MARK: "B4",
    "Rod Ø": 1,
    "Lines X": "-9; 0; 9",
    "Lines Y": "-6; 6",
    "Template thk.": "1/4",
    Opening: "6 dia",
    Outline: "polygon -12,-9; 12,-9; 12,9; -12,9",
    Projection: "-",
  },
  { MARK: "B5", "Rod Ø": 1, "Bolt circle": 24, Count: 8, Start: 22.5, "Template thk.": "1/4", Outline: "dia 30" },
];

function csvOf(separator: string): string {
  const quoted = (text: string) => (/[",;\t\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const rows = ROWS.map((row) => HEADINGS.map((heading) => quoted(String(row[heading] ?? ""))).join(separator));
  return [HEADINGS.map(quoted).join(separator), ...rows, ""].join("\n");
}

function placeless(job: Job): unknown {
  return { ...job, readAs: null, bases: job.bases.map(({ place: _place, ...base }) => base) };
}

const fromYaml = jobOf(YAML);
const scheduled = (file: string) => `${HEAD}schedule: ${file}\n`;

describe("twins", () => {
  it.each([",", ";", "\t"])("CSV with %j", (separator) => {
    const job = jobOf(scheduled("s.csv"), { "s.csv": csvOf(separator) });
    expect(placeless(job)).toEqual(placeless(fromYaml));
    expect(job.bases.map(({ place }) => [place.line, place.path])).toEqual([
      [2, "row 2"],
      [4, "row 4"],
      [6, "row 6"],
      [7, "row 7"],
      [8, "row 8"],
    ]);
  });

  it("CSV under a title, in another order of columns", () => {
    const title = `Anchor rod schedule${",".repeat(HEADINGS.length - 1)}\n\n`;
    const job = jobOf(scheduled("s.csv"), { "s.csv": title + csvOf(",") });
    expect(placeless(job)).toEqual(placeless(fromYaml));
  });

  it("XLSX, with numbers and yes-or-no cells", async () => {
    const cells = ROWS.map((row) =>
      HEADINGS.map((heading) => (row[heading] === undefined ? null : { value: row[heading] })),
    );
    const rows = [HEADINGS.map((value) => ({ value })), ...cells];
    const bytes = new Uint8Array(await writeWorkbook(rows as never, { sheet: "Rods" }).toBuffer());
    const table = await openWorkbook(bytes, "s.xlsx", "Rods");
    if (!table.ok) throw new Error(table.findings.map(formatFinding).join("\n"));
    const job = jobOf(scheduled("{ file: s.xlsx, sheet: Rods }"), { "s.xlsx": table.value });
    expect(placeless(job)).toEqual(placeless(fromYaml));
  });
});

/** Faults of a schedule name the cell: `file:line:column row N Heading: what is wrong, what is allowed`. */
import { describe, expect, it } from "vitest";
import type { Table } from "../../../src/readers/inputs.js";
import { faultsOf, jobOf } from "../job/files.js";

const JOB = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
const HEADINGS = "Mark;Rod dia;X;Y;Template thk";
const faults = (...lines: string[]) => faultsOf(JOB, { "s.csv": `${lines.join("\n")}\n` });

describe("a spacing of three rods and more: overall, or from rod to rod?", () => {
  const row = (heading: string, nx: string, text = "6") =>
    faults(`Mark;Rod dia;${heading};Y;nx;Template thk`, `B1;1/2;${text};8;${nx};1/4`);

  it.each(["Spacing X", "Gauge X", "Gage X", "Rod X"])("%s is asked, once for its column", (heading) => {
    const [asked, ...others] = row(heading, "3");
    expect(others).toEqual([]);
    expect(asked).toContain(
      `s.csv:1:3 ${heading}: "${heading}" may be the rod pattern overall in x or from rod to rod in x`,
    );
    expect(asked).toContain(`columns: { "${heading}": X }, or columns: { "${heading}": Pitch X }`);
  });

  it.each([
    ["Spacing X", "2", "6"],
    ["Gage X", "", "6"],
    ["X", "3", "6"],
    ["Overall X", "3", "6"],
    ["Pattern X", "4", "6"],
    ["Pitch X", "3", "3"],
    ["Pitch X (mm)", "3", "76.2"],
  ])("%s with %s rods is read: there is one reading", (heading, nx, text) => {
    expect(row(heading, nx, text)).toEqual([]);
    const csv = `Mark;Rod dia;${heading};Y;nx;Template thk\nB1;1/2;${text};8;${nx};1/4\n`;
    expect(jobOf(JOB, { "s.csv": csv }).bases[0]?.groups[0]?.pattern).toMatchObject({ x: 152_400_000, y: 203_200_000 });
  });

  it("asks along y and of a second group alike", () => {
    const lines = ["Mark;Rod dia;X;Spacing Y;ny;Template thk", "B1;3/4;12;12;;1/4", ";1/2;6;6;3;"];
    const told = faults(...lines);
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('s.csv:1:4 Spacing Y: "Spacing Y" may be the rod pattern overall in y');
  });

  it("one key filled twice in a row is a fault, under whatever headings", () => {
    expect(faults("Mark;Rod dia;X;Spacing X;Y;Template thk", "B1;1;12;6;8;1/4")[0]).toContain(
      'X is given twice and differs: "12" in C2 under X, "6" in D2 under Spacing X',
    );
    expect(faults("Mark;Rod dia;X;Lines X;Y;Template thk", "B1;1;12;-6; 6;8;1/4").join()).toContain("C2");
    expect(faults("Mark;Rod dia;X;Spacing X;Y;Template thk", "B1;1;12;;8;1/4", "B2;1;;12;8;1/4")).toEqual([]);
    expect(faults("Mark;Rod dia;X;Spacing X;Y;Template thk", "B1;1;12;12.0;8;1/4")).toEqual([]);
  });
});

describe("an improper fraction", () => {
  it.each([
    ["Rod dia", "11/4;12;10;1/4", '"11/4" has the improper fraction 11/4: 1-1/4 or 2-3/4? write the one that is meant'],
    ["Template thk", "1;12;10;11/4", "1-1/4 or 2-3/4?"],
    ["X", '1;105/8";10;1/4', "10-5/8 or 13-1/8?"],
    ["Y", "1;12;9/8;1/4", "write 1-1/8"],
  ])("%s %s", (heading, cells, words) => {
    const [fault, ...others] = faults(HEADINGS, `B1;${cells}`);
    expect(others).toEqual([]);
    expect(fault).toContain(`row 2 ${heading}: `);
    expect(fault).toContain(words);
  });

  it("is one in a sheet of a workbook alike", () => {
    const rows = [
      ["Mark", "Rod dia", "X", "Y", "Template thk"],
      ["B1", "11/4", "12", "10", "13/4"],
    ].map((cells, row) => cells.map((text, column) => ({ text, line: row + 1, column: column + 1 })));
    const table: Table = { kind: "table", sheet: "Bases", rows };
    const job = 'job: { number: "1" }\nunits: in\nschedule: { file: job.xlsx, sheet: Bases }\n';
    const told = faultsOf(job, { "job.xlsx": table });
    expect(told.map((fault) => fault.replace(/^.*(row 2 [A-Z][a-z ]+):.*fraction (.*): .*$/, "$1: $2"))).toEqual([
      "row 2 Rod dia: 11/4",
      "row 2 Template thk: 13/4",
    ]);
  });

  it("stands inside a form too", () => {
    expect(faults(`${HEADINGS};Washer`, "B1;1;12;10;1/4;square 11/4 x 1/2")[0]).toContain("1-1/4 or 2-3/4?");
  });
});

describe("cells", () => {
  it.each<[string, string[], string[]]>([
    [
      "a size that is none",
      [HEADINGS, "B1;1-1/5;12;10;1/4"],
      [
        's.csv:2:2 row 2 Rod dia: "1-1/5" is no rod size with a thread; allowed are 1/4 to 4 in UNC or 8UN, M10 to M100 coarse (nearest: 1-1/8, 1-1/4)',
      ],
    ],
    [
      "a negative",
      [HEADINGS, "B1;1;-12;10;1/4"],
      [expect.stringMatching(/^s\.csv:2:3 row 2 X: "-12" cannot be read; allowed is a length/) as unknown as string],
    ],
    [
      "a cell left empty",
      [HEADINGS, "B1;1;12;10;"],
      ["s.csv:2:1 row 2 Template thk: is required; allowed is a length above zero, as 1-1/4 or with its unit"],
    ],
    [
      "no rod size",
      [HEADINGS, "B1;;12;10;1/4"],
      ["s.csv:2:1 row 2 Rod dia: is required; allowed is a line of text, at most 40 characters"],
    ],
    ["no pattern", [HEADINGS, "B1;1;;;1/4"], ["s.csv:2:1 row 2 Pattern: is required; allowed is a pattern, or groups"]],
    [
      "a mark twice, one row after the other",
      [HEADINGS, "B1;1;12;10;1/4", "b1;1;12;10;1/4"],
      ['s.csv:3:1 row 3 Mark: the mark "b1" is used twice; first at s.csv:2:1; every base and template has its own'],
    ],
    [
      "a first row without a mark",
      [HEADINGS, ";1;12;10;1/4"],
      ["s.csv:2:2 row 2 Mark: is required; allowed is a line of text, at most 200 characters"],
    ],
    [
      "a value of the whole base on a row without a mark",
      [HEADINGS, "B1;1;12;10;1/4", ";3/4;6;6;1/2"],
      [
        's.csv:3:5 row 3 Template thk: "Template thk" is for the whole base; allowed on a row without a Mark are the rods, their pattern and holes',
      ],
    ],
    [
      "a form that cannot be read",
      [`${HEADINGS};Outline;Corner;Opening`, "B1;1;12;10;1/4;20 by 18;bevel 1;6 round"],
      [
        's.csv:2:6 row 2 Outline: "20 by 18" cannot be read; allowed is 20 x 18, dia 30, ring 30 / 20, polygon 0,0; 9,0; 9,9, or auto; with at 1, 2',
        's.csv:2:7 row 2 Corner: "bevel 1" cannot be read; allowed is square, chamfer 1, chamfer 1 x 2, round 1, notch 1, notch 1 x 2',
        's.csv:2:8 row 2 Opening: "6 round" cannot be read; allowed is dia 6, 8 x 6, 8 x 6 r 1, auto, or none; with at 1, 2',
      ],
    ],
    [
      "a length inside a form",
      [`${HEADINGS};Outline`, "B1;1;12;10;1/4;20 x 0"],
      ['s.csv:2:6 row 2 Outline: "0" is not above zero'],
    ],
    [
      "an inverted ring",
      [`${HEADINGS};Outline`, "B1;1;12;10;1/4;ring 10 / 12"],
      ["s.csv:2:6 row 2 Outline: 12 in is not inside the ring; allowed is less than the outer diameter, 10 in"],
    ],
    [
      "a key that the pattern does not have",
      [`${HEADINGS};Pattern`, "B1;1;12;10;1/4;points"],
      [
        "s.csv:2:1 row 2 Points: is required; allowed is a list of points, [[x, y], ...]",
        "s.csv:2:3 row 2 X: unknown key; allowed are kind, at",
        "s.csv:2:4 row 2 Y: unknown key; allowed are kind, at",
      ],
    ],
  ])("%s", (_name, lines, expected) => {
    expect(faults(...lines)).toEqual(expected);
  });

  it("that a spreadsheet changed", () => {
    const cell = (text: string, line: number, column: number) => ({ text, line, column });
    const heading = ["Mark", "Rod dia", "X", "Y", "Template thk"].map((text, index) => cell(text, 1, index + 1));
    const row = ["B1", "2026-03-04", "12", "10", "1/4"].map((text, index) => cell(text, 2, index + 1));
    const faulty = row.map((one) => (one.column === 2 ? { ...one, fault: "it is a date" } : one));
    const table = { kind: "table", sheet: "", rows: [heading, faulty] } as const;
    expect(faultsOf(JOB, { "s.csv": table })).toEqual(["s.csv:2:2 row 2 Rod dia: it is a date"]);
  });
});

describe("headings", () => {
  it.each<[string, string[], string[]]>([
    [
      "one that is not known is kept as a note, and told once",
      [`${HEADINGS};Projektion`, "B1;1;12;10;1/4;9"],
      [
        expect.stringMatching(
          /^s\.csv:1:6 Projektion: 1 heading is not known and kept as a note: Projektion/,
        ) as unknown as string,
      ],
    ],
    [
      "one that stands twice and differs",
      [`${HEADINGS};template THK`, "B1;1;12;10;1/4;1/2"],
      [expect.stringMatching(/^s\.csv:1:6 template THK: Template thk is given twice and differs/) as unknown as string],
    ],
    [
      "none at all",
      ["B1;1;12;10;1/4"],
      [expect.stringMatching(/^s\.csv: no table was found; a table has a heading Mark/) as unknown as string],
    ],
    [
      "nothing under them",
      [HEADINGS],
      ["job.yaml:3:11 schedule: s.csv has no row under its headings; allowed is one base or more"],
    ],
  ])("%s", (_name, lines, expected) => {
    expect(faults(...lines)).toEqual(expected);
  });

  it("a unit in brackets holds for the bare numbers of lists and sizes too", () => {
    const csv = `${HEADINGS};Outline (mm)\nB1;1;12;10;1/4;500 x 400\nB2;1;12;10;1/4;20 in x 400\n`;
    expect(jobOf(JOB, { "s.csv": csv.split("\n").slice(0, 2).join("\n") }).bases[0]?.template.outline).toMatchObject({
      x: 500_000_000,
      y: 400_000_000,
    });
  });

  it("a unit in brackets holds for the bare numbers below", () => {
    const csv = "Mark;Rod dia (in);X (mm);Y [in];Template thk (mm)\nB1;1-1/4;300;10;6\nB2;M30;12 in;10;1/4 in\n";
    const job = jobOf(JOB.replace("units: in", "units: mm").replace("units", "rules: metric\nunits"), {
      "s.csv": csv.replace("B1;1-1/4", "B1;M24"),
    });
    expect(job.bases.map(({ groups, template }) => [groups[0]?.pattern, template.thickness])).toEqual([
      [expect.objectContaining({ x: 300_000_000, y: 254_000_000 }), 6_000_000],
      [expect.objectContaining({ x: 304_800_000, y: 254_000_000 }), 6_350_000],
    ]);
    expect(jobOf(JOB, { "s.csv": csv.split("\n").slice(0, 2).join("\n") }).bases[0]?.groups[0]).toMatchObject({
      rod: { size: "1-1/4" },
      pattern: { x: 300_000_000, y: 254_000_000 },
    });
  });
});

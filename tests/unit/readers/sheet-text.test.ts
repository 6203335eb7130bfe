/** Text that stands for a spreadsheet: what parts its cells, quotation marks that are inches or dittos, bytes of other encodings. */
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { readSheetText } from "../../../src/readers/sheet-text.js";

function texts(input: string | Uint8Array): unknown {
  const reading = readSheetText(input, "s.txt");
  return reading.ok
    ? reading.value.rows.map((row) => row.map(({ text }) => text))
    : reading.findings.map(formatFinding);
}

const lines = (...all: readonly string[]): string => all.join("\n");

describe("the separator is that of the whole text", () => {
  it("under titles without one, or with one, and over notes", () => {
    const table = ["Mark,Rod dia,X", "B1,1,12", "B2,1,12"];
    const rows = [
      ["Mark", "Rod dia", "X"],
      ["B1", "1", "12"],
      ["B2", "1", "12"],
    ];
    const title = "COLUMN BASE SCHEDULE; SHEET S-201; REV B; LEVEL 1";
    expect(texts(lines("SCHEDULE", "", ...table))).toEqual([["SCHEDULE"], [""], ...rows]);
    expect(texts(lines(title, ...table))).toEqual([[title], ...rows]);
    const notes = ["1. ALL RODS F1554; GALVANIZED; SEE S-001", "2. GROUT 1-1/2; NON-SHRINK; SEE S-002"];
    expect(texts(lines(title, ...table, ...notes))).toEqual([[title], ...rows, ...notes.map((note) => [note])]);
  });

  it("of tabs, whatever commas stand around and in the cells", () => {
    const notes = ["1. ALL RODS F1554, GR 55, HDG.", "2. GROUT, TYP., 1-1/2.", "3. A, B, C.", "4. A, B, C."];
    expect(texts(lines("SCHEDULE, REV A, LEVEL 1", "Mark\tPoints\tX", "B1, B3 & B5\t-6,5; 6,5\t12", ...notes))).toEqual(
      [
        ["SCHEDULE, REV A, LEVEL 1"],
        ["Mark", "Points", "X"],
        ["B1, B3 & B5", "-6,5; 6,5", "12"],
        ...notes.map((note) => [note]),
      ],
    );
  });

  it("of semicolons with decimal commas, of commas with lists in semicolons", () => {
    expect(texts(lines("Mark;Rod dia;X;Y", "B1;1,25;12,5;10,5", "B2;1,25;12,5;10,5"))).toEqual([
      ["Mark", "Rod dia", "X", "Y"],
      ["B1", "1,25", "12,5", "10,5"],
      ["B2", "1,25", "12,5", "10,5"],
    ]);
    const listed = lines("Mark,Lines X,Y", "B1,-9; -3; 3; 9,12", "B2,-9; -3; 3; 9,12", "B3,-9; -3; 3; 9,12");
    expect(texts(listed)).toEqual([
      ["Mark", "Lines X", "Y"],
      ...["B1", "B2", "B3"].map((mark) => [mark, "-9; -3; 3; 9", "12"]),
    ]);
  });

  it("of commas, where every row has a bar inside a cell", () =>
    expect(texts(lines("Mark,Rod dia,Zone", "B1,1,N|1", "B2,1,N|2"))).toEqual([
      ["Mark", "Rod dia", "Zone"],
      ["B1", "1", "N|1"],
      ["B2", "1", "N|2"],
    ]));

  it("of two blanks inside the cells of a CSV is the comma", () => {
    expect(texts(lines("Mark,   Plate,    X", "B1,   12  x  12,    8", "B2,     14  x  14,    8"))).toEqual([
      ["Mark", "Plate", "X"],
      ["B1", "12  x  12", "8"],
      ["B2", "14  x  14", "8"],
    ]);
  });
});

describe("bars", () => {
  it("with outer ones and rules, or without; rows keep their numbers", () => {
    const rows = [["Mark", "Rod, dia", "X"], [], ["B1", '1 1/4"', ""], ["B2", "", "12"]];
    expect(texts(lines("| Mark | Rod, dia | X |", "|:---|---:|:-:|", '| B1 | 1 1/4" | |', "| B2 |  | 12 |"))).toEqual(
      rows,
    );
    expect(texts(lines("Mark | Rod, dia | X", "-----+----------+---", 'B1 | 1 1/4" |', "B2 |  | 12"))).toMatchObject([
      ["Mark", "Rod, dia", "X"],
      [],
      ["B1", '1 1/4"'],
      ["B2", "", "12"],
    ]);
    expect(texts(lines("SCHEDULE", "", "| Mark | X |", "| B1 | 12 |", "NOTES:", "1. HDG"))).toEqual([
      ["SCHEDULE"],
      [""],
      ["Mark", "X"],
      ["B1", "12"],
      ["NOTES:"],
      ["1. HDG"],
    ]);
  });

  it("keep a quotation mark that stands for what is above", () => {
    expect(texts(lines("| Mark | Rod | X |", '| B1 | 1" | 12 |', '| B2 | " | " |'))).toEqual([
      ["Mark", "Rod", "X"],
      ["B1", '1"', "12"],
      ["B2", '"', '"'],
    ]);
  });
});

describe("columns parted by blanks", () => {
  const table = ["Mark   Rod dia   X     Note", "B1     1 1/4     12    see S-201, typ.", "B2     1         10    ok"];

  it("where every line splits so; a title and a note stay one text", () => {
    expect(texts(lines("COLUMN BASE SCHEDULE   REV B", "", ...table, "ALL RODS  HDG"))).toEqual([
      ["COLUMN BASE SCHEDULE   REV B"],
      [],
      ["Mark", "Rod dia", "X", "Note"],
      ["B1", "1 1/4", "12", "see S-201, typ."],
      ["B2", "1", "10", "ok"],
      ["ALL RODS  HDG"],
    ]);
  });

  it("a blank cell is told by where the others stand, and refused where nothing tells it", () => {
    expect(texts(lines(...table, "B3               8     ok", "B4     1         8     ok"))).toEqual([
      ["Mark", "Rod dia", "X", "Note"],
      ["B1", "1 1/4", "12", "see S-201, typ."],
      ["B2", "1", "10", "ok"],
      ["B3", "", "8", "ok"],
      ["B4", "1", "8", "ok"],
    ]);
    const refused = texts(lines("Mark  Rod  X", "B1  1  12", "B2  12", "B3  1  12"));
    expect(refused).toEqual([
      "s.txt:3:1: this line has 2 cells where most have 3, and nothing shows which are blank; allowed are columns that stand below each other, or cells parted by tabs, bars (|) or commas",
    ]);
    expect(texts(lines("Mark   Rod     X", "B1     1 1/4   12", "B2 1 1/4   12", "B3     1       12"))).toEqual([
      expect.stringContaining("s.txt:3:1: this line has 2 cells"),
    ]);
  });

  it("the last rows may lack their last cells, and notes below stay one text", () => {
    const table = [
      "Mark   Rods     X     Remarks",
      "C1     4 M24    300   see detail 3",
      "C2     4 M20    250",
      "C3     DO",
    ];
    const notes = ["1. SEE SHEET 2", "NOTE:  BY OTHERS"];
    expect(texts(lines(...table, ...notes))).toEqual([
      ["Mark", "Rods", "X", "Remarks"],
      ["C1", "4 M24", "300", "see detail 3"],
      ["C2", "4 M20", "250", ""],
      ["C3", "DO", "", ""],
      ["1. SEE SHEET 2"],
      ["NOTE:  BY OTHERS"],
    ]);
  });

  it("rules of dashes are blank rows", () => {
    expect(texts(lines("Mark    X", "----  ---", "B1     12", "B2     10"))).toEqual([
      ["Mark", "X"],
      [],
      ["B1", "12"],
      ["B2", "10"],
    ]);
  });
});

describe("quotation marks", () => {
  const heading = "Mark,Rod dia,X";
  const three = (...rows: readonly string[]) => texts(lines(heading, "B0,1,9", "B9,1,9", ...rows));
  const rest = [
    ["Mark", "Rod dia", "X"],
    ["B0", "1", "9"],
    ["B9", "1", "9"],
  ];
  const fault = (why: string, place = "4:2") =>
    `s.txt:${place}: ${why}; a cell that holds " is written "like ""this""", and what is above is written DO`;
  const OPEN = "a quotation mark opens this cell and is not closed";
  const INSIDE = "a quotation mark opens this cell and closes inside it";
  const TWO =
    "the quotation mark that opens this cell may be one of a pair around several cells, or stand for what is above";

  it("of inches stay in a cell that does not start with one", () => {
    expect(three('B1,1 1/4",12"', 'B2,3/4" DIA,1\'-0 1/2"')).toEqual([
      ...rest,
      ["B1", '1 1/4"', '12"'],
      ["B2", '3/4" DIA', "1'-0 1/2\""],
    ]);
  });

  it("around a cell are taken off, and two of them are one", () => {
    expect(three('B1,"1 1/4""", "-6,5; 6,5" ', '"B2","",12')).toEqual([
      ...rest,
      ["B1", '1 1/4"', "-6,5; 6,5"],
      ["B2", "", "12"],
    ]);
  });

  it("alone stand for what is above, and swallow nothing", () => {
    expect(three('B1,",12', 'B2,1 1/2",10')).toEqual([...rest, ["B1", '"', "12"], ["B2", '1 1/2"', "10"]]);
    expect(three('B1,","', 'B2,","')).toEqual([...rest, ["B1", '"', '"'], ["B2", '"', '"']]);
    expect(three('B1,"""",12')).toEqual([...rest, ["B1", '"', "12"]]);
    expect(three('B1,",12,')).toEqual([fault(OPEN)]);
    const tabs = lines("Mark\tRod dia\tX\tY", 'B1\t1 1/4"\t12"\t10', 'B2\t"\t"\t10', 'B3\t"\t9\t"', 'B4\t"');
    expect(texts(tabs)).toEqual([
      ["Mark", "Rod dia", "X", "Y"],
      ["B1", '1 1/4"', '12"', "10"],
      ["B2", '"', '"', "10"],
      ["B3", '"', "9", '"'],
      ["B4", '"'],
    ]);
  });

  it("that open a cell and are closed by the inches of a later row are refused, not taken for one long cell", () => {
    expect(three('B1,"SEE NOTE 2,12', 'B2,1 1/2",10')).toEqual([fault(TWO)]);
    expect(three('B1,"SEE NOTE,1 1/2"')).toEqual([fault(TWO)]);
    expect(three('B1,"SEE NOTE 2,12')).toEqual([fault(OPEN)]);
  });

  it("that close inside their cell are typed ones where the line is whole, else refused", () => {
    expect(three('B1,"A" or "B",12')).toEqual([...rest, ["B1", '"A" or "B"', "12"]]);
    expect(three('B1,"1 1/4" DIA, F1554",12')).toEqual([fault(INSIDE)]);
  });

  it("around breaks and separators are those of a spreadsheet", () => {
    expect(three('B1,1,"Brace frame, see\nS-201, S-202"', "B2,1,9")).toEqual([
      ...rest,
      ["B1", "1", "Brace frame, see\nS-201, S-202"],
      ["B2", "1", "9"],
    ]);
    expect(three('B1,1,"two\r\nlines"')).toEqual([...rest, ["B1", "1", "two\r\nlines"]]);
  });

  it("are read as papaparse reads them, in whatever papaparse writes", () => {
    const cell = fc.constantFrom(
      "",
      "B1",
      '1 1/4"',
      "-6,5; 6,5",
      "a;b",
      "two\nlines",
      '"quoted"',
      "x",
      "\u00d8 1",
      "9",
    );
    const table = fc.array(fc.array(cell, { minLength: 4, maxLength: 4 }), { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(table, fc.constantFrom(",", ";", "\t"), (rows, delimiter) => {
        const written = [["Mark", "Rod", "X", "Y"], ["B0", "1", "9", "9"], ["B9", "1", "9", "9"], ...rows];
        const text = Papa.unparse(written, { delimiter });
        expect(texts(text)).toEqual(written);
      }),
    );
  });

  it.each(['"a,b",', ',"""', '",', '"\n', '"x,"', 'B,"SEE\n', '\t"a\tb"', '""'])(
    "of many %j are a table or a fault, without looking at the text again and again",
    (piece) => {
      const read = readSheetText(`Mark,X,Y\nB1,1,2\n${piece.repeat(100_000)}`, "s.txt");
      const told = read.findings.map(({ code }) => code);
      expect(read.ok || ["csv-quotes", "long-cell", "too-many-cells"].includes(told[0] ?? "")).toBe(true);
    },
  );
});

describe("places", () => {
  it("are line and cell; the row of the sheet where it is another", () => {
    const read = readSheetText('sep=;\nMark;Note\nB1;"two\nlines"\nB2;x', "s.txt");
    expect(read.ok && read.value.rows.map((row) => row[1])).toEqual([
      { text: "Note", line: 2, column: 2, row: 1 },
      { text: "two\nlines", line: 3, column: 2, row: 2 },
      { text: "x", line: 5, column: 2, row: 3 },
    ]);
  });
});

describe("bytes", () => {
  const table = 'Mark\tRod\nB1\t\u00d8 1\u00bc"\n';
  const wanted = [["Mark", "Rod"], ["B1", '\u00d8 1\u00bc"'], [""]];
  const utf16 = (text: string, littleEnd: boolean) =>
    Uint8Array.from(
      [...`\uFEFF${text}`].flatMap((sign) => {
        const [low, high] = [sign.charCodeAt(0) & 255, sign.charCodeAt(0) >> 8];
        return littleEnd ? [low, high] : [high, low];
      }),
    );

  it("of UTF-16 with its mark, as spreadsheets save Unicode text", () => {
    expect(texts(utf16(table, true))).toEqual(wanted);
    expect(texts(utf16(table, false))).toEqual(wanted);
    expect(texts(utf16("\ud800x", true))).toEqual([
      "s.txt:1:1: the file is damaged UTF-16 text; UTF-8 is allowed (save it as UTF-8)",
    ]);
  });

  it("of Windows-1252, told by the first such sign (CP1252.TXT of the Unicode mapping tables)", () => {
    const bytes = Uint8Array.from([..."Mark,Rod\nB1,1 1/4\u0094\nB2,\u00d8 1\n"].map((sign) => sign.charCodeAt(0)));
    const read = readSheetText(bytes, "s.txt");
    expect(read.ok && read.value.rows.map((row) => row[1]?.text)).toEqual([
      "Rod",
      "1 1/4\u201d",
      "\u00d8 1",
      undefined,
    ]);
    expect(read.findings.map(formatFinding)).toEqual([
      's.txt:2:1: the file is no UTF-8 and is read as Windows-1252; its first sign beyond ASCII is "\u201d", on line 2 (save it as UTF-8 if that sign is another)',
    ]);
  });

  it("of no sign there, or of damaged UTF-8, are refused", () => {
    const refused = (...bytes: readonly number[]) => texts(Uint8Array.from([97, 44, ...bytes, 10]));
    for (const bytes of [[0x81], [0x90], [0x00, 0xe9], [0x07, 0xe9], [0xc3, 0x98, 0xe9]])
      expect(refused(...bytes)).toEqual([expect.stringContaining("a byte that is not UTF-8 text; UTF-8 is allowed")]);
  });
});

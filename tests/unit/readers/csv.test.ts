/** CSV reader: separators, quotes, lines. */
import { describe, expect, it } from "vitest";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { readCsv } from "../../../src/readers/csv.js";

function texts(input: string | Uint8Array): unknown {
  const reading = readCsv(input, "s.csv");
  return reading.ok
    ? reading.value.rows.map((row) => row.map(({ text }) => text))
    : reading.findings.map(formatFinding);
}

describe("separators", () => {
  it.each([
    ["comma", 'Mark,Points\nB1,"-6,5; 6,5"\n'],
    ["semicolon", 'Mark;Points\nB1;"-6,5; 6,5"\n'],
    ["tab", "Mark\tPoints\nB1\t-6,5; 6,5\n"],
    ["the line that spreadsheets write", 'sep=;\nMark;Points\nB1;"-6,5; 6,5"\n'],
    ["byte order mark and CRLF", '\uFEFFMark,Points\r\nB1,"-6,5; 6,5"\r\n'],
  ])("%s", (_name, text) => {
    expect(texts(text)).toEqual([["Mark", "Points"], ["B1", "-6,5; 6,5"], [""]]);
  });
});

describe("places", () => {
  it("counts the breaks inside quoted cells", () => {
    const reading = readCsv('Mark,Note\nB1,"two\nlines"\nB2,"a\r\nb\r\nc"\nB3,x\n', "s.csv");
    const firsts = reading.ok ? reading.value.rows.map((row) => [row[0]?.text, row[0]?.line]) : [];
    expect(firsts).toEqual([
      ["Mark", 1],
      ["B1", 2],
      ["B2", 4],
      ["B3", 7],
      ["", 8],
    ]);
  });

  it("counts the separator line and empty rows", () => {
    const reading = readCsv("sep=,\nMark,Qty\n\nB1,2\n", "s.csv");
    expect(reading.ok && reading.value.rows[2]?.[1]).toEqual({ text: "2", line: 4, column: 2, row: 3 });
  });

  it("trims cells and keeps quotation marks that are written twice", () => {
    expect(texts('a,b\n" 1-1/4"" ", x \n')).toEqual([["a", "b"], ['1-1/4"', "x"], [""]]);
  });
});

describe("faults", () => {
  it("tells an open quotation mark with its line", () => {
    expect(texts('a,b\n1,2\n3,"4\n')).toEqual([
      's.csv:3:2: a quotation mark opens this cell and is not closed; a cell that holds " is written "like ""this""", and what is above is written DO',
    ]);
  });

  it("tells bytes that are not UTF-8", () => {
    expect(texts(new Uint8Array([97, 44, 0xe9, 10]))).toEqual([
      "s.csv:1:3: a byte that is not UTF-8 text; UTF-8 is allowed (save the file as UTF-8)",
    ]);
  });
});

describe("bounds", () => {
  const tooMany =
    "s.csv:1:1: the file has more than 2000000 cells; at most 2000000 are read: delete blank rows and columns beside the table";

  it("count cells before they are made", () => {
    expect(texts(`Mark,Qty\n${"\n".repeat(2_000_000)}`)).toEqual([tooMany]);
    expect(texts(`Mark,Qty\n${",".repeat(2_000_000)}`)).toEqual([tooMany]);
    expect(texts(`Mark;Qty\r\n${"a,b".repeat(10)}\r\n`)).toHaveLength(3);
  });

  it("hold a cell to what a spreadsheet's holds: 32,767 letters (ECMA-376 part 1, 18.3.1.96 and the programs' limits)", () => {
    expect(texts(`Mark,Note\nB1,${"x".repeat(32_767)}`)).toHaveLength(2);
    expect(texts(`Mark,Note\nB1,${"x".repeat(32_768)}`)).toEqual([
      "s.csv:2:2: a cell has 32768 characters; at most 32767 are read: is a quotation mark not closed?",
    ]);
  });
});

/** Rows of headings on drawn sheets: groups, broken and merged headings, units, numbers; and that no row of data is one. */
import { describe, expect, it } from "vitest";
import { findOn, type SheetLooks } from "./drawn-sheet.js";

const DATA = "B1 | 3/4 | 36 | 12 | 14 | 16 | 1";
const GROUPED =
  "MARK | ANCHOR RODS / SIZE | ANCHOR RODS / GRADE | ANCHOR RODS / EMBED | BASE PLATE / X | BASE PLATE / Y | BASE PLATE / THK";

function one(lines: readonly string[], looks: SheetLooks = {}) {
  const found = findOn(lines, looks);
  expect(found.map(({ at }) => at)).toHaveLength(1);
  return found[0] ?? { at: "", headings: "", rows: [], out: [], notes: {} };
}

describe("groups over headings", () => {
  it.each<[string, string[], SheetLooks]>([
    [
      "merged",
      [" MARK | ANCHOR RODS | | | BASE PLATE | | ", " | SIZE | GRADE | EMBED | X | Y | THK"],
      { merges: ["A1:A2", "B1:D1", "E1:G1"] },
    ],
    [
      "merged, the mark below",
      [" | ANCHOR RODS | | | BASE PLATE | | ", "MARK | SIZE | GRADE | EMBED | X | Y | THK"],
      { merges: ["B1:D1", "E1:G1"] },
    ],
    [
      "over the first column only, mark above",
      ["MARK | ANCHOR RODS | | | BASE PLATE | | ", " | SIZE | GRADE | EMBED | X | Y | THK"],
      {},
    ],
    [
      "over the first column only, mark below",
      [" | ANCHOR RODS | | | BASE PLATE | | ", "MARK | SIZE | GRADE | EMBED | X | Y | THK"],
      {},
    ],
    [
      "centred over their columns",
      [" | | ANCHOR RODS | | | BASE PLATE | ", "MARK | SIZE | GRADE | EMBED | X | Y | THK"],
      {},
    ],
    ["centred, mark above", ["MARK | | ANCHOR RODS | | | BASE PLATE | ", " | SIZE | GRADE | EMBED | X | Y | THK"], {}],
    [
      "one merged, one not",
      ["MARK | ANCHOR RODS | | | BASE PLATE | | ", " | SIZE | GRADE | EMBED | X | Y | THK"],
      { merges: ["B1:D1"] },
    ],
    [
      "written over every column",
      [
        "MARK | ANCHOR RODS | ANCHOR RODS | ANCHOR RODS | BASE PLATE | BASE PLATE | BASE PLATE",
        " | SIZE | GRADE | EMBED | X | Y | THK",
      ],
      {},
    ],
    [
      "with line breaks in cells",
      ["MARK | ANCHOR\\nRODS | | | BASE\\nPLATE | | ", " | SIZE | GRADE | EMBED | X | Y | THK"],
      { merges: ["B1:D1", "E1:G1"] },
    ],
    [
      "titles over all",
      [
        "COLUMN SCHEDULE | | | | | | ",
        " | ANCHOR RODS | | | BASE PLATE | | ",
        "MARK | SIZE | GRADE | EMBED | X | Y | THK",
      ],
      { merges: ["A1:G1", "B2:D2", "E2:G2"] },
    ],
  ])("%s", (_, heads, looks) => {
    const { headings, rows } = one([...heads, DATA, "B2 | 1 | 55 | 12 | 14 | 16 | 1"], looks);
    expect(headings.replaceAll("ANCHOR RODS EMBED", "ANCHOR RODS / EMBED")).toBe(GROUPED);
    expect(rows).toEqual([DATA, "B2 | 1 | 55 | 12 | 14 | 16 | 1"]);
  });

  it("a group ends where a heading is better known without it", () => {
    const { headings } = one([
      " | ANCHOR RODS | | | BASE PLATE | | ",
      "MARK | SIZE | GRADE | GROUT | X | Y | REMARKS",
      "B1 | 3/4 | 36 | 1-1/2 | 14 | 16 | x",
    ]);
    expect(headings).toBe(
      "MARK | ANCHOR RODS / SIZE | ANCHOR RODS / GRADE | GROUT | BASE PLATE / X | BASE PLATE / Y | REMARKS",
    );
  });

  it("three rows: a group in a group", () => {
    const { headings, rows } = one(
      [
        "MARK | ANCHOR RODS | | | | GROUT",
        " | ROD | | SETTING | | ",
        " | SIZE | GRADE | EMBED | PROJ | ",
        "B1 | 3/4 | 36 | 12 | 4 | 1",
      ],
      { merges: ["A1:A3", "B1:E1", "B2:C2", "D2:E2", "F1:F3"] },
    );
    expect(headings).toBe(
      "MARK | ANCHOR RODS ROD / SIZE | ANCHOR RODS ROD / GRADE | ANCHOR RODS SETTING / EMBED | ANCHOR RODS SETTING / PROJ | GROUT",
    );
    expect(rows).toEqual(["B1 | 3/4 | 36 | 12 | 4 | 1"]);
  });

  it("quantities keep the group that they stand under", () => {
    const { headings } = one([
      "MARK | QTY | ANCHOR RODS | | | BASE PLATE | ",
      " | | QTY | SIZE | GRADE | X | Y",
      "B1 | 6 | 4 | 3/4 | 36 | 14 | 16",
    ]);
    expect(headings).toBe(
      "MARK | QTY | ANCHOR RODS / QTY | ANCHOR RODS / SIZE | ANCHOR RODS / GRADE | BASE PLATE / X | BASE PLATE / Y",
    );
  });

  it("a merged heading without words below it heads each of its columns that is filled", () => {
    const { headings, rows } = one(["MARK | ROD DIA | BASE PLATE SIZE | ", "B1 | 3/4 | 14 | 16"], {
      merges: ["C1:D1"],
    });
    expect(headings).toBe("MARK | ROD DIA | BASE PLATE SIZE | BASE PLATE SIZE");
    expect(rows).toEqual(["B1 | 3/4 | 14 | 16"]);
  });
});

describe("headings broken over rows", () => {
  it.each<[string, string[], string]>([
    [
      "two rows without groups",
      ["BASE | ROD | BASE PLATE | ROD", "MARK | DIA. | THK | GRADE"],
      "BASE MARK | ROD DIA. | BASE PLATE THK | ROD GRADE",
    ],
    ["some in one row", ["MARK | ROD | | GROUT", " | DIA. | GRADE | "], "MARK | ROD DIA. | ROD GRADE | GROUT"],
    [
      "in line breaks",
      ["BASE\\nMARK | ROD\\nDIA. | BASE PLATE\\nTHK | GRADE"],
      "BASE MARK | ROD DIA. | BASE PLATE THK | GRADE",
    ],
    [
      "the mark's number below",
      ["MARK | ROD | BASE PLATE | ROD", "NO. | DIA. | THK | GRADE"],
      "MARK NO. | ROD DIA. | BASE PLATE THK | ROD GRADE",
    ],
    ["a single lower half", ["MARK | ROD | GRADE | GROUT", " | DIA. | | "], "MARK | ROD DIA. | GRADE | GROUT"],
  ])("%s", (_, heads, headings) => {
    const found = one([...heads, "B1 | 24 | 36 | 30"]);
    expect(found.headings.replaceAll("ROD / ", "ROD ")).toBe(headings);
    expect(found.rows).toEqual(["B1 | 24 | 36 | 30"]);
  });
});

describe("units", () => {
  it.each<[string, string[], string]>([
    [
      "a row of units",
      ["MARK | QTY | ROD DIA | PROJ | GRADE", " | EA | in | (IN.) | -"],
      "MARK | QTY [ea] | ROD DIA [in] | PROJ [in] | GRADE",
    ],
    [
      "millimetres",
      ["MARK | QTY | ROD DIA | PROJ | GRADE", "- | no. | mm | [mm] | "],
      "MARK | QTY | ROD DIA [mm] | PROJ [mm] | GRADE",
    ],
    [
      "feet and inches",
      ["MARK | QTY | ROD DIA | PROJ | GRADE", 'UNITS | | " | ft-in | '],
      "MARK | QTY | ROD DIA [in] | PROJ [ft-in] | GRADE",
    ],
    [
      "in brackets",
      ["MARK | QTY (EA) | ROD DIA (in) | PROJ. [mm] | GRADE"],
      "MARK | QTY [ea] | ROD DIA [in] | PROJ. [mm] | GRADE",
    ],
    [
      "after the words",
      ["MARK | QTY | ROD DIA, in. | EMBED IN. | GRADE"],
      "MARK | QTY | ROD DIA [in] | EMBED [in] | GRADE",
    ],
    [
      "after the words, mm",
      ["MARK | QTY | ROD DIA mm | EMBED - MM | GRADE"],
      "MARK | QTY | ROD DIA [mm] | EMBED [mm] | GRADE",
    ],
    [
      "below in the cell",
      ["MARK | QTY | ROD DIA\\n(IN) | EMBED\\nIN. | GRADE"],
      "MARK | QTY | ROD DIA [in] | EMBED [in] | GRADE",
    ],
    ["no unit: CAST IN", ["MARK | QTY | ROD DIA | CAST IN | GRADE"], "MARK | QTY | ROD DIA | CAST IN | GRADE"],
  ])("%s", (_, heads, headings) => {
    const found = one([...heads, "B1 | 4 | 24 | 100 | 36"]);
    expect(found.headings).toBe(headings);
    expect(found.rows).toEqual(["B1 | 4 | 24 | 100 | 36"]);
  });

  it("of a group holds for its columns", () => {
    const { headings } = one([
      "MARK | ANCHOR RODS (mm) | | BASE PLATE (mm) | ",
      " | SIZE | PROJ (in) | X | Y",
      "B1 | 24 | 4 | 300 | 300",
    ]);
    expect(headings).toBe(
      "MARK | ANCHOR RODS / SIZE [mm] | ANCHOR RODS / PROJ [in] | BASE PLATE / X [mm] | BASE PLATE / Y [mm]",
    );
  });

  it("a base called M is no unit", () => {
    expect(one(["MARK | ROD DIA | X", "M | | ", "N | 3/4 | 12"]).rows).toEqual(["M |  | ", "N | 3/4 | 12"]);
  });
});

describe("numbers of the columns", () => {
  it.each<[string, string]>([
    ["1, 2, 3", "1 | 2 | 3 | 4 | 5"],
    ["A, B, C", "A | B | C | D | E"],
    ["in brackets", "(1) | (2) | (3) | (4) | (5)"],
  ])("%s below the headings", (_, line) => {
    const found = one(["MARK | ROD DIA | GRADE | X | Y", line, "B1 | 3/4 | 36 | 12 | 10"]);
    expect(found.rows).toEqual(["B1 | 3/4 | 36 | 12 | 10"]);
    expect(found.out).toHaveLength(5);
  });

  it("above the headings, and with units below", () => {
    const found = one([
      "1 | 2 | 3 | 4 | 5",
      "MARK | ROD DIA | GRADE | X | Y",
      " | in | | in | in",
      "B1 | 3/4 | 36 | 12 | 10",
    ]);
    expect(found.rows).toEqual(["B1 | 3/4 | 36 | 12 | 10"]);
  });

  it("marks that are numbers are none", () => {
    expect(one(["MARK | ROD DIA | GRADE | X | Y", "1 | 3/4 | 36 | 12 | 10", "2 | 1 | 36 | 12 | 10"]).rows).toHaveLength(
      2,
    );
  });
});

describe("the first row of data is never eaten", () => {
  const heads = ["MARK | ROD DIA | NUT | GRADE | FINISH"];
  it.each<[string, string]>([
    ["words in every cell", "A | DO | HEAVY HEX | SAME | HDG"],
    ["words that are headings too", "BP | SEE NOTE | NUT | GRADE | FINISH"],
    ["a mark of words", "TYPE A | M24 | NUT | GRADE | PLAIN"],
    ["a mark called by a heading's word and a figure", "BASE 1 | 3/4 | HEX | 36 | HDG"],
    ["a single letter", "X | M20 | HEX | 8.8 | HDG"],
    ["no mark, but a figure", " | 3/4 | HEX | 36 | HDG"],
    ["no mark and no figure, no heading's word", " | DO | HEAVY HEX | SAME | HDG"],
    ["few cells", "B1 | | | | "],
    ["a mark and one word", "B1 | | HEAVY HEX | | "],
    ["dashes", "B1 | - | - | - | -"],
    ["a unit's word as grade", "M | M | M | M | in"],
  ])("%s", (_, line) => {
    const cells = line.split("|").map((text) => text.trim());
    const found = one([...heads, line, "B9 | 1 | HEX | 55 | HDG"]);
    expect(found.rows).toEqual([cells.join(" | "), "B9 | 1 | HEX | 55 | HDG"]);
    expect(found.headings).toBe(heads[0]);
  });

  it.each<[string, string[]]>([
    ["below two rows", ["MARK | ANCHOR RODS | | BASE PLATE | ", " | SIZE | GRADE | X | Y"]],
    ["below units", ["MARK | ROD DIA | GRADE | X | Y", " | in | | in | in"]],
    ["below three rows", ["MARK | ANCHOR RODS | | BASE PLATE | ", " | SIZE | GRADE | X | Y", " | in | | in | in"]],
  ])("%s", (_, lines) => {
    expect(one([...lines, "A | DO | HDG | DO | DO", "B | 1 | 55 | 12 | 14"]).rows).toEqual([
      "A | DO | HDG | DO | DO",
      "B | 1 | 55 | 12 | 14",
    ]);
  });
});

describe("what stands above", () => {
  it.each<[string, string[], string]>([
    ["a title", ["COLUMN BASE PLATE SCHEDULE"], "COLUMN BASE PLATE SCHEDULE A2"],
    ["a merged title", ["COLUMN BASES | | | "], "COLUMN BASES A2"],
    ["a title of headings' words", ["ANCHOR RODS"], "ANCHOR RODS A2"],
    ["a title in the middle", [" | BASE PLATE SCHEDULE"], "BASE PLATE SCHEDULE A2"],
    ["a sentence with a heading's word", ["SEE PLAN FOR MARK OF EACH BASE"], "SEE PLAN FOR MARK OF EACH BASE A2"],
    ["a word alone", ["MARK"], "MARK A2"],
    ["a title block", ["PROJECT | Cold store | DATE | 2026-11-24", "JOB NO. | 24-118 | REV | B", ""], "A4"],
    ["blank rows", ["BASES", "", ""], "BASES A4"],
  ])("%s", (name, lines, at) => {
    const looks = name === "a merged title" ? { merges: ["A1:D1"] } : {};
    const found = one([...lines, "MARK | ROD DIA | X | Y", "B1 | 3/4 | 12 | 10"], looks);
    expect(found.at).toBe(at);
    expect(found.headings).toBe("MARK | ROD DIA | X | Y");
    expect(found.out.length).toBe(lines.flatMap((line) => line.split("|").filter((text) => text.trim() !== "")).length);
  });

  it("forty rows", () => {
    const lines = Array.from({ length: 40 }, (_, row) =>
      row % 3 === 0 ? "" : `GENERAL TEXT ${row} FOR THE MARK AND ROD OF EACH BASE`,
    );
    expect(one([...lines, "MARK | ROD DIA | X | Y", "B1 | 3/4 | 12 | 10"]).rows).toEqual(["B1 | 3/4 | 12 | 10"]);
  });

  it("the table may begin anywhere, with columns before its marks and blank ones between", () => {
    const found = one(["", " | | QTY | MARK | | ROD DIA | X | Y", " | | 4 | B1 | | 3/4 | 12 | 10"]);
    expect(found.at).toBe("C2");
    expect(found.headings).toBe("QTY | MARK | ROD DIA | X | Y");
    expect(found.rows).toEqual(["4 | B1 | 3/4 | 12 | 10"]);
  });

  it("headings that are not known stay, with figures in them too", () => {
    const { headings } = one(["MARK | ROD DIA | F'c 28 DAY | X | Y | FIELD CHECK", "B1 | 3/4 | 4 | 12 | 10 | ok"]);
    expect(headings).toBe("MARK | ROD DIA | F'c 28 DAY | X | Y | FIELD CHECK");
  });
});

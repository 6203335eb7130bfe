/** Rows below the headings of drawn sheets: what is data, and what stands between and below it. */
import { describe, expect, it } from "vitest";
import { findTables } from "../../../src/schedule/find-tables.js";
import { drawSheet, findOn, knownHeading, type SheetLooks } from "./drawn-sheet.js";

const HEAD = "MARK | ROD DIA | GRADE | X | Y";
const [B1, B2] = ["B1 | 3/4 | 36 | 12 | 10", "B2 | 1 | 55 | 14 | 12"];

function body(lines: readonly string[], looks: SheetLooks = {}) {
  const [found, ...others] = findOn([HEAD, ...lines], looks);
  expect(others).toEqual([]);
  return { rows: found?.rows ?? [], out: found?.out ?? [], notes: found?.notes ?? {} };
}

describe("what is left out between rows, and said", () => {
  it.each<[string, string, string, string[]]>([
    ["a section", "MAIN BUILDING", "no base", []],
    ["a section with a letter", "GRID LINE A", "no base", []],
    ["a section with a figure", "AREA 2", "no base", []],
    ["a merged section", "MAIN BUILDING | | | | ", "no base", ["A3:E3"]],
    ["a merged section with a mark's look", "B7 | | | | ", "no base", ["A3:E3"]],
    ["a total", "TOTAL 35", "a total", []],
    ["a total in two cells", "TOTAL | 35", "a total", []],
    ["a total beside the marks", " | TOTAL: | 35", "a total", []],
    ["a subtotal", "SUB-TOTAL | | | 12 | 10", "a total", []],
    ["a line", "---- | ---- | ---- | ---- | ----", "a line without values", []],
    ["headings again", HEAD, "the headings again", []],
    ["headings again in other letters", "Mark | Rod dia. | Grade | X | Y", "the headings again", []],
  ])("%s", (_, line, why, merges) => {
    for (const lines of [
      [B1, line, B2],
      [B1, "", line, "", B2],
    ]) {
      const moved = merges.map((range) => (lines.length === 3 ? range : range.replace(/3/g, "4")));
      const { rows, out } = body(lines, { merges: moved });
      expect(rows).toEqual([B1, B2]);
      expect(out.length).toBe(line.split("|").filter((text) => text.trim() !== "").length);
      for (const each of out) expect(each).toContain(why);
    }
  });

  it("a centred section with blank cells before it, below a blank row or at once below the headings", () => {
    expect(body([" | | MAIN BUILDING", B1, "", " | | ANNEX", B2]).rows).toEqual([B1, B2]);
  });

  it("the next page: title, headings, groups, units and numbers again", () => {
    const heads = [
      "MARK | ANCHOR RODS | | BASE PLATE | ",
      " | SIZE | GRADE | X | Y",
      " | in | | in | in",
      "1 | 2 | 3 | 4 | 5",
    ];
    const found = findOn(["BASE SCHEDULE", ...heads, B1, "", "BASE SCHEDULE (CONT'D)", ...heads, B2]);
    expect(found).toHaveLength(1);
    expect(found[0]?.rows).toEqual([B1, B2]);
    expect(found[0]?.out).toContain("BASE SCHEDULE (CONT'D): stands over the rows below it: no base");
  });

  it("struck-out rows are left out, struck-out cells stay", () => {
    const found = findTables(
      drawSheet([HEAD, B1, B2, "B3 | 1 | 55 | 14 | 12"], { struck: ["A3:E3", "C4"] }),
      knownHeading,
    );
    expect(found[0]?.rows.map((row) => row.map(({ text }) => text).join(" | "))).toEqual([B1, "B3 | 1 | 55 | 14 | 12"]);
    expect(found[0]?.leftOut.map(({ why }) => why)).toEqual(Array.from({ length: 5 }, () => "struck out"));
    expect(found[0]?.rows[1]?.map(({ isStruck }) => isStruck ?? false)).toEqual([false, false, true, false, false]);
  });

  it("hidden rows stay, and are marked", () => {
    const found = findTables(drawSheet([HEAD, B1, B2], { hidden: ["A3:E3"] }), knownHeading);
    expect(found[0]?.rows).toHaveLength(2);
    expect(found[0]?.rows[1]?.every(({ isHidden }) => isHidden)).toBe(true);
  });
});

describe("what is data", () => {
  it.each<[string, string]>([
    ["a mark alone", "B7"],
    ["a mark that is not used", "B7 - NOT USED"],
    ["a mark that is void", "B7 (VOID)"],
    ["a range of marks alone", "B7-B9"],
    ["a list of marks", "B7, B8 & B9"],
    ["a long list of marks alone", "B11, B12, B13, B14, B15, B16, B17 & B18"],
    ["a long list of marks with one cell", "B11, B12, B13, B14, B15, B16, B17 AND B18 | SAME AS B1"],
    ["a total of something in a cell", " | 3/4 | 55 | 6 | TOTAL 4 RODS"],
    ["a mark of figures", "12"],
    ["a row without a mark", " | 3/4 | 55 | 6 | 6"],
    ["one value without a mark", " | 3/4"],
    ["one word without a mark, right below a row", " | | HDG"],
    ["two cells", "B7 | 1"],
    ["dittos", 'B7 | " | " | DO | DO'],
    ["same as", "B7 | SAME AS B1 | | | "],
    ["a mark of another kind", "P-101 | 1 | 55 | 14 | 12"],
    ["a long mark", "PEDESTAL AT STAIR | 1 | 55 | 14 | 12"],
    ["a mark with a colon", "B7: | 1 | 55 | 14 | 12"],
    ["a mark that begins like a total", "TOT1 | 1 | 55 | 14 | 12"],
    ["a note's number as mark", "1. | 1 | 55 | 14 | 12"],
    ["a note's word in a cell", "B7 | SEE NOTE 2 | NOTE 1: X | 14 | 12"],
    ["a mark called NOTE", "NOTE | 1 | 55 | 14 | 12"],
  ])("%s", (_, line) => {
    const { rows } = body([B1, line, B2]);
    const cells = line.split("|").map((text) => text.trim());
    expect(rows).toEqual([B1, Array.from({ length: 5 }, (_, at) => cells[at] ?? "").join(" | "), B2]);
  });

  it("goes on below blank rows, sections and notes", () => {
    const lines = [B1, "", "", "", B2, "NOTES:", "1. ALL RODS GALVANIZED", "", "B3 | 1 | 55 | 14 | 12", "", "B4 | 2"];
    expect(body(lines).rows.map((row) => row.slice(0, 2))).toEqual(["B1", "B2", "B3", "B4"]);
  });

  it("marks of letters alone", () => {
    expect(
      body(["A | 1 | 36 | 12 | 10", "B", "MAIN", "C | 1 | 36 | 12 | 10"]).rows.map((row) => row.slice(0, 2).trim()),
    ).toEqual(["A", "B", "C"]);
  });
});

describe("footnotes", () => {
  it.each<[string, string[], Record<string, string>]>([
    [
      "numbered",
      ["NOTES:", "1. ALL RODS F1554.", "2. TEMPLATES STAY."],
      { 1: "ALL RODS F1554.", 2: "TEMPLATES STAY." },
    ],
    [
      "numbered without a head",
      ["1. ALL RODS F1554.", "2. TEMPLATES STAY."],
      { 1: "ALL RODS F1554.", 2: "TEMPLATES STAY." },
    ],
    ["in brackets", ["(1) ALL RODS F1554.", "(2) 3 x 3 WASHERS"], { 1: "ALL RODS F1554.", 2: "3 x 3 WASHERS" }],
    ["half brackets", ["1) ALL RODS F1554.", "2) HDG"], { 1: "ALL RODS F1554.", 2: "HDG" }],
    ["NOTE 1:", ["NOTE 1: 3/4 RODS", "Note 2 - HDG"], { 1: "3/4 RODS", 2: "HDG" }],
    ["stars", ["* SEE PLAN", "** FIELD WELD"], { "*": "SEE PLAN", "**": "FIELD WELD" }],
    [
      "of several lines",
      ["NOTES:", "1. ALL RODS F1554", "GRADE 55", "2. HDG"],
      { 1: "ALL RODS F1554 GRADE 55", 2: "HDG" },
    ],
    ["in one cell", ["NOTES:\\n1. ALL RODS F1554\\n2. HDG"], { 1: "ALL RODS F1554", 2: "HDG" }],
    [
      "number and text in two cells",
      ["NOTES: | ", "1. | ALL RODS F1554", "2. | TEMPLATES STAY"],
      { 1: "ALL RODS F1554", 2: "TEMPLATES STAY" },
    ],
    [
      "head, number and text",
      ["NOTES: | 1. | ALL RODS F1554", " | 2. | TEMPLATES STAY"],
      { 1: "ALL RODS F1554", 2: "TEMPLATES STAY" },
    ],
    ["without numbers", ["GENERAL NOTES", "ALL RODS TO BE GALVANIZED."], {}],
    ["a sentence", ["All dimensions are in inches unless noted otherwise."], {}],
    ["a sentence that begins with marks", ["B1 TO B4: SEE DETAIL 5 ON SHEET 3"], {}],
    ["a legend", ["LEGEND:", "HDG | HOT DIP GALVANIZED", "TYP | TYPICAL"], {}],
    ["who made it", ["DRAWN BY: | AB", "DATE: | 2026-11-24"], {}],
    ["merged over the width", ["1. ALL RODS F1554. | | | | "], { 1: "ALL RODS F1554." }],
    ["one number for two texts", ["1. HDG", "1. PLAIN"], {}],
  ])("%s", (_, lines, notes) => {
    for (const between of [[], [""]]) {
      const merges =
        lines[0]?.endsWith("| ") && lines.length === 1 ? [`A${4 + between.length}:E${4 + between.length}`] : [];
      const found = body([B1, B2, ...between, ...lines], { merges });
      expect(found.rows).toEqual([B1, B2]);
      expect(found.notes).toEqual(notes);
      expect(found.out).toHaveLength(
        lines.flatMap((line) => line.split("|").filter((text) => text.trim() !== "")).length,
      );
    }
  });

  it("beside the table", () => {
    const { rows, notes, out } = body([`${B1} | | NOTES:`, `${B2} | | 1. ALL RODS F1554`, " | | | | | | GRADE 55"]);
    expect(rows).toEqual([B1, B2]);
    expect(notes).toEqual({ 1: "ALL RODS F1554 GRADE 55" });
    expect(out).toHaveLength(3);
  });

  it("a head of notes beside the headings is no column", () => {
    const [found] = findOn([`${HEAD} | | NOTES:`, `${B1} | | 1. HDG`, B2]);
    expect(found?.headings).toBe(HEAD);
    expect(found?.notes).toEqual({ 1: "HDG" });
  });

  it("notes between the title and the headings", () => {
    const [found] = findOn(["BASES", "1. ALL RODS HDG", "", HEAD, B1]);
    expect(found?.rows).toEqual([B1]);
    expect(found?.notes).toEqual({ 1: "ALL RODS HDG" });
  });

  it("a base below notes that have no blank row between keeps being a base", () => {
    expect(body([B1, "1. ALL RODS HDG", B2]).rows).toEqual([B1, B2]);
  });
});

describe("merged cells", () => {
  const cellsOf = (lines: readonly string[], merges: readonly string[]) =>
    findTables(drawSheet([HEAD, ...lines], { merges }), knownHeading)[0]?.rows.map((row) =>
      row.map(
        ({ text, line, column, remark }) => `${text}@${line},${column}${remark === undefined ? "" : ` ${remark}`}`,
      ),
    );

  it("down the rows mean each of them, with the place of the merge", () => {
    const rows = cellsOf([B1, "B2 | | 55 | 14 | 12", "B3 | | 55 | 14 | 12"], ["B2:B4"]);
    expect(rows?.map((row) => row[1])).toEqual([
      "3/4@2,2 merged B2 to B4",
      "3/4@2,2 merged B2 to B4",
      "3/4@2,2 merged B2 to B4",
    ]);
  });

  it("across columns stand in the first, and the others say so", () => {
    const rows = cellsOf(["B1 | 3/4 | 36 | 12 x 10 | "], ["D2:E2"]);
    expect(rows?.[0]?.slice(3)).toEqual(["12 x 10@2,4 merged D2 to E2", "@2,5 merged into D2"]);
  });

  it("both ways", () => {
    const rows = cellsOf(["B1 | 3/4 | 36 | 12 SQ | ", "B2 | 1 | 36 | | "], ["D2:E3"]);
    expect(rows?.[1]?.slice(3)).toEqual(["12 SQ@2,4 merged D2 to E3", "@3,5 merged into D2"]);
  });

  it("a mark that is merged down holds for the rows of its other rods, few cells or many", () => {
    const rows = cellsOf(
      ["B1 | 3/4 | 36 | 12 | 10", " | 1 | 55 | 6 | 6", " | | HDG | | ", "B2 | 1 | 36 | 8 | 8"],
      ["A2:A4"],
    );
    expect(rows?.map((row) => row[0]?.slice(0, 2))).toEqual(["B1", "B1", "B1", "B2"]);
  });

  it("two lines of the sheet for each base make one row", () => {
    const merges = ["A2:A3", "B2:B3", "C2:C3", "D2:D3", "E2:E3"];
    expect(cellsOf([B1, "", B2], merges)).toHaveLength(2);
  });

  it("far larger than the sheet, and one over the other: no fault", () => {
    expect(cellsOf([B1, B2], ["A1:XFD9999", "A2:B3", "D2:D2"])).not.toBeNull();
  });
});

describe("several tables of a sheet", () => {
  const names = (lines: readonly string[]) => findOn(lines).map(({ at, rows }) => `${at}: ${rows.length}`);

  it("one below the other, each with its title", () => {
    const lines = [
      "BASES",
      HEAD,
      B1,
      B2,
      "",
      "PLACEMENTS",
      "MARK | GRID | T.O.C.",
      "B1 | A-1 | 99'-6\"",
      "B1 | A-2 | 99'-6\"",
    ];
    expect(names(lines)).toEqual(["BASES A2: 2", "PLACEMENTS A7: 2"]);
  });

  it("one below the other without a title or a blank row", () => {
    expect(names([HEAD, B1, B2, "MARK | GRID | T.O.C.", "B1 | A-1 | 99'-6\""])).toEqual(["A1: 2", "A4: 1"]);
  });

  it("side by side, their rows begin in different rows", () => {
    const lines = [
      `${HEAD} | | `,
      `${B1} | | MARK | GRID | TURN`,
      `${B2} | | B1 | A-1 | 0`,
      "B3 | 1 | 55 | 14 | 12 | | B2 | A-2 | 90",
    ];
    expect(names(lines)).toEqual(["A1: 3", "G2: 2"]);
  });

  it("side by side with the same headings", () => {
    expect(names([`${HEAD} | | ${HEAD}`, `${B1} | | B7 | 1 | 36 | 8 | 8`, B2])).toEqual(["A1: 2", "G1: 1"]);
    expect(names([`${HEAD} | ${HEAD}`, `${B1} | B7 | 1 | 36 | 8 | 8`])).toEqual(["A1: 1", "F1: 1"]);
  });

  it("the same headings below another title are a table of their own", () => {
    expect(names(["PHASE 1 BASES", HEAD, B1, "", "PHASE 2 BASES", HEAD, B2])).toEqual([
      "PHASE 1 BASES A2: 1",
      "PHASE 2 BASES A6: 1",
    ]);
  });

  it("footings, a legend and a schedule", () => {
    const lines = [
      "FOOTING SCHEDULE",
      "MARK | WIDTH | DEPTH | REINFORCING",
      "F1 | 4'-0\" | 12 | 4-#5",
      "",
      HEAD,
      B1,
      "",
      "MARK | DESCRIPTION",
      "B1 | braced bay",
    ];
    expect(names(lines)).toEqual(["FOOTING SCHEDULE A2: 1", "A5: 1", "A8: 1"]);
  });
});

it("every text of a sheet stands in a table, as a heading, or among what is left out", () => {
  const lines = [
    "TITLE | | | | | | | AT THE RIGHT",
    "",
    `${HEAD} | | | `,
    ` | in | | in | in | | | `,
    `${B1} | | STRAY | `,
    "",
    "NOTES:",
    "1. ONE",
    " | | | | | | | FAR",
  ];
  const table = drawSheet(lines, {});
  const [found] = findTables(table, knownHeading);
  const seen = new Set(
    [
      ...(found?.rows.flat() ?? []),
      ...(found?.leftOut.map(({ cell }) => cell) ?? []),
      ...(found?.columns.map(({ cell }) => cell) ?? []),
    ].map(({ line, column }) => `${line} ${column}`),
  );
  const filled = table.rows.flat().filter(({ text }) => text !== "");
  expect(filled.filter(({ line, column }) => !seen.has(`${line} ${column}`))).toEqual([]);
});

/** Which of several tables is meant. */
import { describe, expect, it } from "vitest";
import { chooseTable, PLACEMENTS_TABLE, SCHEDULE_TABLE, type TableKind } from "../../../src/schedule/choose-table.js";
import { findTables } from "../../../src/schedule/find-tables.js";
import { explainNoTable } from "../../../src/schedule/no-table.js";
import { drawSheet, knownHeading } from "./drawn-sheet.js";

const BASES = ["MARK | ROD DIA | X | Y", "B1 | 3/4 | 12 | 10", "B2 | 1 | 12 | 10"];
const MORE = ["MARK | ROD DIA | X | Y", "B3 | 3/4 | 12 | 10"];
const PLACES = ["MARK | GRID | T.O.C.", "B1 | A-1 | 99'-6\""];
const FOOTINGS = ["MARK | WIDTH | LENGTH | REINFORCING", "F1 | 4 | 4 | 4-#5"];
const BEAMS = ["MARK | SIZE | LENGTH | CAMBER", "W1 | W12x26 | 20 | 1"];
const PLATES = ["MARK | BASE PLATE THK | GRADE", "B1 | 1 | 36"];

type Sheets = Readonly<Record<string, readonly string[]>>;

function choose(sheets: Sheets, answers: { sheet?: string; table?: string } = {}, kind: TableKind = SCHEDULE_TABLE) {
  const found = Object.entries(sheets).flatMap(([sheet, lines]) =>
    findTables(drawSheet(lines, { sheet }), knownHeading).map((table) => ({ table })),
  );
  const choice = chooseTable(found, answers, kind);
  if (choice.kind === "one")
    return `${choice.found.table.sheet}!${choice.found.table.upperLeft}${choice.found.table.isTurned ? " turned" : ""}`;
  return choice.kind === "asked" ? choice.question : choice;
}
const linesOf = (choice: ReturnType<typeof choose>) =>
  typeof choice === "object" && "choices" in choice ? choice.choices.map(({ line }) => line) : choice;

describe("the schedule", () => {
  it.each<[string, Sheets, string]>([
    ["the only table", { Bases: BASES }, "Bases!A1"],
    ["beside placements", { Places: PLACES, Bases: BASES }, "Bases!A1"],
    ["above placements on one sheet", { Bases: [...BASES, "", ...PLACES] }, "Bases!A1"],
    ["beside footings and beams", { F: FOOTINGS, B: BEAMS, Bases: BASES }, "Bases!A1"],
    [
      "with a column of grids of its own",
      { Bases: ["MARK | GRID | ROD DIA | X", "B1 | A-1 | 1 | 12"], Places: PLACES },
      "Bases!A1",
    ],
    ["whose rods stand in the defaults", { Bases: ["MARK | KIND | QTY", "B1 | heavy | 2"] }, "Bases!A1"],
  ])("%s", (_, sheets, place) => {
    expect(choose(sheets)).toBe(place);
  });

  it.each<[string, Sheets, string[]]>([
    ["two sheets", { Bases: BASES, More: ["MARK | ROD DIA | GRADE", "B9 | 1 | 36"] }, ["sheet: Bases", "sheet: More"]],
    ["two tables of a sheet", { Bases: [...BASES, "", "PHASE 2", "", ...PLATES] }, ["table: A1", "table: A7"]],
    [
      "both",
      { Bases: [...BASES, "", ...PLATES], More: MORE },
      ["sheet: Bases, table: A1", "sheet: Bases, table: A5", "sheet: More"],
    ],
    ["a name that YAML would misread", { "Bases: north": BASES, "2": MORE }, ['sheet: "2"', 'sheet: "Bases: north"']],
    [
      "a sheet that reads both ways",
      { Bases: ["MARK | ROD DIA | X", "PROJ | 36 | 12", "FINISH | HDG | 10"] },
      ["table: A1 down", "table: A1 across"],
    ],
  ])("asks: %s", (_, sheets, lines) => {
    expect(linesOf(choose(sheets))).toEqual(lines);
  });

  it("a schedule that goes on elsewhere is asked, and it is said that the headings are the same", () => {
    const asked = choose({ "Bases 1": BASES, "Bases 2": MORE });
    expect(asked).toMatchObject({ cells: ["Bases 1!A1", "Bases 2!A1"] });
    expect(JSON.stringify(asked)).toContain(
      "2 tables have the same headings (Bases 1!A1 with 2 rows, Bases 2!A1 with 1 row) and are not joined",
    );
  });

  it.each<[{ sheet?: string; table?: string }, string]>([
    [{ sheet: "More" }, "More!A1"],
    [{ sheet: " more " }, "More!A1"],
    [{ sheet: "Bases", table: "A5" }, "Bases!A5"],
    [{ table: "a5" }, "Bases!A5"],
    [{ table: "Bases!A5" }, "Bases!A5"],
    [{ sheet: "Places" }, "Places!A1"],
  ])("%j says which", (answers, place) => {
    expect(choose({ Bases: [...BASES, "", ...PLATES], More: MORE, Places: PLACES }, answers)).toBe(place);
  });

  it("every line of a question answers it", () => {
    const sheets = { Bases: [...BASES, "", ...PLATES], More: MORE };
    for (const line of ["sheet: Bases, table: A1", "sheet: Bases, table: A5", "sheet: More"]) {
      const answers = Object.fromEntries(line.split(", ").map((part) => part.split(": ")));
      expect(typeof choose(sheets, answers)).toBe("string");
    }
    const both = { Bases: ["MARK | ROD DIA | X", "PROJ | 36 | 12", "FINISH | HDG | 10"] };
    expect(choose(both, { table: "A1 across" })).toBe("Bases!A1 turned");
    expect(choose(both, { table: "A1 down" })).toBe("Bases!A1");
  });

  it("a named sheet with several asks among them", () => {
    expect(linesOf(choose({ Bases: [...BASES, "", ...PLATES], More: MORE }, { sheet: "Bases" }))).toEqual([
      "table: A1",
      "table: A5",
    ]);
    expect(choose({ Bases: [...BASES, "", ...PLACES], More: MORE }, { sheet: "Bases" })).toBe("Bases!A1");
  });

  it("says what there is where none is meant", () => {
    expect(choose({ Places: PLACES })).toMatchObject({
      kind: "none",
      message: expect.stringContaining("Places!A1 has MARK, GRID, T.O.C."),
    });
    expect(choose({ Bases: BASES }, { sheet: "Basis" })).toMatchObject({ kind: "none", hint: "did you mean Bases?" });
    expect(choose({ Bases: BASES }, { table: "C9" })).toMatchObject({
      kind: "none",
      message: expect.stringContaining("stands at Bases!A1"),
    });
    expect(choose({})).toMatchObject({ kind: "none" });
  });
});

describe("the placements", () => {
  it.each<[string, Sheets, string]>([
    ["beside the schedule", { Bases: BASES, Places: PLACES }, "Places!A1"],
    ["below the schedule", { Bases: [...BASES, "", ...PLACES] }, "Bases!A5"],
    [
      "in the schedule itself, where there is no other",
      { Bases: ["MARK | GRID | ROD DIA | X", "B1 | A-1 | 1 | 12"] },
      "Bases!A1",
    ],
  ])("%s", (_, sheets, place) => {
    expect(choose(sheets, {}, PLACEMENTS_TABLE)).toBe(place);
  });

  it("asks between two, and says that there are none", () => {
    expect(linesOf(choose({ A: PLACES, B: PLACES }, {}, PLACEMENTS_TABLE))).toEqual(["sheet: A", "sheet: B"]);
    expect(choose({ Bases: BASES }, {}, PLACEMENTS_TABLE)).toMatchObject({ kind: "none" });
  });
});

describe("no table", () => {
  const explain = (sheets: Sheets) =>
    explainNoTable(
      Object.entries(sheets).map(([sheet, lines]) => drawSheet(lines, { sheet })),
      knownHeading,
      SCHEDULE_TABLE,
    );

  it("names the row that came nearest, what is known of it and what not", () => {
    const { message, hint, sheet, cell } = explain({
      Cover: ["COLD STORE"],
      Bases: ["", "BASE LABEL NAME HERE | ROD DIA | X | SHIM", "B1 | 1 | 12 | 1"],
    });
    expect(message).toBe(
      "no table was found on the sheets Cover, Bases; a table has a heading Mark and others beside or below it, marks and rods, their pattern or base plates; nearest is row 2 of Bases: known ROD DIA, X, not known BASE LABEL NAME HERE, SHIM",
    );
    expect(hint).toContain("sheet: NAME");
    expect({ sheet, line: cell?.line, column: cell?.column }).toEqual({ sheet: "Bases", line: 2, column: 2 });
  });

  it("says so where nothing is known", () => {
    expect(explain({ Cover: ["COLD STORE"] })).toMatchObject({
      cell: null,
      message: expect.stringContaining("no text of any row is a known heading"),
    });
    expect(explain({}).message).toContain("no table was found;");
  });
});

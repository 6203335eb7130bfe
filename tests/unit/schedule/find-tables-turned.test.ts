/** Tables with their bases across the columns, and sheets that can be read both ways. */
import { describe, expect, it } from "vitest";
import { findOn, type SheetLooks } from "./drawn-sheet.js";

const ROWS = ["B1 | 3/4 | 36 | 12 | 10", "B2 | 1 | 55 | 14 | 12", "B3 | M24 | 8.8 | 14 | 12"];
const SHEET = [
  "MARK | B1 | B2 | B3",
  "ROD DIA | 3/4 | 1 | M24",
  "GRADE | 36 | 55 | 8.8",
  "X | 12 | 14 | 14",
  "Y | 10 | 12 | 12",
];

function one(lines: readonly string[], looks: SheetLooks = {}) {
  const [found, ...others] = findOn(lines, looks);
  expect(others).toEqual([]);
  return found ?? { at: "", headings: "", rows: [], out: [], notes: {} };
}

describe("bases across", () => {
  it.each<[string, string[], string, SheetLooks]>([
    ["plain", SHEET, "A1 turned", {}],
    ["below a title", ["BASES OF THE HALL", ...SHEET], "A2 turned", {}],
    ["below a title and a blank row", ["COLUMN BASE SCHEDULE", "", ...SHEET], "A3 turned", {}],
    ["below a merged title", ["COLUMN BASE SCHEDULE | | | ", ...SHEET], "A2 turned", { merges: ["A1:D1"] }],
    ["not in the first column", SHEET.map((line) => ` | ${line}`), "B1 turned", {}],
    ["with blank rows between", SHEET.flatMap((line) => [line, ""]), "A1 turned", {}],
    ["with a blank column between", SHEET.map((line) => line.replace("| ", "| | ")), "A1 turned", {}],
    ["with notes below", [...SHEET, "", "NOTES:", "1. ALL RODS HDG"], "A1 turned", {}],
    ["with notes right below", [...SHEET, "NOTES:", "1. ALL RODS HDG"], "A1 turned", {}],
    ["with merged notes below", [...SHEET, "1. ALL RODS HDG | | | "], "A1 turned", { merges: ["A6:D6"] }],
    ["with notes' numbers and texts in two columns", [...SHEET, "NOTES:", "1. | ALL RODS HDG"], "A1 turned", {}],
    [
      "with a total",
      SHEET.map((line, row) => (row === 0 ? `${line} | TOTAL` : row === 1 ? `${line} | 3` : line)),
      "A1 turned",
      {},
    ],
  ])("%s", (name, lines, at, looks) => {
    const found = one(lines, looks);
    expect(found.at.endsWith(at)).toBe(true);
    expect(found.headings).toBe("MARK | ROD DIA | GRADE | X | Y");
    expect(found.rows).toEqual(ROWS);
    if (name.includes("notes")) expect(found.notes).toEqual({ 1: "ALL RODS HDG" });
    const filled = lines.flatMap((line) => line.split("|").filter((text) => text.trim() !== "")).length;
    expect(found.out).toHaveLength(filled - 20);
  });

  it("units in a column of their own, or in the headings", () => {
    const units = ["", "in", "", "in", "(IN.)"];
    const lines = SHEET.map((line, row) => line.replace(" | ", ` | ${units[row]} | `));
    expect(one(lines).headings).toBe("MARK | ROD DIA [in] | GRADE | X [in] | Y [in]");
    expect(one(lines).rows).toEqual(ROWS);
    expect(one(SHEET.map((line) => line.replace("ROD DIA", "ROD DIA (mm)"))).headings).toContain("ROD DIA [mm]");
  });

  it("a group column before", () => {
    const lines = [
      " | MARK | B1 | B2",
      "ANCHOR RODS | SIZE | 3/4 | 1",
      " | GRADE | 36 | 55",
      "BASE PLATE | X | 14 | 16",
      " | Y | 14 | 16",
      " | THK | 1 | 1-1/4",
    ];
    const headings =
      "MARK | ANCHOR RODS / SIZE | ANCHOR RODS / GRADE | BASE PLATE / X | BASE PLATE / Y | BASE PLATE / THK";
    for (const looks of [{}, { merges: ["A2:A3", "A4:A6"] }]) {
      const found = one(lines, looks);
      expect(found.headings).toBe(headings);
      expect(found.rows).toEqual(["B1 | 3/4 | 36 | 14 | 14 | 1", "B2 | 1 | 55 | 16 | 16 | 1-1/4"]);
    }
  });

  it("the first base is never eaten", () => {
    const found = one([
      "MARK | A | B",
      "ROD DIA | DO | 1",
      "NUT | HEAVY HEX | HEX",
      "FINISH | HDG | PLAIN",
      "X | DO | 12",
    ]);
    expect(found.rows).toEqual(["A | DO | HEAVY HEX | HDG | DO", "B | 1 | HEX | PLAIN | 12"]);
  });

  it("one value for several bases, merged across", () => {
    const found = one(
      SHEET.map((line, row) => (row === 2 ? "GRADE | 36 | | " : line)),
      { merges: ["B3:D3"] },
    );
    expect(found.rows.map((row) => row.split(" | ")[2])).toEqual(["36", "36", "36"]);
  });

  it("a single base down or across", () => {
    expect(one(["MARK | B1", "ROD DIA | 3/4", "X | 12", "Y | 10"])).toMatchObject({
      at: "A1 turned",
      rows: ["B1 | 3/4 | 12 | 10"],
    });
    expect(one(["MARK | ROD DIA | X | Y", "B1 | 3/4 | 12 | 10"])).toMatchObject({
      at: "A1",
      rows: ["B1 | 3/4 | 12 | 10"],
    });
  });

  it("a placement list below a schedule that is turned, and the other way round", () => {
    const places = ["MARK | GRID | TURN", "B1 | A-1 | 0", "B2 | A-2 | 90"];
    const found = (lines: readonly string[]) => findOn(lines).map(({ at, rows }) => `${at}: ${rows.length}`);
    expect(found([...SHEET, "", ...places])).toEqual(["A1 turned: 3", "A7: 2"]);
    expect(found([...places, "", ...SHEET])).toEqual(["A1: 2", "A5 turned: 3"]);
  });
});

describe("both ways", () => {
  it("a table down the rows with words of headings in a column stays one", () => {
    const found = one([
      "MARK | MEMBER | ROD DIA | X",
      "B1 | column | 3/4 | 12",
      "B2 | column | 1 | 12",
      "B3 | post | 1 | 12",
    ]);
    expect(found.rows).toHaveLength(3);
  });

  it("the reading with more known headings is taken", () => {
    expect(one(["MARK | ROD DIA | X", "GRADE | 36 | 12", "FINISH | HDG | 10", "NUT | HEX | 8"]).at).toBe("A1 turned");
  });

  it("equally proven: both are given", () => {
    const found = findOn(["MARK | ROD DIA | X", "GRADE | 36 | 12", "FINISH | HDG | 10"]);
    expect(found.map(({ at }) => at)).toEqual(["A1", "A1 turned"]);
  });
});

/** What the headings of a placement list stand for. Data invented; words from the trade's general usage, from memory (common practice). */
import { describe, expect, it } from "vitest";
import { PLACEMENT_HEADINGS, placementMeaningsOf, settlePlacements } from "../../../src/schedule/index.js";
import { answersOf, foundTable } from "./found-tables.js";

function settle(headings: readonly string[], rows: readonly (readonly string[])[], answers = {}) {
  return settlePlacements(foundTable(headings, ...rows), answersOf(answers), { file: "p.xlsx", unit: "in" });
}

describe("headings of placements", () => {
  it.each([
    ["MARK", "", "Mark"],
    ["BASE PLATE MARK", "", "Mark"],
    ["TYPE", "", "Mark or note"],
    ["GRID LOCATION", "", "Grid"],
    ["GRID REF.", "", "Grid"],
    ["LOCATION", "", "Grid"],
    ["X GRID", "", "Line 1"],
    ["GRID LINE", "", "Grid or Line 1 or Line 2"],
    ["COLUMN", "", "Grid or Mark or note"],
    ["COLUMN MARK", "", "Mark or note"],
    ["X", "OFFSET", "Offset X"],
    ["OFFSET", "", "Offset X or Offset Y or note"],
    ["OFFSET (E)", "", "Offset X"],
    ["X", "", "Offset X or Near X or note"],
    ["ROTATION", "", "Turn"],
    ["T.O.C.", "", "T.O.C."],
    ["TOP OF CONC. EL.", "", "T.O.C."],
    ["TOP OF PIER", "ELEVATIONS", "T.O.C."],
    ["U/S OF BASE PLATE", "", "B.O.P."],
    ["BOTTOM OF PLATE", "ELEVATIONS", "B.O.P."],
    ["ELEVATION", "", "T.O.C. or B.O.P. or note"],
    ["REV", "", ""],
    ["ROD DIA", "", ""],
    ["TOP OF STEEL", "", ""],
    ["EASTING", "", ""],
  ])('%s under "%s": %s', (words, group, meanings) => {
    expect(placementMeaningsOf(words, group).join(" or ")).toBe(meanings);
  });

  it.each(PLACEMENT_HEADINGS.map(({ name }) => name))("%s is itself", (name) => {
    expect(placementMeaningsOf(name, "")).toEqual([name]);
  });
});

describe("a placement list", () => {
  it("leaves out what it does not know, in one warning", () => {
    const { columns, findings } = settle(["MARK", "GRID", "REV", "ROD DIA"], [["B1", "A-1", "2", "1"]]);
    expect(columns.map(({ as }) => as)).toEqual(["value", "value", "left out", "left out"]);
    expect(findings.map(({ severity, message }) => [severity, message])).toEqual([
      ["warning", "2 headings are not known and left out: REV, ROD DIA"],
    ]);
  });

  it("takes COLUMN for the grid where no other column gives it", () => {
    expect(settle(["COLUMN", "BASE MARK"], [["A-1", "B1"]]).columns[0]?.heading?.name).toBe("Grid");
    expect(settle(["COLUMN", "BASE MARK", "GRID"], [["C1", "B1", "A-1"]]).columns[0]?.as).toBe("note");
  });

  it("asks for an elevation that may be either, and takes the answer", () => {
    const rows = [["B1", "A-1", "99'-6\""]];
    const asked = settle(["MARK", "GRID", "ELEV."], rows);
    expect(asked.questions.map(({ choices }) => choices.map(({ line }) => line))).toEqual([
      ['columns: { "ELEV.": T.O.C. }', 'columns: { "ELEV.": B.O.P. }', 'columns: { "ELEV.": note }'],
    ]);
    expect(settle(["MARK", "GRID", "ELEV."], rows, { "ELEV.": "T.O.C." }).columns[2]?.heading?.name).toBe("T.O.C.");
  });
});

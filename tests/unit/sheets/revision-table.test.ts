import { describe, expect, it } from "vitest";
import type { Job } from "../../../src/job/model/job.js";
import { marksIn, revisionTable } from "../../../src/sheets/revision-table.js";
import { baseFixture, jobFixture } from "../../fixture.js";

const base = (mark: string, template: string) =>
  baseFixture({ mark, template: { ...baseFixture().template, mark: template } });
const bases = [base("B9", "T9"), base("B10", "T10"), base("B1", "T1")];

const revision = (letter: string, text: string, marks: readonly string[] | null = null) => ({
  revision: letter,
  date: "2026-11-24",
  text,
  marks,
});

const rowsFor = (mark: string, revisions: Job["revisions"], changes: Partial<Job> = {}) => {
  const own = bases.find((each) => each.mark === mark);
  if (own === undefined) throw new Error(mark);
  return revisionTable({ job: jobFixture({ bases, revisions, ...changes }), base: own }, 4).rows;
};

describe("the revision table of a template's sheet", () => {
  const first = revision("A", "First issue for approval");
  const braces = revision("B", "Brace bases B9 and B10 to 8 rods; released");

  it("has the rows that touch its marks, and says where the last one does not", () => {
    expect(rowsFor("B9", [first, braces]).map(([, , text]) => text)).toEqual([first.text, braces.text]);
    expect(rowsFor("B1", [first, braces])).toEqual([
      ["A", "2026-11-24", "First issue for approval"],
      ["B", "2026-11-24", "NO CHANGE TO THIS MARK"],
    ]);
    const later = revision("C", "Grout of B1 to 2 in");
    expect(rowsFor("B1", [first, braces, later]).map(([letter]) => letter)).toEqual(["A", "C"]);
  });

  it("takes the marks that a row lists over those of its text, whatever their capitals", () => {
    const listed = revision("B", "Rods as B9", ["b1"]);
    expect(rowsFor("B1", [listed])[0]?.[2]).toBe("Rods as B9");
    expect(rowsFor("B9", [listed])[0]?.[2]).toBe("NO CHANGE TO THIS MARK");
    expect(rowsFor("B9", [revision("B", "Thicker plate", ["T9"])])[0]?.[2]).toBe("Thicker plate");
    expect(rowsFor("B9", [revision("B", "Front page alone", [])])[0]?.[2]).toBe("NO CHANGE TO THIS MARK");
  });

  it("is that of the job where it lists none, by its status: never of the sheet, which may be held", () => {
    expect(rowsFor("B1", [])).toEqual([["B", "2026-11-24", "JOB RELEASED"]]);
    expect(rowsFor("B1", [], { status: "for approval" })[0]?.[2]).toBe("JOB FOR APPROVAL");
  });

  it("has every row on a plan, whatever it names", () => {
    const table = revisionTable({ job: jobFixture({ bases, revisions: [first, braces] }) }, 4);
    expect(table.rows.map(([, , text]) => text)).toEqual([first.text, braces.text]);
  });

  it("goes on in the next line, and counts the earlier ones", () => {
    const long = revision(
      "B",
      "Rods of the two bases on line D made longer by 3 in, and their projection raised as well",
    );
    const table = revisionTable({ job: jobFixture({ bases, revisions: [first, first, first, first, long] }) }, 4);
    const text = table.rows.map(([, , words]) => words).join(" ");
    expect(text).toContain(long.text);
    expect(table.rows.at(-1)?.slice(0, 2)).toEqual(["", ""]);
    expect(table.foot).toEqual(["+ 1 EARLIER"]);
  });
});

describe("marks in the text of a revision", () => {
  const marks = ["B1", "B9", "B10", "B-2", "12", "A", "COLUMN-EAST-07"];

  it.each([
    ["Brace bases B9 and B10 to 8 rods", ["B9", "B10"]],
    ["Rods A1 to 1-1/4 of B1", ["B1"]],
    ["COLUMN-EAST-07 raised", ["COLUMN-EAST-07"]],
    ["B-2: grout", ["B-2"]],
    ["B1, B9.", ["B1", "B9"]],
  ])("%s", (text, found) => {
    expect(marksIn(text, marks)).toEqual(found);
  });

  it.each([
    "First issue for approval",
    "12 rods added",
    "A new shop file",
    "B9 to B12 raised",
    "B7 through B9 raised",
    "B1-B10",
    "B1, B9 and all others",
    "B100 raised",
    "Rod B1 moved",
  ])("of which it cannot be sure are none: %s", (text) => {
    expect(marksIn(text, marks)).toBeNull();
  });
});

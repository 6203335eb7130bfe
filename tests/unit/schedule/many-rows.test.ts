/** Sheets of very many rows, and of very many faults, are told in a few lines, and soon. */
import { expect, it } from "vitest";
import { findTables } from "../../../src/schedule/find-tables.js";
import { faultsOf } from "../job/files.js";
import { knownHeading, sheetOf } from "./drawn-sheet.js";

const JOB = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
const HEADINGS = "Mark,Rod dia,X,Y,Template thk,Column";
const sheet = (count: number, row: (index: number) => string) => ({
  "s.csv": [HEADINGS, ...Array.from({ length: count }, (_, index) => row(index))].join("\n"),
});

it("of more than 20,000 rows is refused; blank rows do not count", () => {
  const told = faultsOf(
    JOB,
    sheet(20_001, (i) => `B${i},1,8,8,1/4`),
  );
  expect(told).toContain(
    "s.csv:20002:1: the sheet has more than 20000 rows that hold something; at most 20000 are read",
  );
  const blank = faultsOf(
    JOB,
    sheet(30_000, (i) => (i === 29_999 ? "B1,1,8,8,1/4" : ",,,,")),
  );
  expect(blank.filter((text) => text.includes("rows that hold something"))).toEqual([]);
});

it.each([
  [999, []],
  [1000, ["s.csv A1: 1000 and more faults: what stands further below is not read"]],
  [5000, ["s.csv A1: 1000 and more faults: what stands further below is not read"]],
])("with %d faulty cells", (count, more) => {
  const told = faultsOf(
    JOB,
    sheet(count, (i) => `B${i},1,8,8,1/4,purple`),
  );
  expect(told.filter((text) => text.includes(" Column: "))).toHaveLength(Math.min(count, 1000));
  expect(told.filter((text) => text.includes("further below"))).toEqual(more);
});

it("rows without a mark go to the base above them, however many there are", () => {
  const told = faultsOf(
    JOB,
    sheet(20_000, (i) => (i === 0 ? "B1,1,8,8,1/4" : ",1,8,8,")),
  );
  expect(told.length).toBeGreaterThan(0);
  expect(told.length).toBeLessThan(20);
});

const LONG = 20_000;

it.each([
  ["in every row", () => "column"],
  ["in every other row", (i: number) => (i % 2 === 0 ? "column" : "mast")],
  ["in every other row, nothing between", (i: number) => (i % 2 === 0 ? "type" : "")],
])("a word that may head the marks stands %s", (_, word) => {
  const rows = Array.from({ length: LONG }, (__, i) => [`B${i}`, word(i), "3/4", "", "12"]);
  const tables = findTables(sheetOf([["Mark", "Member", "Rod dia", "Pattern", "X"], ...rows]), knownHeading);
  expect(tables.map(({ upperLeft, rows: found }) => [upperLeft, found.length])).toEqual([["A1", LONG]]);
});

it.each([
  ["", 0],
  ["SAME AS B5999", 6000],
])("6,000 bases repeat each the one above as a whole, the first is %j", (first, circles) => {
  const cells = (i: number) => (i > 0 ? `SAME AS B${i - 1},,,,` : first === "" ? "1,8,8,1/4," : `${first},,,,`);
  const told = faultsOf(
    JOB,
    sheet(6000, (i) => `B${i},${cells(i)}`),
  );
  expect(told.filter((text) => text.includes("leads back to itself"))).toHaveLength(circles);
});

it("a table whose marks have an unsure heading is found below many rows that hold that word", () => {
  const rows = Array.from({ length: 40 }, (_, i) => [`${i}`, "item", "see letter"]);
  const table = [
    ["Item", "Rod dia", "Grade", "X", "Y"],
    ["B1", "3/4", "36", "8", "8"],
  ];
  const [found] = findTables(sheetOf([...rows, [], ...table]), knownHeading);
  expect(found?.upperLeft).toBe("A42");
});

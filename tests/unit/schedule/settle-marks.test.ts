/** Marks that may name one base or several, through the whole reading of a sheet. Invented sheets. */
import { expect, it } from "vitest";
import { readSheetAsSent } from "../../../src/tasks/read.js";

/** Marks as they are taken, by row, and cells that are asked about. */
function marksOf(...marks: readonly string[]) {
  const text = ["MARK|QTY|ROD DIA|X|Y|TEMPLATE THK", ...marks.map((mark) => `${mark}|1|1|10|10|1/4`)].join("\n");
  const read = readSheetAsSent({ name: "s.txt", file: text, job: null, unit: "in" });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  const { entries, questions } = read.value.form;
  return {
    taken: entries.filter(({ key, givenBy }) => key === "mark" && givenBy !== "asked").map(({ value }) => value),
    asked: questions.flatMap(({ cells }) => cells),
    bases: new Set(entries.flatMap(({ mark }) => (mark === "" ? [] : mark.split(", ")))).size,
  };
}

it("a mark that may be a range is asked about, and stands in the table as it is written", () =>
  expect(marksOf("B1-3", "B5")).toEqual({ taken: ["B5"], asked: ["A2"], bases: 2 }));

it("marks of which two would be ranges with a base in common are marks", () =>
  expect(marksOf("1-2", "1-3", "2-4", "C1")).toEqual({ taken: ["1-2", "1-3", "2-4", "C1"], asked: [], bases: 4 }));

it("a range that holds another row's mark may be a slip", () => expect(marksOf("B1-3", "B2").asked).toEqual(["A2"]));

it("of ranges without a base in common nothing is proved", () =>
  expect(marksOf("B1-3", "B4-6").asked).toEqual(["A2", "A3"]));

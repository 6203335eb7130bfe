/** Headings in quotation signs: the sign that shuts them is no inch or foot. Invented sheets. */
import { expect, it } from "vitest";
import { read } from "../../untidy/read-sheet.js";
import { drawSheet } from "./drawn-sheet.js";

it.each(["'G1'", '"G1"', "\u201cG1\u201d"])("%s has no unit, and its offered answer is taken", (heading) => {
  const sheet = drawSheet([`MARK|RODS|${heading}|Y`, 'B1|(4) 1"|14|10']);
  const [question] = read(sheet).readAs.questions;
  expect(question?.choices[0]?.line).toBe(`columns: { ${JSON.stringify(heading)}: X }`);
  const { lines, questions } = read(sheet, "in", { columns: { [heading]: "X" } }).readAs;
  expect(questions).toEqual([]);
  expect(lines.filter(({ key }) => key === "pattern.x").map(({ taken, unit }) => [taken, unit])).toEqual([
    ["14", "in"],
  ]);
});

it("a spacing E.W. may be each way: the answer square gives both", () => {
  const sheet = drawSheet(["MARK|RODS|ROD C/C E.W.", 'B1|(4) 1"|10']);
  const { lines, questions } = read(sheet, "in", { columns: { "ROD C/C E.W.": "square" } }).readAs;
  expect(questions).toEqual([]);
  expect(lines.flatMap(({ key, taken }) => (/^pattern\.[xy]$/.test(key) ? [taken] : []))).toEqual(["10", "10"]);
});

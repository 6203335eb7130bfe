/** A file of a hundred thousand headings is told in a screen, and soon. */
import { expect, it } from "vitest";
import { faultsOf } from "../job/files.js";

const JOB = 'job: { number: "1" }\nunits: in\nschedule: s.csv\n';
const named = (count: number) => Array.from({ length: count }, (_, i) => `Thing ${i}`).join(",");

it.each([
  [50, []],
  [51, ["s.csv A1: 1 more headings are not known"]],
  [20_000, ["s.csv A1: 19950 more headings are not known"]],
])("%d unknown headings", (count, more) => {
  const told = faultsOf(JOB, { "s.csv": `Mark,Rod dia,X,Y,Template thk,${named(count)}\nB1,1,8,8,1/4` });
  const unknown = told.filter((text) => text.includes("is not a known heading"));
  expect(unknown).toHaveLength(50);
  expect(told.filter((text) => text.includes("more headings"))).toEqual(more);
});

it("columns without a heading likewise", () => {
  const cells = Array.from({ length: 80 }, () => "x").join(",");
  const told = faultsOf(JOB, { "s.csv": `Mark,Rod dia,X,Y,Template thk\nB1,1,8,8,1/4,${cells}` });
  expect(told.filter((text) => text.includes("stands in a column without a heading"))).toHaveLength(50);
  expect(told).toContain("s.csv A1: 30 more columns without a heading hold something");
});

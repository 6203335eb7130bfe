/** A mark on two rows of a sheet is told when it is read, with both cells; a job that has it twice is held row against row. */
import { expect, it } from "vitest";
import { formatFinding } from "../../../../src/diagnostics/finding.js";
import { readSheetAsSent } from "../../../../src/tasks/read.js";
import { faultsOf } from "../../job/files.js";

const HEADINGS = "Mark,Rod dia,Grade,X,Y,Template thk,Template mark";
const rows = (second: string, template = "T1") =>
  `${HEADINGS}\nB1,3/4,36,8,8,1/4,T1\n${second},1,36,8,8,1/4,${template}\n`;

function read(sheet: string) {
  const reading = readSheetAsSent({ name: "s.csv", file: sheet, job: null, unit: "in" });
  if (!reading.ok) throw new Error("not read");
  return reading.value;
}

it.each([
  [rows("B1"), 's.csv A3 Mark: the mark "B1" is used twice; first at s.csv A2; every base and template has its own'],
  [rows("b1"), 's.csv A3 Mark: the mark "b1" is used twice; first at s.csv A2; every base and template has its own'],
])("in %j", (sheet, told) => {
  const { isUnderstood, findings } = read(sheet);
  expect(findings.map(formatFinding).map((text) => text.split("\n")[0])).toEqual([told]);
  expect(isUnderstood).toBe(false);
});

it("one template for two bases is no mark that is used twice", () => {
  expect(read(rows("B2"))).toMatchObject({ isUnderstood: true, findings: [] });
});

it("the written job names both rows, each with its own values", () => {
  const base = (diameter: string) =>
    `  - mark: B1\n    rods: { diameter: ${diameter}, grade: 36 }\n    pattern: { kind: rectangle, x: 8, y: 8 }\n    template: { thickness: 1/4, mark: T1 }\n`;
  const job = `job: { number: "1" }\nunits: in\nreadFrom: { file: s.csv }\nbases:\n${base("3/4")}${base("1")}`;
  expect(faultsOf(job, { "s.csv": rows("B1") })).toEqual([
    's.csv A3 Mark: the mark "B1" is used twice; first at s.csv A2; every base and template has its own',
  ]);
});

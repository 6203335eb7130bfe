/** Every line that a question offers answers it, uncommented in the job file as it stands there. Invented sheets. */
import { describe, expect, it } from "vitest";
import { answersOf } from "../../../../src/formats/answer-lines.js";
import { yamlScalar } from "../../../../src/formats/source-yaml.js";
import type { SourceNode } from "../../../../src/readers/source.js";
import { findNode } from "../../../../src/readers/source.js";
import { readYaml } from "../../../../src/readers/yaml.js";
import type { SheetReading } from "../../../../src/tasks/read.js";
import { readSheetAsSent } from "../../../../src/tasks/read.js";
import { writeNewJob } from "../../../../src/tasks/read-job.js";

const decoder = new TextDecoder();

const SHEETS: readonly (readonly [string, string])[] = [
  [
    "a pattern in one column, some of them circles",
    'MARK|QTY|NO. OF RODS|ROD DIA|ROD SPACING\nB1|2|4|1"|12"x12"\nB2|1|8|1"|24"Ø B.C.\nB3|1|8|1"|DO',
  ],
  ["a circle with its number of rods", 'MARK|QTY|ROD DIA|PATTERN\nB1|1|1"|(8) ON 24" B.C.'],
  ["a bolt circle of its own column", "MARK|QTY|ROD DIA|NO. OF RODS|B.C.\nB1|1|1|8|24\nB2|2|1|6|SAME AS B1"],
  ["a spacing that is open", "MARK|QTY|NO. OF RODS|ROD DIA|ROD SPACING\nB1|1|6|3/4|12x10\nB2|1|4|1|10 x 10"],
  ["a number that is open", "MARK|QTY|ROD DIA|X|Y\nB1|4|1|12|10\nB2|4|1|12|10"],
  ["six rods and two gauges", "MARK|QTY|NO. OF RODS|ROD DIA|X|Y\nB1|1|6|3/4|12|10"],
  ["eight rods, pitches", 'MARK|QTY|NO. OF RODS|ROD DIA|PITCH X|PITCH Y\nB1|1|8|3/4|6"|6"'],
  ["a hole without a group", "MARK|QTY|ROD DIA|X|Y|HOLE\nB1|4|1|12|10|1-1/16\nB2|3|1|12|10|1-1/16"],
  ["a count of several marks", "MARK|QTY|ROD DIA|X|Y\nB1, B2|2|1|12|10\nB3-B5|6|1|12|10"],
  ["width and length", "MARK|QTY|ROD DIA|X|Y|PLATE W|PLATE L\nB1|2|1|10|10|18|16\nB2|2|1|10|10|16|18"],
  [
    "a bare length, height and depth",
    "MARK|QTY|ROD DIA|X|Y|LENGTH|HEIGHT|DEPTH|THK\nB1|2|1|10|10|30|9|18|1\nB2|2|1|10|10|40|9|18|1",
  ],
  ["marks that may be a range", "MARK|QTY|ROD DIA|X|Y\nB1-3|1|1|10|10\nB5|2|1|10|10\nB7,9|2|1|10|10"],
];

function read(text: string, job: string | null): SheetReading {
  const node = job === null ? null : readYaml(job, "job.yaml");
  if (node !== null && !node.ok) throw new Error(JSON.stringify(node.findings));
  const reading = readSheetAsSent({
    name: "s.txt",
    file: text,
    job: node?.value ?? null,
    unit: job === null ? "in" : null,
  });
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value;
}

function textAt(base: SourceNode, ...path: readonly string[]): string | null {
  const node = findNode(base, ...path);
  return node?.kind === "scalar" ? node.text : null;
}

const headOf = (reading: SheetReading): string =>
  decoder.decode(writeNewJob({ name: "job.yaml", schema: null, file: "s.txt" }, reading));

/** The head with the lines of one choice uncommented. */
function answered(head: string, question: number, line: string): string {
  const lines = head.split("\n");
  const start = lines.findIndex((each) => each.trimStart().startsWith(`# ${question + 1}. `));
  for (const { path, value } of answersOf(line)) {
    const key = `# ${yamlScalar(path.at(-1) ?? "")}: ${value?.kind === "scalar" ? yamlScalar(value.text) : ""}`;
    const at = lines.findIndex(
      (each, index) => index > start && `${each.trim()} `.startsWith(`${key} `.replace(/ +$/, " ")),
    );
    expect(at, `${key} under question ${question + 1} of\n${head}`).toBeGreaterThan(start);
    lines[at] = (lines[at] ?? "").replace("# ", "");
  }
  return lines.join("\n");
}

const isWhole = (line: string): boolean =>
  !/\b(?:TEXT|MARK)\b/.test(line) && answersOf(line).every(({ value }) => value !== null);

describe.each(SHEETS)("%s", (_, text) => {
  const first = read(text, null);
  const head = headOf(first);
  const choices = first.form.questions.flatMap(({ text: asked, cells, choices: offered }, index) =>
    offered.filter(({ line }) => isWhole(line)).map(({ line }) => ({ line, index, asked, cells })),
  );
  it("asks", () => expect(choices.length).toBeGreaterThan(0));
  it.each(choices)("$line answers", ({ line, index, asked, cells }) => {
    const again = read(text, answered(head, index, line));
    expect(again.form.questions.map((question) => `${question.text} ${question.cells}`)).not.toContain(
      `${asked} ${cells}`,
    );
    const errors = again.findings.filter(
      ({ severity, at }) => severity === "error" && (at.cell === undefined || cells.includes(at.cell)),
    );
    expect(errors).toEqual([]);
  });
});

it.each(['24"Ø B.C.', "24 BCD", '(8) ON 24" B.C.', "600 PCD", '8 RODS ON 24" BOLT CIRCLE'])(
  "%s beside squares leaves nothing open of the heading PATTERN or SPACING",
  (circle) => {
    for (const heading of ["PATTERN", "ROD PATTERN", "ROD SPACING"]) {
      const reading = read(`MARK|QTY|NO. OF RODS|ROD DIA|${heading}\nB1|2|4|1|12x12\nB2|1|8|1|${circle}`, null);
      expect(reading.form.questions.map(({ cells }) => cells.join())).toEqual(["E3", ""]);
    }
  },
);

it.each([
  ['24"Ø B.C.', '24"'],
  ["24 BCD", "24"],
  ['24" DIA BOLT CIRCLE', '24"'],
  ["600 mm P.C.D.", "600 mm"],
  ["24", "24"],
  ['24"Ø', '24"'],
])("%s under B.C. is the bolt circle", (written, diameter) => {
  const reading = read(`MARK|QTY|ROD DIA|NO. OF RODS|B.C.|START|TEMPLATE THK\nB1|2|1|8|${written}|straddle|1/4`, null);
  expect(reading.findings).toEqual([]);
  expect(reading.bases.map((base) => textAt(base, "pattern", "diameter"))).toEqual([diameter]);
});

it.each(["12x12", "12 x 10", "24 SQ", '24" O.C.'])("%s under B.C. is none, and a fault of its cell", (written) => {
  const reading = read(`MARK|QTY|ROD DIA|NO. OF RODS|B.C.|START|TEMPLATE THK\nB1|2|1|8|${written}|straddle|1/4`, null);
  expect(reading.findings.map(({ code, at }) => `${code} ${at.cell}`)).toEqual(["cell-fault E2"]);
});

describe("a cell at fault", () => {
  const text = "MARK|QTY|ROD DIA|X|Y|TEMPLATE THK\nB1|1|11/4|10|10|1/4\nB2|1|11/4|10|8|1/4\nB1|2|1|9|9?|1/4";
  const head = headOf(read(text, null));
  it("has a line for what is meant, each cause once", () => {
    expect(head).toContain('    # 1. at fault: Rod dia: "11/4" has the improper fraction');
    expect(head).toContain("\n    # C2: TEXT   # what is meant in the cell\n    # C3: TEXT\n    # 2. at fault: Y: ");
  });
  it("is answered there, a mark that stands twice as well", () => {
    const filled = ["C2: 1-1/4", "C3: 1-1/4", "E4: 9", "A4: B3"].reduce(
      (all, line) => all.replace(`# ${line.slice(0, 2)}: TEXT`, line),
      head,
    );
    expect(read(text, filled)).toMatchObject({ isUnderstood: true, findings: [] });
  });
});

describe("two columns of the same words that differ", () => {
  const text = "MARK|QTY|ROD DIA|ROD DIA|X|Y|TEMPLATE THK\nB1|1|1|3/4|10|10|1/4";
  const first = read(text, null);
  it("are named by their letters in every line, and asked once", () => {
    const lines = first.form.questions.flatMap(({ choices }) => choices.map(({ line }) => line));
    expect(lines).toEqual(['columns: { "D": left out }', 'columns: { "C": left out }']);
    expect(first.findings.map(({ hint }) => hint)).toEqual(['add to the job: columns: { "D": left out }']);
    expect(headOf(first)).not.toContain("TEXT");
  });
  it.each(["C", "D"])("%s left out answers", (column) => {
    const job = answered(headOf(first), 0, `columns: { ${column}: left out }`);
    expect(read(text, job)).toMatchObject({ isUnderstood: true, findings: [] });
  });
});

it("a sheet whose marks are left out has no line for a heading's cell, where nothing can be said", () => {
  const job = "units: in\nreadFrom: { file: s.txt, columns: { MARK: note } }";
  const reading = read("MARK|QTY|ROD DIA|X|Y|TEMPLATE THK\nB1|1|1|10|10|1/4\nB2|2|1|8|8|1/4", job);
  expect(reading.findings.map(({ code }) => code)).toContain("no-marks");
  expect(headOf(reading)).not.toMatch(/# A1:/);
});

it("a line that is not filled in answers nothing", () => {
  const text = "MARK|QTY|ROD DIA|X|Y|GRADE|TEMPLATE THK\nB1|1|1|10|10|SEE NOTE 2|1/4\n\nNOTES:\n2. GR 55";
  const head = headOf(read(text, null)).replace("# 2: TEXT", "2: TEXT");
  const reading = read(text, head);
  expect(reading.isUnderstood).toBe(false);
  expect(reading.findings.map(({ at, message }) => [at.path, message])).toEqual([
    ["readFrom.notes.2", expect.stringContaining('"TEXT" stands where the answer belongs')],
  ]);
});

/// <reference types="vite/client" />
/** What the page reads of a file, asks of it and makes of it, against the program's `read` with the same file. Invented data. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { toPlain } from "../../src/job/document.js";
import { findNode } from "../../src/readers/source.js";
import { readYaml } from "../../src/readers/yaml.js";
import type { WrittenAnswer } from "../../src/tasks/answered-sheet.js";
import { answersInLine } from "../../src/tasks/answered-sheet.js";
import { readSchedule } from "../../src/web/engine/read-work.js";
import { Refused } from "../../src/web/engine/refused.js";
import type { ReadAnswer } from "../../src/web/engine/task-model.js";
import { sheetData, writeBook } from "../fuzz/workbooks.js";
import { newFolder, runProgram } from "./program.js";

let folder: string;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const TITLE = { number: "26-1", title: 'Depot: # "north"', revision: "B" };

const read = (name: string, content: Uint8Array, answers: readonly WrittenAnswer[], isWanted = false) =>
  readSchedule({ name, content, answers, jobName: "job.yaml", into: null, title: isWanted ? TITLE : null }, () => {});

const lines = (...all: readonly string[]): Uint8Array => new TextEncoder().encode(`${all.join("\n")}\n`);
const sample = (path: string): Uint8Array => readFileSync(new URL(`../../samples/${path}`, import.meta.url));

/** Each with the words that are filled in, by the last key of the answer. */
const SHEETS: readonly (readonly [string, Uint8Array, Readonly<Record<string, string>>])[] = [
  [
    "untidy.csv",
    lines(
      "ANCHOR ROD SCHEDULE - INVENTED HALL",
      "MARK,NO. OF RODS,ROD DIA,EMBED,GAGE,B.C.,BASE PL,REMARKS",
      'B1,4,"3/4""",12,"9""",,14x14x1,',
      "B2,4,1,18,12 x 10,,18x16 PL 1 1/2,=SUM(A1)",
      "B3-B5,DO,DO,DO,DO,,DO,",
      "B6,8,1,24,,24,DIA 30 x 1-1/2,<img src=x onerror=alert(1)>",
      ",,,,,,,",
      "NOTES:",
      "1. RODS ARE SET BY TEMPLATE.",
    ),
    { D3: "9 SQ", E3: "9 SQ" },
  ],
  ["metric.tsv", lines("MARK\tQTY\tROD DIA\tPATTERN", "F1\t2\t24\t300 x 240", "F2\t1\t30\t400 x 300"), {}],
  ["commas.csv", lines("MARK;ROD DIA;X;Y", "F1;M24;300,5;240", "F2;M30;450,0;350"), {}],
  ["signs.txt", lines("MARK | ROD DIA | X | Y", "B1 | ¾ | 9½ | 1'-0 1/2\"", "B2 | 1¼ | 10″ | 12"), {}],
  ["no-rods.csv", lines("MARK,X,Y", 'B1,"9""","9"""'), { diameter: "3/4" }],
  ["across.csv", lines("MARK,B1,B2", "ROD DIA,3/4,1", "X,9,12", "Y,9,10"), {}],
  ["faults.csv", lines("MARK,ROD DIA,X,Y", 'B1,"3/4""",abc,9', 'B2,"3/4""",9,??'), { C2: "9", D3: "10" }],
  [
    "two.xlsx",
    writeBook([
      {
        name: "North",
        xml: sheetData([
          ["MARK", "ROD DIA", "X", "Y"],
          ["B1", '3/4"', "9", "9"],
        ]),
      },
      {
        name: "South",
        xml: sheetData([
          ["MARK", "ROD DIA", "X", "Y"],
          ["C1", '1"', "12", "10"],
        ]),
      },
    ]),
    {},
  ],
  ["schedule.xlsx", sample("packing-hall/schedule.xlsx"), {}],
];

const REFUSED: readonly (readonly [string, Uint8Array])[] = [
  ["empty.csv", lines()],
  ["print.pdf", lines("%PDF-1.7")],
  ["photo.jpg", new Uint8Array([0xff, 0xd8, 0xff, 0xe0])],
  ["old.xls", new Uint8Array([0xd0, 0xcf, 0x11, 0xe0])],
  ["broken.xlsx", lines("no workbook")],
  ["long.csv", lines("MARK,ROD DIA,X,Y", `B1,3/4,9,${"9".repeat(100_000)}`)],
];

/** Answers question by question, the first choice of each. */
async function answered(name: string, content: Uint8Array, words: Readonly<Record<string, string>>) {
  let answers: readonly WrittenAnswer[] = [];
  for (let turn = 0; turn < 12; turn += 1) {
    const found = await read(name, content, answers, true);
    const [question] = found.questions;
    if (question === undefined) return found;
    const given = answersInLine(question.choices[0]?.line ?? "");
    const of = (key: string): string => words[key] ?? (found.unit === "mm" ? "6" : "1/4");
    answers = [...answers, ...given.map(({ path, text }) => ({ path, text: text ?? of(path.at(-1) ?? "") }))];
  }
  throw new Error("questions without end");
}

function basesOf(job: string): unknown {
  const root = readYaml(job, "job.yaml");
  const bases = root.ok ? findNode(root.value, "bases") : undefined;
  if (bases === undefined) throw new Error(job);
  return toPlain(bases);
}

describe("a file that the page and the program read", () => {
  it.each(SHEETS)("%s: the same is taken, asked and told", async (name, content) => {
    writeFileSync(join(folder, name), content);
    const program = JSON.parse((await runProgram(folder, ["read", name, "--json"])).stdout);
    const page: ReadAnswer = await read(name, content, []);
    expect(page.unit).toBe(program.unit);
    expect(page.form.questions).toEqual(program.questions);
    expect(page.findings).toEqual(program.findings);
    expect(page.isUnderstood).toBe(program.understood);
    if (page.unit !== null) expect(page.form.entries).toEqual(program.lines);
    // what the program calls a fault of a cell, the page asks
    const faults = page.findings.filter(({ severity, at }) => severity === "error" && at.cell !== undefined);
    expect(page.questions.length > page.form.questions.length).toBe(faults.length > 0);
  });

  it.each(SHEETS)("%s: the page's job is what the program writes of it", async (name, content, words) => {
    const { job, baseCount } = await answered(name, content, words);
    if (job === null) throw new Error("no job");
    writeFileSync(join(folder, name), content);
    writeFileSync(join(folder, "job.yaml"), job);
    const again = await runProgram(folder, ["read", "job.yaml", "--out", "job.yaml"]);
    expect([again.status, again.stderr]).toEqual([0, ""]);
    expect(readFileSync(join(folder, "job.yaml"), "utf8")).toBe(job);
    expect(basesOf(job)).toHaveLength(baseCount);
    const checked = await runProgram(folder, ["check", "job.yaml"]);
    expect(checked.stderr).toBe("");
    expect(checked.stdout).toContain("26-1");
  });

  it.each(REFUSED)("%s: is refused with the same words", async (name, content) => {
    writeFileSync(join(folder, name), content);
    const program = await runProgram(folder, ["read", name]);
    const page = await read(name, content, []).then(
      () => null,
      (error: unknown) => error,
    );
    expect(page).toBeInstanceOf(Refused);
    if (page instanceof Refused) expect(program.stderr.split("\n").slice(0, page.why.length)).toEqual(page.why);
  });

  it("says of a second row of rods what it lacks, and in which cell", async () => {
    const rows = lines("MARK,NO. OF RODS,ROD DIA,X,Y,TEMPLATE THK", 'B1,4,"3/4""",9,9,1/4', ',4,"1""",18,,');
    const { questions, findings } = await read("s.csv", rows, []);
    expect(questions.map(({ text, cells }) => [text, cells])).toEqual([
      [expect.stringMatching(/^at fault: Y: is required; allowed is a length/), ["E3"]],
    ]);
    expect(findings.map(({ at }) => [at.cell, at.path])).toEqual([["E3", "row 3 Y"]]);
  });

  it("reads a newer sheet into the page's job, by the answers that the job holds", async () => {
    const [name, content, words] = ["s.csv", lines("MARK,ROD DIA,X,Y", 'B1,"3/4""",abc,9'), { C2: "9" }] as const;
    const { job } = await answered(name, content, words);
    if (job === null) throw new Error("no job");
    const newer = lines("MARK,ROD DIA,X,Y", 'B1,"3/4""",abc,9', 'B2,"1""",12,10');
    const ask = { name, content: newer, answers: [], jobName: "job.yaml", into: job, title: TITLE } as const;
    const again = await readSchedule(ask, () => {});
    expect([again.questions, again.overwrites, again.baseCount]).toEqual([[], false, 2]);
    writeFileSync(join(folder, name), newer);
    writeFileSync(join(folder, "job.yaml"), job);
    expect((await runProgram(folder, ["read", "job.yaml", "--out", "job.yaml"])).status).toBe(0);
    expect(again.job).toBe(readFileSync(join(folder, "job.yaml"), "utf8"));
    const edited = job.replace("x: 9", "x: 9-1/2");
    expect(edited).not.toBe(job);
    expect((await readSchedule({ ...ask, into: edited }, () => {})).overwrites).toBe(true);
  });
});

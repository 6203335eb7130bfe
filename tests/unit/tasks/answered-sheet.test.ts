/** A sheet that is asked about: its lines of answer are put where the job has them, and the job that comes of it gives the same bases. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { toPlain } from "../../../src/job/document.js";
import { SHOP_FOLDER } from "../../../src/job/index.js";
import { findNode } from "../../../src/readers/source.js";
import { readYaml } from "../../../src/readers/yaml.js";
import type { WrittenAnswer } from "../../../src/tasks/answered-sheet.js";
import { answersInLine, readAnswered, withAnswers, writeAnsweredJob } from "../../../src/tasks/answered-sheet.js";
import { openJob } from "../../../src/tasks/open.js";
import { openQuestions } from "../../../src/tasks/read-job.js";

const shop = readFileSync(new URL("../../../templates/shops/plasma.yaml", import.meta.url), "utf8");

const SHEET = [
  "MARK,NO. OF RODS,ROD DIA,GAGE,B.C.",
  'B1,4,"3/4""","9""",',
  'B2,4,"1""","12 x 10",',
  'B3,8,"1""",,24',
].join("\n");

function answered(content: string, answers: readonly WrittenAnswer[]) {
  const read = readAnswered({ name: "pasted.csv", file: content, answers });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

/** The first line of every question that needs no words of a person's, and words for the others. */
function answerAll(content: string, words: Readonly<Record<string, string>>) {
  let answers: readonly WrittenAnswer[] = [];
  for (let turn = 0; turn < 12; turn += 1) {
    const reading = answered(content, answers);
    const [question] = openQuestions(reading);
    if (question === undefined) return { reading, answers };
    const given = answersInLine(question.choices[0]?.line ?? "");
    answers = [...answers, ...given.map(({ path, text }) => ({ path, text: text ?? words[path.at(-1) ?? ""] ?? "?" }))];
  }
  throw new Error("questions without end");
}

describe("a sheet with its answers", () => {
  it("is understood once each question has its line, and its job opens to the bases that were read", () => {
    const { reading, answers } = answerAll(SHEET, { D2: "9 SQ", thickness: "1/4" });
    expect(answers.length).toBeGreaterThan(1);
    expect(reading.isUnderstood).toBe(true);
    const title = { number: 'A "7"', title: "Hall: north # 2", revision: "0" };
    const job = writeAnsweredJob({ name: "pasted.csv", file: SHEET, answers, jobName: "job.yaml", title }, reading);
    const files = new Map<string, string | Uint8Array>([
      ["job.yaml", job],
      ["pasted.csv", SHEET],
      [`${SHOP_FOLDER}plasma.yaml`, shop],
    ]);
    const root = readYaml(job, "job.yaml");
    if (!root.ok) throw new Error(new TextDecoder().decode(job));
    expect(toPlain(findNode(root.value, "job") ?? root.value)).toMatchObject(title);
    expect(toPlain(findNode(root.value, "readFrom") ?? root.value)).toMatchObject({ file: "pasted.csv" });
    const opened = openJob({ job: "job.yaml", files: files }, { date: "2026-01-15" });
    if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
    expect(opened.value.bases.map(({ base }) => base.mark)).toEqual(["B1", "B2", "B3"]);
    expect(opened.value.bases.map(({ rods }) => rods.length)).toEqual([4, 4, 8]);
  });

  it("puts answers under keys of any words, and a later one in the place of an earlier", () => {
    const answers: WrittenAnswer[] = [
      { path: ["readFrom", "columns", "RODS: # 'A' / SIZE"], text: "Rod dia" },
      { path: ["readFrom", "cells", "E7"], text: '"12 x 10"' },
      { path: ["readFrom", "cells", "E7"], text: "9 SQ" },
      { path: ["units"], text: "mm" },
      { path: ["defaults", "pattern"], text: "{ kind: points, at: [[0, 8], [0, -8]] }" },
      { path: ["defaults", "template", "thickness"], text: "6" },
    ];
    const text = withAnswers("readFrom:\n  file: a.csv # the print\nrules: us\n", answers);
    const read = readYaml(text, "job.yaml");
    if (!read.ok) throw new Error(text);
    expect(toPlain(read.value)).toEqual({
      readFrom: { file: "a.csv", columns: { "RODS: # 'A' / SIZE": "Rod dia" }, cells: { E7: "9 SQ" } },
      rules: "us",
      units: "mm",
      defaults: {
        pattern: {
          kind: "points",
          at: [
            ["0", "8"],
            ["0", "-8"],
          ],
        },
        template: { thickness: "6" },
      },
    });
    expect(text).toContain("# the print");
  });

  it("tells what of a line is to be filled in", () => {
    expect(answersInLine("cells: { E7: TEXT, E8: 3 x 2 }")).toEqual([
      { path: ["readFrom", "cells", "E7"], text: null },
      { path: ["readFrom", "cells", "E8"], text: "3 x 2" },
    ]);
    expect(answersInLine("defaults: { template: { thickness: } }")).toEqual([
      { path: ["defaults", "template", "thickness"], text: null },
    ]);
    expect(answersInLine("units: in")).toEqual([{ path: ["units"], text: "in" }]);
  });
});

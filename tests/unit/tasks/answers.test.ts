/** Answers of the engineer of record: which hold, and why the others do not. Job-file forms; figures by hand. */
import { describe, expect, it } from "vitest";
import type { Summary } from "../../../src/index.js";
import { build } from "../../../src/tasks/build.js";
import { inputsOf } from "../job/files.js";

/** Washers of 2-1/2 in over holes of 2-1/16: W >= 2 H - d = 2-7/8 fails on the four rods of B1, not on B2's washers of 3. */
function jobOf(answers: readonly string[], more: readonly string[] = []): string {
  const base = (mark: string, washer: string) =>
    `  - { mark: ${mark}, rods: { diameter: 1-1/4, projection: 9 }, pattern: { kind: rectangle, x: 12, y: 10 }, basePlate: { x: 18, y: 16, thickness: 1, hole: 2-1/16, washer: { shape: square, size: ${washer}, thickness: 1/2 } }, template: { thickness: 1/4 } }`;
  return [
    'job: { number: "24-118", revision: B, status: released }',
    "units: in",
    ...more,
    ...(answers.length === 0 ? [] : ["answers:", ...answers.map((answer) => `  - { ${answer} }`)]),
    "bases:",
    base("B1", "2-1/2"),
    base("B2", "3"),
    "",
  ].join("\n");
}

function made(answers: readonly string[], more: readonly string[] = []) {
  const built = build(inputsOf(jobOf(answers, more)), {
    date: "2026-01-01",
    version: "1",
    document: null,
    outputs: ["ledger", "questions", "summary"],
  });
  expect(built.findings).toEqual([]);
  const end = built.finish();
  const text = (kind: string) => new TextDecoder().decode(end.files.find((file) => file.kind === kind)?.bytes);
  const written: Summary = JSON.parse(text("summary"));
  return { ...end, written, ledger: text("ledger").split("\r\n"), asked: text("questions").split("\r\n").slice(1, -1) };
}

const SIGNED = 'by: "EOR", date: 2026-11-20, text: Use a 3 in washer.';
const whyOf = (answer: string, more: readonly string[] = []) =>
  made([`${answer}, ${SIGNED}`], more).summary.answersNotUsed.map(({ why }) => why);

describe("an answer that answers its question", () => {
  it.each([
    ["of every rod", "mark: B1, rule: washer-cover"],
    ["of one rod", "mark: B1, rule: washer-cover, subject: A2"],
    ["with the value that was asked about", "mark: B1, rule: washer-cover, value: 2-1/2"],
    ["with that value in another unit", "mark: B1, rule: washer-cover, value: 63.5 mm"],
  ])("%s is not listed", (_, answer) => {
    expect(whyOf(answer)).toEqual([]);
  });

  it("closes its question, and a part of it where it names one rod", () => {
    const open = (answer: string) => {
      const { questions } = made([`${answer}, ${SIGNED}`]);
      return questions
        .filter(({ check }) => check.rule === "washer-cover")
        .map(({ number, check }) => [number, check.subject, check.answer === undefined ? "open" : "answered"]);
    };
    expect(open("mark: B1, rule: washer-cover")).toEqual([["Q-1", "A1 A2 A3 A4", "answered"]]);
    expect(open("mark: B1, rule: washer-cover, subject: A2")).toEqual([
      ["Q-1", "A1 A3 A4", "open"],
      ["Q-1.2", "A2", "answered"],
    ]);
  });
});

describe("an answer that answers nothing is listed with why", () => {
  it.each([
    ["a mark that is none", "mark: B9, rule: washer-cover", 'the job has no base "B9"; did you mean B1?'],
    ["another case of a mark", "mark: b2, rule: washer-cover", 'the job has no base "b2"; did you mean B2?'],
    ["a rule that is none", "mark: B1, rule: washer-cov", 'there is no rule "washer-cov"; did you mean washer-cover?'],
    ["a rule like none", "mark: B1, rule: zzzzzzzz", 'there is no rule "zzzzzzzz"'],
    ["prototype words", "mark: B1, rule: constructor", 'there is no rule "constructor"'],
    [
      "a subject that is none",
      "mark: B1, rule: washer-cover, subject: A9",
      'washer-cover of B1 has no row for "A9"; it has A1 A2 A3 A4',
    ],
    [
      "a row that passes",
      "mark: B2, rule: washer-cover, subject: A1",
      "washer-cover A1 does not fail: 3 in, at least 2-7/8 in is asked; it needs no answer",
    ],
    [
      "a value that has changed",
      "mark: B1, rule: washer-cover, subject: A1, value: 2-9/16",
      "washer-cover A1: answered for 2-9/16 in, now 2-1/2 in: the question is open again",
    ],
    [
      "a value that has changed by the last figure that is printed, 1e-6 in",
      "mark: B1, rule: washer-cover, subject: A1, value: 2.500001",
      "washer-cover A1: answered for 2.500001 in, now 2.5 in: the question is open again",
    ],
    [
      "the layout, without its subject",
      "mark: B1, rule: neighbour-rods",
      "neighbour-rods has no row of B1; an answer about the layout names its subject, as the ledger gives it",
    ],
    [
      "the layout, with a subject that it has not",
      "mark: B1, rule: neighbour-rods, subject: B7 A-1",
      'neighbour-rods has no row for "B7 A-1"',
    ],
  ])("%s", (_, answer, why) => {
    expect(whyOf(answer)).toEqual([why]);
  });

  it("a row that is not checked, and one that does not apply", () => {
    expect(whyOf("mark: B1, rule: rod-cover, subject: A1")[0]).toMatch(/^rod-cover A1 is not checked: /);
    expect(whyOf("mark: B1, rule: projection")[0]).toMatch(/^projection A1 is not checked: /);
  });

  it("advice, and a stop: the row notes the answer, and neither was a question", () => {
    const hole = "template-hole";
    const shop = jobOf([`mark: B1, rule: ${hole}, ${SIGNED}`]).replaceAll(
      "thickness: 1/4 }",
      "thickness: 1/4, hole: 1-3/8 }",
    );
    const built = build(inputsOf(shop), { date: "2026-01-01", version: "1", document: null, outputs: [] }).finish();
    expect(built.summary.answersNotUsed.map(({ why }) => why)).toEqual([
      expect.stringMatching(
        /^template-hole A1 is advice, not a question: it needs no answer, and the row notes this one$/,
      ),
    ]);
    expect(built.summary.bases[0]?.checks.some(({ rule, answer }) => rule === hole && answer?.by === "EOR")).toBe(true);
    expect(whyOf("mark: B1, rule: washer-cover", ["severities: { washer-cover: stop }"])).toEqual([
      "washer-cover A1 is a stop, not a question: the row notes the answer, and what it holds stays held",
    ]);
  });

  it("advice that the job raises to a question is one", () => {
    const raised = ["severities: { washer-cover: ask, template-hole: ask }"];
    expect(whyOf("mark: B1, rule: washer-cover", raised)).toEqual([]);
  });

  it("of two for one row, to another value and to this one, the first: the question is not open", () => {
    const of = (value: string) => `mark: B1, rule: washer-cover, value: ${value}, ${SIGNED}`;
    const { summary } = made([of("2-9/16"), of("2-1/2")]);
    expect(summary.answersNotUsed.map(({ why }) => why)).toEqual([
      "washer-cover A1: answered for 2-9/16 in, now 2-1/2 in: the answer by EOR, 2026-11-20, is taken",
    ]);
  });

  it("of two for one row the second", () => {
    const { summary } = made([
      `mark: B1, rule: washer-cover, ${SIGNED}`,
      'mark: B1, rule: washer-cover, by: "other", date: 2026-11-21, text: No.',
    ]);
    expect(summary.answersNotUsed.map(({ by, why }) => [by, why])).toEqual([
      ["other", "washer-cover A1: the answer by EOR, 2026-11-20, stands before it and is taken"],
    ]);
  });

  it("in the ledger, in the summary and in the written summary alike, in the order of the job", () => {
    const answers = ["mark: B9, rule: washer-cover", "mark: B1, rule: washer-cov", "mark: B1, rule: washer-cover"];
    const { summary, written, ledger } = made(answers.map((answer) => `${answer}, ${SIGNED}`));
    expect(summary.answersNotUsed.map(({ mark, rule, value }) => [mark, rule, value])).toEqual([
      ["B9", "washer-cover", null],
      ["B1", "washer-cov", null],
    ]);
    expect(written.answersNotUsed).toEqual(summary.answersNotUsed);
    expect(ledger.filter((line) => line.includes("ANSWER NOT USED"))).toHaveLength(2);
  });

  it("nothing is listed where there is none", () => {
    const { summary, ledger } = made([]);
    expect([summary.answersNotUsed, ledger.some((line) => line.includes("NOT USED"))]).toEqual([[], false]);
  });
});

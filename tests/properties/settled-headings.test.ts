/** Properties of what headings are settled to, over drawn tables of invented data. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SUBJECTS } from "../../src/schedule/heading-words.js";
import { SYNONYMS, settleHeadings } from "../../src/schedule/index.js";
import { answersOf, foundTable } from "../unit/schedule/found-tables.js";

const CELLS = [
  "",
  "-",
  "4",
  "6",
  "2",
  "12",
  "18",
  "1-1/2",
  '3/4"Ø',
  "M24",
  "18x18",
  "18x18x1",
  '(4) 3/4"',
  "3 @ 6",
  "W12x65",
];
const MORE = [
  "HEB 300",
  "36",
  "A36",
  "F1554 GR 55",
  "B1",
  "B2",
  "rectangle",
  "DO",
  "SEE NOTE 2",
  "99'-6\"",
  "yes",
  "steel",
  "UNC",
  "?!",
];

const written = SYNONYMS.flatMap(({ of, words }) =>
  words.flatMap((each) => [`${of} ${each}`.trim(), ...(of === "" ? [] : [`${of} / ${each}`])]),
).filter((words) => words !== "");
const heading = fc.oneof(
  fc.constantFrom(...written),
  fc.constantFrom("REV", "TIES", "REINF / SIZE", "X", "Y", "nx", "ny", "Mark", ...SUBJECTS),
);
const column = fc.tuple(heading, fc.array(fc.constantFrom(...CELLS, ...MORE), { minLength: 4, maxLength: 4 }));
const drawn = fc.array(column, { minLength: 1, maxLength: 12 });

type Columns = readonly (readonly [heading: string, texts: readonly string[]])[];

function settled(columns: Columns) {
  const rows = [0, 1, 2, 3].map((row) => columns.map(([, texts]) => texts[row] ?? ""));
  const table = foundTable(
    columns.map(([words]) => words),
    ...rows,
  );
  return settleHeadings(table, answersOf(), { file: "b.xlsx", unit: "in" });
}

/** What each column became, as a bag of texts. */
function becameOf(columns: Columns): readonly string[] {
  const { columns: became } = settled(columns);
  return columns
    .map(
      ([words, texts], index) =>
        `${words} ${texts.join("|")}: ${became[index]?.as} ${became[index]?.heading?.name ?? ""}`,
    )
    .toSorted();
}

/** Columns of the same words have no order of their own: which of two equal sides is which hangs on it. */
function isDistinct(columns: Columns): boolean {
  return new Set(columns.map(([words]) => words.toLowerCase())).size === columns.length;
}

describe("settled headings", () => {
  it("do not hang on the order of the columns", () => {
    const shuffled = drawn
      .filter(isDistinct)
      .chain((columns) => fc.tuple(fc.constant(columns), fc.shuffledSubarray(columns, { minLength: columns.length })));
    fc.assert(
      fc.property(shuffled, ([columns, other]) => {
        expect(becameOf(other)).toEqual(becameOf(columns));
      }),
      { numRuns: 600 },
    );
  });

  it("never throw, settle or ask every column, and ask each once", () => {
    fc.assert(
      fc.property(drawn, (columns) => {
        const { columns: became, questions, findings } = settled(columns);
        expect(became.map(({ index }) => index)).toEqual(columns.map((_, index) => index));
        for (const { as, heading } of became) expect(as === "value").toBe(heading !== null);
        const asked = became.filter(({ as }) => as === "asked");
        const cells = questions.flatMap(({ cells }) => cells.filter((cell) => cell.endsWith("5")));
        expect(new Set(cells).size).toBe(asked.length);
        expect(cells.length).toBe(asked.length);
        for (const { choices } of questions) expect(choices.length).toBeGreaterThan(1);
        const errors = findings.filter(({ severity }) => severity === "error");
        expect(errors.length).toBe(questions.length);
      }),
      { numRuns: 600 },
    );
  });

  it("are settled by any of the lines that a question offers, and every other column is as before", () => {
    fc.assert(
      fc.property(drawn.filter(isDistinct), fc.nat(), (columns, pick) => {
        const { questions } = settled(columns);
        const question = questions[pick % Math.max(1, questions.length)];
        if (question === undefined) return;
        const line = question.choices[pick % question.choices.length]?.line ?? "";
        const answers = new Map(
          [...line.matchAll(/"((?:[^"\\]|\\.)*)": ([^,}]+?)(?=,| \})/g)].map(([, name = "", meaning = ""]) => [
            name,
            meaning,
          ]),
        );
        const rows = [0, 1, 2, 3].map((row) => columns.map(([, texts]) => texts[row] ?? ""));
        const table = foundTable(
          columns.map(([words]) => words),
          ...rows,
        );
        const again = settleHeadings(table, { ...answersOf(), columns: answers }, { file: "b.xlsx", unit: "in" });
        expect(answers.size).toBeGreaterThan(0);
        expect(again.findings.filter(({ code }) => code === "answer-without-match")).toEqual([]);
        expect(again.questions.map(({ text }) => text)).not.toContain(question.text);
      }),
      { numRuns: 400 },
    );
  });
});

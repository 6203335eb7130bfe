/** The answer form of a package: one row a question, with cells that are left for the answer; read back by the job that names it. */
import { readable } from "../diagnostics/printable.js";
import type { Question } from "../summary/questions.js";
import { writeXlsx, type XlsxColumn } from "./xlsx-writer.js";

/** Whose form it is. */
export interface AnswerFormHead {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  readonly date: string;
}

const COLUMNS: readonly XlsxColumn[] = [
  { heading: "Number", width: 9 },
  { heading: "Bases", width: 16, isWrapped: true },
  { heading: "Question", width: 62, isWrapped: true },
  { heading: "Value asked", width: 12 },
  { heading: "Limit", width: 10 },
  { heading: "Unit", width: 6 },
  { heading: "Answer", width: 46, isWrapped: true },
  { heading: "By", width: 20, isWrapped: true },
  { heading: "Date", width: 13 },
];

const HOW =
  "Fill in Answer, By and Date (as 2026-11-24) and leave Number, Value asked and Unit as they are. Rows may be left blank or moved.";

/** One sheet; the line with the job stands over the table. */
export function writeAnswerFormXlsx(job: AnswerFormHead, questions: readonly Question[]): Uint8Array {
  const { number, title, revision, date } = job;
  return writeXlsx([
    {
      name: "Answers",
      title: [
        "ANSWERS OF THE ENGINEER OF RECORD",
        `Job ${number}, revision ${revision}`,
        `${title}   ${date}`.trim(),
        HOW,
      ],
      columns: COLUMNS,
      rows: questions.map(({ number: asked, mark, text, check }) => [
        ...[asked, mark === "" ? "layout" : mark, cut(text), check.value, check.limit, check.unit],
        ...["", "", ""],
      ]),
    },
  ]);
}

/** The same to be filled in with an editor. */
export function writeAnswerFormYaml(job: AnswerFormHead, questions: readonly Question[]): string {
  const { number, title, revision, date } = job;
  const lines = [
    "# Answers of the engineer of record. Fill in answer, by and date (as 2026-11-24); leave question, value and unit.",
    "# An entry may stay blank. Named in the job as answersFrom: FILE, it is read back.",
    `job: ${quoted(number)}`,
    `title: ${quoted(title)}`,
    `revision: ${quoted(revision)}`,
    `date: ${quoted(date)}`,
    "answers:",
    ...questions.flatMap(({ number: asked, mark, text, check }) => [
      `  - question: ${asked}`,
      `    bases: ${quoted(mark === "" ? "layout" : mark)}`,
      `    asked: ${quoted(cut(text))}`,
      `    value: ${check.value ?? ""}`.trimEnd(),
      `    limit: ${check.limit ?? ""}`.trimEnd(),
      `    unit: ${quoted(check.unit)}`,
      "    answer:",
      "    by:",
      "    date:",
    ]),
  ];
  return `${lines.join("\n")}\n`;
}

/** JSON is YAML: whatever a text holds, it stays a text. */
function quoted(text: string): string {
  return JSON.stringify(readable(text));
}

/** A cell of a spreadsheet takes 32,767 characters; nobody reads so many. */
const LONGEST = 1500;

function cut(text: string): string {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST).trimEnd()} [cut; questions.csv has all of it]`;
}

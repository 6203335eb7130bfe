/**
 * The answer form of a package, as it came back: XLSX, CSV or YAML. Rows may stand in any order, among other columns; a row
 * without an answer is left out. Every fault is told with its place.
 */
import type { Finding } from "../../diagnostics/finding.js";
import { readDay } from "../../leaves/written-day.js";
import { placeOfCell } from "../../readers/cell-place.js";
import type { Cell, InputFile, Table } from "../../readers/inputs.js";
import { contentOf } from "../../readers/inputs.js";
import type { SourceNode } from "../../readers/source.js";
import { findEntry, findNode } from "../../readers/source.js";
import { readYaml } from "../../readers/yaml.js";
import { openTables } from "../../schedule/index.js";
import type { Unit } from "../../units/index.js";
import { parseLength, toUnit } from "../../units/index.js";
import type { WithFindings } from "../document.js";
import { faultAt } from "../document.js";
import type { Answer } from "../model/job.js";
import { given, missing } from "../model/job.js";
import type { QuestionRegister, RegisteredQuestion } from "../model/register.js";
import { lastAsked, parseQuestionNumber, questionNumber } from "../model/register.js";
import type { JobSources } from "./job-sources.js";

/** What a form says of one question, as written. */
const FIELDS = ["number", "value", "unit", "answer", "by", "date"] as const;
type Field = (typeof FIELDS)[number];

interface Written {
  readonly text: string;
  readonly at: Finding["at"];
  /** Why it cannot be read. */
  readonly fault?: string;
}

/** One entry of a form; a field that is blank is absent. */
interface Entry {
  readonly at: Finding["at"];
  readonly fields: Readonly<Partial<Record<Field, Written>>>;
}

interface Form {
  /** Number of the job that it says it is of; null where it does not say. */
  readonly job: Written | null;
  readonly entries: readonly Entry[];
}

/** Answers of the form that the job names, in the order of their numbers' first places; none where it names none. */
export function readAnswerForm(
  { document, inputs, unit }: JobSources,
  register: QuestionRegister | null,
  number: string | undefined,
): WithFindings<readonly Answer[]> {
  const named = findNode(document.root, "answersFrom");
  if (named?.kind !== "scalar") return { value: [], findings: [] };
  const file = inputs.files.get(named.text);
  if (file === undefined) {
    const message = `there is no file ${named.text}; allowed is the answer form of a package, filled in`;
    return { value: [], findings: [faultAt(document, ["answersFrom"], "missing-file", message)] };
  }
  const form = openForm(file, named.text);
  if (form.value === null) return { value: [], findings: form.findings };
  const other = otherJob(form.value, number);
  if (other !== null) return { value: [], findings: [...form.findings, other] };
  const read = readEntries(form.value.entries, { register, unit });
  return { value: read.value, findings: [...form.findings, ...read.findings] };
}

const fault = (at: Finding["at"], message: string): Finding => ({
  code: "answer-form",
  severity: "error",
  at,
  message,
});

function otherJob({ job }: Form, number: string | undefined): Finding | null {
  if (job === null || number === undefined || job.text === number) return null;
  return fault(job.at, `the form is of job ${job.text}, and this is job ${number}`);
}

function openForm(file: InputFile, name: string): WithFindings<Form | null> {
  const isTable = typeof file === "object" && "kind" in file && (file.kind === "workbook" || file.kind === "table");
  if (!isTable && !/\.(csv|tsv|xlsx)$/i.test(name)) return openYamlForm(contentOf(file) ?? "", name);
  const tables = openTables(file, name);
  if (!tables.ok) return { value: null, findings: tables.findings };
  const forms = tables.value.flatMap((table) => tableForm(table, name) ?? []);
  const [first] = forms;
  if (first !== undefined)
    return { value: { job: first.job, entries: forms.flatMap(({ entries }) => entries) }, findings: [] };
  const message = "no row of it has the headings Number and Answer; allowed is the answer form of a package";
  return { value: null, findings: [fault({ file: name }, message)] };
}

/** Headings as people may have written them over, in small letters without other signs. */
const HEADINGS: Readonly<Record<Field, readonly string[]>> = {
  number: ["number", "no", "question no", "question number", "nr", "num"],
  value: ["value asked", "value", "asked value"],
  unit: ["unit", "units"],
  answer: ["answer", "reply", "response", "your answer"],
  by: ["by", "answered by", "name", "answer by"],
  date: ["date", "answer date", "day", "date of answer"],
};

function tableForm({ rows, sheet }: Table, file: string): Form | null {
  const headAt = rows.findIndex((row) => columnsOf(row).has("number") && columnsOf(row).has("answer"));
  const head = rows[headAt];
  if (head === undefined) return null;
  const columns = columnsOf(head);
  const written = (cell: Cell): Written => ({
    text: cell.isStruck === true ? "" : cell.text,
    at: placeOfCell(file, sheet, cell),
    ...(cell.fault === undefined ? {} : { fault: cell.fault }),
  });
  const entries = rows.slice(headAt + 1).flatMap((row): Entry[] => {
    const [first] = row;
    if (first === undefined) return [];
    const fields = FIELDS.flatMap((field): [Field, Written][] => {
      const cell = row.find(({ column }) => column === columns.get(field));
      return cell === undefined || (cell.text.trim() === "" && cell.fault === undefined)
        ? []
        : [[field, written(cell)]];
    });
    return [{ at: placeOfCell(file, sheet, first), fields: Object.fromEntries(fields) }];
  });
  return { job: jobOfTitle(rows.slice(0, headAt), file, sheet), entries };
}

function columnsOf(row: readonly Cell[]): ReadonlyMap<Field, number> {
  const found = new Map<Field, number>();
  for (const { text, column } of row) {
    const words = text
      .toLowerCase()
      .replace(/[^a-z]+/g, " ")
      .trim();
    const field = FIELDS.find((each) => HEADINGS[each].includes(words));
    if (field !== undefined && !found.has(field)) found.set(field, column);
  }
  return found;
}

/** A line above the table: `Job 24-118, revision B`. */
function jobOfTitle(rows: Table["rows"], file: string, sheet: string): Written | null {
  for (const cell of rows.flat()) {
    const [, number] = /^Job (.+), revision .+$/.exec(cell.text.trim()) ?? [];
    if (number !== undefined) return { text: number, at: placeOfCell(file, sheet, cell) };
  }
  return null;
}

function openYamlForm(content: string | Uint8Array, name: string): WithFindings<Form | null> {
  const read = readYaml(content, name);
  if (!read.ok) return { value: null, findings: read.findings };
  const list = findNode(read.value, "answers");
  const items = list?.kind === "list" ? list.items : [];
  if (items.length === 0) {
    const message = "it has no list under answers; allowed is the answer form of a package";
    return { value: null, findings: [fault({ file: name }, message)] };
  }
  const job = findNode(read.value, "job");
  const entries = items.map((item): Entry => ({ at: placeOfNode(item), fields: fieldsOfNode(item) }));
  return {
    value: { job: job?.kind === "scalar" ? { text: job.text, at: placeOfNode(job) } : null, entries },
    findings: [],
  };
}

const KEYS: Readonly<Record<Field, string>> = {
  ...{ number: "question", value: "value", unit: "unit", answer: "answer", by: "by", date: "date" },
};

function fieldsOfNode(item: SourceNode): Entry["fields"] {
  const fields = FIELDS.flatMap((field): [Field, Written][] => {
    const node = findEntry(item, KEYS[field])?.value;
    if (node === undefined || (node.kind === "scalar" && ["", "~", "null"].includes(node.text.trim()))) return [];
    const at = placeOfNode(node);
    if (node.kind === "scalar") return [[field, { text: node.text, at }]];
    return [[field, { text: "", at, fault: "is a group or a list; allowed is a text" }]];
  });
  return Object.fromEntries(fields);
}

function placeOfNode({ place }: SourceNode): Finding["at"] {
  const { file, line, column } = place;
  return { file, line, column };
}

interface Beside {
  readonly register: QuestionRegister | null;
  readonly unit: Unit;
}

function readEntries(entries: readonly Entry[], beside: Beside): WithFindings<readonly Answer[]> {
  const findings: Finding[] = [];
  const taken = new Map<string, { readonly answer: Answer; readonly at: Finding["at"] }>();
  for (const entry of entries) {
    const read = readEntry(entry, beside);
    for (const finding of read.findings) findings.push(finding);
    const answer = read.value;
    if (answer === null) continue;
    const at = entry.fields.answer?.at ?? entry.at;
    const before = taken.get(answer.question);
    if (before === undefined) taken.set(answer.question, { answer, at });
    else if (!isSame(before.answer, answer)) findings.push(twice(before, { answer, at }));
  }
  return { value: [...taken.values()].map(({ answer }) => answer), findings };
}

function isSame(a: Answer, b: Answer): boolean {
  const value = (answer: Answer) => (answer.value.kind === "given" ? answer.value.value : null);
  return a.text === b.text && a.by === b.by && a.date === b.date && value(a) === value(b);
}

function twice(
  before: { readonly answer: Answer; readonly at: Finding["at"] },
  { answer, at }: { readonly answer: Answer; readonly at: Finding["at"] },
): Finding {
  const where = before.at.cell ?? `line ${before.at.line ?? "?"}`;
  const quoted = (words: string) => JSON.stringify(words.length > 60 ? `${words.slice(0, 60)}...` : words);
  const words = `${quoted(before.answer.text)} by ${before.answer.by}, ${before.answer.date} (${where})`;
  return fault(
    at,
    `${answer.question} is answered twice: ${words} and ${quoted(answer.text)} by ${answer.by}, ${answer.date}; keep one`,
  );
}

/** null for an entry that is blank, or at fault. */
function readEntry({ at, fields }: Entry, { register, unit }: Beside): WithFindings<Answer | null> {
  if (fields.answer === undefined || (fields.answer.text.trim() === "" && fields.answer.fault === undefined))
    return { value: null, findings: [] };
  const findings: Finding[] = [];
  const number = readNumber(fields.number, at, register, findings);
  const name = number?.number ?? fields.number?.text ?? "this answer";
  const line = (field: "answer" | "by", what: string, longest: number) =>
    readLine(fields[field], { at, name, what, longest }, findings);
  const text = line("answer", "answer", MOST_ANSWER);
  const by = line("by", "name under By", MOST_NAME);
  const date = readDate(fields.date, at, name, findings);
  const value = readValue(fields, { at, name, unit, asked: number?.known ?? null }, findings);
  if (number === null || findings.length > 0) return { value: null, findings };
  const answer: Answer = {
    kind: "answered",
    question: number.number,
    mark: "",
    rule: "",
    by,
    date,
    text,
    subject: "",
    value,
  };
  return { value: answer, findings };
}

const [MOST_ANSWER, MOST_NAME] = [2000, 80];

interface KnownNumber {
  readonly number: string;
  readonly known: RegisteredQuestion | null;
}

function readNumber(
  written: Written | undefined,
  at: Finding["at"],
  register: QuestionRegister | null,
  findings: Finding[],
): KnownNumber | null {
  const parsed = parseQuestionNumber(written?.text ?? "");
  if (written === undefined || parsed === null) {
    const words =
      written === undefined
        ? "has an answer and no number"
        : `${JSON.stringify(written.text)} is no number of a question`;
    findings.push(fault(written?.at ?? at, `${words}; allowed is one as Q-7`));
    return null;
  }
  const number = questionNumber(parsed);
  const known = register?.questions.find((each) => each.number === number) ?? null;
  if (register !== null && known === null) {
    const last = register.questions.at(-1)?.number;
    const has = last === undefined ? "has no question" : `goes to ${last}`;
    findings.push(fault(written.at, `${number} was never asked: the register of revision ${register.revision} ${has}`));
    return null;
  }
  return { number, known };
}

interface LineOf {
  readonly at: Finding["at"];
  readonly name: string;
  readonly what: string;
  readonly longest: number;
}

/** Breaks and tabs that a cell holds become spaces. */
function readLine(written: Written | undefined, { at, name, what, longest }: LineOf, findings: Finding[]): string {
  const text = (written?.text ?? "").replace(/\s+/g, " ").trim();
  const tell = (message: string) => findings.push(fault(written?.at ?? at, `${name}: ${message}`));
  if (written?.fault !== undefined) tell(written.fault);
  else if (text === "") tell(`there is no ${what}`);
  else if ([...text].length > longest)
    tell(`the ${what} has ${[...text].length} characters; at most ${longest} are taken`);
  else if (/[\p{Cc}\p{Cs}\p{Bidi_Control}\uFFFE\uFFFF]/u.test(text))
    tell(`the ${what} holds a sign that cannot be printed`);
  return text;
}

/** A cell that a spreadsheet made a date of is one here. */
function readDate(written: Written | undefined, at: Finding["at"], name: string, findings: Finding[]): string {
  const text = (written?.text ?? "").trim();
  const day = readDay(text);
  if (day !== null) return day;
  const words =
    text === "" ? "there is no date" : `${JSON.stringify(text.slice(0, 40))} is no date that reads one way only`;
  findings.push(
    fault(
      written?.at ?? at,
      `${name}: ${words}; allowed is a day written year-month-day, as 2026-11-24, or with its month by name, as 24 Nov 2026`,
    ),
  );
  return text;
}

interface Asked {
  readonly at: Finding["at"];
  readonly name: string;
  readonly unit: Unit;
  readonly asked: RegisteredQuestion | null;
}

/** The value that was asked, so that a changed one opens the question again; it may be blank only where none was. */
function readValue(
  { value, unit: written }: Entry["fields"],
  { at, name, unit, asked }: Asked,
  findings: Finding[],
): Answer["value"] {
  const figure = asked === null ? null : (lastAsked(asked)?.value ?? null);
  if (value === undefined) {
    if (figure !== null)
      findings.push(
        fault(at, `${name}: the value asked is missing, so that it is not known what was answered; it was ${figure}`),
      );
    return missing("value", "the answer names no value");
  }
  const text = value.text.trim();
  const isPlain = /^-?\d{1,9}(\.\d{1,9})?$/.test(text);
  const own = written?.text.trim() ?? "";
  if (isPlain && (own === "" || own === unit)) return given(Number(text), "answer form");
  const length = parseLength(isPlain ? `${text} ${own}` : text, own === "mm" || own === "in" ? own : unit);
  if (length.ok) return given(toUnit(length.value, unit), "answer form");
  findings.push(
    fault(
      value.at,
      `${name}: ${JSON.stringify(text.slice(0, 40))} is no value; allowed is the one that was asked, as it stood in the form`,
    ),
  );
  return missing("value", "the answer names no value");
}

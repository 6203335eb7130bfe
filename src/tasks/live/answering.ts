/** Answers as the job file takes them: by number where a register knows it, else once for each mark by rule, with the value asked. */
import type { AnswerField, Job } from "../../job/index.js";
import { answerFieldFault } from "../../job/index.js";
import type { KeyEdit } from "../../readers/yaml-edit.js";
import { scalarText } from "../../readers/yaml-edit.js";
import type { Question } from "../../summary/questions.js";
import type { AnswerDraft, AnswerFaults } from "./model.js";

/** What is written; `left`: answers that were not, a sentence each. */
export interface AnswerEdits {
  readonly edits: readonly KeyEdit[];
  readonly left: readonly string[];
  readonly faults: AnswerFaults;
}

const FIELDS: readonly AnswerField[] = ["by", "date", "text"];

/** A single answer with a field at fault gives its faults; of several, those at fault are left. */
export function answerEdits(
  drafts: readonly AnswerDraft[],
  questions: readonly Question[],
  job: Pick<Job, "register">,
): AnswerEdits {
  const edits: KeyEdit[] = [];
  const left: string[] = [];
  for (const draft of drafts) {
    const question = questions.find(({ number }) => number === draft.number);
    const faults = faultsOf(draft);
    const [[field, why] = ["", ""]] = Object.entries(faults);
    if (field !== "" && drafts.length === 1 && question !== undefined) return { edits: [], left: [], faults };
    const refusal = question === undefined ? NOT_ASKED : field === "" ? otherValue(draft, question) : `${field} ${why}`;
    if (refusal !== "" || question === undefined) left.push(`${draft.number}: ${refusal}`);
    else for (const lines of entriesOf(draft, question, questions, job)) edits.push(insertion(draft, lines));
  }
  return { edits, left, faults: {} };
}

const NOT_ASKED = "is not asked now, so that there is nothing to answer";

/** The faults of its fields, as the job file would have them. */
function faultsOf(draft: AnswerDraft): AnswerFaults {
  const found = FIELDS.flatMap((field) => {
    const why = answerFieldFault(field, draft[field]);
    return why === null ? [] : [[field, why] as const];
  });
  return Object.fromEntries(found);
}

/** Why an answer to another value is not taken; "" where it is to that of now. */
function otherValue({ value }: AnswerDraft, { check }: Question): string {
  if (value === undefined || value === null || value === check.value) return "";
  return `the answer is to ${value} ${check.unit}`.trimEnd().concat(`, and ${check.value} is asked now`);
}

function insertion({ kind }: AnswerDraft, lines: string): KeyEdit {
  return { kind: "insert", path: [kind === "answered" ? "answers" : "accepted"], index: END, lines };
}

const END = Number.MAX_SAFE_INTEGER;

function entriesOf(
  draft: AnswerDraft,
  question: Question,
  questions: readonly Question[],
  { register }: Pick<Job, "register">,
): readonly string[] {
  const { number, check, places } = question;
  if (register?.questions.some((each) => each.number === number) === true)
    return [entry({ question: number }, draft, check.value)];
  return places.flatMap(({ mark, subjects }) => {
    if (mark !== "" && isWholeRule(mark, question, questions))
      return [entry({ mark, rule: check.rule }, draft, check.value)];
    const named = mark === "" ? LAYOUT : mark;
    return subjects.map((subject) => entry({ mark: named, rule: check.rule, subject }, draft, check.value));
  });
}

/** Stands for a mark in answers about the layout, which name their subject. */
const LAYOUT = "layout";

/** True where no other question is about the same rule and value of this base: an answer then needs no subjects. */
function isWholeRule(mark: string, question: Question, questions: readonly Question[]): boolean {
  return !questions.some(
    (other) =>
      other !== question &&
      other.check.rule === question.check.rule &&
      other.check.value === question.check.value &&
      other.places.some((place) => place.mark === mark),
  );
}

function entry(what: Readonly<Record<string, string>>, { by, date, text }: AnswerDraft, value: number | null): string {
  const keys = { ...what, ...(value === null ? {} : { value: String(value) }), by, date, text };
  return `{ ${Object.entries(keys)
    .map(([key, written]) => `${key}: ${scalarText(written)}`)
    .join(", ")} }`;
}

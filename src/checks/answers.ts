/** Answers of the engineer of record: which row each belongs to, and which belong to none, with why. */
import { nearestWord } from "../diagnostics/nearest.js";
import type { Answer, Job, Severity } from "../job/model/job.js";
import { isToGoOn } from "../job/model/register.js";
import { groupBy } from "../units/group-by.js";
import type { Unit } from "../units/index.js";
import { formatWithUnit, NM_PER_UNIT, nanometres, toUnit } from "../units/index.js";
import type { CheckRow, Quantity } from "./model.js";
import { comparedTexts, limitWords, quantityText, subjectWords } from "./words.js";

/** Answers by their rule, for jobs with many: a list of the job is looked through once. */
const kept = new WeakMap<readonly Answer[], ReadonlyMap<string, readonly Answer[]>>();

function byRule(answers: readonly Answer[]): ReadonlyMap<string, readonly Answer[]> {
  const known = kept.get(answers);
  if (known !== undefined) return known;
  const made = new Map<string, Answer[]>();
  for (const answer of answers) {
    if (answer.question !== "") continue;
    const keys = [keyOf(answer.rule, answer.mark), ...(answer.subject === "" ? [] : [keyOf(answer.rule, null)])];
    for (const key of keys) {
      const own = made.get(key);
      if (own === undefined) made.set(key, [answer]);
      else own.push(answer);
    }
  }
  kept.set(answers, made);
  return made;
}

const keyOf = (rule: string, mark: string | null): string => `${mark === null ? "layout" : `base ${mark}`}\n${rule}`;

/**
 * Answers to a row, by its number or by its rule, in the order of the job: of a base, or of the layout (null), whose answers
 * name their subject where they name no number.
 */
function answersTo({ answers }: Pick<Job, "answers">, row: CheckRow, mark: string | null): readonly Answer[] {
  const byMark = byRule(answers).get(keyOf(row.rule, mark)) ?? [];
  const numbered = row.askedAs === null ? [] : (byNumber(answers).get(row.askedAs) ?? []);
  if (numbered.length === 0 || byMark.length === 0) return [...numbered, ...byMark];
  const own = new Set([...numbered, ...byMark]);
  return answers.filter((answer) => own.has(answer));
}

const keptByNumber = new WeakMap<readonly Answer[], ReadonlyMap<string, readonly Answer[]>>();

function byNumber(answers: readonly Answer[]): ReadonlyMap<string, readonly Answer[]> {
  const known = keptByNumber.get(answers);
  if (known !== undefined) return known;
  const made = groupBy(
    answers.filter(({ question }) => question !== ""),
    ({ question }) => question,
  );
  keptByNumber.set(answers, made);
  return made;
}

/** The answer to a failing row, the first that holds for it; null: it is open, or does not fail. */
export function answerTo(row: CheckRow, job: Pick<Job, "answers" | "unit">, mark: string | null): Answer | null {
  if (row.status !== "fail" || job.answers.length === 0) return null;
  const isFor = (answer: Answer): boolean => isAbout(answer, row) && isOfValue(answer, row, job.unit);
  return answersTo(job, row, mark).find(isFor) ?? null;
}

/**
 * One that names a number holds for what was asked by it and still is: not for a part of it that has a number of its own now.
 * One without a subject holds for every row of its rule.
 */
function isAbout({ question, subject }: Answer, row: CheckRow): boolean {
  if (question === "") return subject === "" || subject === row.subject;
  return question === row.askedAs && question === row.question;
}

/** One that names a value holds for that value only. Compared at the summary's rounding, since that is what was printed. */
function isOfValue({ value }: Answer, row: CheckRow, unit: Unit): boolean {
  if (value.kind === "missing") return true;
  if (row.value === null) return false;
  if (row.value.kind === "count") return row.value.count === value.value;
  return toUnit(row.value.twice / 2, unit) === toUnit(nanometres(value.value * NM_PER_UNIT[unit]), unit);
}

/** An answer that answers no open question, and why. */
export interface UnusedAnswer {
  readonly answer: Answer;
  readonly why: string;
}

/** What the answers of a job come to, gathered while its bases go by. */
export interface AnswerBook {
  /** Rows of a base. */
  addBase(mark: string, rows: readonly CheckRow[]): void;
  addLayout(rows: readonly CheckRow[]): void;
  /** In the order of the job's answers; to be asked when every base went by. */
  unused(): readonly UnusedAnswer[];
}

/** What is known so far of an answer; the lowest rank says most. */
interface Seen {
  readonly rank: number;
  readonly why: string;
}

const USED = 0;

/** `rules`: every rule with its severity. */
export function startAnswerBook(job: Job, rules: Readonly<Record<string, Severity>>): AnswerBook {
  const seen = new Map<Answer, Seen>();
  const subjects = new Map<Answer, string[]>();
  const add = (mark: string | null, rows: readonly CheckRow[]): void => {
    if (job.answers.length === 0) return;
    for (const row of rows)
      for (const answer of answersTo(job, row, mark)) {
        if (isAbout(answer, row)) keepBetter(seen, answer, seenIn(answer, row, job.unit));
        else if (mark !== null) append(subjects, answer, row.subject);
      }
  };
  return {
    addBase: add,
    addLayout: (rows) => add(null, rows),
    unused: () =>
      job.answers.flatMap((answer): UnusedAnswer[] => {
        const known = seen.get(answer);
        if (known?.rank === USED) return [];
        return [{ answer, why: known?.why ?? unmatchedWhy(answer, job, rules, subjects.get(answer) ?? []) }];
      }),
  };
}

function append(subjects: Map<Answer, string[]>, answer: Answer, subject: string): void {
  const own = subjects.get(answer);
  if (own === undefined) subjects.set(answer, [subject]);
  else own.push(subject);
}

function keepBetter(seen: Map<Answer, Seen>, answer: Answer, found: Seen): void {
  const known = seen.get(answer);
  if (known === undefined || found.rank < known.rank) seen.set(answer, found);
}

/** What a row says of an answer that is about it. */
function seenIn(answer: Answer, row: CheckRow, unit: Unit): Seen {
  const { status } = row;
  switch (status) {
    case "fail":
      return row.answer === answer ? taken(row) : notTaken(answer, row, unit);
    case "pass":
      return { rank: 4, why: `${named(row)} does not fail: ${comparison(row, unit)}; it needs no answer` };
    case "not-checked":
      return { rank: 5, why: `${named(row)} is not checked: ${row.note}` };
    case "not-applicable":
      return { rank: 6, why: `${named(row)} does not apply: ${row.note}` };
  }
}

function taken(row: CheckRow): Seen {
  switch (row.severity) {
    case "ask":
      return { rank: USED, why: "" };
    case "stop":
      return {
        rank: 1,
        why: `${named(row)} is a stop, not a question: the row notes the answer, and what it holds stays held`,
      };
    case "advise":
      return {
        rank: 1,
        why: `${named(row)} is advice, not a question: it needs no answer, and the row notes this one`,
      };
  }
}

function notTaken(answer: Answer, row: CheckRow, unit: Unit): Seen {
  const { value } = answer;
  const other = row.answer;
  const by = other === null ? "another answer" : `the answer by ${other.by}, ${other.date},`;
  if (isOfValue(answer, row, unit)) return { rank: 2, why: `${named(row)}: ${by} stands before it and is taken` };
  if (value.kind === "missing" || row.value === null)
    return { rank: 3, why: `${named(row)} has no value to be answered` };
  const open = row.severity === "ask" ? ": the question is open again" : "";
  const question = other === null ? open : `: ${by} is taken`;
  return { rank: 3, why: `${named(row)}: ${changedWords(value.value, row.value, unit)}${question}` };
}

/** Both values as rows are written; those that would read alike in every figure. */
function changedWords(value: number, now: Quantity, unit: Unit): string {
  if (now.kind === "count") return `answered for ${value}, now ${now.count}`;
  const present = toUnit(now.twice / 2, unit);
  if (Math.abs(value - present) < ALIKE) return `answered for ${value} ${unit}, now ${present} ${unit}`;
  return `answered for ${formatWithUnit(nanometres(value * NM_PER_UNIT[unit]), unit)}, now ${quantityText(now, unit)}`;
}

/** Values nearer than this, in inches or millimetres, may be written alike. */
const ALIKE = 0.005;

const named = ({ rule, subject }: CheckRow): string => `${rule} ${subject}`.trimEnd();

function comparison(row: CheckRow, unit: Unit): string {
  if (row.value === null || row.limit === null || row.sense === null) return row.note;
  const [found, limit] = comparedTexts(row.value, row.limit, unit);
  return `${found}, ${limitWords(row.sense, limit)} is asked`;
}

function unmatchedWhy(
  { question, mark, rule, subject }: Answer,
  { bases, register, revision }: Pick<Job, "bases" | "register" | "revision">,
  rules: Readonly<Record<string, Severity>>,
  subjects: readonly string[],
): string {
  if (question !== "") return strayNumberWhy(question, register, revision);
  const ids = Object.keys(rules);
  if (!ids.includes(rule)) return `there is no rule ${JSON.stringify(rule)}${meant(rule, ids)}`;
  const marks = bases.map((base) => base.mark);
  if (subjects.length > 0)
    return `${rule} of ${mark} has no row for ${JSON.stringify(subject)}; it has ${subjectWords([...new Set(subjects)])}`;
  if (!marks.includes(mark)) return `the job has no base ${JSON.stringify(mark)}${meant(mark, marks)}`;
  const about = subject === "" ? "an answer about the layout names its subject, as the ledger gives it" : "";
  return about === "" ? `${rule} has no row for ${JSON.stringify(subject)}` : `${rule} has no row of ${mark}; ${about}`;
}

/** Of a number that no row has. */
function strayNumberWhy(number: string, register: Job["register"], revision: string): string {
  const asked = register?.questions.find((each) => each.number === number);
  if (asked === undefined)
    return `no earlier package that is at hand asked ${number}: name the one that did under questions, or mend the number`;
  if (!isToGoOn(asked, revision))
    return `it was closed in revision ${asked.closedIn}: a closed question is not opened again`;
  return "its rows do not fail any more, or are no more: the question is closed";
}

function meant(word: string, known: readonly string[]): string {
  const near = nearestWord(word, known);
  return near === undefined ? "" : `; did you mean ${near}?`;
}

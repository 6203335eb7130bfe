/** Failing `ask` rows as questions to the engineer of record: one cause, one question, whose number stays over revisions. */
import type { CheckedBase } from "../checks/checked.js";
import type { AskedPlace } from "../checks/index.js";
import { isAsking, sharedQuestionParts, sharedQuestionText, subjectsText } from "../checks/index.js";
import type { CheckRow } from "../checks/model.js";
import { isAt } from "../checks/numbered.js";
import type { QuestionParts } from "../checks/question.js";
import type { Answer, Job } from "../job/model/job.js";
import { compareMarks } from "../job/model/mark-order.js";
import type {
  AskedFigures,
  QuestionNumbers,
  QuestionPlace,
  QuestionState,
  RegisteredQuestion,
} from "../job/model/register.js";
import {
  compareQuestionNumbers,
  isToGoOn,
  lastAsked,
  parseQuestionNumber,
  questionNumber,
} from "../job/model/register.js";
import { groupBy } from "../units/group-by.js";
import { formatWithUnit, NM_PER_UNIT, nanometres } from "../units/index.js";
import type { SummaryCheck, SummaryQuestion } from "./model.js";
import { summarizeCheck } from "./summarize.js";

/** One question: all failing `ask` rows of one rule that say the same, of one base or of several. */
export interface Question {
  /** `Q-1`; `Q-1.2` for the part of a question whose figures or answer are not those of the first part. */
  readonly number: string;
  readonly job: string;
  readonly revision: string;
  /** Marks of the bases, in their natural order, with a space between them; empty: of the layout. */
  readonly mark: string;
  /** How many bases of these marks there are; null: of the layout. */
  readonly quantity: number | null;
  readonly text: string;
  /** The row that all of them share; its subject names every rod. */
  readonly check: SummaryCheck;
  readonly status: Exclude<QuestionState, "closed">;
  /** Where the rows are, by base. */
  readonly places: readonly AskedAt[];
  /** What is so and what is asked for; the notes of its rows; what changed since it was asked, "" where nothing did. */
  readonly parts: QuestionParts;
  readonly past: string;
  /** What the value is, as a noun phrase. */
  readonly measured: string;
  /** The rule in words of the trade. */
  readonly plainName: string;
  /** Its figures from revision to revision, those of now last. */
  readonly asked: readonly AskedFigures[];
}

/** Where a question is asked: a base, and how many there are of it; null: the layout. */
export interface AskedAt extends QuestionPlace {
  readonly quantity: number | null;
}

/** Gathers the questions of a job while its bases go by. */
export interface Questions {
  addBase(checked: Pick<CheckedBase, "base" | "rows">): void;
  addLayout(rows: readonly CheckRow[]): void;
  /**
   * In the order of their numbers. One that the register has keeps its own; others follow the last number that was ever
   * given, in the natural order of their bases, as worst first there: the order of the bases in the job makes no difference.
   */
  list(): readonly Question[];
  /** Questions of the register that are not asked any more, closed now or before. */
  closed(): readonly RegisteredQuestion[];
  /** Of every row that was added, by base. */
  numbers(): QuestionNumbers;
}

interface MutablePlace {
  readonly base: AskedPlace["base"];
  readonly subjects: { readonly subject: string; readonly note: string }[];
  /** Of its first row, among those of its base. */
  readonly order: number;
}

/** Rows with one answer, or none. */
interface Part {
  readonly row: CheckRow;
  readonly places: MutablePlace[];
}

/** The parts of each cause by what was said to them, or by the numbers that they have. */
type Cause = Map<string, Part>;

/** Starts with none. */
export function startQuestions(job: Job): Questions {
  const causes = new Map<string, Cause>();
  const firsts = new Map<string, readonly CheckRow[]>();
  const add = (base: AskedPlace["base"], rows: readonly CheckRow[]): void => {
    const asking = rows.filter(isAsking);
    const own = asking.map((row, order) => addRow(causes, base, row, order));
    if (own.length > 0) firsts.set(base?.mark ?? "", own);
  };
  const numbered = () => numberParts(job, [...causes.values()].map(inOrder));
  return {
    addBase: ({ base: { mark, quantity }, rows }) => add({ mark, quantity }, rows),
    addLayout: (rows) => add(null, rows),
    list: () => numbered().map(({ number, part }) => questionOf(job, number, part)),
    closed: () => closedOf(job, new Set(numbered().map(({ number }) => number))),
    numbers: () => numbersOf(firsts, numbered()),
  };
}

/** `firsts`: of each row the first of the part that it belongs to. */
function numbersOf(
  firsts: ReadonlyMap<string, readonly CheckRow[]>,
  numbered: readonly NumberedPart[],
): QuestionNumbers {
  const numberOf = new Map(numbered.map(({ number, part }) => [part.row, number]));
  return new Map([...firsts].map(([mark, rows]) => [mark, rows.map((row) => numberOf.get(row) ?? "")]));
}

/** The first row of the part that it now belongs to. */
function addRow(causes: Map<string, Cause>, base: AskedPlace["base"], row: CheckRow, order: number): CheckRow {
  const { subject, note, askedAs, rule, clause, edition, severity, measured, value, limit, sense } = row;
  const same = [base === null, askedAs, rule, clause, edition, severity, measured, value, limit, sense];
  const key = JSON.stringify(same);
  const cause: Cause = causes.get(key) ?? new Map();
  causes.set(key, cause);
  const own = row.question ?? answerKey(row.answer);
  const part = cause.get(own) ?? { row, places: [] };
  cause.set(own, part);
  const last = part.places.at(-1);
  if (last !== undefined && last.base?.mark === base?.mark) last.subjects.push({ subject, note });
  else part.places.push({ base, subjects: [{ subject, note }], order });
  return part.row;
}

/** The same text where the same was said, be it once for each base. */
function answerKey(answer: Answer | null): string {
  if (answer === null) return "";
  const { kind, value, by, date, text } = answer;
  return JSON.stringify([kind, value, by, date, text]);
}

/** The parts of a cause, each with its places in the natural order of their marks, and the parts by their first place. */
function inOrder(cause: Cause): readonly Part[] {
  return [...cause.values()]
    .map(({ row, places }) => ({ row, places: places.toSorted(comparePlaces) }))
    .toSorted(compareParts);
}

function comparePlaces(a: MutablePlace, b: MutablePlace): number {
  if (a.base === null || b.base === null) return Number(a.base === null) - Number(b.base === null) || a.order - b.order;
  return compareMarks(a.base.mark, b.base.mark) || a.order - b.order;
}

function compareParts(a: Part, b: Part): number {
  const [one, other] = [a.places[0], b.places[0]];
  return one === undefined || other === undefined ? 0 : comparePlaces(one, other);
}

interface NumberedPart {
  readonly number: string;
  readonly part: Part;
}

function numberParts(job: Job, causes: readonly (readonly Part[])[]): readonly NumberedPart[] {
  const numbered =
    job.numbers === null
      ? newNumbers(job, causes)
      : causes.flat().map((part) => ({ number: part.row.question ?? "", part }));
  return numbered.toSorted((a, b) => compareQuestionNumbers(a.number, b.number));
}

function newNumbers(job: Job, causes: readonly (readonly Part[])[]): readonly NumberedPart[] {
  const known = job.register?.questions ?? [];
  const parts = known.flatMap(({ number }) => parseQuestionNumber(number) ?? []);
  const lastPart = new Map<number, number>();
  for (const { question, part } of parts) lastPart.set(question, Math.max(part, lastPart.get(question) ?? 0));
  const nextPart = (question: number): string => {
    const part = (lastPart.get(question) ?? 0) + 1;
    lastPart.set(question, part);
    return questionNumber({ question, part });
  };
  const asked = causes.filter(([first]) => first?.row.askedAs !== null).flat();
  const again = [...groupBy(asked, ({ row }) => row.askedAs ?? "")].flatMap(([number, own]) => {
    const entry = known.find((each) => each.number === number);
    const [first, ...others] = stillTheSameFirst(own, entry, job);
    const question = parseQuestionNumber(number)?.question ?? 0;
    const rest = others.map((part) => ({ number: nextPart(question), part }));
    return first === undefined ? rest : [{ number, part: first }, ...rest];
  });
  let last = parts.reduce((most, { question }) => Math.max(most, question), 0);
  const fresh = causes.filter(([first]) => first?.row.askedAs === null).toSorted(compareCauses);
  const firsts = fresh.flatMap((cause) => {
    last += 1;
    const question = last;
    return cause.map((part) => ({ number: nextPart(question), part }));
  });
  return [...again, ...firsts];
}

function compareCauses([a]: readonly Part[], [b]: readonly Part[]): number {
  return a === undefined || b === undefined ? 0 : compareParts(a, b);
}

/** The part that goes on under the number itself: whose figures are those that were asked, else the one of the first place. */
function stillTheSameFirst(parts: readonly Part[], entry: RegisteredQuestion | undefined, job: Job): readonly Part[] {
  const asked = entry === undefined ? undefined : lastAsked(entry);
  const isSame = ({ row }: Part): boolean => isAt(asked, row, job.unit);
  const sorted = parts.toSorted(compareParts);
  return [...sorted.filter(isSame), ...sorted.filter((part) => !isSame(part))];
}

function questionOf(job: Job, number: string, { row, places }: Part): Question {
  const bases = places.flatMap(({ base }) => (base === null ? [] : [base]));
  const check = { ...summarizeCheck(row, job.unit), subject: subjectsText(places) };
  const asked = askedWith(job, number, row, check);
  const [text, past] = [sharedQuestionText(places, row, job.unit), pastWords(job, row, places, asked)];
  return {
    number,
    job: job.number,
    revision: job.revision,
    mark: bases.map(({ mark }) => mark).join(" "),
    quantity: bases.length === 0 ? null : bases.reduce((sum, { quantity }) => sum + quantity, 0),
    text: past === "" ? text : `${text} ${past}`,
    parts: sharedQuestionParts(places, row, job.unit),
    past,
    check,
    status: row.answer === null ? "open" : row.answer.kind,
    places: places.map(({ base, subjects }) => ({
      mark: base?.mark ?? "",
      quantity: base?.quantity ?? null,
      subjects: subjects.map(({ subject }) => subject),
    })),
    measured: row.measured,
    plainName: row.plainName,
    asked,
  };
}

/** What was asked by the number that the row had, and the figures of now where they are others. */
function askedWith(
  job: Job,
  own: string,
  row: CheckRow,
  { value, limit, unit }: SummaryCheck,
): readonly AskedFigures[] {
  const entry = job.register?.questions.find(({ number }) => number === row.askedAs);
  const before = entry?.asked ?? [];
  const now = { revision: job.revision, value, limit, unit, number: own };
  if (isAt(before.at(-1), row, job.unit)) return before;
  return [...before.filter(({ revision }, i) => revision !== job.revision || i < before.length - 1), now];
}

/** That figures changed since the question was asked, or that the same was asked by a number that is closed; "" else. */
function pastWords(job: Job, row: CheckRow, places: readonly MutablePlace[], asked: readonly AskedFigures[]): string {
  const [before, now] = asked.slice(-2);
  if (before === undefined) return "";
  if (now !== undefined) {
    const isValue = before.value !== now.value || before.unit !== now.unit;
    const [then, today] = [before, now].map((each) => figureWords(isValue ? each.value : each.limit, each.unit));
    return `Asked as ${before.number} in revision ${before.revision}: ${isValue ? "" : "the limit was "}then ${then}, now ${today}.`;
  }
  const old = before.revision === job.revision ? closedBefore(job, row, places) : null;
  return old === null ? "" : `Asked before as ${old.number}, closed in revision ${old.closedIn}.`;
}

function figureWords(figure: number | null, unit: string): string {
  if (figure === null) return "without a figure";
  if (unit !== "in" && unit !== "mm") return String(figure);
  return formatWithUnit(nanometres(figure * NM_PER_UNIT[unit]), unit);
}

function closedBefore(job: Job, row: CheckRow, places: readonly MutablePlace[]): RegisteredQuestion | null {
  const marks = new Set(places.map(({ base }) => base?.mark ?? ""));
  const isIt = ({ status, closedIn, rule, clause, places: then }: RegisteredQuestion): boolean =>
    status === "closed" &&
    closedIn !== job.revision &&
    rule === row.rule &&
    clause === row.clause &&
    then.some(({ mark }) => marks.has(mark));
  return job.register?.questions.findLast(isIt) ?? null;
}

function closedOf({ register, revision }: Job, live: ReadonlySet<string>): readonly RegisteredQuestion[] {
  return (register?.questions ?? []).flatMap((question): RegisteredQuestion[] => {
    if (live.has(question.number)) return [];
    if (question.status === "closed" && !isToGoOn(question, revision)) return [question];
    return [{ ...question, status: "closed", closedIn: revision }];
  });
}

/** Every question as the summary has it, in the order of the numbers. */
export function summarizeQuestions(
  questions: readonly Question[],
  closed: readonly RegisteredQuestion[],
): readonly SummaryQuestion[] {
  const live = questions.map(({ number, check, places, asked, text, status, measured }): SummaryQuestion => {
    const { rule, clause, edition, subject, value, limit, unit } = check;
    return {
      ...{ number, bases: marksOf(places), rule, clause, edition, measured, subject, value, limit, unit, text, status },
      ...{ closedIn: "", said: check.answer ?? check.accepted ?? null, asked },
      places: places.map(({ mark, subjects }) => ({ mark, subjects })),
    };
  });
  const past = closed.map(({ number, rule, clause, edition, measured, places, asked, text, status, closedIn }) => {
    const { value = null, limit = null, unit = "" } = asked.at(-1) ?? {};
    return {
      ...{ number, bases: marksOf(places), rule, clause, edition, measured, subject: placesText(places), value, limit },
      ...{ unit, text, status, closedIn, said: null, places, asked },
    };
  });
  return [...live, ...past].toSorted((a, b) => compareQuestionNumbers(a.number, b.number));
}

function marksOf(places: readonly QuestionPlace[]): readonly string[] {
  return places.flatMap(({ mark }) => (mark === "" ? [] : [mark]));
}

function placesText(places: readonly QuestionPlace[]): string {
  return places.map(({ mark, subjects }) => `${mark} ${subjects.join(" ")}`.trim()).join("; ");
}

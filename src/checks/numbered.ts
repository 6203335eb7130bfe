/** Which question of the register a failing row is, known by its base alone; and the numbers that a job gives when all its bases are known. */

import { ProgramFault } from "../diagnostics/program-fault.js";
import type { Job } from "../job/model/job.js";
import type { AskedFigures, QuestionRegister, RegisteredQuestion } from "../job/model/register.js";
import { isToGoOn, lastAsked } from "../job/model/register.js";
import type { Unit } from "../units/index.js";
import { toUnit } from "../units/index.js";
import { answerTo } from "./answers.js";
import { isAsking } from "./asking.js";
import type { CheckRow, Quantity } from "./model.js";

/**
 * The rows with their numbers: that of a question of the register which asked the same rule of the same subject of this base,
 * whatever the figures were; or, for a subject that it did not name, the same rule and clause with the figures of now. A rule
 * that asks twice of a subject is told apart by its clause. What was closed in an earlier revision is not opened again.
 */
export function numberRows(rows: readonly CheckRow[], job: NumberedJob, mark: string | null): readonly CheckRow[] {
  const known = job.register === null ? [] : askedOf(job.register, mark ?? "", job.revision);
  if (known.length === 0) return rows;
  const numbers = new Map<CheckRow, string>();
  const claimed = new Set<string>();
  const asking = rows.filter(isAsking);
  const claim = (fits: (asked: Asked, row: CheckRow) => boolean, isOnce: boolean): void => {
    for (const row of asking.filter((each) => !numbers.has(each))) {
      const key = ({ question }: Asked) => `${question.number}\n${row.subject}`;
      const fitting = known.filter((asked) => fits(asked, row) && !(isOnce && claimed.has(key(asked))));
      const found = fitting.find(({ question }) => isAt(lastAsked(question), row, job.unit)) ?? fitting[0];
      if (found === undefined) continue;
      numbers.set(row, found.question.number);
      claimed.add(key(found));
    }
  };
  claim((asked, row) => isSameAsk(asked, row) && asked.subjects.has(row.subject), true);
  claim(({ question, subjects }, row) => question.rule === row.rule && subjects.has(row.subject), true);
  claim((asked, row) => isSameAsk(asked, row) && isAt(lastAsked(asked.question), row, job.unit), false);
  return rows.map((row) => ({ ...row, askedAs: numbers.get(row) ?? null }));
}

/**
 * Rows of a base, worst first, null for those of the layout, with the numbers that the job has for them, and with what was said
 * by these numbers.
 */
export function giveNumbers(
  rows: readonly CheckRow[],
  job: Pick<Job, "numbers" | "answers" | "unit">,
  mark: string | null,
): readonly CheckRow[] {
  if (job.numbers === null) return rows;
  const own = (job.numbers.get(mark ?? "") ?? []).values();
  const given = rows.map((row): CheckRow => {
    if (!isAsking(row)) return row;
    const numbered = { ...row, question: own.next().value ?? null };
    return { ...numbered, answer: answerTo(numbered, job, mark) };
  });
  if (own.next().done !== true || given.some((row) => isAsking(row) && row.question === null))
    throw new ProgramFault(`${mark ?? "layout"}: other questions are asked than when the job was numbered`);
  return given;
}

/** What numbers hang on beside the rows. */
export type NumberedJob = Pick<Job, "register" | "revision" | "unit">;

/** A question with what it asked of one base. */
interface Asked {
  readonly question: RegisteredQuestion;
  readonly subjects: ReadonlySet<string>;
}

function isSameAsk({ question }: Asked, row: CheckRow): boolean {
  return question.rule === row.rule && question.clause === row.clause && question.measured === row.measured;
}

const kept = new WeakMap<QuestionRegister, ReadonlyMap<string, readonly Asked[]>>();

/** In the order of their numbers. */
function askedOf(register: QuestionRegister, mark: string, revision: string): readonly Asked[] {
  const known = kept.get(register) ?? byMark(register);
  kept.set(register, known);
  return (known.get(mark) ?? []).filter(({ question }) => isToGoOn(question, revision));
}

function byMark({ questions }: QuestionRegister): ReadonlyMap<string, readonly Asked[]> {
  const found = new Map<string, Asked[]>();
  for (const question of questions)
    for (const { mark, subjects } of question.places) {
      const own = found.get(mark);
      const asked = { question, subjects: new Set(subjects) };
      if (own === undefined) found.set(mark, [asked]);
      else own.push(asked);
    }
  return found;
}

/** True where the row has the figures that were asked, at the summary's rounding. */
export function isAt(asked: AskedFigures | undefined, row: CheckRow, unit: Unit): boolean {
  if (asked === undefined) return false;
  return isFigure(asked.value, row.value, asked.unit, unit) && isFigure(asked.limit, row.limit, asked.unit, unit);
}

function isFigure(asked: number | null, now: Quantity | null, askedUnit: string, unit: Unit): boolean {
  if (asked === null || now === null) return asked === null && now === null;
  if (now.kind === "count") return askedUnit === "" && now.count === asked;
  return askedUnit === unit && Math.abs(toUnit(now.twice / 2, unit) - asked) <= ROUNDED[unit];
}

/** Half a step of the summary's rounding: where figures would read alike it gives more digits. */
const ROUNDED: Readonly<Record<Unit, number>> = { in: 5e-7, mm: 5e-6 };

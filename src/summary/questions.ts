/** Failing `ask` rows as questions to the engineer of record: one cause, one question, numbered. */
import type { CheckedBase } from "../checks/checked.js";
import type { AskedPlace } from "../checks/index.js";
import { isAsking, sharedQuestionText, subjectsText } from "../checks/index.js";
import type { CheckRow } from "../checks/model.js";
import type { Answer, Job } from "../job/model/job.js";
import type { SummaryCheck } from "./model.js";
import { summarizeCheck } from "./summarize.js";

/** One question: all failing `ask` rows of one rule that say the same, of one base or of several. */
export interface Question {
  /** `Q1`; `Q1.2` for the part of a question whose answer differs from that of the first part. */
  readonly number: string;
  readonly job: string;
  readonly revision: string;
  /** Marks of the bases, in the order of the job, with a space between them; empty: of the layout. */
  readonly mark: string;
  /** How many bases of these marks there are; null: of the layout. */
  readonly quantity: number | null;
  readonly text: string;
  /** The row that all of them share; its subject names every rod. */
  readonly check: SummaryCheck;
}

/** Gathers the questions of a job while its bases go by. */
export interface Questions {
  addBase(checked: Pick<CheckedBase, "base" | "rows">): void;
  addLayout(rows: readonly CheckRow[]): void;
  /** In the order in which their causes first came up: that of the bases, then the layout's. Numbers follow it. */
  list(): readonly Question[];
}

interface MutablePlace {
  readonly base: AskedPlace["base"];
  readonly subjects: { readonly subject: string; readonly note: string }[];
}

/** Rows with one answer, or none. */
interface Part {
  readonly row: CheckRow;
  readonly places: MutablePlace[];
}

/** The parts of each cause by their answers. */
type Cause = Map<Answer | null, Part>;

/** Starts with none. */
export function startQuestions(job: Job): Questions {
  const causes = new Map<string, Cause>();
  const add = (base: AskedPlace["base"], rows: readonly CheckRow[]): void => {
    for (const row of rows.filter(isAsking)) addRow(causes, base, row);
  };
  return {
    addBase: ({ base: { mark, quantity }, rows }) => add({ mark, quantity }, rows),
    addLayout: (rows) => add(null, rows),
    list: () => [...causes.values()].flatMap((cause, index) => questionsOf(job, `Q${index + 1}`, cause)),
  };
}

function addRow(causes: Map<string, Cause>, base: AskedPlace["base"], row: CheckRow): void {
  const { subject, note, answer, ...same } = row;
  const key = JSON.stringify([base === null, same]);
  const cause: Cause = causes.get(key) ?? new Map();
  causes.set(key, cause);
  const part = cause.get(answer) ?? { row, places: [] };
  cause.set(answer, part);
  const last = part.places.at(-1);
  if (last !== undefined && last.base?.mark === base?.mark) last.subjects.push({ subject, note });
  else part.places.push({ base, subjects: [{ subject, note }] });
}

function questionsOf(job: Job, number: string, cause: Cause): readonly Question[] {
  return [...cause.values()].map(({ row, places }, index): Question => {
    const bases = places.flatMap(({ base }) => (base === null ? [] : [base]));
    return {
      number: index === 0 ? number : `${number}.${index + 1}`,
      job: job.number,
      revision: job.revision,
      mark: bases.map(({ mark }) => mark).join(" "),
      quantity: bases.length === 0 ? null : bases.reduce((sum, { quantity }) => sum + quantity, 0),
      text: sharedQuestionText(places, row, job.unit),
      check: { ...summarizeCheck(row, job.unit), subject: subjectsText(places) },
    };
  });
}

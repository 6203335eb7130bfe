/** What stops the release of a template, or of the layout: questions that are open, and that nobody has accepted. */
import type { Job } from "../job/model/job.js";
import { isAsking } from "./asking.js";
import type { CheckRow } from "./model.js";

/** A question that waits for the engineer of record. */
export interface OpenQuestion {
  /** Of the base; "" for the layout. */
  readonly mark: string;
  readonly plainName: string;
  /** null until the job has its numbers. */
  readonly number: string | null;
}

/** Each once, in the order of the rows. */
export function openQuestionsOf(mark: string, rows: readonly CheckRow[]): readonly OpenQuestion[] {
  const open = rows.filter((row) => isAsking(row) && row.answer === null);
  const found = new Map(open.map((row) => [`${row.question ?? ""}\n${row.rule}`, row]));
  return [...found.values()].map(({ plainName, question }) => ({ mark, plainName, number: question }));
}

/** True where nothing open stands against it and the job is released. */
export function isReleased({ status }: Pick<Job, "status">, open: readonly OpenQuestion[]): boolean {
  return status === "released" && open.length === 0;
}

const MOST_NUMBERS = 6;

/** `QUESTION OPEN: and others`; without a number that no register gives. "" where none is open. */
export function openQuestionWords(open: readonly OpenQuestion[]): string {
  if (open.length === 0) return "";
  const numbers = [...new Set(open.flatMap(({ number }) => number ?? []))];
  if (numbers.length === 0) return "QUESTION OPEN";
  const isMore = numbers.length > MOST_NUMBERS || open.some(({ number }) => number === null);
  const named = numbers.slice(0, MOST_NUMBERS).join(", ");
  return `QUESTION OPEN: ${named}${isMore ? " AND OTHERS" : ""}`;
}

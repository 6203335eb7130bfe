/** An answer while it is typed. */
import type { AnswerDraft } from "../../tasks/live/model.js";

/** Nothing said yet, of today. */
export function draftFor(number: string, today: string): AnswerDraft {
  return { number, kind: "answered", by: "", date: today, text: "" };
}

/** Breaks and tabs become spaces, as in a form that is read back: an answer is a line of the job file. */
export function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

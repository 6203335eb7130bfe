/** What every answer says, whatever it answers: who, when and what. */
import { dateLeaf, textLeaf } from "../../leaves/leaves.js";

/** Leaves of an answer or acceptance that must be there. */
export const answerFields = {
  by: textLeaf("Who answered, or accepts.", 80),
  date: dateLeaf("Day of the answer."),
  text: textLeaf("The answer.", 400),
};

/** A field of an answer that a person fills in. */
export type AnswerField = keyof typeof answerFields;

/** Why a field cannot stand in a job file as it is written; null where it can. */
export function answerFieldFault(field: AnswerField, text: string): string | null {
  const read = answerFields[field].safeParse(text);
  return read.success ? null : (read.error.issues[0]?.message ?? "cannot be read");
}

/** What a step is called that answers questions. */
import { listed } from "../../diagnostics/listed.js";
import type { AnswerDraft } from "./model.js";

const MOST_NAMED = 6;

/** What the step is called: `answer to Q-2`. */
export function answerStep(drafts: readonly AnswerDraft[]): string {
  const numbers = listed([...new Set(drafts.map(({ number }) => number))], MOST_NAMED);
  return drafts.some(({ kind }) => kind === "answered") ? `answer to ${numbers}` : `acceptance of ${numbers}`;
}

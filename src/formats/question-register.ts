/** The register of questions as JSON: what an earlier package's summary has of them, by itself. */
import { printableJson } from "../diagnostics/printable.js";
import type { SummaryQuestion } from "../summary/model.js";

/** A question a line, in the order of the numbers. */
export function writeQuestionRegister(
  { number, revision }: { readonly number: string; readonly revision: string },
  questions: readonly SummaryQuestion[],
): string {
  const lines = questions.map((question) => `    ${printableJson(question)}`);
  const list = lines.length === 0 ? "[]" : `[\n${lines.join(",\n")}\n  ]`;
  return `{\n  "job": ${printableJson({ number, revision })},\n  "questions": ${list}\n}\n`;
}

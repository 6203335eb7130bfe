/** Answers of the job that answer nothing -> faults, each with the three nearest that would. */
import type { Finding } from "../diagnostics/finding.js";
import { cellInSheet } from "../readers/cell-place.js";
import type { FoundTable } from "./model.js";
import type { UsedAnswers } from "./used-answers.js";

/** The faults; `at` is where the answers stand. */
export function unusedFindings(answers: UsedAnswers, table: FoundTable, at: Finding["at"]): readonly Finding[] {
  const cells = () => table.rows.flatMap((row) => row.filter(({ text }) => text !== "").map(cellInSheet));
  const known = { cells, notes: () => [...table.notes.keys()] };
  return answers.unused(known).map(
    ({ path, message, hint }): Finding => ({
      ...{ code: "answer-without-match", severity: "error", message },
      at: { ...at, path: [at.path ?? "", ...path].filter((step) => step !== "").join(".") },
      ...(hint === undefined ? {} : { hint }),
    }),
  );
}

/** Why a base is held: its failing rows of severity `stop`, in sentences. */
import type { Unit } from "../units/length.js";
import type { CheckRow } from "./model.js";
import { isHolding } from "./run.js";
import { comparedTexts, limitWords, subjectWords } from "./words.js";

/** One sentence for all rows that say the same of several subjects; none when nothing holds the base. */
export function heldReasons(rows: readonly CheckRow[], unit: Unit): readonly string[] {
  const bySame = new Map<string, { rule: string; subjects: string[]; words: string }>();
  for (const row of rows.filter(isHolding)) {
    const words = heldWords(row, unit);
    const same = bySame.get(`${row.rule} ${words}`);
    if (same === undefined) bySame.set(`${row.rule} ${words}`, { rule: row.rule, subjects: [row.subject], words });
    else same.subjects.push(row.subject);
  }
  return [...bySame.values()].map(({ rule, subjects, words }) =>
    `${rule} ${subjectWords(subjects)}`.trimEnd().concat(`: ${words}`),
  );
}

function heldWords(row: CheckRow, unit: Unit): string {
  if (row.value === null || row.limit === null || row.sense === null) return row.note;
  const [value, limit] = comparedTexts(row.value, row.limit, unit);
  return `${value}, ${limitWords(row.sense, limit)} is needed`;
}

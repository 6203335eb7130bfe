/** Why a base is held: its failing rows of severity `stop`, in sentences. */
import type { Unit } from "../units/length.js";
import type { CheckRow } from "./model.js";
import { isHolding } from "./run.js";
import { failedFigures, isGroup, subjectWords } from "./words.js";

/** `grout gap (grout-gap) A1 A2: ...`, one for all rows that say the same of several subjects; none when nothing holds the base. */
export function heldReasons(rows: readonly CheckRow[], unit: Unit): readonly string[] {
  const bySame = new Map<string, { row: CheckRow; subjects: string[]; words: string }>();
  for (const row of rows.filter(isHolding)) {
    const words = failedFigures(row, unit, "is needed") ?? row.note;
    const key = `${row.rule} ${words} ${isGroup(row.subject) ? row.subject : ""}`;
    const same = bySame.get(key);
    if (same === undefined) bySame.set(key, { row, subjects: [row.subject], words });
    else same.subjects.push(row.subject);
  }
  return [...bySame.values()].map(({ row: { rule, plainName }, subjects, words }) =>
    `${plainName} (${rule}) ${subjectWords(subjects)}`.trimEnd().concat(`: ${words}`),
  );
}

/** Which coordinates of a layout are not to be set out by, and why. */
export interface HeldLayout {
  /** Empty: nothing is held. */
  readonly reasons: readonly string[];
  /** True where what fails is about the way to the site alone: local coordinates then stand. */
  readonly siteOnly: boolean;
}

/** Rules about the way from plan to site. */
const OF_SITE = new Set(["control-closure", "control-residual"]);

/** By the rows of the whole job that fail as a stop. */
export function heldLayout(rows: readonly CheckRow[], unit: Unit): HeldLayout {
  const siteOnly = rows.filter(isHolding).every(({ rule }) => OF_SITE.has(rule));
  return { reasons: heldReasons(rows, unit), siteOnly };
}

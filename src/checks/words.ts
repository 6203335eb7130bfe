/** Figures of notes and questions, in the job's unit. */
import { listed } from "../diagnostics/listed.js";
import type { Answer } from "../job/model/job.js";
import type { Unit } from "../units/index.js";
import { formatApart, formatDifference, formatLength, formatWithUnit } from "../units/index.js";
import type { CheckRow, Quantity, Sense } from "./model.js";

/** Writers of figures in one unit; lengths in nanometres. */
export interface Words {
  /** A length without unit. */
  readonly length: (length: number) => string;
  /** A doubled length without unit. */
  readonly twice: (twice: number) => string;
  /** A doubled length with its unit. */
  readonly full: (twice: number) => string;
}

/** Texts that are kept: the rods of one base say the same figures over and over. */
const KEPT = 2000;

const WORDS: Readonly<Record<Unit, Words>> = { in: wordsOf("in"), mm: wordsOf("mm") };

/** How figures are written in this unit. */
export function wordsIn(unit: Unit): Words {
  return WORDS[unit];
}

function wordsOf(unit: Unit): Words {
  const kept = new Map<number, string>();
  const length = (value: number): string => {
    const known = kept.get(value);
    if (known !== undefined) return known;
    if (kept.size >= KEPT) kept.clear();
    const text = formatLength(value, unit);
    kept.set(value, text);
    return text;
  };
  return { length, twice: (twice) => length(twice / 2), full: (twice) => `${length(twice / 2)} ${unit}` };
}

/** A quantity with its unit; a count alone. */
export function quantityText(quantity: Quantity, unit: Unit): string {
  if (quantity.kind === "length") return formatWithUnit(quantity.twice / 2, unit);
  return quantity.noun === undefined ? String(quantity.count) : counted(quantity.count, quantity.noun);
}

/** A value and its limit with their unit, with as many digits as it takes to show which is the larger. */
export function comparedTexts(value: Quantity, limit: Quantity, unit: Unit): readonly [value: string, limit: string] {
  if (value.kind === "count" || limit.kind === "count") return [quantityText(value, unit), quantityText(limit, unit)];
  const [first, second] = formatApart(value.twice / 2, limit.twice / 2, unit);
  return [`${first} ${unit}`, `${second} ${unit}`];
}

/** A margin with its unit, never 0 where there is one. */
export function marginText(margin: Quantity, unit: Unit): string {
  return margin.kind === "length" ? `${formatDifference(margin.twice / 2, unit)} ${unit}` : String(margin.count);
}

const SENSE: Readonly<Record<Sense, string>> = { ">=": "at least", "<=": "at most", "=": "exactly" };

/** A limit as a demand: `at least 2 in`; `limit` as a text. */
export function limitWords(sense: Sense, limit: string): string {
  return `${SENSE[sense]} ${limit}`;
}

/**
 * What a failing row has and what it wants: `1 in, at least 2 in needed`; null where nothing was compared. Of a thickness that is
 * not stocked any that is would do: the nearest is named.
 */
export function failedFigures(
  { rule, value, limit, sense }: Pick<CheckRow, "rule" | "value" | "limit" | "sense">,
  unit: Unit,
  needed: "needed" | "is needed" = "needed",
): string | null {
  if (value === null || limit === null || sense === null) return null;
  const [found, bound] = comparedTexts(value, limit, unit);
  return `${found}, ${rule === "stock-thickness" ? `nearest in stock ${bound}` : `${limitWords(sense, bound)} ${needed}`}`;
}

/**
 * What is to be known of an answer that names no value: a change of the value does not open its question again; where it names
 * neither number nor subject, it holds for every failing row of its rule.
 */
export function answerReach({ kind, value, question, subject, mark }: Answer): string {
  const who = kind === "answered" ? "the answer" : "the acceptance";
  if (value.kind === "given") return "";
  return question === "" && subject === ""
    ? `; ${who} names no value and no subject and holds for every failing row of this rule of ${mark}, whatever its value becomes`
    : `; ${who} names no value and holds whatever the value becomes`;
}

/** A share in whole per cent, rounded half up; `whole` is positive. */
export function percent(part: number, whole: number): string {
  return `${Math.floor((part * 100) / whole + 0.5)} %`;
}

/** `1 rod`, `4 rods`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

/** True of a subject that is itself a list of marks: it is joined with no other, so that nobody takes them for one group. */
export function isGroup(subject: string): boolean {
  return subject.includes(", ") || subject.includes(" / ");
}

const MOST_SUBJECTS = 6;

/** Subjects of rows that say the same, as `A1 A2 A3` or `top of A1, top of A2`, the first six and how many more. */
export function subjectWords(subjects: readonly string[]): string {
  const between = subjects.some((subject) => subject.includes(" ")) ? ", " : " ";
  return listed(subjects, MOST_SUBJECTS, between);
}

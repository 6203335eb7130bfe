/** Findings -> causes: what is wrong in the same way under one heading, or at one key of many bases, is told once. */
import type { Finding } from "./finding.js";
import { subjectOf } from "./finding.js";

/** Findings of one cause, in their order; at least one. */
export interface Cause {
  readonly first: Finding;
  readonly all: readonly Finding[];
  /** What it is about, without rows and numbers: `Rod dia`, `bases[].rods.diamter`. */
  readonly subject: string;
}

/** Causes in the order of their first findings; each finding is in one of them. */
export function gatherFindings(findings: readonly Finding[]): readonly Cause[] {
  const causes = new Map<string, Finding[]>();
  findings.forEach((finding, index) => {
    const key = causeOf(finding) ?? String(index);
    const known = causes.get(key);
    if (known === undefined) causes.set(key, [finding]);
    else known.push(finding);
  });
  return [...causes.values()].flatMap((all) =>
    all.slice(0, 1).map((first) => ({ first, all, subject: subjectWithoutRow(first) })),
  );
}

/** Each once: two readings of one file tell the same of it. */
export function uniqueFindings(findings: readonly Finding[]): readonly Finding[] {
  return [...new Map(findings.map((each) => [JSON.stringify(each), each])).values()];
}

/** Null for what stands alone: at a place that is neither a cell nor one of several alike. */
function causeOf(finding: Finding): string | null {
  const { code, severity, at, message } = finding;
  const { file, cell, path = "" } = at;
  const subject = subjectWithoutRow(finding);
  if (cell === undefined && subject === path) return null;
  const words = withoutOwnCell(quotedFirst(message)?.words ?? message, cell);
  return JSON.stringify([code, severity, file, sheetOf(cell ?? ""), subject, words]);
}

/** An answer is offered by the cell's own name: the cause is the same in every cell. */
function withoutOwnCell(words: string, cell: string | undefined): string {
  return cell === undefined ? words : words.replace(`{ ${cell.slice(sheetOf(cell).length)}: `, "{ CELL: ");
}

function subjectWithoutRow({ at }: Finding): string {
  const path = at.path ?? "";
  return path === "" ? "" : subjectOf({ ...at, cell: "" }).replace(/\[\d+\]/g, "[]");
}

/** `Bases!` of `Bases!E7`; "" of a cell of a text. */
export function sheetOf(cell: string): string {
  return cell.slice(0, cell.lastIndexOf("!") + 1);
}

/** Words that follow a value at the beginning of a message. */
const QUOTED =
  /^("(?:[^"]|"(?! (?:is|has|cannot|stands|names|holds|divides)\b))*") ((?:is|has|cannot|stands|names|holds|divides)\b.+)$/s;

/** The value that a message begins with, in quotation marks, and the words after it; null for another message. */
export function quotedFirst(message: string): { readonly value: string; readonly words: string } | null {
  const [, value, words] = QUOTED.exec(message) ?? [];
  return value === undefined || words === undefined ? null : { value, words };
}

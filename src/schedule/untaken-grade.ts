/** A grade of the rods in a title, a group over headings, a heading or a note: no cell gives it, and it is told, not taken. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { cellInSheet, placeOfCell } from "../readers/cell-place.js";
import { errorAt } from "../readers/source.js";
import type { FoundTable } from "./model.js";
import type { RowBase } from "./row-bases.js";
import { oneLine } from "./sheet-words.js";

const F1554 = /\bF[\s-]?1554\b/i;
/** Grades of ASTM F1554, with what stands before them: `GR 36`, `F1554-36`, `36 OR 55`. */
const NUMBERS =
  /(?:\bGR(?:ADE|D)?S?\.?|\bF[\s-]?1554|\bOR|\bAND|[,/&])[\s,-]*(?:GR(?:ADE|D)?\.?)?[\s-]*(36|55|105)\b/gi;
const RODS = /\b(?:anchors?|rods?|bolts?|A\.?[RB]\.?S?)\b/i;
/** Property classes of ISO 898-1. */
const CLASSES = /\b(?:gr(?:ade)?|cl(?:ass)?)\.?\s*(4\.6|5\.6|5\.8|6\.8|8\.8|10\.9)\b/gi;
const MOST_SHOWN = 100;
const MOST_NAMED = 3;

/** One warning, where bases have no grade and the job gives none. */
export function untakenGrade(
  { columns, leftOut, sheet }: FoundTable,
  bases: readonly RowBase[],
  file: string,
): readonly Finding[] {
  const without = bases.filter(({ groups }) => groups.some((group) => !group.values.some(isGrade)));
  if (without.length === 0) return [];
  const cells = [...leftOut, ...columns].map(({ cell }) => cell);
  const [first, ...others] = cells.filter(({ text }) => gradesIn(text).length > 0);
  if (first === undefined) return [];
  const grades = [...new Set([first, ...others].flatMap(({ text }) => gradesIn(text)))];
  const words = oneLine(first.text).slice(0, MOST_SHOWN);
  const more = others.length === 0 ? "" : `, and so ${listed(others.map(cellInSheet), MOST_NAMED)},`;
  const whose = without.length === bases.length ? "no base has" : `${without.length} bases do not have`;
  const message = `"${words}"${more} says a grade of rods, which ${whose}; nothing is taken of it`;
  const hint = `add to the job: ${grades.map((grade) => `defaults: { rods: { grade: ${grade} } }`).join("; or ")}`;
  return [{ ...errorAt(placeOfCell(file, sheet, first), "grade-not-taken", message, hint), severity: "warning" }];
}

function isGrade({ key }: { readonly key: string }): boolean {
  return key === "rods.grade";
}

function gradesIn(text: string): readonly string[] {
  const numbers = (pattern: RegExp) => [...text.matchAll(pattern)].map(([, number = ""]) => number);
  if (F1554.test(text)) return numbers(NUMBERS).map((number) => `F1554 ${number}`);
  return RODS.test(text) ? numbers(CLASSES) : [];
}

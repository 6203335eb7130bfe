/** Grade and number of the rods in a title, a group over headings, a heading or a note: no cell gives it, and it is told, not taken. */
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
/** Signs of a text in which such words are looked for. */
const MOST_READ = 1000;
const MOST_NAMED = 3;

/** `8 PER BASE`, `(8) ANCHOR RODS AT EACH COLUMN`, but no `GR 36 BOLTS PER COLUMN SCHEDULE`. */
const COUNTS =
  /(?<![\d/.-]|\bGR(?:ADE)?\.? )\b(\d{1,2})\)?\s*(?:ANCHOR\s+)?(?:RODS?|BOLTS?|A\.?[RB]\.?S?)?\s*(?:REQ'?D\.?\s*)?(?:PER|AT\s+EACH|EACH|AT\s+EA\.?|EA\.?)\s+(?:BASE|COL\b|COLUMN|PLATE)(?!\w*\s+SCHED)/gi;

/** What such words say of the rods, and its key. */
interface Said {
  readonly key: "rods.grade" | "rods.count";
  /** Key of a value that says the same. */
  readonly or?: "pattern.count";
  readonly code: string;
  readonly what: string;
  valuesIn(text: string): readonly string[];
}

const SAID: readonly Said[] = [
  { key: "rods.grade", code: "grade-not-taken", what: "a grade of rods", valuesIn: gradesIn },
  { key: "rods.count", or: "pattern.count", code: "count-not-taken", what: "a number of rods", valuesIn: countsIn },
];

/** One warning of each kind, where bases have no such value and the job gives none. */
export function untakenWords(
  table: FoundTable,
  bases: readonly RowBase[],
  file: string,
  given: ReadonlySet<string>,
): readonly Finding[] {
  return SAID.filter(({ key }) => !given.has(key)).flatMap((said) => untaken(said, table, bases, file));
}

function untaken(
  { key, or, code, what, valuesIn }: Said,
  { columns, leftOut, sheet }: FoundTable,
  bases: readonly RowBase[],
  file: string,
): readonly Finding[] {
  const has = (group: RowBase["groups"][number]) => group.values.some((value) => value.key === key || value.key === or);
  const without = bases.filter(({ groups }) => !groups.every(has));
  if (without.length === 0) return [];
  const cells = [...leftOut, ...columns].map(({ cell }) => ({ ...cell, text: oneLine(cell.text.slice(0, MOST_READ)) }));
  const [first, ...others] = cells.filter(({ text }) => valuesIn(text).length > 0);
  if (first === undefined) return [];
  const values = [...new Set([first, ...others].flatMap(({ text }) => valuesIn(text)))];
  const words = first.text.slice(0, MOST_SHOWN);
  const more = others.length === 0 ? "" : `, and so ${listed(others.map(cellInSheet), MOST_NAMED)},`;
  const whose = without.length === bases.length ? "no base has" : `${without.length} bases do not have`;
  const message = `"${words}"${more} says ${what}, which ${whose}; nothing is taken of it`;
  const lines = values.map((value) => `defaults: { rods: { ${key.slice("rods.".length)}: ${value} } }`);
  const hint = `add to the job: ${lines.join("; or ")}`;
  return [{ ...errorAt(placeOfCell(file, sheet, first), code, message, hint), severity: "warning" }];
}

function countsIn(text: string): readonly string[] {
  return RODS.test(text) ? [...text.matchAll(COUNTS)].map(([, count = ""]) => count) : [];
}

function gradesIn(text: string): readonly string[] {
  const numbers = (pattern: RegExp) => [...text.matchAll(pattern)].map(([, number = ""]) => number);
  if (F1554.test(text)) return numbers(NUMBERS).map((number) => `F1554 ${number}`);
  return RODS.test(text) ? numbers(CLASSES) : [];
}

/** What a job answers for the columns of a sheet: each answer finds its column and a name of ours, or is a fault. */
import type { Finding } from "../diagnostics/finding.js";
import { nearestWords } from "../diagnostics/nearest.js";
import { cellInSheet, columnLetters } from "../readers/cell-place.js";
import { NOTE, SQUARE } from "./heading-synonyms.js";
import { plainHeading } from "./headings.js";
import type { FoundColumn, FoundTable, TableAnswers } from "./model.js";
import type { KnownHeading, Meant, SettleContext, Vocabulary } from "./settled-column.js";
import { headingText } from "./settled-column.js";

/** What the answers settle, by the place of the column among the columns of the table. */
export interface ReadAnswers {
  readonly byColumn: ReadonlyMap<number, Meant>;
  readonly findings: readonly Finding[];
}

/** Reads `columns:` of a job. Of two answers for one column that differ, neither is taken. */
export function readAnswers(
  table: FoundTable,
  { columns }: TableAnswers,
  context: SettleContext,
  { own }: Vocabulary<KnownHeading>,
): ReadAnswers {
  const byColumn = new Map<number, Meant>();
  const findings: Finding[] = [];
  const twice = new Set<number>();
  for (const [written, answer] of columns) {
    const column = findColumn(table, written);
    const meant = meantBy(answer, own);
    if (typeof column === "string") findings.push(faultOf(context, written, column));
    if (typeof meant === "string") findings.push(faultOf(context, written, meant));
    if (typeof column === "string" || typeof meant === "string") continue;
    const before = byColumn.get(column);
    if (before !== undefined && before.name !== meant.name) {
      twice.add(column);
      findings.push(
        faultOf(
          context,
          written,
          `is answered twice, as ${before.name} and as ${meant.name}; allowed is one answer for a column`,
        ),
      );
    }
    byColumn.set(column, meant);
  }
  for (const column of twice) byColumn.delete(column);
  return { byColumn, findings };
}

function faultOf({ file, answersAt }: SettleContext, written: string, message: string): Finding {
  const at = { ...(answersAt ?? { file }), path: `${answersAt?.path ?? "columns"} ${written}`.trim() };
  return { code: "answer-without-match", severity: "error", at, message };
}

/** The column by its heading with its group, by its heading alone where one has it, by its letters, or by the heading's cell. */
function findColumn({ columns, isTurned }: FoundTable, written: string): number | string {
  const asked = plainAnswer(written);
  const whole = placesOf(columns, (column) => plainAnswer(headingText(column)) === asked);
  const same = whole.length > 0 ? whole : placesOf(columns, ({ words }) => plainAnswer(words) === asked);
  const at = written.trim().toUpperCase();
  const found =
    same.length > 0 ? same : placesOf(columns, ({ cell }) => nameOf(cell, isTurned) === at || cellInSheet(cell) === at);
  const [only, ...others] = found;
  if (only !== undefined && others.length === 0) return only;
  if (only !== undefined) {
    const places = found.map((index) => placeText(columns[index]));
    return `is the heading of ${found.length} columns; allowed is one of ${places.join(", ")}`;
  }
  const near = nearestWords(written, [...new Set(columns.map(headingText))], 3);
  return `is no heading of the sheet; the nearest are ${near.join(", ")}`;
}

/** A column by its letters; of a turned table a row by its number. */
function nameOf(cell: FoundColumn["cell"], isTurned: boolean): string {
  return isTurned ? String(cell.row ?? cell.line) : columnLetters(cell.column);
}

function placeText(column: FoundColumn | undefined): string {
  return column === undefined ? "" : `${headingText(column)} (${cellInSheet(column.cell)})`;
}

function placesOf(columns: readonly FoundColumn[], isMeant: (column: FoundColumn) => boolean): readonly number[] {
  return columns.flatMap((column, index) => (isMeant(column) ? [index] : []));
}

/** Headings are compared as written, whatever their case and spacing. */
function plainAnswer(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/\s+/g, " ")
    .replace(/ ?\/ ?/g, "/")
    .trim();
}

const LEFT_OUT = new Set(["left out", "leave out", "ignore", "none"]);

/** One of our names, `note` or `left out`; else what is wrong. */
function meantBy(answer: string, ours: Vocabulary<KnownHeading>["own"]): Meant | string {
  const plain = plainAnswer(answer);
  if (LEFT_OUT.has(plain)) return { name: NOTE, how: "left out by the job", isAnswer: true, isLeftOut: true };
  if (plain === NOTE) return { name: NOTE, how: "kept as a note by the job", isAnswer: true };
  const pattern = plain === SQUARE ? ours.get(plainHeading("Pattern size")) : undefined;
  if (pattern !== undefined)
    return { name: pattern.name, how: "answered by the job: the same both ways", isAnswer: true, isSquare: true };
  const own = ours.get(plainHeading(answer));
  if (own !== undefined) return { name: own.name, how: "answered by the job", isAnswer: true };
  const near = nearestWords(answer, [...new Set([...ours.values()].map(({ name }) => name))], 3);
  return `"${answer}" is no name of a heading; allowed are our own names, note, or left out (nearest: ${near.join(", ")})`;
}

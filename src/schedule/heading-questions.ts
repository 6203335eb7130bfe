/** Columns that nothing settles -> one question each, or one for a pair, with the lines that answer it; and the list of unknown ones. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { nameCell } from "../readers/cell-place.js";
import { errorAt } from "../readers/source.js";
import { groupBy } from "../units/group-by.js";
import { DESCRIBED } from "./heading-descriptions.js";
import type { HeadingName } from "./heading-synonyms.js";
import { NOTE } from "./heading-synonyms.js";
import { headingNamed } from "./headings.js";
import type { FoundColumn, FoundTable, ReadQuestion } from "./model.js";
import type { Settlement } from "./settled-column.js";
import { headingInAnswers, headingText, placeOfHeading } from "./settled-column.js";
import type { TableView } from "./table-view.js";
import type { Rivals } from "./twin-columns.js";

/** Questions, and the same as errors whose hints are the lines to add. */
export interface Asked {
  readonly questions: readonly ReadQuestion[];
  readonly findings: readonly Finding[];
}

/** One question a heading that is open, one for two headings that share their meanings, one for columns that differ. */
export function askHeadings(
  settled: readonly Settlement[],
  rivals: readonly Rivals<unknown>[],
  view: TableView,
  file: string,
): Asked {
  const open = settled.filter((one) => one.settled === null);
  const partners = partnersOf(open);
  const pairs = open.map((one) => ({ one, other: partners.get(one) ?? null }));
  const firsts = pairs.filter(({ one, other }) => other === null || one.index < other.index);
  const asked = firsts.map(({ one, other }) => ({
    one,
    question: other === null ? askOne(one, marksOnce(one.names, settled), view) : askPair(one, other, view),
  }));
  return {
    questions: [...asked.map(({ question }) => question), ...rivals.map((twins) => askRivals(twins, view))],
    findings: asked.map(({ one, question }) => toFinding(one, question, view.table, file)),
  };
}

/** Pairs of open columns that may be the same two things: an answer for one answers both. */
function partnersOf(open: readonly Settlement[]): ReadonlyMap<Settlement, Settlement> {
  const sides = groupBy(
    open.filter(({ doubt }) => doubt === "x or y"),
    ({ names }) => names.toSorted().join(),
  );
  const pairs = [...sides.values()].flatMap(([one, other, ...more]) =>
    one === undefined || other === undefined || more.length > 0 ? [] : [[one, other] as const],
  );
  return new Map(pairs.flatMap(([one, other]) => [[one, other] as const, [other, one] as const]));
}

/** A mark is not asked for where a column gives it. */
function marksOnce(names: readonly HeadingName[], settled: readonly Settlement[]): readonly HeadingName[] {
  const isGiven = settled.some((one) => one.settled?.name === "Mark");
  return isGiven ? names.filter((name) => name !== "Mark") : names;
}

function askOne({ column, index }: Settlement, names: readonly HeadingName[], view: TableView): ReadQuestion {
  const choices = names.map((name) => ({ line: lineOf(view.table, [[column, name]]), means: meansOf(name) }));
  const offered = names.includes(NOTE) ? choices : [...choices, noteChoice(column, view.table)];
  const kinds = names.filter((name) => name !== NOTE).map(meansOf);
  const text = `"${headingText(column)}" may be ${orList(kinds)}; nothing on the sheet proves which`;
  const mayGive = names.flatMap((name) => headingNamed(name)?.key ?? []);
  return { cells: cellsOf([index], view), text, choices: offered, ...(mayGive.length === 0 ? {} : { mayGive }) };
}

function noteChoice(column: FoundColumn, table: FoundTable): ReadQuestion["choices"][number] {
  return { line: lineOf(table, [[column, NOTE]]), means: meansOf(NOTE) };
}

function askPair(one: Settlement, other: Settlement, view: TableView): ReadQuestion {
  const [first = NOTE, second = NOTE] = one.names.toSorted();
  const ways = [
    [first, second],
    [second, first],
  ] as const;
  const choices = ways.map(([a, b]) => ({
    line: lineOf(view.table, [
      [one.column, a],
      [other.column, b],
    ]),
    means: `"${headingText(one.column)}" is ${meansOf(a)}, "${headingText(other.column)}" is ${meansOf(b)}`,
  }));
  const text = `"${headingText(one.column)}" and "${headingText(other.column)}": which lies along x and which along y? nothing on the sheet proves it`;
  return { cells: cellsOf([one.index, other.index], view), text, choices };
}

function askRivals({ name, columns }: Rivals<unknown>, view: TableView): ReadQuestion {
  const choices = columns.map((kept) => ({
    line: lineOf(
      view.table,
      columns.filter((other) => other !== kept).map(({ column }) => [column, "left out"] as const),
    ),
    means: `${name} is what stands under ${headingText(kept.column)} (${nameCell(view.table.sheet, kept.column.cell)})`,
  }));
  const headings = columns.map(({ column }) => `"${headingText(column)}"`);
  const key = headingNamed(name)?.key;
  return {
    ...(key === undefined ? {} : { mayGive: [key] }),
    cells: cellsOf(
      columns.map(({ index }) => index),
      view,
    ),
    text: `${headings.join(" and ")} are both ${name} and differ: which holds?`,
    choices,
  };
}

/** The line that a job adds below `schedule:`. */
function lineOf(table: FoundTable, meant: readonly (readonly [FoundColumn, HeadingName])[]): string {
  const entries = meant.map(([column, name]) => `${JSON.stringify(headingInAnswers(table, column))}: ${name}`);
  return `columns: { ${entries.join(", ")} }`;
}

/** The headings' cells and those below them that hold something. */
function cellsOf(indexes: readonly number[], view: TableView): readonly string[] {
  const { table } = view;
  return indexes.flatMap((index) => {
    const heading = table.columns[index]?.cell;
    const below = table.rows.flatMap((row) => {
      const cell = row[index];
      return cell === undefined || cell.text.trim() === "" ? [] : [nameCell(table.sheet, cell)];
    });
    return heading === undefined ? below : [nameCell(table.sheet, heading), ...below];
  });
}

function meansOf(name: HeadingName): string {
  return DESCRIBED[name] ?? name;
}

function orList(texts: readonly string[]): string {
  const [last, ...others] = texts.toReversed();
  return others.length === 0 ? `${last ?? ""}, or none of ours` : `${others.reverse().join(", ")} or ${last}`;
}

function toFinding({ column }: Settlement, { text, choices }: ReadQuestion, table: FoundTable, file: string): Finding {
  const [first, ...others] = choices.map(({ line }) => line);
  const hint = `add to the job what is meant: ${[first, ...others].join(", or ")}`;
  return errorAt(placeOfHeading(file, table, column), "asked-heading", text, hint);
}

const MOST_LISTED = 20;

/** One warning that lists the headings that are not known, and what became of them. */
export function tellUnknown(
  settled: readonly Settlement[],
  table: FoundTable,
  file: string,
  became: "note" | "left out",
): readonly Finding[] {
  const kept = settled.filter(({ names, settled: meant }) => names.length === 0 && meant?.isAnswer !== true);
  const [first] = kept;
  if (first === undefined) return [];
  const names = kept.map(({ column }) => headingInAnswers(table, column));
  const are = kept.length === 1 ? "1 heading is" : `${kept.length} headings are`;
  const kind = became === "left out" ? "left out" : kept.length === 1 ? "kept as a note" : "kept as notes";
  const message = `${are} not known and ${kind}: ${listed(names, MOST_LISTED)}`;
  const hint = "columns: { HEADING: NAME } says what one stands for, or note, or left out";
  const finding = errorAt(placeOfHeading(file, table, first.column), "headings-not-known", message, hint);
  return [{ ...finding, severity: "warning" }];
}

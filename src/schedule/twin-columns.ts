/** Columns that stand for one thing: those that say the same are kept, those that do not are asked. */
import type { Finding } from "../diagnostics/finding.js";
import { cellInSheet } from "../readers/cell-place.js";
import { errorAt } from "../readers/source.js";
import { groupBy } from "../units/group-by.js";
import { plainCellText } from "./cell-shapes.js";
import type { FoundTable } from "./model.js";
import type { KnownHeading, SettledColumn } from "./settled-column.js";
import { headingInAnswers, headingText, placeOfHeading } from "./settled-column.js";
import type { TableView } from "./table-view.js";

/** Columns of one heading whose cells differ. */
export interface Rivals<H> {
  readonly name: string;
  readonly columns: readonly SettledColumn<H>[];
}

/** The columns with what became of twins. */
export interface HeldTwins<H> {
  readonly columns: readonly SettledColumn<H>[];
  readonly asked: readonly Rivals<H>[];
  readonly findings: readonly Finding[];
}

/** Holds columns of the same heading against each other, row by row. Several columns of notes are all kept as notes. */
export function holdTwins<H extends KnownHeading>(
  columns: readonly SettledColumn<H>[],
  view: TableView,
  file: string,
): HeldTwins<H> {
  const asked: Rivals<H>[] = [];
  const findings: Finding[] = [];
  const changed = new Map<number, SettledColumn<H>>();
  for (const twins of twinsOf(columns)) {
    const name = twins[0]?.heading?.name ?? "";
    if (name === "Note") {
      for (const twin of twins) changed.set(twin.index, { ...twin, heading: null, as: "note" });
      continue;
    }
    const differ = firstDifference(twins, view);
    if (differ !== null) {
      asked.push({ name, columns: twins });
      findings.push(toldDifference(name, differ, view, file));
      for (const twin of twins)
        changed.set(twin.index, { ...twin, heading: null, as: "asked", how: `another column is ${name} too` });
    } else for (const twin of repeated(twins, view)) changed.set(twin.index, twin);
  }
  return { columns: columns.map((column) => changed.get(column.index) ?? column), asked, findings };
}

function twinsOf<H extends KnownHeading>(
  columns: readonly SettledColumn<H>[],
): readonly (readonly SettledColumn<H>[])[] {
  const byName = groupBy(
    columns.filter(({ heading }) => heading !== null),
    ({ heading }) => heading?.name,
  );
  return [...byName.values()].filter((twins) => twins.length > 1);
}

interface Difference {
  readonly row: number;
  readonly first: SettledColumn<unknown>;
  readonly other: SettledColumn<unknown>;
}

function firstDifference(twins: readonly SettledColumn<unknown>[], view: TableView): Difference | null {
  for (let row = 0; row < view.rows; row++) {
    const filled = twins.filter(({ index }) => view.textsOf(index)[row] !== "");
    const [first, ...others] = filled;
    const other = others.find((twin) => first !== undefined && !isSame(first.index, twin.index, row, view));
    if (first !== undefined && other !== undefined) return { row, first, other };
  }
  return null;
}

/** The same text, or the same length. */
function isSame(a: number, b: number, row: number, view: TableView): boolean {
  const [one, other] = [view.textsOf(a)[row] ?? "", view.textsOf(b)[row] ?? ""];
  const length = view.lengthsOf(a)[row];
  return plainCellText(one) === plainCellText(other) || (length != null && length === view.lengthsOf(b)[row]);
}

function toldDifference(name: string, { row, first, other }: Difference, view: TableView, file: string): Finding {
  const { table } = view;
  const cellOf = ({ index, column }: SettledColumn<unknown>) => {
    const cell = table.rows[row]?.[index];
    return `"${cell?.text ?? ""}" in ${cell === undefined ? "" : cellInSheet(cell)} under ${headingText(column)}`;
  };
  const message = `${name} is given twice and differs: ${cellOf(first)}, ${cellOf(other)}; allowed is one column, the other left out or a note`;
  return errorAt(
    placeOfHeading(file, table, other.column),
    "two-columns-differ",
    message,
    `add to the job: ${leaveOut(other, table)}`,
  );
}

/** The line that leaves a column out. */
function leaveOut({ column }: SettledColumn<unknown>, table: FoundTable): string {
  return `columns: { ${JSON.stringify(headingInAnswers(table, column))}: left out }`;
}

/** The order of their words, so that the order of the columns decides nothing that shows. */
function byWords(a: SettledColumn<unknown>, b: SettledColumn<unknown>): number {
  const [one, other] = [headingText(a.column), headingText(b.column)];
  return one < other ? -1 : one > other ? 1 : a.index - b.index;
}

/** A column whose every filled cell another one repeats is left out. */
function repeated<H>(twins: readonly SettledColumn<H>[], view: TableView): readonly SettledColumn<H>[] {
  const filled = ({ index }: SettledColumn<H>) => view.textsOf(index).filter((text) => text !== "").length;
  const [fullest, ...others] = twins.toSorted((a, b) => filled(b) - filled(a) || byWords(a, b));
  if (fullest === undefined) return [];
  const kept = view.textsOf(fullest.index);
  const isRepeated = ({ index }: SettledColumn<H>) =>
    view.textsOf(index).every((text, row) => text === "" || kept[row] !== "");
  return others.filter(isRepeated).map((twin) => ({
    ...twin,
    heading: null,
    as: "left out",
    how: `says the same as ${headingText(fullest.column)}`,
  }));
}

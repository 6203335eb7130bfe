/** A column of a table and what it stands for. */
import type { Finding } from "../diagnostics/finding.js";
import { columnLetters, placeOfCell } from "../readers/cell-place.js";
import type { SourcePlace } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { LookUp } from "./heading-meanings.js";
import type { Doubt, HeadingName } from "./heading-synonyms.js";
import type { Heading } from "./headings.js";
import type { FormName, FoundColumn, FoundTable } from "./model.js";

/** A column and what it stands for. */
export interface SettledColumn<H = Heading> {
  readonly column: FoundColumn;
  /** Place among the columns of the table, from 0. */
  readonly index: number;
  /** null where it is no value: a note, left out, or asked. */
  readonly heading: H | null;
  readonly as: "value" | "note" | "left out" | "asked";
  /** What settled it, or why it is none, in a few words; "" where its words say it all. */
  readonly how: string;
  /** Set where one length stands for both ways. */
  readonly isSquare?: true;
}

/** What settling hangs on beside the table. */
export interface SettleContext {
  readonly file: string;
  readonly unit: Unit;
  /** Keys that defaults or kinds of the job give, as `rods.diameter`. */
  readonly given?: ReadonlySet<string>;
  /** Names of the job's kinds. */
  readonly kinds?: readonly string[];
  /** Where the job's answers stand, for faults in them; omitted: the sheet. */
  readonly answersAt?: Finding["at"];
}

/** What a column was settled to, and how, in a few words. */
export interface Meant {
  /** A heading of the registry, or `note`. */
  readonly name: HeadingName;
  readonly how: string;
  /** Set where the job says it. */
  readonly isAnswer?: true;
  /** Set where an answer leaves the column out. */
  readonly isLeftOut?: true;
  /** Set where an answer says that one length stands for both ways. */
  readonly isSquare?: true;
}

/** A heading of a registry, as far as settling looks at it. */
export interface KnownHeading {
  readonly name: HeadingName;
  readonly formName: FormName;
}

/** What a kind of sheet has columns for. */
export interface Vocabulary<H extends KnownHeading> {
  readonly lookUp: LookUp;
  readonly named: (name: HeadingName) => H | undefined;
  /** Every heading by its own names, in plain spelling. */
  readonly own: ReadonlyMap<string, H>;
  /** True for a heading that only a sheet made for this program has. */
  isOurs(heading: H): boolean;
  /** What becomes of a column that is not known. */
  readonly unknown: "note" | "left out";
}

/** A column on its way. */
export interface Settlement {
  readonly column: FoundColumn;
  readonly index: number;
  readonly names: readonly HeadingName[];
  readonly doubt: Doubt | null;
  /** null while it is open. */
  readonly settled: Meant | null;
}

/** Where a column's heading stands, for findings. */
export function placeOfHeading(file: string, { sheet }: FoundTable, column: FoundColumn): SourcePlace {
  return placeOfCell(file, sheet, column.cell, headingText(column));
}

/** A heading with the group over it, as answers write it: `ANCHOR RODS / QTY`. */
export function headingText({ words, group }: Pick<FoundColumn, "words" | "group">): string {
  return group === "" ? words : `${group} / ${words}`;
}

/** A heading as answers name it: by its words, or by its column or row where another says the same or it says nothing. */
export function headingInAnswers(table: FoundTable, column: FoundColumn): string {
  const text = headingText(column);
  if (text !== "" && timesWritten(table).get(text.toLowerCase()) === 1) return text;
  return table.isTurned ? String(column.cell.row ?? column.cell.line) : columnLetters(column.cell.column);
}

/** How often each heading stands in a table, counted once for each. */
const TIMES = new WeakMap<FoundTable, ReadonlyMap<string, number>>();

function timesWritten(table: FoundTable): ReadonlyMap<string, number> {
  const known = TIMES.get(table);
  if (known !== undefined) return known;
  const times = new Map<string, number>();
  for (const column of table.columns) {
    const text = headingText(column).toLowerCase();
    times.set(text, (times.get(text) ?? 0) + 1);
  }
  TIMES.set(table, times);
  return times;
}

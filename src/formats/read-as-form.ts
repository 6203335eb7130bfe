/** What was understood of a sheet, as its writers take it: plain texts, nothing of which has to be looked up. */

/** One line of the read-as table; "" where there is nothing to say. */
export interface ReadAsEntry {
  /** Mark of the base, of several that share a row with commas between: `B4, B5`. */
  readonly mark: string;
  /** Place of the cell as its spreadsheet names it, as `Bases!E7`. */
  readonly cell: string;
  /** As the sheet writes it, with its group. */
  readonly heading: string;
  /** The cell's own text. */
  readonly written: string;
  /** Our own heading for the key. */
  readonly name: string;
  /** Key of the job file, as `rods.diameter`. */
  readonly key: string;
  /** The value as the job file has it. */
  readonly value: string;
  /** in, mm or ft of a length. */
  readonly unit: string;
  readonly givenBy: GivenBy;
  /** How it was understood, or why it was left out. */
  readonly remark: string;
}

/** Who gave a value, or what became of a text that gives none. */
export type GivenBy =
  | "row"
  | "cell above"
  | "other base"
  | "note"
  | "answer"
  | "default"
  | "kind"
  | "the job"
  | "kept as a note"
  | "left out"
  | "asked";

/** A question with the lines that answer it, each with what it means. */
export interface ReadAsQuestion {
  readonly cells: readonly string[];
  readonly text: string;
  readonly choices: readonly { readonly line: string; readonly means: string }[];
}

/** What was understood of one sheet. */
export interface ReadAsForm {
  readonly file: string;
  /** "" for a text file. */
  readonly sheet: string;
  /** Unit of bare lengths; "" where it is asked. */
  readonly unit: string;
  readonly entries: readonly ReadAsEntry[];
  readonly questions: readonly ReadAsQuestion[];
}

/** The job that a read-as table belongs to, for its title. */
export interface ReadAsJob {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  readonly status: string;
  readonly date: string;
}

/** Headings of the read-as table; the last column is for the checker's pen. */
export const READ_AS_COLUMNS = [
  "base",
  "cell",
  "heading",
  "written",
  "taken as",
  "key",
  "value",
  "unit",
  "given by",
  "remark",
  "ticked",
] as const;

/** The cells of one line, in the order of the headings. */
export function readAsCells(entry: ReadAsEntry): readonly string[] {
  const { mark, cell, heading, written, name, key, value, unit, givenBy, remark } = entry;
  return [mark, cell, heading, written, name, key, value, unit, givenBy, remark, ""];
}

/** The bases that a line is about. */
export function marksOf({ mark }: Pick<ReadAsEntry, "mark">): readonly string[] {
  return mark === "" ? [] : mark.split(", ");
}

const WORDS: ReadonlyMap<string, string> = new Map([
  ["in", "inches"],
  ["ft", "feet"],
  ["mm", "millimetres"],
]);

/** `in` -> `inches`; what is no unit of lengths stays. */
export function unitWord(unit: string): string {
  return WORDS.get(unit) ?? unit;
}

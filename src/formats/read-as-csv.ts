/** The read-as table as CSV: one line for every value taken and for every text that was not. */
import { writeCsvRows } from "./csv-cells.js";
import type { ReadAsForm } from "./read-as-form.js";
import { READ_AS_COLUMNS, readAsCells } from "./read-as-form.js";

/** Headings in the first line, lines in the order of the sheet. */
export function writeReadAsCsv({ entries }: Pick<ReadAsForm, "entries">): string {
  return writeCsvRows([READ_AS_COLUMNS, ...entries.map(readAsCells)]);
}

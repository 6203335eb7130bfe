/** A list as CSV: headings that name their units, then rows; sums are left to whoever adds up. */
import { cellValue, type ListTable } from "../lists/index.js";
import { writeCsvRows } from "./csv-cells.js";

/** Figures are numbers with a point. */
export function writeListCsv({ columns, rows }: ListTable): string {
  return writeCsvRows([columns.map(({ heading }) => heading), ...rows.map((row) => row.map(cellValue))]);
}

/** Whether a sheet says by itself what is taken of it: then there is nothing to tick off. */
import type { Table } from "../readers/inputs.js";
import { plainHeading } from "./headings.js";
import type { FoundTable } from "./model.js";
import type { RowValues } from "./row-values.js";
import type { ReadColumn } from "./sheet-cell.js";

/** True where every heading is one of our own names, every cell was taken as written, and nothing was left out. */
export function isPlainSheet(
  table: FoundTable,
  columns: readonly ReadColumn[],
  rows: readonly RowValues[],
  sheet: Table,
): boolean {
  return (
    !table.isTurned &&
    table.leftOut.length === 0 &&
    columns.every(isOwnHeading) &&
    rows.every(isAsWritten) &&
    sheet.rows.every((row) => row.every(({ remark, isHidden }) => remark === undefined && isHidden !== true))
  );
}

function isOwnHeading({ role, name, found: { words, group } }: ReadColumn): boolean {
  return role.kind === "value" && group === "" && plainHeading(words) === plainHeading(name);
}

function isAsWritten({ row, taken, kept, notTaken, sameAs }: RowValues): boolean {
  if (kept.length > 0 || sameAs !== null || row.marks.length > 1 || row.kind === "asked") return false;
  return (
    taken.every(({ origin, remark }) => origin === "row" && remark === "") &&
    notTaken.every(({ from }) => /^[-\u2013\u2014]$/.test(from.text.trim()))
  );
}

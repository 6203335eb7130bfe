/** Sheets -> an XLSX file, written by a library that nobody here wrote (write-excel-file). */
import writeWorkbook from "write-excel-file/node";
import type { Cell, Merge, Table } from "../../src/readers/inputs.js";

/** The sheets in their order; texts as texts, merges as merges. */
export async function xlsxOf(tables: readonly Table[]): Promise<Uint8Array> {
  const sheets = tables.map((table) => ({ data: dataOf(table), sheet: table.sheet }));
  return new Uint8Array(await writeWorkbook(sheets as never).toBuffer());
}

function dataOf({ rows, merges = [] }: Table): readonly unknown[][] {
  return rows.map((row) => row.map((cell) => writtenCell(cell, merges)));
}

function writtenCell({ text, line, column }: Cell, merges: readonly Merge[]): unknown {
  const merge = merges.find(({ top, left }) => top === line && left === column);
  if (text === "" && merge === undefined) return null;
  const spans =
    merge === undefined ? {} : { columnSpan: merge.right - merge.left + 1, rowSpan: merge.bottom - merge.top + 1 };
  return { value: text, type: String, ...spans };
}

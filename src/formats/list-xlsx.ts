/** Lists as sheets of one workbook. */
import { cellValue, type ListTable } from "../lists/index.js";
import type { XlsxSheet } from "./xlsx-writer.js";
import { writeXlsx } from "./xlsx-writer.js";

/** Which job the lists are of. */
export interface ListHead {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  readonly status: string;
  readonly date: string;
}

/** One sheet a list: which job and revision, what is to be known of the list, the table, its sums. */
export function writeListsXlsx(head: ListHead, tables: readonly ListTable[]): Uint8Array {
  return writeXlsx(tables.map((table) => listSheet(head, table)));
}

function listSheet({ number, title, revision, status, date }: ListHead, table: ListTable): XlsxSheet {
  const release = status === "released" ? "" : "NOT RELEASED   ";
  return {
    name: table.name,
    title: [
      `${table.title}   Job ${number}  ${title}`.trimEnd(),
      `${release}Revision ${revision}, ${status}, ${date}`,
      ...table.remarks,
    ],
    columns: table.columns.map(({ heading, width, isWrapped }) => ({
      heading,
      width,
      ...(isWrapped ? { isWrapped } : {}),
    })),
    rows: table.rows.map((row) => row.map(cellValue)),
    totals: table.totals.map((row) => row.map(cellValue)),
  };
}

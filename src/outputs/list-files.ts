/** Lists as files: the sheets of a workbook, CSV, and tables of pages, all of one table. */
import { writeCsvRows } from "../formats/csv-cells.js";
import type { XlsxSheet } from "../formats/xlsx-writer.js";
import type { Job } from "../job/model/job.js";
import { cellValue, type ListTable } from "../lists/model.js";

/** A sheet under the lines that say of which job it is. */
export function listSheet({ name, title, columns, rows, totals, remarks }: ListTable, job: Job): XlsxSheet {
  const { number, revision, status, date } = job;
  return {
    name,
    title: [
      `${title}   Job ${number}  ${job.title}`.trimEnd(),
      `Revision ${revision}, ${status}, ${date}${status === "released" ? "" : ". NOT RELEASED: nothing is made by this list"}`,
      ...remarks,
    ],
    columns,
    rows: rows.map((row) => row.map(cellValue)),
    totals: totals.map((row) => row.map(cellValue)),
  };
}

/** Headings and rows, without totals: whoever adds them up counts nothing twice. */
export function listCsv({ columns, rows }: ListTable): string {
  return writeCsvRows([columns.map(({ heading }) => heading), ...rows.map((row) => row.map(cellValue))]);
}

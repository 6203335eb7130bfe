/** The read-as table as a workbook, to be ticked off against the print. */
import type { ReadAsForm, ReadAsJob } from "./read-as-form.js";
import { READ_AS_COLUMNS, readAsCells, unitWord } from "./read-as-form.js";
import type { XlsxColumn, XlsxSheet } from "./xlsx-writer.js";
import { writeXlsx } from "./xlsx-writer.js";

type ColumnName = (typeof READ_AS_COLUMNS)[number];

const WIDTHS: Readonly<Record<ColumnName, number>> = {
  base: 8,
  cell: 13,
  heading: 26,
  written: 24,
  "taken as": 18,
  key: 22,
  value: 18,
  unit: 6,
  "given by": 14,
  remark: 38,
  ticked: 9,
};

const WRAPPED: ReadonlySet<ColumnName> = new Set(["base", "heading", "written", "value", "remark"]);

const COLUMNS: readonly XlsxColumn[] = READ_AS_COLUMNS.map((heading) => ({
  heading,
  width: WIDTHS[heading],
  isWrapped: WRAPPED.has(heading),
}));

/** One sheet of lines; a second one of questions where something is asked. `job`: null before there is one. */
export function writeReadAsXlsx(form: ReadAsForm, job: ReadAsJob | null): Uint8Array {
  const { file, sheet, unit, entries, questions } = form;
  const from = sheet === "" ? file : `${file}, sheet ${sheet}`;
  const lengths = unit === "" ? "the unit of bare numbers is asked" : `bare numbers in ${unitWord(unit)}`;
  const lines: XlsxSheet = {
    name: "Read as",
    title: [
      job === null ? "READ AS" : `READ AS   Job ${job.number}  ${job.title}`.trimEnd(),
      ...(job === null ? [] : [`Revision ${job.revision}, ${job.status}, ${job.date}`]),
      `${from}; ${lengths}. Tick each line off against the print; what is written there holds.`,
      "Checked by:                              Date:",
    ],
    columns: COLUMNS,
    rows: entries.map(readAsCells),
  };
  return writeXlsx(questions.length === 0 ? [lines] : [lines, questionSheet(form)]);
}

function questionSheet({ questions }: ReadAsForm): XlsxSheet {
  return {
    name: "Asked",
    title: ["ASKED   each is answered by one of its lines, in the job file"],
    columns: [
      { heading: "number", width: 8 },
      { heading: "cells", width: 24, isWrapped: true },
      { heading: "question", width: 60, isWrapped: true },
      { heading: "line", width: 50, isWrapped: true },
      { heading: "means", width: 44, isWrapped: true },
    ],
    rows: questions.flatMap(({ cells, text, choices }, index) => {
      const [first, ...others] = choices;
      const rest = others.map(({ line, means }) => [index + 1, "", "", line, means]);
      return [[index + 1, cells.join(", "), text, first?.line ?? "", first?.means ?? ""], ...rest];
    }),
  };
}

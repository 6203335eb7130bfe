/** Lists of a job as typed tables: the workbook, its CSV twin and its pages are all written from the same one. */

/** A text, a number, or an empty cell. A figure has a text of its own for pages: `34-1/2`, for 34.5. */
export type ListCell = string | number | null | ListFigure;

/** A number and how people read it. */
export interface ListFigure {
  readonly value: number;
  readonly text: string;
}

/** A column; `heading` names the unit of its numbers. */
export interface ListColumn {
  readonly heading: string;
  /** In digits of the font, for a workbook. */
  readonly width: number;
  readonly isWrapped?: true;
  /** Figures stand to the right on pages. */
  readonly isFigure?: true;
}

/** Some columns of a table as they stand on a page, each by its heading and the short title that it has there. */
export interface PageView {
  readonly title: string;
  readonly columns: readonly (readonly [heading: string, short: string])[];
}

/** One table. Rows are as wide as its columns. */
export interface ListTable {
  /** Part of a file name, and name of the sheet in words. */
  readonly key: string;
  readonly name: string;
  /** In capitals. */
  readonly title: string;
  readonly columns: readonly ListColumn[];
  readonly rows: readonly (readonly ListCell[])[];
  /** Sums under the rows, in workbook and pages: a CSV has rows alone, so that whoever adds them up counts nothing twice. */
  readonly totals: readonly (readonly ListCell[])[];
  /** Sentences above the table of the workbook and below that of the page. */
  readonly remarks: readonly string[];
  /** As it is on pages: one table under the other; none: on no page. */
  readonly views: readonly PageView[];
}

/** What a cell counts as. */
export function cellValue(cell: ListCell): string | number | null {
  return typeof cell === "object" && cell !== null ? cell.value : cell;
}

/** What a cell says on a page. */
export function cellText(cell: ListCell): string {
  if (cell === null) return "";
  if (typeof cell === "object") return cell.text;
  return typeof cell === "number" ? String(cell) : cell;
}

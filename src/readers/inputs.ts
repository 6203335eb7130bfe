/** What the shells hand in: names and texts or bytes. Nothing below the shells opens a file. */

/** One cell with the text a person sees, and where it stands (1-based). */
export interface Cell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
  /** Set where the cell cannot be read as typed, as a date that a spreadsheet made of `3/4`. */
  readonly fault?: string;
}

/** A spreadsheet as rows of cells, headings included. */
export interface Table {
  readonly kind: "table";
  readonly sheet: string;
  readonly rows: readonly (readonly Cell[])[];
}

/**
 * `job` is the name of the job file among `files`; the other names are those by which the job refers to them (schedule,
 * shop file). An XLSX workbook is opened beforehand by `openWorkbook` (its reader is asynchronous) and handed in as a table.
 */
export interface Inputs {
  readonly job: string;
  readonly files: ReadonlyMap<string, string | Uint8Array | Table>;
}

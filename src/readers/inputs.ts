/** What the shells hand in: names and texts or bytes. Nothing below the shells opens a file. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { SourceNode } from "./source.js";

/** One cell with the text a person sees, and where it stands (1-based). */
export interface Cell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
  /** Row of the sheet, set where it is another than the line: a text's quoted cells may hold breaks. */
  readonly row?: number;
  /** Set where the cell cannot be read as typed, as a date that a spreadsheet made of `3/4`. */
  readonly fault?: string;
  /** Set where its whole text is struck out. */
  readonly isStruck?: boolean;
  /** Set where its row or column is hidden, or a merge covers it. */
  readonly isHidden?: boolean;
  /** What a person should know of it though it is read: that a part was struck out, that its format shows the unit. */
  readonly remark?: string;
}

/** Cells that are merged into one, counted from 1: its text stands in the upper left. */
export interface Merge {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** A spreadsheet as rows of cells, headings included. */
export interface Table {
  readonly kind: "table";
  readonly sheet: string;
  readonly rows: readonly (readonly Cell[])[];
  /** What its user should know of it though it is read: warnings, as of hidden rows. */
  readonly remarks?: readonly Finding[];
  readonly merges?: readonly Merge[];
  /** Set where the sheet itself is hidden. */
  readonly isHidden?: boolean;
}

/** A workbook that was opened, its sheets in their order. */
export interface Workbook {
  readonly kind: "workbook";
  readonly sheets: readonly Table[];
}

/** Most cells that are read of a sheet, counted as rows x columns from the first to the last that hold something. */
export const MOST_CELLS = 2_000_000;

/** A YAML file that was parsed already, to find the files that it names: it is not parsed again. */
export interface ParsedFile {
  readonly kind: "parsed";
  readonly content: string | Uint8Array;
  readonly root: Outcome<SourceNode>;
}

/** A file that is there and could not be opened, with why: whoever reads it tells that. */
export interface UnopenedFile {
  readonly kind: "unopened";
  readonly findings: readonly Finding[];
}

/** One file as it is handed in. */
export type InputFile = string | Uint8Array | Table | Workbook | ParsedFile | UnopenedFile;

/**
 * `job` is the name of the job file among `files`; the other names are those by which the job refers to them (schedule,
 * shop file). An XLSX workbook is opened beforehand by `openWorkbook` (its reader is asynchronous) and handed in as a workbook, or as one of its tables.
 */
export interface Inputs {
  readonly job: string;
  readonly files: ReadonlyMap<string, InputFile>;
  /** Register of questions of the package before, or its summary.json: taken where the job itself names none. */
  readonly register?: string | Uint8Array;
}

/** The text or bytes of a file; undefined where there is no file, or a workbook, opened or not. */
export function contentOf(file: InputFile | undefined): string | Uint8Array | undefined {
  if (file === undefined || typeof file === "string" || file instanceof Uint8Array) return file;
  return file.kind === "parsed" ? file.content : undefined;
}

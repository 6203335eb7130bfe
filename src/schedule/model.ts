/** What the steps from a sheet as it was sent to the bases of a job hand to each other. */
import type { Finding } from "../diagnostics/finding.js";
import type { Cell } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";

/** A column of a table that was found (a row of the sheet, where the table has its bases across). */
export interface FoundColumn {
  /** The heading's own words, line breaks as spaces. */
  readonly words: string;
  /** The words over it that hold for several columns, as ANCHOR RODS; "" where there are none. */
  readonly group: string;
  /** Unit of the heading's brackets, of its number formats or of a row of units below it; null where none is written. */
  readonly unit: string | null;
  /** The cell that holds the words. */
  readonly cell: Cell;
}

/** A text that belongs to no value, and why: a title, a units row, a footnote. */
export interface LeftOut {
  readonly cell: Cell;
  readonly why: string;
}

/** A table that was found on a sheet, a base a row, whichever way it lay there. */
export interface FoundTable {
  /** Name of the sheet; "" for a text file. */
  readonly sheet: string;
  readonly title: string;
  /** Spreadsheet place of its first heading, as `B5`. */
  readonly upperLeft: string;
  readonly isTurned: boolean;
  readonly columns: readonly FoundColumn[];
  /** A cell a column, in their order; blank ones too. Cells of a merge repeat what it holds where it means them all. */
  readonly rows: readonly (readonly Cell[])[];
  readonly leftOut: readonly LeftOut[];
  /** Numbered footnotes: what stands after `2.` or `NOTE 2:`. */
  readonly notes: ReadonlyMap<string, string>;
}

/** What a cell refers to instead of saying it. */
export type Reference =
  | { readonly kind: "above" }
  | { readonly kind: "base"; readonly mark: string }
  | { readonly kind: "note"; readonly note: string };

/** A key of the job file, inside a base or a group of rods, and what the cell gives for it. */
export interface CellPart {
  readonly key: string;
  readonly node: SourceNode;
}

/** What the cells of a column hold, and so how they are read: the written grammar has one parser for each. */
export type FormName =
  | "text"
  | "note"
  | "word"
  | "yesNo"
  | "count"
  | "mark"
  | "length"
  | "lengths"
  | "point"
  | "points"
  | "elevation"
  | "thickness"
  | "rod"
  | "rods"
  | "grade"
  | "finish"
  | "material"
  | "pattern"
  | "spacing"
  | "pitch"
  | "plate"
  | "pier"
  | "hole"
  | "holes"
  | "washer"
  | "nut"
  | "bottom"
  | "section"
  | "outline"
  | "corner"
  | "opening";

/** One way to understand a cell. */
export interface PossibleReading {
  readonly parts: readonly CellPart[];
  readonly how: string;
}

/** What a cell gives. */
export type CellReading =
  | {
      readonly kind: "value";
      readonly parts: readonly CellPart[];
      /** How it was understood, where the text alone does not say it: "3 spaces at 6: 18 overall, 4 rods"; else "". */
      readonly how: string;
    }
  | { readonly kind: "blank" }
  | { readonly kind: "reference"; readonly to: Reference }
  /** Two readings or more, none of them proved by the text: other cells may settle it, else it is asked. */
  | { readonly kind: "choice"; readonly readings: readonly PossibleReading[]; readonly message: string }
  /** Says what was tried and what is allowed. */
  | { readonly kind: "fault"; readonly message: string };

/** Where a value that was taken comes from, or what became of a text that was not. */
export type ReadOrigin =
  | "row"
  | "above"
  | "base"
  | "note"
  | "answer"
  | "default"
  | "kind"
  | "job"
  | "kept"
  | "left out"
  | "asked";

/** One line of the read-as table. */
export interface ReadLine {
  /** Mark of the base; "" for what belongs to none. */
  readonly mark: string;
  /** Spreadsheet place, as `Bases!E7`; "" for a default or kind. */
  readonly cell: string;
  /** As the sheet writes it, with its group: `ANCHOR RODS / SIZE`. */
  readonly heading: string;
  /** The cell's own text. */
  readonly written: string;
  /** Key of the job file, as `rods.diameter`; "" where nothing was taken. */
  readonly key: string;
  /** The value as the job file would have it; "" where nothing was taken. */
  readonly taken: string;
  /** Unit of the value taken, where it is a length: in, mm, ft; "" for others. */
  readonly unit: string;
  readonly origin: ReadOrigin;
  /** How it was understood, or why it was left out, in a few words; "" where the text says it all. */
  readonly remark: string;
}

/** What must be answered before a job can be made of a sheet: each choice is a line for the job file. */
export interface ReadQuestion {
  /** Places that it is about, as `Bases!E5`. */
  readonly cells: readonly string[];
  readonly text: string;
  readonly choices: readonly { readonly line: string; readonly means: string }[];
  /** Names of ours that a heading may stand for, where it is about one. */
  readonly mayBe?: readonly string[];
}

/** What was understood of a sheet. */
export interface ReadAs {
  readonly file: string;
  readonly sheet: string;
  /** True where every heading is the program's own and every cell was taken as written: there is nothing to tick off. */
  readonly isPlain: boolean;
  readonly lines: readonly ReadLine[];
  readonly questions: readonly ReadQuestion[];
}

/** What a job says beside the file of a sheet: answers to what was asked. */
export interface TableAnswers {
  readonly sheet?: string;
  readonly table?: string;
  /** What headings stand for. */
  readonly columns: ReadonlyMap<string, string>;
  /** What notes give: a text, or texts by the names of headings. */
  readonly notes: ReadonlyMap<string, string | ReadonlyMap<string, string>>;
  /** What is meant in a cell, by its place as `E7`. */
  readonly cells: ReadonlyMap<string, string>;
}

/** What a job gives beside a table, and the place of the block that names it. */
export interface BesideTable {
  /** Keys that its defaults or kinds give every base, as `rods.diameter`. */
  readonly given: ReadonlySet<string>;
  /** Names of its kinds. */
  readonly kinds: readonly string[];
  /** Where its answers stand, for faults in them; null: in no file. */
  readonly answersAt: Finding["at"] | null;
}

/** The bases of a schedule; those of faulty cells are left in, so that the other faults are told too. */
export interface Schedule {
  readonly bases: readonly SourceNode[];
  readonly readAs: ReadAs;
  readonly findings: readonly Finding[];
  /** The heading under which a key of the job file stands. */
  readonly headingOf: (path: readonly PropertyKey[]) => string | null;
  /** Letters of that heading's column, where the schedule has it. */
  readonly columnOf: (path: readonly PropertyKey[]) => string | null;
}

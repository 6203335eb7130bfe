/** What a kind of rod pattern is made of: one file a kind says all of it, and everything else asks the registry. */
import type { z } from "zod";
import type { Point } from "../geometry/index.js";
import type { SourceNode } from "../readers/source.js";
import type { Length, Unit } from "../units/index.js";

/** Most rods on one plate. */
export const MOST_RODS = 200;

/** Offset or position in a base's own axes: exact, x right, y up, seen from above, origin at the working point. */
export interface Offset {
  readonly x: Length;
  readonly y: Length;
}

/**
 * A column of a schedule that fills one key of a pattern. Kinds may share one. `cell` says what a cell holds: one length,
 * one text or word, yes or no, several lengths, several points.
 */
export interface PatternColumn {
  /** As the starting spreadsheet writes it. */
  readonly name: string;
  readonly also: readonly string[];
  readonly cell: "length" | "text" | "word" | "yes or no" | "lengths" | "points";
  /** What to write, with an example. */
  readonly example: string;
  /** An overall length, which a column of its own may give from rod to rod instead. */
  readonly hasPitch?: true;
}

/** The filled cells of a row by the key of the pattern that they fill. */
export type PatternCells = Readonly<Partial<Record<string, SourceNode>>>;

/** A fault that a schema cannot see, at a key of the pattern. */
export interface PatternFault {
  readonly key: string;
  readonly code: string;
  readonly message: string;
}

/** Something that can be read in two ways: how it is read, and how to write either. */
export interface PatternDoubt extends PatternFault {
  readonly hint: string;
}

/** The pattern with its defaults, null where what is written gives none. */
export interface ResolvedPattern<Pattern> {
  readonly pattern: Pattern | null;
  readonly faults: readonly PatternFault[];
  readonly doubts?: readonly PatternDoubt[];
}

/**
 * `degrees`: the first rod's angle, counter-clockwise from +x. `on-axis`: the first rod on +x, or +y. `straddle`: the two
 * nearest rods lie half a pitch to either side of +x, or +y. Without `axis` as it was written: x.
 */
export type CircleStart =
  | { readonly kind: "degrees"; readonly degrees: number }
  | { readonly kind: "straddle"; readonly axis?: "x" | "y" }
  | { readonly kind: "on-axis"; readonly axis?: "x" | "y" };

/** Rods at one pitch on a circle about the working point. */
export interface BoltCircle {
  readonly diameter: Length;
  readonly count: number;
  readonly start: CircleStart;
}

/** A kind of pattern: how it is written in a job file (`Schema`) and what it is (`Pattern`). */
export interface PatternDefinition<
  Schema extends z.ZodType<{ readonly kind: string }>,
  Pattern extends { readonly kind: string },
> {
  readonly kind: Pattern["kind"];
  /** What prints write for the kind, in small letters. */
  readonly also: readonly string[];
  /** As written in a job file; bare numbers are in `unit`. */
  schema(unit: Unit): Schema;
  /** The columns that fill its keys, in the order of the starting spreadsheet. */
  readonly columns: Readonly<Record<Exclude<keyof z.output<Schema>, "kind">, PatternColumn>>;
  /** True when the filled cells of a row that names no kind mean this one. */
  isMeant(cells: PatternCells): boolean;
  resolve(document: z.output<Schema>): ResolvedPattern<Pattern>;
  /** How many rods it has, without laying them out. */
  count(pattern: Pattern): number;
  /** Positions in the base's own axes, in the order in which the pattern names them, snapped once; nothing is re-centred. */
  positions(pattern: Pattern): readonly Point[];
  /** The circle on which all of its rods stand at one pitch; null where it has none. Sheets draw it and call it out. */
  boltCircle(pattern: Pattern): BoltCircle | null;
}

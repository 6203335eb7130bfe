/** Cells that lists share: lengths and weights in the job's unit, and what is said of what is not given. */
import type { Input } from "../job/model/values.js";
import type { Weight } from "../template/index.js";
import { formatLength, toUnit, type Unit } from "../units/index.js";
import { POUND_IN_KG } from "../units/weight.js";
import type { ListCell, ListFigure } from "./model.js";

/** Of a value that nobody gave; which key would give it stands in the notes. */
export const NOT_GIVEN = "not given";

/** The unit of weights in a list. */
export function weightUnit(unit: Unit): Weight["unit"] {
  return unit === "in" ? "lb" : "kg";
}

/** How headings of pages name the unit of lengths. */
export const UNIT_WORDS: Readonly<Record<Unit, string>> = { in: "inches", mm: "mm" };

/** A length of any size, nanometres. */
export function lengthCell(length: number, unit: Unit): ListFigure {
  return { value: toUnit(length, unit), text: formatLength(length, unit) };
}

/** The same of an input, or that it is not given. */
export function lengthInputCell(input: Input<number>, unit: Unit): ListCell {
  return input.kind === "given" ? lengthCell(input.value, unit) : NOT_GIVEN;
}

/** A text of the job, or that it is not given. */
export function textCell(input: Input<string>): string {
  return input.kind === "given" ? input.value : NOT_GIVEN;
}

/** Thousandths of the job's unit of weight, the finest that lists have: sums of rows are those of what they show. */
export function thousandths(kilograms: number, unit: Unit): number {
  return Math.round((unit === "in" ? kilograms / POUND_IN_KG : kilograms) * 1000);
}

/** A weight of one piece. */
export function weightEachCell(inThousandths: number | null): ListCell {
  if (inThousandths === null) return NOT_GIVEN;
  const value = inThousandths / 1000;
  return { value, text: value.toFixed(3) };
}

/** A weight of many; pages show it to the tenth. */
export function weightTotalCell(inThousandths: number | null): ListCell {
  if (inThousandths === null) return NOT_GIVEN;
  const value = inThousandths / 1000;
  return { value, text: value.toFixed(1) };
}

/** A sum of weights: what is known of them; with a star on pages where some are not, and not given where none is. */
export function weightSumCell(inThousandths: readonly (number | null)[]): ListCell {
  const { sum, unknown } = sumKnown(inThousandths);
  if (unknown === inThousandths.length && unknown > 0) return NOT_GIVEN;
  const value = sum / 1000;
  return { value, text: `${value.toFixed(1)}${unknown === 0 ? "" : "*"}` };
}

/** The sum of what is known, and how many are not. */
export function sumKnown(values: readonly (number | null)[]): { readonly sum: number; readonly unknown: number } {
  const known = values.filter((value) => value !== null);
  return { sum: known.reduce((sum, value) => sum + value, 0), unknown: values.length - known.length };
}

/** `HELD` where one of the bases is held, with which where there are others. */
export function heldWords(bases: readonly string[], { held, stopped }: ListedStops): string {
  const all = [...new Set(bases)];
  const words = (what: string, own: readonly string[]): readonly string[] => {
    if (own.length === 0) return [];
    return own.length === all.length ? [what] : [`${what}: ${own.join(" ")}`];
  };
  const own = all.filter((mark) => held.has(mark));
  const others = all.filter((mark) => stopped.has(mark) && !held.has(mark));
  return [...words("HELD", own), ...words("NOT RELEASED", others)].join("; ");
}

/** What lists say of bases. */
export interface ListedStops {
  /** Marks of bases that are held. */
  readonly held: ReadonlySet<string>;
  /** Marks of those that are not released, by their job or for a question that is open. */
  readonly stopped: ReadonlySet<string>;
}

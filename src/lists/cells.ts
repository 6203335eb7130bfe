/** Cells that lists share: lengths and weights in the job's unit, and what is said of what is not given. */
import type { Input } from "../job/model/values.js";
import type { Weight } from "../template/index.js";
import { formatLength, toUnit, type Unit } from "../units/index.js";
import type { ListCell, ListFigure } from "./model.js";

/** Of a value that nobody gave; which key would give it stands in the notes. */
export const NOT_GIVEN = "not given";

const KG_IN_POUND = 0.45359237;

/** The unit of weights in a list. */
export function weightUnit(unit: Unit): Weight["unit"] {
  return unit === "in" ? "lb" : "kg";
}

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

/** Hundredths of the job's unit of weight, the finest that lists have: sums of rows are those of what they show. */
export function hundredths(kilograms: number, unit: Unit): number {
  return Math.round((unit === "in" ? kilograms / KG_IN_POUND : kilograms) * 100);
}

/** A weight in hundredths. */
export function weightCell(inHundredths: number): ListFigure {
  const value = Math.round(inHundredths) / 100;
  return { value, text: value.toFixed(2) };
}

/** The same where the weight is known. */
export function weightCellOf(inHundredths: number | null): ListCell {
  return inHundredths === null ? NOT_GIVEN : weightCell(inHundredths);
}

/** The sum of what is known, and how many are not. */
export function sumKnown(values: readonly (number | null)[]): { readonly sum: number; readonly unknown: number } {
  const known = values.filter((value) => value !== null);
  return { sum: known.reduce((sum, value) => sum + value, 0), unknown: values.length - known.length };
}

/** `HELD` where one of the bases is held, with which where there are others. */
export function heldWords(bases: readonly string[], held: ReadonlySet<string>): string {
  const own = [...new Set(bases)].filter((mark) => held.has(mark));
  if (own.length === 0) return "";
  return new Set(bases).size === 1 ? "HELD" : `HELD: ${own.join(" ")}`;
}

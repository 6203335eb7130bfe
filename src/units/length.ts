/** Exact lengths: an integer number of nanometres. 1 in = 25 400 000 nm, 1/64 in = 396 875 nm, 0.001 mm = 1 000 nm. */

declare const lengthBrand: unique symbol;

/** An exact length in nanometres, always a safe integer. */
export type Length = number & { readonly [lengthBrand]: "nm" };

/** The units of a job. */
export type Unit = "in" | "mm";

/** The international inch, 25.4 mm exactly. */
export const NM_PER_INCH = 25_400_000;
/** A millimetre in nanometres. */
export const NM_PER_MM = 1_000_000;
/** Nanometres in one unit of a job. */
export const NM_PER_UNIT: Readonly<Record<Unit, number>> = { in: NM_PER_INCH, mm: NM_PER_MM };

/** Rounds half away from zero: `Math.round` is not symmetric and would break mirrored plates. */
export function roundSymmetric(value: number): number {
  return value < 0 ? -Math.round(-value) || 0 : Math.round(value);
}

/** A length of `value` nanometres, rounded half away from zero to the lattice. Throws on NaN or an unsafe magnitude: a bug. */
export function nanometres(value: number): Length {
  const rounded = roundSymmetric(value);
  if (!Number.isSafeInteger(rounded)) throw new RangeError(`not a length in nanometres: ${value}`);
  return rounded as Length;
}

/** `value` inches as a Length. */
export function inches(value: number): Length {
  return nanometres(value * NM_PER_INCH);
}

/** `value` millimetres as a Length. */
export function millimetres(value: number): Length {
  return nanometres(value * NM_PER_MM);
}

/** The length in millimetres, as a double: for coordinates. */
export function toMillimetres(length: Length): number {
  return length / NM_PER_MM;
}

/** The length in `unit`, rounded to 1e-6 in or 1e-5 mm: the figures of summary.json. */
export function toUnit(length: number, unit: Unit): number {
  const scale = unit === "in" ? 1e6 : 1e5;
  return roundSymmetric((length / NM_PER_UNIT[unit]) * scale) / scale || 0;
}

/** The exact sum; of no lengths zero. */
export function add(...lengths: readonly Length[]): Length {
  return lengths.reduce((sum, length) => sum + length, 0) as Length;
}

/** a - b, exact; negative where b is longer. */
export function subtract(a: Length, b: Length): Length {
  return (a - b) as Length;
}

/** Length times factor, rounded half away from zero to whole nanometres. */
export function scale(length: Length, factor: number): Length {
  return nanometres(length * factor);
}

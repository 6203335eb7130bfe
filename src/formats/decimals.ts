/** Millimetres of a drawing as its writers say them: short, since a sheet has thousands. */

/** Micrometres at the finest, no exponent, no minus zero. */
export function decimals(value: number): string {
  return thousandths(Math.round(value * 1000));
}

/** Of a whole number of thousandths. Made of whole numbers, as a fraction takes long to be written. */
export function thousandths(rounded: number): string {
  const size = Math.abs(rounded);
  const whole = Math.floor(size / 1000);
  return `${rounded < 0 ? "-" : ""}${whole}${FRACTIONS[size - whole * 1000] ?? ""}`;
}

/** Thousandths as they are written: nothing, `.001`, `.002`, on to `.999`. */
const FRACTIONS: readonly string[] = Array.from({ length: 1000 }, (_, i) => String(i / 1000).slice(1));

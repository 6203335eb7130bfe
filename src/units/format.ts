/**
 * Lengths to text. Lengths are rounded to whole ticks first and split afterwards, half away from zero, so that no carry is
 * lost: never 12 inches after feet, never 16/16. No locale, no exponent, no minus zero.
 */
import { NM_PER_INCH, NM_PER_UNIT, type Unit } from "./length.js";

/** 1/64 in, in nanometres: the finest fraction that is written. */
const TICK_64 = NM_PER_INCH / 64;

/** Denominators that inch fractions are rounded to. */
export type Denominator = 1 | 2 | 4 | 8 | 16 | 32 | 64;

/**
 * Without unit mark. Inches: a fraction to 1/64 where that is exact (`1-5/16`), otherwise decimals, at most 4. Millimetres:
 * decimals, at most 3. Trailing zeros are left out.
 */
export function formatLength(length: number, unit: Unit): string {
  return formatTo(length, unit, USUAL[unit]);
}

/** A tenth of a millimetre, in nanometres. */
const TENTH_MM = 100_000;

/**
 * Thickness of a plate as it is bought, without unit mark: as `formatLength`; in inches one that is no fraction, but whole
 * tenths of a millimetre, says these: `6 mm`.
 */
export function formatStock(length: number, unit: Unit): string {
  const isMetric = unit === "in" && !isFraction(length, unit) && length % TENTH_MM === 0;
  return isMetric ? formatWithUnit(length, "mm") : formatLength(length, unit);
}

/** Decimals that tell half a nanometre, the finest that a rule compares. */
const FINEST: Readonly<Record<Unit, number>> = { in: 8, mm: 7 };
const USUAL: Readonly<Record<Unit, number>> = { in: 4, mm: 3 };

/**
 * Two lengths as `formatLength` writes them, with more decimals where these would not show which is the longer: never the same
 * text for two lengths that differ, down to half a nanometre.
 */
export function formatApart(a: number, b: number, unit: Unit): readonly [string, string] {
  for (let places = USUAL[unit]; places < FINEST[unit]; places++) {
    if (Math.sign(roundedTo(a, unit, places) - roundedTo(b, unit, places)) === Math.sign(a - b)) {
      return [formatTo(a, unit, places), formatTo(b, unit, places)];
    }
  }
  return [formatTo(a, unit, FINEST[unit]), formatTo(b, unit, FINEST[unit])];
}

/** As `formatLength`; one that this would write as 0 though it is not, to half a nanometre. */
export function formatDifference(length: number, unit: Unit): string {
  const text = formatLength(length, unit);
  return text === "0" ? formatTo(length, unit, FINEST[unit]) : text;
}

function formatTo(length: number, unit: Unit, places: number): string {
  return isFraction(length, unit) ? formatInches(length, 64) : trimmed(formatDecimals(length, unit, places));
}

/** The length that such a text says, in nanometres. */
function roundedTo(length: number, unit: Unit, places: number): number {
  return isFraction(length, unit) ? length : Number(formatDecimals(length, unit, places)) * NM_PER_UNIT[unit];
}

function isFraction(length: number, unit: Unit): boolean {
  return unit === "in" && length % TICK_64 === 0;
}

/** As `formatLength`, with the unit: `1-5/16 in`, `32 mm`. */
export function formatWithUnit(length: number, unit: Unit): string {
  return `${formatLength(length, unit)} ${unit}`;
}

/** Inches rounded to `denominator` as a mixed number: `1-5/16`, `3/4`, `0`. No mark. */
export function formatInches(length: number, denominator: Denominator = 64): string {
  const ticks = toTicks(length, denominator);
  return sign(length, ticks) + mixed(ticks, denominator, "-");
}

/** Feet and inches rounded to `denominator`, inches kept after feet: `1'-0 5/8"`; below a foot inches alone: `5/8"`. */
export function formatFeetInches(length: number, denominator: Denominator = 16): string {
  const ticks = toTicks(length, denominator);
  const perFoot = 12 * denominator;
  const feet = Math.floor(ticks / perFoot);
  const inches = mixed(ticks % perFoot, denominator, " ");
  const kept = feet > 0 && !inches.includes(" ") && inches.includes("/") ? `0 ${inches}` : inches;
  return `${sign(length, ticks)}${feet > 0 ? `${feet}'-` : ""}${kept}"`;
}

/** A fixed number of decimals, 0 to 8, trailing zeros kept: `1.3125`, `-0.500`. No mark. */
export function formatDecimals(length: number, unit: Unit, places: number): string {
  const per = NM_PER_UNIT[unit];
  const scale = 10 ** places;
  const size = Math.abs(length);
  const part = Math.round(((size % per) * scale) / per);
  const whole = Math.floor(size / per) + (part === scale ? 1 : 0);
  const decimals = part === scale ? 0 : part;
  const minus = length < 0 && whole + decimals > 0 ? "-" : "";
  return places === 0 ? `${minus}${whole}` : `${minus}${whole}.${String(decimals).padStart(places, "0")}`;
}

function toTicks(length: number, denominator: number): number {
  return Math.round((Math.abs(length) * denominator) / NM_PER_INCH);
}

function sign(length: number, ticks: number): string {
  return length < 0 && ticks > 0 ? "-" : "";
}

/** Ticks as whole number and lowest-terms fraction, joined by `joint`. */
function mixed(ticks: number, denominator: number, joint: string): string {
  const whole = Math.floor(ticks / denominator);
  let above = ticks % denominator;
  let below = denominator;
  if (above === 0) return String(whole);
  while (above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  return whole === 0 ? `${above}/${below}` : `${whole}${joint}${above}/${below}`;
}

function trimmed(decimals: string): string {
  const text = decimals.replace(/\.?0+$/, "");
  return text === "-0" || text === "" ? "0" : text;
}

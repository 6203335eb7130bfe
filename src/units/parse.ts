/**
 * Text to exact lengths. All arithmetic is rational on whole numbers: 0.1 in, 1/64 in and 12.7 mm are exact. A value off
 * the nanometre lattice (1/3 in) is rounded to 1 nm, half away from zero; a value that is not zero but would round to zero
 * is refused.
 */
import { ownValue } from "../diagnostics/own-value.js";
import type { Length, Unit } from "./length.js";
import { plainText, quote, type Reading, refuse } from "./reading.js";

/** The longest length that is read: 100 m, in nanometres. A length of exactly this passes. */
export const LONGEST = 100_000_000_000n;
const LONGEST_TEXT = 48;

const ALLOWED =
  'allowed are forms like 18, .75, 5/8, 1-1/4, 1 1/4", 1\'-6 1/2", 0.75 in, 1.25 ft, 32 mm, 3.2 cm, 1.5 m';
const FOOT = 304_800_000n;
const INCH = 25_400_000n;
const NM_PER: Readonly<Record<string, bigint>> = {
  '"': INCH,
  in: INCH,
  "in.": INCH,
  inch: INCH,
  inches: INCH,
  "'": FOOT,
  ft: FOOT,
  "ft.": FOOT,
  foot: FOOT,
  feet: FOOT,
  mm: 1_000_000n,
  cm: 10_000_000n,
  m: 1_000_000_000n,
};

/** A non-negative fraction of whole numbers, not reduced. */
interface Rational {
  readonly above: bigint;
  readonly below: bigint;
}

/** A length as text or number, `unit` being the unit of a bare number. Up to 100 m, or up to `longest` nanometres. */
export function parseLength(text: string | number, unit: Unit, longest = LONGEST): Reading<Length> {
  const written = String(text);
  const plain = plainText(written);
  const fault = faultOfForm(plain);
  if (fault !== null) return refuse(`${quote(written)} ${fault}`);
  const negative = plain.startsWith("-");
  const reading = readMagnitude(/^[-+]/.test(plain) ? plain.slice(1).trimStart() : plain, unit);
  return reading.ok
    ? toLattice(reading.value, negative, written, longest)
    : refuse(`${quote(written)} ${reading.message}`);
}

function faultOfForm(text: string): string | null {
  if (text === "") return `is empty: ${ALLOWED}`;
  if (text.length > LONGEST_TEXT) return `is longer than ${LONGEST_TEXT} characters: ${ALLOWED}`;
  if (/^[-+]?(nan|\.nan|infinity|\.inf|inf)$/i.test(text)) return `is not a number: ${ALLOWED}`;
  if (/^m ?\d/i.test(text))
    return `is a thread size where a length is asked: write the diameter with its unit, as 30 mm`;
  if (text.includes(",")) return `has a comma: write the decimal point as in 1.5, and no thousands separator`;
  if (/\d\.?e[-+]?\d/i.test(text)) return `has an exponent: write the number in full; ${ALLOWED}`;
  return null;
}

/** A magnitude without sign, in nanometres. */
function readMagnitude(text: string, unit: Unit): Reading<Rational> {
  const feet = /^([\d./ -]+?) ?('|ft\b\.?|feet\b|foot\b) ?(.*)$/i.exec(text);
  if (feet !== null && feet[3] !== "") return readFeetInches(feet[1] ?? "", feet[3] ?? "");
  const parts = /^([\d./ -]+?) ?([a-z"']+\.?)?$/i.exec(text);
  if (parts === null) return refuse(`is not a length: ${ALLOWED}`);
  const scale = unitScale(parts[2] ?? unit);
  if (scale === undefined) return refuse(`has the unit ${quote(parts[2] ?? "")}: allowed are in, ", ft, ', mm, cm, m`);
  const number = readNumber(parts[1] ?? "");
  return number.ok ? { ok: true, value: times(number.value, scale) } : number;
}

/** Units are read in either case, except a capital M, which is a thread elsewhere. */
function unitScale(unit: string): bigint | undefined {
  return unit === "M" ? undefined : ownValue(NM_PER, unit.toLowerCase());
}

/** Whole feet and less than 12 inches. `1.5'` stands alone: feet and tenths are not mixed with inches. */
function readFeetInches(feet: string, rest: string): Reading<Rational> {
  if (!/^\d+$/.test(feet)) {
    return refuse(
      `has inches after ${feet} feet: only whole feet take inches, as 1'-6"; tenths of feet stand alone, as 1.5'`,
    );
  }
  const parts = /^-? ?([\d./][\d./ -]*?) ?("|in\b\.?|inch\b|inches\b)?$/i.exec(rest);
  if (parts === null) return refuse(`is not feet and inches: allowed are forms like 1'-6", 1' 6 1/2", 1'-0 5/8"`);
  const inches = readNumber(parts[1] ?? "");
  if (!inches.ok) return inches;
  if (inches.value.above >= 12n * inches.value.below) {
    return refuse('has 12 or more inches after feet: allowed is less than 12, or inches alone, as 25"');
  }
  const { above, below } = inches.value;
  return { ok: true, value: { above: BigInt(feet) * FOOT * below + above * INCH, below } };
}

/** Decimal, proper fraction, or whole number with one (`1-1/4`, `1 1/4`). */
function readNumber(text: string): Reading<Rational> {
  const decimal = /^(\d*)(?:\.(\d*))?$/.exec(text);
  if (decimal !== null && /\d/.test(text)) return { ok: true, value: readDecimal(decimal[1] ?? "", decimal[2] ?? "") };
  const mixed = /^(?:(\d+)(?:-| - | ))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (mixed === null) return refuse(faultOfNumber(text));
  const [whole, above, below] = [mixed[1], BigInt(mixed[2] ?? 0), BigInt(mixed[3] ?? 0)];
  if (below === 0n) return refuse(`divides by zero: ${ALLOWED}`);
  if (above >= below) return refuse(faultOfImproper(whole ?? "", above, below));
  return { ok: true, value: { above: BigInt(whole ?? 0) * below + above, below } };
}

/** What is wrong with a text that has an improper fraction in it, as `11/4`; null for any other. */
export function improperFraction(text: string): string | null {
  const parts = /(?:(\d{1,12})(?:-| - | ))?(\d{1,12}) ?\/ ?(\d{1,12})/.exec(plainText(text));
  const [above, below] = [BigInt(parts?.[2] ?? 0), BigInt(parts?.[3] ?? 0)];
  return below > 0n && above >= below ? faultOfImproper(parts?.[1] ?? "", above, below) : null;
}

/** A space or a dash that was lost makes `11/4` of `1 1/4`: every number that may be meant is offered, none is taken. */
function faultOfImproper(whole: string, above: bigint, below: bigint): string {
  const written = `${whole === "" ? "" : `${whole} `}${above}/${below}`;
  const value = mixedNumber(BigInt(whole || 0) * below + above, below);
  const meant = [...new Set([...lostSpaces(whole, String(above), below), value])];
  const [last, ...others] = meant.reverse();
  if (others.length === 0) return `has the improper fraction ${written}: write ${value}`;
  return `has the improper fraction ${written}: ${others.reverse().join(", ")} or ${last}? write the one that is meant`;
}

/** Whole and proper fraction that digits run together may stand for: 11 over 4 is 1 and 1/4. */
function lostSpaces(whole: string, digits: string, below: bigint): string[] {
  const cuts = Array.from({ length: digits.length - 1 }, (_, index) => index + 1);
  return cuts.flatMap((cut) => {
    const [head, tail] = [digits.slice(0, cut), digits.slice(cut)];
    if (tail.startsWith("0") || BigInt(tail) >= below) return [];
    return [...new Set([whole === "" ? head : whole, whole + head])].map((wholes) => `${wholes}-${tail}/${below}`);
  });
}

/** In lowest terms: 11 over 4 is `2-3/4`. */
function mixedNumber(above: bigint, below: bigint): string {
  const [whole, rest] = [above / below, above % below];
  if (rest === 0n) return String(whole);
  const divisor = greatestDivisor(rest, below);
  const fraction = `${rest / divisor}/${below / divisor}`;
  return whole === 0n ? fraction : `${whole}-${fraction}`;
}

function greatestDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestDivisor(b, a % b);
}

function readDecimal(whole: string, decimals: string): Rational {
  return { above: BigInt(`0${whole}${decimals}`), below: 10n ** BigInt(decimals.length) };
}

function faultOfNumber(text: string): string {
  if (/\/.*\//.test(text)) return `has more than one fraction bar: ${ALLOWED}`;
  if (/\./.test(text) && /\//.test(text)) return `mixes a decimal and a fraction: ${ALLOWED}`;
  if (/\..*\./.test(text)) return `has more than one decimal point: ${ALLOWED}`;
  if (/^[\d.]+[ -]+[\d.]+/.test(text)) return `is two numbers where one length is asked: ${ALLOWED}`;
  return `is not a number: ${ALLOWED}`;
}

function times(value: Rational, factor: bigint): Rational {
  return { above: value.above * factor, below: value.below };
}

/** Rounds to 1 nm, half away from zero, and keeps the length within `longest`. */
function toLattice({ above, below }: Rational, negative: boolean, written: string, longest: bigint): Reading<Length> {
  const rounded = (2n * above + below) / (2n * below);
  if (above > longest * below) {
    const most = `${longest / 1_000_000_000n} m`;
    return refuse(`${quote(written)} is more than ${most}: lengths up to ${most} are allowed`);
  }
  if (rounded === 0n && above > 0n) return refuse(`${quote(written)} is less than 1 nm, the least length that is kept`);
  const value = Number(rounded);
  return { ok: true, value: (negative && value !== 0 ? -value : value) as Length };
}

/** A whole number from `least` to `greatest`. */
export function parseCount(text: string | number, least = 1, greatest = 1_000_000): Reading<number> {
  const plain = plainText(String(text));
  const allowed = `allowed is a whole number from ${least} to ${greatest}`;
  if (!/^[-+]?\d{1,15}(\.0+)?$/.test(plain)) return refuse(`${quote(String(text))} is not a whole number: ${allowed}`);
  const value = Number(plain) || 0;
  return value >= least && value <= greatest
    ? { ok: true, value }
    : refuse(`${quote(String(text))} is out of range: ${allowed}`);
}

/** Lengths as they stand in a cell: numbers, fractions, feet and inches, several joined by `x`. */
import { formatLength, parseLength, quote } from "../../units/index.js";
import type { Scan } from "./scan.js";
import { phrases } from "./scan.js";

/** A length as written, with the unit of the heading where it has none of its own; `nm` is NaN where it is no length. */
export interface Written {
  readonly text: string;
  readonly nm: number;
  /** A number without a unit. */
  readonly isBare: boolean;
  /** Which numbers may stand beside it without a unit: inches, millimetres, or none, as beside feet alone. */
  readonly family: "in" | "mm" | "other";
}

/** Feet as they are marked. */
const FEET = phrases("'", "ft", "feet", "foot");
const INCHES = phrases('"', "in", "inch", "inches");
const METRIC = phrases("mm", "cm");

/** Takes a length, its sign included where `signed`. */
export function takeLength(scan: Scan, signed = false): Written | null {
  return scan.attempt(() => {
    const first = scan.at;
    if (signed && !scan.take("-")) scan.take("+");
    const family = takeNumber(scan) ? takeUnit(scan) : null;
    return family === null ? null : written(scan, scan.textFrom(first), family);
  });
}

type Family = Written["family"] | "bare";

function written(scan: Scan, text: string, family: Family): Written {
  const { unit, headingUnit } = scan.context;
  const isBare = family === "bare";
  const whole = isBare && headingUnit !== null && headingUnit !== unit ? `${text} ${headingUnit}` : text;
  const reading = parseLength(whole, unit, FARTHEST);
  const own = isBare ? familyOf(headingUnit ?? unit) : family;
  const doubt = reading.ok ? doubtOf(text, isBare && own === "mm") : reading.message;
  if (doubt !== null) scan.fault(doubt);
  return { text: whole, nm: reading.ok ? reading.value : Number.NaN, isBare, family: own };
}

/** A fraction without a unit where bare numbers are millimetres; one that is none of a rule, and may be two numbers. */
function doubtOf(text: string, isMetric: boolean): string | null {
  const [above, below] = text.split("/").map((part) => Math.abs(Number(part.trim())));
  if (isMetric && text.includes("/"))
    return `${quote(text)} is a fraction without a unit beside millimetres; allowed is ${text} in, or a decimal`;
  if (above === undefined || below === undefined || !Number.isInteger(above) || !Number.isInteger(below)) return null;
  if (isLowest(above, below) && (below <= 10 || Number.isInteger(Math.log2(below)))) return null;
  return `${quote(text)} may be ${above} or ${below}, or a fraction; allowed is one number, a fraction in lowest terms as 3/4`;
}

function isLowest(above: number, below: number): boolean {
  let [large, small] = [below, above];
  while (small > 0) [large, small] = [small, large % small];
  return large === 1;
}

/** As far as elevations reach: 10 km, in nanometres. Each key's own limit is its leaf's. */
const FARTHEST = 10_000_000_000_000n;

function familyOf(unit: string): Written["family"] {
  if (["in", "inch", "inches", '"'].includes(unit.toLowerCase())) return "in";
  return unit.toLowerCase() === "mm" ? "mm" : "other";
}

/** Whole number, decimal, fraction, or whole number with a fraction behind a space or dash. */
function takeNumber(scan: Scan): boolean {
  const isNumber = (ahead: number) => scan.peek(ahead)?.kind === "number";
  const isSign = (ahead: number, key: string) => scan.peek(ahead)?.key === key;
  if (!isNumber(0)) return false;
  const isWhole = !scan.peek()?.key.includes(".");
  const dash = isSign(1, "-") ? 1 : 0;
  const isMixed = isNumber(1 + dash) && isSign(2 + dash, "/") && isNumber(3 + dash);
  const isFraction = isSign(1, "/") && isNumber(2);
  scan.at += isFraction ? 3 : isWhole && isMixed ? 4 + dash : 1;
  return true;
}

/** The unit after a number; feet may have inches behind them. */
function takeUnit(scan: Scan): Family | null {
  if (scan.phrase(INCHES)) return "in";
  if (scan.phrase(METRIC)) return scan.tokens[scan.at - 1]?.key === "mm" ? "mm" : "other";
  if (scan.phrase(FEET)) return takeInches(scan) ? "in" : "other";
  const metres = scan.peek();
  if (metres?.key !== "m" || scan.plain[metres.start] === "M") return "bare";
  scan.at += 1;
  return "other";
}

function takeInches(scan: Scan): boolean {
  const taken = scan.attempt(() => {
    scan.take("-");
    return takeNumber(scan) ? true : null;
  });
  if (taken === null) return false;
  scan.phrase(INCHES);
  return true;
}

/** Takes lengths joined by `x`: one, or as many as stand there. */
export function takeSides(scan: Scan, most: number): readonly Written[] {
  const sides: Written[] = [];
  const first = most > 0 ? takeLength(scan) : null;
  if (first !== null) sides.push(first);
  while (sides.length > 0 && sides.length < most) {
    const next = scan.attempt(() => (scan.take("x") ? takeLength(scan) : null));
    if (next === null) break;
    sides.push(next);
  }
  return sides;
}

/** A number without a unit beside one in another unit, as `300 x 12"` in millimetres: which is meant is not written. */
function mixedUnits(sides: readonly Written[]): string | null {
  const bare = sides.find(({ isBare }) => isBare);
  const other = sides.find(({ isBare, family }) => !isBare && (family !== bare?.family || family === "other"));
  if (bare === undefined || other === undefined) return null;
  return `${bare.text} has no unit beside ${other.text}; allowed is a unit with each, as 12 in x 10 in`;
}

/** As mixedUnits, told as a fault. */
export function holdUnits(scan: Scan, sides: readonly Written[]): void {
  const fault = mixedUnits(sides);
  if (fault !== null) scan.fault(`${quote(scan.plain)}: ${fault}`);
}

/** A length that was worked out, exact, in the unit in which its parts are written. */
export function exactText(nm: number, like: Written, scan: Scan): string {
  const family = like.family === "other" ? scan.context.unit : like.family;
  const text = formatLength(nm, family);
  const again = parseLength(text, family);
  const isExact = again.ok && again.value === nm;
  const exact = isExact ? text : `${nm / 1_000_000} mm`;
  return isExact && family !== scan.context.unit ? `${text} ${family}` : exact;
}

/**
 * Site coordinates: northings, eastings and elevations in the units of a survey. They reach farther than lengths of a job:
 * up to 10 000 km. Kept in whole nanometres; beyond 2^53 nm (9 007 km) in whole even ones, far below any survey.
 */
import { type Length, NM_PER_MM } from "./length.js";
import { plainText, quote, type Reading, refuse } from "./reading.js";

/** Metre, millimetre, international foot (0.3048 m), US survey foot (1200/3937 m). */
export type SurveyUnit = "m" | "mm" | "ft" | "ft-us";

/** Every survey unit by its word in a job or an option. */
export const SURVEY_UNITS = ["m", "mm", "ft", "ft-us"] as const satisfies readonly SurveyUnit[];

/** Names in words, for headers and notes. */
export const SURVEY_UNIT_NAMES: Readonly<Record<SurveyUnit, string>> = {
  m: "metre",
  mm: "millimetre",
  ft: "international foot",
  "ft-us": "US survey foot",
};

/** Decimals of a setting-out file: 0.1 mm, or 0.0001 ft (0.03 mm), finer than any rod is set. */
export const COORDINATE_PLACES: Readonly<Record<SurveyUnit, number>> = { m: 4, mm: 1, ft: 4, "ft-us": 4 };

/** Nanometres per unit as a fraction: the US survey foot is no whole number of nanometres. */
const NM: Readonly<Record<SurveyUnit, readonly [above: bigint, below: bigint]>> = {
  m: [1_000_000_000n, 1n],
  mm: [1_000_000n, 1n],
  ft: [304_800_000n, 1n],
  "ft-us": [1_200_000_000_000n, 3937n],
};

/** Millimetres in a unit of a survey; not whole for the US survey foot. */
export function surveyMillimetres(unit: SurveyUnit): number {
  const [above, below] = NM[unit];
  return Number(above) / (Number(below) * NM_PER_MM);
}

const UNIT_WORDS: ReadonlyMap<string, SurveyUnit> = new Map<string, SurveyUnit>([
  ["m", "m"],
  ["mm", "mm"],
  ["ft", "ft"],
  ["'", "ft"],
  ["ft-us", "ft-us"],
  ["us-ft", "ft-us"],
  ["usft", "ft-us"],
  ["ftus", "ft-us"],
  ["us survey ft", "ft-us"],
]);

/**
 * Farthest that a point of a job may lie from plan 0,0, a control point on the site from the others, and an elevation from
 * zero: 100 km, in millimetres. What lies farther is a slip, and would leave the lattice on which rules compare.
 */
export const FARTHEST_POINT = 1e8;

/** 10 000 km. */
const FARTHEST = 10_000_000_000_000_000n;
const ALLOWED = "allowed are decimal numbers up to 10 000 km, as 5000.125, 312.5 m, 1640.42 ft, 1640.41 ft-us";

/** A coordinate as text or number; `unit` is that of a bare number, null where each must carry its own. */
export function parseCoordinate(text: string | number, unit: SurveyUnit | null): Reading<Length> {
  const size = coordinateSize(text, unit);
  if (!size.ok) return size;
  if (isBeyond(size.value)) return refuse(`${quote(String(text))} is more than 10 000 km: ${ALLOWED}`);
  return { ok: true, value: coordinate(Number(size.value)) };
}

/** The same of a surveyor's file, where one slip is told beside its point: what is farther is taken as twice as far as allowed. */
export function parseFarCoordinate(text: string, unit: SurveyUnit): Reading<Length> {
  const size = coordinateSize(text, unit);
  if (!size.ok || !isBeyond(size.value)) return parseCoordinate(text, unit);
  return { ok: true, value: coordinate(Number(size.value < 0 ? -2n * FARTHEST : 2n * FARTHEST)) };
}

const isBeyond = (size: bigint): boolean => size > FARTHEST || size < -FARTHEST;

/** In nanometres, of any size. */
function coordinateSize(text: string | number, unit: SurveyUnit | null): Reading<bigint> {
  const written = String(text);
  const parts = /^([-+]?)(\d{1,30})?(?:\.(\d{0,12}))? ?([a-z'][a-z' -]*)?$/i.exec(plainText(written));
  const [sign, whole = "", decimals = "", word] = parts === null ? [] : parts.slice(1);
  if (parts === null || whole + decimals === "") return refuse(`${quote(written)} is not a coordinate: ${ALLOWED}`);
  const named = word === undefined ? unit : UNIT_WORDS.get(word.toLowerCase());
  if (named === undefined)
    return refuse(`${quote(written)} has the unit ${quote(word ?? "")}: allowed are ${SURVEY_UNITS.join(", ")}`);
  if (named === null) return refuse(`${quote(written)} has no unit: ${ALLOWED}`);
  const [above, below] = NM[named];
  const size = divide(BigInt(whole + decimals) * above, 10n ** BigInt(decimals.length) * below);
  return { ok: true, value: sign === "-" ? -size : size };
}

/** A fraction of positive whole numbers, rounded half up. */
function divide(above: bigint, below: bigint): bigint {
  return (2n * above + below) / (2n * below);
}

/** A coordinate of `nm` nanometres, rounded half away from zero. Throws on NaN or beyond 10 000 km by far: a bug. */
export function coordinate(nm: number): Length {
  const rounded = nm < 0 ? -Math.round(-nm) || 0 : Math.round(nm);
  if (!(Math.abs(rounded) <= 2 ** 55)) throw new RangeError(`not a coordinate in nanometres: ${nm}`);
  return rounded as Length;
}

/** A coordinate in `unit` with a fixed number of decimals, half away from zero: `5000.1250`. No unit, never minus zero. */
export function formatCoordinate(value: Length, unit: SurveyUnit, places = COORDINATE_PLACES[unit]): string {
  const ticks = coordinateTicks(value, unit, places);
  const digits = String(ticks < 0n ? -ticks : ticks).padStart(places + 1, "0");
  const [whole, decimals] = [digits.slice(0, digits.length - places), digits.slice(digits.length - places)];
  return `${ticks < 0n ? "-" : ""}${whole}${places === 0 ? "" : `.${decimals}`}`;
}

/** The coordinate as it stands in a file of `places` decimals, back in nanometres. */
export function roundCoordinate(value: Length, unit: SurveyUnit, places = COORDINATE_PLACES[unit]): Length {
  const ticks = coordinateTicks(value, unit, places);
  const [above, below] = NM[unit];
  const size = divide((ticks < 0n ? -ticks : ticks) * above, 10n ** BigInt(places) * below);
  return coordinate(Number(ticks < 0n ? -size : size));
}

function coordinateTicks(value: Length, unit: SurveyUnit, places: number): bigint {
  const [above, below] = NM[unit];
  const size = divide(BigInt(Math.abs(value)) * below * 10n ** BigInt(places), above);
  return value < 0 ? -size : size;
}

/** One unit of the last place of a file, in nanometres; not whole for the US survey foot. */
export function coordinateStep(unit: SurveyUnit, places = COORDINATE_PLACES[unit]): number {
  const [above, below] = NM[unit];
  return Number(above) / Number(below) / 10 ** places;
}

/** Leaves of the plan: positions of a few kilometres, elevations, site coordinates, angles, bearings, factors. */
import type { Length, SurveyUnit, Unit } from "../units/index.js";
import { parseAngle, parseBearing, parseCoordinate, parseCount, parseLength } from "../units/index.js";
import { plainText } from "../units/reading.js";
import { leaf, textLeaf, writtenLeaf } from "./leaves.js";

/** Longest distance on a plan, and highest elevation: 10 km in nanometres. */
export const FARTHEST = 10_000_000_000_000n;
/** Most equal spacings in one text. */
const MOST_SPACINGS = 1000;

/** A position or distance on the plan, or an elevation: up to 10 km. */
export function farLeaf(unit: Unit, description: string) {
  const allowed = `a length of any sign up to 10 km, as ${unit === "in" ? "24'-6\"" : "7500"} or with its unit`;
  return leaf<Length>(allowed, description, (text) => parseLength(text, unit, FARTHEST));
}

/** A number without a unit or a mark of feet or inches. */
const BARE = /^[-+]?[\d ./-]*\d[\d ./-]*$/;
/** What prints set before an elevation, and before one of nought. */
const LEAD = /^el(ev)?(ation)?\b\.? */i;
const NOUGHT = /^(\u00B1|\+\/-) *(?=[0.]+ ?[a-z'"])/i;

/** An elevation with its unit, for feet and inches alike are usual beside any unit of a job; `EL.` before it is read over. */
export function elevationLeaf(unit: Unit, description: string) {
  const examples = unit === "in" ? "99'-6\", 99.5 ft" : "12350 mm, 12.35 m";
  const allowed = `an elevation with its unit, as ${examples}`;
  return writtenLeaf<Length>(allowed, description, (text) => {
    const plain = plainText(text).replace(LEAD, "").replace(NOUGHT, "");
    if (!BARE.test(plain)) return parseLength(plain, unit, FARTHEST);
    const units = unit === "in" ? ["ft", "in"] : ["mm", "m"];
    const words = /^[-+]?[\d.]+$/.test(plain) ? units.map((own) => `${plain} ${own}`).join(" or ") : `as ${examples}`;
    return { ok: false, message: `"${text}" has no unit, which an elevation must say: write ${words}` };
  });
}

/** One spacing, or several equal ones: `25'`, `6 @ 25'`. */
export function spacingLeaf(unit: Unit, description: string) {
  const allowed = `a spacing above zero, as ${unit === "in" ? "25', or 6 @ 25'" : "7500, or 6 @ 7500"}`;
  return leaf<readonly Length[]>(allowed, description, (text) => {
    const several = /^\s*(\d+)\s*(?:@|x|\u00D7)\s*(.+)$/i.exec(text);
    const count = parseCount(several?.[1] ?? "1", 1, MOST_SPACINGS);
    if (!count.ok) return count;
    const spacing = parseLength(several?.[2] ?? text, unit, FARTHEST);
    if (!spacing.ok) return spacing;
    if (spacing.value <= 0) return { ok: false, message: `"${text}" is not above zero; allowed is ${allowed}` };
    return { ok: true, value: Array.from({ length: count.value }, () => spacing.value) };
  });
}

/** Northing, easting or elevation of a survey; a bare number is in the unit of settingOut. */
export function coordinateLeaf(unit: SurveyUnit | null, description: string) {
  return leaf<Length>("a coordinate, as 5000.125, or with its unit: m, mm, ft, ft-us", description, (text) =>
    parseCoordinate(text, unit),
  );
}

/** Degrees counter-clockwise. */
export function turnLeaf(description: string) {
  return leaf<number>("decimal degrees from -360 to 360, as 90 or 22.5", description, (text) => parseAngle(text));
}

/** Degrees clockwise from north. */
export function bearingLeaf(description: string) {
  return leaf<number>("a bearing, as 32.5, 32-30-15 or N 32-30-15 E", description, (text) => parseBearing(text));
}

/** The surveyor's combined scale factor. */
export function factorLeaf(description: string) {
  const allowed = "a factor from 0.9 to 1.1, as 0.99987";
  return leaf<number>(allowed, description, (text) => {
    const value = /^\d(\.\d{1,15})?$/.test(text.trim()) ? Number(text) : 0;
    return value >= 0.9 && value <= 1.1
      ? { ok: true, value }
      : { ok: false, message: `"${text}" is not allowed; allowed is ${allowed}` };
  });
}

/** Name of a grid line, as written. */
export function lineLeaf(description: string) {
  return textLeaf(description, 12);
}

/** Name of a point of the setting-out file: plain signs that every logger takes. */
export function pointNameLeaf(description: string) {
  const allowed = "at most 16 letters, digits, dots, hyphens and underscores, as CP1";
  return leaf<string>(allowed, description, (text) =>
    /^[A-Za-z0-9._-]{1,16}$/.test(text)
      ? { ok: true, value: text }
      : { ok: false, message: `"${text}" is no name of a point; allowed are ${allowed}` },
  );
}

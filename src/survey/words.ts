/** What a survey says of itself: shared by terminal, tables and sheet. */
import { CAUTION } from "../checks/cautions.js";
import type { CheckRow } from "../checks/model.js";
import { marginText } from "../checks/words.js";
import { formatDegrees, formatWithUnit } from "../units/index.js";
import type { Unit } from "../units/length.js";
import type { BestPosition, Motion, Remedy, SurveyTerms } from "./model.js";

/** Cautions of every survey. */
export const SURVEY_CAUTIONS: readonly string[] = [
  CAUTION.fieldChangeOrSlot,
  CAUTION.remedyOnlyDropsOn,
  CAUTION.erectionApart,
  CAUTION.remedyNotChecked,
  CAUTION.guardRods,
  CAUTION.localCodes,
];

/** Shift and turn in one line. */
export function motionWords({ x, y, turn }: Motion, unit: Unit): string {
  const turned = turn === null ? "turn not known" : `turn ${formatDegrees(turn, 3)}`;
  return `shift x ${formatWithUnit(rounded(x, unit), unit)}, y ${formatWithUnit(rounded(y, unit), unit)}, ${turned}`;
}

/** To 0.001 in or 0.01 mm: finer than any survey. */
export function rounded(length: number, unit: Unit): number {
  const tick = unit === "in" ? 25_400 : 10_000;
  return Math.sign(length) * Math.round(Math.abs(length) / tick) * tick || 0;
}

/** Rods that govern, with their share; those below half a per cent are left out. */
export function governsWords({ governs }: BestPosition): string {
  const shares = governs.map(({ tag, share }) => ({ tag, percent: Math.round(share * 100) }));
  return shares.flatMap(({ tag, percent }) => (percent > 0 ? [`${tag} ${percent} %`] : [])).join(", ");
}

/** What is stated of the survey. */
export function termsWords({ accuracy, height }: SurveyTerms, unit: Unit): readonly string[] {
  const near =
    accuracy.kind === "given"
      ? `Accuracy: every point within ${formatWithUnit(accuracy.value, unit)} of the true place in plan (${accuracy.from}).`
      : "Accuracy of the survey NOT STATED: verdicts take the points as they are; whether they lie within measuring uncertainty is not known.";
  return [near, heightWords(height, unit)];
}

function heightWords(height: SurveyTerms["height"], unit: Unit): string {
  if (height.kind === "missing")
    return "Height at which the rods were taken NOT STATED: elevations and projections are not checked.";
  if (height.value.kind === "top") return `Rods taken at their tops (${height.from}).`;
  return `Rods taken ${formatWithUnit(height.value.value, unit)} above the top of concrete (${height.from}).`;
}

/** A remedy without its checks. */
export function remedyWords({ kind, tags, by, hole, slot, spare }: Remedy, unit: Unit): string {
  const left = `leaves ${formatWithUnit(rounded(spare, unit), unit)} to spare`;
  const size = formatWithUnit(hole, unit);
  if (slot !== null)
    return `${tags.join(" ")}: slot ${size} x ${formatWithUnit(slot.length, unit)} towards ${formatDegrees(slot.direction, 1)} from +x, ${left}`;
  if (kind === "hole") return `${tags.join(" ")}: hole ${size}, ${left}`;
  return `every hole ${formatWithUnit(by, unit)} larger, ${tags.join(" ")}: hole ${size}, ${left}`;
}

/** The worst row of each rule of a remedy: `washer-cover FAIL by 1/16 in`. */
export function remedyRows({ rows }: Remedy, unit: Unit): readonly string[] {
  const rules = [...new Set(rows.map(({ rule }) => rule))];
  if (rules.length === 0) return ["washer-cover, washer-on-plate, base-plate-edge: not checked"];
  return rules.map((rule) => rowWords(worstOf(rows.filter((row) => row.rule === rule)), unit));
}

function worstOf(rows: readonly CheckRow[]): CheckRow | undefined {
  const size = ({ margin }: CheckRow): number => (margin?.kind === "length" ? margin.twice : Number.POSITIVE_INFINITY);
  return rows.reduce<CheckRow | undefined>(
    (worst, row) => (worst !== undefined && size(worst) <= size(row) ? worst : row),
    undefined,
  );
}

function rowWords(row: CheckRow | undefined, unit: Unit): string {
  if (row === undefined) return "";
  const { rule, status, margin, note } = row;
  if (margin === null) return `${rule} ${status}: ${note}`;
  const by = margin.kind === "length" ? ({ kind: "length", twice: Math.abs(margin.twice) } as const) : margin;
  if (status === "fail") return `${rule} FAIL by ${marginText(by, unit)}`;
  const isExact = margin.kind === "length" && margin.twice === 0;
  return isExact ? `${rule} pass, exactly` : `${rule} pass, ${marginText(by, unit)} to spare`;
}

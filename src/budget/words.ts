/** What a budget says of itself: shared by terminal, tables, machine form and sheet. */
import { CAUTION } from "../checks/cautions.js";
import type { PlateFreedom } from "../job/model/budget.js";
import { formatLength, formatWithUnit, roundSymmetric, type Unit } from "../units/index.js";
import type { BudgetSpec, ReckonedBase, TargetAnswer } from "./model.js";
import { askedForm } from "./model.js";

/** Cautions of every budget. */
export const BUDGET_CAUTIONS: readonly string[] = [
  CAUTION.noMeasurement,
  CAUTION.freeOfErection,
  CAUTION.checkBiggerHole,
  CAUTION.surveyAgain,
  CAUTION.localCodes,
];

const FREEDOM: Readonly<Record<PlateFreedom, string>> = {
  held: "fixed in its place",
  shifted: "free to shift",
  free: "free to shift and turn",
};

/** What the plate may do, in words. */
export const freedomWords = (plate: PlateFreedom): string => FREEDOM[plate];

/** A share in per cent: two decimals, `> 99.99 %` and `< 0.01 %` where rounding would say all or none. */
export function shareWords(share: number): string {
  if (share === 0 || share === 1) return `${share * 100} %`;
  const hundredths = Math.round(share * 10_000);
  if (hundredths === 10_000) return "> 99.99 %";
  if (hundredths === 0) return "< 0.01 %";
  return `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, "0")} %`;
}

/** A spare clearance with sign and unit: inches to 0.001, millimetres to 0.01. */
export function spareWords(spare: number, unit: Unit): string {
  const [per, places] = unit === "in" ? [25_400_000, 3] : [1_000_000, 2];
  const ticks = roundSymmetric((spare / per) * 10 ** places);
  const digits = String(Math.abs(ticks)).padStart(places + 1, "0");
  const sign = ticks > 0 ? "+" : ticks < 0 ? "-" : "";
  return `${sign}${digits.slice(0, -places)}.${digits.slice(-places)} ${unit}`;
}

/** How the errors are taken, in one sentence. */
export function specWords(spec: BudgetSpec): string {
  const zone = spec.zone === "round" ? "round zones" : "square zones of placing or setting";
  const spread =
    spec.spread === "uniform"
      ? "even over their zones"
      : `normal, ${spec.sigmas} deviations to the edge, cut off there`;
  const common = spec.common === 0 ? "each rod for itself" : `${shareWords(spec.common)} of it common to the group`;
  const rods = spec.rods === "edition" ? "As-placed tolerance" : "Components of the as-placed error";
  return `${rods}; ${zone}; errors ${spread}; ${common}.`;
}

/** The governing rod or pair and term. */
export function governsWords({ governs: { subject, term, share } }: ReckonedBase): string {
  return term === null ? `${subject}: no error counts` : `${subject}: ${term} (${Math.round(share * 100)} %)`;
}

/** The worst case in one sentence that can be followed by hand. */
export function worstWords({ worst, spec, unit }: ReckonedBase): string {
  const { subject, tags, errorTwice, clearanceTwice, holds } = askedForm(worst, spec.plate);
  const [error, clearance] = [formatLength(errorTwice / 2, unit), formatWithUnit(clearanceTwice / 2, unit)];
  const what = tags.length === 1 ? "error" : "errors of both";
  return `${subject}: ${what} ${error} ${holds ? "<=" : ">"} clearance ${clearance}: ${holds ? "always drops on" : "need not drop on"}`;
}

/** What would meet the target, one sentence a remedy. */
export function targetWords({ target, met, probability, holes, placing }: TargetAnswer, unit: Unit): readonly string[] {
  const wanted = shareWords(target);
  const sizes = holes.change.map(({ size, hole }) => `${formatWithUnit(hole, unit)} for rod ${size}`).join(", ");
  const state = `${shareWords(probability)} against ${wanted} asked for: ${met ? "reached" : "not reached"}`;
  const byHoles = `Smallest base-plate hole that reaches ${wanted}: ${sizes} (${shareWords(holes.probability)})`;
  return [state, byHoles, placingWords(placing, wanted, unit)];
}

function placingWords(placing: TargetAnswer["placing"], wanted: string, unit: Unit): string {
  if (placing === null) return `No placing, however tight, reaches ${wanted} by itself`;
  const term = placing.change[0]?.term ?? "placing";
  const reaches = placing.change.map(({ size, reach }) => `${formatWithUnit(reach, unit)} for rod ${size}`).join(", ");
  return `Widest ${term}, from the present one down, that reaches ${wanted}: ${reaches} (${shareWords(placing.probability)})`;
}

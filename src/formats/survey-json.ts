/** A survey in machine form. Lengths in the job's unit, rounded to 1e-6 in or 1e-5 mm; turns in degrees. */

import type { CheckRow } from "../checks/model.js";
import type { Printable } from "../diagnostics/printable.js";
import { terminalJson } from "../diagnostics/printable.js";
import type { PlacingHead } from "../summary/model.js";
import { summarizeCheck } from "../summary/summarize.js";
import type { GroupSurvey, Motion, Remedy, RodAsBuilt, Survey } from "../survey/index.js";
import { SURVEY_CAUTIONS, surveyTotals } from "../survey/index.js";
import type { Unit } from "../units/length.js";
import { toUnit } from "../units/length.js";

/** A survey in machine form. */
export type SurveyForm = ReturnType<typeof surveyForm>;

/** The text that `survey --json` prints. */
export function writeSurveyJson(job: PlacingHead, survey: Survey): Printable {
  return terminalJson(surveyForm(job, survey));
}

/** Groups worst first. */
export function surveyForm(job: PlacingHead, survey: Survey) {
  const { unit, file, system, terms, groups, notSurveyed, others, unmatched, rows } = survey;
  const length = (value: number | null) => (value === null ? null : toUnit(value, unit));
  return {
    schema: 1,
    job,
    file: { path: file.file, order: file.order.value, unit: file.unit.value, headed: file.headed, coordinates: system },
    survey: {
      accuracy: terms.accuracy.kind === "given" ? length(terms.accuracy.value) : null,
      height: heightForm(survey),
      within: length(terms.within),
    },
    totals: surveyTotals(survey),
    groups: groups.map((group) => groupForm(group, unit)),
    notSurveyed,
    others: others.map(({ north, east, dz, ...other }) => ({
      ...other,
      north: length(north),
      east: length(east),
      dz: length(dz),
    })),
    unmatched: unmatched.map(({ northing, easting, ...point }) => ({
      ...point,
      northing: length(northing),
      easting: length(easting),
    })),
    checks: checksForm(rows, unit),
    cautions: SURVEY_CAUTIONS,
  };
}

/** `top`, the length above the top of concrete, or null: not stated. */
function heightForm({ terms: { height }, unit }: Survey) {
  if (height.kind === "missing") return null;
  return height.value.kind === "top" ? "top" : toUnit(height.value.value, unit);
}

const checksForm = (rows: readonly CheckRow[], unit: Unit) => rows.map((row) => summarizeCheck(row, unit));

function groupForm(group: GroupSurvey, unit: Unit) {
  const { mark, at, verdict, placing, best, fit, spareOnLine, rods, missing, why, rows, remedies } = group;
  const { shift, turn } = motionForm(fit, unit);
  return {
    mark,
    at,
    verdict,
    placing: { verdict: placing.verdict, rods: placing.rods, offLine: placing.offLine },
    spare: best === null ? null : toUnit(best.spare, unit),
    shift,
    turn,
    why,
    missing,
    spareOnLine: spareOnLine === null ? null : toUnit(spareOnLine, unit),
    best:
      best === null
        ? null
        : {
            ...motionForm(best.motion, unit),
            turnRange: best.turnRange,
            certainTo: best.certainTo / (unit === "in" ? 25.4 : 1),
            governs: best.governs,
          },
    rods: rods.map((rod) => rodForm(rod, unit)),
    checks: checksForm(rows, unit),
    remedies: remedies.map((remedy) => remedyForm(remedy, unit)),
  };
}

function motionForm({ x, y, turn }: Motion, unit: Unit) {
  return { shift: { x: toUnit(x, unit), y: toUnit(y, unit) }, turn };
}

function rodForm(rod: RodAsBuilt, unit: Unit) {
  const length = (value: number | null) => (value === null ? null : toUnit(value, unit));
  const { tag, points, north, east, dx, dy, radial, dz, projection, lean, clearanceTwice, margin } = rod;
  return {
    tag,
    dx: length(dx),
    dy: length(dy),
    radial: length(radial),
    dz: length(dz),
    clearance: clearanceTwice === null ? null : length(clearanceTwice / 2),
    margin: length(margin),
    north: length(north),
    east: length(east),
    projection: length(projection),
    lean: lean === null ? null : { dx: length(lean.dx), dy: length(lean.dy), over: length(lean.over) },
    points,
  };
}

function remedyForm({ kind, tags, by, hole, slot, spare, rows }: Remedy, unit: Unit) {
  return {
    kind,
    tags,
    by: toUnit(by, unit),
    hole: toUnit(hole, unit),
    slot: slot === null ? null : { length: toUnit(slot.length, unit), direction: slot.direction },
    spare: toUnit(spare, unit),
    checks: checksForm(rows, unit),
    decision: "engineer to decide",
  };
}

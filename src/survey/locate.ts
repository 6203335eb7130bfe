/**
 * Which coordinates a file holds, found by nearness to where its points should be: local or site. The same comparison tells
 * northings and eastings that were changed round, and the wrong unit: they are findings, never put right in silence.
 */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { point } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { CoordinateSystem, SettingOutPoint } from "../plan/index.js";
import { coordinateSystems, siteToPlanUnsnapped } from "../plan/index.js";
import type { SiteTransform } from "../plan/model.js";
import type { PointsFile, SurveyedPoint } from "../readers/points-model.js";
import type { SurveyUnit } from "../units/index.js";
import { FARTHEST_POINT, SURVEY_UNIT_NAMES, SURVEY_UNITS, surveyMillimetres } from "../units/index.js";
import { NM_PER_INCH, NM_PER_MM } from "../units/length.js";
import type { SurveyAim } from "./model.js";
import type { PlaceIndex } from "./near.js";
import { indexPlaces, NEAR } from "./near.js";

/** The points of a file on the plan. */
export interface Located {
  readonly system: CoordinateSystem;
  /** Plan places in millimetres, in the order of the file's points; null: farther than any point of a job may lie. */
  readonly places: readonly (Point | null)[];
}

/** Two readings that place as many points differ when one has a quarter of the other's distances, and those half an inch. */
const CLOSER = 4;
const LEAST_DOUBT = 12.7;

/** A unit that the numbers of a file may be in: those of a survey, and the inch, which is a slip. */
type NumberUnit = SurveyUnit | "in";

interface Reading {
  readonly system: CoordinateSystem;
  readonly swapped: boolean;
  readonly unit: NumberUnit;
}

/** Metre against foot is 3.28 or 0.3048, foot against inch 12, inch against millimetre 25.4. */
const NUMBER_UNITS = [...SURVEY_UNITS, "in"] as const satisfies readonly NumberUnit[];

const NUMBER_UNIT_NAMES: Readonly<Record<NumberUnit, string>> = { ...SURVEY_UNIT_NAMES, in: "inch" };

const millimetresOf = (unit: NumberUnit): number => (unit === "in" ? NM_PER_INCH / NM_PER_MM : surveyMillimetres(unit));

/** Places at which a point lies: one a place, so that a scale that draws all points together scores once. */
interface Score {
  readonly reading: Reading;
  readonly count: number;
  readonly mean: number;
}

/** The places of the file's points on the plan; a finding where another reading of the file fits better, or none does. */
export function locatePoints(file: PointsFile, aim: SurveyAim): Outcome<Located> {
  const { transform } = aim.plan;
  const systems = coordinateSystems({ transform });
  const expected = aim.expected.filter(hasPlan);
  const grounds: Grounds = {
    file,
    transform,
    byName: new Map(expected.map((point) => [point.name.toUpperCase(), point.plan])),
    index: indexPlaces(expected, ({ plan }) => plan, NEAR),
  };
  const told = systems.map((system) => scoreOf({ system, swapped: false, unit: file.unit.value }, grounds));
  const stated = told.reduce((best, score) => (isBetter(score, best) ? score : best));
  const others = NUMBER_UNITS.flatMap((unit) =>
    systems.flatMap((system) =>
      [false, true]
        .filter((swapped) => swapped || unit !== file.unit.value)
        .map((swapped) => scoreOf({ system, swapped, unit }, grounds)),
    ),
  );
  const better = others.reduce((best, score) => (isBetter(score, best) ? score : best), stated);
  const findings = better === stated ? nowhere(stated, file) : [doubt(stated, better, file)];
  if (findings.some(({ severity }) => severity === "error")) return { ok: false, findings };
  const { system } = stated.reading;
  const places = file.points.map((point) => placeWithinReach(point, placeOf(point, stated.reading, grounds)));
  const far = file.points.flatMap((point, i) => (places[i] === null ? [farFinding(point, file.file)] : []));
  return { ok: true, value: { system, places }, findings: [...findings, ...far] };
}

/** Snapped where the file's own reading is taken; null beyond the reach of a job, in plan or in height. */
function placeWithinReach({ elevation }: SurveyedPoint, { x, y }: Point): Point | null {
  const isHigh = elevation !== null && Math.abs(elevation) > FARTHEST_POINT * NM_PER_MM;
  return isHigh || Math.hypot(x, y) > FARTHEST_POINT ? null : point(x, y);
}

function farFinding({ name, line }: SurveyedPoint, file: string): Finding {
  const message = `point ${JSON.stringify(name)} lies more than 100 km from the job, in plan or in height: it is taken for none`;
  const hint = "a lost decimal point, or coordinates of another system?";
  return { code: "survey-far", severity: "warning", at: { file, line, column: 1 }, message, hint };
}

type PlannedPoint = SettingOutPoint & { readonly plan: Point };
const hasPlan = (point: SettingOutPoint): point is PlannedPoint => point.plan !== null;

interface Grounds {
  readonly file: PointsFile;
  readonly transform: SiteTransform | null;
  readonly byName: ReadonlyMap<string, Point>;
  readonly index: PlaceIndex<PlannedPoint>;
}

function isBetter(a: Score, b: Score): boolean {
  if (a.count !== b.count) return a.count > b.count;
  return b.mean > LEAST_DOUBT && a.mean * CLOSER < b.mean;
}

function scoreOf(reading: Reading, grounds: Grounds): Score {
  const least = new Map<Point, number>();
  for (const point of grounds.file.points) {
    const at = placeOf(point, reading, grounds);
    const place = grounds.byName.get(point.name.toUpperCase()) ?? grounds.index.near(at)[0]?.item.plan;
    if (place === undefined) continue;
    const distance = Math.hypot(place.x - at.x, place.y - at.y);
    if (distance <= NEAR) least.set(place, Math.min(distance, least.get(place) ?? distance));
  }
  const sum = [...least.values()].reduce((total, distance) => total + distance, 0);
  return { reading, count: least.size, mean: least.size === 0 ? 0 : sum / least.size };
}

/** In millimetres, not snapped: of any magnitude. */
function placeOf(point: SurveyedPoint, { system, swapped, unit }: Reading, { file, transform }: Grounds): Point {
  const ratio = unit === file.unit.value ? 1 : millimetresOf(unit) / millimetresOf(file.unit.value);
  const [north, east] = swapped ? [point.easting, point.northing] : [point.northing, point.easting];
  const [northing, easting] = [north * ratio, east * ratio];
  if (system === "local" || transform === null) return { x: easting / NM_PER_MM, y: northing / NM_PER_MM };
  return siteToPlanUnsnapped(transform, {
    northing: northing as SurveyedPoint["northing"],
    easting: easting as SurveyedPoint["easting"],
  });
}

function nowhere({ count }: Score, { file, points }: PointsFile): readonly Finding[] {
  if (count > 0) return [];
  const message = `none of its ${points.length} points lies within 24 in of a point of the job, in local or in site coordinates`;
  return [{ code: "survey-nowhere", severity: "error", at: { file }, message }];
}

function doubt(stated: Score, better: Score, { file, order, unit, points }: PointsFile): Finding {
  const { reading, count, mean } = better;
  const ways = [
    ...(reading.swapped ? ["northing and easting changed round"] : []),
    ...(reading.unit === unit.value ? [] : [`its numbers in the unit ${NUMBER_UNIT_NAMES[reading.unit]}`]),
  ];
  const told = `${order.value} by the ${order.by}, ${unit.value} by the ${unit.by}`;
  const message =
    `as told (${told}) ${placed(stated.count, points.length, stated.mean)}; with ${ways.join(" and ")} ` +
    placed(count, points.length, mean);
  const asked = (!reading.swapped || order.by === "option") && (reading.unit === unit.value || unit.by === "option");
  const isPlain = 2 * stated.count < count || isOtherScale(reading.unit, unit.value);
  return {
    code: reading.swapped ? "survey-swapped" : "survey-unit",
    severity: asked && !isPlain ? "warning" : "error",
    at: { file },
    message,
    hint: adviceOn(better, { order, unit }, { asked, isPlain }),
  };
}

/** One foot differs from the other by 2 in a million: only that a surveyor may insist on. */
function isOtherScale(a: NumberUnit, b: NumberUnit): boolean {
  return Math.abs(millimetresOf(a) / millimetresOf(b) - 1) > 1e-3;
}

/** Another scale, and what as told places less than half of what another reading does, is refused, whoever says so. */
function adviceOn(
  { reading }: Score,
  { order, unit }: Pick<PointsFile, "order" | "unit">,
  { asked, isPlain }: { readonly asked: boolean; readonly isPlain: boolean },
): string {
  const turned = order.value === "PNEZD" ? "PENZD" : "PNEZD";
  const isInch = reading.unit === "in";
  const options = [
    ...(reading.swapped ? [`--order ${turned}`] : []),
    ...(reading.unit === unit.value || isInch ? [] : [`--unit ${reading.unit}`]),
    ...(isInch ? ["inches are no unit of a survey file: divide by 12 and give it as --unit ft"] : []),
  ];
  if (isPlain) return options.join(" ");
  return asked ? "taken as the options say" : `${options.join(" ")}, or the same order and unit as an option to insist`;
}

function placed(count: number, all: number, mean: number): string {
  if (count === 0) return `none of ${all} points lies where it should`;
  const off = mean < 0.5 ? "" : `, ${Math.round(mean)} mm off on average`;
  return `${count} of ${all} points lie where they should${off}`;
}

/**
 * Which coordinates a file holds, found by nearness to where its points should be: local or site. The same comparison tells
 * northings and eastings that were changed round, and the wrong unit: they are findings, never put right in silence.
 */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Point } from "../geometry/vocabulary.js";
import type { CoordinateSystem, SettingOutPoint } from "../plan/index.js";
import { coordinateSystems, siteToPlan } from "../plan/index.js";
import type { SiteTransform } from "../plan/model.js";
import type { PointsFile, SurveyedPoint } from "../readers/points-model.js";
import type { SurveyUnit } from "../units/index.js";
import { coordinateStep, SURVEY_UNIT_NAMES, SURVEY_UNITS } from "../units/index.js";
import { NM_PER_MM } from "../units/length.js";
import type { SurveyAim } from "./model.js";
import type { PlaceIndex } from "./near.js";
import { indexPlaces } from "./near.js";

/** The points of a file on the plan. */
export interface Located {
  readonly system: CoordinateSystem;
  /** Plan places in millimetres, in the order of the file's points. */
  readonly places: readonly Point[];
}

/** A point lies where it should when it is this near to its own place, or to any where its name says none: 24 in. */
const NEAR = 609.6;
/** Two readings that place as many points differ when one has a quarter of the other's distances, and those half an inch. */
const CLOSER = 4;
const LEAST_DOUBT = 12.7;

interface Reading {
  readonly system: CoordinateSystem;
  readonly swapped: boolean;
  readonly unit: SurveyUnit;
}

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
  const others = SURVEY_UNITS.flatMap((unit) =>
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
  const places = file.points.map((point) => placeOf(point, stated.reading, grounds));
  return { ok: true, value: { system, places }, findings };
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

function placeOf(point: SurveyedPoint, { system, swapped, unit }: Reading, { file, transform }: Grounds): Point {
  const ratio = unit === file.unit.value ? 1 : coordinateStep(unit, 0) / coordinateStep(file.unit.value, 0);
  const [north, east] = swapped ? [point.easting, point.northing] : [point.northing, point.easting];
  const [northing, easting] = [north * ratio, east * ratio];
  if (system === "local" || transform === null) return { x: easting / NM_PER_MM, y: northing / NM_PER_MM };
  return siteToPlan(transform, {
    northing: northing as SurveyedPoint["northing"],
    easting: easting as SurveyedPoint["easting"],
  });
}

function nowhere({ count }: Score, { file, points }: PointsFile): readonly Finding[] {
  if (count > 0) return [];
  const message = `none of its ${points.length} points lies within 24 in of a point of the job, in local or in site coordinates`;
  return [{ code: "survey-nowhere", severity: "error", at: { file }, message }];
}

function doubt(stated: Score, { reading, count, mean }: Score, { file, order, unit, points }: PointsFile): Finding {
  const ways = [
    ...(reading.swapped ? ["northing and easting changed round"] : []),
    ...(reading.unit === unit.value ? [] : [`the unit ${SURVEY_UNIT_NAMES[reading.unit]}`]),
  ];
  const turned = order.value === "PNEZD" ? "PENZD" : "PNEZD";
  const options = [
    ...(reading.swapped ? [`--order ${turned}`] : []),
    ...(reading.unit === unit.value ? [] : [`--unit ${reading.unit}`]),
  ];
  const told = `${order.value} by the ${order.by}, ${unit.value} by the ${unit.by}`;
  const message =
    `as told (${told}) ${placed(stated.count, points.length, stated.mean)}; with ${ways.join(" and ")} ` +
    placed(count, points.length, mean);
  const insisted = (!reading.swapped || order.by === "option") && (reading.unit === unit.value || unit.by === "option");
  return {
    code: reading.swapped ? "survey-swapped" : "survey-unit",
    severity: insisted ? "warning" : "error",
    at: { file },
    message,
    hint: insisted
      ? "taken as the options say"
      : `${options.join(" ")}, or the same order and unit as an option to insist`,
  };
}

function placed(count: number, all: number, mean: number): string {
  return `${count} of ${all} points lie where they should, ${Math.round(mean)} mm off on average`;
}

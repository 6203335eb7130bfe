/**
 * Setting-out files: point, northing, easting, elevation, description, or easting first. Comma, CRLF, plain ASCII, nothing
 * quoted. Local files take plan north for north and plan east for east; site files are in site coordinates.
 */
import { toLattice } from "../geometry/point.js";
import type { Point } from "../geometry/vocabulary.js";
import { planToSite } from "../plan/index.js";
import type { Plan, SitePoint, SiteTransform } from "../plan/model.js";
import type { SurveyUnit } from "../units/index.js";
import { formatCoordinate } from "../units/index.js";
import type { IsHeld, SettingOutPoint } from "./setting-out-points.js";
import { settingOutPoints } from "./setting-out-points.js";

/** PNEZD: northing before easting. PENZD: easting before northing. */
export type PointOrder = Plan["spec"]["settingOut"]["order"];

/** Which coordinates a file holds. */
export type CoordinateSystem = "local" | "site";

/** The same points twice: with a header row, and without for loggers that take nothing else. */
export interface SettingOutTexts {
  readonly system: CoordinateSystem;
  readonly headed: string;
  readonly bare: string;
}

const HEADERS: Readonly<Record<PointOrder, string>> = {
  PNEZD: "point,northing,easting,elevation,description",
  PENZD: "point,easting,northing,elevation,description",
};

/** The coordinate systems a plan has files in: site only where plan and site are tied to each other. */
export function coordinateSystems({ transform }: Plan): readonly CoordinateSystem[] {
  return transform === null ? ["local"] : ["local", "site"];
}

/** The points of a plan in one coordinate system. A point that is not known in it is left out; an unknown elevation is empty. */
export function writeSettingOut(plan: Plan, system: CoordinateSystem, isHeld?: IsHeld): SettingOutTexts {
  const { order, unit } = plan.spec.settingOut;
  const locate = locator(plan, system);
  const lines = settingOutPoints(plan, isHeld).flatMap((point) => {
    const at = locate(point);
    return at === null ? [] : [pointLine(point, at, order, unit)];
  });
  const bare = lines.join("");
  return { system, bare, headed: `${HEADERS[order]}\r\n${bare}` };
}

function locator({ transform }: Plan, system: CoordinateSystem): (point: SettingOutPoint) => SitePoint | null {
  switch (system) {
    case "local":
      return ({ plan }) => (plan === null ? null : planAxes(plan));
    case "site":
      return ({ plan, given }) => given ?? placeOnSite(transform, plan);
  }
}

function planAxes({ x, y }: Point): SitePoint {
  return { northing: toLattice(y), easting: toLattice(x) };
}

function placeOnSite(transform: SiteTransform | null, plan: Point | null): SitePoint | null {
  return transform === null || plan === null ? null : planToSite(transform, plan);
}

function pointLine(
  { name, elevation, description }: SettingOutPoint,
  { northing, easting }: SitePoint,
  order: PointOrder,
  unit: SurveyUnit,
): string {
  const place = order === "PNEZD" ? [northing, easting] : [easting, northing];
  const height = elevation === null ? "" : formatCoordinate(elevation, unit);
  return `${[name, ...place.map((length) => formatCoordinate(length, unit)), height, description].join(",")}\r\n`;
}

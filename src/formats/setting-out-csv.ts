/**
 * Setting-out files: point, northing, easting, elevation, description, or easting first. Comma, CRLF, plain ASCII, nothing
 * quoted.
 */
import type { LocatedPoint, Plan } from "../plan/index.js";
import { formatCoordinate } from "../units/index.js";

type SettingOut = Plan["spec"]["settingOut"];

/** The same points twice: with a header row, and without for loggers that take nothing else. */
export interface SettingOutTexts {
  readonly headed: string;
  readonly bare: string;
}

/** PNEZD: northing before easting. PENZD: easting before northing. */
const HEADERS: Readonly<Record<SettingOut["order"], string>> = {
  PNEZD: "point,northing,easting,elevation,description",
  PENZD: "point,easting,northing,elevation,description",
};

/** Points in their order, one a line; an unknown elevation is empty. */
export function writeSettingOut(points: readonly LocatedPoint[], { order, unit }: SettingOut): SettingOutTexts {
  const bare = points.map((point) => pointLine(point, { order, unit })).join("");
  return { bare, headed: `${HEADERS[order]}\r\n${bare}` };
}

function pointLine({ name, at, elevation, description }: LocatedPoint, { order, unit }: SettingOut): string {
  const place = order === "PNEZD" ? [at.northing, at.easting] : [at.easting, at.northing];
  const height = elevation === null ? "" : formatCoordinate(elevation, unit);
  return `${[name, ...place.map((length) => formatCoordinate(length, unit)), height, description].join(",")}\r\n`;
}

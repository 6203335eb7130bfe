/** Bearings: degrees clockwise from north, 0 to 360. */
import { formatDegrees } from "./angle.js";
import { roundSymmetric } from "./length.js";
import { plainText, quote, type Reading, refuse } from "./reading.js";

const ALLOWED =
  "allowed are degrees clockwise from north from 0 to 360, as 32.5, 32-30-15, 32\u00B030'15\", or N 32-30-15 E";

/** Decimal degrees, degrees-minutes-seconds, or a quadrant bearing (`N 12-30-00 W`). */
export function parseBearing(text: string | number): Reading<number> {
  const written = String(text);
  const plain = plainText(written).toUpperCase();
  const quadrant = /^([NS]) ?(.+?) ?([EW])$/.exec(plain);
  const angle = parseSexagesimal(quadrant?.[2] ?? plain);
  if (angle === null || angle > (quadrant === null ? 360 : 90))
    return refuse(`${quote(written)} is no bearing: ${ALLOWED}`);
  return {
    ok: true,
    value: quadrant === null ? angle % 360 : fromQuadrant(quadrant[1] === "N", quadrant[3] === "E", angle),
  };
}

function fromQuadrant(north: boolean, east: boolean, angle: number): number {
  if (north) return east ? angle : (360 - angle) % 360;
  return east ? 180 - angle : 180 + angle;
}

/** Decimal degrees, or degrees, minutes below 60 and seconds below 60; null for anything else. */
function parseSexagesimal(text: string): number | null {
  const decimal = /^(\d{1,3}(?:\.\d{0,15})?|\.\d{1,15}) ?(?:\u00B0|DEG\.?|DEGREES?)?$/.exec(text);
  if (decimal !== null) return Number(decimal[1]);
  const parts = /^(\d{1,3})[\u00B0 -] ?(\d{1,2})(?:[' -] ?(?:(\d{1,2}(?:\.\d{1,10})?) ?"?)?)?$/.exec(text);
  const [degrees, minutes, seconds] = [Number(parts?.[1]), Number(parts?.[2]), Number(parts?.[3] ?? 0)];
  return parts === null || minutes >= 60 || seconds >= 60 ? null : (degrees * 3600 + minutes * 60 + seconds) / 3600;
}

/** How bearings are written: as `12.5`, or in degrees, minutes and seconds as `12-30-00`. */
export type BearingForm = "decimal" | "sexagesimal";

/** The form of a bearing as written; sexagesimal once minutes stand in it. */
export function bearingFormOf(written: string): BearingForm {
  return /\d[°' -]+\d/.test(plainText(written)) ? "sexagesimal" : "decimal";
}

/** `12-30-01`; in a decimal form the decimals first: `12.50035° (12-30-01)`. */
export function formatBearing(degrees: number, form: BearingForm): string {
  const parts = sexagesimal(((degrees % 360) + 360) % 360);
  return form === "sexagesimal" ? parts : `${formatDegrees(degrees, 5)} (${parts})`;
}

/** Rounded to whole seconds first: never 60 of them. */
function sexagesimal(degrees: number): string {
  const seconds = roundSymmetric(degrees * 3600) % (360 * 3600);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${Math.floor(seconds / 3600)}-${two(Math.floor(seconds / 60) % 60)}-${two(seconds % 60)}`;
}

/** Angles in decimal degrees, counter-clockwise. */
import { roundSymmetric } from "./length.js";
import { plainText, quote, type Reading, refuse } from "./reading.js";

/** Decimal degrees from -360 to 360, with or without a degree sign or `deg`. */
export function parseAngle(text: string | number): Reading<number> {
  const plain = plainText(String(text));
  const allowed = "allowed are decimal degrees from -360 to 360, as 45, 22.5 or -30 deg";
  if (plain.includes(",")) return refuse(`${quote(String(text))} has a comma: write the decimal point as in 22.5`);
  const parts = /^([-+]?(?:\d{1,12}(?:\.\d{0,20})?|\.\d{1,20})) ?(?:\u00B0|deg\.?|degrees?)?$/i.exec(plain);
  if (parts === null) return refuse(`${quote(String(text))} is not an angle: ${allowed}`);
  const value = Number(parts[1]) || 0;
  return Math.abs(value) <= 360 ? { ok: true, value } : refuse(`${quote(String(text))} is out of range: ${allowed}`);
}

/** Degrees with at most `places` decimals, trimmed, and the degree sign: `22.5\u00B0`. */
export function formatDegrees(degrees: number, places = 4): string {
  const scale = 10 ** places;
  const ticks = roundSymmetric(degrees * scale);
  const [whole, rest] = [Math.trunc(Math.abs(ticks) / scale), Math.abs(ticks) % scale];
  const decimals = String(rest).padStart(places, "0").replace(/0+$/, "");
  return `${ticks < 0 ? "-" : ""}${whole}${decimals === "" ? "" : `.${decimals}`}\u00B0`;
}

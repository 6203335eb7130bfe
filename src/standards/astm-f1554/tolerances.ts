/** ASTM F1554: tolerances of hooks and threads, in inches; those of lengths stand in `lengths.ts`. */
import { inches, type Length } from "../../units/length.js";
import type { StandardValue } from "../model.js";

const PRINTED = { edition: "ASTM F1554", source: "ASTM F1554", confidence: "high", note: "" } as const;

/** Length of a hook: plus and minus this share of it, or `least`, whichever is greater. */
export const hookLength: StandardValue<{ readonly perCent: number; readonly least: Length }> = {
  ...PRINTED,
  clause: "hook length",
  value: { perCent: 10, least: inches(1 / 2) },
};

/** Angle of a bend: plus and minus this, in degrees. */
export const bendAngle: StandardValue<number> = { ...PRINTED, clause: "bend angle", value: 5 };

/** Area of the section at a bend: at least this share of the body's. */
export const bendArea: StandardValue<number> = { ...PRINTED, clause: "area at bend", value: 90 };

/** Length of a thread: longer by this at most, shorter by nothing. */
export const threadLonger: StandardValue<Length> = { ...PRINTED, clause: "thread length", value: inches(1) };

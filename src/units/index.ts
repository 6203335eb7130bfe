/** Exact lengths and angles: text in, text out. */
export * from "./angle.js";
export * from "./bearing.js";
export * from "./coordinate.js";
export * from "./extremes.js";
export * from "./format.js";
export * from "./length.js";
export { improperFraction, parseCount, parseLength } from "./parse.js";
export type { Reading } from "./reading.js";
export { plainText, quote } from "./reading.js";

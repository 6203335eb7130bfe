/**
 * The leaves of every schema: one text -> one value. Every scalar of a document arrives as its source text; the JSON
 * Schema says that numbers are welcome too. A leaf's `error` names what is allowed; the finding adds what was found.
 */
import * as z from "zod";
import type { Length, Unit } from "../units/index.js";
import { parseCount, parseLength } from "../units/index.js";

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };

/** A leaf that reads a text or number with `read`. */
export function leaf<T>(allowed: string, description: string, read: (text: string) => Read<T>) {
  const written = z.union([z.string(), z.number()], { error: () => allowed });
  return written.transform(transformBy(read)).describe(description);
}

/** A leaf whose bare number says too little: a text, read with `read`. */
export function writtenLeaf<T>(allowed: string, description: string, read: (text: string) => Read<T>) {
  return z
    .string({ error: () => allowed })
    .transform(transformBy(read))
    .describe(description);
}

function transformBy<T>(read: (text: string) => Read<T>) {
  return (raw: string | number, context: z.core.$RefinementCtx): T => {
    const reading = read(String(raw));
    if (reading.ok) return reading.value;
    context.issues.push({ code: "custom", message: reading.message, input: raw });
    return z.NEVER;
  };
}

/** Bidirectional marks, embeddings and isolates (Unicode Standard Annex 9), line and paragraph separators. */
const REORDERING = /[\p{Bidi_Control}\p{Zl}\p{Zp}]/u;

/** One line of text, kept as written: at most `longest` characters that can be printed. */
export function textLeaf(description: string, longest = 200) {
  const allowed = `a line of text, at most ${longest} characters`;
  return leaf(allowed, description, (text) => {
    if (text.trim() === "") return { ok: false, message: `is empty; allowed is ${allowed}` };
    if ([...text].length > longest)
      return { ok: false, message: `has ${[...text].length} characters; allowed is ${allowed}` };
    if (/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/u.test(text)) {
      return { ok: false, message: `holds a control character or a broken sign; allowed is ${allowed}` };
    }
    if (REORDERING.test(text)) {
      return { ok: false, message: `holds an unseen sign that reorders or breaks a line; allowed is ${allowed}` };
    }
    return { ok: true, value: text };
  });
}

/** What a length may be: above zero, zero or above, or any. */
export type LengthSign = "above zero" | "zero or above" | "any sign";

/** A length; a bare number is in `unit`. */
export function lengthLeaf(unit: Unit, sign: LengthSign, description: string) {
  const allowed = `a length ${sign === "any sign" ? "of any sign" : sign}, as ${unit === "in" ? "1-1/4" : "32"} or with its unit`;
  return leaf<Length>(allowed, description, (text) => {
    const reading = parseLength(text, unit);
    if (!reading.ok) return reading;
    if (sign === "above zero" && reading.value <= 0) return { ok: false, message: `"${text}" is not above zero` };
    if (sign === "zero or above" && reading.value < 0) return { ok: false, message: `"${text}" is below zero` };
    return reading;
  });
}

/** A whole number from `least` to `greatest`. */
export function countLeaf(least: number, greatest: number, description: string) {
  return leaf(`a whole number from ${least} to ${greatest}`, description, (text) => parseCount(text, least, greatest));
}

/** A plain decimal number above zero. */
export function ratioLeaf(description: string) {
  const allowed = "a number above zero and at most 1000, as 1.5";
  return leaf(allowed, description, (text) => {
    const value = /^\d{1,4}(\.\d{1,6})?$/.test(text.trim()) ? Number(text) : 0;
    return value > 0 && value <= 1000 ? { ok: true, value } : { ok: false, message: `"${text}" is not ${allowed}` };
  });
}

/** true or false, or yes or no. */
export function yesNoLeaf(description: string) {
  const words = new Map([
    ["true", true],
    ["yes", true],
    ["false", false],
    ["no", false],
  ]);
  return z
    .union([z.boolean(), z.enum(["yes", "no", "true", "false"])], { error: () => "true or false" })
    .transform((raw) => words.get(String(raw)) ?? false)
    .describe(description);
}

/** A day of the calendar, written 2026-11-24. */
export function dateLeaf(description: string) {
  const allowed = "a day written year-month-day, as 2026-11-24";
  return leaf(allowed, description, (text) =>
    isDay(text) ? { ok: true, value: text } : { ok: false, message: `"${text}" is not ${allowed}` },
  );
}

/** True for a day of the Gregorian calendar written YYYY-MM-DD. */
export function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  const [year, month, day] = [Number(parts?.[1]), Number(parts?.[2]), Number(parts?.[3])];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return parts !== null && day >= 1 && day <= days;
}

/** One of a few words. */
export function wordLeaf<const Words extends readonly string[]>(words: Words, description: string) {
  return z.enum(words, { error: () => `one of ${words.join(", ")}` }).describe(description);
}

/** A group of keys; an unknown key is an error that lists the known ones. */
export function keys<Shape extends z.core.$ZodLooseShape>(shape: Shape, description: string) {
  const known = Object.keys(shape);
  const error = (issue: { readonly code?: string }) =>
    issue.code === "unrecognized_keys" ? known.join(", ") : `a group of keys: ${known.join(", ")}`;
  return z.strictObject(shape, { error }).describe(description);
}

/** A list; `allowed` says what it lists. */
export function rows<Item extends z.core.$ZodType>(item: Item, allowed: string) {
  return z.array(item, { error: () => allowed });
}

/** A point in the base's own axes, [x, y]. */
export function pointLeaf(unit: Unit) {
  const coordinate = lengthLeaf(unit, "any sign", "A coordinate in the base's own axes.");
  return z.tuple([coordinate, coordinate], { error: () => "two lengths, [x, y]" });
}

/** Points in the base's own axes. */
export function pointsLeaf(unit: Unit) {
  return rows(pointLeaf(unit), "a list of points, [[x, y], ...]").describe(
    "Points in the base's own axes, [[x, y], ...].",
  );
}

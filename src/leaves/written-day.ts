/** Days as people write them, where a writing has one meaning alone. */
import { isDay } from "./leaves.js";

const MONTHS = [
  ...["january", "february", "march", "april", "may", "june"],
  ...["july", "august", "september", "october", "november", "december"],
];

/**
 * `2026-11-24`, `2026/11/24`, `20261124` (ISO 8601), `24 Nov 2026`, `24-Nov-2026`, `November 24, 2026` -> `2026-11-24`. null for what
 * is no day, and for `11/12/2026` and two-figure years, which read more than one way.
 */
export function readDay(text: string): string | null {
  const written = text.trim().replace(/^(\d{4}-\d\d-\d\d)T.*$/, "$1");
  const numeric = /^(\d{4})(\d\d)(\d\d)$/.exec(written) ?? /^(\d{4})[-/.](\d\d?)[-/.](\d\d?)$/.exec(written);
  const [, year = "", month = "", day = ""] = numeric ?? namedMonth(written);
  const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  return isDay(iso) ? iso : null;
}

/** Day and month in either order, since the month says which it is. */
function namedMonth(text: string): readonly string[] {
  const [, before, name = "", after, year = ""] =
    /^(?:(\d\d?)(?:st|nd|rd|th)?[.\s-]+)?([a-z]{3,9})\.?,?[\s-]*(?:(\d\d?)(?:st|nd|rd|th)?,?[\s-]+)?(\d{4})$/i.exec(
      text,
    ) ?? [];
  const month = MONTHS.findIndex((full) => isNameOf(name.toLowerCase(), full));
  if (month < 0 || (before === undefined) === (after === undefined)) return [];
  return [text, year, String(month + 1), before ?? after ?? ""];
}

/** The whole name, or three letters of it; `Sept` too. */
function isNameOf(name: string, full: string): boolean {
  return name === full || name === full.slice(0, 3) || (name === "sept" && full === "september");
}

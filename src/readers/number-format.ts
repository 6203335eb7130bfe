/**
 * What a spreadsheet's number format makes of a number (ECMA-376 part 1, 18.8.30 and 18.8.31): a reader who takes the number
 * alone takes something else than what stands on the print where the format adds a unit, a percent sign or zeros.
 */

/** How a number is shown. */
export type ShownNumber =
  /** As a number; `rounded` is what is shown where that is less exact than what is held. */
  | { readonly kind: "number"; readonly text: string; readonly rounded: string | null }
  | { readonly kind: "date" }
  /** Otherwise than any number is read, as `12%`; `how` in words. */
  | { readonly kind: "otherwise"; readonly how: string };

/** Formats without a code of their own in a workbook, as far as they are no plain numbers (18.8.30, English). */
const BUILT_IN: ReadonlyMap<number, string> = new Map([
  [0, "General"],
  [1, "0"],
  [2, "0.00"],
  [3, "#,##0"],
  [4, "#,##0.00"],
  [9, "0%"],
  [10, "0.00%"],
  [11, "0.00E+00"],
  [12, "# ?/?"],
  [13, "# ??/??"],
  ...[5, 6, 7, 8, 42, 44].map((id) => [id, '"$"#,##0.00'] as const),
  ...[14, 15, 16, 17, 18, 19, 20, 21, 22, 45, 46, 47].map((id) => [id, "m/d/yyyy"] as const),
  ...[27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 50, 51, 52, 53, 54, 55, 56, 57, 58].map((id) => [id, "yyyy"] as const),
]);

/** The code of a format that the workbook itself does not write out. */
export function builtInFormat(id: number): string {
  return BUILT_IN.get(id) ?? "General";
}

/** How `value` is shown under a format code; `held` is the number as text, in full. */
export function showNumber(value: number, held: string, code: string): ShownNumber {
  const sections = readSections(code);
  if (sections.some(({ isDate }) => isDate)) return { kind: "date" };
  const section = sectionFor(value, sections);
  if (section === undefined) return { kind: "number", text: held, rounded: null };
  const how = faultOf(section, value, sections);
  if (how !== null) return { kind: "otherwise", how: `${how} (${code.slice(0, 60)})` };
  const unit = unitAfter(section) ?? "";
  const rounded = roundedAs(value, section);
  const text = rounded === null ? asSeen(value, held, section, unit !== "") : padded(held, section);
  const shown = rounded === null ? null : `${rounded}${unit}`;
  return { kind: "number", text: `${text}${unit}`, rounded: shown };
}

/** Fractions as they are shown, and beside a unit decimals: nothing else than the number that is held. */
function asSeen(value: number, held: string, section: Section, hasUnit: boolean): string {
  const { below, decimals, hasExponent, isText, isGeneral } = section;
  if (below !== null) return fractionText(value, below);
  if (!hasUnit || decimals === null || hasExponent || isText || isGeneral) return padded(held, section);
  const least = decimals.replace(/[^0]/g, "").length;
  const [whole = "", part = ""] = padded(held, section).split(".");
  const places = part.padEnd(least, "0");
  return places === "" ? whole : `${whole}.${places}`;
}

/** Why a text is shown otherwise than it is held; null where it is not. */
export function faultOfText(code: string): string | null {
  const sections = readSections(code);
  const section = sections[3] ?? sections.find(({ isText }) => isText);
  if (section === undefined) return null;
  if (!section.isText && !section.isGeneral) return `its number format shows no text (${code.slice(0, 60)})`;
  return hasLetters(section) ? `its number format shows more than the text (${code.slice(0, 60)})` : null;
}

/** Words and signs that may follow a number, as they are read in a cell; signs stand close, words after a blank. */
const UNITS: ReadonlyMap<string, string> = new Map([
  ["", ""],
  ...["mm", "cm", "m", "in", "in.", "inch", "inches", "ft", "ft.", "foot", "feet"].map(
    (unit) => [unit, ` ${unit}`] as const,
  ),
  ...['"', "''", "\u2033", "\u201d"].map((unit) => [unit, '"'] as const),
  ...["'", "\u2032", "\u2019"].map((unit) => [unit, "'"] as const),
  ...["\u00b0", "deg"].map((unit) => [unit, "\u00b0"] as const),
]);

/** The unit that a format adds after the number; "" where it adds none, undefined where it adds something else. A capital M alone is a thread elsewhere. */
function unitAfter({ after }: Section): string | undefined {
  const written = after.trim().replace(/^\)/, "").trim();
  return written === "M" ? undefined : UNITS.get(written.toLowerCase());
}

/** One of the up to four sections of a code. */
interface Section {
  /** Literal text before the first digit, and after it. */
  readonly before: string;
  readonly after: string;
  readonly isGeneral: boolean;
  readonly isDate: boolean;
  readonly isText: boolean;
  readonly isPercent: boolean;
  readonly hasExponent: boolean;
  /** Literal text stands between digits, as in `000-0000`. */
  readonly isSplit: boolean;
  /** Placeholders `0`, `#`, `?` before the point and, null where there is none, after it. */
  readonly whole: string;
  readonly decimals: string | null;
  /** Below the fraction bar: placeholders or digits; null where there is no bar. */
  readonly below: string | null;
  /** Commas after the last digit: each divides by a thousand. */
  readonly thousands: number;
  readonly hasCondition: boolean;
  readonly hasColor: boolean;
}

type OpenSection = { -readonly [Key in keyof Section]: Section[Key] };

function newSection(): OpenSection {
  return {
    ...{ before: "", after: "", whole: "", decimals: null, below: null, thousands: 0 },
    ...{ isGeneral: false, isDate: false, isText: false, isPercent: false, hasExponent: false, isSplit: false },
    ...{ hasCondition: false, hasColor: false },
  };
}

const TOKENS = /"[^"]*"|\\.|[_*].|\[[^\]]*\]|general|am\/pm|a\/p|e[+-]|[\s\S]/giu;

function readSections(code: string): readonly Section[] {
  const sections = [newSection()];
  for (const [token] of code.slice(0, LONGEST_CODE).matchAll(TOKENS)) {
    const section = sections.at(-1);
    if (token === ";") sections.push(newSection());
    else if (section !== undefined) takeToken(section, token);
  }
  return sections;
}

/** A format code has at most 255 letters. */
const LONGEST_CODE = 255;

function takeToken(section: OpenSection, token: string): void {
  const first = token[0] ?? "";
  if (/^general$/i.test(token)) section.isGeneral = true;
  else if (first === '"') takeLiteral(section, token.replaceAll('"', ""));
  else if (first === "\\") takeLiteral(section, token.slice(1));
  else if (first === "[") takeBrackets(section, token);
  else if ((first === "_" || first === "*") && token.length > 1) return;
  else if (/^e[+-]$/i.test(token)) section.hasExponent = true;
  else if (/^[ymdhsbge]$|^a(m)?\//i.test(token)) section.isDate = true;
  else if (token === "@") section.isText = true;
  else if (token === "%") section.isPercent = true;
  else if (/[0#?.,/1-9]/.test(first)) takeDigit(section, first);
  else takeLiteral(section, token);
}

function takeLiteral(section: OpenSection, text: string): void {
  const hasDigits = section.whole !== "" || section.decimals !== null || section.isGeneral || section.isText;
  if (hasDigits) section.after += text;
  else section.before += text;
}

/** `[h]` counts hours, `[$mm-409]` shows a sign, `[Red]` colours, `[<1]` is a condition. */
function takeBrackets(section: OpenSection, token: string): void {
  const inner = token.slice(1, -1);
  if (/^[hms]+$/i.test(inner)) section.isDate = true;
  else if (inner.startsWith("$")) takeLiteral(section, inner.slice(1).replace(/-[^-]*$/, ""));
  else if (/^[<>=]/.test(inner)) section.hasCondition = true;
  else section.hasColor = true;
}

function takeDigit(section: OpenSection, digit: string): void {
  if (section.hasExponent) return;
  if (section.after.trim() !== "") section.isSplit = true;
  if (digit === "/") section.below ??= "";
  else if (digit === ".") section.decimals ??= "";
  else if (digit === ",") section.thousands++;
  else if (section.below !== null) section.below += digit;
  else {
    section.thousands = 0;
    if (section.decimals !== null) section.decimals += digit;
    else section.whole += digit;
  }
}

/** Positive, negative and zero have sections of their own; null under a condition, which is not worked out. */
function sectionFor(value: number, sections: readonly Section[]): Section | undefined {
  const numeric = sections.slice(0, 3);
  const conditional = sections.find(({ hasCondition }) => hasCondition);
  if (conditional !== undefined) return conditional;
  if (value < 0 && numeric.length > 1) return numeric[1];
  return value === 0 && numeric.length > 2 ? numeric[2] : numeric[0];
}

/** Why what is shown is not the number with or without a unit; null where it is. */
function faultOf(section: Section, value: number, sections: readonly Section[]): string | null {
  const { before, after, whole, decimals, thousands, hasCondition } = section;
  if (hasCondition && sections.some((each) => hasLetters(each))) return "its number format shows it by a condition";
  if (section.isPercent) return "its number format shows it as a percentage";
  if (thousands > 0) return "its number format shows it in thousands";
  if (section.isSplit) return "its number format puts something between the digits";
  if (whole === "" && decimals === null && !section.isGeneral && !section.isText)
    return "its number format shows no number";
  const hidesMinus = value < 0 && section === sections[1] && !section.hasColor && !/[-(\u2212]/.test(before);
  if (hidesMinus) return "its number format hides the minus sign";
  return SILENT.test(before) && (unitAfter(section) !== undefined || SILENT.test(after))
    ? null
    : `its number format shows ${JSON.stringify(`${before}0${after}`.slice(0, 60))}`;
}

/** Literal text that says nothing of a number: blanks, brackets and signs. */
const SILENT = /^[\s()+\-\u2212]*$/;

function hasLetters({ before, after, isPercent }: Section): boolean {
  return isPercent || !SILENT.test(before) || !SILENT.test(after);
}

/** `000` shows 7 as 007, as marks are made. */
function padded(held: string, { whole, below }: Section): string {
  const zeros = below === null ? whole.replace(/[^0]/g, "").length : 0;
  const [, sign = "", digits = "", rest = ""] = /^(-?)(\d*)(.*)$/.exec(held) ?? [];
  return zeros > 1 ? `${sign}${digits.padStart(zeros, "0")}${rest}` : held;
}

/** A tenth of the least decimal that 15 digits hold is no rounding that a person sees. */
const SEEN = 1e-9;

function roundedAs(value: number, section: Section): string | null {
  const { decimals, below, hasExponent, isText, isGeneral } = section;
  if (isText || isGeneral || hasExponent) return null;
  const fixed = value.toFixed(Math.min(20, (decimals ?? "").length));
  const shown = below === null ? Number(fixed) : nearestFraction(value, below);
  if (Math.abs(shown - value) <= SEEN) return null;
  return below === null ? fixed : fractionText(shown, below);
}

/** Denominators with as many digits as placeholders, or the one that is written out. */
function denominators(below: string): readonly number[] {
  const fixed = /^[1-9]\d*$/.test(below) ? Number(below) : null;
  if (fixed !== null) return [fixed];
  const most = 10 ** Math.min(3, Math.max(1, below.length)) - 1;
  return Array.from({ length: most }, (_, index) => index + 1);
}

function nearestFraction(value: number, below: string): number {
  const shown = denominators(below).map((denominator) => Math.round(value * denominator) / denominator);
  return shown.reduce((best, each) => (Math.abs(each - value) < Math.abs(best - value) ? each : best));
}

function fractionText(shown: number, below: string): string {
  const size = Math.abs(shown);
  const denominator = denominators(below).find((each) => Math.abs(size * each - Math.round(size * each)) < SEEN) ?? 1;
  const whole = Math.trunc(size + SEEN);
  const above = Math.round((size - whole) * denominator);
  const sign = shown < 0 ? "-" : "";
  return above === 0 ? `${sign}${whole}` : `${sign}${whole === 0 ? "" : `${whole} `}${above}/${denominator}`;
}

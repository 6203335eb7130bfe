/**
 * Widths and ink heights of text in the sheet font, whose widths are those of Arial, Helvetica and Liberation Sans. Room is
 * kept for DejaVu Sans Condensed too, to which a viewer falls back that has none of these and takes no font from the file.
 */
import { FONT_WIDTHS } from "./font-widths.js";

const UNITS_PER_EM = 2048;

/** Height of a capital over the font size. Heights of lettering are cap heights (ISO 3098). */
export const CAP_PER_EM = 1409 / UNITS_PER_EM;

/**
 * Width along the baseline and ink above (`rise`) and below (`drop`, positive) it, in the unit of the cap height given.
 * `width` is the room that a text takes, `set` its width in the sheet font itself, which is never more.
 */
export interface TextSize {
  readonly width: number;
  readonly set: number;
  readonly rise: number;
  readonly drop: number;
}

interface Glyph {
  readonly advance: number;
  /** Advance in the font that viewers fall back to. */
  readonly fallback: number;
  readonly low: number;
  readonly high: number;
}

/** A character outside the table is given the room of a full-width one. */
const UNKNOWN: Glyph = { advance: 2048, fallback: 2048, low: -400, high: 1750 };

/** What stands over or under the letter before it, or joins letters and is not seen. */
const COMBINING: Glyph = { ...UNKNOWN, advance: 0, fallback: 0 };

const GLYPHS = { regular: new Map<string, Glyph>(), bold: new Map<string, Glyph>() };

/** True where the sheet font has a letter of its own for the character. */
export function isInSheetFont(character: string): boolean {
  return GLYPHS.regular.has(character);
}

for (const row of FONT_WIDTHS.trim().split("\n")) {
  const [code, ...figures] = row.split(" ");
  const [a = 0, low = 0, high = 0, boldAdvance = 0, boldLow = 0, boldHigh = 0, ...fallback] = figures.map(Number);
  const [narrow = 0, boldNarrow = 0] = fallback;
  const character = String.fromCodePoint(Number.parseInt(code ?? "20", 16));
  GLYPHS.regular.set(character, { advance: a, fallback: narrow, low, high });
  GLYPHS.bold.set(character, { advance: boldAdvance, fallback: boldNarrow, low: boldLow, high: boldHigh });
}

/** Font size for a cap height. */
export function fontSize(capHeight: number): number {
  return capHeight / CAP_PER_EM;
}

/** Size of one line of text. */
export function measureText(text: string, capHeight: number, bold: boolean): TextSize {
  const glyphs = bold ? GLYPHS.bold : GLYPHS.regular;
  let [advance, fallback, low, high] = [0, 0, 0, 0];
  for (const character of text) {
    const glyph = glyphs.get(character) ?? unknown(character);
    advance += glyph.advance;
    fallback += glyph.fallback;
    low = Math.min(low, glyph.low);
    high = Math.max(high, glyph.high);
  }
  const unit = capHeight / CAP_PER_EM / UNITS_PER_EM;
  return { width: Math.max(advance, fallback) * unit, set: advance * unit, rise: high * unit, drop: -low * unit };
}

function unknown(character: string): Glyph {
  return /[\p{Mn}\p{Cf}]/u.test(character) ? COMBINING : UNKNOWN;
}

/** Width of a text whose capitals are `capHeight` high, millimetres. */
export function textWidth(text: string, capHeight: number, bold = false): number {
  return measureText(text, capHeight, bold).width;
}

/** Width of a text as it is set in the sheet font, millimetres: never more than `textWidth`. */
export function setWidth(text: string, capHeight: number, bold: boolean): number {
  return measureText(text, capHeight, bold).set;
}

/** One printable line: control characters and runs of space become one space. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\s]+/gu, " ").trim();
}

/** `text`, or as much of it as fits in `width` with an ellipsis. */
export function shorten(text: string, width: number, capHeight: number, bold = false): string {
  if (textWidth(text, capHeight, bold) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && textWidth(`${characters.join("")}…`, capHeight, bold) > width) characters.pop();
  return `${characters.join("").trimEnd()}…`;
}

/** Lines of at most `width`, broken at spaces; a word that is longer than a line is broken between characters. */
export function wrap(text: string, width: number, capHeight: number, bold = false): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of printable(text)
    .split(" ")
    .flatMap((long) => pieces(long, width, capHeight, bold))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, capHeight, bold) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === "" ? lines : [...lines, line];
}

function pieces(word: string, width: number, capHeight: number, bold: boolean): string[] {
  if (textWidth(word, capHeight, bold) <= width) return [word];
  const result: string[] = [];
  let piece = "";
  for (const character of word) {
    if (piece !== "" && textWidth(piece + character, capHeight, bold) > width) {
      result.push(piece);
      piece = "";
    }
    piece += character;
  }
  return piece === "" ? result : [...result, piece];
}

/** At most `most` lines, the last one ending in an ellipsis when there was more. */
export function wrapAtMost(text: string, width: number, capHeight: number, most: number, bold = false): string[] {
  const lines = wrap(text, width, capHeight, bold);
  if (lines.length <= most) return lines;
  const rest = lines.slice(most - 1).join(" ");
  return [...lines.slice(0, most - 1), shorten(rest, width, capHeight, bold)];
}

/** Widths and ink heights of text set in Arial, Helvetica, Liberation Sans or Arimo, which agree in their widths. */
import { greatestOf } from "../units/extremes.js";
import { FONT_WIDTHS } from "./font-widths.js";

const UNITS_PER_EM = 2048;

/** Height of a capital over the font size. Heights of lettering are cap heights (ISO 3098). */
export const CAP_PER_EM = 1409 / UNITS_PER_EM;

/** Width along the baseline and ink above (`rise`) and below (`drop`, positive) it, in the unit of the cap height given. */
export interface TextSize {
  readonly width: number;
  readonly rise: number;
  readonly drop: number;
}

interface Glyph {
  readonly advance: number;
  readonly low: number;
  readonly high: number;
}

/** A character outside the table is given the room of a full-width one. */
const UNKNOWN: Glyph = { advance: 2048, low: -400, high: 1750 };

const GLYPHS = { regular: new Map<string, Glyph>(), bold: new Map<string, Glyph>() };

for (const row of FONT_WIDTHS.trim().split("\n")) {
  const [code, ...figures] = row.split(" ");
  const [a = 0, low = 0, high = 0, boldAdvance = 0, boldLow = 0, boldHigh = 0] = figures.map(Number);
  const character = String.fromCodePoint(Number.parseInt(code ?? "20", 16));
  GLYPHS.regular.set(character, { advance: a, low, high });
  GLYPHS.bold.set(character, { advance: boldAdvance, low: boldLow, high: boldHigh });
}

/** Font size for a cap height. */
export function fontSize(capHeight: number): number {
  return capHeight / CAP_PER_EM;
}

/** Size of one line of text. */
export function measureText(text: string, capHeight: number, bold: boolean): TextSize {
  const glyphs = bold ? GLYPHS.bold : GLYPHS.regular;
  let advance = 0;
  let low = 0;
  let high = 0;
  for (const character of text) {
    const glyph = glyphs.get(character) ?? UNKNOWN;
    advance += glyph.advance;
    low = Math.min(low, glyph.low);
    high = Math.max(high, glyph.high);
  }
  const unit = capHeight / CAP_PER_EM / UNITS_PER_EM;
  return { width: advance * unit, rise: high * unit, drop: -low * unit };
}

/** Width of a text whose capitals are `capHeight` high, millimetres. */
export function textWidth(text: string, capHeight: number, bold = false): number {
  return measureText(text, capHeight, bold).width;
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

/** A word in pieces that fit: broken after a hyphen and the like where there is one, else between characters. */
function pieces(word: string, width: number, capHeight: number, bold: boolean): string[] {
  if (textWidth(word, capHeight, bold) <= width) return [word];
  const result: string[] = [];
  let piece = "";
  for (const character of word) {
    if (piece !== "" && textWidth(piece + character, capHeight, bold) > width) {
      const end = breakOf(piece);
      result.push(piece.slice(0, end));
      piece = piece.slice(end);
    }
    piece += character;
  }
  return piece === "" ? result : [...result, piece];
}

/** Where a piece that fills its line is broken: after its last sign that joins words, else at its end. */
function breakOf(piece: string): number {
  const end = greatestOf(JOINTS.map((joint) => piece.lastIndexOf(joint))) + 1;
  return end > 1 ? end : piece.length;
}

const JOINTS = ["-", "_", "/", "."] as const;

/** At most `most` lines, the last one ending in an ellipsis when there was more. */
export function wrapAtMost(text: string, width: number, capHeight: number, most: number, bold = false): string[] {
  const lines = wrap(text, width, capHeight, bold);
  if (lines.length <= most) return lines;
  const rest = lines.slice(most - 1).join(" ");
  return [...lines.slice(0, most - 1), shorten(rest, width, capHeight, bold)];
}

/** `text`, or as many of its words as fit in `width` with an ellipsis; never cut within a word that fits the width. */
export function shortenAtWord(text: string, width: number, capHeight: number, bold = false): string {
  if (textWidth(text, capHeight, bold) <= width) return text;
  const [first = "", second] = wrap(text, width - textWidth(" …", capHeight, bold), capHeight, bold);
  return second === undefined ? first : `${first} …`;
}

/** At most `most` lines, the last one ending after a whole word and an ellipsis when there was more. */
export function wrapAtWords(text: string, width: number, capHeight: number, most: number, bold = false): string[] {
  const lines = wrap(text, width, capHeight, bold);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), shortenAtWord(lines.slice(most - 1).join(" "), width, capHeight, bold)];
}

/**
 * Widths and ink heights of text in the sheet font, whose widths are those of Arial, Helvetica and Liberation Sans. Room is
 * kept for DejaVu Sans Condensed too, to which a viewer falls back that has none of these and takes no font from the file.
 */
import { greatestOf } from "../units/extremes.js";
import { FONT_WIDTHS } from "./font-widths.js";

const UNITS_PER_EM = 2048;

/** Height of a capital over the font size. Heights of lettering are cap heights (ISO 3098). */
export const CAP_PER_EM = 1409 / UNITS_PER_EM;

/**
 * Room along the baseline and ink above (`rise`) and below (`drop`, positive) it, in the unit of the cap height given.
 * `width` is what the text may take in either font, never less than `setWidth`.
 */
export interface TextSize {
  readonly width: number;
  readonly rise: number;
  readonly drop: number;
}

/**
 * Advance, lowest and highest ink of one weight by code point, in units of the em; zero advance: not in the table. `narrow`
 * is the advance in the font that viewers fall back to.
 */
interface Face {
  readonly advance: Int16Array;
  readonly narrow: Int16Array;
  readonly low: Int16Array;
  readonly high: Int16Array;
}

/** Code points from here on are not in the table. */
const TABLE_END = 0x10000;

/** A character outside the table is given the room of a full-width one. */
const UNKNOWN = { advance: 2048, low: -400, high: 1750 };

function emptyFace(): Face {
  const column = () => new Int16Array(TABLE_END);
  return { advance: column(), narrow: column(), low: column(), high: column() };
}

const REGULAR = emptyFace();
const BOLD = emptyFace();

for (const row of FONT_WIDTHS.trim().split("\n")) {
  const [code, ...figures] = row.split(" ");
  const point = Number.parseInt(code ?? "20", 16);
  [REGULAR, BOLD].forEach((face, i) => {
    const [advance = 0, low = 0, high = 0] = figures.slice(3 * i, 3 * i + 3).map(Number);
    face.advance[point] = advance;
    face.narrow[point] = Number(figures[6 + i]);
    face.low[point] = low;
    face.high[point] = high;
  });
}

/** Font size for a cap height. */
export function fontSize(capHeight: number): number {
  return capHeight / CAP_PER_EM;
}

/** One measured text, in units of the em. */
interface Measured {
  /** What is kept free for it. */
  readonly advance: number;
  /** In the sheet font itself. */
  readonly set: number;
  readonly low: number;
  readonly high: number;
}

/** Texts measured lately, by weight: a sheet asks for the same ones many times over. Emptied when it is full. */
const KNOWN = { regular: new Map<string, Measured>(), bold: new Map<string, Measured>() };
const MOST_KNOWN = 4096;

function measureOnce(text: string, bold: boolean): Measured {
  const known = bold ? KNOWN.bold : KNOWN.regular;
  const found = known.get(text);
  if (found !== undefined) return found;
  const measured = measureGlyphs(text, bold ? BOLD : REGULAR);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, measured);
  return measured;
}

function measureGlyphs(text: string, face: Face): Measured {
  let [set, narrow, low, high] = [0, 0, 0, 0];
  for (let i = 0; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    const code = isSurrogate(unit) ? (text.codePointAt(i) ?? 0) : unit;
    if (code >= TABLE_END) i += 1;
    const width = face.advance[code] ?? 0;
    const known = width > 0;
    const other = known ? 0 : unknownAdvance(code);
    set += known ? width : other;
    narrow += known ? (face.narrow[code] ?? 0) : other;
    low = Math.min(low, known ? (face.low[code] ?? 0) : UNKNOWN.low);
    high = Math.max(high, known ? (face.high[code] ?? 0) : UNKNOWN.high);
  }
  return { advance: Math.max(set, narrow), set, low, high };
}

/** Half of a character beyond the table. */
function isSurrogate(unit: number): boolean {
  return unit >= 0xd800 && unit < 0xe000;
}

/** None for what stands over or under the letter before it, or joins letters and is not seen. */
function unknownAdvance(code: number): number {
  return /[\p{Mn}\p{Cf}]/u.test(String.fromCodePoint(code)) ? 0 : UNKNOWN.advance;
}

/** True where the sheet font has a letter of its own for the character. */
export function isInSheetFont(character: string): boolean {
  return (REGULAR.advance[character.codePointAt(0) ?? 0] ?? 0) > 0;
}

/** Millimetres of one unit of the em at a cap height. */
function emUnit(capHeight: number): number {
  return capHeight / CAP_PER_EM / UNITS_PER_EM;
}

/** Size of one line of text. */
export function measureText(text: string, capHeight: number, bold: boolean): TextSize {
  const { advance, low, high } = measureOnce(text, bold);
  const unit = emUnit(capHeight);
  return { width: advance * unit, rise: high * unit, drop: -low * unit };
}

/** Width of a text whose capitals are `capHeight` high, millimetres. */
export function textWidth(text: string, capHeight: number, bold = false): number {
  return measureOnce(text, bold).advance * emUnit(capHeight);
}

/** Width of a text as it is set in the sheet font, millimetres: never more than `textWidth`. */
export function setWidth(text: string, capHeight: number, bold: boolean): number {
  return measureOnce(text, bold).set * emUnit(capHeight);
}

/** One printable line: control characters and runs of space become one space. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\s]+/gu, " ").trim();
}

/** `text`, or as much of it as fits in `width` with an ellipsis. */
export function shorten(text: string, width: number, capHeight: number, bold = false): string {
  if (textWidth(text, capHeight, bold) <= width) return text;
  const face = bold ? BOLD : REGULAR;
  const most = width / emUnit(capHeight) - advanceOf("…", face);
  let [advance, end] = [0, 0];
  for (const character of text) {
    advance += advanceOf(character, face);
    if (advance > most) break;
    end += character.length;
  }
  return `${text.slice(0, end).trimEnd()}…`;
}

function advanceOf(character: string, face: Face): number {
  const code = character.codePointAt(0) ?? 0;
  const advance = face.advance[code] ?? 0;
  return advance > 0 ? Math.max(advance, face.narrow[code] ?? 0) : unknownAdvance(code);
}

/** Lines of at most `width`, broken at spaces; a word that is longer than a line is broken between characters. */
export function wrap(text: string, width: number, capHeight: number, bold = false): readonly string[] {
  const most = width / emUnit(capHeight);
  const kept = wrappedTo(most, bold);
  const known = kept.get(text);
  if (known !== undefined) return known;
  const lines = wrapOnce(text, most, bold);
  if (kept.size >= MOST_WRAPPED) kept.clear();
  kept.set(text, lines);
  return lines;
}

type Wrapped = Map<string, readonly string[]>;

/** Texts wrapped lately, by weight and width: notes and cautions stand on every sheet. Emptied when it is full. */
const WRAPPED = { regular: new Map<number, Wrapped>(), bold: new Map<number, Wrapped>() };
const MOST_WRAPPED = 64;
const MOST_WIDTHS = 256;

function wrappedTo(most: number, bold: boolean): Wrapped {
  const widths = bold ? WRAPPED.bold : WRAPPED.regular;
  const known = widths.get(most);
  if (known !== undefined) return known;
  const made: Wrapped = new Map();
  if (widths.size >= MOST_WIDTHS) widths.clear();
  widths.set(most, made);
  return made;
}

function wrapOnce(text: string, most: number, bold: boolean): readonly string[] {
  const space = measureOnce(" ", bold).advance;
  const lines: string[] = [];
  let line = "";
  let taken = 0;
  for (const word of wordsOf(text, most, bold)) {
    const { advance } = measureOnce(word, bold);
    if (line !== "" && taken + space + advance > most) {
      lines.push(line);
      line = "";
    }
    taken = line === "" ? advance : taken + space + advance;
    line = line === "" ? word : `${line} ${word}`;
  }
  if (line !== "") lines.push(line);
  return lines;
}

function wordsOf(text: string, most: number, bold: boolean): readonly string[] {
  const words = printable(text).split(" ");
  const isLong = (word: string) => measureOnce(word, bold).advance > most;
  return words.some(isLong) ? words.flatMap((word) => (isLong(word) ? pieces(word, most, bold) : [word])) : words;
}

/** A word in pieces that fit: broken after a hyphen and the like where there is one, else between characters. */
function pieces(word: string, most: number, bold: boolean): readonly string[] {
  const face = bold ? BOLD : REGULAR;
  const result: string[] = [];
  let piece = "";
  let taken = 0;
  for (const character of word) {
    const advance = advanceOf(character, face);
    if (piece !== "" && taken + advance > most) {
      const end = breakOf(piece);
      result.push(piece.slice(0, end));
      piece = piece.slice(end);
      taken = measureOnce(piece, bold).advance;
    }
    piece += character;
    taken += advance;
  }
  return piece === "" ? result : [...result, piece];
}

/** Where a piece that fills its line is broken: after its last sign that joins words, else at its end. */
function breakOf(piece: string): number {
  const end = greatestOf(JOINTS.map((joint) => piece.lastIndexOf(joint))) + 1;
  return end > 1 ? end : piece.length;
}

const JOINTS = ["-", "_", "/", "."] as const;

/** At most `most` lines, the last one cut to end in an ellipsis when there was more. */
export function wrapAtMost(
  text: string,
  width: number,
  capHeight: number,
  most: number,
  bold = false,
  cut = shorten,
): readonly string[] {
  const lines = wrap(text, width, capHeight, bold);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), cut(lines.slice(most - 1).join(" "), width, capHeight, bold)];
}

/** `text`, or as many of its words as fit in `width` with an ellipsis; never cut within a word that fits the width. */
export function shortenAtWord(text: string, width: number, capHeight: number, bold = false): string {
  if (textWidth(text, capHeight, bold) <= width) return text;
  const [first = "", second] = wrap(text, width - textWidth(" …", capHeight, bold), capHeight, bold);
  return second === undefined ? first : `${first} …`;
}

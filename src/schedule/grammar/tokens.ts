/** A cell's text -> numbers, words and signs, each with where it stands. One pass, no look back. */
import { plainText } from "../../units/index.js";

/** One piece of a cell. `key` is what grammars compare: small letters, without the dots of an abbreviation. */
export interface Token {
  readonly kind: "number" | "word" | "sign";
  readonly key: string;
  /** Where it stands in the plain text, its end not included. */
  readonly start: number;
  readonly end: number;
  /** True where white space stands before it. */
  readonly gap: boolean;
}

/** Diameter signs: slashed O, diameter sign, empty set, phi. */
const DIAMETER_SIGNS = /[\u00D8\u00F8\u2300\u2205\u03A6\u03C6\u0424\u0444]/g;
const FULL_WIDTH = /[\uFF01-\uFF5E]/g;

/** The text with plain dashes, spaces, primes, fractions, diameter and times signs, and signs of full width made plain. */
export function plainCell(text: string): string {
  const narrow = text.replace(FULL_WIDTH, (sign) => sign.normalize("NFKC"));
  return plainText(narrow)
    .replace(DIAMETER_SIGNS, "\u00F8")
    .replace(/\u00D7/g, "x");
}

/** Words that end in a dot before a number which is no decimal: `GR.36`, `NO.4`. After any other `.75` is three quarters. */
const DOTTED = new Set(["gr", "no", "nos", "el", "elev", "cl"]);
/** Words that `x` may follow without a space: `SQx1/2`. */
const BEFORE_TIMES = new Set(["sq", "dia", "pl", "rd", "bpl", "in", "mm", "cm", "ft", "round", "square"]);
/** Words that begin with x and are no `x` with a word after it: grades of pipe. */
const OWN_X = new Set(["xs", "xxs", "xh", "xxh", "xstrong"]);

const isDigit = (sign: string | undefined): boolean => sign !== undefined && sign >= "0" && sign <= "9";
const isPlainLetter = (sign: string): boolean => (sign >= "a" && sign <= "z") || (sign >= "A" && sign <= "Z");
const isLetter = (sign: string | undefined): boolean =>
  sign !== undefined && (isPlainLetter(sign) || (sign > "\u007F" && sign !== "\u00F8" && /\p{L}/u.test(sign)));

/** The pieces of a plain text. */
export function tokenize(plain: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let gap = false;
  while (at < plain.length) {
    if (plain[at] === " ") {
      gap = true;
      at += 1;
      continue;
    }
    const made = tokenAt(plain, at, gap);
    for (const token of made) tokens.push(token);
    at = made.at(-1)?.end ?? at + 1;
    gap = false;
  }
  return tokens;
}

function tokenAt(plain: string, start: number, gap: boolean): readonly Token[] {
  const sign = plain[start];
  if (isDigit(sign) || (sign === "." && isDigit(plain[start + 1]))) {
    const end = endOfNumber(plain, start);
    return [{ kind: "number", key: plain.slice(start, end), start, end, gap }];
  }
  if (isLetter(sign)) return wordAt(plain, start, gap);
  return [{ kind: "sign", key: sign ?? "", start, end: start + 1, gap }];
}

function endOfNumber(plain: string, start: number): number {
  let end = start;
  let dots = 0;
  while (isDigit(plain[end]) || (plain[end] === "." && dots === 0)) {
    if (plain[end] === ".") dots += 1;
    end += 1;
  }
  return end;
}

function wordAt(plain: string, start: number, gap: boolean): readonly Token[] {
  const end = endOfWord(plain, start);
  const key = plain.slice(start, end).toLowerCase().replaceAll(".", "");
  const before = plain[start - 1];
  const joined = !gap && before !== undefined && /[\d"')\u00F8.]/.test(before);
  const word = (from: number, to: number, isFirst: boolean): Token => {
    const own = plain.slice(from, to).toLowerCase().replaceAll(".", "");
    return { kind: own === "x" ? "sign" : "word", key: own, start: from, end: to, gap: isFirst && gap };
  };
  if (key.length > 1 && key.startsWith("x") && joined && !OWN_X.has(key))
    return [word(start, start + 1, true), ...wordAt(plain, start + 1, false)];
  const stem = key.slice(0, -1);
  if (key.endsWith("x") && BEFORE_TIMES.has(stem) && (isDigit(plain[end]) || plain[end] === " "))
    return [word(start, end - 1, true), word(end - 1, end, false)];
  return [word(start, withDot(plain, end, key), true)];
}

/** `REQ'D` and `O.C.` are one word each: a prime between letters, and dots between single letters, belong to it. */
function endOfWord(plain: string, start: number): number {
  let end = start;
  while (true) {
    const from = end;
    while (isLetter(plain[end])) end += 1;
    const isSingle = end - from === 1;
    const goesOn = plain[end] === "'" ? !isSingle || from !== start : plain[end] === "." && isSingle;
    if (!goesOn || !isLetter(plain[end + 1])) return end;
    if (plain[end] === "." && isLetter(plain[end + 2])) return end;
    end += 1;
  }
}

/** The dot of an abbreviation, where it is not that of a decimal. */
function withDot(plain: string, end: number, key: string): number {
  if (plain[end] !== "." || key === "x") return end;
  return isDigit(plain[end + 1]) && !DOTTED.has(key) ? end : end + 1;
}

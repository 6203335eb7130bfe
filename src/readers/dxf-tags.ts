/**
 * A DXF file as its tags: a group code on one line, a value on the next (published DXF reference). Lines end with LF, CR LF
 * or CR. Values stay bytes until they are asked for, so that a large file costs no strings. Nothing here throws on what a
 * file holds.
 */
import type { FindingList } from "./dxf-findings.js";

/** Tag `n` has group code `codes[n]`; it stands on lines 2n + 1 and 2n + 2. */
export interface Tags {
  readonly codes: Int32Array;
  /** How many tags there are; `codes` may be longer. */
  readonly count: number;
  /** The value of tag `n`, trimmed; "" beyond the last. */
  text(index: number): string;
  /** The number that the value of tag `n` spells, null where it spells none. */
  number(index: number): number | null;
}

/** Tags `first` up to, not including, `end`. */
export interface TagRange {
  readonly first: number;
  readonly end: number;
}

/** The largest file that is read, about 500,000 entities; a larger one is refused with a finding, unread. */
export const LARGEST_CUT_FILE = 32_000_000;

const [TAB, LF, CR, SPACE, PLUS, MINUS, DOT, ZERO, NINE] = [9, 10, 13, 32, 43, 45, 46, 48, 57];

/** The tags of a file, none where it is no text DXF: then a finding says what it is. */
export function readTags(bytes: Uint8Array, findings: FindingList): Tags {
  const refusal = refuse(bytes);
  if (refusal === null) return new ByteTags(bytes, findings);
  findings.add(refusal.code, "stop", refusal.message);
  return new ByteTags(new Uint8Array(0), findings);
}

function refuse(bytes: Uint8Array): { readonly code: string; readonly message: string } | null {
  if (bytes.length === 0) return { code: "empty", message: "the file is empty" };
  if (bytes.length > LARGEST_CUT_FILE) {
    const message = `the file has ${bytes.length} bytes; at most ${LARGEST_CUT_FILE} are read`;
    return { code: "too-large", message };
  }
  const start = asciiText(bytes, 0, Math.min(bytes.length, 22));
  if (start.startsWith("AutoCAD Binary DXF")) {
    return { code: "binary", message: "the file is a binary DXF; save it as a text (ASCII) DXF" };
  }
  if (/^AC10\d\d/.test(start)) return { code: "dwg", message: "the file is a DWG; save it as a text (ASCII) DXF" };
  if (bytes.includes(0)) return { code: "binary", message: "the file holds NUL bytes: it is not a text DXF" };
  return null;
}

function asciiText(bytes: Uint8Array, start: number, end: number): string {
  return String.fromCharCode(...bytes.subarray(start, end));
}

/** Keeps a byte-order mark, so that one ASCII byte stays one letter at its place. */
const utf8 = new TextDecoder("utf-8", { ignoreBOM: true });

/** Bytes of a tag, about: room is made for a tag in so many bytes, and for more when they are shorter. */
const USUAL_TAG = 7;

class ByteTags implements Tags {
  codes: Int32Array;
  count = 0;
  /** Where the value of tag n starts and ends: 2n and 2n + 1. */
  private spans: Int32Array;
  /** The whole file, one letter a byte: null where it holds bytes outside ASCII. */
  private readonly ascii: string | null;
  private readonly decoder: TextDecoder;

  constructor(
    private readonly bytes: Uint8Array,
    private readonly findings: FindingList,
  ) {
    const capacity = Math.ceil(bytes.length / USUAL_TAG);
    this.codes = new Int32Array(capacity);
    this.spans = new Int32Array(2 * capacity);
    const isAscii = this.split();
    this.decoder = isAscii ? utf8 : chooseDecoder(bytes, findings);
    this.ascii = isAscii && !hasByteOrderMark(bytes) ? this.decoder.decode(bytes) : null;
  }

  text(index: number): string {
    const start = this.spans[2 * index] ?? 0;
    const end = this.spans[2 * index + 1] ?? 0;
    return this.ascii?.slice(start, end) ?? this.decoder.decode(this.bytes.subarray(start, end)).trim();
  }

  number(index: number): number | null {
    const { bytes } = this;
    let at = this.spans[2 * index] ?? 0;
    const end = this.spans[2 * index + 1] ?? 0;
    const isNegative = bytes[at] === MINUS;
    if (isNegative || bytes[at] === PLUS) at++;
    let whole = 0;
    let digits = 0;
    let divisor = 0;
    for (; at < end; at++) {
      const byte = bytes[at] ?? 0;
      if (byte >= ZERO && byte <= NINE) {
        whole = whole * 10 + (byte - ZERO);
        digits++;
        divisor *= 10;
      } else if (byte === DOT && divisor === 0) divisor = 1;
      else return this.unusualNumber(index);
    }
    // Up to 15 digits the whole number and the power of ten are exact, and their quotient is the nearest double.
    if (digits === 0 || digits > 15) return this.unusualNumber(index);
    const value = divisor > 1 ? whole / divisor : whole;
    if (!isNegative) return value;
    if (value === 0) this.findings.add("minus-zero", "advise", "a zero is written with a minus sign");
    return -value;
  }

  /** Many digits, an exponent, or no number at all. */
  private unusualNumber(index: number): number | null {
    const text = this.text(index);
    const match = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/.exec(text);
    const value = Number(text);
    if (match === null || !Number.isFinite(value)) return null;
    if (match[2] !== undefined) {
      this.findings.add("exponent", "advise", "numbers are written with an exponent, which some controls do not read");
    }
    return value;
  }

  /** Finds the tags; false where their values hold bytes outside ASCII. */
  private split(): boolean {
    const { bytes, findings } = this;
    const lineEnd = bytes.includes(LF) ? LF : CR;
    let seen = 0;
    let at = hasByteOrderMark(bytes) ? 3 : 0;
    while (at < bytes.length) {
      const lineStart = at;
      while (at < bytes.length && bytes[at] !== lineEnd) at++;
      const code = readCode(bytes, lineStart, at);
      if (code === null) {
        reportEnd(bytes, lineStart, this.count, findings);
        break;
      }
      if (at >= bytes.length) {
        findings.add("truncated", "stop", "the file ends after a group code without its value");
        break;
      }
      let start = ++at;
      while (at < bytes.length && bytes[at] !== lineEnd) seen |= bytes[at++] ?? 0;
      let end = at++;
      while (start < end && isBlank(bytes[start])) start++;
      while (end > start && isBlank(bytes[end - 1])) end--;
      this.put(code, start, end);
    }
    return seen <= 127;
  }

  private put(code: number, start: number, end: number): void {
    if (this.count === this.codes.length) this.grow();
    this.codes[this.count] = code;
    this.spans[2 * this.count] = start;
    this.spans[2 * this.count + 1] = end;
    this.count++;
  }

  private grow(): void {
    const { codes, spans } = this;
    this.codes = new Int32Array(2 * codes.length + 16);
    this.codes.set(codes);
    this.spans = new Int32Array(2 * this.codes.length);
    this.spans.set(spans);
  }
}

/** UTF-8's mark, which some editors put before the first line. */
function hasByteOrderMark(bytes: Uint8Array): boolean {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
}

function isBlank(byte: number | undefined): boolean {
  return byte === SPACE || byte === CR || byte === TAB;
}

/** Blank lines may follow the last tag; anything else is a line that should have been a group code. */
function reportEnd(bytes: Uint8Array, from: number, tags: number, findings: FindingList): void {
  const rest = bytes.subarray(from);
  if (rest.every((byte) => isBlank(byte) || byte === LF)) return;
  findings.add("bad-group-code", "stop", `line ${2 * tags + 1} is no group code; the rest of the file is not read`);
}

/** A whole number, blanks around it allowed; null where the line is none. */
function readCode(bytes: Uint8Array, start: number, end: number): number | null {
  let value = 0;
  let digits = 0;
  let sign = 1;
  for (let index = start; index < end; index++) {
    const byte = bytes[index] ?? 0;
    if (byte >= ZERO && byte <= NINE) {
      value = value * 10 + (byte - ZERO);
      digits++;
    } else if (byte === MINUS && digits === 0) sign = -1;
    else if (!isBlank(byte)) return null;
  }
  return digits === 0 || digits > 5 ? null : sign * value;
}

/** UTF-8 where the bytes are that, as from R2007 on; else the code page that the header names. */
function chooseDecoder(bytes: Uint8Array, findings: FindingList): TextDecoder {
  if (!utf8.decode(bytes).includes("\uFFFD")) {
    findings.add("non-ascii", "advise", "the file holds letters outside ASCII");
    return utf8;
  }
  const head = asciiText(bytes, 0, Math.min(bytes.length, 4096));
  const name = /\$DWGCODEPAGE\s+3\s+(\S+)/.exec(head)?.[1]?.toUpperCase() ?? "";
  const page = /^ANSI_(125[0-8]|874)$/.exec(name)?.[1] ?? "1252";
  findings.add("code-page", "advise", `the file holds letters outside ASCII, read by code page ${page}`);
  return new TextDecoder(`windows-${page}`);
}

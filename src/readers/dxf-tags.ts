/**
 * A DXF file as its tags: a group code on one line, a value on the next (published DXF reference). Lines end with LF, CR LF
 * or CR. Nothing here throws on what a file holds.
 */
import type { FindingList } from "./dxf-findings.js";

/** Tag `n` has code `codes[n]` and value `values[n]`, trimmed; it stands on lines 2n + 1 and 2n + 2. */
export interface Tags {
  readonly codes: readonly number[];
  readonly values: readonly string[];
}

/** Tags `first` up to, not including, `end`. */
export interface TagRange {
  readonly first: number;
  readonly end: number;
}

/** The largest file that is read; a larger one is refused with a finding. */
export const LARGEST_CUT_FILE = 100_000_000;

const NO_TAGS: Tags = { codes: [], values: [] };

/** The tags of a file, none where it is no text DXF: then a finding says what it is. */
export function readTags(bytes: Uint8Array, findings: FindingList): Tags {
  const refusal = refuse(bytes);
  if (refusal !== null) {
    findings.add(refusal.code, "stop", refusal.message);
    return NO_TAGS;
  }
  return splitTags(decodeText(bytes, findings), findings);
}

function refuse(bytes: Uint8Array): { readonly code: string; readonly message: string } | null {
  if (bytes.length === 0) return { code: "empty", message: "the file is empty" };
  if (bytes.length > LARGEST_CUT_FILE) {
    const message = `the file has ${bytes.length} bytes; at most ${LARGEST_CUT_FILE} are read`;
    return { code: "too-large", message };
  }
  const start = String.fromCharCode(...bytes.subarray(0, 22));
  if (start.startsWith("AutoCAD Binary DXF")) {
    return { code: "binary", message: "the file is a binary DXF; save it as a text (ASCII) DXF" };
  }
  if (/^AC10\d\d/.test(start)) return { code: "dwg", message: "the file is a DWG; save it as a text (ASCII) DXF" };
  if (bytes.includes(0)) return { code: "binary", message: "the file holds NUL bytes: it is not a text DXF" };
  return null;
}

/** ASCII and UTF-8 as they are; anything else byte by byte, by the code page that R12 to R2004 files are written in. */
function decodeText(bytes: Uint8Array, findings: FindingList): string {
  const text = new TextDecoder("utf-8", { ignoreBOM: false }).decode(bytes);
  if (text.includes("\uFFFD")) {
    const [first, other] = codePage(bytes);
    findings.add("code-page", "advise", `the file holds bytes outside ASCII, read as ${other ?? first}`);
    return new TextDecoder(first).decode(bytes);
  }
  if (text.length !== bytes.length) findings.add("non-ascii", "advise", "the file holds letters outside ASCII");
  return text;
}

/** Label of the code page for a decoder, and its name in the file where it is known. */
function codePage(bytes: Uint8Array): readonly [string, string?] {
  const head = String.fromCharCode(...bytes.subarray(0, 4096));
  const name = /\$DWGCODEPAGE\s+3\s+(\S+)/.exec(head)?.[1]?.toUpperCase();
  const number = /^ANSI_(125[0-8]|874)$/.exec(name ?? "")?.[1];
  if (number !== undefined && name !== undefined) return [`windows-${number}`, name];
  return ["windows-1252"];
}

function splitTags(text: string, findings: FindingList): Tags {
  const lineEnd = text.includes("\n") ? "\n" : "\r";
  const codes: number[] = [];
  const values: string[] = [];
  let start = 0;
  while (start < text.length) {
    const codeEnd = endOfLine(text, start, lineEnd);
    const code = readCode(text, start, codeEnd);
    if (code === null) {
      if (text.slice(start).trim() === "") break;
      const line = 2 * codes.length + 1;
      findings.add("bad-group-code", "stop", `line ${line} is no group code; the rest of the file is not read`);
      break;
    }
    if (codeEnd >= text.length) {
      findings.add("truncated", "stop", "the file ends after a group code without its value");
      break;
    }
    const valueEnd = endOfLine(text, codeEnd + 1, lineEnd);
    codes.push(code);
    values.push(text.slice(codeEnd + 1, valueEnd).trim());
    start = valueEnd + 1;
  }
  return { codes, values };
}

function endOfLine(text: string, start: number, lineEnd: string): number {
  const end = text.indexOf(lineEnd, start);
  return end < 0 ? text.length : end;
}

/** A whole number, blanks around it allowed; null where the line is none. */
function readCode(text: string, start: number, end: number): number | null {
  let value = 0;
  let digits = 0;
  let sign = 1;
  for (let index = start; index < end; index++) {
    const letter = text.charCodeAt(index);
    if (letter >= 48 && letter <= 57) {
      value = value * 10 + letter - 48;
      digits++;
    } else if (letter === 45 && digits === 0) sign = -1;
    else if (letter !== 32 && letter !== 13 && letter !== 9) return null;
  }
  return digits === 0 || digits > 5 ? null : sign * value;
}

const PLAIN_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;
const EXPONENT_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)[eE][+-]?\d{1,3}$/;

/** The number that a value spells, null where it spells none. An exponent is read, and remarked on. */
export function readNumber(value: string, findings: FindingList): number | null {
  if (PLAIN_NUMBER.test(value)) return Number(value);
  if (!EXPONENT_NUMBER.test(value)) return null;
  const number = Number(value);
  if (!Number.isFinite(number)) return null;
  findings.add("exponent", "advise", "numbers are written with an exponent, which some controls do not read");
  return number;
}

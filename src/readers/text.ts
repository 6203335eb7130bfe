/** Bytes of a text file -> text. */
import type { Finding } from "../diagnostics/finding.js";
import { spreadsheetFault, spreadsheetKind } from "./spreadsheet-kind.js";

/** Largest text file that is read, in bytes or characters. */
const LARGEST_TEXT = 16 * 1024 * 1024;

/** The text of a file; or why it is not read. */
export type DecodedText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly finding: Finding };

/** UTF-8 with or without byte order mark -> text without it; anything else is a finding. `wanted` is what the text is asked for. */
export function decodeText(input: string | Uint8Array, file: string, wanted = "allowed is text in UTF-8"): DecodedText {
  const kind = spreadsheetKind(file, input);
  if (kind !== null) return { ok: false, finding: spreadsheetFault(file, kind, wanted) };
  if (input.length > LARGEST_TEXT) {
    const size = `${Math.ceil(input.length / 1024 / 1024)} MB`;
    return refuse(file, "file-too-large", `the file has ${size}; at most ${LARGEST_TEXT / 1024 / 1024} MB are read`);
  }
  if (typeof input === "string") return { ok: true, text: withoutMark(input) };
  if (isUtf16(input)) {
    return refuse(file, "not-utf8", "the file is UTF-16 text; UTF-8 is allowed", "save it as UTF-8");
  }
  try {
    return { ok: true, text: withoutMark(new TextDecoder("utf-8", { fatal: true }).decode(input)) };
  } catch {
    return refuseBytes(input, file);
  }
}

/** The text of a spreadsheet, with what should be known of how it was read; or why it is not read. */
export type DecodedSheet =
  | { readonly ok: true; readonly text: string; readonly warnings: readonly Finding[] }
  | { readonly ok: false; readonly finding: Finding };

/** As `decodeText`; UTF-16 with its byte order mark too, and Windows-1252, which is told, since another code page looks the same. */
export function decodeSheetText(input: string | Uint8Array, file: string): DecodedSheet {
  const isBytes = typeof input !== "string" && input.length <= LARGEST_TEXT && spreadsheetKind(file, input) === null;
  if (isBytes && isUtf16(input)) return decodeUtf16(input, file);
  const decoded = decodeText(input, file, "allowed is CSV: open it and save the sheet as CSV");
  if (decoded.ok) return { ...decoded, warnings: [] };
  return isBytes && isWindows1252(input) ? decodeWindows1252(input, file) : decoded;
}

function decodeUtf16(bytes: Uint8Array, file: string): DecodedSheet {
  const label = bytes[0] === 0xff ? "utf-16le" : "utf-16be";
  try {
    return { ok: true, text: withoutMark(new TextDecoder(label, { fatal: true }).decode(bytes)), warnings: [] };
  } catch {
    return refuse(file, "not-utf8", "the file is damaged UTF-16 text; UTF-8 is allowed", "save it as UTF-8");
  }
}

/** No letter of UTF-8 beyond ASCII is whole, and every byte stands for a sign of that code page. */
function isWindows1252(bytes: Uint8Array): boolean {
  const isSign = (byte: number) => (byte >= 0x20 ? !UNASSIGNED.has(byte) : byte === 9 || byte === 10 || byte === 13);
  if (!bytes.every(isSign)) return false;
  return /^[\0-\x7F\uFFFD]*$/.test(new TextDecoder("utf-8").decode(bytes));
}

/** Signs of Windows-1252 from 0x80 to 0x9F (CP1252.TXT); the others are those of Unicode. */
const SIGNS = [
  ..."\u20AC\uFFFD\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\uFFFD\u017D\uFFFD",
  ..."\uFFFD\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\uFFFD\u017E\u0178",
];

function signOf(byte: number): string {
  return SIGNS[byte - 0x80] ?? String.fromCharCode(byte);
}

/** Windows-1252 gives these bytes, and DEL, no sign (Unicode mapping table CP1252.TXT). */
const UNASSIGNED: ReadonlySet<number> = new Set([0x7f, 0x81, 0x8d, 0x8f, 0x90, 0x9d]);

function decodeWindows1252(bytes: Uint8Array, file: string): DecodedSheet {
  const text = Array.from(bytes, signOf).join("");
  const offset = Math.max(0, text.search(/[^\0-\x7F]/));
  const { line } = placeInText(text, offset);
  const message = `the file is no UTF-8 and is read as Windows-1252; its first sign beyond ASCII is "${text[offset] ?? ""}", on line ${line}`;
  const hint = "save it as UTF-8 if that sign is another";
  const at = { file, line, column: 1 };
  return { ok: true, text, warnings: [{ code: "windows-1252", severity: "warning", at, message, hint }] };
}

/** Line and column of a character offset, both from 1. */
export function placeInText(text: string, offset: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, offset);
  const lastBreak = before.lastIndexOf("\n");
  return { line: before.split("\n").length, column: offset - lastBreak };
}

function withoutMark(text: string): string {
  return text.startsWith("\uFEFF") ? text.slice(1) : text;
}

function isUtf16(bytes: Uint8Array): boolean {
  const [a, b] = bytes;
  return (a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff);
}

function refuseBytes(bytes: Uint8Array, file: string): DecodedText {
  const lossy = new TextDecoder("utf-8").decode(bytes);
  const at = placeInText(lossy, Math.max(0, lossy.indexOf("\uFFFD")));
  const message = "a byte that is not UTF-8 text; UTF-8 is allowed";
  const hint = "save the file as UTF-8";
  return { ok: false, finding: { code: "not-utf8", severity: "error", at: { file, ...at }, message, hint } };
}

function refuse(
  file: string,
  code: string,
  message: string,
  hint?: string,
): { readonly ok: false; readonly finding: Finding } {
  const finding: Finding = { code, severity: "error", at: { file, line: 1, column: 1 }, message };
  return { ok: false, finding: hint === undefined ? finding : { ...finding, hint } };
}

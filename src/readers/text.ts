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

function refuse(file: string, code: string, message: string, hint?: string): DecodedText {
  const finding: Finding = { code, severity: "error", at: { file, line: 1, column: 1 }, message };
  return { ok: false, finding: hint === undefined ? finding : { ...finding, hint } };
}

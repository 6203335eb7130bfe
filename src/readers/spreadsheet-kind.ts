/** Files of spreadsheets, and prints of them, that are handed in where they are not read: what they are, and what to do. */
import type { Finding } from "../diagnostics/finding.js";

/** By the ending of its name, or by its first bytes. */
export type SpreadsheetKind = "xlsx" | "xlsm" | "xlsb" | "xls" | "ods" | "pdf" | "picture";

const WORDS: Readonly<Record<SpreadsheetKind, string>> = {
  xlsx: "a workbook (.xlsx)",
  xlsm: "a workbook with macros (.xlsm)",
  xlsb: "a workbook in binary form (.xlsb)",
  xls: "an old workbook (.xls)",
  ods: "an OpenDocument spreadsheet (.ods)",
  pdf: "a print (.pdf)",
  picture: "a picture",
};

const ENDING = /\.(xlsx|xlsm|xlsb|xls|ods|pdf)$/i;
const PICTURE_ENDING = /\.(png|jpe?g|gif|tiff?|webp|heic|bmp)$/i;
/** First bytes of PNG (W3C, 5.2), JPEG (ITU-T T.81, B.1.1.3), GIF (GIF89a, 17), and TIFF in both orders of bytes (TIFF 6.0, section 2). */
const PICTURES: readonly (readonly number[])[] = [
  [0x89, 0x50, 0x4e, 0x47],
  [0xff, 0xd8, 0xff],
  [0x47, 0x49, 0x46, 0x38],
  [0x49, 0x49, 0x2a, 0x00],
  [0x4d, 0x4d, 0x00, 0x2a],
];
const PACKED = [0x50, 0x4b, 0x03, 0x04];
/** `%PDF-` (ISO 32000-1, 7.5.2). */
const PRINT = [0x25, 0x50, 0x44, 0x46, 0x2d];
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0];
/** What the first file in an OpenDocument archive says, plain (ODF 1.2 part 3, 3.3). */
const OPEN_DOCUMENT = "mimetypeapplication/vnd.oasis.opendocument.spreadsheet";

/** Null for a file that is none. */
export function spreadsheetKind(name: string, content: string | Uint8Array): SpreadsheetKind | null {
  const ending = ENDING.exec(name)?.[1]?.toLowerCase();
  for (const kind of ["xlsx", "xlsm", "xlsb", "xls", "ods", "pdf"] as const) if (ending === kind) return kind;
  if (PICTURE_ENDING.test(name)) return "picture";
  if (typeof content === "string") return null;
  const startsWith = (signature: readonly number[]) => signature.every((byte, index) => content[index] === byte);
  if (startsWith(COMPOUND)) return "xls";
  if (startsWith(PRINT)) return "pdf";
  if (PICTURES.some(startsWith)) return "picture";
  if (!startsWith(PACKED)) return null;
  return String.fromCharCode(...content.subarray(30, 30 + OPEN_DOCUMENT.length)) === OPEN_DOCUMENT ? "ods" : "xlsx";
}

/** A spreadsheet where another file is asked; `instead` says what to do. */
export function spreadsheetFault(file: string, kind: SpreadsheetKind, instead: string): Finding {
  const message = `this is ${WORDS[kind]}, by its name or its first bytes; ${instead}`;
  return { code: "spreadsheet-kind", severity: "error", at: { file }, message };
}

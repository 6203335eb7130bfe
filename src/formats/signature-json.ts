/** A signature as a file: schema 1, a base and a file a line, sealed at its end. */
import { printableJson } from "../diagnostics/printable.js";
import type { SignatureRecord } from "../signature/index.js";
import { SEALED, sealEnd } from "./seal.js";

/** How every record begins: by it a file is known as one. */
export const SIGNATURE_START = `{\n  "rodplateSignature": 1,\n  ${SEALED},\n`;

/** What a record is, and what it is not. */
export const SIGNATURE_MEANING: readonly string[] = [
  "A record of who says to have checked which bytes: it is bound to them by hashes, and void when one of them changes.",
  "It is no proof of identity: whoever can write to this folder can write a record in any name.",
  "It is no seal of a licensed engineer and stands for none: local codes and licensed practice govern.",
];

/** `hash`: SHA-256 of a text in hexadecimal. */
export function writeSignature(record: SignatureRecord, hash: (text: string) => string): string {
  const { bases, files, layout, open, accepted, by, date, instant, note, program, ...state } = record;
  const said = { by, date, instant, note, program, means: SIGNATURE_MEANING, ...state };
  const lines = [
    ...Object.entries(said).map(([key, value]) => `  "${key}": ${printableJson(value)}`),
    `  "open": ${list(open)}`,
    `  "accepted": ${list(accepted)}`,
    `  "layout": ${printableJson(layout)}`,
    `  "bases": ${list(bases)}`,
    `  "files": ${list(files)}`,
  ];
  const text = `${SIGNATURE_START}${lines.join(",\n")}`;
  return `${text}${sealEnd(hash(text))}`;
}

function list(items: readonly unknown[]): string {
  if (items.length === 0) return "[]";
  return `[\n${items.map((item) => `    ${printableJson(item)}`).join(",\n")}\n  ]`;
}

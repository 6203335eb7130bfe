/** What `sign` says when it has signed. */
import { counted } from "../checks/words.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import type { OpenRows, SignatureRecord, SignatureState } from "../signature/index.js";
import { styled, wrap } from "./ledger-text.js";
import { SIGNATURE_MEANING } from "./signature-json.js";
import { writeSignatures } from "./signature-text.js";

/** How the terminal shows it; `shown` is the record's path for people. */
export interface SignTextOptions {
  readonly shown: string;
  readonly width: number;
  readonly color: boolean;
}

/** `others`: signatures that stood beside the package before; `added`: files of somebody's, which are not signed. */
export const writeSignText = terminalText(
  (
    record: SignatureRecord,
    others: readonly SignatureState[],
    added: readonly string[],
    { shown, width, color }: SignTextOptions,
  ): string => {
    const lines = [
      ...signedLines(record, added, color),
      `Record: ${shown}`,
      `SHA-256 of summary.json: ${record.summary?.sha256 ?? ""}`,
      "Keep that line apart from the package, as in a mail: by it anybody can tell later that nothing was written anew.",
      "",
      ...SIGNATURE_MEANING,
      "CHECKED BY on the sheets stays empty: the record stands beside them.",
    ];
    const before = others.length === 0 ? "" : `Signed before:\n${writeSignatures(others, { width, color })}`;
    return `${lines.flatMap((line) => (line === "" ? [""] : wrap(line, width))).join("\n")}\n${before}`;
  },
);

/** What was signed, and what of it is held, asked or not checked, a sentence each. */
export function signedLines(record: SignatureRecord, added: readonly string[], color: boolean): readonly string[] {
  const strange = added.length === 0 ? [] : [`Not of the package, and not signed: ${listed(added, MOST)}`];
  return [...signedWords(record), ...listedWords(record, color), ...strange];
}

const MOST = 12;

function signedWords({ by, date, note, job, files, bases }: SignatureRecord): readonly string[] {
  const what = `job ${job.number}, revision ${job.revision}, ${job.status}`;
  const counts = `${counted(bases.length, "base")}, ${counted(files.length, "file")} and summary.json`;
  const said = `Signed: ${what}, by ${by} on ${date}; ${counts}.`;
  return note === "" ? [said] : [said, `Note: ${note}`];
}

/** What is signed although it is held, asked or was not checked. */
function listedWords(record: SignatureRecord, color: boolean): readonly string[] {
  const { held, layoutHeld, open, accepted, notChecked, job } = record;
  const mark = (word: string): string => styled(word, "yellow", color);
  return [
    ...(job.status === "released" ? [] : [`${mark("NOT RELEASED")}, and signed as such: status ${job.status}`]),
    ...(held.length === 0 ? [] : [`${mark("HELD")}, and signed as such: ${listed(held, MOST)}`]),
    ...layoutHeld.map((reason) => `${mark("HELD")}, the layout, and signed as such: ${reason}`),
    ...open.map((each) => `${mark("OPEN")}, and signed as such: ${openWords(each)}`),
    ...accepted.map((each) => `${mark("ACCEPTED")} by name while it is open, and signed as such: ${openWords(each)}`),
    ...(notChecked === 0 ? [] : [`Not checked for want of input: ${counted(notChecked, "row")} of the ledger`]),
  ];
}

function openWords({ rule, bases, rows, numbers }: OpenRows): string {
  const named = bases.map((mark) => (mark === "" ? "the layout" : mark));
  const asked = numbers.length === 0 ? "" : `${listed(numbers, MOST)}, `;
  return `${asked}${rule}, ${counted(rows, "row")} without an answer: ${listed(named, MOST)}`;
}

/** The package that another one takes the place of: compared, and told what became of it and of what people did to it. */
import type { Comparison } from "../compare/index.js";
import { compareSides } from "../compare/index.js";
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { terminalText } from "../diagnostics/printable.js";
import { writeCompareBrief } from "../formats/compare-brief.js";
import { compareForm } from "../formats/compare-json.js";
import { writeSignatures } from "../formats/signature-text.js";
import { SIGNED } from "../outputs/index.js";
import type { SignatureState } from "../signature/index.js";
import { findSignatures, judgeSignatures, readSignedState } from "../tasks/signed-state.js";
import { folderFiles } from "./folder-files.js";
import { SUMMARY } from "./package-contents.js";
import type { PersonsFile, Settlement } from "./package-settle.js";
import { packageWarning } from "./package-target.js";
import { readPackage } from "./read-package.js";

/** The comparison with the package before, or why there is none; and its signatures, held against the new one. */
export type EarlierLook = { readonly signatures: readonly SignatureState[] } & (
  | { readonly kind: "compared"; readonly comparison: Comparison }
  | { readonly kind: "not compared"; readonly findings: readonly Finding[] }
);

/** Both in their folders; `name` is DIR as the user named it. Files that were changed are not read: the summary tells of them. */
export function compareEarlier(old: string, fresh: string, name: string): EarlierLook {
  const [before, after] = [readPackage(old, name), readPackage(fresh, name)];
  const signatures = judgeAgain(old, fresh);
  if (before.ok && after.ok)
    return { kind: "compared", comparison: compareSides(before.value.side, after.value.side), signatures };
  return { kind: "not compared", findings: [...before.findings, ...after.findings], signatures };
}

/** Signatures of the package before against the new one, which is whole. */
function judgeAgain(old: string, fresh: string): readonly SignatureState[] {
  const found = findSignatures(folderFiles(old));
  const now = found.length === 0 ? null : readSignedState(folderFiles(fresh), SUMMARY);
  return now?.ok ? judgeSignatures(found, now.value.state, []) : [];
}

/** Every file of a person, where it is now, and what was missing; `name` is DIR as the user named it. */
export function settlementWarnings(settled: Settlement | null, name: string): readonly Finding[] {
  if (settled === null) return [];
  const { job, kept, people, missing } = settled;
  return [
    ...people.map((file) => packageWarning({ name }, personsWords(file, kept !== null))),
    ...(missing.length === 0 ? [] : [packageWarning({ name }, missingWords(missing, job.revision))]),
  ];
}

/** The same of what an interrupted run had left, and where its package is kept. */
export function leftoverWarnings(settled: Settlement | null, name: string): readonly Finding[] {
  if (settled === null) return [];
  const { job, kept } = settled;
  const told = settlementWarnings(settled, name);
  if (kept === null) return told;
  const words = `an interrupted make had left the package of revision ${job.revision} beside it: it is kept in ${kept}`;
  return [packageWarning({ name }, words), ...told];
}

function personsWords({ what, path, to, isMaking }: PersonsFile, isKept: boolean): string {
  const place = isKept ? `it went with its revision, and is ${to} now` : `it is set aside as ${to}`;
  if (what === "added") return `${path} is not of the package: ${path === to ? "it stays where it is" : place}`;
  if (!isMaking) return `${path} was changed after it was written: ${place}`;
  const loud = "WHAT WAS CUT BY IT IS NOT WHAT WAS CHECKED";
  return `${path}, A FILE TO CUT BY, WAS CHANGED after it was checked and written: ${place}. ${loud}`;
}

const MOST_NAMED = 10;

function missingWords(missing: readonly string[], revision: string): string {
  return `the package of revision ${revision} that was here lacked ${listed(missing, MOST_NAMED)}`;
}

/** What became of the package before, for the terminal; `shown` is DIR as it is shown. */
export const earlierText = terminalText(earlierWords);

function earlierWords(
  look: EarlierLook,
  settlement: Settlement | null,
  options: { readonly shown: string; readonly width: number; readonly color: boolean },
): string {
  const inside = settlement?.kept ?? null;
  const kept = inside === null ? null : `${options.shown}/${inside}`;
  const signed = signedWords(look.signatures, kept, options);
  switch (look.kind) {
    case "compared":
      return `${writeCompareBrief(look.comparison, { ...options, kept })}${signed}`;
    case "not compared": {
      const where = kept === null ? "" : `, which is kept in ${kept}`;
      return `The package before${where} is not compared: its summary.json cannot be read.\n${signed}`;
    }
  }
}

/** Whether what people signed still stands, and where their records are. */
function signedWords(
  signatures: readonly SignatureState[],
  kept: string | null,
  { width, color }: { readonly width: number; readonly color: boolean },
): string {
  if (signatures.length === 0) return "";
  const place = kept === null ? SIGNED : `${kept}/${SIGNED}`;
  const left =
    kept === null ? "The records stay in" : "This package is not signed; the records went with their revision into";
  return `${writeSignatures(signatures, { width, color })}  ${left} ${place}\n`;
}

/** The same in machine form: the key `earlier` of what `make --json` prints. */
export function earlierForm(look: EarlierLook, settlement: Settlement | null) {
  return {
    number: settlement?.job.number ?? null,
    revision: settlement?.job.revision ?? null,
    kept: settlement?.kept ?? null,
    people: settlement?.people.map(({ what, path, to }) => ({ what, path, to })) ?? [],
    missing: settlement?.missing ?? [],
    signatures: look.signatures,
    compared: look.kind === "compared" ? compareForm(look.comparison) : null,
  };
}

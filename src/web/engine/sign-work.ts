/** Signing a package that was dropped, or just made: the same record that the command line writes, put into the same archive. */
import { type Finding, fileFault } from "../../diagnostics/finding.js";
import { printable } from "../../diagnostics/printable.js";
import { withFile } from "../../formats/archive-writer.js";
import { signedLines } from "../../formats/sign-text.js";
import { SIGNATURE_MEANING } from "../../formats/signature-json.js";
import { openPackage } from "../../tasks/package-archive.js";
import { bytesOf, numberedPath } from "../../tasks/package-files.js";
import { type LookedPackage, lookAtPackage, proveBytes } from "../../tasks/prove-package.js";
import { damageFaults, filesToSign, proofFaults, signerFaults, signState } from "../../tasks/sign.js";
import { VERSION } from "../app/version.js";
import { answerFile } from "./answer-file.js";
import { bytesOfDropped, isZip } from "./dropped.js";
import { Refused } from "./refused.js";
import { causesOf, need } from "./refusing.js";
import { shownSignature } from "./shown-signature.js";
import type { Progress, TaskWork } from "./task-model.js";

/** Proved again first, file by file; where one is not as it was checked nothing is signed. */
export const signPackage: TaskWork<"sign"> = async ({ dropped, by, note, date, instant }, tell) => {
  refuseWords(by, note);
  if (!(await isZip(dropped)))
    throw new Refused([`${dropped.name} is no ZIP archive: drop a package as one ZIP, or in its folder`]);
  const bytes = await bytesOfDropped(dropped, "package");
  const { archive, folder, files, names } = need(openPackage(bytes, dropped.name));
  const looked = need(lookAtPackage(files, names));
  const faults = findFaults(looked, (path) => bytesOf(files, path), damageFaults(looked, names), tell);
  if (faults.length > 0) throw new Refused([...causesOf(faults), "Nothing was signed."], faults);
  const signer = { by: by.trim(), note: note.trim(), date, instant, version: VERSION };
  const { record, path, bytes: written } = signState(looked.state, signer, files.startSha256);
  const free = numberedPath(path, (each) => files.sizeOf(each) !== null);
  const parts = withFile(bytes, archive, `${folder}${free}`, written).map((part) => part.slice());
  const added = looked.proved.files.filter(({ state }) => state === "not listed").map((file) => file.path);
  const { number, revision } = record.job;
  return {
    sentence: printable(`Signed: job ${number}, revision ${revision}, by ${record.by} on ${record.date}.`),
    isQualified:
      record.held.length + record.layoutHeld.length + record.open.length > 0 || record.job.status !== "released",
    lines: signedLines(record, added, false).map(printable),
    ...{ sha256: record.summary?.sha256 ?? "", means: SIGNATURE_MEANING },
    before: looked.proved.signatures.map(shownSignature),
    package: {
      path: dropped.folder === undefined ? dropped.name : `${dropped.name}.zip`,
      title: "The package with its record",
      blob: new Blob(parts, { type: "application/zip" }),
    },
    record: answerFile(free, "The record alone", written),
  };
};

function refuseWords(by: string, note: string): void {
  const findings = signerFaults(by, note, "").map(({ option, message }) => fileFault(option, "option", message));
  if (findings.length > 0) throw new Refused(causesOf(findings), findings);
}

function findFaults(
  looked: LookedPackage,
  read: (path: string) => Uint8Array,
  damage: readonly Finding[],
  tell: (progress: Progress) => void,
): readonly Finding[] {
  const files = filesToSign(looked, damage);
  const found = files.map((each, i) => {
    tell({ done: i, of: files.length, what: each.path });
    return proofFaults(proveBytes(each, read(each.inside), null));
  });
  return [...damage, ...found.flat()];
}

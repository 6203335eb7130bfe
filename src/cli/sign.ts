/** `rodplate sign PACKAGE --by NAME`: records who has checked a package, bound to the hashes of all that is in it. */
import { basename, dirname, join, resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { formatFinding } from "../diagnostics/finding.js";
import { joinPrintable, terminalJson, terminalLine } from "../diagnostics/printable.js";
import { writeSignText } from "../formats/sign-text.js";
import { SIGNATURE_MEANING } from "../formats/signature-json.js";
import type { SignatureRecord } from "../signature/index.js";
import type { LookedPackage } from "../tasks/prove-package.js";
import { damageFaults, filesToSign, proofFaults, signState } from "../tasks/sign.js";
import type { Command } from "./arguments.js";
import { attemptReading } from "./file-system.js";
import { fileFault } from "./findings.js";
import { inspectPackage, SUMMARY } from "./package-contents.js";
import type { PackageFolder } from "./package-folder.js";
import { withPackageFolder } from "./package-folder.js";
import { startProgress } from "./progress.js";
import { proveOne } from "./proof.js";
import { lookAtPackage } from "./proof-folder.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { dayOf, hasColor, readVersion, widthOf } from "./shell.js";

type SignCommand = Extract<Command, { kind: "sign" }>;

/** 0 signed; 1 signed with held bases or open questions, which the record lists; 2 it is no whole package, and nothing was signed. */
export async function runSign(given: SignCommand, shell: Shell): Promise<ExitCode> {
  const isSummary = basename(given.folder) === SUMMARY;
  const command = isSummary ? { ...given, folder: dirname(given.folder) } : given;
  const folder = resolve(shell.currentFolder, command.folder);
  const signed = await signFolder(folder, command, shell);
  if (!signed.ok) return refuse(signed.findings, command, shell);
  for (const finding of signed.findings) await shell.err.write(joinPrintable([formatFinding(finding), LINE]));
  const { record, path, looked } = signed.value;
  const shown = join(command.folder, path);
  if (command.json) await shell.out.write(terminalJson({ path, ...summaryOf(record) }));
  else {
    const added = looked.proved.files.filter(({ state }) => state === "not listed").map((file) => file.path);
    const options = { shown, width: widthOf(shell), color: hasColor(shell) };
    await shell.out.write(writeSignText(record, looked.proved.signatures, added, options));
  }
  return record.held.length + record.layoutHeld.length + record.open.length > 0 ? 1 : 0;
}

const LINE = terminalLine`\n`;

/** The record without what makes it long. */
function summaryOf({ bases, files, layout: _layout, ...record }: SignatureRecord) {
  return { ...record, means: SIGNATURE_MEANING, bases: bases.length, files: files.length };
}

async function refuse(findings: readonly Finding[], { json }: SignCommand, { out, err }: Shell): Promise<ExitCode> {
  if (json) await out.write(terminalJson({ findings }));
  else {
    for (const finding of findings) await err.write(joinPrintable([formatFinding(finding), LINE]));
    await err.write(terminalLine`nothing was signed\n`);
  }
  return 2;
}

interface Signed {
  readonly record: SignatureRecord;
  /** Of the record, in the package. */
  readonly path: string;
  readonly looked: LookedPackage;
}

/** The lock of the folder is held from the first look until the record stands: no make comes between. */
async function signFolder(folder: string, command: SignCommand, shell: Shell): Promise<Outcome<Signed>> {
  const isPackage = attemptReading(() => packageFault(folder, command.folder), command.folder);
  if (!isPackage.ok) return isPackage;
  if (isPackage.value !== null) return { ok: false, findings: [isPackage.value] };
  return withPackageFolder(folder, dirname(folder), async (dir) => {
    const looked = attemptReading(() => lookAtPackage(folder, command.folder), command.folder);
    if (!looked.ok) return looked;
    if (!looked.value.ok) return { ok: false, findings: looked.value.findings };
    const { value } = looked.value;
    const faults = await findFaults(value, command, shell);
    return faults.length > 0 ? { ok: false, findings: faults } : writeRecord(dir, value, command, shell);
  });
}

function packageFault(folder: string, name: string): Finding | null {
  const found = inspectPackage(folder);
  switch (found.kind) {
    case "package":
      return null;
    case "absent":
      return fileFault(name, "missing-file", "there is no such folder; name the folder of a package");
    case "empty":
      return fileFault(name, "no-package", "is empty; name the folder of a package");
    case "foreign":
      return fileFault(name, "no-package", `cannot be signed: ${found.offence}`);
  }
}

/** Everything that is not as it was checked, all at once. */
async function findFaults(looked: LookedPackage, command: SignCommand, shell: Shell): Promise<Finding[]> {
  const progress = startProgress(shell, "proved");
  const faults = [...damageFaults(looked, { name: command.folder, of: (path) => join(command.folder, path) })];
  const files = filesToSign(looked, faults);
  let done = 0;
  for (const each of files) {
    const read = proveOne(each, null, shell);
    for (const fault of read.ok ? proofFaults(read.value) : read.findings) faults.push(fault);
    done += 1;
    await progress.show(done, files.length);
  }
  await progress.end();
  return faults;
}

function writeRecord(
  dir: PackageFolder,
  looked: LookedPackage,
  { by, note }: SignCommand,
  shell: Shell,
): Outcome<Signed> {
  const moment = shell.now();
  const signer = { by, note, date: dayOf(moment), instant: new Date(moment).toISOString(), version: readVersion() };
  const { record, path, bytes } = signState(looked.state, signer, startSha256);
  const added = dir.add(path, bytes);
  return added.ok ? { ...added, value: { record, path: added.value, looked } } : added;
}

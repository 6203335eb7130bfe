/** Signing a package: what forbids it, and the record of who has checked it, bound to the hashes of all that is in it. */
import { type Finding, fileFault } from "../diagnostics/finding.js";
import { printable } from "../diagnostics/printable.js";
import { writeSignature } from "../formats/signature-json.js";
import { SIGNED, safeForFileName } from "../outputs/index.js";
import { isStop, type PackageFile, type ProvedFile } from "../proof/index.js";
import type { SignatureRecord, SignedState } from "../signature/index.js";
import type { PackageFiles } from "./package-files.js";
import type { InsideToProve, LookedPackage, PackageNames } from "./prove-package.js";
import { signingTools } from "./signed-state.js";

/** Files that are not as they were checked, all at once. */
export function damageFaults({ proved }: LookedPackage, names: PackageNames): readonly Finding[] {
  const stops = proved.files.filter(({ severity }) => severity === "stop");
  return stops.map(({ path, message }: PackageFile) => fileFault(names.of(path), "damaged-package", message));
}

/** Cut files to be proved before signing; one of a held template has its faults in its certificate, a damaged one is told already. */
export function filesToSign({ files }: LookedPackage, damage: readonly Finding[]): readonly InsideToProve[] {
  const damaged = new Set(damage.map(({ at }) => at.file));
  return files.filter(({ path, listed }) => listed?.certificate?.held !== true && !damaged.has(path));
}

/** What stops a cut file from being the one that was checked. */
export function proofFaults({ path, findings }: ProvedFile): readonly Finding[] {
  return findings.filter(isStop).map(({ code, message }) => fileFault(path, "not-as-checked", `${code}: ${message}`));
}

/** Longest name and note: a record is read by people. */
const [LONGEST_NAME, LONGEST_NOTE] = [100, 1000];

/** What is wrong with a name and a note as typed, each with its option, before whose name `sign` stands. */
export function signerFaults(
  by: string,
  note: string,
  sign: "--" | "",
): readonly { readonly option: "by" | "note"; readonly message: string }[] {
  const faults = [
    ["by", by.trim() === "", `${sign}by needs a name`],
    ["by", by.length > LONGEST_NAME, `${sign}by has ${by.length} characters; at most ${LONGEST_NAME} are allowed`],
    [
      "note",
      note.length > LONGEST_NOTE,
      `${sign}note has ${note.length} characters; at most ${LONGEST_NOTE} are allowed`,
    ],
    [
      "by",
      printable(by) !== by,
      `${sign}by ${JSON.stringify(by)} holds characters that cannot be seen; write the name in plain letters`,
    ],
  ] as const;
  return faults.flatMap(([option, isWrong, message]) => (isWrong ? [{ option, message }] : []));
}

/** Who signs, and when: `date` in the time zone of who signs, `instant` the same in universal time. */
export interface Signer {
  readonly by: string;
  readonly note: string;
  readonly date: string;
  readonly instant: string;
  /** Version of the program. */
  readonly version: string;
}

/** The record, and where it goes in the package. */
export function signState(
  state: SignedState,
  { by, note, date, instant, version }: Signer,
  startSha256: PackageFiles["startSha256"],
): { readonly record: SignatureRecord; readonly path: string; readonly bytes: Uint8Array } {
  const record = { by, date, instant, note, program: `rodplate ${version}`, ...state };
  const bytes = new TextEncoder().encode(writeSignature(record, signingTools(startSha256).hash));
  return { record, path: `${SIGNED}/${date}_${safeForFileName(by)}.json`, bytes };
}

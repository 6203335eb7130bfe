/** A package as it can be signed, and the signatures that stand beside it. */
import { type PackageSummary, readSummary } from "../compare/index.js";
import type { Outcome } from "../diagnostics/finding.js";
import { checkSeal, type SealState } from "../formats/seal.js";
import { SIGNATURE_START } from "../formats/signature-json.js";
import { roleOf, SIGNED, summaryPath } from "../outputs/index.js";
import {
  type DamagedFile,
  type FoundRecord,
  judgeSignature,
  readSignature,
  type SignatureState,
  type SignedState,
  type SigningTools,
  startSignedBases,
} from "../signature/index.js";
import { hashOf } from "./hash.js";
import { type PackageFiles, textOf } from "./package-files.js";

/** Records larger than this are none of ours: that of 2000 bases has some 4 MB. */
const LARGEST_RECORD = 64_000_000;

/** `2026-11-24_J.Doe.json`, as `sign` names a record: one whose first bytes were changed is still a record, and a void one. */
const RECORD_NAME = /^\d{4}-\d{2}-\d{2}_.+\.json$/;

/** True for a file that is named as a signature, or begins as one does; links and what is no file are none. */
function isSignature(files: PackageFiles, name: string): boolean {
  const path = `${SIGNED}/${name}`;
  if (!name.endsWith(".json")) return false;
  const size = files.sizeOf(path);
  if (typeof size !== "number" || size > LARGEST_RECORD) return false;
  if (RECORD_NAME.test(name)) return true;
  for (const chunk of files.chunks(path)) {
    const start = new TextDecoder().decode(chunk.subarray(0, SIGNATURE_START.length));
    return start === SIGNATURE_START;
  }
  return false;
}

/** Paths of the records in a package. */
export function signaturePaths(files: PackageFiles): readonly string[] {
  const names = files.namesIn(SIGNED).filter((name) => isSignature(files, name));
  return names.map((name) => `${SIGNED}/${name}`);
}

/** A package's summary, gone through once, and what can be signed of it. */
export interface ReadState {
  readonly summary: PackageSummary;
  readonly state: SignedState;
}

/** `place` is the summary as the user would name it, for findings. */
export function readSignedState(files: PackageFiles, place: string): Outcome<ReadState> {
  const [bases, hash] = [startSignedBases(signingTools(files.startSha256)), files.startSha256()];
  let bytes = 0;
  const chunks = function* (): Generator<Uint8Array> {
    for (const chunk of files.chunks(summaryPath)) {
      hash.update(chunk);
      bytes += chunk.length;
      yield chunk;
    }
  };
  const read = readSummary(chunks(), place, bases.add);
  if (!read.ok) return read;
  const { job, checks, layoutHeld, files: listed, questions } = read.value;
  const { number, title, revision, status } = job;
  const state: SignedState = {
    job: { number, title, revision, status },
    summary: { path: summaryPath, bytes, sha256: hash.hex() },
    layoutHeld,
    ...bases.end({ checks, files: listed, questions }),
  };
  return { ok: true, value: { summary: read.value, state }, findings: [] };
}

/** How packages are signed, with hashes of this platform. */
export function signingTools(startSha256: PackageFiles["startSha256"]): SigningTools {
  return { hash: (text) => hashOf(new TextEncoder().encode(text), startSha256), roleOf, hasPapers: true };
}

/** Whether every byte of the summary is as it was written. */
export function sealOfSummary(files: PackageFiles): SealState {
  return checkSeal(files.chunks(summaryPath), files.startSha256());
}

/** Every record in a package, by name. */
export function findSignatures(files: PackageFiles): readonly FoundRecord[] {
  return signaturePaths(files).map((path) => {
    const isWhole = checkSeal(files.chunks(path), files.startSha256()) === "whole";
    return { path, record: readSignature(textOf(files, path)), isWhole };
  });
}

/** Every signature of a package held against what is in it now. */
export function judgeSignatures(
  found: readonly FoundRecord[],
  state: SignedState,
  damage: readonly DamagedFile[],
): readonly SignatureState[] {
  return found.map((each) => judgeSignature(each, { state, damage }));
}

/** Signatures of a package, each as it stands there, for another state of the job: what is void in it already is void for that too. */
export function judgeForNew(
  records: readonly FoundRecord[],
  states: readonly SignatureState[],
  now: SignedState | null,
): readonly SignatureState[] {
  if (now === null) return states;
  const judged = judgeSignatures(records, now, []);
  return states.map((state, i) => (state.state === "void" ? state : (judged[i] ?? state)));
}

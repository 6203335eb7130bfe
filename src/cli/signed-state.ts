/** A package in its folder as it can be signed, and the signatures that stand beside it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type PackageSummary, readSummary } from "../compare/index.js";
import type { Outcome } from "../diagnostics/finding.js";
import { checkSeal, type SealState } from "../formats/seal.js";
import { roleOf } from "../outputs/index.js";
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
import { chunksOf } from "./file-system.js";
import { SUMMARY } from "./package-contents.js";
import { startSha256 } from "./sha256.js";
import { signaturePaths } from "./signature-files.js";

/** A package's summary, gone through once, and what can be signed of it. */
export interface ReadState {
  readonly summary: PackageSummary;
  readonly state: SignedState;
}

/** `place` is the summary as the user would name it, for findings. */
export function readSignedState(folder: string, place: string): Outcome<ReadState> {
  const [bases, hash] = [startSignedBases(SIGNING_TOOLS), startSha256()];
  let bytes = 0;
  const chunks = function* (): Generator<Uint8Array> {
    for (const chunk of chunksOf(join(folder, SUMMARY))) {
      hash.update(chunk);
      bytes += chunk.length;
      yield chunk;
    }
  };
  const read = readSummary(chunks(), place, bases.add);
  if (!read.ok) return read;
  const { job, checks, layoutHeld, files, questions } = read.value;
  const { number, title, revision, status } = job;
  const state: SignedState = {
    job: { number, title, revision, status },
    summary: { path: SUMMARY, bytes, sha256: hash.hex() },
    layoutHeld,
    ...bases.end({ checks, files, questions }),
  };
  return { ok: true, value: { summary: read.value, state }, findings: [] };
}

/** SHA-256 of a text. */
export function hashOfText(text: string): string {
  const hash = startSha256();
  hash.update(new TextEncoder().encode(text));
  return hash.hex();
}

/** How packages are signed here. */
export const SIGNING_TOOLS: SigningTools = { hash: hashOfText, roleOf, hasPapers: true };

/** Whether every byte of the summary is as it was written. */
export function sealOfSummary(folder: string): SealState {
  return checkSeal(chunksOf(join(folder, SUMMARY)), startSha256());
}

/** Every record in a package's folder, by name; none where there is no such folder. */
export function findSignatures(folder: string): readonly FoundRecord[] {
  return signaturePaths(folder).map((path) => {
    const file = join(folder, path);
    const isWhole = checkSeal(chunksOf(file), startSha256()) === "whole";
    return { path, record: readSignature(readFileSync(file, "utf8")), isWhole };
  });
}

/** Every signature of a package held against what is in its folder now. */
export function judgeSignatures(
  found: readonly FoundRecord[],
  state: SignedState,
  damage: readonly DamagedFile[],
): readonly SignatureState[] {
  return found.map((each) => judgeSignature(each, { state, damage }));
}

/** `compare` where OLD was signed: whether that stands for NEW, and what is to be looked at again. */
import { existsSync } from "node:fs";
import { basename, resolve } from "node:path";
import { baseAsRead } from "../compare/index.js";
import { type FoundRecord, type SignatureState, type SignedState, startSignedBases } from "../signature/index.js";
import type { SummaryBase } from "../summary/model.js";
import { jobState } from "../tasks/compare.js";
import type { LaidOutJob } from "../tasks/number-questions.js";
import { attemptReading } from "./file-system.js";
import { SUMMARY } from "./package-contents.js";
import { lookAtPackage } from "./proof-folder.js";
import type { Shell } from "./shell.js";
import { findSignatures, judgeSignatures, readSignedState, SIGNING_TOOLS } from "./signed-state.js";

/** A package that somebody signed. */
export interface SignedOld {
  readonly records: readonly FoundRecord[];
  /** Each as it stands in OLD itself. */
  readonly states: readonly SignatureState[];
}

/** null where OLD is no package, or nobody signed it. */
export function signedPackage(name: string, { currentFolder }: Shell): SignedOld | null {
  const folder = packageFolderOf(resolve(currentFolder, name));
  if (folder === null) return null;
  const looked = attemptReading(() => {
    const records = findSignatures(folder);
    const own = records.length === 0 ? null : lookAtPackage(folder, name);
    return own?.ok ? { records, states: own.value.proved.signatures } : null;
  }, name);
  return looked.ok ? looked.value : null;
}

function packageFolderOf(path: string): string | null {
  const folder = basename(path) === SUMMARY ? resolve(path, "..") : path;
  return existsSync(resolve(folder, SUMMARY)) ? folder : null;
}

/** null where NEW cannot be read, which is told elsewhere. */
export function packageState(name: string, { currentFolder }: Shell): SignedState | null {
  const folder = packageFolderOf(resolve(currentFolder, name));
  const read = folder === null ? null : readSignedState(folder, name);
  return read?.ok ? read.value.state : null;
}

/** What is void in OLD already is void for NEW. */
export function judgeForNew({ records, states }: SignedOld, now: SignedState | null): readonly SignatureState[] {
  if (now === null) return states;
  const judged = judgeSignatures(records, now, []);
  return states.map((state, i) => (state.state === "void" ? state : (judged[i] ?? state)));
}

/** Takes a job that is a side, base by base and whole. */
export interface TakeJob {
  each(base: SummaryBase): void;
  end(job: LaidOutJob): void;
}

/** Gathers a job as it would be signed; its state is null until the job has ended. */
export function startJobState(): TakeJob & { state(): SignedState | null } {
  const bases = startSignedBases({ ...SIGNING_TOOLS, hasPapers: false });
  let state: SignedState | null = null;
  return {
    each: (base) => bases.add(baseAsRead(base)),
    end: (job) => {
      state = jobState(job, bases);
    },
    state: () => state,
  };
}

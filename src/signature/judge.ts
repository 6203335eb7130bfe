/** Whether a signature still stands. */
import { findChanges, isUnchanged } from "./changes.js";
import type { SignatureRecord, SignatureState, SignedState } from "./model.js";

/** A record as it was found in a package; null: it cannot be read. `isWhole`: its seal is. */
export interface FoundRecord {
  readonly path: string;
  readonly record: SignatureRecord | null;
  readonly isWhole: boolean;
}

/** A file of a package that is not the one that its summary lists, and how, in words that follow its path. */
export interface DamagedFile {
  readonly path: string;
  readonly message: string;
}

/** What a signature is held against. */
export interface SignedNow {
  readonly state: SignedState;
  readonly damage: readonly DamagedFile[];
}

/** Any byte and any figure that is another makes it void. */
export function judgeSignature({ path, record, isWhole }: FoundRecord, { state, damage }: SignedNow): SignatureState {
  if (record === null || !isWhole) {
    const why = ["the record itself was changed after it was signed, or is damaged"];
    const { by = "", date = "", note = "" } = record ?? {};
    return { path, by, date, note, state: "void", why, changes: null };
  }
  const { by, date, note } = record;
  const said = { path, by, date, note };
  const isOther = state.summary !== null && record.summary?.sha256 !== state.summary.sha256;
  const changes = findChanges(
    record,
    state,
    damage.map((file) => file.path),
  );
  const told = damage.map((file) => `${file.path} ${file.message}`);
  const isAnotherJob = !isUnchanged(damage.length === 0 ? changes : findChanges(record, state));
  const why = [...told, ...(isOther || isAnotherJob ? changeWords(record, state, isOther) : [])];
  return why.length === 0 ? { ...said, state: "valid", why, changes: null } : { ...said, state: "void", why, changes };
}

function changeWords({ job }: SignatureRecord, now: SignedState, isOther: boolean): readonly string[] {
  if (job.number !== now.job.number) return [`it is of job ${job.number}, and this is job ${now.job.number}`];
  if (job.revision !== now.job.revision) return [`it is of revision ${job.revision}, and this is ${now.job.revision}`];
  return [isOther ? "the package was made again, or its summary.json changed, since" : "the job is another since"];
}

/** Two states of a job, and what must be cut again. */
import { checkBase } from "../checks/checked.js";
import { heldLayout } from "../checks/held.js";
import type { Side } from "../compare/index.js";
import { baseAsRead, checksAsRead, compareSides, makeRodStates, startTemplateStates } from "../compare/index.js";
import type { CompareForm } from "../formats/compare-json.js";
import { compareForm } from "../formats/compare-json.js";
import { makingKinds, roleOf } from "../outputs/index.js";
import { type SignedBases, type SignedState, startSignedBases } from "../signature/index.js";
import type { SummaryBase } from "../summary/model.js";
import { summarizeCheck, summarizeJob } from "../summary/summarize.js";
import type { BaseOptions, KnownFiles } from "./make-base.js";
import { makeBase } from "./make-base.js";
import type { LaidOutJob } from "./number-questions.js";
import { numberQuestions } from "./number-questions.js";
import type { OpenedJob } from "./opened-job.js";
import type { PackageFiles } from "./package-files.js";
import { signingTools } from "./signed-state.js";

/**
 * A job's templates as its package would hand them out; held ones are made as well, to be compared. `name` as the user named it.
 * `each` is handed every base as its summary has it.
 */
export function jobSide(
  name: string,
  { job, bases }: LaidOutJob,
  { startSha256, each }: Pick<BaseOptions, "startSha256"> & { readonly each?: (base: SummaryBase) => void } = {},
): Side {
  const options: BaseOptions = {
    ...{ version: "", document: null, includeHeld: true, outputs: makingKinds },
    ...(startSha256 === undefined ? {} : { startSha256 }),
  };
  const withRods: Pick<SummaryBase, "mark" | "rods">[] = [];
  const states = startTemplateStates();
  const known: KnownFiles = new Map();
  for (const base of bases) {
    const { summary, files, held } = makeBase(checkBase(job, base), options, known);
    each?.(held ? { ...summary, files: [] } : summary);
    withRods.push({ mark: summary.mark, rods: summary.rods });
    const bytesOf = (path: string): Uint8Array | null => files.find((file) => file.path === path)?.bytes ?? null;
    states.add(summary, { unit: job.unit, delivered: !held, roleOf, bytesOf });
  }
  const rods = makeRodStates(withRods, job.unit);
  return { name, source: "job", job: summarizeJob(job), templates: states.list(), rods };
}

/** Takes a job that is a side, base by base and whole. */
export interface TakeJob {
  each(base: SummaryBase): void;
  end(job: LaidOutJob): void;
}

/** Gathers a job as it would be signed; its state is null until the job has ended. */
export function startJobState(startSha256: PackageFiles["startSha256"]): TakeJob & { state(): SignedState | null } {
  const bases = startSignedBases({ ...signingTools(startSha256), hasPapers: false });
  let state: SignedState | null = null;
  return {
    each: (base) => bases.add(baseAsRead(base)),
    end: (job) => {
      state = jobState(job, bases);
    },
    state: () => state,
  };
}

/** A job as it would be signed; `gathered` has taken its bases. */
function jobState({ job, layout: rows }: LaidOutJob, gathered: SignedBases): SignedState {
  const { number, title, revision, status } = job;
  const checks = checksAsRead(rows.map((row) => summarizeCheck(row, job.unit)));
  const layoutHeld = heldLayout(rows, job.unit).reasons;
  const state = gathered.end({ checks, files: [], questions: [] });
  return { job: { number, title, revision, status }, summary: null, layoutHeld, ...state };
}

/** Two states of a job in machine form: what `compare --json` prints of two job files, which are named OLD and NEW. */
export function compareJobs(old: OpenedJob, fresh: OpenedJob): CompareForm {
  return compareForm(compareSides(jobSide("OLD", numberQuestions(old)), jobSide("NEW", numberQuestions(fresh))));
}

/** Two states of a job, and what must be cut again. */
import { checkBase } from "../checks/checked.js";
import type { Side } from "../compare/index.js";
import { compareSides, makeRodStates, startTemplateStates } from "../compare/index.js";
import type { CompareForm } from "../formats/compare-json.js";
import { compareForm } from "../formats/compare-json.js";
import { makingKinds, roleOf } from "../outputs/index.js";
import type { SummaryBase } from "../summary/model.js";
import { summarizeJob } from "../summary/summarize.js";
import type { BaseOptions, KnownFiles } from "./make-base.js";
import { makeBase } from "./make-base.js";
import type { OpenedJob } from "./open.js";

/** A job's templates as its package would hand them out; held ones are made as well, to be compared. `name` as the user named it. */
export function jobSide(
  name: string,
  { job, bases }: OpenedJob,
  { startSha256 }: Pick<BaseOptions, "startSha256"> = {},
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
    withRods.push({ mark: summary.mark, rods: summary.rods });
    const bytesOf = (path: string): Uint8Array | null => files.find((file) => file.path === path)?.bytes ?? null;
    states.add(summary, { unit: job.unit, delivered: !held, roleOf, bytesOf });
  }
  const rods = makeRodStates(withRods, job.unit);
  return { name, source: "job", job: summarizeJob(job), templates: states.list(), rods };
}

/** Two states of a job in machine form: what `compare --json` prints of two job files, which are named OLD and NEW. */
export function compareJobs(old: OpenedJob, fresh: OpenedJob): CompareForm {
  return compareForm(compareSides(jobSide("OLD", old), jobSide("NEW", fresh)));
}

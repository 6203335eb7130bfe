/** A job without faults: what every task goes on with. */
import type { Job } from "../job/index.js";
import type { Plan } from "../plan/model.js";
import type { ShapedBase } from "../template/index.js";

/** A job without faults, complete, with what is kept of its bases; plates are not: they are large. */
export interface OpenedJob {
  readonly job: Job;
  /** In the order of the job's bases. */
  readonly bases: readonly ShapedBase[];
  /** null: the job has no grid. */
  readonly plan: Plan | null;
}

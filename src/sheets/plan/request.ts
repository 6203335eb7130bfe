/** What anchor-rod plan sheets are drawn from: the job, its layout, and the few facts that only the pipeline knows. */
import type { Job } from "../../job/model/job.js";
import type { Plan } from "../../plan/model.js";

/** Everything the plan sheets of a job say. */
export interface PlanRequest {
  readonly job: Job;
  readonly plan: Plan;
  /** Marks of the held bases, and why. */
  readonly held: ReadonlyMap<string, readonly string[]>;
  /** File names of the setting-out files; empty when none is written. */
  readonly coordinateFiles: readonly string[];
  /** File name of the plan as DXF; null when it is not written. */
  readonly dxfName: string | null;
  readonly programVersion: string;
}

/** What anchor-rod plan sheets are drawn from: the job, its plan, and the few facts that only the pipeline knows. */
import type { CheckedJob } from "../../checks/checked.js";
import type { Plan } from "../../plan/model.js";

/** Everything the plan sheets of a job say. */
export interface PlanRequest extends Pick<CheckedJob, "job" | "held" | "layoutHeld" | "layoutOpen"> {
  readonly plan: Plan;
  /** File names of the setting-out files; empty when none is written. */
  readonly coordinateFiles: readonly string[];
  /** File name of the plan as DXF; null when it is not written. */
  readonly dxfName: string | null;
  readonly programVersion: string;
}

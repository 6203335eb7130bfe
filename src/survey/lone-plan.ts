/** The plan of a job without a grid: where its one base stands is then known, at 0,0 and unturned. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Job } from "../job/model/job.js";
import { missing } from "../job/model/job.js";
import type { GridLine, Placement, PlanSpec } from "../job/model/plan.js";
import { layPlan } from "../plan/index.js";
import type { Plan } from "../plan/model.js";
import type { BaseWithRods } from "../rods/model.js";
import { nanometres } from "../units/length.js";

const zero = nanometres(0);
const absent = missing("grid", "the job has no grid");

/** The plan of a job's one base; a job of several bases and no grid cannot be matched to points. */
export function lonePlan(job: Job, bases: readonly BaseWithRods[]): Outcome<Plan> {
  const [base, ...others] = job.bases;
  if (base === undefined || others.length > 0 || base.quantity !== 1) return { ok: false, findings: [noGrid(job)] };
  return { ok: true, value: layPlan(loneSpec(base.mark, base.place), bases), findings: [] };
}

function noGrid(job: Job): Finding {
  const count = job.bases.reduce((sum, { quantity }) => sum + quantity, 0);
  return {
    code: "survey-grid",
    severity: "error",
    at: { file: job.bases[0]?.place.file ?? "", path: "grid" },
    message: `the job has no grid, and ${count} bases: where each of them should stand is not known`,
    hint: "add grid and placements; without them a job of one base is taken to stand at 0,0 unturned",
  };
}

function loneSpec(mark: string, place: Placement["place"]): PlanSpec {
  const lines: readonly GridLine[] = [
    { kind: "x", name: "x0", at: zero },
    { kind: "y", name: "y0", at: zero },
  ];
  const placement: Placement = {
    place,
    mark,
    lines: ["x0", "y0"],
    offset: { x: zero, y: zero },
    near: absent,
    turn: 0,
    topOfConcrete: absent,
    bottomOfPlate: absent,
    delivery: "",
  };
  return {
    lines,
    placements: [placement],
    control: [],
    trueNorth: absent,
    transform: { kind: "none" },
    scaleFactor: absent,
    bearings: "decimal",
    controlTolerance: absent,
    settingOut: { order: "PNEZD", unit: "m" },
  };
}

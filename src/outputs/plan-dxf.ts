/** The anchor-rod plan for other programs. */
import { listed } from "../diagnostics/listed.js";
import { type PlanDxfWords, writePlanDxf } from "../formats/plan-dxf.js";
import { releaseWords } from "../sheets/status-words.js";
import { printable } from "../sheets/text-metrics.js";
import type { JobOutput, PlannedJob } from "./model.js";
import { FOLDERS } from "./names.js";
import { planStem } from "./plan.js";

/** At true scale, in plan coordinates; nothing is cut by it. */
export const planDxf: JobOutput<"plan-dxf"> = {
  scope: "job",
  kind: "plan-dxf",
  role: "document",
  title: "Anchor-rod plan for other programs: R2000 at true scale, plan coordinates, rods as CIRCLE; not a cut file",
  drawn: false,
  named: "field/anchor-rod-plan_rev-REVISION[_NOT-RELEASED].dxf",
  needs: "plan",
  write: (checked) => [
    {
      path: `${FOLDERS.field}/${planStem(checked)}.dxf`,
      bytes: writePlanDxf(checked.plan, checked.job.unit, planDxfWords(checked)),
    },
  ],
};

type Told = Pick<PlannedJob, "job" | "plan" | "held" | "layoutHeld" | "layoutOpen">;

/** What the file says of job, revision, status and held bases. */
export function planDxfWords({ job, plan, held, layoutHeld, layoutOpen }: Told): PlanDxfWords {
  const { trueNorth } = plan.spec;
  const marks = job.bases.flatMap(({ mark }) => (held.has(mark) ? [mark] : []));
  const title = [
    "ANCHOR-ROD PLAN",
    `JOB ${job.number}: ${job.title}`,
    `REVISION ${job.revision}, ${job.date}`,
    `STATUS: ${releaseWords(job, layoutOpen)}`,
    ...(job.drawing.number === "" ? [] : [`SOURCE DRAWING ${job.drawing.number} REV ${job.drawing.revision}`]),
    ...(marks.length > 0 ? [`HELD, DO NOT SET: ${listed(marks, 40)}`] : []),
    ...layoutHeld.reasons.map((reason) => `HELD, DO NOT SET OUT: ${reason}`),
    `UNITS: ${job.unit === "in" ? "INCHES" : "MILLIMETRES"}, TRUE SCALE. X PLAN EAST, Y PLAN NORTH.`,
  ];
  return {
    title: title.map(printable),
    held: new Set(marks),
    trueNorth: trueNorth.kind === "given" ? trueNorth.value : null,
  };
}

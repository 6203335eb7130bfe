/** Notes of the plan sheets: how the plan is to be read. */
import { listed } from "../../diagnostics/listed.js";
import { SEE_TABLE } from "./labels.js";
import type { PlanRequest } from "./request.js";

/** What a plan sheet found no room for. */
export interface LeftOut {
  readonly enlarged: boolean;
  /** Some spacing of the grid is not written. */
  readonly spacings: boolean;
  readonly marks: number;
  readonly distances: number;
  /** Control points whose place on the plan is not known. */
  readonly unplaced: readonly string[];
}

/** Notes of a plan sheet. */
export function planNotes(request: PlanRequest, leftOut: LeftOut): readonly string[] {
  const { enlarged, spacings, marks, distances, unplaced } = leftOut;
  const { job, plan, layoutHeld } = request;
  const slanting = plan.spec.lines.some(({ kind }) => kind !== "x" && kind !== "y");
  const rounded = job.unit === "in" ? "1/16 in" : "1 mm";
  const what = layoutHeld.siteOnly ? "site coordinates" : "coordinates";
  return [
    ...layoutHeld.reasons.map((reason) => `HELD, not to be set out by: ${what}. ${reason}.`),
    "Beside each base: its mark and, where it is turned, its turn, 0° to 360° counter-clockwise from plan east; then the distance, square, from a grid line to the working point (W.P.), with the side (E, N: plan).",
    "NO FIGURES: W.P. ON BOTH LINES. One figure: W.P. on the other line.",
    `Figures in brackets are rounded to ${rounded}; the coordinate file has the exact ones.`,
    ...(slanting
      ? ["Skewed and radial lines carry their angle at the bubble, 0° to 360° counter-clockwise from plan east."]
      : []),
    ...(enlarged ? ["Bases are drawn as symbols, larger than true; details are to scale."] : []),
    ...(spacings ? ["Lines too close for a spacing between them: see the table of grid lines."] : []),
    ...(distances > 0
      ? [
          `Mark with ${SEE_TABLE}: ${counted(distances, "base stands", "bases stand")} too close for distances, see the placement table.`,
        ]
      : []),
    ...(marks > 0
      ? [`${counted(marks, "base", "bases")} without a mark for want of room: see the placement table.`]
      : []),
    ...(unplaced.length > 0
      ? [
          `Not named on this plan, not tied to the grid or without room: ${listed(unplaced, 12)}; see the table of control points.`,
        ]
      : []),
    ...(plan.bases.length === 0 ? ["No base is placed yet: this plan shows the grid only."] : []),
    "Set out from the coordinate file and check against these figures; do not scale this print.",
  ];
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

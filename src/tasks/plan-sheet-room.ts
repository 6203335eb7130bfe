/** Whether the size of sheet that a job chose has room for the sheets of its plan. */
import type { OpenQuestion } from "../checks/release.js";
import type { Job } from "../job/index.js";
import type { SheetName } from "../job/model/sheet-names.js";
import type { Plan } from "../plan/model.js";
import { hasPlanRoom, type PlanRequest } from "../sheets/index.js";

/** Sheets for which the chosen size is too small. */
export interface NoRoom {
  /** Which they are, and what must stand on them. */
  readonly words: string;
  /** Whether they have room on a size that is larger. */
  readonly hasRoomOn: (name: SheetName) => boolean;
}

/** null: the plan has room, or no size has; `larger`: the sizes above the one that the job chose. */
export function planWithoutRoom(
  job: Job,
  plan: Plan | null,
  larger: readonly SheetName[],
  layoutOpen: readonly OpenQuestion[],
): NoRoom | null {
  if (plan === null || hasPlanRoom(requestFor(job, plan, layoutOpen))) return null;
  const enough = larger.filter((name) => hasPlanRoom(requestFor({ ...job, sheet: name }, plan, layoutOpen)));
  if (enough.length === 0) return null;
  return { words: "the sheets of the anchor-rod plan", hasRoomOn: (name) => enough.includes(name) };
}

/** As its sheets will be asked for, with coordinate files of a usual length of name, nothing held. */
function requestFor(job: Job, plan: Plan, layoutOpen: readonly OpenQuestion[]): PlanRequest {
  const names = ["local", "site"].map((kind) => `${job.number}_rev-${job.revision}_${kind}_PNEZD_ft-intl.csv`);
  return {
    ...{ job, plan, held: new Map(), layoutOpen, layoutHeld: { reasons: [], siteOnly: true } },
    coordinateFiles: names,
    dxfName: `anchor-rod-plan_rev-${job.revision}.dxf`,
    programVersion: "",
  };
}

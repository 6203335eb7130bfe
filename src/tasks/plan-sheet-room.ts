/** Whether the size of sheet that a job chose has room for the sheets of its plan. */
import type { Finding, Place } from "../diagnostics/finding.js";
import type { Job } from "../job/index.js";
import { SHEET_NAMES, type SheetName } from "../job/model/sheet-names.js";
import type { Plan } from "../plan/model.js";
import { hasPlanRoom, type PlanRequest } from "../sheets/index.js";

/** A fault that names the least size that would do; none where no size would. */
export function planSheetFaults(job: Job, plan: Plan | null, at: Place): readonly Finding[] {
  const { sheet, unit } = job;
  if (sheet === null || plan === null) return [];
  const names: readonly SheetName[] = SHEET_NAMES[unit];
  const larger = names.slice(names.indexOf(sheet) + 1);
  if (larger.length === 0 || hasPlanRoom(requestFor(job, plan))) return [];
  const least = larger.find((name) => hasPlanRoom(requestFor({ ...job, sheet: name }, plan)));
  if (least === undefined) return [];
  const message = `${sheet} has no room for the sheets of the anchor-rod plan; the least size that has is ${least}: write sheet: ${least}, or leave the key out`;
  return [{ code: "sheet-too-small", severity: "error", at, message }];
}

/** As its sheets will be asked for, with coordinate files of a usual length of name, nothing held. */
function requestFor(job: Job, plan: Plan): PlanRequest {
  const names = ["local", "site"].map((kind) => `${job.number}_rev-${job.revision}_${kind}_PNEZD_ft-intl.csv`);
  return {
    ...{ job, plan, held: new Map(), layoutHeld: { reasons: [], siteOnly: true } },
    coordinateFiles: names,
    dxfName: `anchor-rod-plan_rev-${job.revision}.dxf`,
    programVersion: "",
  };
}

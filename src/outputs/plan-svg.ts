/** The anchor-rod plan in sheets. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawPlanSheets } from "../sheets/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { JobOutput, PathAndBytes, PlannedJob, Surroundings } from "./model.js";
import { nameIn } from "./names.js";
import { PLAN, planStem } from "./plan.js";
import { planDxf } from "./plan-dxf.js";
import { settingOutCsv } from "./setting-out-csv.js";
import { textFile } from "./text-file.js";

/** Made after the files that it names. */
export const planSvg: JobOutput<"plan-svg"> = {
  scope: "job",
  kind: "plan-svg",
  role: "sheet",
  title: "Anchor-rod plan in sheets: plan with grid and placements, a detail of every type, schedules",
  drawn: true,
  inSet: true,
  top: PLAN,
  named: "plan/anchor-rod-plan_rev-REVISION[_NOT-RELEASED]_SHEET-of-SHEETS.svg",
  needs: "plan",
  write: writePlanSheets,
};

function* writePlanSheets(
  checked: PlannedJob,
  { made, document, version, set }: Surroundings,
): Generator<PathAndBytes> {
  const { job, plan, held, layoutHeld } = checked;
  const dxf = made.find(({ kind }) => kind === planDxf.kind);
  const scenes = drawPlanSheets({
    ...{ job, plan, held, layoutHeld },
    coordinateFiles: made.filter(({ kind }) => kind === settingOutCsv.kind).map(({ path }) => nameIn(path)),
    dxfName: dxf === undefined ? null : nameIn(dxf.path),
    programVersion: version,
  });
  set?.addPlan(scenes);
  for (const [i, scene] of scenes.entries()) {
    const path = `${planStem(job)}_${i + 1}-of-${scenes.length}.svg`;
    yield textFile(path, writeSheetSvg(scene, drawingDocument(document)));
  }
}

/** The anchor-rod plan in sheets. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import type { Scene } from "../sheets/index.js";
import { drawPlanSheets } from "../sheets/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { JobOutput, PathAndBytes, PlannedJob, Surroundings } from "./model.js";
import { FOLDERS, nameIn } from "./names.js";
import { planStem } from "./plan.js";
import { planDxf } from "./plan-dxf.js";
import { settingOutCsv } from "./setting-out-csv.js";
import type { SetSheet } from "./sheet-set.js";
import { textFile } from "./text-file.js";

/** Made after the files that it names. */
export const planSvg: JobOutput<"plan-svg"> = {
  scope: "job",
  kind: "plan-svg",
  role: "sheet",
  title: "Anchor-rod plan in sheets: plan with grid and placements, a detail of every type, schedules",
  drawn: true,
  inSet: true,
  named: "sheets/anchor-rod-plan_rev-REVISION[_NOT-RELEASED]_SHEET-of-SHEETS.svg",
  needs: "plan",
  write: writePlanSheets,
};

function* writePlanSheets(
  checked: PlannedJob,
  { made, document, version, set }: Surroundings,
): Generator<PathAndBytes> {
  const { job, plan, held, layoutHeld, layoutOpen } = checked;
  const dxf = made.find(({ kind }) => kind === planDxf.kind);
  const scenes = drawPlanSheets({
    ...{ job, plan, held, layoutHeld, layoutOpen },
    coordinateFiles: made.filter(({ kind }) => kind === settingOutCsv.kind).map(({ path }) => nameIn(path)),
    dxfName: dxf === undefined ? null : nameIn(dxf.path),
    programVersion: version,
  });
  set?.addSheets(
    "plan",
    scenes.map((scene, i) => setSheet(scene, i + 1, scenes.length)),
  );
  for (const [i, scene] of scenes.entries()) {
    const path = `${FOLDERS.sheets}/${planStem(checked)}_${i + 1}-of-${scenes.length}.svg`;
    yield textFile(path, writeSheetSvg(scene, drawingDocument(document)));
  }
}

function setSheet(scene: Scene, number: number, count: number): SetSheet {
  const what = scene.listing?.about ?? "";
  const bookmark = `Sheet ${number} of ${count}: ${what.toLowerCase()}`;
  return { scene, name: `PLAN ${number} OF ${count}`, about: `ANCHOR-ROD PLAN: ${what}`, bookmark, held: false };
}

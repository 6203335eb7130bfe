/** The setting sheet of a base. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawSettingSheet } from "../sheets/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { BaseOutput } from "./model.js";
import { FOLDERS, heldEnding, releaseEnding, safeForFileName } from "./names.js";
import { settingPage } from "./sheet-set.js";

/** Made of every base; of a held one it says so, for nobody is to set by it. */
export const settingSheetSvg: BaseOutput<"setting-sheet-svg"> = {
  scope: "base",
  kind: "setting-sheet-svg",
  role: "sheet",
  title:
    "Setting sheet of the base, for the foreman: which template, which way round, heights, lines to tick and to sign",
  drawn: true,
  inSet: true,
  named: "field/MARK_rev-REVISION[_HELD][_NOT-RELEASED]_setting-sheet.svg",
  applies: () => true,
  path: (checked) =>
    `${FOLDERS.field}/${checked.base.mark}_rev-${safeForFileName(checked.job.revision)}${heldEnding(checked)}${releaseEnding(checked.job, checked.open)}_setting-sheet.svg`,
  write: (checked, { document, version, pages }) => {
    const scene = drawSettingSheet({ ...checked, programVersion: version });
    pages?.take(settingPage(scene, checked, pages.paper));
    return new TextEncoder().encode(writeSheetSvg(scene, drawingDocument(document)));
  },
};

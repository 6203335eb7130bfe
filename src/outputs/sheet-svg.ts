/** The sheet of a template. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawSheet, type SheetRequest } from "../sheets/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { BaseOutput, BaseSurroundings } from "./model.js";
import { FOLDERS, heldEnding, nameIn, openEnding, sheetPlace, sheetStem } from "./names.js";
import { templatePage } from "./sheet-set.js";

/** Made of every base, held or not: it names the files that the template is cut or drilled by. */
export const sheetSvg: BaseOutput<"sheet-svg"> = {
  scope: "base",
  kind: "sheet-svg",
  role: "sheet",
  title: "Dimensioned sheet of the template, for the shop, the checker and the field",
  drawn: true,
  inSet: true,
  named: "sheets/TEMPLATE_rev-REVISION[_for-MARK][_HELD][_NOT-RELEASED]_sheet.svg",
  applies: () => true,
  path: (checked) => `${FOLDERS.sheets}/${sheetStem(checked)}${heldEnding(checked)}${openEnding(checked)}_sheet.svg`,
  write: (checked, { made, document, version, pages }) => {
    const drill = made.find(({ role, piece }) => role === "drill" && piece === undefined);
    const place = sheetPlace(checked);
    const { number, count, bases } = place;
    const scene = drawSheet({
      ...checked,
      cutFiles: cutFilesOf(made, undefined),
      drillListName: drill === undefined ? null : nameIn(drill.path),
      sheetNumber: number,
      sheetCount: count,
      sheetBases: bases,
      programVersion: version,
      piece: null,
    });
    pages?.take(templatePage(scene, checked, place, pages.paper));
    return new TextEncoder().encode(writeSheetSvg(scene, drawingDocument(document)));
  },
};

/** Files that a piece is cut by, as its sheet names them; undefined: the template itself. */
export function cutFilesOf(made: BaseSurroundings["made"], mark: string | undefined): SheetRequest["cutFiles"] {
  return made
    .filter(({ role, piece }) => role === "cut" && piece === mark)
    .map(({ path, sha256, layers }) => ({ name: nameIn(path), sha256, layers }));
}

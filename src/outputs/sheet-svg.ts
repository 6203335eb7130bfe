/** The sheet of a template. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawSheet } from "../sheets/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { BaseOutput } from "./model.js";
import { nameIn, templateStem } from "./names.js";

/** Made of every base, held or not: it names the files that the template is cut or drilled by. */
export const sheetSvg: BaseOutput<"sheet-svg"> = {
  scope: "base",
  kind: "sheet-svg",
  role: "sheet",
  title: "Dimensioned sheet of the template, for the shop, the checker and the field",
  drawn: true,
  named: "MARK/TEMPLATE_rev-REVISION_sheet.svg",
  applies: () => true,
  fileName: (checked) => `${templateStem(checked)}_sheet.svg`,
  write: (checked, { made, document, version }) => {
    const drill = made.find(({ role }) => role === "drill");
    const scene = drawSheet({
      ...checked,
      cutFiles: made.filter(({ role }) => role === "cut").map(({ path, sha256 }) => ({ name: nameIn(path), sha256 })),
      drillListName: drill === undefined ? null : nameIn(drill.path),
      sheetNumber: 1,
      sheetCount: 1,
      programVersion: version,
    });
    return new TextEncoder().encode(writeSheetSvg(scene, drawingDocument(document)));
  },
};

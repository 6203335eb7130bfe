/** The sheet of a piece of a template: a segment, a splice plate, a lower template. */
import { ProgramFault } from "../diagnostics/program-fault.js";
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawSheet, pieceRequest } from "../sheets/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { PieceFile } from "./model.js";
import { FOLDERS, heldEnding, openEnding, pieceStem } from "./names.js";
import { piecePage } from "./sheet-set.js";
import { cutFilesOf } from "./sheet-svg.js";

/** Made of every piece that is not the template itself, held or not; in the set after the sheet of the template. */
export const pieceSheetSvg: PieceFile<"piece-sheet-svg"> = {
  scope: "piece",
  kind: "piece-sheet-svg",
  role: "sheet",
  title: "Dimensioned sheet of a segment, a splice plate or a lower template, for the shop and the checker",
  drawn: true,
  inSet: true,
  named: `${FOLDERS.sheets}/PIECE_rev-REVISION[_HELD][_NOT-RELEASED]_sheet.svg`,
  applies: (_checked, { role }) => role !== "template",
  path: (checked, piece) =>
    `${FOLDERS.sheets}/${pieceStem(checked, piece)}${heldEnding(checked)}${openEnding(checked)}_sheet.svg`,
  write: (checked, piece, { made, document, version, pages }) => {
    const cutFiles = cutFilesOf(made, piece.plate.mark);
    const request = pieceRequest(checked, piece, { cutFiles, programVersion: version });
    if (request === null) throw new ProgramFault(`${piece.plate.mark}: a template of one piece has its own sheet`);
    const scene = drawSheet(request);
    pages?.take(piecePage(scene, checked, piece, pages.paper));
    return new TextEncoder().encode(writeSheetSvg(scene, drawingDocument(document)));
  },
};

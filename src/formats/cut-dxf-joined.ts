/**
 * The cut file that general programs read: AutoCAD 2000 (AC1015) with one closed LWPOLYLINE (bulges) per contour, CIRCLE,
 * and open LWPOLYLINE for the strokes of a mark.
 */
import type Drawing from "dxf-writer";
import type { Plate } from "../template/model.js";
import { type CutFileOptions, type CutItem, drawCutFile, formatTicks } from "./cut-file.js";
import { asPrinted, finishDxf, putOnLayer, startDxf, vertexValues } from "./dxf-drawing.js";

/** The plate's cut file in R2000, in the job's unit at nominal size; `options` decide layers, origin and marks. */
export function writeJoinedDxf(plate: Plate, options: CutFileOptions): Uint8Array {
  const cut = drawCutFile(plate, options);
  const drawing = startDxf(cut);
  for (const item of cut.items) drawItem(drawing, item, cut.decimals);
  return finishDxf(drawing);
}

/** Draws on layer 0, whose list keeps the order, and then gives the shape the layer it belongs to. */
function drawItem(drawing: Drawing, item: CutItem, decimals: number): void {
  const text = (ticks: number) => asPrinted(formatTicks(ticks, decimals));
  switch (item.kind) {
    case "circle":
      drawing.drawCircle(text(item.x), text(item.y), text(item.radius));
      break;
    case "chain":
      drawing.drawPolyline(
        item.vertices.map(({ x, y, bulge }) => vertexValues(text(x), text(y), bulge)),
        item.closed,
      );
      break;
  }
  putOnLayer(drawing, item.layer);
}

/**
 * The cut file that general programs read: AutoCAD 2000 (AC1015) with one closed LWPOLYLINE (bulges) per contour, CIRCLE,
 * and open LWPOLYLINE for the strokes of a mark. Written by dxf-writer, with these limits of it kept off the file:
 * - it prints numbers with String(), so 1e-7 would be an exponent: every coordinate is handed over as text;
 * - its handles come from a global counter: it is set to zero before each drawing, so that the bytes repeat;
 * - it declares AC1021 (R2007) and knows no $MEASUREMENT, no extents and no limits: they are set as header variables;
 * - its constructor already adds the extra tables; a second call doubles their rows and makes a file that is not opened;
 * - it orders entities by layer, names that look like numbers first: here the shapes go on one list, each with its layer;
 * - it ends lines with LF and leaves the last one open.
 */
import Drawing from "dxf-writer";
import Handle from "dxf-writer/src/Handle.js";
import type { Plate } from "../plate/model.js";
import { startLines } from "./ascii-writer.js";
import {
  BULGE_DECIMALS,
  type CutDrawing,
  type CutFileOptions,
  type CutItem,
  drawCutFile,
  formatFixed,
  formatTicks,
  HEADER_UNITS,
} from "./cut-file.js";

/** The plate's cut file in R2000, in the job's unit at nominal size; `options` decide layers, origin and marks. */
export function writeJoinedDxf(plate: Plate, options: CutFileOptions): Uint8Array {
  const cut = drawCutFile(plate, options);
  Handle.seed = 0;
  const drawing = new Drawing();
  setHeader(drawing, cut);
  for (const { name, color } of cut.layers) if (name !== "0") drawing.addLayer(name, color, "CONTINUOUS");
  for (const item of cut.items) drawItem(drawing, item, cut.decimals);
  const writer = startLines();
  writer.lines(drawing.toDxfString());
  writer.lines("\n");
  return writer.bytes();
}

/** dxf-writer prints whatever it is given with String(), so a text stands as it is; its typings know only numbers. */
function asPrinted(text: string): number {
  return text as unknown as number;
}

function setHeader(drawing: Drawing, { unit, extent, decimals }: CutDrawing): void {
  const at = (x: number, y: number): [number, number][] => [
    [10, asPrinted(formatTicks(x, decimals))],
    [20, asPrinted(formatTicks(y, decimals))],
  ];
  const low = at(extent.x0, extent.y0);
  const high = at(extent.x1, extent.y1);
  const units = HEADER_UNITS[unit];
  drawing.headers = {};
  drawing.header("ACADVER", [[1, asPrinted("AC1015")]]);
  drawing.header("DWGCODEPAGE", [[3, asPrinted("ANSI_1252")]]);
  drawing.header("INSUNITS", [[70, asPrinted(units.insunits)]]);
  drawing.header("MEASUREMENT", [[70, asPrinted(units.measurement)]]);
  drawing.header("EXTMIN", [...low, [30, asPrinted("0.0")]]);
  drawing.header("EXTMAX", [...high, [30, asPrinted("0.0")]]);
  drawing.header("LIMMIN", low);
  drawing.header("LIMMAX", high);
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
  const shape = drawing.activeLayer?.shapes.at(-1) as { layer?: unknown } | undefined;
  const layer = drawing.layers[item.layer];
  if (shape === undefined || layer === undefined) throw new Error(`layer ${item.layer} is not in the drawing`);
  shape.layer = layer;
}

/** A third value is the bulge; the typings of dxf-writer leave it out. */
function vertexValues(x: number, y: number, bulge: number): [number, number] {
  if (bulge === 0) return [x, y];
  return [x, y, asPrinted(formatFixed(bulge, BULGE_DECIMALS))] as unknown as [number, number];
}

/**
 * The cut file that general programs read: AutoCAD 2000 (AC1015) with one closed LWPOLYLINE (bulges) per contour, CIRCLE,
 * and open LWPOLYLINE for the strokes of a mark.
 */
import type { Plate } from "../template/model.js";
import { roundSymmetric } from "../units/length.js";
import type { LineWriter } from "./ascii-writer.js";
import { BULGE_DECIMALS, type CutFileOptions, type CutFlavour, type CutItem, drawCutFile } from "./cut-file.js";
import { writeDxfLines } from "./dxf-drawing.js";

/** For readers of today. */
export const joinedFlavour: CutFlavour<"cut-joined"> = {
  kind: "cut-joined",
  title: "Cut file: one closed LWPOLYLINE a contour, holes as CIRCLE",
  ending: "polyline",
  draws: "whole",
  write: writeJoinedDxf,
};

/** The plate's cut file in R2000, in the job's unit at nominal size; `options` decide layers, origin and marks. */
export function writeJoinedDxf(plate: Plate, options: CutFileOptions): Uint8Array {
  const cut = drawCutFile(plate, options);
  return writeDxfLines(cut, cut.items, (item, handle, owner, writer) => {
    writeItem(item, `5\n${handle}\n330\n${owner}\n100\nAcDbEntity\n`, cut.decimals, writer);
  });
}

function writeItem(item: CutItem, identity: string, decimals: number, writer: LineWriter): void {
  switch (item.kind) {
    case "circle":
      writer.lines(`0\nCIRCLE\n${identity}100\nAcDbCircle\n8\n${item.layer}\n`);
      writePoint(item.x, item.y, decimals, writer);
      writer.lines("30\n0\n40\n");
      writer.ticks(item.radius, decimals);
      break;
    case "chain":
      writer.lines(`0\nLWPOLYLINE\n${identity}100\nAcDbPolyline\n8\n${item.layer}\n${BY_LAYER}`);
      writer.lines(`90\n${item.vertices.length}\n70\n${item.closed ? 1 : 0}\n`);
      writeVertices(item, decimals, writer);
      break;
  }
}

/** Line type, colour and line weight of the layer (DXF reference, common group codes). */
const BY_LAYER = "6\nByLayer\n62\n256\n370\n-1\n";

function writeVertices({ vertices }: CutItem & { kind: "chain" }, decimals: number, writer: LineWriter): void {
  for (const { x, y, bulge } of vertices) {
    writePoint(x, y, decimals, writer);
    if (bulge === 0) continue;
    writer.lines("42\n");
    writer.ticks(roundSymmetric(bulge * 10 ** BULGE_DECIMALS), BULGE_DECIMALS);
  }
}

function writePoint(x: number, y: number, decimals: number, writer: LineWriter): void {
  writer.lines("10\n");
  writer.ticks(x, decimals);
  writer.lines("20\n");
  writer.ticks(y, decimals);
}

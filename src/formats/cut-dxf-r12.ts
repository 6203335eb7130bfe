/** The cut file that the oldest controls read: AutoCAD R12 (AC1009) with nothing but LINE, ARC and CIRCLE. */
import type { Plate } from "../plate/model.js";
import {
  type CutDrawing,
  type CutFileOptions,
  type CutItem,
  type CutVertex,
  drawCutFile,
  encodeCutFile,
  formatFixed,
  formatTicks,
  HEADER_UNITS,
} from "./cut-file.js";

/** Decimals of an angle in degrees: 1e-10 degree at a radius of 100 m is 2e-7 mm. */
const ANGLE_DECIMALS = 10;

/** The plate's cut file in R12, in the job's unit at nominal size; `options` decide layers, origin and marks. */
export function writeR12Dxf(plate: Plate, options: CutFileOptions): Uint8Array {
  const drawing = drawCutFile(plate, options);
  let text = `${writeHeader(drawing)}${writeTables(drawing)}${section("BLOCKS", "")}0\r\nSECTION\r\n2\r\nENTITIES\r\n`;
  for (const item of drawing.items) text += writeItem(item, drawing.decimals);
  return encodeCutFile(`${text}0\r\nENDSEC\r\n0\r\nEOF\r\n`);
}

function section(name: string, body: string): string {
  return `0\r\nSECTION\r\n2\r\n${name}\r\n${body}0\r\nENDSEC\r\n`;
}

function writeHeader({ unit, extent, decimals }: CutDrawing): string {
  const at = (x: number, y: number) => `10\r\n${formatTicks(x, decimals)}\r\n20\r\n${formatTicks(y, decimals)}\r\n`;
  const low = at(extent.x0, extent.y0);
  const high = at(extent.x1, extent.y1);
  const units = HEADER_UNITS[unit];
  return section(
    "HEADER",
    "9\r\n$ACADVER\r\n1\r\nAC1009\r\n9\r\n$DWGCODEPAGE\r\n3\r\nANSI_1252\r\n" +
      `9\r\n$INSUNITS\r\n70\r\n${units.insunits}\r\n9\r\n$MEASUREMENT\r\n70\r\n${units.measurement}\r\n` +
      `9\r\n$EXTMIN\r\n${low}30\r\n0.0\r\n9\r\n$EXTMAX\r\n${high}30\r\n0.0\r\n` +
      `9\r\n$LIMMIN\r\n${low}9\r\n$LIMMAX\r\n${high}`,
  );
}

function writeTables({ layers }: CutDrawing): string {
  const rows = [{ name: "0", color: 7 }, ...layers.filter((layer) => layer.name !== "0")].map(
    ({ name, color }) => `0\r\nLAYER\r\n2\r\n${name}\r\n70\r\n0\r\n62\r\n${color}\r\n6\r\nCONTINUOUS\r\n`,
  );
  return section(
    "TABLES",
    "0\r\nTABLE\r\n2\r\nLTYPE\r\n70\r\n1\r\n0\r\nLTYPE\r\n2\r\nCONTINUOUS\r\n70\r\n0\r\n3\r\nSolid line\r\n72\r\n65\r\n" +
      "73\r\n0\r\n40\r\n0.0\r\n0\r\nENDTAB\r\n" +
      `0\r\nTABLE\r\n2\r\nLAYER\r\n70\r\n${rows.length}\r\n${rows.join("")}0\r\nENDTAB\r\n`,
  );
}

function writeItem(item: CutItem, decimals: number): string {
  switch (item.kind) {
    case "circle":
      return `0\r\nCIRCLE\r\n8\r\n${item.layer}\r\n${writeRound(item.x, item.y, item.radius, decimals)}`;
    case "chain": {
      const { vertices, closed, layer } = item;
      const [first] = vertices;
      let text = "";
      for (let index = 0; index < vertices.length; index++) {
        const from = vertices[index];
        const to = vertices[index + 1] ?? (closed ? first : undefined);
        if (from !== undefined && to !== undefined) text += writeSegment(from, to, layer, decimals);
      }
      return text;
    }
  }
}

function writeRound(x: number, y: number, radius: number, decimals: number): string {
  return (
    `10\r\n${formatTicks(x, decimals)}\r\n20\r\n${formatTicks(y, decimals)}\r\n30\r\n0.0\r\n` +
    `40\r\n${formatTicks(radius, decimals)}\r\n`
  );
}

function writeSegment(from: CutVertex, to: CutVertex, layer: string, decimals: number): string {
  if (from.bulge !== 0) return writeArc(from, to, layer, decimals);
  return (
    `0\r\nLINE\r\n8\r\n${layer}\r\n` +
    `10\r\n${formatTicks(from.x, decimals)}\r\n20\r\n${formatTicks(from.y, decimals)}\r\n30\r\n0.0\r\n` +
    `11\r\n${formatTicks(to.x, decimals)}\r\n21\r\n${formatTicks(to.y, decimals)}\r\n31\r\n0.0\r\n`
  );
}

/**
 * An ARC always runs counter-clockwise from its start angle. Centre = middle + left normal x chord (1 - b2) / 4b; the
 * angles are taken from the rounded centre to the joints themselves, so that the ends miss them only by the radius' rounding.
 */
function writeArc(from: CutVertex, to: CutVertex, layer: string, decimals: number): string {
  const { bulge } = from;
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const x = Math.round((from.x + to.x) / 2 - (to.y - from.y) * lift);
  const y = Math.round((from.y + to.y) / 2 + (to.x - from.x) * lift);
  const radius = Math.round((Math.hypot(from.x - x, from.y - y) + Math.hypot(to.x - x, to.y - y)) / 2);
  const [start, end] = bulge > 0 ? [from, to] : [to, from];
  return (
    `0\r\nARC\r\n8\r\n${layer}\r\n${writeRound(x, y, radius, decimals)}` +
    `50\r\n${writeAngle(start, x, y)}\r\n51\r\n${writeAngle(end, x, y)}\r\n`
  );
}

/** Degrees counter-clockwise from +x, from 0 to below 360. */
function writeAngle(point: CutVertex, x: number, y: number): string {
  const degrees = (Math.atan2(point.y - y, point.x - x) * 180) / Math.PI;
  const text = formatFixed(degrees < 0 ? degrees + 360 : degrees, ANGLE_DECIMALS);
  return text.startsWith("360.") ? formatTicks(0, ANGLE_DECIMALS) : text;
}

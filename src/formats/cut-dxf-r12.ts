/** The cut file that the oldest controls read: AutoCAD R12 (AC1009) with nothing but LINE, ARC and CIRCLE. */
import type { Plate } from "../template/model.js";
import { roundSymmetric } from "../units/length.js";
import { type LineWriter, startLines } from "./ascii-writer.js";
import {
  type CutDrawing,
  type CutFileOptions,
  type CutFlavour,
  type CutItem,
  type CutVertex,
  drawCutFile,
  formatTicks,
  HEADER_UNITS,
} from "./cut-file.js";

/** Decimals of an angle in degrees: 1e-10 degree at a radius of 100 m is 2e-7 mm. */
const ANGLE_DECIMALS = 10;

/** For older readers. */
export const r12Flavour: CutFlavour<"cut-r12"> = {
  kind: "cut-r12",
  title: "Cut file for older readers: LINE, ARC and CIRCLE",
  ending: "lines",
  draws: "pieces",
  write: writeR12Dxf,
};

/** The plate's cut file in R12, in the job's unit at nominal size; `options` decide layers, origin and marks. */
export function writeR12Dxf(plate: Plate, options: CutFileOptions): Uint8Array {
  const drawing = drawCutFile(plate, options);
  const writer = startLines();
  writer.lines(`${describeHeader(drawing)}${describeTables(drawing)}${section("BLOCKS", "")}0\nSECTION\n2\nENTITIES\n`);
  for (const item of drawing.items) writeItem(item, drawing.decimals, writer);
  writer.lines("0\nENDSEC\n0\nEOF\n");
  return writer.bytes();
}

function section(name: string, body: string): string {
  return `0\nSECTION\n2\n${name}\n${body}0\nENDSEC\n`;
}

function describeHeader({ unit, extent, decimals }: CutDrawing): string {
  const at = (x: number, y: number) => `10\n${formatTicks(x, decimals)}\n20\n${formatTicks(y, decimals)}\n`;
  const low = at(extent.x0, extent.y0);
  const high = at(extent.x1, extent.y1);
  const units = HEADER_UNITS[unit];
  return section(
    "HEADER",
    "9\n$ACADVER\n1\nAC1009\n9\n$DWGCODEPAGE\n3\nANSI_1252\n" +
      `9\n$INSUNITS\n70\n${units.insunits}\n9\n$MEASUREMENT\n70\n${units.measurement}\n` +
      `9\n$EXTMIN\n${low}30\n0.0\n9\n$EXTMAX\n${high}30\n0.0\n` +
      `9\n$LIMMIN\n${low}9\n$LIMMAX\n${high}`,
  );
}

function describeTables({ layers }: CutDrawing): string {
  const rows = [{ name: "0", color: 7 }, ...layers.filter((layer) => layer.name !== "0")].map(
    ({ name, color }) => `0\nLAYER\n2\n${name}\n70\n0\n62\n${color}\n6\nCONTINUOUS\n`,
  );
  return section(
    "TABLES",
    "0\nTABLE\n2\nLTYPE\n70\n1\n0\nLTYPE\n2\nCONTINUOUS\n70\n0\n3\nSolid line\n72\n65\n" +
      "73\n0\n40\n0.0\n0\nENDTAB\n" +
      `0\nTABLE\n2\nLAYER\n70\n${rows.length}\n${rows.join("")}0\nENDTAB\n`,
  );
}

function writeItem(item: CutItem, decimals: number, writer: LineWriter): void {
  switch (item.kind) {
    case "circle":
      writer.lines(`0\nCIRCLE\n8\n${item.layer}\n`);
      writeRound(item.x, item.y, item.radius, decimals, writer);
      break;
    case "chain":
      writeChain(item, decimals, writer);
      break;
  }
}

function writeChain(item: Extract<CutItem, { kind: "chain" }>, decimals: number, writer: LineWriter): void {
  const { vertices, closed, layer } = item;
  const [first] = vertices;
  const [line, arc] = [`0\nLINE\n8\n${layer}\n`, `0\nARC\n8\n${layer}\n`];
  for (let index = 0; index < vertices.length; index++) {
    const from = vertices[index];
    const to = vertices[index + 1] ?? (closed ? first : undefined);
    if (from === undefined || to === undefined) continue;
    writer.lines(from.bulge === 0 ? line : arc);
    if (from.bulge === 0) writeLine(from, to, decimals, writer);
    else writeArc(from, to, decimals, writer);
  }
}

function writeLine(from: CutVertex, to: CutVertex, decimals: number, writer: LineWriter): void {
  writer.lines("10\n");
  writer.ticks(from.x, decimals);
  writer.lines("20\n");
  writer.ticks(from.y, decimals);
  writer.lines("30\n0.0\n11\n");
  writer.ticks(to.x, decimals);
  writer.lines("21\n");
  writer.ticks(to.y, decimals);
  writer.lines("31\n0.0\n");
}

function writeRound(x: number, y: number, radius: number, decimals: number, writer: LineWriter): void {
  writer.lines("10\n");
  writer.ticks(x, decimals);
  writer.lines("20\n");
  writer.ticks(y, decimals);
  writer.lines("30\n0.0\n40\n");
  writer.ticks(radius, decimals);
}

/**
 * An ARC always runs counter-clockwise from its start angle. Centre = middle + left normal x chord (1 - b2) / 4b; the
 * angles are taken from the rounded centre to the joints themselves, so that the ends miss them only by the radius' rounding.
 */
function writeArc(from: CutVertex, to: CutVertex, decimals: number, writer: LineWriter): void {
  const { bulge } = from;
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const x = roundSymmetric((from.x + to.x) / 2 - (to.y - from.y) * lift);
  const y = roundSymmetric((from.y + to.y) / 2 + (to.x - from.x) * lift);
  const radius = Math.round((Math.hypot(from.x - x, from.y - y) + Math.hypot(to.x - x, to.y - y)) / 2);
  const [start, end] = bulge > 0 ? [from, to] : [to, from];
  writeRound(x, y, radius, decimals, writer);
  writer.lines("50\n");
  writer.ticks(angleTicks(start, x, y), ANGLE_DECIMALS);
  writer.lines("51\n");
  writer.ticks(angleTicks(end, x, y), ANGLE_DECIMALS);
}

/** Direction from the centre, counter-clockwise from +x, from 0 to below 360 degrees. */
function angleTicks(point: CutVertex, x: number, y: number): number {
  const full = 360 * 10 ** ANGLE_DECIMALS;
  const ticks = roundSymmetric((Math.atan2(point.y - y, point.x - x) * full) / (2 * Math.PI));
  return ticks < 0 ? ticks + full : ticks;
}

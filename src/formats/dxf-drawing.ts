/**
 * A drawing of AutoCAD 2000 (AC1015) by dxf-writer, with these limits of it kept off the file:
 * - it prints numbers with String(), so 1e-7 would be an exponent: every coordinate is handed over as text;
 * - its handles come from a global counter: each drawing has it to itself, from zero, so that the bytes repeat;
 * - it declares AC1021 (R2007) and knows no $MEASUREMENT, no extents and no limits: they are set as header variables;
 * - its constructor already adds the extra tables; a second call doubles their rows and makes a file that is not opened;
 * - it orders entities by layer, names that look like numbers first: here the shapes go on one list, each with its layer;
 * - it ends lines with LF and leaves the last one open.
 */
import Drawing from "dxf-writer";
import Handle from "dxf-writer/src/Handle.js";
import type { Extent } from "../geometry/vocabulary.js";
import type { Unit } from "../units/length.js";
import { type LineWriter, startLines } from "./ascii-writer.js";
import { BULGE_DECIMALS, formatFixed, formatTicks, HEADER_UNITS } from "./cut-file.js";

/** What a drawing starts with: true extents in ticks of `decimals`, and every layer that it uses. */
export interface DxfHead {
  readonly unit: Unit;
  readonly decimals: number;
  readonly extent: Extent;
  /** Name and AutoCAD colour index. */
  readonly layers: readonly { readonly name: string; readonly color: number }[];
}

/** The file's bytes, its entities drawn by dxf-writer. A letter outside printable ASCII throws: a bug. */
export function writeDxf(head: DxfHead, draw: (drawing: Drawing) => void): Uint8Array {
  return withOwnHandles(() => {
    const drawing = startDrawing(head);
    draw(drawing);
    const writer = startLines();
    writer.lines(`${drawing.toDxfString()}\n`);
    return writer.bytes();
  });
}

/** Writes one entity with its handle and that of the space it stands in. */
export type EntityWriter<Entity> = (entity: Entity, handle: string, owner: string, writer: LineWriter) => void;

/** As `writeDxf`, the entities written as lines, without an object for each of them: a cut file has hundreds. */
export function writeDxfLines<E>(head: DxfHead, entities: readonly E[], write: EntityWriter<E>): Uint8Array {
  return withOwnHandles(() => {
    const drawing = startDrawing(head);
    const first = Handle.seed + 1;
    Handle.seed += entities.length;
    const { owner, before, after } = emptyFile(drawing);
    const writer = startLines();
    writer.lines(before);
    entities.forEach((entity, index) => {
      write(entity, (first + index).toString(16).toUpperCase(), owner, writer);
    });
    writer.lines(after);
    return writer.bytes();
  });
}

const BEFORE_ENTITIES = "0\nSECTION\n2\nENTITIES\n";

/** The file without entities, in two parts with room for them; a shape that draws nothing learns in which space they stand. */
function emptyFile(drawing: Drawing): { readonly owner: string; readonly before: string; readonly after: string } {
  const nothing = { ownerObjectHandle: "", tags: () => undefined, toDxfString: () => "" };
  drawing.activeLayer?.shapes.push(nothing);
  const text = `${drawing.toDxfString()}\n`;
  const start = text.lastIndexOf(BEFORE_ENTITIES) + BEFORE_ENTITIES.length;
  return { owner: nothing.ownerObjectHandle, before: text.slice(0, start), after: text.slice(start) };
}

/** Handles from 1 on, whatever else is being drawn: dxf-writer has one counter for all drawings. */
function withOwnHandles<T>(work: () => T): T {
  const before = Handle.seed;
  Handle.seed = 0;
  try {
    return work();
  } finally {
    Handle.seed = before;
  }
}

function startDrawing(head: DxfHead): Drawing {
  const drawing = new Drawing();
  setHeader(drawing, head);
  // a layer may be called as what every object has
  Object.setPrototypeOf(drawing.layers, null);
  for (const { name, color } of head.layers) if (name !== "0") drawing.addLayer(name, color, "CONTINUOUS");
  return drawing;
}

/** dxf-writer prints whatever it is given with String(), so a text stands as it is; its typings know only numbers. */
export function asPrinted(text: string): number {
  return text as unknown as number;
}

function setHeader(drawing: Drawing, { unit, extent, decimals }: DxfHead): void {
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

/** Gives the shape drawn last, which lies on the list of layer 0, the layer it belongs to. */
export function putOnLayer(drawing: Drawing, name: string): void {
  const shape = drawing.activeLayer?.shapes.at(-1) as { layer?: unknown } | undefined;
  const layer = drawing.layers[name];
  if (shape === undefined || layer === undefined) throw new Error(`layer ${name} is not in the drawing`);
  shape.layer = layer;
}

/** A vertex of a polyline; a third value is the bulge, which the typings of dxf-writer leave out. */
export function vertexValues(x: number, y: number, bulge: number): [number, number] {
  if (bulge === 0) return [x, y];
  return [x, y, asPrinted(formatFixed(bulge, BULGE_DECIMALS))] as unknown as [number, number];
}

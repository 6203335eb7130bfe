/** Cut files as the npm packages `dxf-parser` and `dxf` read them. */
import { readFileSync } from "node:fs";
import { parseString } from "dxf";
import dxfParser, { type DxfParser } from "dxf-parser";
import type { CutFileToCheck } from "./harness.js";
import {
  bulgeEdge,
  type Drawn,
  type Edge,
  type Measured,
  measureDrawn,
  UNIT_OF_INSUNITS,
  type XY,
} from "./measured.js";

interface Vertex extends XY {
  readonly bulge?: number;
}

/** An entity in the one form that both readers are brought to. */
type Entity =
  | { readonly kind: "edge"; readonly layer: string; readonly edge: Edge }
  | {
      readonly kind: "polyline";
      readonly layer: string;
      readonly closed: boolean;
      readonly vertices: readonly Vertex[];
    }
  | { readonly kind: "circle"; readonly layer: string; readonly at: XY; readonly diameter: number }
  | { readonly kind: "other"; readonly layer: string; readonly type: string };

/** The package is CommonJS whose default is the class itself; its typings describe another build. */
const Parser = dxfParser as unknown as new () => DxfParser;

export function measureByDxfParser(files: readonly CutFileToCheck[]): readonly Measured[] {
  return files.map((file) => {
    const parsed = new Parser().parseSync(readFileSync(file.path, "utf8"));
    if (parsed === null) return unread(file.path, "dxf-parser reads nothing");
    const { header } = parsed;
    const [low, high] = [header.$EXTMIN as XY | undefined, header.$EXTMAX as XY | undefined];
    return measure(file, (parsed.entities as unknown as readonly ParserEntity[]).map(fromDxfParser), {
      unit: UNIT_OF_INSUNITS[Number(header.$INSUNITS)],
      measurement: Number(header.$MEASUREMENT),
      headerExtent: low && high ? [low.x, low.y, high.x, high.y] : null,
      layers: Object.keys(parsed.tables.layer.layers),
    });
  });
}

export function measureByDxf(files: readonly CutFileToCheck[]): readonly Measured[] {
  return files.map((file) => {
    const { header, tables, entities } = parseString(readFileSync(file.path, "utf8"));
    const [low, high] = [header.extMin, header.extMax];
    return measure(file, entities.map(fromDxf), {
      unit: UNIT_OF_INSUNITS[header.insUnits ?? 0],
      measurement: header.measurement,
      headerExtent: low && high ? [low.x, low.y, high.x, high.y] : null,
      layers: Object.keys(tables.layers),
    });
  });
}

/** The fields of dxf-parser's entities that are used; angles in radians. */
interface ParserEntity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly vertices?: readonly Vertex[];
  readonly center?: XY;
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
}

function fromDxfParser(entity: ParserEntity): Entity {
  const { type, layer, vertices = [], center, radius = 0, startAngle: start = 0, endAngle: end = 0 } = entity;
  if (type === "LINE") return { kind: "edge", layer, edge: { kind: "points", points: vertices } };
  if (type === "ARC" && center) return { kind: "edge", layer, edge: { kind: "arc", center, radius, start, end } };
  if (type === "CIRCLE" && center) return { kind: "circle", layer, at: center, diameter: 2 * radius };
  if (type === "LWPOLYLINE") return { kind: "polyline", layer, closed: entity.shape === true, vertices };
  return { kind: "other", layer, type };
}

function fromDxf(entity: Parameters<Parameters<ReturnType<typeof parseString>["entities"]["map"]>[0]>[0]): Entity {
  const { type, layer, vertices = [], x = 0, y = 0, r: radius = 0, startAngle: start = 0, endAngle: end = 0 } = entity;
  const center = { x, y };
  if (type === "LINE" && entity.start && entity.end) {
    return { kind: "edge", layer, edge: { kind: "points", points: [entity.start, entity.end] } };
  }
  if (type === "ARC") return { kind: "edge", layer, edge: { kind: "arc", center, radius, start, end } };
  if (type === "CIRCLE") return { kind: "circle", layer, at: center, diameter: 2 * radius };
  if (type === "LWPOLYLINE") return { kind: "polyline", layer, closed: entity.closed === true, vertices };
  return { kind: "other", layer, type };
}

interface Head extends Pick<Measured, "unit" | "measurement" | "headerExtent"> {
  readonly layers: readonly string[];
}

function measure({ path, layers }: CutFileToCheck, entities: readonly Entity[], head: Head): Measured {
  const faults: string[] = [];
  const cutEdges: Edge[] = [];
  const otherEdges: Edge[] = [];
  const circles: Drawn["circles"][number][] = [];
  let unflagged = 0;
  for (const entity of entities) {
    if (!head.layers.includes(entity.layer)) faults.push(`layer ${entity.layer} is not in the table`);
    const isCut = layers.cut.includes(entity.layer);
    const edges = isCut ? cutEdges : otherEdges;
    if (entity.kind === "edge") edges.push(entity.edge);
    else if (entity.kind === "circle") circles.push({ ...entity.at, diameter: entity.diameter });
    else if (entity.kind === "polyline") {
      if (isCut && !entity.closed) unflagged++;
      edges.push(...edgesOf(entity.vertices, entity.closed));
    } else faults.push(`an entity of type ${entity.type}`);
  }
  const { unit, measurement, headerExtent } = head;
  const measured = measureDrawn({ cutEdges, circles, otherEdges });
  const { open } = measured;
  const round = circles.map(({ x, y, diameter }) => [x, y, diameter] as const);
  return { path, faults, unit, measurement, headerExtent, circles: round, ...measured, open: open + unflagged };
}

function edgesOf(vertices: readonly Vertex[], closed: boolean): readonly Edge[] {
  const last = closed ? vertices.length : vertices.length - 1;
  return vertices.slice(0, last).map((from, i) => {
    const to = vertices[(i + 1) % vertices.length] ?? from;
    return bulgeEdge(from, to, from.bulge ?? 0);
  });
}

function unread(path: string, fault: string): Measured {
  const none = { unit: null, measurement: null, headerExtent: null, extent: [], circles: null };
  return { path, faults: [fault], ...none, open: 0, pierces: 0, cutLength: 0, netArea: 0 };
}

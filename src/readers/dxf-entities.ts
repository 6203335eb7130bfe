/** The entities of a cut file, read from their tags by the published DXF reference. Coordinates in the file's unit, y up. */
import type { FindingList } from "./dxf-findings.js";
import type { DxfEntity } from "./dxf-model.js";
import { MIRROR_X, moveEntity } from "./dxf-moves.js";
import { facing, reportPlane } from "./dxf-plane.js";
import { reportUnread } from "./dxf-stray.js";
import type { TagRange, Tags } from "./dxf-tags.js";

export type { DxfEntity, DxfVertex } from "./dxf-model.js";

/** Reads entities of a file one after the other; null where a finding says what is not read, and why. */
export function startEntities(tags: Tags, findings: FindingList): (range: TagRange) => DxfEntity | null {
  const fields = emptyFields();
  return (range) => {
    const type = tags.text(range.first);
    switch (type) {
      case "LINE":
      case "ARC":
      case "CIRCLE":
      case "LWPOLYLINE":
        return collectFields(tags, range, type, fields, findings) ? makeEntity(type, fields, findings) : null;
      default:
        reportUnread(tags, range, findings);
        return null;
    }
  };
}

type EntityType = "LINE" | "ARC" | "CIRCLE" | "LWPOLYLINE";

/** Numbers of an entity, NaN where it has none; filled anew by each entity, since a file has very many. */
interface Fields {
  layer: string;
  x: number;
  y: number;
  endX: number;
  endY: number;
  radius: number;
  start: number;
  end: number;
  flags: number;
  count: number;
  /** Extrusion direction, 0 0 1 where none is given. */
  normal: { x: number; y: number; z: number };
  hasWidth: boolean;
  /** Of an LWPOLYLINE: every group 10 starts one. */
  vertices: { x: number; y: number; bulge: number }[];
}

const NONE = Number.NaN;

function emptyFields(): Fields {
  return {
    layer: "0",
    x: NONE,
    y: NONE,
    endX: NONE,
    endY: NONE,
    radius: NONE,
    start: NONE,
    end: NONE,
    flags: NONE,
    count: NONE,
    normal: { x: 0, y: 0, z: 1 },
    hasWidth: false,
    vertices: [],
  };
}

function clearFields(fields: Fields): void {
  fields.x = NONE;
  fields.y = NONE;
  fields.endX = NONE;
  fields.endY = NONE;
  fields.radius = NONE;
  fields.start = NONE;
  fields.end = NONE;
  fields.flags = NONE;
  fields.count = NONE;
  fields.normal.x = 0;
  fields.normal.y = 0;
  fields.normal.z = 1;
  fields.hasWidth = false;
}

/** Reads an entity's tags; false, with a finding, where it has a value that is no number or does not lie in the plane. */
function collectFields(tags: Tags, range: TagRange, type: EntityType, fields: Fields, findings: FindingList): boolean {
  const { codes } = tags;
  clearFields(fields);
  if (type === "LWPOLYLINE") fields.vertices = [];
  let layer = "0";
  let isReadable = true;
  for (let index = range.first + 1; index < range.end; index++) {
    const code = codes[index] ?? 0;
    if (code >= 1000) break;
    if (code === 8) layer = tags.text(index);
    if (!isNumberCode(code)) continue;
    const number = tags.number(index);
    if (number === null) {
      findings.add("bad-number", "stop", `${type} with a value that is no number (group ${code}) is not read`);
      isReadable = false;
    } else if (type === "LWPOLYLINE" && takeVertex(fields.vertices, code, number)) continue;
    else if (!takeNumber(fields, code, number)) isReadable = reportPlane(code, number, type, findings) && isReadable;
  }
  // The string of the entity before is kept where it is the same: most of a file is on a few layers.
  if (layer !== fields.layer) fields.layer = layer;
  return isReadable;
}

/** Group codes whose numbers are looked at; others (handles, names, colours) are passed over. */
function isNumberCode(code: number): boolean {
  return (
    (code >= 10 && code <= 51) ||
    code === 60 ||
    code === 67 ||
    code === 70 ||
    code === 90 ||
    (code >= 210 && code <= 230)
  );
}

/** Puts a number of a vertex in its place; false where the group is not a vertex's. */
function takeVertex(vertices: Fields["vertices"], code: number, number: number): boolean {
  if (code === 10) {
    vertices.push({ x: number, y: NONE, bulge: 0 });
    return true;
  }
  const vertex = vertices[vertices.length - 1];
  if (vertex === undefined || (code !== 20 && code !== 42)) return false;
  if (code === 20) vertex.y = number;
  else vertex.bulge = number;
  return true;
}

/** Puts a number in its field; false where the group is none of the shape's own. */
function takeNumber(fields: Fields, code: number, number: number): boolean {
  switch (code) {
    case 10:
      fields.x = number;
      return true;
    case 20:
      fields.y = number;
      return true;
    case 11:
      fields.endX = number;
      return true;
    case 21:
      fields.endY = number;
      return true;
    case 40:
      fields.radius = number;
      fields.hasWidth ||= number !== 0;
      return true;
    case 41:
    case 43:
      fields.hasWidth ||= number !== 0;
      return true;
    case 50:
      fields.start = number;
      return true;
    case 51:
      fields.end = number;
      return true;
    case 70:
      fields.flags = number;
      return true;
    case 90:
      fields.count = number;
      return true;
    case 210:
      fields.normal.x = number;
      return true;
    case 220:
      fields.normal.y = number;
      return true;
    case 230:
      fields.normal.z = number;
      return true;
    default:
      return false;
  }
}

function makeEntity(type: EntityType, fields: Fields, findings: FindingList): DxfEntity | null {
  const entity = shapeOf(type, fields, findings);
  if (entity === null) findings.add("incomplete", "stop", `${type} without all its values is not read`);
  if (entity === null || entity === "refused") return null;
  // A LINE stands in world coordinates whatever its extrusion direction (DXF reference, object coordinate systems).
  const side = type === "LINE" ? "up" : facing(fields.normal, type, findings);
  if (side === "up") return entity;
  return side === "down" ? moveEntity(entity, MIRROR_X) : null;
}

/** Null where a value is missing; "refused" where a finding was made. */
function shapeOf(type: EntityType, fields: Fields, findings: FindingList): DxfEntity | "refused" | null {
  const { layer, x, y, radius, start, end } = fields;
  switch (type) {
    case "LWPOLYLINE":
      return isWhole(fields.vertices) ? polylineOf(fields, findings) : null;
    case "LINE": {
      const { endX, endY } = fields;
      if (Number.isNaN(x + y + endX + endY)) return null;
      return { kind: "line", layer, from: { x, y, bulge: 0 }, to: { x: endX, y: endY, bulge: 0 } };
    }
    case "ARC":
      if (Number.isNaN(x + y + radius + start + end)) return null;
      return isRound(type, fields, findings) ? { kind: "arc", layer, x, y, radius, start, end } : "refused";
    case "CIRCLE":
      if (Number.isNaN(x + y + radius)) return null;
      return isRound(type, fields, findings) ? { kind: "circle", layer, x, y, radius } : "refused";
  }
}

function isRound(type: EntityType, { x, y, radius }: Fields, findings: FindingList): boolean {
  if (radius > 0) return true;
  findings.add("bad-radius", "stop", `${type} with a radius of zero or less is not read`, [x, y]);
  return false;
}

function isWhole(vertices: Fields["vertices"]): boolean {
  for (const { x, y } of vertices) if (Number.isNaN(x + y)) return false;
  return vertices.length > 1;
}

function polylineOf({ layer, vertices, count, flags, hasWidth }: Fields, findings: FindingList): DxfEntity {
  const at = [vertices[0]?.x ?? 0, vertices[0]?.y ?? 0] as const;
  if (!Number.isNaN(count) && count !== vertices.length) {
    findings.add("vertex-count", "stop", `LWPOLYLINE says ${count} vertices and has ${vertices.length}`, at);
  }
  if (hasWidth) findings.add("width", "advise", "LWPOLYLINE has a width; it is read as its centre line", at);
  return { kind: "polyline", layer, closed: flags % 2 === 1, vertices };
}

/** The entities of a cut file, read from their tags by the published DXF reference. Coordinates in the file's unit, y up. */
import type { FindingList } from "./dxf-findings.js";
import type { TagRange, Tags } from "./dxf-tags.js";

export interface DxfVertex {
  readonly x: number;
  readonly y: number;
  /** tan(sweep / 4) of the segment that leaves the vertex, counter-clockwise positive. */
  readonly bulge: number;
}

export type DxfEntity =
  | { readonly kind: "line"; readonly layer: string; readonly from: DxfVertex; readonly to: DxfVertex }
  | {
      /** Runs counter-clockwise from `start` to `end`, degrees from +x. */
      readonly kind: "arc";
      readonly layer: string;
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly start: number;
      readonly end: number;
    }
  | { readonly kind: "circle"; readonly layer: string; readonly x: number; readonly y: number; readonly radius: number }
  | {
      readonly kind: "polyline";
      readonly layer: string;
      readonly closed: boolean;
      readonly vertices: readonly DxfVertex[];
    };

/** The entity whose tags are given, or null: then a finding says what is not read, and why. */
export function readEntity(tags: Tags, range: TagRange, findings: FindingList): DxfEntity | null {
  const type = tags.text(range.first);
  switch (type) {
    case "LINE":
    case "ARC":
    case "CIRCLE":
    case "LWPOLYLINE": {
      const fields = collectFields(tags, range, type, findings);
      return fields === null ? null : makeEntity(type, fields, findings);
    }
    default:
      findings.add("unread-entity", "stop", `entities of type ${type} are not read`);
      return null;
  }
}

type Type = "LINE" | "ARC" | "CIRCLE" | "LWPOLYLINE";

/** Numbers of an entity, NaN where it has none. Every group 10 starts a point. */
interface Fields {
  layer: string;
  readonly points: { x: number; y: number; bulge: number }[];
  endX: number;
  endY: number;
  radius: number;
  start: number;
  end: number;
  flags: number;
  count: number;
  hasWidth: boolean;
}

function emptyFields(): Fields {
  return {
    layer: "0",
    points: [],
    endX: Number.NaN,
    endY: Number.NaN,
    radius: Number.NaN,
    start: Number.NaN,
    end: Number.NaN,
    flags: 0,
    count: Number.NaN,
    hasWidth: false,
  };
}

/** Reads an entity's tags; null, with a finding, where it has a value that is no number or does not lie in the plane. */
function collectFields(tags: Tags, range: TagRange, type: Type, findings: FindingList): Fields | null {
  const { codes } = tags;
  const fields = emptyFields();
  let isReadable = true;
  for (let index = range.first + 1; index < range.end; index++) {
    const code = codes[index] ?? 0;
    if (code >= 1000) break;
    if (code === 8) fields.layer = tags.text(index);
    if (!isNumberCode(code)) continue;
    const number = tags.number(index);
    if (number === null) {
      findings.add("bad-number", "stop", `${type} with a value that is no number (group ${code}) is not read`);
      isReadable = false;
    } else if (!takeNumber(fields, code, number)) isReadable = reportPlane(code, number, type, findings) && isReadable;
  }
  return isReadable ? fields : null;
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

/** Puts a number in its field; false where the group is none of the shape's own. */
function takeNumber(fields: Fields, code: number, number: number): boolean {
  const point = fields.points[fields.points.length - 1];
  switch (code) {
    case 10:
      fields.points.push({ x: number, y: Number.NaN, bulge: 0 });
      return true;
    case 20:
      if (point !== undefined) point.y = number;
      return true;
    case 42:
      if (point !== undefined) point.bulge = number;
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
    default:
      return false;
  }
}

/** A cut file is flat: what stands off the plane, or is hidden, is told. False where the entity cannot be read then. */
function reportPlane(code: number, number: number, type: Type, findings: FindingList): boolean {
  if (number === (code === 230 ? 1 : 0)) return true;
  switch (code) {
    case 67:
      findings.add("paper-space", "advise", `${type} in paper space is not read`);
      return false;
    case 210:
    case 220:
    case 230:
      findings.add("extrusion", "stop", `${type} with an extrusion direction other than +z is not read`);
      return false;
    case 60:
      findings.add("invisible", "advise", `${type} is marked invisible`);
      return true;
    case 30:
    case 31:
    case 38:
      findings.add("elevation", "advise", `${type} does not lie at height zero; it is read as if it did`);
      return true;
    case 39:
      findings.add("thickness", "advise", `${type} has a thickness; it is read as a line`);
      return true;
    default:
      return true;
  }
}

function makeEntity(type: Type, fields: Fields, findings: FindingList): DxfEntity | null {
  const entity = shapeOf(type, fields, findings);
  if (entity === null) findings.add("incomplete", "stop", `${type} without all its values is not read`);
  return entity === "refused" ? null : entity;
}

/** Null where a value is missing; "refused" where a finding was made. */
function shapeOf(type: Type, fields: Fields, findings: FindingList): DxfEntity | "refused" | null {
  const { layer, points, endX, endY, radius, start, end } = fields;
  const [first] = points;
  if (first === undefined || points.some(({ x, y }) => Number.isNaN(x + y))) return null;
  const { x, y } = first;
  if (type === "LWPOLYLINE") return points.length < 2 ? null : polylineOf(fields, [x, y], findings);
  if (type === "LINE") {
    if (Number.isNaN(endX + endY)) return null;
    return { kind: "line", layer, from: { x, y, bulge: 0 }, to: { x: endX, y: endY, bulge: 0 } };
  }
  if (Number.isNaN(type === "ARC" ? radius + start + end : radius)) return null;
  if (radius <= 0) {
    findings.add("bad-radius", "stop", `${type} with a radius of zero or less is not read`, [x, y]);
    return "refused";
  }
  return type === "ARC" ? { kind: "arc", layer, x, y, radius, start, end } : { kind: "circle", layer, x, y, radius };
}

function polylineOf(fields: Fields, at: readonly [number, number], findings: FindingList): DxfEntity {
  const { layer, points, count, flags, hasWidth } = fields;
  if (!Number.isNaN(count) && count !== points.length) {
    findings.add("vertex-count", "stop", `LWPOLYLINE says ${count} vertices and has ${points.length}`, at);
  }
  if (hasWidth) findings.add("width", "advise", "LWPOLYLINE has a width; it is read as its centre line", at);
  return { kind: "polyline", layer, closed: flags % 2 === 1, vertices: points };
}

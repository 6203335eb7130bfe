/** The entities of a cut file, read from their tags by the published DXF reference. Coordinates in the file's unit, y up. */
import type { FindingList } from "./dxf-findings.js";
import { readNumber, type TagRange, type Tags } from "./dxf-tags.js";

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
  const type = tags.values[range.first] ?? "";
  switch (type) {
    case "LINE":
    case "ARC":
    case "CIRCLE":
      return readSimple(type, collectFields(tags, range, type, findings), findings);
    case "LWPOLYLINE":
      return readPolyline(tags, range, findings);
    default:
      findings.add("unread-entity", "stop", `entities of type ${type} are not read`);
      return null;
  }
}

/** Common fields of an entity, and its numbers by group code. */
interface Fields {
  layer: string;
  /** False where the entity is not in the plane of the cut, or not in the model: a finding was made. */
  readable: boolean;
  readonly numbers: Map<number, number>;
}

/** Group codes whose numbers are looked at; others (handles, names, colours, extended data) are passed over. */
const NUMBER_CODES = new Set([10, 11, 20, 21, 30, 31, 38, 39, 40, 41, 42, 43, 50, 51, 60, 67, 70, 90, 210, 220, 230]);

function collectFields({ codes, values }: Tags, range: TagRange, type: string, findings: FindingList): Fields {
  const fields: Fields = { layer: "0", readable: true, numbers: new Map() };
  for (let index = range.first + 1; index < range.end; index++) {
    const code = codes[index] ?? 0;
    if (code >= 1000) break;
    if (code === 8) fields.layer = values[index] ?? "";
    else if (NUMBER_CODES.has(code)) {
      const number = readNumber(values[index] ?? "", findings);
      if (number === null) {
        findings.add("bad-number", "stop", `${type} with a value that is no number (group ${code}) is not read`);
        fields.readable = false;
      } else fields.numbers.set(code, number);
    }
  }
  reportOutOfPlane(fields, type, findings);
  return fields;
}

/** A cut file is flat: what stands off the plane, or is hidden, is told. */
function reportOutOfPlane(fields: Fields, type: string, findings: FindingList): void {
  const value = (code: number, absent: number) => fields.numbers.get(code) ?? absent;
  if (value(67, 0) !== 0) {
    findings.add("paper-space", "advise", `${type} in paper space is not read`);
    fields.readable = false;
  }
  if (value(210, 0) !== 0 || value(220, 0) !== 0 || value(230, 1) !== 1) {
    findings.add("extrusion", "stop", `${type} with an extrusion direction other than +z is not read`);
    fields.readable = false;
  }
  if (value(60, 0) !== 0) findings.add("invisible", "advise", `${type} is marked invisible`);
  if (value(30, 0) !== 0 || value(31, 0) !== 0 || value(38, 0) !== 0) {
    findings.add("elevation", "advise", `${type} does not lie at height zero; it is read as if it did`);
  }
  if (value(39, 0) !== 0) findings.add("thickness", "advise", `${type} has a thickness; it is read as a line`);
}

function readSimple(type: "LINE" | "ARC" | "CIRCLE", fields: Fields, findings: FindingList): DxfEntity | null {
  if (!fields.readable) return null;
  const { layer, numbers } = fields;
  const wanted = { LINE: [10, 20, 11, 21], ARC: [10, 20, 40, 50, 51], CIRCLE: [10, 20, 40] }[type];
  const [x = 0, y = 0, third = 0, fourth = 0, fifth = 0] = wanted.map((code) => numbers.get(code));
  if (wanted.some((code) => !numbers.has(code))) {
    findings.add("incomplete", "stop", `${type} without all its values is not read`);
    return null;
  }
  if (type === "LINE") return { kind: "line", layer, from: { x, y, bulge: 0 }, to: { x: third, y: fourth, bulge: 0 } };
  if (third <= 0) {
    findings.add("bad-radius", "stop", `${type} with a radius of zero or less is not read`, [x, y]);
    return null;
  }
  if (type === "ARC") return { kind: "arc", layer, x, y, radius: third, start: fourth, end: fifth };
  return { kind: "circle", layer, x, y, radius: third };
}

function readPolyline(tags: Tags, range: TagRange, findings: FindingList): DxfEntity | null {
  const fields = collectFields(tags, range, "LWPOLYLINE", findings);
  if (!fields.readable) return null;
  const vertices = collectVertices(tags, range);
  const { numbers, layer } = fields;
  if (vertices.length < 2 || vertices.some(({ x, y }) => Number.isNaN(x) || Number.isNaN(y))) {
    findings.add("incomplete", "stop", "LWPOLYLINE without all its vertices is not read");
    return null;
  }
  const said = numbers.get(90);
  const first: readonly [number, number] = [vertices[0]?.x ?? 0, vertices[0]?.y ?? 0];
  if (said !== undefined && said !== vertices.length) {
    findings.add("vertex-count", "stop", `LWPOLYLINE says ${said} vertices and has ${vertices.length}`, first);
  }
  if ([40, 41, 43].some((code) => (numbers.get(code) ?? 0) !== 0)) {
    findings.add("width", "advise", "LWPOLYLINE has a width; it is read as its centre line", first);
  }
  return { kind: "polyline", layer, closed: (numbers.get(70) ?? 0) % 2 === 1, vertices };
}

/** Every 10 starts a vertex; 20 and 42 belong to the vertex before them. The values are known to be numbers. */
function collectVertices({ codes, values }: Tags, range: TagRange): readonly DxfVertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  let current = { x: Number.NaN, y: Number.NaN, bulge: 0 };
  for (let index = range.first + 1; index < range.end; index++) {
    const code = codes[index] ?? 0;
    if (code >= 1000) break;
    if (code === 10) {
      current = { x: Number(values[index]), y: Number.NaN, bulge: 0 };
      vertices.push(current);
    } else if (code === 20) current.y = Number(values[index]);
    else if (code === 42) current.bulge = Number(values[index]);
  }
  return vertices;
}

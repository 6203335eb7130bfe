/** POLYLINE with its VERTEX entities, as files before R2000 draw contours (published DXF reference). */

import type { FindingList } from "./dxf-findings.js";
import type { DxfEntity, DxfVertex } from "./dxf-model.js";
import { MIRROR_X, moveEntity } from "./dxf-moves.js";
import { type EntityValues, facingOf } from "./dxf-values.js";

/** Flags of a POLYLINE (group 70). */
const [CLOSED, IN_SPACE, MESH, FACES] = [1, 8, 16, 64];
/** Flag of a VERTEX that only controls a fitted curve. */
const CONTROL_POINT = 16;

/** The contour of a POLYLINE and the vertices that follow it; null, with a finding, where it is none. */
export function readPolyline(
  head: EntityValues,
  vertices: readonly EntityValues[],
  findings: FindingList,
): DxfEntity | null {
  const flags = head.first(70) ?? 0;
  if ((flags & (MESH | FACES)) !== 0) {
    findings.add("unread-entity", "stop", "POLYLINE that is a mesh is not read");
    return null;
  }
  const points = vertices.filter((vertex) => ((vertex.first(70) ?? 0) & CONTROL_POINT) === 0).map(vertexOf);
  if (points.length < 2 || points.some(({ x, y }) => Number.isNaN(x + y))) {
    findings.add("incomplete", "stop", "POLYLINE without all its values is not read");
    return null;
  }
  const isWide = [head, ...vertices].some((each) => (each.first(40) ?? 0) !== 0 || (each.first(41) ?? 0) !== 0);
  const at = [points[0]?.x ?? 0, points[0]?.y ?? 0] as const;
  if (isWide) findings.add("width", "advise", "POLYLINE has a width; it is read as its centre line", at);
  const isSpatial = (flags & IN_SPACE) !== 0;
  const bulged = isSpatial ? points.map((point) => ({ ...point, bulge: 0 })) : points;
  const entity: DxfEntity = {
    kind: "polyline",
    layer: head.layer,
    closed: (flags & CLOSED) !== 0,
    vertices: bulged,
  };
  const side = isSpatial ? "up" : facingOf(head, findings);
  if (side === null) return null;
  return side === "up" ? entity : moveEntity(entity, MIRROR_X);
}

function vertexOf(values: EntityValues): DxfVertex {
  const [x, y] = [values.first(10) ?? Number.NaN, values.first(20) ?? Number.NaN];
  return { x, y, bulge: values.first(42) ?? 0 };
}

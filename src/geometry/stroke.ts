/** Segments against boxes: for scribed and painted marks. */

import { leastOf } from "../units/extremes.js";
import { nearestBetweenSegments } from "./distance.js";
import { gapBetweenExtents, gapToExtent } from "./extent.js";
import { line, segmentExtent } from "./segment.js";
import type { Extent, Segment } from "./vocabulary.js";

/**
 * Gap between a box and a segment in millimetres, 0 where the segment enters the box. Exact for lines; for an arc the gap
 * to the box around it where that is positive, else the true distance.
 */
export function gapFromExtentToSegment(box: Extent, segment: Segment): number {
  const rough = gapBetweenExtents(box, segmentExtent(segment));
  const parallel = segment.from.x === segment.to.x || segment.from.y === segment.to.y;
  if (rough > 0 && (segment.bulge !== 0 || parallel)) return rough;
  if (gapToExtent(segment.from, box) === 0) return 0;
  return leastOf(sides(box).map((side) => nearestBetweenSegments(side, segment).distance));
}

function sides({ x0, y0, x1, y1 }: Extent): readonly Segment[] {
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  return corners.map((from, i) => line(from, corners[(i + 1) % 4] ?? from));
}

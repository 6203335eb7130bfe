/** What makes a path unfit to be cut. */
import { crossings } from "./crossing.js";
import { gapBetweenExtents } from "./extent.js";
import { signedArea } from "./measure.js";
import { millimetresBetween, point, samePoint } from "./point.js";
import { segmentExtent } from "./segment.js";
import type { Path, Point, Segment } from "./vocabulary.js";

/** `open`: a joint is not one point; `repeated`: a point twice; `crossing`: the path meets itself; `empty`: no area. */
export interface PathFault {
  readonly kind: "open" | "repeated" | "crossing" | "empty";
  readonly at: Point;
}

/** Everything that is wrong with a path; none for a closed, simple, counter-clockwise or clockwise one. */
export function pathFaults(path: Path): readonly PathFault[] {
  const { segments } = path;
  const origin = segments[0]?.from ?? { x: 0, y: 0 };
  const joints = jointFaults(segments);
  if (joints.length > 0) return joints;
  if (segments.length < 2) return [{ kind: "empty", at: origin }];
  const crossed = crossingFaults(segments);
  if (crossed.length > 0) return crossed;
  return Math.abs(signedArea(path)) < 1e-6 ? [{ kind: "empty", at: origin }] : [];
}

function jointFaults(segments: readonly Segment[]): readonly PathFault[] {
  const faults: PathFault[] = [];
  const seen = new Set<string>();
  segments.forEach((segment, i) => {
    const next = segments[(i + 1) % segments.length] ?? segment;
    if (!samePoint(segment.to, next.from)) faults.push({ kind: "open", at: segment.to });
    const key = `${segment.from.x} ${segment.from.y}`;
    if (seen.has(key) || samePoint(segment.from, segment.to)) faults.push({ kind: "repeated", at: segment.from });
    seen.add(key);
  });
  return faults;
}

function crossingFaults(segments: readonly Segment[]): readonly PathFault[] {
  const boxed = segments.map((segment) => ({ segment, box: segmentExtent(segment) }));
  return boxed.flatMap((a, i) =>
    boxed.slice(i + 1).flatMap((b) => {
      if (gapBetweenExtents(a.box, b.box) > 0) return [];
      return crossings(a.segment, b.segment)
        .filter((at) => !isJoint(a.segment, b.segment, at))
        .map((at): PathFault => ({ kind: "crossing", at: point(at.x, at.y) }));
    }),
  );
}

/** Two neighbours share their joint, and meet again within this distance of it only by rounding: 10 nm. */
const AT_JOINT = 1e-5;

function isJoint(a: Segment, b: Segment, at: Point): boolean {
  const joints = [...(samePoint(a.to, b.from) ? [a.to] : []), ...(samePoint(b.to, a.from) ? [a.from] : [])];
  return joints.some((joint) => millimetresBetween(joint, at) < AT_JOINT);
}

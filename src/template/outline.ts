/** The outer contour of a plate: as the job gives it, or sized automatically. Holes are none of its business. */
import type { Finding } from "../diagnostics/finding.js";
import type { CornerTreatment, Path, Point } from "../geometry/index.js";
import {
  circle,
  cornerFaults,
  pathFaults,
  pointAt,
  polygon,
  rectanglePoints,
  signedPolygonArea,
  toLattice,
} from "../geometry/index.js";
import type { Base, Job, OutlineSpec } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { formatLength, formatWithUnit } from "../units/index.js";
import { sizeOutline } from "./auto-outline.js";
import { templateError } from "./finding.js";
import type { Outline } from "./outline-model.js";

/** The outline of a base's template, or why it cannot be. */
export function makeOutline(job: Job, base: Base, rods: readonly PlacedRod[]): Outline | readonly Finding[] {
  const spec = base.template.outline;
  switch (spec.kind) {
    case "auto":
      return sizeOutline(job, base, rods, spec.corner);
    case "rectangle":
      return cornered(job, base, rectanglePoints(pointAt(spec.at.x, spec.at.y), spec.x, spec.y), spec.corner);
    case "circle":
      return { contour: circle(pointAt(spec.at.x, spec.at.y), spec.diameter), vertices: [], sized: null };
    case "ring":
      return ringOutline(base, spec);
    case "polygon":
      return cornered(job, base, fromLowestCorner(spec.at.map(({ x, y }) => pointAt(x, y))), spec.corner);
  }
}

/** Jobs that were read have no ring inside out. */
function ringOutline({ mark }: Base, { at, outer, inner }: OutlineSpec & { kind: "ring" }): Outline {
  if (inner >= outer) throw new Error(`base ${mark}: the ring's inner diameter is not smaller than its outer`);
  return { contour: circle(pointAt(at.x, at.y), outer), vertices: [], sized: null };
}

function cornered(
  job: Job,
  base: Base,
  points: readonly Point[],
  corner: CornerTreatment,
): Outline | readonly Finding[] {
  const bare = polygon(points);
  const findings = [...shapeFindings(job, base, bare), ...cornerFindings(job, base, points, corner)];
  if (findings.length > 0) return findings;
  const contour = polygon(points, corner);
  const treated = shapeFindings(job, base, contour);
  if (treated.length > 0) return treated;
  return { contour, vertices: points.map((at) => ({ at, corner })), sized: null };
}

/** Counter-clockwise from the lowest corner, of several the leftmost, as a rectangle: one outline however it is written. */
function fromLowestCorner(points: readonly Point[]): readonly Point[] {
  const around = signedPolygonArea(points) < 0 ? [...points].reverse() : points;
  const [lowest] = [...around.entries()].sort(([, a], [, b]) => a.y - b.y || a.x - b.x);
  const first = lowest?.[0] ?? 0;
  return [...around.slice(first), ...around.slice(0, first)];
}

function shapeFindings(job: Job, base: Base, contour: Path): readonly Finding[] {
  const words = {
    open: "is not closed",
    repeated: "passes twice through",
    crossing: "crosses or touches itself",
    empty: "encloses nothing",
  };
  return pathFaults(contour).map(({ kind, at }) => {
    const where = `(${formatLength(toLattice(at.x), job.unit)}, ${formatLength(toLattice(at.y), job.unit)}) ${job.unit}`;
    return templateError(base, "outline", `outline-${kind}`, `the outline ${words[kind]} at ${where}`);
  });
}

function cornerFindings(job: Job, base: Base, points: readonly Point[], corner: CornerTreatment): readonly Finding[] {
  return cornerFaults(points, corner).map(({ has, needs }) => {
    const [side, take] = [formatWithUnit(has, job.unit), formatWithUnit(needs, job.unit)];
    const message = `the corners take ${take} of a side that is ${side} long`;
    return templateError(base, "outline.corner", "corner-too-large", message);
  });
}

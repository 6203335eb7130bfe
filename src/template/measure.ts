/** Figures of a plate. */
import { extentOf, measureArea, measurePerimeter, regionArea } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { MarkingShop } from "../job/model/job.js";
import type { Plate, PlateMeasures } from "./model.js";

/** Extent, areas, cut length and pierces of a plate: its closed cut contours, never its marks or drilled holes. */
export function measurePlate({ region }: Pick<Plate, "region">): PlateMeasures {
  const contours = [region.outer, ...region.inner];
  return {
    extent: extentOf(region.outer),
    outlineArea: measureArea(region.outer),
    outlinePerimeter: measurePerimeter(region.outer),
    netArea: regionArea(region),
    cutLength: contours.reduce((sum, contour) => sum + measurePerimeter(contour), 0),
    pierces: contours.length,
  };
}

/** Millimetres of all strokes that a cut file draws: punch marks, and what is scribed; none on a board, which is painted. */
export function scribedLength({ marks, material }: Pick<Plate, "marks" | "material">, how: MarkingShop["how"]): number {
  if (material === "plywood") return 0;
  const drawn = marks.filter(({ kind }) => kind === "punch" || how === "scribe");
  return drawn.reduce((sum, { strokes }) => strokes.reduce((all, points) => all + strokeLength(points), sum), 0);
}

function strokeLength(points: readonly Point[]): number {
  return points.slice(1).reduce((along, to, i) => {
    const from = points[i] ?? to;
    return along + Math.hypot(to.x - from.x, to.y - from.y);
  }, 0);
}

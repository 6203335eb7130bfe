/** Figures of a plate. */
import { extentOf, measureArea, measurePerimeter, regionArea } from "../geometry/index.js";
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

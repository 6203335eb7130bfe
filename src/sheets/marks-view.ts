/** MARKS ON TOP FACE: what is scribed on a plate, as a view of its own. */

import { group, stroke } from "./items.js";
import { contourParts } from "./plan-shapes.js";
import type { Prepared } from "./request.js";
import type { Lettering } from "./sheet-sizes.js";
import type { SideView, ViewSize } from "./side-view.js";

/** The view of what is scribed; null where nothing is. */
export function marksView({ plate, measures }: Prepared, lettering: Lettering): SideView | null {
  const { extent } = measures;
  const [w, h] = [extent.x1 - extent.x0, extent.y1 - extent.y0];
  const scaleOf = (size: ViewSize) => Math.min(size.width / w, size.height / h);
  const longest = [40, 30, 22].map((letters) => letters * lettering.small);
  return {
    name: "marks-view",
    title: "MARKS ON TOP FACE",
    under: () => "NOT TO SCALE",
    sizes: longest.map((side) => ({ width: Math.min(side, (side / h) * w), height: Math.min(side, (side / w) * h) })),
    draw: (area, size) => {
      const scale = scaleOf(size);
      const origin = {
        x: (area.x0 + area.x1) / 2 - ((extent.x0 + extent.x1) / 2) * scale,
        y: (area.y0 + area.y1) / 2 - ((extent.y0 + extent.y1) / 2) * scale,
      };
      return [
        group("marks-view", [stroke("outline", ...contourParts({ origin, scale }, plate.region.outer))], { scale }),
      ];
    },
  };
}

/** One plan sheet while it is drawn: its part of the plan, where that stands on paper, and what the sheet is called by others. */
import type { Point } from "../../geometry/index.js";
import { at } from "../items.js";
import type { Area } from "../paper.js";
import type { View } from "../plan-shapes.js";
import { onPaper } from "../plan-shapes.js";
import type { PaperPoint } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import type { PlanRequest } from "./request.js";
import type { Arrangement, Tile } from "./tiles.js";

/** One sheet of a plan and what is drawn on it. */
export interface PlanPage {
  readonly request: PlanRequest;
  readonly arrangement: Arrangement;
  readonly tile: Tile;
  readonly view: View;
  readonly lettering: Lettering;
  /** The tile's window on paper. */
  readonly window: Area;
}

/** Centred in the area, a little above the middle; the window and what stands beside it keep inside. */
export function pageOf(request: PlanRequest, arrangement: Arrangement, tile: Tile, area: Area): PlanPage {
  const { scale, sheet, margins } = arrangement;
  const { window } = tile;
  const [w, h] = [(window.x1 - window.x0) * scale.factor, (window.y1 - window.y0) * scale.factor];
  const x0 = area.x0 + margins.left + Math.max(0, area.x1 - area.x0 - margins.left - margins.right - w) / 2;
  const y1 = area.y1 - margins.top - Math.max(0, area.y1 - area.y0 - margins.top - margins.bottom - h) / 2;
  const view = {
    scale: scale.factor,
    origin: at(x0 - window.x0 * scale.factor, y1 - window.y1 * scale.factor),
  };
  const { lettering } = sheet;
  return { request, arrangement, tile, view, lettering, window: { x0, y0: y1 - h, x1: x0 + w, y1 } };
}

/** A point of the plan on this sheet's paper. */
export function paperOf(page: PlanPage, point: Point): PaperPoint {
  return onPaper(page.view, point);
}

/** The drawing area of one plan sheet: its part of the plan with grid, dimensions, bases and their labels. */
import { banners } from "../banner.js";
import { at, group, text } from "../items.js";
import { footPiece } from "../legend.js";
import { type Area, put, startDraft, withGaps } from "../paper.js";
import type { SceneItem } from "../scene.js";
import { scaleWords } from "../title-block.js";
import { putControlPoints } from "./control-marks.js";
import { graphicScale } from "./graphic-scale.js";
import { putGrid } from "./grid-view.js";
import { putLabels, type Unlabelled } from "./labels.js";
import { putMatchLines, putMatchWords } from "./match-lines.js";
import { type PlanPage, pageOf } from "./page.js";
import type { PlanRequest } from "./request.js";
import { putSymbols } from "./symbols.js";
import type { Arrangement, Tile } from "./tiles.js";

/** What one sheet shows of the plan. */
export interface DrawnWindow {
  readonly page: PlanPage;
  readonly items: readonly SceneItem[];
  readonly unlabelled: Unlabelled;
  /** Some control point is drawn. */
  readonly hasControl: boolean;
  /** Every spacing of the grid found room. */
  readonly hasSpacings: boolean;
}

/** Banner at the head, plan, title and scale bar at the foot. `sheetOf`: the sheet of each tile. */
export function drawWindow(
  request: PlanRequest,
  arrangement: Arrangement,
  tile: Tile,
  area: Area,
  sheetOf: ReadonlyMap<string, number>,
): DrawnWindow {
  const { lettering } = arrangement.sheet;
  const draft = startDraft(area);
  let top = area.y1;
  for (const piece of banners({ job: request.job, held: [] }, area.x1 - area.x0, lettering)) {
    put(draft, piece.draw(area.x0, top));
    top -= piece.height;
  }
  const bar = footPiece(area.x1 - area.x0, [], [], request.job.unit, lettering);
  put(draft, bar.draw(area.x0, area.y0 + bar.height));
  put(draft, graphicScale(area.x1, area.y0 + 1, arrangement.scale, request.job.unit, lettering));
  const page = pageOf(request, arrangement, tile, { ...area, y1: top });
  putViewTitle(draft, page, area);
  const plan = { ...draft, items: [] as SceneItem[] };
  putMatchLines(plan, page, sheetOf);
  putSymbols(plan, page);
  const hasSpacings = putGrid(plan, page);
  putMatchWords(plan, page, sheetOf);
  const hasControl = putControlPoints(plan, page);
  const unlabelled = putLabels(plan, page);
  const data = { scale: page.view.scale, x0: page.view.origin.x, y0: page.view.origin.y };
  return {
    page,
    items: [...draft.items, group("anchor-rod-plan", withGaps(plan.items, plan.gaps), data)],
    unlabelled,
    hasControl,
    hasSpacings,
  };
}

function putViewTitle(draft: Parameters<typeof put>[0], page: PlanPage, area: Area): void {
  const { body, small } = page.lettering;
  const x = (area.x0 + area.x1) / 2;
  const y = Math.max(area.y0 + 12, page.window.y0 - 22);
  const words = "ANCHOR-ROD PLAN: VIEW FROM ABOVE";
  put(draft, text("heading", words, at(x, y), body, { anchor: "middle", bold: true }));
  const under = `SCALE ${scaleWords(page.arrangement.scale)}`;
  put(draft, text("label", under, at(x, y - small - 1.6), small, { anchor: "middle" }));
}

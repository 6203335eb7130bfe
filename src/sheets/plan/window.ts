/** The drawing area of one plan sheet: its part of the plan with grid, dimensions, bases and their labels. */
import { at, group, text } from "../items.js";
import { legendBlock } from "../legend.js";
import { type Area, type Draft, put, startDraft, withGaps } from "../paper.js";
import type { SceneItem } from "../scene.js";
import { scaleWords } from "../title-block.js";
import { graphicScale } from "./graphic-scale.js";
import { putGrid, putSquareSpacings } from "./grid-view.js";
import { putLabels, type Unlabelled } from "./labels.js";
import { drawingArea, VIEW_TITLE } from "./layout.js";
import { putMatchLines, putMatchWords } from "./match-lines.js";
import { type PlanPage, pageOf } from "./page.js";
import type { PointsOfTiles } from "./plan-points.js";
import { putPoints } from "./point-marks.js";
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
  /** Control points of this sheet that found no place. */
  readonly unplaced: readonly string[];
  /** Every spacing of the grid found room. */
  readonly hasSpacings: boolean;
}

/** Plan and title in their area, the bars of scale at the foot of the sheet. */
export function drawWindow(
  request: PlanRequest,
  arrangement: Arrangement,
  tile: Tile,
  area: Area,
  points: PointsOfTiles,
): DrawnWindow {
  const page = pageOf(request, arrangement, tile, area);
  const draft = startDraft(area);
  putViewTitle(draft, page);
  const plan = { ...draft, items: [] as SceneItem[] };
  putMatchLines(plan, page);
  putSymbols(plan, page);
  const own = points.of(tile);
  const hasSpacings = putGrid(plan, page);
  putMatchWords(plan, page);
  const unplaced = putPoints(plan, page, own);
  const unlabelled = putLabels(plan, page);
  putSquareSpacings(plan, page);
  const data = { scale: page.view.scale, x0: page.view.origin.x, y0: page.view.origin.y };
  return {
    page,
    items: [
      ...bars(request, arrangement),
      ...draft.items,
      group("anchor-rod-plan", withGaps(plan.items, plan.gaps), data),
    ],
    unlabelled,
    hasControl: own.some(({ kind }) => kind === "control"),
    unplaced: [...unplaced, ...(tile === arrangement.tiles[0] ? points.untied : [])],
    hasSpacings,
  };
}

function bars(request: PlanRequest, { sheet, scale }: Arrangement): readonly SceneItem[] {
  const area = drawingArea(request, sheet);
  const { unit } = request.job;
  const bar = legendBlock([], [], unit, sheet.lettering);
  return [bar.draw(area.x0, area.y0 + bar.height), graphicScale(area.x1, area.y0 + 1, scale, unit, sheet.lettering)];
}

function putViewTitle(draft: Draft, { window, lettering, arrangement }: PlanPage): void {
  const { body, small } = lettering;
  const x = (window.x0 + window.x1) / 2;
  const y = window.y0 - arrangement.margins.bottom + 2 * small + 4;
  put(draft, text("heading", VIEW_TITLE, at(x, y), body, { anchor: "middle", bold: true }));
  const under = `SCALE ${scaleWords(arrangement.scale)}`;
  put(draft, text("label", under, at(x, y - small - 1.6), small, { anchor: "middle" }));
}

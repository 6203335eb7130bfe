/** The layout on a screen: the whole plan in the room that it is given, with the places of what on it can be reached. */

import { type TextItem, textBox } from "../occupied.js";
import { LETTERS, type Room } from "../on-screen.js";
import { startDraft, withGaps } from "../paper.js";
import type { PaperPoint, SceneItem } from "../scene.js";
import type { SheetSize } from "../sheet-sizes.js";
import { figureOf } from "./figures.js";
import { putGrid, putSquareSpacings } from "./grid-view.js";
import { putLabels, type Unlabelled } from "./labels.js";
import { type PlanPage, pageOf, paperOf } from "./page.js";
import { pointsOfTiles } from "./plan-points.js";
import { putPoints } from "./point-marks.js";
import type { PlanRequest } from "./request.js";
import { putSymbols, symbolReach } from "./symbols.js";
import { type Arrangement, arrangeWhole } from "./tiles.js";

/** A box on the paper, y up. */
export interface ScreenBox {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A figure of the grid that can be reached: the name of a line in its bubble, or the distance from a line to another. */
export type GridSpot =
  | { readonly kind: "name"; readonly line: string; readonly box: ScreenBox }
  | {
      readonly kind: "distance";
      readonly from: string;
      readonly to: string;
      readonly words: string;
      readonly box: ScreenBox;
    };

/** The layout as it stands in its room. `places`: of the bases in the plan's order, their middle and their reach. */
export interface ScreenLayout extends Room {
  readonly items: readonly SceneItem[];
  readonly spots: readonly GridSpot[];
  readonly places: readonly { readonly at: PaperPoint; readonly reach: number }[];
  readonly unlabelled: Unlabelled;
  /** Control points that found no place. */
  readonly unplaced: readonly string[];
}

/** Draws the whole plan at the scale that fills the room. */
export function drawLayout(request: PlanRequest, room: Room): ScreenLayout {
  const area = { x0: 0, y0: 0, x1: room.width, y1: room.height };
  const arrangement = arrangedIn(request, room);
  const [tile] = arrangement.tiles;
  if (tile === undefined) throw new RangeError("a plan without a part");
  const page = pageOf(request, arrangement, tile, area);
  const draft = startDraft(area);
  putSymbols(draft, page);
  putGrid(draft, page);
  const points = pointsOfTiles(request, arrangement);
  const unplaced = [...putPoints(draft, page, points.of(tile)), ...points.untied];
  const unlabelled = putLabels(draft, page);
  putSquareSpacings(draft, page);
  const items = withGaps(draft.items, draft.gaps);
  return { ...room, items, spots: items.flatMap(spotsIn), places: placesOf(page), unlabelled, unplaced };
}

const ROUNDS = 5;

/** Margins and pads follow from the scale, and the scale from them: they agree after a few rounds. */
function arrangedIn(request: PlanRequest, room: Room): Arrangement {
  const sheet: SheetSize = { name: "screen", ...room, panel: 0, lettering: LETTERS };
  const figures = request.plan.bases.map(figureOf);
  let factor = 0.002;
  let arrangement = arrangeWhole(request, figures, sheet, { name: "", factor });
  for (let round = 0; round < ROUNDS; round += 1) {
    factor = largest(arrangement, room);
    arrangement = arrangeWhole(request, figures, sheet, { name: "", factor });
  }
  return arrangement;
}

/** A room that is all margin has a drawing nonetheless. */
const LEAST = 1e-6;

function largest({ tiles, margins }: Arrangement, room: Room): number {
  const { x0, y0, x1, y1 } = tiles[0]?.window ?? { x0: 0, y0: 0, x1: 1, y1: 1 };
  const wide = (room.width - margins.left - margins.right) / (x1 - x0);
  const high = (room.height - margins.top - margins.bottom) / (y1 - y0);
  return Math.max(LEAST, Math.min(wide, high));
}

function placesOf(page: PlanPage): ScreenLayout["places"] {
  return page.tile.figures.map((figure) => ({
    at: paperOf(page, figure.placed.workingPoint),
    reach: symbolReach(page, figure),
  }));
}

function spotsIn(item: SceneItem): readonly GridSpot[] {
  if (item.kind !== "group") return [];
  const { name, data } = item;
  const words = firstText(item.items);
  if (words === null) return [];
  const box = boxOf(words);
  if (name === "grid-bubble") return [{ kind: "name", line: String(data.name), box }];
  if (name !== "line-location" || data.along === "square") return [];
  return [{ kind: "distance", from: String(data.from), to: String(data.to), words: words.text, box }];
}

function firstText(items: readonly SceneItem[]): TextItem | null {
  for (const item of items) {
    if (item.kind === "text") return item;
    const inner = item.kind === "group" ? firstText(item.items) : null;
    if (inner !== null) return inner;
  }
  return null;
}

function boxOf(words: TextItem): ScreenBox {
  const corners = textBox(words, 1);
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

export type { Room };

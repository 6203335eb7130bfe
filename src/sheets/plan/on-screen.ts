/** The layout on a screen: the whole plan in the room that it is given, with the places of what on it can be reached. */
import type { Extent } from "../../geometry/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { toMillimetres } from "../../units/index.js";
import { type TextItem, textBox } from "../occupied.js";
import { LETTERS, type Room } from "../on-screen.js";
import { startDraft, withGaps } from "../paper.js";
import type { PaperPoint, SceneItem } from "../scene.js";
import type { SheetSize } from "../sheet-sizes.js";
import { readableFactor } from "./choose-layout.js";
import { figureOf } from "./figures.js";
import { putGrid, putSquareSpacings } from "./grid-view.js";
import { putLabels, type Unlabelled } from "./labels.js";
import { bubbleRadius } from "./margins.js";
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

/** The layout as it stands on its paper. `places`: of the bases in the plan's order, their middle and their reach. */
export interface ScreenLayout extends Room {
  /** The paper is so many times the room, both ways. */
  readonly times: number;
  /** Where plan 0,0 is on the paper, and paper millimetres to a millimetre of the plan. */
  readonly origin: PaperPoint;
  readonly scale: number;
  /** What the paper has of the plan, with what stands around it. */
  readonly box: ScreenBox;
  readonly items: readonly SceneItem[];
  readonly spots: readonly GridSpot[];
  readonly places: readonly { readonly at: PaperPoint; readonly reach: number }[];
  readonly unlabelled: Unlabelled;
  /** Control points that found no place. */
  readonly unplaced: readonly string[];
}

/** How large it is drawn: so that it fills so many times the room, or as large as its letters can be read beside most bases. */
export type Zoom = number | "readable";

/** Draws the whole plan. The paper has the form of the room; it is larger than asked where the letters want more than that. */
export function drawLayout(request: PlanRequest, room: Room, zoom: Zoom): ScreenLayout {
  const { arrangement, paper, times } = arrangedIn(request, room, zoom);
  const [tile] = arrangement.tiles;
  if (tile === undefined) throw new RangeError("a plan without a part");
  const page = pageOf(request, arrangement, tile, { x0: 0, y0: 0, x1: paper.width, y1: paper.height });
  const draft = startDraft({ x0: 0, y0: 0, x1: paper.width, y1: paper.height });
  putSymbols(draft, page);
  putGrid(draft, page);
  const points = pointsOfTiles(request, arrangement);
  const unplaced = [...putPoints(draft, page, points.of(tile)), ...points.untied];
  const unlabelled = putLabels(draft, page);
  putSquareSpacings(draft, page);
  const items = withGaps(draft.items, draft.gaps);
  const { origin, scale } = page.view;
  const places = placesOf(page);
  const spots = inReadingOrder(items.flatMap(spotsIn));
  const box = boxAbout(page);
  return { ...paper, times, origin, scale, box, items, spots, places, unlabelled, unplaced };
}

function boxAbout({ window: { x0, y0, x1, y1 }, arrangement: { margins } }: PlanPage): ScreenBox {
  const { left, right, top, bottom } = margins;
  return { x0: x0 - left, y0: y0 - bottom, x1: x1 + right, y1: y1 + top };
}

const ROUNDS = 5;
/** The most times the room that a plan is drawn at because its letters ask for it. */
const MOST_TIMES = 12;

function arrangedIn(request: PlanRequest, room: Room, zoom: Zoom) {
  const figures = request.plan.bases.map(figureOf);
  const sheet: SheetSize = { name: "screen", ...room, panel: 0, lettering: LETTERS };
  const arranged = (factor: number) => arrangeWhole(request, figures, sheet, { name: "", factor });
  const readable = Math.max(readableFactor(request, figures, LETTERS.small), bubblesFactor(request));
  const asked = zoom === "readable" ? Math.min(MOST_TIMES, Math.max(1, timesOf(arranged(readable), room))) : zoom;
  const arrangement = arranged(fittingFactor(arranged, { width: room.width * asked, height: room.height * asked }));
  const times = Math.max(asked, timesOf(arrangement, room));
  return { arrangement, times, paper: { width: room.width * times, height: room.height * times } };
}

/** The scale at which the plan fills a room. Margins and pads follow from the scale, and the scale from them: they agree after a few rounds. */
function fittingFactor(arranged: (factor: number) => Arrangement, room: Room): number {
  const least = LEAST_PLAN / longestSide(windowOf(arranged(1).tiles));
  let factor = Math.max(least, 0.002);
  for (let round = 0; round < ROUNDS; round += 1) factor = Math.max(least, largest(arranged(factor), room));
  return factor;
}

/** Paper millimetres that the longer side of the plan has at least, however small the room is. */
const LEAST_PLAN = 90;

function longestSide({ x0, y0, x1, y1 }: Extent): number {
  return Math.max(1, x1 - x0, y1 - y0);
}

/** The least scale at which the bubbles of neighbouring lines, in two rows, stand clear of each other. */
function bubblesFactor({ plan: { spec } }: PlanRequest): number {
  const gaps = (["x", "y"] as const).flatMap((axis) => {
    const at = spec.lines
      .flatMap((line) => (line.kind === axis ? [toMillimetres(line.at)] : []))
      .toSorted((a, b) => a - b);
    return at.slice(1).map((value, i) => value - (at[i] ?? value));
  });
  const usual = gaps.toSorted((a, b) => a - b)[Math.floor(gaps.length / 4)];
  return usual === undefined || usual <= 0 ? 0 : (bubbleRadius("", LETTERS) * BUBBLES) / usual;
}

/** Between two lines, in radii of a bubble. */
const BUBBLES = 1.4;

function largest({ tiles, margins }: Arrangement, room: Room): number {
  const { x0, y0, x1, y1 } = windowOf(tiles);
  const wide = (room.width - margins.left - margins.right) / (x1 - x0);
  const high = (room.height - margins.top - margins.bottom) / (y1 - y0);
  return Math.min(wide, high);
}

function windowOf(tiles: Arrangement["tiles"]): Extent {
  return tiles[0]?.window ?? { x0: 0, y0: 0, x1: 1, y1: 1 };
}

/** So many times the room has room for the arrangement. */
function timesOf({ tiles, margins, scale }: Arrangement, room: Room): number {
  const { x0, y0, x1, y1 } = windowOf(tiles);
  const wide = (x1 - x0) * scale.factor + margins.left + margins.right;
  const high = (y1 - y0) * scale.factor + margins.top + margins.bottom;
  return Math.max(wide / room.width, high / room.height);
}

function placesOf(page: PlanPage): ScreenLayout["places"] {
  return page.tile.figures.map((figure) => ({
    at: paperOf(page, figure.placed.workingPoint),
    reach: symbolReach(page, figure),
  }));
}

/** From above, and from the left: as the keyboard goes through them. */
function inReadingOrder(spots: readonly GridSpot[]): readonly GridSpot[] {
  return spots.toSorted(({ box: a }, { box: b }) => b.y1 - a.y1 || a.x0 - b.x0);
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
  return { x0: leastOf(xs), y0: leastOf(ys), x1: greatestOf(xs), y1: greatestOf(ys) };
}

export type { Room };

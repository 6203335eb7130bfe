/** Words beside each base: mark and turn, and its distances from its grid lines where the working point is off them. */
import type { Extent } from "../../geometry/index.js";
import { group } from "../items.js";
import { type Draft, put } from "../paper.js";
import { turnText } from "./angles.js";
import { blockAbout, blockSize } from "./blocks.js";
import type { BaseFigure } from "./figures.js";
import { distanceText, locate } from "./location.js";
import { type PlanPage, paperOf } from "./page.js";
import type { PlanRequest } from "./request.js";
import { symbolReach } from "./symbols.js";

/** How many bases of a sheet could not be written beside, and how many without their distances. */
export interface Unlabelled {
  readonly marks: number;
  readonly distances: number;
}

/** Whole labels first, then marks alone. */
export function putLabels(draft: Draft, page: PlanPage): Unlabelled {
  let [marks, distances] = [0, 0];
  const usual = page.tile.figures.map((figure) => usualBox(page, figure));
  for (const [i, figure] of page.tile.figures.entries()) {
    const isClearOf = (box: Extent) => isOwnOf(usual, i, box, page.lettering.small);
    const lines = labelLines(page.request, figure);
    const [mark = "", ...figures] = lines;
    if (putLabel(draft, page, figure, lines, figures.length > 0 ? NEAR : FAR, isClearOf)) continue;
    if (figures.length > 0) {
      distances += 1;
      if (putLabel(draft, page, figure, [`${mark} ${SEE_TABLE}`], FAR, isClearOf)) continue;
    }
    marks += 1;
  }
  return { marks, distances };
}

/** Behind a mark whose distances found no room: without figures a base would be read as standing on both lines. */
export const SEE_TABLE = "*";

/** `B3  90°`, `2: 4-1/2" E`; from a line on which the working point stands no distance is written. */
export function labelLines({ job, held }: PlanRequest, { placed }: Pick<BaseFigure, "placed">): readonly string[] {
  const { turn, mark } = placed.placement;
  const words = `${mark}${held.has(mark) ? " HELD" : ""}`;
  return [
    turn === 0 ? words : `${words}  ${turnText(turn)}`,
    ...locate(placed)
      .filter(({ distance }) => distance !== 0)
      .map((each) => `${each.line.name}: ${distanceText(each, job.unit)}`),
  ];
}

/** Distances from the symbol at which a label is tried; a leader from the second one on. */
const NEAR = [0, 3.5, 9, 15, 22];
const FAR = [0, 3.5, 7, 11, 16, 22, 30];

function putLabel(
  draft: Draft,
  page: PlanPage,
  figure: BaseFigure,
  lines: readonly string[],
  distances: readonly number[],
  isClearOf: (box: Extent) => boolean,
): boolean {
  const { placed } = figure;
  const block = { lines, letter: page.lettering.small, boxed: page.request.held.has(placed.placement.mark) };
  const center = paperOf(page, placed.workingPoint);
  const items = blockAbout(draft, block, center, labelReach(page, figure), distances, { isClearOf });
  if (items === null) return false;
  put(draft, group("placement", items, { name: placed.name, mark: placed.placement.mark }));
  return true;
}

function labelReach(page: PlanPage, figure: BaseFigure): number {
  return symbolReach(page, figure) + 1.1;
}

/** Where the label of a base stands when nothing is in its way: at the upper right. */
function usualBox(page: PlanPage, figure: BaseFigure): Extent {
  const lines = labelLines(page.request, figure);
  const boxed = page.request.held.has(figure.placed.placement.mark);
  const { width, height } = blockSize({ lines, letter: page.lettering.small, boxed });
  const { x, y } = paperOf(page, figure.placed.workingPoint);
  const reach = labelReach(page, figure);
  return { x0: x + reach, y0: y + reach, x1: x + reach + width, y1: y + reach + height };
}

/** At its usual place, or not over or under the usual place of another label. */
function isOwnOf(usual: readonly Extent[], i: number, box: Extent, letter: number): boolean {
  const own = usual[i];
  if (own !== undefined && own.x0 === box.x0 && own.y0 === box.y0) return true;
  return !usual.some((other, k) => k !== i && areStacked(box, other, letter));
}

/** One stands over the other so close that both would be read as one label. */
function areStacked(a: Extent, b: Extent, letter: number): boolean {
  const gap = Math.max(a.y0 - b.y1, b.y0 - a.y1);
  return gap < letter && a.x0 < b.x1 && b.x0 < a.x1;
}

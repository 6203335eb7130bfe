/** Words beside each base: mark and turn, and its distances from its two grid lines. */
import { group } from "../items.js";
import { type Draft, put } from "../paper.js";
import { turnText } from "./angles.js";
import { blockAbout } from "./blocks.js";
import type { BaseFigure } from "./figures.js";
import { distanceText, locate } from "./location.js";
import { type PlanPage, paperOf } from "./page.js";
import { symbolReach } from "./symbols.js";

/** How many bases of a sheet could not be written beside, and how many without their distances. */
export interface Unlabelled {
  readonly marks: number;
  readonly distances: number;
}

/** Whole labels first, then marks alone. */
export function putLabels(draft: Draft, page: PlanPage): Unlabelled {
  let [marks, distances] = [0, 0];
  for (const figure of page.tile.figures) {
    const lines = labelLines(page, figure);
    if (putLabel(draft, page, figure, lines, NEAR)) continue;
    distances += 1;
    if (!putLabel(draft, page, figure, lines.slice(0, 1), FAR)) marks += 1;
  }
  return { marks, distances };
}

/** `B3  90°`, `A: 0`, `2: 4-1/2" E`. */
function labelLines(page: PlanPage, { placed }: BaseFigure): readonly string[] {
  const { unit } = page.request.job;
  const { turn } = placed.placement;
  const mark = `${placed.placement.mark}${isHeld(page, placed.placement.mark) ? " HELD" : ""}`;
  return [
    turn === 0 ? mark : `${mark}  ${turnText(turn)}`,
    ...locate(placed).map((each) => `${each.line.name}: ${distanceText(each, unit)}`),
  ];
}

function isHeld({ request }: PlanPage, mark: string): boolean {
  return request.held.has(mark);
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
): boolean {
  const { placed } = figure;
  const block = { lines, letter: page.lettering.small, boxed: isHeld(page, placed.placement.mark) };
  const center = paperOf(page, placed.workingPoint);
  const items = blockAbout(draft, block, center, symbolReach(page, figure) + 1.1, distances);
  if (items === null) return false;
  put(draft, group("placement", items, { name: placed.name, mark: placed.placement.mark }));
  return true;
}

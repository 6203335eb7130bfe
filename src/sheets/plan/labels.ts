/** Words beside each base: mark and turn, and its distances from its grid lines where the working point is off them. */
import { group } from "../items.js";
import { type Draft, put } from "../paper.js";
import { turnText } from "./angles.js";
import { blockAbout } from "./blocks.js";
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
  for (const figure of page.tile.figures) {
    const lines = labelLines(page.request, figure);
    const [mark = "", ...figures] = lines;
    if (putLabel(draft, page, figure, lines, figures.length > 0 ? NEAR : FAR)) continue;
    if (figures.length > 0) {
      distances += 1;
      if (putLabel(draft, page, figure, [`${mark} ${SEE_TABLE}`], FAR)) continue;
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
): boolean {
  const { placed } = figure;
  const block = { lines, letter: page.lettering.small, boxed: page.request.held.has(placed.placement.mark) };
  const center = paperOf(page, placed.workingPoint);
  const items = blockAbout(draft, block, center, symbolReach(page, figure) + 1.1, distances);
  if (items === null) return false;
  put(draft, group("placement", items, { name: placed.name, mark: placed.placement.mark }));
  return true;
}

/** Words beside each base: mark and turn, and its distances from its two grid lines. */

import { greatestOf } from "../../units/extremes.js";
import { formatDegrees } from "../../units/index.js";
import { at, group, line, stroke, text } from "../items.js";
import { crossesText } from "../occupied.js";
import { type Draft, hasRoom, interrupt, put } from "../paper.js";
import type { PaperPoint, SceneItem } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import type { BaseFigure } from "./figures.js";
import { distanceText, locate } from "./location.js";
import { type PlanPage, paperOf } from "./page.js";
import { symbolReach } from "./symbols.js";

/** How many bases of a sheet could not be written beside, and how many without their distances. */
export interface Unlabelled {
  readonly marks: number;
  readonly distances: number;
}

const LEADING = 1.5;

/** Whole labels first, then marks alone. */
export function putLabels(draft: Draft, page: PlanPage): Unlabelled {
  let [marks, distances] = [0, 0];
  for (const figure of page.tile.figures) {
    const lines = labelLines(page, figure);
    const [mark] = lines;
    if (putLabel(draft, page, figure, lines, NEAR)) continue;
    distances += 1;
    if (mark !== undefined && !putLabel(draft, page, figure, [mark], FAR)) marks += 1;
  }
  return { marks, distances };
}

/** `B3  90°`, `A: 0`, `2: 4 1/2" E`. */
function labelLines(page: PlanPage, { placed }: BaseFigure): readonly string[] {
  const { unit } = page.request.job;
  const { turn } = placed.placement;
  const isHeld = page.request.held.has(placed.placement.mark);
  const mark = `${placed.placement.mark}${isHeld ? " HELD" : ""}`;
  return [
    turn === 0 ? mark : `${mark}  ${formatDegrees(turn)}`,
    ...locate(placed).map((each) => `${each.line.name}: ${distanceText(each, unit)}`),
  ];
}

/** Distances from the symbol at which a label is tried; a leader from the second one on. */
const NEAR = [0, 3.5];
const FAR = [0, 3.5, 7, 11, 16, 22];

function putLabel(
  draft: Draft,
  page: PlanPage,
  figure: BaseFigure,
  lines: readonly string[],
  distances: readonly number[],
): boolean {
  const letter = page.lettering.small;
  const width = greatestOf(lines.map((words, i) => textWidth(words, letter, i === 0)));
  const height = letter * (1 + LEADING * (lines.length - 1));
  const center = paperOf(page, figure.placed.workingPoint);
  const reach = symbolReach(page, figure) + 1.1;
  for (const strokes of ["all", "hard"] as const)
    for (const far of distances)
      for (const place of placesAround(center, reach + far, width, height)) {
        const items = lines.map((words, i) =>
          text("tag", words, at(place.x, place.y + height - letter - i * letter * LEADING), letter, { bold: i === 0 }),
        );
        if (!items.every((item) => hasRoom(draft, item, 0.5, strokes))) continue;
        const leader = far === 0 ? [] : leaderTo(draft, center, reach, place, width, height);
        if (leader === null) continue;
        if (strokes === "hard") for (const item of items) interrupt(draft, item);
        put(draft, placedLabel(figure, [...leader, ...items]));
        return true;
      }
  return false;
}

function placedLabel({ placed }: BaseFigure, items: readonly SceneItem[]): SceneItem {
  return group("placement", items, { name: placed.name, mark: placed.placement.mark });
}

/** Lower left corners of a block in the four quadrants, then straight beside, above and below. */
function placesAround({ x, y }: PaperPoint, reach: number, width: number, height: number): readonly PaperPoint[] {
  const [right, left] = [x + reach, x - reach - width];
  const [above, below] = [y + reach, y - reach - height];
  return [
    at(right, above),
    at(right, below),
    at(left, above),
    at(left, below),
    at(right, y + 1),
    at(right, y - 1 - height),
    at(left, y + 1),
    at(left, y - 1 - height),
    at(x + 1, above),
    at(x + 1, below),
  ];
}

/** A short line from the symbol's edge to the block; null where it would cross a text. */
function leaderTo(
  draft: Draft,
  center: PaperPoint,
  reach: number,
  place: PaperPoint,
  width: number,
  height: number,
): readonly SceneItem[] | null {
  const near = at(
    Math.min(place.x + width + 0.6, Math.max(place.x - 0.6, center.x)),
    Math.min(place.y + height + 0.6, Math.max(place.y - 0.6, center.y)),
  );
  const [dx, dy] = [near.x - center.x, near.y - center.y];
  const length = Math.hypot(dx, dy);
  const from = at(center.x + (dx / length) * reach, center.y + (dy / length) * reach);
  if (length <= reach) return [];
  return crossesText(draft.taken, from, near) ? null : [stroke("leader", line(from, near))];
}

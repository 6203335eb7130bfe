/** Match lines at the sides where the plan goes on, with the sheet on which it does. */
import { at, group, line, stroke, text } from "../items.js";
import { type Draft, hasRoom, interrupt, put } from "../paper.js";
import type { PaperPoint, PathPart } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import type { PlanPage } from "./page.js";

/** Chain of a match line: long, gap, short, gap (common practice). */
const LONG = 14;
const SHORT = 3;
const GAP = 2;

type Side = "left" | "right" | "above" | "below";

const STEPS: Readonly<Record<Side, readonly [number, number]>> = {
  left: [-1, 0],
  right: [1, 0],
  above: [0, -1],
  below: [0, 1],
};

/** A side at which the plan goes on: its ends, and the words beside it. */
interface MatchLine {
  readonly side: Side;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly words: string;
}

/** Lines at the sides that have a neighbour. */
export function putMatchLines(draft: Draft, page: PlanPage, sheetOf: ReadonlyMap<string, number>): void {
  for (const { side, from, to } of matchLines(page, sheetOf))
    put(draft, group("match-line", [stroke("outline", ...dashes(from, to))], { side }));
}

/** The words of the match lines, when everything else stands. */
export function putMatchWords(draft: Draft, page: PlanPage, sheetOf: ReadonlyMap<string, number>): void {
  for (const { side, from, to, words } of matchLines(page, sheetOf)) putWords(draft, page, words, from, to, side);
}

/** `sheetOf` gives the sheet of a tile by column and row. */
function matchLines(page: PlanPage, sheetOf: ReadonlyMap<string, number>): readonly MatchLine[] {
  const { column, row } = page.tile;
  const { columns, rows } = page.arrangement;
  const { x0, y0, x1, y1 } = page.window;
  const ends: Readonly<Record<Side, readonly [PaperPoint, PaperPoint]>> = {
    left: [at(x0, y0), at(x0, y1)],
    right: [at(x1, y0), at(x1, y1)],
    above: [at(x0, y1), at(x1, y1)],
    below: [at(x0, y0), at(x1, y0)],
  };
  return (["left", "right", "above", "below"] as const).flatMap((side) => {
    const [x, y] = [column + STEPS[side][0], row + STEPS[side][1]];
    if (x < 0 || y < 0 || x >= columns || y >= rows) return [];
    const sheet = sheetOf.get(`${x} ${y}`);
    const words = sheet === undefined ? "MATCH LINE: NO BASE BEYOND" : `MATCH LINE: SEE SHEET ${sheet}`;
    const [from, to] = ends[side];
    return [{ side, from, to, words }];
  });
}

function dashes(from: PaperPoint, to: PaperPoint): readonly PathPart[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const point = (t: number) => at(from.x + dx * Math.min(t, length), from.y + dy * Math.min(t, length));
  const parts: PathPart[] = [];
  for (let t = 0; t < length; t += LONG + SHORT + 2 * GAP) {
    parts.push(line(point(t), point(t + LONG)));
    if (t + LONG + GAP < length) parts.push(line(point(t + LONG + GAP), point(t + LONG + GAP + SHORT)));
  }
  return parts;
}

/** Along the line where there is room: on its outer side first, nearest to the middle first. */
function putWords(draft: Draft, page: PlanPage, words: string, from: PaperPoint, to: PaperPoint, side: Side): void {
  const letter = page.lettering.small;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const isUpright = side === "left" || side === "right";
  const half = textWidth(words, letter, true) / 2;
  const outer = { left: -1.4, right: 1.4 + letter, above: 1.4, below: -1.4 - letter }[side];
  const inner = { left: 1.4 + letter, right: -1.4, above: -1.4 - letter, below: 1.4 }[side];
  for (const strokes of ["all", "hard"] as const)
    for (const away of [outer, inner])
      for (const shift of shifts(length / 2 - half)) {
        const along = length / 2 + shift;
        const place = isUpright ? at(from.x + away, from.y + along) : at(from.x + along, from.y + away);
        const turn = isUpright ? 90 : 0;
        const label = text("heading", words, place, letter, { anchor: "middle", turn, bold: true });
        if (!hasRoom(draft, label, 0.6, strokes)) continue;
        if (strokes === "hard") interrupt(draft, label);
        put(draft, label);
        return;
      }
}

/** From the middle outwards, to both sides in turn. */
function shifts(most: number): readonly number[] {
  const count = Math.max(0, Math.floor(most / 4));
  return Array.from({ length: 2 * count + 1 }, (_, i) => (i % 2 === 0 ? -1 : 1) * 4 * Math.ceil(i / 2));
}

/** Match lines at the sides where the plan goes on, with the sheet on which it does. */
import { at, group, line, stroke, text } from "../items.js";
import { type Draft, hasRoom, interrupt, put } from "../paper.js";
import type { PaperPoint, PathPart } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import { type PlanPage, paperOf } from "./page.js";
import type { Tile } from "./tiles.js";

/** Chain of a match line: long, gap, short, gap (common practice). */
const LONG = 14;
const SHORT = 3;
const GAP = 2;
/** Past the plan at both ends, on paper. */
const PAST = 4;

type Side = "left" | "right" | "above" | "below";

/** A side at which the plan goes on: its ends, and the words beside it. */
interface MatchLine {
  readonly side: Side;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly words: string;
}

/** Lines at the sides that have a neighbour. */
export function putMatchLines(draft: Draft, page: PlanPage): void {
  for (const { side, from, to } of matchLines(page))
    put(draft, group("match-line", [stroke("outline", ...dashes(from, to))], { side }));
}

/** The words of the match lines, when everything else stands. */
export function putMatchWords(draft: Draft, page: PlanPage): void {
  for (const { side, from, to, words } of matchLines(page)) putWords(draft, page, words, from, to, side);
}

function matchLines(page: PlanPage): readonly MatchLine[] {
  const { tile, arrangement } = page;
  return arrangement.tiles.flatMap((other, i) => {
    if (other === tile) return [];
    const words = `MATCH LINE: SEE SHEET ${i + 1}`;
    const across = sideAcross(tile, other, "x") ?? sideAcross(tile, other, "y");
    return across === null ? [] : [{ ...onPaperOf(page, across), words }];
  });
}

interface Shared {
  readonly side: Side;
  readonly axis: "x" | "y";
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

const SIDES = { x: ["left", "right"], y: ["below", "above"] } as const;
const ENDS = { x: ["x0", "x1"], y: ["y0", "y1"] } as const;

/** The stretch of an edge square to the axis that both regions share, as far as both windows show it. */
function sideAcross(tile: Tile, other: Tile, axis: "x" | "y"): Shared | null {
  const [low, high] = ENDS[axis];
  const [start, end] = ENDS[axis === "x" ? "y" : "x"];
  const isLow = Math.abs(tile.region[low] - other.region[high]) < 1e-6;
  const isHigh = Math.abs(tile.region[high] - other.region[low]) < 1e-6;
  if (!isLow && !isHigh) return null;
  if (Math.min(tile.region[end], other.region[end]) - Math.max(tile.region[start], other.region[start]) < 1e-6)
    return null;
  const from = Math.max(tile.window[start], other.window[start]);
  const to = Math.min(tile.window[end], other.window[end]);
  const [least, most] = [tile.window[low], tile.window[high]];
  const edge = Math.min(most, Math.max(least, isLow ? tile.region[low] : tile.region[high]));
  return from < to ? { side: SIDES[axis][isLow ? 0 : 1], axis, at: edge, from, to } : null;
}

function onPaperOf(page: PlanPage, { side, axis, at: edge, from, to }: Shared): Omit<MatchLine, "words"> {
  const point = (along: number) => paperOf(page, axis === "x" ? { x: edge, y: along } : { x: along, y: edge });
  const [p, q] = [point(from), point(to)];
  return axis === "x"
    ? { side, from: at(p.x, p.y - PAST), to: at(q.x, q.y + PAST) }
    : { side, from: at(p.x - PAST, p.y), to: at(q.x + PAST, q.y) };
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

/** Along the line where there is room: on its outer side first, nearest to the middle first; past its ends at the last. */
function putWords(draft: Draft, page: PlanPage, words: string, from: PaperPoint, to: PaperPoint, side: Side): void {
  const letter = page.lettering.small;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const isUpright = side === "left" || side === "right";
  const half = textWidth(words, letter, true) / 2;
  const outer = { left: -1.4, right: 1.4 + letter, above: 1.4, below: -1.4 - letter }[side];
  const inner = { left: 1.4 + letter, right: -1.4, above: -1.4 - letter, below: 1.4 }[side];
  const past = [-half - 2, length + half + 2].map((along) => along - length / 2);
  for (const strokes of ["all", "hard"] as const)
    for (const away of [outer, inner, 3 * outer, 3 * inner])
      for (const shift of [...shifts(length / 2 - half), ...past]) {
        const along = length / 2 + shift;
        const place = isUpright ? at(from.x + away, from.y + along) : at(from.x + along, from.y + away);
        const label = text("heading", words, place, letter, { anchor: "middle", turn: isUpright ? 90 : 0, bold: true });
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

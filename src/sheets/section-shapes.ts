/** What a setting section is drawn of. Places in letter heights from the rod's axis and the top of concrete, y up. */
import { arrowHead, at, circle, group, line, rectangle, strokeOf, text } from "./items.js";
import type { Area } from "./paper.js";
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";
import type { Phrase } from "./section-words.js";
import { textWidth, wrap } from "./text-metrics.js";

/** Where the rod's axis meets the top of concrete on paper, and the letter height; millimetres. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly letter: number;
}

/** A drawn figure around its own origin: the axis of the rod at the top of concrete. */
export interface Figure {
  readonly extent: Area;
  readonly draw: (x: number, y: number) => readonly SceneItem[];
}

/** From the lower to the upper, in letter heights. */
export type Span = readonly [number, number];

/** Half widths, and heights of what is drawn. */
export const ROD = 0.55;
export const NUT = { half: 1.5, height: 1.9 } as const;
export const WASHER = { half: 2.3, height: 0.5 } as const;
export const LEADING = 1.55;

/** A place of the section on paper. */
export function spot({ x, y, letter }: Frame, a: number, b: number): PaperPoint {
  return at(x + a * letter, y + b * letter);
}

function between(frame: Frame, x0: number, y0: number, x1: number, y1: number): PathPart {
  return line(spot(frame, x0, y0), spot(frame, x1, y1));
}

/** The four sides of a rectangle. */
export function box(frame: Frame, [x0, x1]: Span, [y0, y1]: Span): readonly PathPart[] {
  const [low, high] = [spot(frame, x0, y0), spot(frame, x1, y1)];
  return rectangle(low.x, low.y, high.x, high.y);
}

/** What is left of a span where these spans hide it. */
function visible([from, to]: Span, hidden: readonly Span[]): readonly Span[] {
  const ordered = hidden.filter(([low, high]) => high > from && low < to).toSorted((a, b) => a[0] - b[0]);
  let low = from;
  const parts: Span[] = [];
  for (const [start, end] of ordered) {
    if (start > low) parts.push([low, start]);
    low = Math.max(low, end);
  }
  return low < to ? [...parts, [low, to]] : parts;
}

/** A rod: its sides, its top, and its thread as narrow lines at the root (ISO 6410-1), where nothing hides them. */
export function rodItems(frame: Frame, span: Span, threadFrom: number, hidden: readonly Span[]): readonly SceneItem[] {
  const [, top] = span;
  const upright = (x: number, spans: readonly Span[]) => spans.map(([y0, y1]) => between(frame, x, y0, x, y1));
  const sides = visible(span, hidden);
  const root = visible([threadFrom, top], hidden);
  const end = hidden.some(([low, high]) => low < threadFrom && high > threadFrom)
    ? []
    : [between(frame, -ROD, threadFrom, ROD, threadFrom)];
  return [
    strokeOf("hole", [...upright(-ROD, sides), ...upright(ROD, sides), between(frame, -ROD, top, ROD, top)]),
    strokeOf("fine", [...upright(-ROD * 0.6, root), ...upright(ROD * 0.6, root), ...end]),
  ];
}

/** Two short zigzags across the rod between which it is cut short. */
export function rodBreak(frame: Frame, [low, high]: Span): SceneItem {
  const zigzag = (y: number) => zigzagParts(frame, [-0.95, y], [0.95, y]);
  return strokeOf("fine", [...zigzag(low), ...zigzag(high)]);
}

/** A long break line with one zigzag in its middle (ISO 128). */
export function breakLine(frame: Frame, from: readonly [number, number], to: readonly [number, number]): SceneItem {
  return strokeOf("fine", zigzagParts(frame, from, to));
}

function zigzagParts(frame: Frame, [x0, y0]: readonly [number, number], [x1, y1]: readonly [number, number]) {
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [dx, dy] = [(x1 - x0) / length, (y1 - y0) / length];
  const along = (u: number, w: number) => spot(frame, x0 + dx * u - dy * w, y0 + dy * u + dx * w);
  const middle = length / 2;
  const points = [along(0, 0), along(middle - 0.4, 0), along(middle - 0.15, 0.45), along(middle + 0.15, -0.45)];
  return [...points, along(middle + 0.4, 0), along(length, 0)].slice(1).map((to, i, rest) => {
    const from = i === 0 ? points[0] : rest[i - 1];
    return line(from ?? to, to);
  });
}

/** A hexagon nut seen from its side. */
export function nutItems(frame: Frame, [y0, y1]: Span): readonly SceneItem[] {
  const edges = [-0.75, 0.75].map((x) => between(frame, x, y0, x, y1));
  return [strokeOf("hole", box(frame, [-NUT.half, NUT.half], [y0, y1])), strokeOf("fine", edges)];
}

/** A washer, or a plate of this half width. */
export function washerItem(frame: Frame, [y0, y1]: Span, half: number = WASHER.half): SceneItem {
  return strokeOf("hole", box(frame, [-half, half], [y0, y1]));
}

/** Top line of the concrete, and stones under it on either side of the rod. */
export function concreteItems(frame: Frame, [x0, x1]: Span): readonly SceneItem[] {
  const stones: PathPart[] = [];
  for (let x = x0 + 0.7, i = 0; x < x1 - 0.8; x += 1.3, i += 1) {
    if (Math.abs(x) < ROD + 1) continue;
    if (i % 3 === 2) stones.push(...triangle(frame, x, -0.95));
    else stones.push(circle(spot(frame, x, i % 2 === 0 ? -0.5 : -1), 0.1 * frame.letter));
  }
  return [strokeOf("outline", [between(frame, x0, 0, x1, 0)]), strokeOf("fine", stones)];
}

function triangle(frame: Frame, x: number, y: number): readonly PathPart[] {
  return [
    between(frame, x - 0.3, y, x + 0.3, y),
    between(frame, x + 0.3, y, x, y + 0.5),
    between(frame, x, y + 0.5, x - 0.3, y),
  ];
}

/** A board of the form in section: its edges, hatched. */
export function boardItems(frame: Frame, [x0, x1]: Span, [y0, y1]: Span): readonly SceneItem[] {
  const width = x1 - x0;
  const count = Math.max(1, Math.floor((y1 - y0) / width) - 1);
  const step = (y1 - y0 - width) / count;
  const hatch = Array.from({ length: count + 1 }, (_, i) => {
    const y = y0 + i * step;
    return between(frame, x0, y, x1, y + width);
  });
  return [strokeOf("hole", box(frame, [x0, x1], [y0, y1])), strokeOf("fine", hatch)];
}

/** A bearer cut across: a rectangle with its diagonals. */
export function bearerItems(frame: Frame, [x0, x1]: Span, [y0, y1]: Span): readonly SceneItem[] {
  const cross = [between(frame, x0, y0, x1, y1), between(frame, x0, y1, x1, y0)];
  return [strokeOf("hole", box(frame, [x0, x1], [y0, y1])), strokeOf("fine", cross)];
}

/** Lines of a phrase, no wider than `width` letter heights where its parts are not, broken between parts alone. */
export function partLines(phrase: Phrase, width: number, letter: number): readonly string[] {
  return phraseLines(phrase, Math.max(width, widestLine(phrase, letter) + 0.01), letter);
}

/** Lines of a phrase that are no wider than `width` letter heights, broken between its parts where they are. */
export function phraseLines(phrase: Phrase, width: number, letter: number): readonly string[] {
  const room = width * letter;
  const lines: string[] = [];
  for (const part of phrase.flatMap((each) => wrap(each, room, letter))) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${part}`, letter) <= room) lines[lines.length - 1] = `${last} ${part}`;
    else lines.push(part);
  }
  return lines;
}

/** Width of the widest of these lines in letter heights. */
export function widestLine(lines: readonly string[], letter: number): number {
  return lines.reduce((widest, words) => Math.max(widest, textWidth(words, letter) / letter), 0);
}

/** Lines of a label from its first baseline down. */
export function labelItems(frame: Frame, lines: readonly string[], x: number, y: number): readonly SceneItem[] {
  return lines.map((words, i) => text("label", words, spot(frame, x, y - i * LEADING), frame.letter));
}

/** A leader through these places, its arrow at the last. */
export function leaderItems(frame: Frame, ...places: readonly (readonly [number, number])[]): SceneItem {
  const points = places.map(([a, b]) => spot(frame, a, b));
  const parts = points.slice(1).map((to, i) => line(points[i] ?? to, to));
  const [before, tip] = [points.at(-2), points.at(-1)];
  if (before === undefined || tip === undefined) return group("section-leader", []);
  const length = Math.hypot(tip.x - before.x, tip.y - before.y);
  const arrow = arrowHead(tip, (tip.x - before.x) / length, (tip.y - before.y) / length, ARROW * frame.letter);
  return group("section-leader", [strokeOf("leader", parts), arrow]);
}

const ARROW = 0.8;

/** A dimension along a vertical line with its words turned at its left; `between` in letter heights. */
export interface Upright {
  readonly x: number;
  readonly between: Span;
  readonly lines: readonly string[];
  /** Height of the middle of its words; of its line where it is left out. */
  readonly middle?: number;
}

/** Clear paper between a dimension line and its words. */
const WORDS_GAP = 0.5;

/** How far the words of an upright dimension reach to the left of it, in letter heights. */
export function uprightReach(lines: readonly string[]): number {
  return WORDS_GAP + 1.1 + (lines.length - 1) * LEADING;
}

/** An upright dimension with its words; without, where they stand beside it. */
export function uprightItems(frame: Frame, upright: Upright): SceneItem {
  const { x, lines } = upright;
  const [y0, y1] = upright.between;
  const [low, high] = [spot(frame, x, y0), spot(frame, x, y1)];
  const middle = upright.middle ?? (y0 + y1) / 2;
  const arrow = Math.min(ARROW, (y1 - y0) / 3) * frame.letter;
  const words = lines.map((each, i) => {
    const place = spot(frame, x - WORDS_GAP - (lines.length - 1 - i) * LEADING, middle);
    return text("dimension", each, place, frame.letter, { anchor: "middle", turn: 90 });
  });
  return group("section-dimension", [
    strokeOf("dimension", [line(low, high)]),
    arrowHead(low, 0, -1, arrow),
    arrowHead(high, 0, 1, arrow),
    ...words,
  ]);
}

/** Extension lines at these heights, from `x0` out to `x1`. */
export function extensionItem(frame: Frame, from: number, to: number, y: number): SceneItem {
  return strokeOf("extension", [between(frame, from, y, to, y)]);
}

/** Words centred under a figure. */
export function captionItem(frame: Frame, words: string, x: number, y: number): SceneItem {
  return text("label", words, spot(frame, x, y), frame.letter, { anchor: "middle" });
}

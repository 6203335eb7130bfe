/** Blocks of words beside a point of the plan: in the quadrants about it, with a leader from farther away. Paper millimetres. */
import type { Extent } from "../../geometry/index.js";
import { greatestOf } from "../../units/extremes.js";
import { at, line, rectangle, stroke, text } from "../items.js";
import { countCrossings, crossesText, type TextItem } from "../occupied.js";
import { type Draft, hasRoom, interrupt, isFree } from "../paper.js";
import type { PaperPoint, SceneItem } from "../scene.js";
import { textWidth } from "../text-metrics.js";

/** Lines of words, the first in bold; `boxed`: a frame around the first. */
export interface Block {
  readonly lines: readonly string[];
  readonly letter: number;
  readonly boxed: boolean;
  /** Nothing in bold. */
  readonly plain?: boolean;
}

const LEADING = 1.5;
/** Frame around a boxed line, beyond its letters. */
const FRAME = 1;
/** Clear paper beside a frame: it touches no bubble. */
const BESIDE_FRAME = 0.6;

/** Width and height on paper. */
export function blockSize({ lines, letter, boxed, plain }: Block): { readonly width: number; readonly height: number } {
  const more = boxed ? 2 * FRAME : 0;
  return {
    width: greatestOf(lines.map((words, i) => textWidth(words, letter, i === 0 && plain !== true))) + more,
    height: letter * (1 + LEADING * (lines.length - 1)) + more,
  };
}

function blockTexts(block: Block, { x, y }: PaperPoint): readonly TextItem[] {
  const { lines, letter, boxed, plain } = block;
  const inset = boxed ? FRAME : 0;
  const top = y + blockSize(block).height - inset - letter;
  return lines.map((words, i) => {
    const drop = i * letter * LEADING + (i > 0 ? inset : 0);
    return text("tag", words, at(x + inset, top - drop), letter, { bold: i === 0 && plain !== true });
  });
}

function frameItems(block: Block, { x, y }: PaperPoint): readonly SceneItem[] {
  const { lines, letter, boxed } = block;
  const [first] = lines;
  if (!boxed || first === undefined) return [];
  const top = y + blockSize(block).height;
  const width = textWidth(first, letter, true) + 2 * FRAME;
  return [stroke("held", ...rectangle(x, top - letter - 2 * FRAME, x + width, top))];
}

/** The block at a place, where it stands clear; lines that may be are interrupted for it under `hard`. null: no room. */
export function blockAt(
  draft: Draft,
  block: Block,
  place: PaperPoint,
  strokes: "all" | "hard",
): readonly SceneItem[] | null {
  const texts = blockTexts(block, place);
  if (!texts.every((item) => hasRoom(draft, item, 0.5, strokes))) return null;
  if (block.boxed && !isFree(draft, frameBox(block, place), strokes)) return null;
  if (strokes === "hard") for (const item of texts) interrupt(draft, item);
  return [...texts, ...frameItems(block, place)];
}

/** The frame around the first line, and clear paper around it. */
function frameBox(block: Block, { x, y }: PaperPoint): readonly PaperPoint[] {
  const [first = ""] = block.lines;
  const top = y + blockSize(block).height + BESIDE_FRAME;
  const [left, right] = [x - BESIDE_FRAME, x + textWidth(first, block.letter, true) + 2 * FRAME + BESIDE_FRAME];
  const low = top - block.letter - 2 * FRAME - 2 * BESIDE_FRAME;
  return [at(left, low), at(right, low), at(right, top), at(left, top)];
}

/** What more is asked of a place. */
interface BlockDemand {
  /** What a leader may cross, never a text. */
  readonly crossing?: "no line" | "lines";
  /** Whether a block that stands there without a leader is read as that of its own point. */
  readonly isClearOf?: (box: Extent) => boolean;
}

/** The block about a point, `reach` around it kept clear, at the first of the distances that has room; null: none has. */
export function blockAbout(
  draft: Draft,
  block: Block,
  center: PaperPoint,
  reach: number,
  distances: readonly number[],
  { crossing = "no line", isClearOf = () => true }: BlockDemand = {},
): readonly SceneItem[] | null {
  const { width, height } = blockSize(block);
  for (const strokes of ["all", "hard"] as const)
    for (const far of distances)
      for (const place of placesAround(center, reach + far, width, height)) {
        if (far === 0 && !isClearOf({ x0: place.x, y0: place.y, x1: place.x + width, y1: place.y + height })) continue;
        const leader = far === 0 ? [] : leaderTo(draft, center, reach, place, width, height, crossing);
        if (leader === null) continue;
        const items = blockAt(draft, block, place, strokes);
        if (items !== null) return [...leader, ...items];
      }
  return null;
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
  crossing: "no line" | "lines",
): readonly SceneItem[] | null {
  const near = at(
    Math.min(place.x + width + 0.6, Math.max(place.x - 0.6, center.x)),
    Math.min(place.y + height + 0.6, Math.max(place.y - 0.6, center.y)),
  );
  const [dx, dy] = [near.x - center.x, near.y - center.y];
  const length = Math.hypot(dx, dy);
  const from = at(center.x + (dx / length) * reach, center.y + (dy / length) * reach);
  if (length <= reach) return [];
  const isClear =
    !crossesText(draft.taken, from, near) &&
    (crossing === "lines" || countCrossings(draft.taken, from, near).hard === 0);
  return isClear ? [stroke("leader", line(from, near))] : null;
}

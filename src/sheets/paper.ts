/** A sheet while it is being laid out: what is drawn so far, and the paper that is taken by it. Internal to the stage. */
import {
  type Box,
  copyPaper,
  emptyPaper,
  insideBox,
  isSoft,
  isTaken,
  type Occupied,
  occupy,
  type TextItem,
  textBox,
} from "./occupied.js";
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";

/** A rectangle on paper, millimetres, y up. */
export interface Area {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Grows as the sheet is laid out. */
export interface Draft {
  readonly area: Area;
  readonly taken: Occupied;
  readonly items: SceneItem[];
  /** Boxes in which soft lines are interrupted. */
  readonly gaps: Box[];
}

/** An empty draft of this area. */
export function startDraft(area: Area): Draft {
  return { area, taken: emptyPaper(), items: [], gaps: [] };
}

/** For a trial that may be given up. */
export function copyDraft(draft: Draft): Draft {
  return { area: draft.area, taken: copyPaper(draft.taken), items: [...draft.items], gaps: [...draft.gaps] };
}

/** Draws a few items and takes their paper; of a list of any length: `putAll`. */
export function put(draft: Draft, ...items: readonly SceneItem[]): void {
  putAll(draft, items);
}

/** Draws items and takes their paper. */
export function putAll(draft: Draft, items: readonly SceneItem[]): void {
  for (const item of items) {
    draft.items.push(item);
    occupy(draft.taken, item);
  }
}

/** Clear paper that is kept around any text. */
const TEXT_CLEARANCE = 0.6;

/**
 * The text can stand where it is: inside the area, clear of every text and stroke. `hard`: clear of those that may not be
 * interrupted; then call `interrupt` for it.
 */
export function hasRoom(
  draft: Draft,
  item: TextItem,
  clearance = TEXT_CLEARANCE,
  strokes: "all" | "hard" = "all",
): boolean {
  return isFree(draft, textBox(item, clearance), strokes);
}

/** True where a box lies in the area and on nothing that is drawn. */
export function isFree(draft: Draft, box: Box, strokes: "all" | "hard" = "all"): boolean {
  return box.every((corner) => isInside(draft.area, corner)) && !isTaken(draft.taken, box, strokes);
}

/** Soft lines will be left out around this text. */
export function interrupt(draft: Draft, item: TextItem): void {
  draft.gaps.push(textBox(item, GAP_CLEARANCE));
}

const GAP_CLEARANCE = 0.7;

/** The items with their soft straight lines interrupted at every gap. */
export function withGaps(items: readonly SceneItem[], gaps: readonly Box[]): readonly SceneItem[] {
  if (gaps.length === 0) return items;
  return items.map((item) => {
    if (item.kind === "group") return { ...item, items: withGaps(item.items, gaps) };
    if (item.kind !== "stroke" || !isSoft(item)) return item;
    return {
      ...item,
      parts: item.parts.flatMap((part): readonly PathPart[] =>
        part.kind === "line" ? remainders(part, gaps) : [part],
      ),
    };
  });
}

type Line = Extract<PathPart, { kind: "line" }>;

function remainders(part: Line, gaps: readonly Box[]): readonly Line[] {
  return gaps.reduce<readonly Line[]>((parts, box) => parts.flatMap((each) => outside(each, box)), [part]);
}

function outside(part: Line, box: Box): readonly Line[] {
  const inside = insideBox(part.from, part.to, box);
  if (inside === null) return [part];
  const { from, to } = part;
  const point = (t: number) => ({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
  return [
    ...(inside[0] > 0 ? [{ ...part, to: point(inside[0]) }] : []),
    ...(inside[1] < 1 ? [{ ...part, from: point(inside[1]) }] : []),
  ];
}

/** True for a point in the area or on its edge. */
export function isInside(area: Area, { x, y }: PaperPoint): boolean {
  return x >= area.x0 && x <= area.x1 && y >= area.y0 && y <= area.y1;
}

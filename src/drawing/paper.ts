/** A sheet while it is being laid out: what is drawn so far, and the paper that is taken by it. Internal to the stage. */
import { type Box, emptyPaper, isTaken, type Occupied, occupy, type TextItem, textBox } from "./occupied.js";
import type { PaperPoint, SceneItem } from "./scene.js";

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
}

export function startDraft(area: Area): Draft {
  return { area, taken: emptyPaper(), items: [] };
}

/** Draws items and takes their paper. */
export function put(draft: Draft, ...items: readonly SceneItem[]): void {
  for (const item of items) {
    draft.items.push(item);
    occupy(draft.taken, item);
  }
}

/** Clear paper that is kept around any text. */
export const TEXT_CLEARANCE = 0.6;

/** The text can stand where it is: inside the area, clear of every text and stroke. */
export function hasRoom(draft: Draft, item: TextItem, clearance = TEXT_CLEARANCE): boolean {
  return isFree(draft, textBox(item, clearance));
}

export function isFree(draft: Draft, box: Box): boolean {
  return box.every((corner) => isInside(draft.area, corner)) && !isTaken(draft.taken, box);
}

export function isInside(area: Area, { x, y }: PaperPoint): boolean {
  return x >= area.x0 && x <= area.x1 && y >= area.y0 && y <= area.y1;
}

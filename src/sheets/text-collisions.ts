/** Looks over a finished scene for text over text and text over lines. */
import { extentOfPoints } from "../geometry/index.js";
import { type Box, boxesTouch, type Mark, marksOf, markTouchesBox, type TextItem, textBox } from "./occupied.js";
import type { Scene, SceneItem } from "./scene.js";

/** One collision: the text, and what it lies on. */
export interface TextCollision {
  readonly text: string;
  readonly over: string;
}

interface Placed {
  readonly item: TextItem;
  readonly box: Box;
}

/** Every text that overlaps another text, is crossed by a stroke, lies on an arrow or bar, or leaves the sheet. */
export function findTextCollisions(scene: Scene): readonly TextCollision[] {
  const texts: Placed[] = [];
  const marks: { mark: Mark; name: string }[] = [];
  collect(scene.items, texts, marks);
  return texts.flatMap((text, i) => [
    ...(leavesSheet(text.box, scene) ? [{ text: text.item.text, over: "edge of the sheet" }] : []),
    ...texts
      .slice(i + 1)
      .filter((other) => boxesTouch(text.box, other.box))
      .map((other) => ({ text: text.item.text, over: other.item.text })),
    ...marks
      .filter(({ mark }) => markTouchesBox(mark, text.box))
      .map(({ name }) => ({ text: text.item.text, over: name })),
  ]);
}

function collect(items: readonly SceneItem[], texts: Placed[], marks: { mark: Mark; name: string }[]): void {
  for (const item of items) {
    if (item.kind === "group") collect(item.items, texts, marks);
    else if (item.kind === "text") texts.push({ item, box: textBox(item) });
    else for (const mark of marksOf(item)) marks.push({ mark, name: `${item.role} ${item.kind}` });
  }
}

function leavesSheet(box: Box, scene: Scene): boolean {
  const { x0, y0, x1, y1 } = extentOfPoints(box);
  return x0 < 0 || y0 < 0 || x1 > scene.width || y1 > scene.height;
}

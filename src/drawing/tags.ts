/** Tags beside holes. */
import type { Hole } from "../plate/model.js";
import { at, group, line, stroke, text } from "./items.js";
import { crossesText } from "./occupied.js";
import { type Draft, hasRoom, interrupt, put } from "./paper.js";
import { CROSS_REACH, holeRadius, onPaper, type View } from "./plan-shapes.js";
import type { SceneItem } from "./scene.js";
import { textWidth } from "./text-metrics.js";

/** Directions tried for a tag: beside the centre lines, outward ones first. */
const DIRECTIONS = [45, 135, 315, 225, 22, 158, 338, 202, 68, 112, 292, 248] as const;

/** Puts the tag as near to its hole as there is room, with a tick when it is not beside it; false when there is none. */
export function putTag(draft: Draft, view: View, hole: Hole, letters: readonly number[]): boolean {
  const center = onPaper(view, hole.center);
  const radius = holeRadius(view, hole);
  const outward = (Math.atan2(hole.center.y, hole.center.x) * 180) / Math.PI;
  const turned = [...DIRECTIONS].sort((a, b) => fromOutward(a, outward) - fromOutward(b, outward));
  for (const strokes of ["all", "hard"] as const)
    for (const away of [0.9, 2.2, 4, 6.5, 9.5, 13])
      for (const letter of letters)
        for (const degrees of turned) {
          const item = tagAt(hole.tag, center, radius + away, degrees, letter);
          if (!hasRoom(draft, item, 0.5, strokes)) continue;
          const tick = away > CROSS_REACH + 1 ? tickTo(draft, item, center, radius) : [];
          if (tick === null) continue;
          if (strokes === "hard") interrupt(draft, item);
          put(draft, group("tag", [item, ...tick]));
          return true;
        }
  return false;
}

function fromOutward(degrees: number, outward: number): number {
  const apart = Math.abs(((degrees - outward + 540) % 360) - 180);
  return Math.round(apart) + degrees / 1e4;
}

/** The text's nearest corner or side stands `distance` from the centre in the direction given. */
function tagAt(tag: string, center: { x: number; y: number }, distance: number, degrees: number, letter: number) {
  const turn = (degrees * Math.PI) / 180;
  const [dx, dy] = [Math.cos(turn), Math.sin(turn)];
  const width = textWidth(tag, letter, true);
  const x = center.x + dx * distance + (Math.sign(dx) * width) / 2;
  const y = center.y + dy * distance + (Math.sign(dy) * letter) / 2 - letter / 2;
  return text("tag", tag, at(x, y), letter, { anchor: "middle", bold: true });
}

function tickTo(draft: Draft, item: ReturnType<typeof tagAt>, center: { x: number; y: number }, radius: number): readonly SceneItem[] | null {
  const middle = at(item.at.x, item.at.y + item.height / 2);
  const width = textWidth(item.text, item.height, true);
  const [dx, dy] = [center.x - middle.x, center.y - middle.y];
  const length = Math.hypot(dx, dy);
  const out = 0.6 + Math.min(width / 2 / Math.abs(dx / length), item.height / 2 / Math.abs(dy / length));
  const from = at(middle.x + (dx / length) * out, middle.y + (dy / length) * out);
  const to = at(center.x - (dx / length) * radius, center.y - (dy / length) * radius);
  if (crossesText(draft.taken, from, to)) return null;
  return [stroke("leader", line(from, to))];
}

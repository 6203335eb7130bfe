/** Tags beside holes. */
import type { Hole } from "../template/model.js";
import { at, group, line, stroke, text } from "./items.js";
import { crossesText, type TextItem } from "./occupied.js";
import { copyDraft, type Draft, hasRoom, interrupt, put } from "./paper.js";
import { CROSS_REACH, holeRadius, onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import { textWidth } from "./text-metrics.js";

/** Directions tried for a tag: beside the centre lines, outward ones first. */
const DIRECTIONS = [45, 135, 315, 225, 22, 158, 338, 202, 68, 112, 292, 248] as const;

/** How a sheet's tags are set: all of one height; outward of the working point, or all to the same side. */
export interface Tagging {
  readonly letter: number;
  readonly side: "outward" | "same";
  /** Farthest that a tag may stand from its hole. */
  readonly reach: number;
}

/** Puts a tag beside every hole. Nothing is drawn and false returned when one finds no room within reach. */
export function putTags(draft: Draft, view: View, holes: readonly Hole[], tagging: Tagging): boolean {
  const trial = copyDraft(draft);
  const placed: PlacedTag[] = [];
  for (const hole of holes) {
    const tag = findTag(trial, view, hole, tagging);
    if (tag === null) return false;
    put(trial, tag.group);
    placed.push(tag);
  }
  for (const tag of placed) {
    put(draft, tag.group);
    if (tag.interrupts) interrupt(draft, tag.item);
  }
  return true;
}

interface PlacedTag {
  readonly group: SceneItem;
  readonly item: TextItem;
  readonly interrupts: boolean;
}

const DISTANCES = [0.9, 2.2, 4, 6.5, 9.5, 13] as const;

/** As near as there is room, rather clear of lines than interrupting them, with a tick when it is not beside its hole. */
function findTag(draft: Draft, view: View, hole: Hole, tagging: Tagging): PlacedTag | null {
  const center = onPaper(view, hole.center);
  if (hole.role === "opening") {
    const inside = tagInside(draft, hole, center, tagging.letter);
    if (inside !== null) return inside;
  }
  const radius = holeRadius(view, hole);
  const preferred = tagging.side === "same" ? 45 : (Math.atan2(hole.center.y, hole.center.x) * 180) / Math.PI;
  const turned = [...DIRECTIONS].sort((a, b) => fromOutward(a, preferred) - fromOutward(b, preferred));
  for (const away of DISTANCES.filter((distance) => distance <= tagging.reach))
    for (const strokes of tagging.side === "same" ? (["hard"] as const) : (["all", "hard"] as const))
      for (const degrees of turned) {
        const item = tagAt(hole.tag, center, radius + away, degrees, tagging.letter);
        if (!hasRoom(draft, item, 0.5, strokes)) continue;
        const tick = away > CROSS_REACH + 1 ? tickTo(draft, item, center, radius) : [];
        if (tick !== null) return { group: group("tag", [item, ...tick]), item, interrupts: strokes === "hard" };
      }
  return null;
}

/** An opening's tag stands in the opening. */
function tagInside(draft: Draft, hole: Hole, center: PaperPoint, letter: number): PlacedTag | null {
  for (const [dx, dy] of [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ] as const) {
    const place = at(center.x + dx * 1.5, center.y + (dy > 0 ? 1.5 : -1.5 - letter));
    const item = text("tag", hole.tag, place, letter, { anchor: dx > 0 ? "start" : "end", bold: true });
    if (hasRoom(draft, item, 0.5)) return { group: group("tag", [item]), item, interrupts: false };
  }
  return null;
}

function fromOutward(degrees: number, outward: number): number {
  const apart = Math.abs(((degrees - outward + 540) % 360) - 180);
  return Math.round(apart) + degrees / 1e4;
}

/** The text's nearest corner or side stands `distance` from the centre in the direction given. */
function tagAt(tag: string, center: PaperPoint, distance: number, degrees: number, letter: number) {
  const turn = (degrees * Math.PI) / 180;
  const [dx, dy] = [Math.cos(turn), Math.sin(turn)];
  const width = textWidth(tag, letter, true);
  const x = center.x + dx * distance + (Math.sign(dx) * width) / 2;
  const y = center.y + dy * distance + (Math.sign(dy) * letter) / 2 - letter / 2;
  return text("tag", tag, at(x, y), letter, { anchor: "middle", bold: true });
}

function tickTo(
  draft: Draft,
  item: ReturnType<typeof tagAt>,
  center: PaperPoint,
  radius: number,
): readonly SceneItem[] | null {
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

/** Tags of rods as surveyed: beside their own hole, in no hole and on no rod, with a leader where they stand farther off. */
import { at, group, line, stroke, text } from "./items.js";
import {
  type Box,
  countCrossings,
  crossesText,
  distanceToBox,
  distanceToSegment,
  linesCross,
  textBox,
} from "./occupied.js";
import { type Draft, hasRoom, interrupt, put } from "./paper.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import { linesIn, type Tick } from "./tags.js";
import { textWidth } from "./text-metrics.js";

/** A hole or a rod on paper. */
export interface Disc {
  readonly center: PaperPoint;
  readonly radius: number;
}

/** A tag and the hole that it names. */
export interface SurveyTag extends Disc {
  readonly tag: string;
  /** Direction away from the working point, radians. */
  readonly outward: number;
}

/** How strict the search is: whether centre lines may be interrupted, and what a leader may cross: centre lines alone, outlines too but no hole, or other leaders. */
interface Demand {
  readonly strokes: "all" | "hard";
  readonly leaderOver: "soft lines" | "outlines" | "leaders";
}

const DEMANDS: readonly Demand[] = [
  { strokes: "all", leaderOver: "soft lines" },
  { strokes: "hard", leaderOver: "soft lines" },
  { strokes: "hard", leaderOver: "outlines" },
  { strokes: "hard", leaderOver: "leaders" },
];

const DISTANCES = [1, 2.2, 4, 6.5, 9.5, 13, 18, 24, 32, 42, 56, 72] as const;
const DIRECTIONS = 24;
/** Clear paper around a tag. */
const CLEARANCE = 0.6;
/** A tag that stands farther off has a leader. */
const BESIDE = 2.2;

/** Leaders may cross where nothing else is left; apart: a tag is rather left out. */
export type Leaders = "may cross" | "apart";

/** Puts a tag for each hole; gives those that found no room anywhere. `discs` are all holes and rods that are drawn. */
export function putSurveyTags(
  draft: Draft,
  tags: readonly SurveyTag[],
  discs: readonly Disc[],
  letter: number,
  leaders: Leaders = "may cross",
): readonly string[] {
  const demands = leaders === "apart" ? DEMANDS.filter(({ leaderOver }) => leaderOver !== "leaders") : DEMANDS;
  return tags.flatMap((tag) => (putTag(draft, tag, discs, letter, demands) ? [] : [tag.tag]));
}

function putTag(
  draft: Draft,
  tag: SurveyTag,
  discs: readonly Disc[],
  letter: number,
  demands: readonly Demand[],
): boolean {
  for (const demand of demands)
    for (const away of DISTANCES)
      for (const direction of directionsOf(tag)) {
        const item = tagItem(tag, tag.radius + away, direction, letter);
        const box = textBox(item, CLEARANCE);
        if (!hasRoom(draft, item, CLEARANCE, demand.strokes) || discs.some((disc) => isOver(disc, box))) continue;
        const leader = away > BESIDE ? leaderTo(draft, item, tag, discs, demand) : [];
        if (leader === null) continue;
        if (demand.strokes === "hard") interrupt(draft, item);
        put(draft, group("tag", [item, ...leader], { tag: tag.tag }));
        return true;
      }
  return false;
}

/** Outward first, then farther and farther round. */
function directionsOf({ outward }: SurveyTag): readonly number[] {
  const step = (2 * Math.PI) / DIRECTIONS;
  return Array.from({ length: DIRECTIONS }, (_, i) => outward + (i % 2 === 0 ? -1 : 1) * Math.ceil(i / 2) * step);
}

/** The text's nearest side or corner stands `away` from the centre of its hole. */
function tagItem({ tag, center }: SurveyTag, away: number, direction: number, letter: number) {
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)];
  const half = textWidth(tag, letter) / 2;
  const reach = (share: number, size: number) => Math.max(-1, Math.min(1, share * 1.6)) * size;
  const x = center.x + dx * away + reach(dx, half);
  const y = center.y + dy * away + reach(dy, letter / 2) - letter / 2;
  return text("tag", tag, at(x, y), letter, { anchor: "middle" });
}

function isOver({ center, radius }: Disc, box: Box): boolean {
  return distanceToBox(center, box) < radius;
}

/** From the side of the text to the edge of its hole; null where it would meet another hole, a text or a leader. */
function leaderTo(
  draft: Draft,
  item: ReturnType<typeof tagItem>,
  { center, radius }: SurveyTag,
  discs: readonly Disc[],
  { leaderOver }: Demand,
): readonly SceneItem[] | null {
  const middle = at(item.at.x, item.at.y + item.height / 2);
  const [dx, dy] = [center.x - middle.x, center.y - middle.y];
  const length = Math.hypot(dx, dy);
  const half = textWidth(item.text, item.height) / 2;
  const out = CLEARANCE + 0.3 + Math.min(half / Math.abs(dx / length), item.height / 2 / Math.abs(dy / length));
  const from = at(middle.x + (dx / length) * out, middle.y + (dy / length) * out);
  const to = at(center.x - (dx / length) * radius, center.y - (dy / length) * radius);
  const isOwn = (disc: Disc) => Math.hypot(disc.center.x - center.x, disc.center.y - center.y) < radius;
  if (discs.some((disc) => !isOwn(disc) && distanceToSegment(disc.center, from, to) < disc.radius + 0.3)) return null;
  if (crossesText(draft.taken, from, to)) return null;
  if (leaderOver === "soft lines" && countCrossings(draft.taken, from, to).hard > 0) return null;
  const isCrossed = (other: Tick) => linesCross(from, to, other.from, other.to);
  if (leaderOver === "outlines" && linesIn(draft.items, ["leader", "hole"]).some(isCrossed)) return null;
  return [stroke("leader", line(from, to))];
}

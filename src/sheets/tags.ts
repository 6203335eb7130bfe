/** Tags beside holes. */
import type { Extent } from "../geometry/index.js";
import { extentOfPoints } from "../geometry/index.js";
import type { Hole } from "../template/model.js";
import { type Length, toMillimetres } from "../units/index.js";
import { at, group, line, stroke, text } from "./items.js";
import { crossesText, linesCross, type TextItem, textBox } from "./occupied.js";
import { copyDraft, type Draft, hasRoom, interrupt, put } from "./paper.js";
import { CROSS_REACH, holeRadius, holeSpan, onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint, PathPart, SceneItem, StrokeRole } from "./scene.js";
import { textWidth } from "./text-metrics.js";

/** Directions tried for a tag: beside the centre lines, outward ones first. */
const DIRECTIONS = [45, 135, 315, 225, 22, 158, 338, 202, 68, 112, 292, 248] as const;

/**
 * How a sheet's tags are set: all of one height; outward of the working point, all to the same side, or in a ring along
 * the bolt circle.
 */
export interface Tagging {
  readonly letter: number;
  readonly side: "outward" | "same" | "radial";
  /** Farthest that a tag may stand from its hole; a ring may be wider. */
  readonly reach: number;
  /** Every hole of the plate: no tag stands in one that is not its own, or nearer to it. Default: those that are tagged. */
  readonly among?: readonly Hole[];
  /** No tick crosses an extension line or a corner's number. Default: it may. */
  readonly strict?: boolean;
}

/** Puts a tag beside every hole. Nothing is drawn and false returned when one finds no room within reach. */
export function putTags(draft: Draft, view: View, holes: readonly Hole[], tagging: Tagging): boolean {
  const spots = new Map((tagging.among ?? holes).map((hole) => [hole.tag, spotOf(view, hole)]));
  const search = {
    draft: copyDraft(draft),
    view,
    tagging,
    spots: [...spots.values()],
    leaders: [...leadersIn(draft.items), ...(tagging.strict === true ? barriersIn(draft.items) : [])],
  };
  const ring = tagging.side === "radial" ? putRing(search, holes) : [];
  const tagged = new Set(ring.map(({ hole }) => hole));
  const placed: PlacedTag[] = [...ring];
  for (const hole of holes) {
    if (tagged.has(hole)) continue;
    const tag = findTag(search, hole);
    if (tag === null) return false;
    put(search.draft, tag.group);
    for (const leader of leadersIn([tag.group])) search.leaders.push(leader);
    placed.push(tag);
  }
  for (const tag of placed) {
    put(draft, tag.group);
    if (tag.interrupts) interrupt(draft, tag.item);
  }
  return true;
}

/** Where a hole stands on paper, and half its sizes. */
interface Spot extends PaperPoint {
  readonly isRound: boolean;
  readonly halfX: number;
  readonly halfY: number;
}

interface Search {
  readonly draft: Draft;
  readonly view: View;
  readonly tagging: Tagging;
  readonly spots: readonly Spot[];
  /** Leaders and ticks that are drawn already, and what else no tick crosses. */
  readonly leaders: Tick[];
}

/** A straight line of a leader. */
export type Tick = Extract<PathPart, { kind: "line" }>;

function leadersIn(items: readonly SceneItem[]): Tick[] {
  return linesIn(items, ["leader"]);
}

/** Straight lines of strokes of these roles. */
export function linesIn(items: readonly SceneItem[], roles: readonly StrokeRole[]): Tick[] {
  return items.flatMap((item): Tick[] => {
    if (item.kind === "group") return linesIn(item.items, roles);
    if (item.kind !== "stroke" || !roles.includes(item.role)) return [];
    return item.parts.flatMap((part) => (part.kind === "line" ? [part] : []));
  });
}

/** Extension lines, and the squares around the numbers of corners. */
function barriersIn(items: readonly SceneItem[]): readonly Tick[] {
  return items.flatMap((item): readonly Tick[] => {
    if (item.kind !== "group") return [];
    return item.items.flatMap((inner): readonly Tick[] => {
      if (inner.kind === "group") return barriersIn([inner]);
      if (inner.kind !== "stroke") return [];
      const isBarrier = inner.role === "extension" || item.name === "corner";
      return isBarrier ? inner.parts.flatMap((part) => barrierOf(part)) : [];
    });
  });
}

function barrierOf(part: PathPart): readonly Tick[] {
  if (part.kind === "line") return [part];
  if (part.kind !== "circle") return [];
  const { center, radius } = part;
  const corners = [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)].map(({ x, y }) =>
    at(center.x + x * radius, center.y + y * radius),
  );
  return corners.map((from, i) => ({ kind: "line", from, to: corners[(i + 1) % 4] ?? from }));
}

interface PlacedTag {
  readonly hole: Hole;
  readonly group: SceneItem;
  readonly item: TextItem;
  readonly interrupts: boolean;
}

function spotOf(view: View, { center, shape }: Hole): Spot {
  const isRound = shape.kind === "circle";
  const [x, y] = isRound ? [shape.diameter, shape.diameter] : [shape.width, shape.height];
  const half = (length: Length) => (toMillimetres(length) / 2) * view.scale;
  return { ...onPaper(view, center), isRound, halfX: half(x), halfY: half(y) };
}

/** Clear paper between a tag's box and a hole's edge; not more than 0 where they touch. */
function gapTo(box: Extent, { x, y, isRound, halfX, halfY }: Spot): number {
  const [rx, ry] = isRound ? [0, 0] : [halfX, halfY];
  const dx = Math.max(box.x0 - x - rx, 0, x - rx - box.x1);
  const dy = Math.max(box.y0 - y - ry, 0, y - ry - box.y1);
  return Math.sqrt(dx * dx + dy * dy) - (isRound ? halfX : 0);
}

const OTHER_CLEARANCE = 0.4;

/** The tag is read as that of its own hole: beside it, or tied to it by a tick and in no other. */
function isPlain({ spots }: Search, item: TextItem, own: PaperPoint, hasTick: boolean): boolean {
  const box = extentOfPoints(textBox(item));
  const mine = spots.find(({ x, y }) => x === own.x && y === own.y);
  const gap = mine === undefined ? 0 : gapTo(box, mine);
  return spots.every((spot) => spot === mine || gapTo(box, spot) > (hasTick ? OTHER_CLEARANCE : gap + OTHER_CLEARANCE));
}

/** Tags of the rods on a bolt circle, all at the same distance on the rays from its middle; none where that finds no room. */
function putRing(search: Search, holes: readonly Hole[]): readonly PlacedTag[] {
  const rods = holes.filter(({ role }) => role === "rod");
  for (const [out, away] of RINGS) {
    const tags: PlacedTag[] = [];
    for (const hole of rods) {
      const tag = tagOnRay(search, hole, out, away);
      if (tag === null) break;
      tags.push(tag);
    }
    if (tags.length < rods.length || haveContact(tags)) continue;
    for (const tag of tags) put(search.draft, tag.group);
    for (const leader of leadersIn(tags.map((tag) => tag.group))) search.leaders.push(leader);
    return tags;
  }
  return [];
}

/** Beside the holes outward, then inward; farther off with ticks. */
const RINGS = [
  [1, 0.9],
  [-1, 0.9],
  [1, 2.2],
  [-1, 2.2],
  [1, 4],
  [-1, 4],
  [1, 6.5],
  [-1, 6.5],
  [1, 9.5],
  [-1, 9.5],
  [1, 13],
] as const;

function tagOnRay(search: Search, hole: Hole, out: 1 | -1, away: number): PlacedTag | null {
  const { draft, view, tagging } = search;
  const [center, radius] = [onPaper(view, hole.center), holeRadius(view, hole)];
  const turn = Math.atan2(hole.center.y, hole.center.x);
  const [dx, dy] = [Math.cos(turn) * out, Math.sin(turn) * out];
  const [width, height] = [textWidth(hole.tag, tagging.letter, true), tagging.letter];
  const far = radius + away + (Math.abs(dx) * width + Math.abs(dy) * height) / 2;
  const place = at(center.x + dx * far, center.y + dy * far - height / 2);
  const item = text("tag", hole.tag, place, height, { anchor: "middle", bold: true });
  const hasTick = away > CROSS_REACH + 1;
  if (!hasRoom(draft, item, 0.5, "hard") || !isPlain(search, item, center, hasTick)) return null;
  const tick = hasTick ? tickTo(search, item, center, radius) : [];
  return tick === null ? null : made(hole, item, tick, view, true);
}

/** Tags of one ring lie on each other. */
function haveContact(tags: readonly PlacedTag[]): boolean {
  const boxes = tags.map(({ item }) => extentOfPoints(textBox(item, 0.4)));
  return boxes.some((a, i) => boxes.slice(i + 1).some((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1));
}

/** The group says where a round hole stands, so that the tag can be held against it. */
function made(hole: Hole, item: TextItem, tick: readonly SceneItem[], view: View, interrupts: boolean): PlacedTag {
  const isRound = hole.shape.kind === "circle";
  const data = isRound ? { ...onPaper(view, hole.center), radius: holeRadius(view, hole) } : {};
  return { hole, group: group("tag", [item, ...tick], data), item, interrupts };
}

const DISTANCES = [0.9, 2.2, 4, 6.5, 9.5, 13] as const;

/** As near as there is room, rather clear of lines than interrupting them, with a tick when it is not beside its hole. */
function findTag(search: Search, hole: Hole): PlacedTag | null {
  const { draft, view, tagging } = search;
  const center = onPaper(view, hole.center);
  if (hole.role === "opening") {
    const inside = tagInside(search, hole, center);
    if (inside !== null) return inside;
  }
  const radius = holeRadius(view, hole);
  const preferred = tagging.side === "same" ? 45 : (Math.atan2(hole.center.y, hole.center.x) * 180) / Math.PI;
  const turned = [...DIRECTIONS].sort((a, b) => fromOutward(a, preferred) - fromOutward(b, preferred));
  for (const away of DISTANCES.filter((distance) => distance <= tagging.reach))
    for (const strokes of tagging.side === "same" ? (["hard"] as const) : (["all", "hard"] as const))
      for (const degrees of turned) {
        const item = tagAt(hole.tag, center, radius + away, degrees, tagging.letter);
        const hasTick = away > CROSS_REACH + 1;
        if (!hasRoom(draft, item, 0.5, strokes) || !isPlain(search, item, center, hasTick)) continue;
        const tick = hasTick ? tickTo(search, item, center, radius) : [];
        if (tick !== null) return made(hole, item, tick, view, strokes === "hard");
      }
  return null;
}

/** An opening's tag stands in the opening, near its middle where that is free. */
function tagInside({ draft, view, tagging: { letter } }: Search, hole: Hole, center: PaperPoint): PlacedTag | null {
  for (const away of [1.5, 3, 5, 8])
    for (const [dx, dy] of [
      [1, 1],
      [-1, 1],
      [1, -1],
      [-1, -1],
    ] as const) {
      const place = at(center.x + dx * away, center.y + (dy > 0 ? away : -away - letter));
      const item = text("tag", hole.tag, place, letter, { anchor: dx > 0 ? "start" : "end", bold: true });
      if (holdsBox(view, hole, item) && hasRoom(draft, item, 0.5)) return made(hole, item, [], view, false);
    }
  return null;
}

/** The tag lies in the opening's own box, with some of it to spare. */
function holdsBox(view: View, hole: Hole, item: TextItem): boolean {
  const [center, span] = [onPaper(view, hole.center), holeSpan(hole)];
  return textBox(item, 0.5).every(
    ({ x, y }) => Math.abs(x - center.x) < span.x * view.scale && Math.abs(y - center.y) < span.y * view.scale,
  );
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

/** From the tag to the edge of its hole; null where it would run through a text, another hole or a leader. */
function tickTo(
  { draft, spots, leaders }: Search,
  item: TextItem,
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
  if (spots.some((spot) => (spot.isRound ? crossesRound(from, to, spot) : crossesSquare(from, to, spot)))) return null;
  if (leaders.some((leader) => linesCross(from, to, leader.from, leader.to))) return null;
  return [stroke("leader", line(from, to))];
}

function crossesRound(from: PaperPoint, to: PaperPoint, { x, y, halfX }: Spot): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const share = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, share));
  const far = Math.max(Math.hypot(from.x - x, from.y - y), Math.hypot(to.x - x, to.y - y));
  return far > halfX + 0.01 && Math.hypot(from.x + t * dx - x, from.y + t * dy - y) < halfX - 0.01;
}

function crossesSquare(from: PaperPoint, to: PaperPoint, { x, y, halfX, halfY }: Spot): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const [a, b] = [(x - halfX - from.x) / dx, (x + halfX - from.x) / dx];
  const [c, d] = [(y - halfY - from.y) / dy, (y + halfY - from.y) / dy];
  const [enter, leave] = [Math.max(Math.min(a, b), Math.min(c, d)), Math.min(Math.max(a, b), Math.max(c, d))];
  return enter < leave && ((enter > 0 && enter < 1) || (leave > 0 && leave < 1));
}

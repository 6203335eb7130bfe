/** Control points and centres on a sheet: a mark with name and distances, or an arrow at the edge where the point is beyond. */
import { toMillimetres } from "../../units/index.js";
import { extension } from "../dimension.js";
import { arrowHead, at, circle, group, line, stroke } from "../items.js";
import { type Box, countCrossings } from "../occupied.js";
import { type Area, type Draft, isFree, put } from "../paper.js";
import type { PaperPoint, PathPart, SceneItem } from "../scene.js";
import { blockAbout, blockAt, blockSize } from "./blocks.js";
import { putLocating } from "./locating.js";
import { type PlanPage, paperOf } from "./page.js";
import { NOISE, type PlanPoint } from "./plan-points.js";
import { symbolReach } from "./symbols.js";

const RADIUS = 2.6;

/** Names of those that found no place at all. */
export function putPoints(draft: Draft, page: PlanPage, points: readonly PlanPoint[]): readonly string[] {
  const placed = points.map((point) => {
    const place = paperOf(page, point.point);
    return { point, place, isHere: isInWindow(page, place) };
  });
  for (const { point, place, isHere } of placed) if (isHere) put(draft, ...markItems(point, place));
  return placed
    .filter(
      ({ point, place, isHere }) =>
        !(isHere ? putName(draft, page, point, place) : putArrow(draft, page, point, place)),
    )
    .map(({ point }) => point.name);
}

function isInWindow({ window: { x0, y0, x1, y1 } }: PlanPage, { x, y }: PaperPoint): boolean {
  return x >= x0 && x <= x1 && y >= y0 && y <= y1;
}

const GROUP_NAMES = { control: "control-point", center: "line-center" } as const;

function markItems({ kind, name }: PlanPoint, place: PaperPoint): readonly SceneItem[] {
  return [
    group(GROUP_NAMES[kind], [stroke("hole", ...(kind === "control" ? triangle(place) : target(place)))], { name }),
  ];
}

function triangle({ x, y }: PaperPoint): readonly PathPart[] {
  const corner = (degrees: number) => {
    const angle = (degrees * Math.PI) / 180;
    return at(x + RADIUS * Math.cos(angle), y + RADIUS * Math.sin(angle));
  };
  const [a, b, c] = [corner(90), corner(210), corner(330)];
  return [line(a, b), line(b, c), line(c, a), ...cross({ x, y }, 0.6)];
}

function target(place: PaperPoint): readonly PathPart[] {
  return [circle(place, 1.4), ...cross(place, 2.6)];
}

function cross({ x, y }: PaperPoint, reach: number): readonly PathPart[] {
  return [line(at(x - reach, y), at(x + reach, y)), line(at(x, y - reach), at(x, y + reach))];
}

const AROUND = [0, 4, 9, 16, 26, 40];

/** Name with the distances that no dimension gives, else the name alone. */
function putName(draft: Draft, page: PlanPage, point: PlanPoint, place: PaperPoint): boolean {
  const letter = page.lettering.small;
  const isDimensioned = point.kind === "center" && putDistances(draft, page, point, place);
  const all = isDimensioned ? [point.name] : [point.name, ...point.words];
  const reach = reachAt(page, place);
  for (const [lines, crossing] of [
    [all, "no line"],
    [all, "lines"],
    [[point.name], "lines"],
  ] as const) {
    const items = blockAbout(draft, { lines, letter, boxed: false }, place, reach, AROUND, { crossing });
    if (items === null) continue;
    put(draft, wordsGroup(point, items, isDimensioned || lines.length > 1));
    return true;
  }
  return false;
}

/** Kept clear about the mark: where it stands on a base, all of the base. */
function reachAt(page: PlanPage, place: PaperPoint): number {
  return page.tile.figures.reduce((most, figure) => {
    const base = paperOf(page, figure.placed.workingPoint);
    const away = Math.hypot(base.x - place.x, base.y - place.y);
    const own = symbolReach(page, figure);
    return away < own + RADIUS ? Math.max(most, away + own + 1) : most;
  }, RADIUS + 1);
}

/** What locates lines says which; `from` names the lines it is measured from. */
function wordsGroup(
  { kind, name, locates, distances }: PlanPoint,
  items: readonly SceneItem[],
  isLocated: boolean,
): SceneItem {
  const data = {
    name,
    lines: isLocated ? locates.join(" ") : "",
    from: distances.map(({ line: { name: own } }) => own).join(" "),
  };
  return group(kind === "control" ? "control-name" : "center-name", items, data);
}

/** A centre from the nearest x line and the nearest y line. False where one of both cannot be drawn. */
function putDistances(draft: Draft, page: PlanPage, { name, point, distances }: PlanPoint, place: PaperPoint): boolean {
  if (distances.length < 2) return false;
  return distances.every(({ line: { kind, at: value, name: from }, distance }) => {
    if (Math.abs(distance) <= NOISE) return false;
    const line = paperOf(page, { ...point, [kind]: toMillimetres(value) });
    if (!isInWindow(page, line)) return false;
    return [0, 9, -9, 16, -16].some((off) => {
      const shifted = ({ x, y }: PaperPoint) => (kind === "x" ? at(x, y + off) : at(x + off, y));
      const [p, q] = [shifted(line), shifted(place)];
      const more = off === 0 ? [] : [extension(place, q)];
      return putLocating(draft, page, { p, q, value: Math.abs(distance), from, to: name }, more);
    });
  });
}

const SHAFT = 12;
const HEAD = 4.2;

/** An arrow that points to it, with the block beside its tail, at the edge of the area nearest to its direction. */
function putArrow(draft: Draft, page: PlanPage, point: PlanPoint, target: PaperPoint): boolean {
  const block = { lines: [point.name, ...point.words], letter: page.lettering.small, boxed: false };
  const size = blockSize(block);
  for (const inset of [0, 8, 16, 26, 40, 60])
    for (const tip of edgePlaces(draft.area, page, target, SHAFT / 2 + inset)) {
      const away = Math.hypot(target.x - tip.x, target.y - tip.y);
      if (away < 1) continue;
      const [dx, dy] = [(target.x - tip.x) / away, (target.y - tip.y) / away];
      const tail = at(tip.x - dx * SHAFT, tip.y - dy * SHAFT);
      if (!isClear(draft, tail, tip)) continue;
      const place = besideTail(tail, dx, dy, size);
      const apart = place.filter((each) => isApart(each, size, tail, tip));
      const items = apart.map((each) => blockAt(draft, block, each, "all")).find((found) => found !== null) ?? null;
      if (items === null) continue;
      const arrow = [
        stroke("hole", line(tail, at(tip.x - dx * HEAD, tip.y - dy * HEAD))),
        arrowHead(tip, dx, dy, HEAD),
      ];
      put(
        draft,
        group(`${GROUP_NAMES[point.kind]}-arrow`, arrow, { name: point.name }),
        wordsGroup(point, items, true),
      );
      return true;
    }
  return false;
}

/** The block stands clear of the arrow's box. */
function isApart(
  { x, y }: PaperPoint,
  { width, height }: ReturnType<typeof blockSize>,
  a: PaperPoint,
  b: PaperPoint,
): boolean {
  const clear = 1.2;
  const [left, right] = [Math.min(a.x, b.x) - clear, Math.max(a.x, b.x) + clear];
  const [low, high] = [Math.min(a.y, b.y) - clear, Math.max(a.y, b.y) + clear];
  return x > right || x + width < left || y > high || y + height < low;
}

/** Places for the block: behind the tail, then at its two sides. */
function besideTail(
  { x, y }: PaperPoint,
  dx: number,
  dy: number,
  { width, height }: ReturnType<typeof blockSize>,
): readonly PaperPoint[] {
  const gap = 2;
  const left = dx > 0 ? x - gap - width : x + gap;
  const low = dy > 0 ? y - gap - height : y + gap;
  const isFlat = Math.abs(dx) > Math.abs(dy);
  return isFlat
    ? [at(left, y - height / 2), at(dx > 0 ? x - width : x, y + 3), at(dx > 0 ? x - width : x, y - 3 - height)]
    : [at(x - width / 2, low), at(x + 3, y - height / 2), at(x - 3 - width, y - height / 2)];
}

function isClear(draft: Draft, tail: PaperPoint, tip: PaperPoint): boolean {
  const box: Box = [
    at(Math.min(tail.x, tip.x) - 1.2, Math.min(tail.y, tip.y) - 1.2),
    at(Math.max(tail.x, tip.x) + 1.2, Math.min(tail.y, tip.y) - 1.2),
    at(Math.max(tail.x, tip.x) + 1.2, Math.max(tail.y, tip.y) + 1.2),
    at(Math.min(tail.x, tip.x) - 1.2, Math.max(tail.y, tip.y) + 1.2),
  ];
  const { hard, soft } = countCrossings(draft.taken, tail, tip);
  return hard + soft === 0 && isFree(draft, box);
}

/** Along the sides of the area, nearest first to where the line from the middle of the window to the point leaves it. */
function edgePlaces(area: Area, { window }: PlanPage, target: PaperPoint, inset: number): readonly PaperPoint[] {
  const [x0, y0, x1, y1] = [area.x0 + inset, area.y0 + inset, area.x1 - inset, area.y1 - inset];
  if (x1 <= x0 || y1 <= y0) return [];
  const [cx, cy] = [(window.x0 + window.x1) / 2, (window.y0 + window.y1) / 2];
  const [dx, dy] = [target.x - cx, target.y - cy];
  const share = Math.min(
    dx === 0 ? Infinity : ((dx > 0 ? x1 : x0) - cx) / dx,
    dy === 0 ? Infinity : ((dy > 0 ? y1 : y0) - cy) / dy,
  );
  const exit = at(cx + dx * share, cy + dy * share);
  const step = 5;
  const along = (from: number, to: number) =>
    Array.from({ length: Math.max(1, Math.floor((to - from) / step)) }, (_, i) => from + i * step);
  const sides = [
    ...along(x0, x1).flatMap((x) => [at(x, y0), at(x, y1)]),
    ...along(y0, y1).flatMap((y) => [at(x0, y), at(x1, y)]),
  ];
  const away = ({ x, y }: PaperPoint) => Math.hypot(x - exit.x, y - exit.y);
  return sides.toSorted((a, b) => away(a) - away(b));
}

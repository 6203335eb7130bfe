/** Looks over a finished scene for what a draughtsman would not let pass: words on words or lines, leaders that cross. */
import { type Placed, type PlacedLeader, type PlacedMark, placeItems } from "./collision-items.js";
import { boxesTouch, markTouchesBox } from "./occupied.js";
import type { FillRole, Scene, StrokeRole } from "./scene.js";

/** What lies on a text that should stand free. */
export type TextCollision =
  | { readonly kind: "text on text"; readonly text: string; readonly other: string }
  | { readonly kind: "text on line"; readonly text: string; readonly line: StrokeRole | FillRole }
  | { readonly kind: "text off the sheet"; readonly text: string }
  /** `frame`: the name of the group whose ruled lines the text leaves at the side, or "border". */
  | { readonly kind: "text out of its frame"; readonly text: string; readonly frame: string };

/** Any collision; a leader is named by its words. Paper millimetres. */
export type Collision =
  | TextCollision
  | { readonly kind: "leader on leader"; readonly leader: string; readonly other: string }
  | { readonly kind: "leader through a hole"; readonly leader: string }
  | { readonly kind: "leader on line"; readonly leader: string; readonly line: "dimension" | "extension" }
  /** A tag that stands, without a tick, nearer to another hole than to its own. */
  | { readonly kind: "tag at another hole"; readonly tag: string }
  /** Less than 2 mm between an extension line and the edge of a hole that is not on it. */
  | {
      readonly kind: "extension line near a hole";
      readonly x: number;
      readonly y: number;
      readonly distance: number;
    };

/** Every text that overlaps another text, is crossed by a stroke, lies on an arrow or bar, or leaves sheet or frame. */
export function findTextCollisions(scene: Scene): readonly TextCollision[] {
  const placed = placeItems(scene.items);
  return [...overTexts(placed), ...overLines(placed), ...outOfBounds(placed, scene)];
}

/** Those of texts, and those of leaders, tags and extension lines. */
export function findCollisions(scene: Scene): readonly Collision[] {
  const placed = placeItems(scene.items);
  return [
    ...overTexts(placed),
    ...overLines(placed),
    ...outOfBounds(placed, scene),
    ...betweenLeaders(placed),
    ...throughHoles(placed),
    ...acrossLines(placed),
    ...strayTags(placed),
    ...nearHoles(placed),
  ];
}

function overTexts({ texts }: Placed): readonly TextCollision[] {
  return texts.flatMap((text, i) =>
    texts
      .slice(i + 1)
      .filter((other) => areNear(text, other) && boxesTouch(text.box, other.box))
      .map((other) => ({ kind: "text on text", text: text.words, other: other.words }) as const),
  );
}

function overLines({ texts, marks }: Placed): readonly TextCollision[] {
  const cells = cellsOf(marks);
  return texts.flatMap((text) => {
    const near = new Set(keysOf(text).flatMap((key) => cells.get(key) ?? []));
    return [...near]
      .filter((each) => areNear(text, each) && markTouchesBox(each.mark, text.box))
      .map(({ role }) => ({ kind: "text on line", text: text.words, line: role }) as const);
  });
}

/** Millimetres: marks are looked up by the squares of this side that they reach into. */
const CELL = 20;
const ROW = 100_000;

function cellsOf(marks: readonly PlacedMark[]): ReadonlyMap<number, readonly PlacedMark[]> {
  const cells = new Map<number, PlacedMark[]>();
  for (const mark of marks)
    for (const key of keysOf(mark)) {
      const list = cells.get(key);
      if (list === undefined) cells.set(key, [mark]);
      else list.push(mark);
    }
  return cells;
}

function keysOf({ x0, y0, x1, y1 }: Bounds): number[] {
  const keys: number[] = [];
  for (let j = Math.floor(y0 / CELL); j <= Math.floor(y1 / CELL); j++)
    for (let i = Math.floor(x0 / CELL); i <= Math.floor(x1 / CELL); i++) keys.push(j * ROW + i);
  return keys;
}

interface Bounds {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

function areNear(a: Bounds, b: Bounds): boolean {
  return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

const SLACK = 0.01;

function outOfBounds({ texts, border }: Placed, { width, height }: Scene): readonly TextCollision[] {
  return texts.flatMap((text): readonly TextCollision[] => {
    const { words, frame } = text;
    if (!isWithin(text, { x0: 0, y0: 0, x1: width, y1: height })) return [{ kind: "text off the sheet", text: words }];
    if (border !== null && !isWithin(text, border))
      return [{ kind: "text out of its frame", text: words, frame: "border" }];
    if (frame === null || (text.x0 >= frame.x0 - SLACK && text.x1 <= frame.x1 + SLACK)) return [];
    return [{ kind: "text out of its frame", text: words, frame: frame.name }];
  });
}

function isWithin(inner: Bounds, outer: Bounds): boolean {
  return (
    inner.x0 >= outer.x0 - SLACK &&
    inner.y0 >= outer.y0 - SLACK &&
    inner.x1 <= outer.x1 + SLACK &&
    inner.y1 <= outer.y1 + SLACK
  );
}

function betweenLeaders({ leaders }: Placed): readonly Collision[] {
  return leaders.flatMap((leader, i) =>
    leaders
      .slice(i + 1)
      .filter((other) => other.owner !== leader.owner && doCross(leader, other))
      .map((other) => ({ kind: "leader on leader", leader: leader.words, other: other.words }) as const),
  );
}

/** A leader ends at the edge of its own hole: what it crosses before is another. */
const TIP = 0.3;

function throughHoles({ leaders, marks }: Placed): readonly Collision[] {
  const holes = marks.filter(({ role, mark }) => role === "hole" || (role === "fine" && mark.kind === "circle"));
  return leaders
    .filter((leader) => {
      const crossed = holes.filter((hole) => areNear(leader, hole) && doesCross(shortened(leader), hole));
      return crossed.length > 0 && !leadsOut(leader, crossed);
    })
    .map(({ words }) => ({ kind: "leader through a hole", leader: words }));
}

/** The working point's own leader starts at it: it leads out of the openings and holes in which the point lies, by one side. */
function leadsOut({ from, owner }: PlacedLeader, crossed: readonly PlacedMark[]): boolean {
  if (owner?.name !== "working-point") return false;
  const isAround = ({ mark }: PlacedMark) => mark.kind === "circle" && distance(from, mark.center) < mark.radius;
  const others = crossed.filter((hole) => !isAround(hole));
  return others.length < 2 && others.every(({ mark }) => mark.kind === "segment");
}

function acrossLines({ leaders, marks }: Placed): readonly Collision[] {
  const lines = marks.filter(({ role }) => role === "dimension" || role === "extension");
  return leaders.flatMap((leader) =>
    (["dimension", "extension"] as const)
      .filter((role) => lines.some((each) => each.role === role && isMet(leader, each)))
      .map((line) => ({ kind: "leader on line", leader: leader.words, line }) as const),
  );
}

function isMet(leader: PlacedLeader, each: PlacedMark): boolean {
  return each.owner !== leader.owner && areNear(leader, each) && doesCross(shortened(leader), each);
}

function doesCross(line: Line, { mark }: PlacedMark): boolean {
  if (mark.kind === "segment") return doCross(line, mark);
  const far = Math.max(distance(line.from, mark.center), distance(line.to, mark.center));
  return far > mark.radius && toSegment(mark.center, line) < mark.radius;
}

interface Line {
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}

function shortened({ from, to }: Line): Line {
  const share = Math.min(0.5, TIP / Math.max(TIP, distance(from, to)));
  const [dx, dy] = [(to.x - from.x) * share, (to.y - from.y) * share];
  return { from: { x: from.x + dx, y: from.y + dy }, to: { x: to.x - dx, y: to.y - dy } };
}

/** The two cross at a point inside both. */
function doCross(a: Line, b: Line): boolean {
  return isParted(a, b) && isParted(b, a);
}

function isParted({ from, to }: Line, other: Line): boolean {
  const side = (p: Line["from"]) => (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
  return side(other.from) * side(other.to) < 0;
}

function distance(a: Line["from"], b: Line["from"]): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function toSegment(point: Line["from"], { from, to }: Line): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / square;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
}

function strayTags({ tags, holes }: Placed): readonly Collision[] {
  return tags
    .filter(({ box, own }) => {
      const gap = ({ x, y, radius }: (typeof holes)[number]) =>
        Math.hypot(Math.max(box.x0 - x, 0, x - box.x1), Math.max(box.y0 - y, 0, y - box.y1)) - radius;
      const isOwn = ({ x, y }: (typeof holes)[number]) => distance({ x, y }, own) < 0.05;
      return holes.some((hole) => !isOwn(hole) && gap(hole) < gap(own));
    })
    .map(({ words }) => ({ kind: "tag at another hole", tag: words }));
}

const HOLE_ROOM = 2;

function nearHoles({ marks, holes }: Placed): readonly Collision[] {
  const lines = marks.flatMap(({ role, mark }) => (role === "extension" && mark.kind === "segment" ? [mark] : []));
  return lines.flatMap((line) =>
    holes
      .filter((hole) => !isOnLine(hole, line) && toSegment(hole, line) - hole.radius < HOLE_ROOM - SLACK)
      .map((hole) => {
        const gap = Math.round((toSegment(hole, line) - hole.radius) * 100) / 100;
        return { kind: "extension line near a hole", x: hole.x, y: hole.y, distance: gap } as const;
      }),
  );
}

/** The hole's centre lies on the line or on its continuation: the line is its own, or that of a hole in one line with it. */
function isOnLine({ x, y }: Line["from"], { from, to }: Line): boolean {
  const length = distance(from, to);
  return Math.abs((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) <= 0.05 * length;
}

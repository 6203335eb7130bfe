/** The key plan: outline of the building, the parts of the plan on it, and on which sheet each is. */
import type { Extent, Point } from "../../geometry/index.js";
import type { PlacedBase } from "../../plan/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { groupBy } from "../../units/group-by.js";
import { at, group, line, rectangle, stroke, text } from "../items.js";
import { type Draft, hasRoom, put, startDraft } from "../paper.js";
import type { SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, type Piece } from "../table.js";
import { isSlanting } from "./grid.js";
import type { PlanRequest } from "./request.js";
import type { Arrangement, Tile } from "./tiles.js";

/** Height of the drawn plan where its parts need no more. */
const HEIGHT = 40;

/** The parts with the numbers of their sheets, the current one in heavy lines, over the outline of what stands there. */
export function keyPlanPiece(
  { plan }: PlanRequest,
  { tiles }: Arrangement,
  current: number,
  width: number,
  lettering: Lettering,
): Piece {
  const { small } = lettering;
  const parts = tiles.map(partOf);
  const all = around(parts);
  const scale = Math.min((width - 4) / (all.x1 - all.x0), HEIGHT / (all.y1 - all.y0));
  const room = Math.max(HEIGHT / 2, (all.y1 - all.y0) * scale);
  const height = lettering.body * 2 + room + 5;
  const draw = (x: number, top: number) => {
    const left = x + (width - (all.x1 - all.x0) * scale) / 2;
    const low = top - height + 2 + (room - (all.y1 - all.y0) * scale) / 2;
    const onKey = (point: Point) => at(left + (point.x - all.x0) * scale, low + (point.y - all.y0) * scale);
    const outlines = outlinesOf(plan.bases).map((hull) => hull.map(onKey));
    const draft = startDraft({ x0: x, y0: top - height, x1: x + width, y1: top });
    const edges = outlines.flatMap((hull) => hull.map((from, i) => line(from, hull[(i + 1) % hull.length] ?? from)));
    put(draft, ...headingItems("KEY PLAN (NUMBERS OF SHEETS)", x, top, width, lettering));
    put(draft, group("building-outline", [stroke("fine", ...edges)]));
    parts.forEach((part, i) => {
      put(draft, frameItem(part, i === current, onKey));
    });
    parts.forEach((part, i) => {
      putNumber(draft, part, i, i === current, onKey, small);
    });
    return group("key-plan", draft.items);
  };
  return { height, draw };
}

/** What of a tile's window lies between its match lines. */
function partOf({ region, window }: Tile): Extent {
  return {
    x0: Math.max(region.x0, window.x0),
    y0: Math.max(region.y0, window.y0),
    x1: Math.min(region.x1, window.x1),
    y1: Math.min(region.y1, window.y1),
  };
}

function around(boxes: readonly Extent[]): Extent {
  return {
    x0: leastOf(boxes.map(({ x0 }) => x0)),
    y0: leastOf(boxes.map(({ y0 }) => y0)),
    x1: greatestOf(boxes.map(({ x1 }) => x1)),
    y1: greatestOf(boxes.map(({ y1 }) => y1)),
  };
}

function frameItem({ x0, y0, x1, y1 }: Extent, isCurrent: boolean, onKey: (point: Point) => Point): SceneItem {
  const inset = isCurrent ? 0.4 : 0;
  const [a, b] = [onKey({ x: x0, y: y0 }), onKey({ x: x1, y: y1 })];
  return stroke(isCurrent ? "outline" : "fine", ...rectangle(a.x + inset, a.y + inset, b.x - inset, b.y - inset));
}

/** In the middle of its part, else where it stands clear, beside it at the last. */
function putNumber(
  draft: Draft,
  { x0, y0, x1, y1 }: Extent,
  index: number,
  isCurrent: boolean,
  onKey: (point: Point) => Point,
  small: number,
): void {
  const [a, b] = [onKey({ x: x0, y: y0 }), onKey({ x: x1, y: y1 })];
  const shares = [0.5, 0.3, 0.7, 0.15, 0.85, -0.2, 1.2, -0.5, 1.5];
  const inside = shares.flatMap((up) => shares.map((along) => at(a.x + (b.x - a.x) * along, a.y + (b.y - a.y) * up)));
  const beside = [a.y - small, b.y + small].flatMap((y) => shares.map((along) => at(a.x + (b.x - a.x) * along, y)));
  const places = [...inside, ...beside];
  const labels = places.map(({ x, y }) =>
    text("label", String(index + 1), at(x, y - small / 2), small, { anchor: "middle", bold: isCurrent }),
  );
  const label = labels.find((each) => hasRoom(draft, each, 0.3)) ?? labels[0];
  if (label !== undefined) put(draft, label);
}

/** Around the bases of the building's own axes, and around those of every wing. */
function outlinesOf(bases: readonly PlacedBase[]): readonly (readonly Point[])[] {
  const wings = groupBy(bases, wingOf);
  return [...wings.values()]
    .map((own) => hullOf(own.map(({ workingPoint }) => workingPoint)))
    .filter((hull) => hull.length > 1);
}

function wingOf({ lines }: PlacedBase): string {
  const slanting = lines.find(isSlanting);
  if (slanting === undefined) return "";
  if (slanting.kind === "skewed") return `skewed ${slanting.degrees % 180}`;
  return slanting.kind === "radial" || slanting.kind === "arc" ? `${slanting.center.x} ${slanting.center.y}` : "";
}

/** Convex hull, counter-clockwise (monotone chain). */
function hullOf(points: readonly Point[]): readonly Point[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = (all: readonly Point[]) => {
    const chain: Point[] = [];
    for (const point of all) {
      while (chain.length > 1 && turnsRight(chain.at(-2), chain.at(-1), point)) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

function turnsRight(a: Point | undefined, b: Point | undefined, c: Point): boolean {
  if (a === undefined || b === undefined) return false;
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) <= 0;
}

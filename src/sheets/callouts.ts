/** What is said of holes and corners with a leader, and where there is room to say it. */

import type { Point } from "../geometry/vocabulary.js";
import type { Base, Corner } from "../job/model/job.js";
import { boltCircleOf, standsToAxes } from "../patterns/index.js";
import { keySize } from "../template/index.js";
import type { Hole, Plate } from "../template/model.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { groupBy } from "../units/group-by.js";
import { formatLength, toMillimetres, type Unit } from "../units/index.js";
import { arrowHead, at, group, line, stroke, text } from "./items.js";
import { type Box, countCrossings, crossesText } from "./occupied.js";
import { type Area, type Draft, isFree, put } from "./paper.js";
import { holeRadius, onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import { textWidth } from "./text-metrics.js";

/** Lines of text and the features that its leader may point at: a centre, and the radius at which the arrow stops. */
export interface Callout {
  readonly lines: readonly string[];
  readonly targets: readonly { readonly center: PaperPoint; readonly radius: number }[];
}

/** `Ø1-5/16`, or `8 × 6, R1` for a rectangular opening. */
export function sizeText(hole: Hole, unit: Unit): string {
  const { shape } = hole;
  if (shape.kind === "circle") return `Ø${formatLength(shape.diameter, unit)}`;
  const corner = shape.radius === 0 ? "" : `, R${formatLength(shape.radius, unit)}`;
  return `${formatLength(shape.width, unit)} × ${formatLength(shape.height, unit)}${corner}`;
}

/** Width of the widest callout. */
export function widestCallout(plate: Plate, base: Base, unit: Unit, letter: number): number {
  const callouts = calloutsOf({ origin: at(0, 0), scale: 1 }, plate, base, unit);
  return greatestOf(
    callouts.flatMap(({ lines }) => lines.map((words) => textWidth(words, letter))),
    0,
  );
}

const ROLE_WORDS = { rod: "HOLE", opening: "OPENING", nail: "NAIL HOLE", grout: "GROUT HOLE" } as const;

/** Holes that are alike in size, rod, role and making, in the order in which they first come. */
export function alikeHoles(holes: readonly Hole[], unit: Unit): readonly (readonly Hole[])[] {
  const kindOf = (hole: Hole): string => [hole.role, sizeText(hole, unit), hole.rod?.size ?? "", hole.made].join("|");
  return [...groupBy(holes, kindOf).values()];
}

/** One callout for each kind of hole, one for the corners, and one for the key. */
export function calloutsOf(view: View, plate: Plate, base: Base, unit: Unit): readonly Callout[] {
  const holes = alikeHoles(plate.holes, unit).map((alike) => ({
    lines: [holeWords(alike, base, unit), ...madeWords(alike, plate), ...patternWords(alike, base, unit)],
    targets: outermost(alike).flatMap((hole) => targetsOf(view, hole)),
  }));
  return [...holes, ...cornerCallout(view, plate, base, unit), ...keyCallout(view, plate, unit)];
}

/** The key, pointed at in the middle of its longest cut. */
function keyCallout(view: View, { keyed, region }: Plate, unit: Unit): readonly Callout[] {
  if (keyed === null || region.outer.kind === "circle") return [];
  const joints = region.outer.segments.map(({ from, to }) => at((from.x + to.x) / 2, (from.y + to.y) / 2));
  const words = { "corner cut": "CUT", "corner notch": "NOTCH", "edge notch": "NOTCH" }[keyed.kind];
  const target = { center: onPaper(view, nearest(joints, keyed.at)), radius: 0 };
  return [{ lines: [`KEY: ${words} ${keySize(keyed, unit)}`], targets: [target] }];
}

/** The holes that lie farthest out in eight directions: leaders to the others would cross more. */
function outermost(alike: readonly Hole[]): readonly Hole[] {
  if (alike.length <= 8) return alike;
  const far = Array.from({ length: 8 }, (_, k) => {
    const [dx, dy] = [Math.cos((k * Math.PI) / 4 + 0.1), Math.sin((k * Math.PI) / 4 + 0.1)];
    const reach = ({ center }: Hole) => center.x * dx + center.y * dy;
    return alike.reduce((best, hole) => (reach(hole) > reach(best) ? hole : best));
  });
  return [...new Set(far)];
}

/** A round hole is pointed at from anywhere; a rectangular one at the quarters of its sides. */
function targetsOf(view: View, hole: Hole): Callout["targets"] {
  const center = onPaper(view, hole.center);
  if (hole.shape.kind === "circle") return [{ center, radius: holeRadius(view, hole) }];
  const [w, h] = [
    (toMillimetres(hole.shape.width) / 2) * view.scale,
    (toMillimetres(hole.shape.height) / 2) * view.scale,
  ];
  const sides = [-0.5, 0.5].flatMap((k) => [at(k * w, h), at(k * w, -h), at(w, k * h), at(-w, k * h)]);
  return sides.map(({ x, y }) => ({ center: at(center.x + x, center.y + y), radius: 0 }));
}

function holeWords(alike: readonly Hole[], base: Base, unit: Unit): string {
  const [first] = alike;
  if (first === undefined) return "";
  const size = sizeText(first, unit);
  const ring = base.template.outline.kind === "ring" && first.role === "opening";
  const name = ring ? "INSIDE" : `${ROLE_WORDS[first.role]}${alike.length > 1 ? "S" : ""}`;
  const count = first.role === "opening" && alike.length === 1 ? "" : `${alike.length} `;
  const rod = first.rod === null ? "" : ` FOR ${first.rod.size} ROD`;
  const off = first.role === "opening" && (first.center.x !== 0 || first.center.y !== 0);
  const place =
    off && alike.length === 1 ? ` AT X ${coordinate(first.center.x, unit)}, Y ${coordinate(first.center.y, unit)}` : "";
  return `${count}${name} ${size}${rod}${place}`;
}

function madeWords([first]: readonly Hole[], plate: Plate): readonly string[] {
  if (first === undefined || first.made === "cut") return [];
  return [plate.material === "plywood" ? "DRILL" : "CENTRE PUNCH AND DRILL"];
}

/** A coordinate in base axes, as printed. */
export function coordinate(millimetres: number, unit: Unit): string {
  return formatLength(Math.round(Math.abs(millimetres) * 1e6) * (millimetres < 0 ? -1 : 1), unit);
}

function patternWords(alike: readonly Hole[], base: Base, unit: Unit): readonly string[] {
  const first = alike[0];
  const rods =
    first === undefined
      ? undefined
      : base.groups.find(({ letter }) => first.role === "rod" && first.tag.startsWith(letter));
  const circle = rods === undefined ? null : boltCircleOf(rods.pattern);
  if (first === undefined || circle === null) return [];
  const { diameter, count } = circle;
  const axes = standsToAxes(circle);
  return [
    `ON Ø${formatLength(diameter, unit)} BOLT CIRCLE, ${count} SPACED ${Math.round(36000 / count) / 100}°`,
    `${first.tag} AT ${angleOf(first)}° COUNTER-CLOCKWISE FROM +X`,
    ...(axes === null ? [] : [axes.toUpperCase()]),
    ...radialEdges(alike, base, unit),
  ];
}

/** Edge distances of a bolt circle on a round plate, measured along the radius; none when the two are not concentric. */
function radialEdges(alike: readonly Hole[], { template: { outline } }: Base, unit: Unit): readonly string[] {
  if ((outline.kind !== "circle" && outline.kind !== "ring") || outline.at.x !== 0 || outline.at.y !== 0) return [];
  const radius = Math.round(Math.hypot(alike[0]?.center.x ?? 0, alike[0]?.center.y ?? 0) * 1e6);
  const outside = (outline.kind === "circle" ? outline.diameter : outline.outer) / 2 - radius;
  const words = `EDGE DISTANCE ${formatLength(Math.round(outside), unit)}`;
  if (outline.kind === "circle") return [words];
  return [`${words} OUTSIDE, ${formatLength(Math.round(radius - outline.inner / 2), unit)} INSIDE`];
}

/** The angle of a hole as its own centre gives it, degrees counter-clockwise from +x, to 0.01. */
function angleOf({ center }: Hole): number {
  const turn = (Math.atan2(center.y, center.x) * 180) / Math.PI;
  return Math.round((turn < 0 ? turn + 360 : turn) * 100) / 100;
}

function cornerCallout(view: View, plate: Plate, base: Base, unit: Unit): readonly Callout[] {
  const { outline } = base.template;
  if (outline.kind === "circle" || outline.kind === "ring" || plate.region.outer.kind === "circle") return [];
  const words = cornerWords(outline.corner, unit);
  if (words === null) return [];
  const { segments } = plate.region.outer;
  const points = segments.flatMap(({ from, to, bulge }) => [middle(from, to, bulge), from]);
  const corners =
    outline.kind === "polygon"
      ? outline.at.map((p) => ({ x: toMillimetres(p.x), y: toMillimetres(p.y) }))
      : boxCorners(segments.map(({ from }) => from));
  const others = corners.filter((corner) => !isKeyed(plate, corner));
  const targets = others.map((corner) => ({ center: onPaper(view, nearest(points, corner)), radius: 0 }));
  return [{ lines: [words, `${others.length} CORNERS`], targets }];
}

/** True for the corner that the key took. */
function isKeyed({ keyed }: Plate, corner: Point): boolean {
  if (keyed === null || keyed.kind === "edge notch") return false;
  return Math.hypot(corner.x - keyed.at.x, corner.y - keyed.at.y) < 1e-3;
}

function cornerWords(corner: Corner, unit: Unit): string | null {
  switch (corner.kind) {
    case "square":
      return null;
    case "chamfer":
      return `CHAMFER ${formatLength(corner.x, unit)} × ${formatLength(corner.y, unit)}`;
    case "round":
      return `R${formatLength(corner.radius, unit)}`;
    case "notch":
      return `NOTCH ${formatLength(corner.x, unit)} × ${formatLength(corner.y, unit)}`;
  }
}

function boxCorners(points: readonly Point[]): readonly Point[] {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [x0, x1, y0, y1] = [leastOf(xs), greatestOf(xs), leastOf(ys), greatestOf(ys)];
  return [at(x1, y1), at(x0, y1), at(x0, y0), at(x1, y0)];
}

function middle(from: Point, to: Point, bulge: number): Point {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return at((from.x + to.x) / 2 + (dy * bulge) / 2, (from.y + to.y) / 2 - (dx * bulge) / 2);
}

function nearest(points: readonly Point[], to: Point): Point {
  const distance = (p: Point) => Math.hypot(p.x - to.x, p.y - to.y);
  return points.reduce((best, point) => (distance(point) < distance(best) ? point : best), points[0] ?? to);
}

const STEP = 3;
const SHOULDER = 3;
const LEADING = 1.7;

interface Placed {
  readonly items: readonly SceneItem[];
  readonly cost: number;
}

/**
 * Puts the callout where its leader is short and crosses little, clear of everything; false when there is no such place in
 * the area. `worst` bounds the leader's length, crossings counted in.
 */
export function putCallout(draft: Draft, callout: Callout, letter: number, worst: number): boolean {
  const width = greatestOf(callout.lines.map((words) => textWidth(words, letter)));
  const height = letter + (callout.lines.length - 1) * letter * LEADING;
  let best: Placed | null = null;
  for (const { x, y, bound } of places(callout, draft.area, width, height, worst)) {
    if (bound >= Math.min(worst, best?.cost ?? Infinity)) break;
    if (!isFree(draft, blockBox(x, y, width, height))) continue;
    const placed = bestLeader(draft, callout, { x, y, width, height }, letter);
    if (placed !== null && (best === null || placed.cost < best.cost)) best = placed;
  }
  if (best === null || best.cost > worst) return false;
  put(draft, group("callout", best.items));
  return true;
}

/** Lower left corners on a grid over the area, those with the shortest possible leader first. */
function places(callout: Callout, area: Area, width: number, height: number, worst: number) {
  const list: { x: number; y: number; bound: number }[] = [];
  for (let y = area.y1 - height - 1.5; y > area.y0 + 1; y -= STEP)
    for (let x = area.x0 + 1.5; x + width < area.x1 - 1; x += STEP) {
      const bound = farFrom(callout, x, y, width, height);
      if (bound < worst) list.push({ x, y, bound });
    }
  return list.sort((a, b) => a.bound - b.bound);
}

interface Block {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const BLOCK_CLEARANCE = 1.8;

function blockBox(x: number, y: number, width: number, height: number): Box {
  const c = BLOCK_CLEARANCE;
  return [at(x - c, y - c), at(x + width + c, y - c), at(x + width + c, y + height + c), at(x - c, y + height + c)];
}

/** No leader from this block can be shorter than this. */
function farFrom(callout: Callout, x: number, y: number, width: number, height: number): number {
  let nearest = Infinity;
  for (const { center, radius } of callout.targets) {
    const dx = Math.max(x - center.x, 0, center.x - x - width);
    const dy = Math.max(y - center.y, 0, center.y - y - height);
    nearest = Math.min(nearest, Math.sqrt(dx * dx + dy * dy) - radius);
  }
  return nearest;
}

function bestLeader(draft: Draft, callout: Callout, block: Block, letter: number): Placed | null {
  const widths = callout.lines.map((words) => textWidth(words, letter));
  const longest = widths.indexOf(greatestOf(widths));
  let best: Placed | null = null;
  for (const side of [-1, 1]) {
    const level = block.y + block.height - letter / 2 - (side < 0 ? 0 : longest * letter * LEADING);
    const foot = at(side < 0 ? block.x - 1 : block.x + block.width + 1, level);
    const elbow = at(foot.x + side * SHOULDER, level);
    for (const { center, radius } of callout.targets) {
      const placed = leader(draft, foot, elbow, side, center, radius);
      if (placed !== null && (best === null || placed.cost < best.cost)) best = placed;
    }
  }
  if (best === null) return null;
  const words = callout.lines.map((words, i) =>
    text("note", words, at(block.x, block.y + block.height - letter - i * letter * LEADING), letter),
  );
  return { cost: best.cost, items: [...best.items, ...words] };
}

/** A leader slants between 20 and 75 degrees, away from its text, and ends in an arrow at the feature's edge. */
function leader(
  draft: Draft,
  foot: PaperPoint,
  elbow: PaperPoint,
  side: number,
  center: PaperPoint,
  radius: number,
): Placed | null {
  const [dx, dy] = [center.x - elbow.x, center.y - elbow.y];
  const length = Math.hypot(dx, dy);
  const reach = length - radius;
  if (reach < 5 || dx * side < 0) return null;
  const slant = (Math.atan2(Math.abs(dy), Math.abs(dx)) * 180) / Math.PI;
  if (slant < 20 || slant > 75) return null;
  const tip = at(elbow.x + (dx / length) * reach, elbow.y + (dy / length) * reach);
  const head = arrowHead(tip, dx / length, dy / length, ARROW);
  const lines = [[foot, elbow], [elbow, tip], ...arrowSides(tip, dx / length, dy / length)] as const;
  if (lines.some(([from, to]) => crossesText(draft.taken, from, to))) return null;
  const items = [stroke("leader", line(foot, elbow), line(elbow, tip)), head];
  const crossings = crossingCost(draft, elbow, tip) + crossingCost(draft, foot, elbow);
  return { cost: reach + crossings, items };
}

const ARROW = 2.7;

/** A crossing is as bad as this much more leader; over a line that may be interrupted it matters little. */
function crossingCost(draft: Draft, from: PaperPoint, to: PaperPoint): number {
  const { hard, soft } = countCrossings(draft.taken, from, to);
  return 5 * hard + soft;
}

function arrowSides(tip: PaperPoint, dx: number, dy: number): readonly (readonly [PaperPoint, PaperPoint])[] {
  const [back, half] = [ARROW, ARROW / 6 + 0.3];
  const base = at(tip.x - dx * back, tip.y - dy * back);
  return [
    [tip, at(base.x - dy * half, base.y + dx * half)],
    [tip, at(base.x + dy * half, base.y - dx * half)],
  ];
}

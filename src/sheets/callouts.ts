/** What is said of holes and corners with a leader; where there is room to say it is found in `leaders.ts`. */

import { arcOf, millimetresBetween, toLattice } from "../geometry/index.js";
import type { Point, Segment } from "../geometry/vocabulary.js";
import type { Base, Corner, Job, Offset } from "../job/model/job.js";
import { boltCircleOf, standsToAxes } from "../patterns/index.js";
import { keySize } from "../template/index.js";
import type { Hole, Plate } from "../template/model.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { groupBy } from "../units/group-by.js";
import { formatLength, type Length, nanometres, toMillimetres, type Unit } from "../units/index.js";
import { at } from "./items.js";
import { isPart, type SheetPiece } from "./request.js";
import { spellingOf } from "./spelling.js";
import { textWidth } from "./text-metrics.js";

/** A point that a leader may aim at, and the radius at which its arrow stops. Base axes, millimetres. */
export interface Target {
  readonly center: Point;
  readonly radius: number;
}

/** Lines in phrases, between which a line may be broken; and the features that its leader may point at, whatever the view. */
export interface Callout {
  readonly lines: readonly (readonly string[])[];
  readonly targets: readonly Target[];
  readonly about: CalloutAbout;
}

/** What a phrase of a callout says; `nothing`: what follows from others, or is said elsewhere. */
export type PhraseOf =
  | "hole"
  | "rod"
  | "opening"
  | "opening place"
  | "inside"
  | "bolt circle"
  | "count"
  | "start"
  | "corner"
  | "cut"
  | "key"
  | "radial edge"
  | "nothing";

/** What each phrase is of, line by line; and the tag of a hole that it is said of, "" where it is of none. */
export interface CalloutAbout {
  readonly tag: string;
  readonly lines: readonly (readonly PhraseOf[])[];
}

/** A phrase with what it says. */
interface Phrase {
  readonly words: string;
  readonly of: PhraseOf;
}

function phrase(words: string, of: PhraseOf): Phrase {
  return { words, of };
}

function calloutOf(lines: readonly (readonly Phrase[])[], targets: readonly Target[], tag = ""): Callout {
  return {
    lines: lines.map((phrases) => phrases.map(({ words }) => words)),
    targets,
    about: { tag, lines: lines.map((phrases) => phrases.map(({ of }) => of)) },
  };
}

/** `Ø1-5/16`, or `8 × 6, R1` for a rectangular opening. */
export function sizeText(hole: Hole, unit: Unit): string {
  const { shape } = hole;
  if (shape.kind === "circle") return `Ø${formatLength(shape.diameter, unit)}`;
  const corner = shape.radius === 0 ? "" : `, R${formatLength(shape.radius, unit)}`;
  return `${formatLength(shape.width, unit)} × ${formatLength(shape.height, unit)}${corner}`;
}

/** A callout in one line. */
export function calloutWords({ lines }: Callout): string {
  return lines.flat().join(" ");
}

/** Width of the widest callout. */
export function widestCallout(callouts: readonly Callout[], letter: number): number {
  const widths = callouts.flatMap(({ lines }) => lines.map((phrases) => textWidth(phrases.join(" "), letter)));
  return greatestOf(widths, 0);
}

const ROLE_WORDS = {
  rod: "HOLE",
  opening: "OPENING",
  nail: "NAIL HOLE",
  grout: "GROUT HOLE",
  bolt: "BOLT HOLE",
} as const;

/** Holes that are alike in size, rod, role and making, in the order in which they first come. */
export function alikeHoles(holes: readonly Hole[], unit: Unit): readonly (readonly Hole[])[] {
  const kindOf = (hole: Hole): string => [hole.role, sizeText(hole, unit), hole.rod?.size ?? "", hole.made].join("|");
  return [...groupBy(holes, kindOf).values()];
}

/** What is called out: each kind of hole, the corners, the cut that shows a wrong way round. */
export interface CalledOut {
  readonly plate: Plate;
  readonly base: Base;
  readonly job: Pick<Job, "unit" | "editions">;
  readonly piece?: SheetPiece | null;
}

/** One callout for each kind of hole, one for the corners, and one for the cut or notch that shows the way round. */
export function calloutsOf(called: CalledOut): readonly Callout[] {
  const { plate, job } = called;
  const holes = alikeHoles(plate.holes, job.unit).map((alike) => {
    const own = [...holeWords(alike, called), ...madeWords(alike, called)].map((words) => [words]);
    const targets = outermost(alike).flatMap(targetsOf);
    return calloutOf([...own, ...patternWords(alike, called)], targets, alike[0]?.tag);
  });
  return [
    ...holes,
    ...cornerCallout(called),
    ...cutCallouts(called),
    ...orientationCallout(called),
    ...(isPart(called.piece) ? arcCallouts(called) : []),
  ];
}

/** A rounded corner of an opening has no larger radius, millimetres: common practice. */
const LARGEST_CORNER = 150;

/** Radius of each arc of a part, and the chord of one that is no rounded corner; alike ones have one callout. */
function arcCallouts({ plate: { region }, job: { unit } }: CalledOut): readonly Callout[] {
  if (region.outer.kind === "circle") return [];
  const say = (millimetres: number) => formatLength(toLattice(millimetres), unit);
  const arcs = region.outer.segments.filter(({ bulge }) => bulge !== 0);
  const wordsOf = (segment: Segment) => {
    const radius = `${segment.bulge > 0 ? "OUTSIDE" : "INSIDE"} R${say(arcOf(segment).radius)}`;
    const isCorner = arcOf(segment).radius <= LARGEST_CORNER;
    return [radius, ...(isCorner ? [] : [`CHORD ${say(millimetresBetween(segment.from, segment.to))}`])];
  };
  return [...groupBy(arcs, (segment) => wordsOf(segment).join("|")).values()].map((alike): Callout => {
    const [radius = "", ...chord] = alike.slice(0, 1).flatMap(wordsOf);
    const words = alike.length > 1 ? `${alike.length} ${radius}` : radius;
    const targets = alike.map(({ from, to, bulge }) => ({ center: middle(from, to, bulge), radius: 0 }));
    return calloutOf(
      [words, ...chord].map((line) => [phrase(line, "nothing")]),
      targets,
    );
  });
}

const CUT_WORDS = { "corner cut": "CUT", "corner notch": "NOTCH", "edge notch": "NOTCH" } as const;

/** The cut or notch that shows a wrong way round, pointed at in the middle of its longest side; on a round plate by its angle. */
function orientationCallout({ plate: { keyed, region }, base, job: { unit } }: CalledOut): readonly Callout[] {
  if (keyed === null || region.outer.kind === "circle") return [];
  const joints = region.outer.segments.map(({ from, to }) => at((from.x + to.x) / 2, (from.y + to.y) / 2));
  const place =
    keyed.bare.kind === "circle"
      ? [[`AT ${angleOf(keyed.at, keyed.bare.center)}°`, ...COUNTER_CLOCKWISE].map((words) => phrase(words, "key"))]
      : [];
  const isSquare = base.template.outline.kind === "rectangle" && keyed.kind !== "edge notch";
  const size = isSquare ? legs(keyed.x, keyed.y, unit) : keySize(keyed, unit);
  const words = [phrase(`ORIENTATION ${CUT_WORDS[keyed.kind]}`, "key"), phrase(size, "key")];
  return [calloutOf([words, ...place], [{ center: nearest(joints, keyed.at), radius: 0 }])];
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
function targetsOf({ center, shape }: Hole): readonly Target[] {
  if (shape.kind === "circle") return [{ center, radius: toMillimetres(shape.diameter) / 2 }];
  const [w, h] = [toMillimetres(shape.width) / 2, toMillimetres(shape.height) / 2];
  const sides = [-0.5, 0.5].flatMap((k) => [at(k * w, h), at(k * w, -h), at(w, k * h), at(-w, k * h)]);
  return sides.map(({ x, y }) => ({ center: at(center.x + x, center.y + y), radius: 0 }));
}

/** Count, what it is and its size; then the rod, whose diameter has its sign so that it is not read as a number of rods. */
function holeWords(alike: readonly Hole[], { base, job: { unit } }: CalledOut): readonly Phrase[] {
  const [first] = alike;
  if (first === undefined) return [];
  const size = sizeText(first, unit);
  const ring = base.template.outline.kind === "ring" && first.role === "opening";
  const many = alike.length > 1 ? "S" : "";
  const name = ring ? "INSIDE" : `${ROLE_WORDS[first.role]}${many}`;
  const count = first.role === "opening" && alike.length === 1 ? "" : `${alike.length} `;
  const rod = first.rod === null ? [] : [phrase(`FOR ${rodWords(first.rod.size)} ROD${many}`, "rod")];
  const of = ring ? "inside" : first.role === "opening" ? "opening" : first.role === "bolt" ? "nothing" : "hole";
  return [phrase(`${count}${name} ${size}`, of), ...rod, ...(ring ? [] : openingPlace(alike, unit))];
}

/** `Ø1-1/4`, or `M24` as it is. */
function rodWords(size: string): string {
  return /^\d/.test(size) ? `Ø${size}` : size;
}

/** A single opening is located by its callout; the inside of a ring lies in its middle. */
function openingPlace(alike: readonly Hole[], unit: Unit): readonly Phrase[] {
  const [first] = alike;
  if (first?.role !== "opening" || alike.length > 1) return [];
  if (first.center.x === 0 && first.center.y === 0) return [phrase("AT W.P.", "opening place")];
  const [x, y] = [coordinate(first.center.x, unit), coordinate(first.center.y, unit)];
  return [phrase(`AT X ${x}, Y ${y}`, "opening place")];
}

function madeWords([first]: readonly Hole[], { plate, job }: CalledOut): readonly Phrase[] {
  if (first === undefined || first.made === "cut") return [];
  const words = plate.material === "plywood" ? "DRILL" : `${spellingOf(job.editions).center} PUNCH AND DRILL`;
  return [phrase(words, "nothing")];
}

/** A coordinate in base axes, as printed. */
export function coordinate(millimetres: number, unit: Unit): string {
  return formatLength(Math.round(Math.abs(millimetres) * 1e6) * (millimetres < 0 ? -1 : 1), unit);
}

const COUNTER_CLOCKWISE = ["COUNTER-CLOCKWISE", "FROM +X"] as const;

function patternWords(alike: readonly Hole[], { base, job: { unit } }: CalledOut): readonly (readonly Phrase[])[] {
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
    [
      phrase(`ON Ø${formatLength(diameter, unit)} BOLT CIRCLE,`, "bolt circle"),
      phrase(`${count} SPACED ${Math.round(36000 / count) / 100}°`, "count"),
    ],
    said([`${first.tag} AT ${angleOf(first.center, ORIGIN)}°`, ...COUNTER_CLOCKWISE], "start"),
    ...(axes === null ? [] : [said(axes.toUpperCase().split(/(?<=;) /), "start")]),
    ...radialEdges(alike, base, unit).map((words) => said(words, "radial edge")),
  ];
}

function said(lines: readonly string[], of: PhraseOf): readonly Phrase[] {
  return lines.map((words) => phrase(words, of));
}

/** Edge distances of a bolt circle on a round plate, measured along the radius; none when the two are not concentric. */
function radialEdges(alike: readonly Hole[], { template: { outline } }: Base, unit: Unit): Callout["lines"] {
  if ((outline.kind !== "circle" && outline.kind !== "ring") || outline.at.x !== 0 || outline.at.y !== 0) return [];
  const radius = Math.round(Math.hypot(alike[0]?.center.x ?? 0, alike[0]?.center.y ?? 0) * 1e6);
  const outside = (outline.kind === "circle" ? outline.diameter : outline.outer) / 2 - radius;
  const words = `EDGE DISTANCE ${formatLength(Math.round(outside), unit)}`;
  if (outline.kind === "circle") return [[words]];
  return [[`${words} OUTSIDE,`, `${formatLength(Math.round(radius - outline.inner / 2), unit)} INSIDE`]];
}

const ORIGIN = at(0, 0);

/** The angle of a point about another, degrees counter-clockwise from +x, to 0.01. */
function angleOf(point: Point, about: Point): number {
  const turn = (Math.atan2(point.y - about.y, point.x - about.x) * 180) / Math.PI;
  return Math.round((turn < 0 ? turn + 360 : turn) * 100) / 100;
}

function cornerCallout({ plate, base, job: { unit } }: CalledOut): readonly Callout[] {
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
  const targets = others.map((corner) => ({ center: nearest(points, corner), radius: 0 }));
  return [calloutOf([[phrase(words, "corner")], [phrase(`${others.length} CORNERS`, "corner")]], targets)];
}

/** Corners of a polygon's bounding rectangle that are cut off, by the legs of the cut: one callout for those alike. */
function cutCallouts({ base: { template }, job: { unit }, piece }: CalledOut): readonly Callout[] {
  const { outline } = template;
  if (outline.kind !== "polygon" || isPart(piece)) return [];
  const alike = groupBy(cutsOf(outline.at), ({ x, y }) => legs(x, y, unit));
  return [...alike].map(([words, cuts]) => {
    const lines = [cuts.length > 1 ? `${cuts.length} CORNERS CUT` : "CORNER CUT", words];
    const targets = cuts.map(({ middle: center }) => ({ center, radius: 0 }));
    return calloutOf(
      lines.map((line) => said([line], "cut")),
      targets,
    );
  });
}

interface Cut {
  readonly x: Length;
  readonly y: Length;
  readonly middle: Point;
}

/** Slanting sides from an upright side of the bounding rectangle to a level one. */
function cutsOf(corners: readonly Offset[]): readonly Cut[] {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const isAtX = ({ x }: Offset) => x === leastOf(xs) || x === greatestOf(xs);
  const isAtY = ({ y }: Offset) => y === leastOf(ys) || y === greatestOf(ys);
  return corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    if (from.x === to.x || from.y === to.y || !((isAtX(from) && isAtY(to)) || (isAtY(from) && isAtX(to)))) return [];
    const [x, y] = [nanometres(Math.abs(to.x - from.x)), nanometres(Math.abs(to.y - from.y))];
    return [{ x, y, middle: at((from.x + to.x) / 2e6, (from.y + to.y) / 2e6) }];
  });
}

/** `1 × 1`, or `X 1, Y 1/2` where it matters which leg lies along which axis. */
function legs(x: Length, y: Length, unit: Unit): string {
  const [first, second] = [formatLength(x, unit), formatLength(y, unit)];
  return x === y ? `${first} × ${second}` : `X ${first}, Y ${second}`;
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
      return `CHAMFER ${legs(corner.x, corner.y, unit)}`;
    case "round":
      return `R${formatLength(corner.radius, unit)}`;
    case "notch":
      return `NOTCH ${legs(corner.x, corner.y, unit)}`;
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

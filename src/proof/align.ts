/**
 * Finds how a drawn part lies on a plate: any origin, any turn, face up or down. Two holes of the plate laid on two of the
 * file give a pose; the one under which most holes lie where they should is taken, so that one hole that was moved
 * does not pull the others along. Sizes, outline and openings choose between placements that are alike for the holes.
 */
import { extentOf, millimetresBetween } from "../geometry/index.js";
import type { Contour, Point } from "../geometry/vocabulary.js";
import { centroidOf } from "./centroid.js";
import { contourGap } from "./contour-gap.js";
import type { DrawnContour, DrawnPart } from "./drawn-part.js";
import { CAPTURE_MM, CONTOUR_MM, DIAMETER_MM, type KnownPlate, POSITION_MM, type Pose } from "./model.js";
import { contourToPlate, type Pair, placementOf, toFile, toPlate } from "./pose.js";

/** One hole of the plate and the hole of the file that is taken for it. Millimetres. */
export interface HolePair {
  readonly target: number;
  readonly drawn: number;
  readonly distance: number;
  /** Diameter in the file less that of the plate. */
  readonly diameter: number;
}

/** A drawing laid on a plate: the pose, the pairs of holes, and what is left over. */
export interface Alignment {
  readonly pose: Pose;
  readonly pairs: readonly HolePair[];
  /** How far the outline strays, null where either has none; openings that have no counterpart. */
  readonly outlineGap: number | null;
  readonly openingsOff: number;
}

/** The best alignment; null where nothing can be laid on anything. One that agrees in all as it lies is not looked for further. */
export function align(part: DrawnPart, target: KnownPlate): Alignment | null {
  const straight = bestOf(straightPoses(part, target), part, target);
  if (straight !== null && agreesInAll(straight, part, target)) return straight;
  const exact = bestOf(seedPlacements(part, target, 4 * POSITION_MM), part, target);
  const half = Math.max(1, Math.ceil(target.holes.length / 2));
  if (exact !== null && countExact(exact) > half) return exact;
  const loose = bestOf(seedPlacements(part, target, 2 * CAPTURE_MM), part, target);
  return [exact, loose].filter((each) => each !== null).sort(compareAlignments)[0] ?? null;
}

/** Neither turned nor mirrored: as a file lies that was written from the plate. */
function straightPoses(part: DrawnPart, target: KnownPlate): readonly Pose[] {
  const isStraight = ({ turn, mirrored }: Pose) => turn === 0 && !mirrored;
  return [...boxPoses(part, target), ...outlinePoses(part, target, 0).filter(isStraight)];
}

/** Of two holes or more, each in its place and size, with outline and openings: nothing ranks before it, and least squares over the same pairs give the same pose from any seed. */
function agreesInAll(alignment: Alignment, { holes, outline }: DrawnPart, target: KnownPlate): boolean {
  const { pose, pairs, outlineGap, openingsOff } = alignment;
  const count = target.holes.length;
  if (count < 2 || holes.length !== count || pairs.length !== count || countExact(alignment) < count) return false;
  const isSized = pairs.every(({ diameter }) => Math.abs(diameter) <= DIAMETER_MM);
  const isOutlined = outlineGap === null ? outline === null && target.outline === null : outlineGap <= CONTOUR_MM;
  return isSized && isOutlined && openingsOff === 0 && Math.min(pose.turn, 360 - pose.turn) < STRAIGHT_DEGREES;
}

/** Of a pose that is not turned, in doubles. */
const STRAIGHT_DEGREES = 1e-6;

/** Placements that lay outline on outline: by their centres of area, in quarter turns from `turn`, either face up. */
export function outlinePoses(part: DrawnPart, target: KnownPlate, turn: number): readonly Pose[] {
  if (part.outline === null || target.outline === null) return [];
  const [from, to] = [centroidOf(target.outline), part.outline.middle];
  return [false, true].flatMap((mirrored) =>
    [0, 90, 180, 270].map((quarter): Pose => {
      const bare: Pose = { turn: (turn + quarter) % 360, mirrored, dx: 0, dy: 0 };
      const turned = toFile(bare, from);
      return { ...bare, dx: to.x - turned.x, dy: to.y - turned.y };
    }),
  );
}

/** Of a plate whose outline is known by its box alone: box on box, as our own files lie; a plate without cut holes has no other. */
function boxPoses({ outline }: DrawnPart, { box }: KnownPlate): readonly Pose[] {
  if (box === undefined || outline === null) return [];
  const drawn = extentOf(outline.contour);
  return [{ turn: 0, mirrored: false, dx: drawn.x0 - box.x0, dy: drawn.y0 - box.y0 }];
}

/** Holes that lie where they should. */
export function countExact({ pairs }: Alignment): number {
  return pairs.filter(({ distance }) => distance <= POSITION_MM).length;
}

/** Longest chains of seeds that are looked at; symmetric bolt circles give two for every hole. */
const MOST_SEEDS = 4000;

function seedPlacements(part: DrawnPart, target: KnownPlate, tolerance: number): readonly Pose[] {
  const seeds: Pose[] = [...boxPoses(part, target)];
  const isLoose = tolerance > CAPTURE_MM;
  if (isLoose && part.holes.length * target.holes.length > 2500) return [...seeds, ...outlinePoses(part, target, 0)];
  for (const [a, b] of basePairs(target)) {
    const length = millimetresBetween(a, b);
    for (const first of part.holes) {
      for (const second of part.holes) {
        if (first === second || Math.abs(millimetresBetween(first.at, second.at) - length) > tolerance) continue;
        const pairs: readonly Pair[] = [
          [a, first.at],
          [b, second.at],
        ];
        if (seeds.length < MOST_SEEDS) seeds.push(placementOf(pairs, false), placementOf(pairs, true));
      }
    }
  }
  return [...seeds, ...outlinePoses(part, target, 0)];
}

/** Up to four pairs of holes with no hole in common, long ones first: three missing holes leave one of them whole. */
function basePairs({ holes }: KnownPlate): readonly (readonly [Point, Point])[] {
  const left = holes.map(({ at }) => at);
  const pairs: (readonly [Point, Point])[] = [];
  while (left.length > 1 && pairs.length < 4) {
    let [one, other, longest] = [0, 1, -1];
    left.forEach((a, i) => {
      for (let j = i + 1; j < left.length; j++) {
        const length = millimetresBetween(a, left[j] ?? a);
        if (length > longest) [one, other, longest] = [i, j, length];
      }
    });
    const [a, b] = [left[one], left[other]];
    if (a !== undefined && b !== undefined) pairs.push([a, b]);
    left.splice(other, 1);
    left.splice(one, 1);
  }
  return pairs;
}

function bestOf(seeds: readonly Pose[], part: DrawnPart, target: KnownPlate): Alignment | null {
  const countOf = exactCounter(part, target);
  const rated = distinct(seeds).map((pose) => ({ pose, exact: countOf(pose) }));
  const most = rated.reduce((best, { exact }) => Math.max(best, exact), 0);
  const size = Math.max(1, part.holes.length * target.holes.length);
  const few = Math.min(500, Math.max(32, Math.floor(MOST_DISTANCES / size)));
  const leading = rated
    .filter(({ exact }) => exact === most)
    .sort((a, b) => simplicity(a.pose) - simplicity(b.pose))
    .slice(0, few)
    .map(({ pose }) => ({ pose, pairs: pairHoles(pose, part, target) }));
  const longest = leading.reduce((best, { pairs }) => Math.max(best, pairs.length), 0);
  const refined = leading
    .filter(({ pairs }) => pairs.length === longest)
    .map(({ pose, pairs }) => refine(pose, pairs, part, target));
  return refined.map((pose) => judge(pose, part, target)).sort(compareAlignments)[0] ?? null;
}

/** Distances between holes that are worked out for placements that agree alike. */
const MOST_DISTANCES = 4_000_000;

/** Small turns first, mirrored ones last. */
function simplicity({ turn, mirrored }: Pose): number {
  return Math.min(turn, 360 - turn) + (mirrored ? 360 : 0);
}

/** Counts the holes of the plate that have one of the file where they should, through a grid of cells of 1 mm. */
function exactCounter(part: DrawnPart, target: KnownPlate): (pose: Pose) => number {
  const cells = new Map<string, Point[]>();
  const cellOf = (x: number, y: number) => `${Math.floor(x)} ${Math.floor(y)}`;
  for (const { at } of part.holes) {
    const key = cellOf(at.x, at.y);
    const others = cells.get(key);
    if (others === undefined) cells.set(key, [at]);
    else others.push(at);
  }
  const isNear = (point: Point) => {
    for (const x of cellsAround(point.x)) {
      for (const y of cellsAround(point.y)) {
        if (cells.get(`${x} ${y}`)?.some((at) => millimetresBetween(at, point) <= POSITION_MM)) return true;
      }
    }
    return false;
  };
  return (pose) => target.holes.filter(({ at }) => isNear(toFile(pose, at))).length;
}

/** The cell of a coordinate, and its neighbour where that is within reach. */
function cellsAround(value: number): readonly number[] {
  return [...new Set([Math.floor(value - POSITION_MM), Math.floor(value + POSITION_MM)])];
}

/** Placements apart by more than the threshold of a position anywhere on a plate of 10 m. */
function distinct(seeds: readonly Pose[]): readonly Pose[] {
  const known = new Map<string, Pose>();
  for (const seed of seeds) {
    const key = [Math.round(seed.turn * 2000), seed.mirrored, Math.round(seed.dx * 50), Math.round(seed.dy * 50)].join(
      " ",
    );
    if (!known.has(key)) known.set(key, seed);
  }
  return [...known.values()];
}

/** Each hole of the plate with the nearest of the file that no nearer pair has taken. */
function pairHoles(pose: Pose, part: DrawnPart, target: KnownPlate): readonly HolePair[] {
  const drawn = part.holes.map(({ at }) => toPlate(pose, at));
  const near = target.holes.flatMap(({ at, diameter }, index) =>
    drawn.flatMap((point, other): HolePair[] => {
      const distance = millimetresBetween(at, point);
      if (distance > CAPTURE_MM) return [];
      return [{ target: index, drawn: other, distance, diameter: (part.holes[other]?.diameter ?? 0) - diameter }];
    }),
  );
  const [targets, others] = [new Set<number>(), new Set<number>()];
  return near
    .sort((a, b) => a.distance - b.distance || a.target - b.target || a.drawn - b.drawn)
    .filter(({ target: index, drawn: other }) => {
      if (targets.has(index) || others.has(other)) return false;
      targets.add(index);
      others.add(other);
      return true;
    })
    .sort((a, b) => a.target - b.target);
}

/** By least squares over the holes that lie right where they are most, else over all. */
function refine(pose: Pose, pairs: readonly HolePair[], part: DrawnPart, target: KnownPlate): Pose {
  const exact = pairs.filter(({ distance }) => distance <= POSITION_MM);
  const used = 2 * exact.length > pairs.length ? exact : pairs;
  if (used.length < 2) return pose;
  const origin = { x: 0, y: 0 };
  const points = used.map(
    (pair): Pair => [target.holes[pair.target]?.at ?? origin, part.holes[pair.drawn]?.at ?? origin],
  );
  return placementOf(points, pose.mirrored);
}

/** Everything that is compared under a pose. */
export function judge(pose: Pose, part: DrawnPart, target: KnownPlate): Alignment {
  const onPlate = (drawn: DrawnContour) => ({ ...drawn, contour: contourToPlate(drawn.contour, pose) });
  const outlineGap =
    part.outline === null || target.outline === null ? null : contourGap(onPlate(part.outline), target.outline);
  const openingsOff = unmatched(part.openings.map(onPlate), target.openings);
  return { pose, pairs: pairHoles(pose, part, target), outlineGap, openingsOff };
}

/** Openings of either that are none of the other's. */
function unmatched(drawn: readonly DrawnContour[], openings: readonly Contour[]): number {
  const isSame = (one: DrawnContour, opening: Contour) => contourGap(one, opening) <= CONTOUR_MM;
  const missing = openings.filter((opening) => !drawn.some((one) => isSame(one, opening)));
  const extra = drawn.filter((one) => !openings.some((opening) => isSame(one, opening)));
  return missing.length + extra.length;
}

/** Better ones first; of placements that are alike the one that is not mirrored, then the least turn. */
function compareAlignments(a: Alignment, b: Alignment): number {
  const [one, other] = [ranks(a), ranks(b)];
  for (const [index, rank] of one.entries()) {
    const difference = rank - (other[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

function ranks(alignment: Alignment): readonly number[] {
  const { pose, pairs, outlineGap, openingsOff } = alignment;
  const sized = pairs.filter(({ diameter }) => Math.abs(diameter) <= DIAMETER_MM).length;
  return [
    -countExact(alignment),
    -pairs.length,
    -sized,
    outlineGap !== null && outlineGap > CONTOUR_MM ? 1 : 0,
    openingsOff,
    pose.mirrored ? 1 : 0,
    Math.min(pose.turn, 360 - pose.turn),
    pose.turn,
    pairs.reduce((sum, { distance }) => sum + distance, 0),
  ];
}

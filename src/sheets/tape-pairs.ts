/** Which distances fix a pattern of rods with a tape: pure geometry, no words. */
import type { Hole } from "../template/model.js";
import { greatestOf } from "../units/extremes.js";
import { groupBy } from "../units/group-by.js";
import { between, longestPairs, type RodPair } from "./diagonals.js";
import { type Axis, lineOf } from "./located.js";

/** Beyond this many rods only lines, corners and the longest distance are given. */
const MOST_FIXED = 16;

/** Gauges of a group: along each line of rods each to the next and end to end, corners, and what else fixes every rod. */
export function pairsWithin(rods: readonly Hole[]): readonly RodPair[] {
  const [nw, ne, se, sw] = cornersOf(rods);
  const round: readonly RodPair[] = [
    [nw, ne],
    [ne, se],
    [se, sw],
    [sw, nw],
    [nw, se],
    [ne, sw],
  ];
  const along = [...pairsAlong(rods, "y"), ...pairsAlong(rods, "x")];
  const pairs = once([...along, ...round, ...longestPairs(rods).slice(0, 1)]);
  if (rods.length > MOST_FIXED) return pairs;
  return once([...pairs, ...pairsRound(rods), ...pairsThatFix(rods, pairs)]);
}

/** Between two groups: the two nearest pairs of rods that share none, both diagonals round the two, and what else fixes one to the other. */
export function pairsAcross(one: readonly Hole[], other: readonly Hole[]): readonly RodPair[] {
  const all = one.flatMap((a) => other.map((b): RodPair => [a, b])).sort((p, q) => between(p) - between(q));
  const [nearest] = all;
  const next = all.find((pair) => nearest !== undefined && pair[0] !== nearest[0] && pair[1] !== nearest[1]);
  const [nw, ne, se, sw] = cornersOf([...one, ...other]);
  const diagonals: readonly RodPair[] = [
    [nw, se],
    [ne, sw],
  ];
  const isAcross = ([a, b]: RodPair) => one.includes(a) !== one.includes(b);
  const wanted = [...[nearest, next].filter((pair) => pair !== undefined), ...diagonals.filter(isAcross)];
  return once([...wanted, ...pairsThatHold(all, wanted)]);
}

/** What is added until no pair holds one group to the other any better: steep ones first, the nearest first. */
function pairsThatHold(all: readonly RodPair[], wanted: readonly RodPair[]): readonly RodPair[] {
  const size = greatestOf(all.map(between), 1) / 1e6;
  const held: Pull[] = [];
  const holds = (pair: RodPair, least: number): boolean => {
    const rest = held.reduce((left, each) => without(left, each), pullOf(pair, size));
    const length = Math.hypot(rest[0], rest[1], rest[2]);
    if (length < least) return false;
    held.push([rest[0] / length, rest[1] / length, rest[2] / length]);
    return true;
  };
  for (const pair of wanted) holds(pair, LEAST_HOLD);
  return [LEAST_SLANT, LEAST_HOLD].flatMap((least) => all.filter((pair) => held.length < 3 && holds(pair, least)));
}

/** A pair that holds by less than this does not: its line runs through where those before it meet, or along with them. */
const LEAST_HOLD = 0.02;

/** Along x, along y and turning about the middle: how a distance between two stiff groups holds one to the other. */
type Pull = readonly [number, number, number];

function pullOf([a, b]: RodPair, size: number): Pull {
  const [x, y] = [b.center.x - a.center.x, b.center.y - a.center.y];
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length, (a.center.x * y - a.center.y * x) / length / size];
}

function without([x, y, turn]: Pull, [ux, uy, uturn]: Pull): Pull {
  const share = x * ux + y * uy + turn * uturn;
  return [x - share * ux, y - share * uy, turn - share * uturn];
}

/** In the order in which they came, each once, whichever rod is named first. */
function once(pairs: readonly RodPair[]): readonly RodPair[] {
  const seen = new Set<string>();
  return pairs.filter(([a, b]) => {
    const key = a.tag < b.tag ? `${a.tag}|${b.tag}` : `${b.tag}|${a.tag}`;
    const isNew = a !== b && !seen.has(key);
    seen.add(key);
    return isNew;
  });
}

/** The outermost rods, clockwise from upper left; one rod may be several. */
export function cornersOf(rods: readonly Hole[]): readonly [Hole, Hole, Hole, Hole] {
  const corner = (sx: number, sy: number) => {
    const reach = ({ center }: Hole) => center.x * sx + center.y * sy;
    return rods.reduce((best, rod) => (reach(rod) > reach(best) + 1e-9 ? rod : best));
  };
  return [corner(-1, 1), corner(1, 1), corner(1, -1), corner(-1, -1)];
}

/** Rods with one coordinate in common, each to the next; of more than two, the two ends too. */
function pairsAlong(rods: readonly Hole[], common: Axis): readonly RodPair[] {
  const along = common === "y" ? "x" : "y";
  return [...groupBy(rods, (rod) => `${lineOf(rod, common)}`).values()].flatMap((line) => {
    const sorted = [...line].sort((a, b) => a.center[along] - b.center[along]);
    const steps = sorted.slice(1).map((b, i): RodPair => [sorted[i] ?? b, b]);
    const [first, last] = [sorted[0], sorted.at(-1)];
    return first === undefined || last === undefined || sorted.length < 3 ? steps : [...steps, [first, last]];
  });
}

/** Each rod to the next round the outside (convex hull, Andrew's monotone chain), rods on its sides included. */
function pairsRound(rods: readonly Hole[]): readonly RodPair[] {
  const sorted = [...rods].sort((a, b) => a.center.x - b.center.x || a.center.y - b.center.y);
  const rim = [...chainOf(sorted), ...chainOf([...sorted].reverse())];
  return rim.map((a, i): RodPair => [a, rim[(i + 1) % rim.length] ?? a]);
}

function chainOf(sorted: readonly Hole[]): readonly Hole[] {
  const chain: Hole[] = [];
  for (const rod of sorted) {
    while (chain.length > 1 && turnsRight(chain.at(-2) ?? rod, chain.at(-1) ?? rod, rod)) chain.pop();
    chain.push(rod);
  }
  return chain.slice(0, -1);
}

function turnsRight(a: Hole, b: Hole, c: Hole): boolean {
  const [p, q, r] = [a.center, b.center, c.center];
  return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x) < -1e-6;
}

/** What is added so that every rod has two distances, not in one line, from rods that are fixed before it. */
function pairsThatFix(rods: readonly Hole[], pairs: readonly RodPair[]): readonly RodPair[] {
  const [start] = longestPairs(rods);
  if (start === undefined) return [];
  const fixed = new Set<Hole>(start);
  const added: RodPair[] = [start];
  const waiting = new Set(rods.filter((rod) => !fixed.has(rod)));
  while (waiting.size > 0) {
    const next = mostReached(waiting, fixed, [...pairs, ...added]);
    for (const pair of missingPairs(next.rod, next.from, fixed)) added.push(pair);
    fixed.add(next.rod);
    waiting.delete(next.rod);
  }
  return added;
}

interface Reached {
  readonly rod: Hole;
  /** Fixed rods from which it is taped. */
  readonly from: readonly Hole[];
}

function mostReached(waiting: ReadonlySet<Hole>, fixed: ReadonlySet<Hole>, pairs: readonly RodPair[]): Reached {
  const from = new Map<Hole, Hole[]>([...waiting].map((rod) => [rod, []]));
  for (const [a, b] of pairs) {
    if (fixed.has(a)) from.get(b)?.push(a);
    if (fixed.has(b)) from.get(a)?.push(b);
  }
  const reached = [...from].map(([rod, others]): Reached => ({ rod, from: others }));
  return reached.reduce((best, each) => (spread(each) > spread(best) ? each : best));
}

function spread({ rod, from }: Reached): number {
  return from.length === 0
    ? 0
    : 1 +
        greatestOf(
          from.flatMap((a, i) => from.slice(i + 1).map((b) => slant(rod, a, b))),
          0,
        );
}

/** Sine of the angle at which two taped lines meet: 0 along one line, 1 square. */
function slant(rod: Hole, a: Hole, b: Hole): number {
  const [ax, ay] = [a.center.x - rod.center.x, a.center.y - rod.center.y];
  const [bx, by] = [b.center.x - rod.center.x, b.center.y - rod.center.y];
  const lengths = Math.hypot(ax, ay) * Math.hypot(bx, by);
  return lengths === 0 ? 0 : Math.abs(ax * by - ay * bx) / lengths;
}

/** Two lines that meet at less than this angle fix a rod poorly (common practice: 30 degrees at least in taping). */
const LEAST_SLANT = 0.4;

function missingPairs(rod: Hole, from: readonly Hole[], fixed: ReadonlySet<Hole>): readonly RodPair[] {
  if (spread({ rod, from }) >= 1 + LEAST_SLANT) return [];
  const near = [...fixed]
    .filter((other) => !from.includes(other))
    .sort((a, b) => between([rod, a]) - between([rod, b]));
  const first = from[0] ?? near[0];
  if (first === undefined) return [];
  const steep = near.find((other) => other !== first && slant(rod, first, other) >= LEAST_SLANT);
  const best =
    steep ??
    near.reduce<Hole | undefined>(
      (a, b) => (a === undefined || slant(rod, first, b) > slant(rod, first, a) ? b : a),
      undefined,
    );
  const pairs: RodPair[] = from.length === 0 ? [[rod, first]] : [];
  return best === undefined || best === first || slant(rod, first, best) === 0 ? pairs : [...pairs, [rod, best]];
}

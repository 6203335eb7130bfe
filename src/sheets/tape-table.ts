/** Distances between rods that are taped in the field. */
import { boltCircleOf } from "../patterns/index.js";
import type { Hole } from "../template/model.js";
import { formatLength, type Length, nanometres, type Unit } from "../units/index.js";
import { between, type RodPair } from "./diagonals.js";
import { circleLetters, groupLetter, lineOf } from "./located.js";
import type { SheetRequest } from "./request.js";
import { spellingOf } from "./spelling.js";
import type { TableText } from "./table.js";
import { cornersOf, pairsAcross, pairsWithin } from "./tape-pairs.js";
import { tapeFigure, unrounded } from "./taped.js";

const NONE: ReadonlySet<number> = new Set();

/** One distance, and between which rods it is taped: pairs that are alike in what they are and in distance share it. */
interface Gauge {
  readonly what: string;
  readonly distance: Length;
  readonly pairs: readonly string[];
}

/**
 * Gauges inside each group, both diagonals, group to group, and from a working point about which the rods do not lie evenly; of a
 * bolt circle its chords and the distance across. As a tape has them, to 1/16 in or 1 mm; the exact figure in brackets.
 */
export function tapeTable(request: SheetRequest): TableText | null {
  const { job } = request;
  const gauges = gaugesOf(request);
  if (gauges.length === 0) return null;
  const shown = gauges.slice(0, gauges.length > MOST_GAUGES ? MOST_GAUGES - 1 : MOST_GAUGES);
  const left = gauges.length - shown.length;
  const { center, gauge } = spellingOf(job.editions);
  return {
    name: "tape-table",
    heading: `TAPE CHECK, ${center} TO ${center}`,
    columns: [
      { title: "RODS", share: 0.38, align: "start" },
      { title: gauge, share: 0.2, align: "start" },
      { title: job.unit === "in" ? "TO 1/16 IN" : "TO 1 MM", share: 0.22, align: "end" },
      { title: "(EXACT)", share: 0.2, align: "end" },
    ],
    rows: shown.flatMap((each) => gaugeRows(each, job.unit)),
    foot: left > 0 ? [`AND ${left} FURTHER ${gauge}S: THE HOLE TABLE HAS THE PLACES OF ALL RODS`] : [],
    under: [],
    strong: NONE,
  };
}

const MOST_GAUGES = 16;

/** Alike ones put together, in the order in which they first come. */
function gaugesOf(request: SheetRequest): readonly Gauge[] {
  const { unit } = request.job;
  const alike = new Map<string, { what: string; distance: Length; pairs: string[] }>();
  for (const { what, distance, pair } of distancesOf(request)) {
    const exact = unrounded(distance, unit);
    const key = `${what} ${formatLength(exact, unit)}`;
    const known = alike.get(key);
    if (known === undefined) alike.set(key, { what, distance: exact, pairs: [pair] });
    else known.pairs.push(pair);
  }
  return [...alike.values()];
}

interface Distance {
  readonly what: string;
  readonly distance: Length;
  readonly pair: string;
}

function distancesOf(request: SheetRequest): readonly Distance[] {
  const { plate, base } = request;
  if (request.piece?.role === "segment") return alongSegment(plate.holes);
  const rods = plate.holes.filter(({ role }) => role === "rod");
  const circles = circleLetters(request);
  const groups = base.groups
    .map(({ letter, pattern }) => ({
      pitched: boltCircleOf(pattern) !== null,
      rods: rods.filter((rod) => groupLetter(rod) === letter),
    }))
    .filter((group) => group.rods.length > 0);
  const inside = groups.flatMap((group) =>
    group.pitched ? circleDistances(group.rods) : plain(pairsWithin(group.rods)),
  );
  const across = groups.slice(1).flatMap((group, i) => plain(pairsAcross(groups[i]?.rods ?? [], group.rods)));
  return [...inside, ...across, ...fromPoint(rods.filter((rod) => !circles.has(groupLetter(rod))))];
}

function plain(pairs: readonly RodPair[]): readonly Distance[] {
  return pairs.map((pair) => ({ what: directionOf(pair), distance: between(pair), pair: pairName(pair) }));
}

function directionOf([a, b]: RodPair): string {
  if (lineOf(a, "y") === lineOf(b, "y")) return "ALONG X";
  return lineOf(a, "x") === lineOf(b, "x") ? "ALONG Y" : "DIAGONAL";
}

/** The lower tag first: A2-A10. */
function pairName([a, b]: RodPair): string {
  const [low, high] = isBefore(b.tag, a.tag) ? [b, a] : [a, b];
  return `${low.tag}-${high.tag}`;
}

function isBefore(one: string, other: string): boolean {
  const [letter, number] = [one.replace(/\d+/, ""), Number(one.replace(/\D+/, ""))];
  const [otherLetter, otherNumber] = [other.replace(/\d+/, ""), Number(other.replace(/\D+/, ""))];
  return letter === otherLetter ? number < otherNumber : letter < otherLetter;
}

/** Of a segment: each rod to the next, and its first to its last, in the order of their tags. */
function alongSegment(holes: readonly Hole[]): readonly Distance[] {
  const rods = holes.filter(({ role }) => role === "rod");
  const [first, last] = [rods[0], rods.at(-1)];
  const steps = rods.slice(1).map((to, i): readonly [Hole, Hole] => [rods[i] ?? to, to]);
  const ends: readonly (readonly [Hole, Hole])[] = first && last && rods.length > 2 ? [[first, last]] : [];
  const distances = (pairs: readonly (readonly [Hole, Hole])[], what: string) =>
    pairs.map(([a, b]): Distance => ({ what, distance: between([a, b]), pair: `${a.tag}-${b.tag}` }));
  return [...distances(steps, "NEXT"), ...distances(ends, "ENDS")];
}

/** Of rods evenly round a circle, in the order of their tags: one distance stands for those that are alike all round. */
function circleDistances(rods: readonly Hole[]): readonly Distance[] {
  const farthest = Math.floor(rods.length / 2);
  return ringSteps(rods.length).flatMap((step): Distance[] => {
    const [a, b] = [rods[0], rods[step]];
    if (a === undefined || b === undefined) return [];
    const all = rods.length > 2 ? " AND ALL ROUND" : "";
    const isAcross = step === farthest && rods.length !== 3;
    return [{ what: isAcross ? "ACROSS" : "CHORD", distance: between([a, b]), pair: `${pairName([a, b])}${all}` }];
  });
}

/**
 * To the next rod and straight across. Beyond five rods that leaves them room to give (six opposite in pairs lie on one conic),
 * so that the next but one is taped too.
 */
function ringSteps(count: number): readonly number[] {
  const steps = count < 6 ? [1, Math.floor(count / 2)] : [1, 2, Math.floor(count / 2)];
  return [...new Set(steps)].filter((step) => step > 0);
}

/** To the outermost rods, where these do not lie evenly about the working point. */
function fromPoint(rods: readonly Hole[]): readonly Distance[] {
  const places = new Set(rods.map((rod) => `${lineOf(rod, "x")} ${lineOf(rod, "y")}`));
  if (rods.every((rod) => places.has(`${-lineOf(rod, "x")} ${-lineOf(rod, "y")}`))) return [];
  return [...new Set(cornersOf(rods))].flatMap((rod) => {
    const { x, y } = rod.center;
    const what = y === 0 ? "ALONG X" : x === 0 ? "ALONG Y" : "DIAGONAL";
    const distance = nanometres(Math.hypot(x, y) * 1e6);
    return distance === 0 ? [] : [{ what, distance, pair: `W.P.-${rod.tag}` }];
  });
}

/** The names of the pairs in as many rows as they need, the figures in the first. */
function gaugeRows({ what, distance, pairs }: Gauge, unit: Unit): readonly (readonly string[])[] {
  const [first = "", ...more] = nameLines(pairs);
  return [
    [first, what, tapeFigure(distance, unit), `(${formatLength(distance, unit)})`],
    ...more.map((names) => [names, "", "", ""]),
  ];
}

/** Names that stand beside each other, and how many more are only counted. */
const LINE = 17;
const MOST_LINES = 3;

function nameLines(pairs: readonly string[]): readonly string[] {
  const lines: string[] = [];
  for (const [i, pair] of pairs.entries()) {
    const joined = `${lines.at(-1)}, ${pair}`;
    const isLast = lines.length === MOST_LINES;
    if (lines.length > 0 && joined.length <= LINE) lines[lines.length - 1] = joined;
    else if (isLast) return [...lines, `AND ${pairs.length - i} ALIKE`];
    else lines.push(pair);
  }
  return lines;
}

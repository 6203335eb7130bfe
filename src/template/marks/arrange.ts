/** Labels and titles together: which arrangement of a crowded plate loses least. */
import type { Length } from "../../units/length.js";
import type { Mark, MarkKind, OmittedMark } from "../model.js";
import type { Ground } from "./ground.js";
import type { Label } from "./labels.js";
import { placeLabels } from "./labels.js";
import type { Title } from "./titles.js";
import { placeTitles } from "./titles.js";

/** Marks placed, those left out, and how many stand where a nut or washer will cover them. */
export interface Arrangement {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
  readonly covered: number;
}

/**
 * Labels of one plate share a height: the largest at which none is left out or under a nut. Where titles then find no
 * room, labels are set smaller; marks stand under nuts only as a last resort, in the arrangement that loses least.
 */
export function arrange(
  ground: Ground,
  labels: readonly Label[],
  titles: readonly Title[],
  heights: readonly Length[],
): Arrangement {
  const open = best(arrangements(ground, labels, titles, heights, false));
  if (open !== null && open.omitted.length === 0) return open;
  const covered = best(arrangements(ground, labels, titles, heights, true));
  return better(open, covered) ?? { marks: [], omitted: [], covered: 0 };
}

/** One arrangement a letter height; without `lastResort` only those in which every label stands clear of nuts. */
function* arrangements(
  ground: Ground,
  labels: readonly Label[],
  titles: readonly Title[],
  heights: readonly Length[],
  lastResort: boolean,
): Generator<Arrangement> {
  for (const height of heights) {
    const placed = placeLabels(ground, labels, height, lastResort);
    if (placed.omitted.length > 0 && !lastResort) continue;
    yield joined([placed, titlesInBestOrder(placed.ground, titles, heights)]);
  }
  if (lastResort) yield* markFirst(ground, labels, titles, heights);
}

/** On the most crowded plates the mark goes before the tags. */
function* markFirst(
  ground: Ground,
  labels: readonly Label[],
  titles: readonly Title[],
  heights: readonly Length[],
): Generator<Arrangement> {
  const [mark, rest] = [titles.filter(({ kind }) => kind === "mark"), titles.filter(({ kind }) => kind !== "mark")];
  for (const height of heights) {
    const first = placeTitles(ground, mark, [height]);
    const placed = placeLabels(first.ground, labels, height, true);
    yield joined([first, placed, titlesInBestOrder(placed.ground, rest, heights)]);
  }
}

function joined(parts: readonly Arrangement[]): Arrangement {
  return {
    marks: parts.flatMap(({ marks }) => marks),
    omitted: parts.flatMap(({ omitted }) => omitted),
    covered: parts.reduce((sum, { covered }) => sum + covered, 0),
  };
}

/** Arrows first, since they belong at the ends of their axes; the mark and TOP first where that loses less. */
function titlesInBestOrder(ground: Ground, titles: readonly Title[], heights: readonly Length[]): Arrangement {
  const arrows = titles.filter(({ kind }) => kind === "axis");
  const others = titles.filter(({ kind }) => kind !== "axis");
  const first = placeTitles(ground, [...arrows, ...others], heights);
  if (loss(first) === 0) return first;
  const second = placeTitles(ground, [...others, ...arrows], heights);
  return loss(second) <= loss(first) ? second : first;
}

/** What is lost with a mark that is left out: a plate without its piece mark, which could be any other, is worse than all else. */
const WORTH: Readonly<Record<MarkKind, number>> = {
  mark: 1_000_000,
  tag: 300,
  top: 300,
  punch: 200,
  axis: 100,
  "centre-line": 100,
  north: 90,
  grid: 80,
};

/** A covered mark counts less than any that is left out. */
function loss({ omitted, covered }: Arrangement): number {
  return omitted.reduce((sum, { kind }) => sum + WORTH[kind], 0) + Math.min(covered, 99);
}

/** The first arrangement that loses nothing, else the first of those that lose least. */
function best(candidates: Iterable<Arrangement>): Arrangement | null {
  let found: Arrangement | null = null;
  for (const candidate of candidates) {
    found = better(found, candidate);
    if (found !== null && loss(found) === 0) break;
  }
  return found;
}

function better(a: Arrangement | null, b: Arrangement | null): Arrangement | null {
  if (a === null || b === null) return a ?? b;
  return loss(b) < loss(a) ? b : a;
}

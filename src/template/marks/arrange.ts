/** Everything that is scribed, together: which arrangement of a crowded plate loses least. */
import type { Length } from "../../units/length.js";
import type { Mark, MarkKind, OmittedMark } from "../model.js";
import type { Ticks } from "./axes.js";
import type { Ground } from "./ground.js";
import { take } from "./ground.js";
import type { Label } from "./labels.js";
import { placeLabels } from "./labels.js";
import type { PlacedTitles, Title } from "./titles.js";
import { placeTitles } from "./titles.js";

/** Marks placed, those left out, and how many stand where a nut or washer will cover them. */
export interface Arrangement {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
  readonly covered: number;
}

/** What is to stand on a plate, and the heights of letters that the shop allows, the largest first. */
export interface ToScribe {
  readonly labels: readonly Label[];
  readonly titles: readonly Title[];
  /** Ticks at the edges, on the ground that is left for them. */
  readonly ticks: (ground: Ground) => Ticks;
  readonly heights: readonly Length[];
}

/**
 * Labels of one plate share a height: the largest at which none is left out or under a nut. Where titles then find no
 * room, labels are set smaller; tags stand under nuts only as a last resort, so that nothing essential is left out, in the
 * arrangement that loses least.
 */
export function arrange(ground: Ground, all: ToScribe): Arrangement {
  const open = best(arrangements(ground, all, false));
  if (open !== null && !ESSENTIAL.some((rank) => lost(open, rank) > 0)) return open;
  const covered = best(arrangements(ground, all, true));
  return better(open, covered) ?? { marks: [], omitted: [], covered: 0 };
}

/** One arrangement a letter height; without `lastResort` only those in which every label stands clear of nuts. */
function* arrangements(ground: Ground, all: ToScribe, lastResort: boolean): Generator<Arrangement> {
  for (const height of all.heights) {
    const labelled = labelsFirst(ground, all, height, lastResort);
    if (labelled !== null) yield labelled;
  }
  if (lastResort) for (const height of all.heights) yield byRank(ground, all, height);
}

/** Labels, which can stand only beside their holes, before what can stand anywhere. */
function labelsFirst(bare: Ground, all: ToScribe, height: Length, lastResort: boolean): Arrangement | null {
  const ticks = placedTicks(bare, all);
  const labels = placeLabels(ticks.ground, all.labels, height, lastResort);
  if (labels.omitted.length > 0 && !lastResort) return null;
  return joined([ticks, labels, titlesInBestOrder(labels.ground, all.titles, all.heights)]);
}

/** On the most crowded plates: the piece mark before all else, then TOP, then the tags. */
function byRank(bare: Ground, all: ToScribe, height: Length): Arrangement {
  const isLeading = ({ kind }: Title) => kind === "mark" || kind === "top";
  const leading = placeTitles(bare, all.titles.filter(isLeading), [height], "thorough");
  const labels = placeLabels(leading.ground, all.labels, height, true);
  const ticks = placedTicks(labels.ground, all);
  const rest = all.titles.filter((title) => !isLeading(title));
  return joined([leading, labels, ticks, titlesInBestOrder(ticks.ground, rest, all.heights)]);
}

function placedTicks(bare: Ground, { ticks }: ToScribe): Arrangement & { readonly ground: Ground } {
  const { marks, omitted } = ticks(bare);
  const taken = marks.map(({ extent }) => ({ box: extent, letters: 0 }));
  return { marks, omitted, covered: 0, ground: take(bare, taken) };
}

function joined(parts: readonly Arrangement[]): Arrangement {
  return {
    marks: parts.flatMap(({ marks }) => marks),
    omitted: parts.flatMap(({ omitted }) => omitted),
    covered: parts.reduce((sum, { covered }) => sum + covered, 0),
  };
}

/** What is bound to the axes first; the others first where that loses less. */
function titlesInBestOrder(ground: Ground, titles: readonly Title[], heights: readonly Length[]): PlacedTitles {
  const isBound = ({ kind }: Title) => kind === "axis" || kind === "grid";
  const [bound, others] = [titles.filter(isBound), titles.filter((title) => !isBound(title))];
  const first = placeTitles(ground, [...bound, ...others], heights);
  if (!isWorse(first, NOTHING_LOST)) return first;
  const second = placeTitles(ground, [...others, ...bound], heights);
  return isWorse(second, first) ? first : second;
}

/**
 * From what is missed most: a plate without its piece mark could be any other, one without TOP can lie upside down. One more
 * of the former is worse than any number of the latter.
 */
export const RANKS: readonly MarkKind[] = [
  "mark",
  "joint",
  "top",
  "tag",
  "punch",
  "north",
  "axis",
  "centre-line",
  "size",
  "grid",
];

/** What is never given up for the sake of less: also not by an opening. */
export const ESSENTIAL: readonly MarkKind[] = ["mark", "top", "tag"];

const NOTHING_LOST: Arrangement = { marks: [], omitted: [], covered: 0 };

/** True where `a` loses more than `b`. What stands under a nut counts less than anything that is left out. */
function isWorse(a: Arrangement, b: Arrangement): boolean {
  for (const rank of RANKS) {
    const [one, other] = [lost(a, rank), lost(b, rank)];
    if (one !== other) return one > other;
  }
  return a.covered > b.covered;
}

function lost({ omitted }: Arrangement, rank: MarkKind): number {
  return omitted.filter(({ kind, cause }) => kind === rank && cause === "room").length;
}

/** The first arrangement that loses nothing, else the first of those that lose least. */
function best(candidates: Iterable<Arrangement>): Arrangement | null {
  let found: Arrangement | null = null;
  for (const candidate of candidates) {
    found = better(found, candidate);
    if (found !== null && !isWorse(found, NOTHING_LOST)) break;
  }
  return found;
}

function better(a: Arrangement | null, b: Arrangement | null): Arrangement | null {
  if (a === null || b === null) return a ?? b;
  return isWorse(a, b) ? b : a;
}

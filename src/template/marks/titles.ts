/** What stands once on a plate: mark and revision, TOP, the two arrows. Tried about an ideal place, then further and further off. */
import type { Point } from "../../geometry/index.js";
import type { Length } from "../../units/length.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Mark, MarkKind, OmittedMark } from "../model.js";
import type { Ground } from "./ground.js";
import { isFree, take } from "./ground.js";
import type { Block } from "./lettering.js";
import type { Candidate } from "./placing.js";
import { boxOf, roomOf, toMark } from "./placing.js";

/** A title: how it looks at a letter height in mm (several shapes, best first), and where its middle would best stand. */
export interface Title {
  readonly kind: MarkKind;
  readonly text: string;
  shapes(height: number): readonly Block[];
  ideal(block: Block): Point;
}

/** Titles placed one after another, each as large as it goes. */
export interface PlacedTitles {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
  /** How many stand where a nut or washer will cover them. */
  readonly covered: number;
  /** The ground that is left. */
  readonly ground: Ground;
}

/** Places titles in the order given: all at the largest height at which each finds its room, else each by itself. */
export function placeTitles(ground: Ground, titles: readonly Title[], heights: readonly Length[]): PlacedTitles {
  for (const height of heights) {
    const placed = placeEach(ground, titles, [height], [true]);
    if (placed.omitted.length === 0) return placed;
  }
  return placeEach(ground, titles, heights, [true, false]);
}

/** `seats`: whether to keep off the seats of nuts, in the order to try. */
function placeEach(
  bare: Ground,
  titles: readonly Title[],
  heights: readonly Length[],
  seats: readonly boolean[],
): PlacedTitles {
  let [ground, covered] = [bare, 0];
  const marks: Mark[] = [];
  const omitted: OmittedMark[] = [];
  for (const title of titles) {
    const found = placeTitle(ground, title, heights, seats);
    if (found === null) {
      omitted.push({ kind: title.kind, text: title.text, why: NO_ROOM });
      continue;
    }
    marks.push(toMark(title.kind, title.text, found.candidate, found.height));
    ground = take(ground, [roomOf(found.candidate, found.height)]);
    covered += found.covered ? 1 : 0;
  }
  return { marks, omitted, covered, ground };
}

const NO_ROOM = "no room on the plate clear of holes, edges and other marks";

interface Found {
  readonly candidate: Candidate;
  readonly height: Length;
  readonly covered: boolean;
}

function placeTitle(ground: Ground, title: Title, heights: readonly Length[], seats: readonly boolean[]): Found | null {
  for (const offSeats of seats) {
    for (const height of heights) {
      for (const block of title.shapes(height / NM_PER_MM)) {
        const candidate = nearestFree(ground, block, title.ideal(block), offSeats);
        if (candidate !== null) return { candidate, height, covered: !offSeats };
      }
    }
  }
  return null;
}

/**
 * The free place nearest to the ideal one, on a grid through it; sideways costs more, so that titles stay in line. Of two
 * places as near, the one further left, then further down. Near places are tried first: they rule out the others.
 */
function nearestFree(ground: Ground, block: Block, ideal: Point, offSeats: boolean): Candidate | null {
  const { extent } = ground;
  const [left, low] = [ideal.x - block.width / 2, ideal.y - block.height / 2];
  const xs = outward(stations(left, extent.x0, extent.x1 - block.width), left);
  const ys = outward(stations(low, extent.y0, extent.y1 - block.height), low);
  let [best, least]: [Candidate | null, number] = [null, Infinity];
  for (const x of xs) {
    const sideways = 1.5 * Math.abs(x - left);
    if (sideways > least) break;
    for (const y of ys) {
      const cost = sideways + Math.abs(y - low);
      if (cost > least) break;
      if (cost === least && best !== null && !isBefore(x, y, best.at)) continue;
      const candidate = { block, at: { x, y } };
      if (isFree(ground, boxOf(candidate), offSeats)) [best, least] = [candidate, cost];
    }
  }
  return best;
}

/** Nearest to `ideal` first, the lesser of two as near before the greater. */
function outward(values: readonly number[], ideal: number): readonly number[] {
  return [...values].sort((a, b) => Math.abs(a - ideal) - Math.abs(b - ideal));
}

function isBefore(x: number, y: number, at: Point): boolean {
  return x < at.x || (x === at.x && y < at.y);
}

/** Grid steps a side: fine enough to find the gaps between rods, few enough to be quick. */
const STEPS = 20;

/** `ideal` and places on both sides of it within from..to, evenly spaced. */
function stations(ideal: number, from: number, to: number): readonly number[] {
  if (to < from) return [];
  const step = (to - from) / STEPS || 1;
  const inside = Math.min(to, Math.max(from, ideal));
  const before = Math.floor((inside - from) / step);
  const after = Math.floor((to - inside) / step);
  return Array.from({ length: before + after + 1 }, (_, i) => inside + (i - before) * step);
}

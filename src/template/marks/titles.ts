/** What stands once on a plate: mark and revision, TOP, the two arrows. Tried about an ideal place, then further and further off. */
import type { Point } from "../../geometry/index.js";
import type { Length } from "../../units/length.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Mark, MarkKind, OmittedMark } from "../model.js";
import type { Ground } from "./ground.js";
import { easyGround, isFree, take } from "./ground.js";
import type { Block } from "./lettering.js";
import type { Candidate } from "./placing.js";
import { roomOf, toMark } from "./placing.js";

/** A title: how and where it stands at a letter height in mm, the best way first. */
export interface Title {
  readonly kind: MarkKind;
  readonly text: string;
  stands(height: number): readonly Stand[];
}

/** A block, where its middle would best stand, and along which lines it may be moved from there: +x only beyond the y axis. */
export interface Stand {
  readonly block: Block;
  readonly middle: Point;
  readonly along: "x" | "y" | "+x" | "+y" | "both";
}

/** The title with the ways in which it stands worked out once a height: every arrangement of a plate asks for them again. */
export function remembered(title: Title): Title {
  const known = new Map<number, readonly Stand[]>();
  const stands = (height: number) => {
    const found = known.get(height) ?? title.stands(height);
    known.set(height, found);
    return found;
  };
  return { ...title, stands };
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

/** How hard room is looked for: steps of the grid a side, and whether what stands under a nut will do too. */
interface Effort {
  readonly steps: number;
  readonly seats: readonly boolean[];
  /** Given up where more are left out. */
  readonly bearable: number;
}

/** Grid steps a side: fine enough to find the gaps between rods, few enough to be quick; and where no place may be missed. */
const [QUICK, THOROUGH] = [20, 80];

/** Places titles in the order given: all at the largest height at which each finds its room, else each by itself. */
export function placeTitles(
  ground: Ground,
  titles: readonly Title[],
  heights: readonly Length[],
  care: "quick" | "thorough" = "quick",
): PlacedTitles {
  for (const height of heights) {
    const placed = placeEach(ground, titles, [height], { steps: QUICK, seats: [true], bearable: 0 });
    if (placed.omitted.length === 0) return placed;
  }
  const steps = care === "quick" ? QUICK : THOROUGH;
  return placeEach(ground, titles, heights, { steps, seats: [true, false], bearable: Infinity });
}

function placeEach(bare: Ground, titles: readonly Title[], allowed: readonly Length[], effort: Effort): PlacedTitles {
  let [ground, covered, heights] = [bare, 0, allowed];
  const marks: Mark[] = [];
  const omitted: OmittedMark[] = [];
  for (const title of titles) {
    const found = placeTitle(ground, title, heights, effort);
    if (found === null) {
      omitted.push({ kind: title.kind, text: title.text, cause: "room" });
      if (omitted.length > effort.bearable) break;
      continue;
    }
    marks.push(toMark(title.kind, title.text, found.candidate, found.height));
    ground = take(ground, [roomOf(found.candidate, found.height)]);
    covered += found.covered ? 1 : 0;
    if (title.kind === "mark") heights = heights.filter((height) => height <= found.height);
  }
  return { marks, omitted, covered, ground };
}

interface Found {
  readonly candidate: Candidate;
  readonly height: Length;
  readonly covered: boolean;
}

/** A title that finds no room in its smallest letters finds none in larger ones: those are not tried. */
function placeTitle(ground: Ground, title: Title, heights: readonly Length[], { steps, seats }: Effort): Found | null {
  const place = (height: Length, offSeats: boolean) => {
    const mm = height / NM_PER_MM;
    return onGround(ground, title.stands(mm), { letters: mm, offSeats, steps });
  };
  for (const offSeats of seats) {
    const least = heights.at(-1);
    const smallest = least === undefined ? null : place(least, offSeats);
    if (least === undefined || smallest === null) continue;
    for (const height of heights.slice(0, -1)) {
      const candidate = place(height, offSeats);
      if (candidate !== null) return { candidate, height, covered: !offSeats };
    }
    return { candidate: smallest, height: least, covered: !offSeats };
  }
  return null;
}

/** Height of the letters in mm, whether to keep off the seats of nuts, and grid steps a side. */
interface Search {
  readonly letters: number;
  readonly offSeats: boolean;
  readonly steps: number;
}

/** What may stand anywhere stands off the edges in any way before it comes near them; what is bound to a line keeps its first way. */
function onGround(ground: Ground, stands: readonly Stand[], search: Search): Candidate | null {
  const easy = easyGround(ground, search.letters);
  let near: Candidate | null = null;
  for (const stand of stands) {
    const anywhere = nearestFree(ground, stand, search);
    if (anywhere === null) continue;
    const clear = nearestFree(easy, stand, search);
    if (clear !== null) return clear;
    if (stand.along !== "both") return anywhere;
    near ??= anywhere;
  }
  return near;
}

/**
 * The free place nearest to the ideal one, on a grid through it; sideways costs more, so that titles stay in line. Of two
 * places as near, the one further left, then further down. Near places are tried first: they rule out the others.
 */
function nearestFree(ground: Ground, { block, middle, along }: Stand, search: Search): Candidate | null {
  const { extent } = ground;
  const [left, low] = [middle.x - block.width / 2, middle.y - block.height / 2];
  const steps = along === "both" ? search.steps : STEPS_ON_A_LINE;
  const isFixed = { x: along === "y" || along === "+y", y: along === "x" || along === "+x" };
  const from = {
    x: along === "+x" ? Math.max(0, extent.x0) : extent.x0,
    y: along === "+y" ? Math.max(0, extent.y0) : extent.y0,
  };
  const xs = isFixed.x ? [left] : outward(left, from.x, extent.x1 - block.width, steps);
  const ys = isFixed.y ? [low] : outward(low, from.y, extent.y1 - block.height, steps);
  let [best, least]: [Candidate | null, number] = [null, Infinity];
  for (const x of xs) {
    const sideways = 1.5 * Math.abs(x - left);
    if (sideways > least) break;
    for (const y of ys) {
      const cost = sideways + Math.abs(y - low);
      if (cost > least) break;
      if (cost === least && best !== null && !isBefore(x, y, best.at)) continue;
      const box = { x0: x, y0: y, x1: x + block.width, y1: y + block.height };
      if (!isFree(ground, box, search.letters, search.offSeats)) continue;
      best = { block, at: { x, y } };
      least = cost;
    }
  }
  return best;
}

function isBefore(x: number, y: number, at: Point): boolean {
  return x < at.x || (x === at.x && y < at.y);
}

const STEPS_ON_A_LINE = 60;

/**
 * `ideal`, or the end of from..to nearest to it, and places on both sides of it within from..to, evenly spaced: nearest to
 * `ideal` first, the lesser of two as near before the greater.
 */
function outward(ideal: number, from: number, to: number, steps: number): readonly number[] {
  if (to < from) return [];
  const step = (to - from) / steps || 1;
  const inside = Math.min(to, Math.max(from, ideal));
  const [least, most] = [-Math.floor((inside - from) / step), Math.floor((to - inside) / step)];
  const at = (turn: number) => inside + turn * step;
  const places: number[] = [];
  let [below, above] = [0, 1];
  while (below >= least || above <= most) {
    const isBelow = above > most || (below >= least && Math.abs(at(below) - ideal) <= Math.abs(at(above) - ideal));
    places.push(at(isBelow ? below : above));
    if (isBelow) below -= 1;
    else above += 1;
  }
  return places;
}

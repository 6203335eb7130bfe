/** Which holes the plan locates by itself: by lines in its dimension chains, or by the callout of a bolt circle. */
import { boltCircleOf } from "../patterns/index.js";
import type { Hole } from "../template/model.js";
import { alikeHoles } from "./callouts.js";
import type { SheetPiece, SheetRequest } from "./request.js";

/** `full`: a chain through every rod line. `ends`: the first and last of them. `overall`: the plate's size alone. */
export type ChainMode = "full" | "ends" | "overall";

export type Axis = "x" | "y";

/** What it takes to tell how holes are located. */
export interface Located {
  readonly plate: Pick<SheetRequest["plate"], "holes">;
  readonly base: Pick<SheetRequest["base"], "groups">;
  readonly job: Pick<SheetRequest["job"], "unit">;
  readonly piece?: SheetPiece | null;
}

/** A line of rods across one axis: its coordinate in nanometres, and the two outermost holes on it. */
export interface HoleLine {
  readonly at: number;
  readonly low: Hole;
  readonly high: Hole;
}

/** The letter of a rod's group, from its tag. */
export function groupLetter({ tag }: Pick<Hole, "tag">): string {
  return /^\D+/.exec(tag)?.[0] ?? "";
}

/** A hole's coordinate in nanometres. */
export function lineOf({ center }: Pick<Hole, "center">, axis: Axis): number {
  return Math.round(center[axis] * 1e6);
}

/**
 * Rods on a bolt circle about the working point, equally spaced, whose callout is theirs alone: it gives diameter, count and the
 * angle of the first.
 */
function locatedByCallout(located: Located): ReadonlySet<Hole> {
  const { plate, job } = located;
  const circles = circleLetters(located);
  if (circles.size === 0) return NONE;
  const own = alikeHoles(plate.holes, job.unit).filter((alike) => {
    const letters = new Set(alike.map(groupLetter));
    const [letter = ""] = letters;
    return letters.size === 1 && circles.has(letter) && alike[0]?.role === "rod";
  });
  return new Set(own.flat());
}

const NONE: ReadonlySet<Hole> = new Set();

/** Groups on bolt circles: their rods stand in no chain, as nobody measures along an axis to them. */
export function circleLetters({ base }: Pick<Located, "base">): ReadonlySet<string> {
  return new Set(base.groups.filter(({ pattern }) => boltCircleOf(pattern) !== null).map(({ letter }) => letter));
}

/** The rod lines that chains of this mode show, ascending; rods on bolt circles have none. */
export function chainLines(located: Located, mode: ChainMode, axis: Axis): readonly HoleLine[] {
  if (mode === "overall") return [];
  const lines = holeLines(located, axis);
  return mode === "full" ? lines : lines.filter((_, i) => i === 0 || i === lines.length - 1);
}

function holeLines(located: Located, axis: Axis): readonly HoleLine[] {
  const across = axis === "x" ? "y" : "x";
  const circles = circleLetters(located);
  const byLine = new Map<number, HoleLine>();
  for (const hole of located.plate.holes) {
    if (!isChained(hole, located) || circles.has(groupLetter(hole))) continue;
    const at = lineOf(hole, axis);
    const { low, high } = byLine.get(at) ?? { low: hole, high: hole };
    byLine.set(at, {
      at,
      low: hole.center[across] < low.center[across] ? hole : low,
      high: hole.center[across] > high.center[across] ? hole : high,
    });
  }
  return [...byLine.values()].sort((a, b) => a.at - b.at);
}

/** Rods, and the bolts of a splice plate. */
function isChained({ role }: Hole, { piece }: Located): boolean {
  return role === "rod" || (role === "bolt" && piece?.role === "splice plate");
}

/** Tags of the rods of which both lines stand in chains of this mode. */
export function locatedByChains(located: Located, mode: ChainMode): ReadonlySet<string> {
  const linesOf = (axis: Axis) => new Set(chainLines(located, mode, axis).map(({ at }) => at));
  const [xs, ys] = [linesOf("x"), linesOf("y")];
  const both = located.plate.holes.filter(
    (hole) => isChained(hole, located) && xs.has(lineOf(hole, "x")) && ys.has(lineOf(hole, "y")),
  );
  return new Set(both.map(({ tag }) => tag));
}

/** Holes that the plan of this mode locates by nothing: only the hole table can. An opening about the working point is located. */
export function unlocated(located: Located, mode: ChainMode): readonly Hole[] {
  const chained = locatedByChains(located, mode);
  const called = locatedByCallout(located);
  return located.plate.holes.filter(
    (hole) => !chained.has(hole.tag) && !called.has(hole) && (hole.role !== "opening" || !isAtOrigin(hole)),
  );
}

function isAtOrigin({ center }: Hole): boolean {
  return center.x === 0 && center.y === 0;
}

/** More lines than this to an axis are told by the table, as is usual where holes are many. */
const MOST_LINES = 8;

/**
 * The modes worth trying, the fullest first: no chain is drawn through more lines than a person would follow. Rods on bolt
 * circles alone have no line, and one mode is as good as the other. Where chains of the ends alone would locate every hole, no
 * hole table comes with them: a line that finds no room in them needs one. Rods of a segment stand along an arc or in corners of
 * a part: a hole table locates them all.
 */
export function chainModes(located: Located): readonly ChainMode[] {
  if (located.piece?.role === "segment") return ["overall"];
  const counts = (["x", "y"] as const).map((axis) => holeLines(located, axis).length);
  if (counts.every((count) => count === 0)) return ["full"];
  const usual: readonly ChainMode[] = counts.some((count) => count > MOST_LINES) ? ["ends"] : ["full", "ends"];
  return unlocated(located, "ends").length === 0 ? [...usual, "overall"] : usual;
}

/** The modes left where nothing finds its room: a hole table then locates what no chain does. */
export function leastModes(located: Located): readonly ChainMode[] {
  return located.piece?.role === "segment" ? ["overall"] : ["ends", "overall"];
}

/** Which hole of OLD is which hole of NEW: by place, not by tag, since tags may be renumbered. */
import { assignRows } from "./assign.js";
import type { HoleState } from "./model.js";
import { samePlace, sameSize } from "./same.js";

/** Holes of both sides as [old, new] pairs, and those that only OLD (`gone`) or only NEW (`added`) has. */
export interface HoleMatch {
  readonly pairs: readonly (readonly [HoleState, HoleState])[];
  readonly gone: readonly HoleState[];
  readonly added: readonly HoleState[];
}

/**
 * Holes that stand where they stood are paired first; the others of one role so that the squares of their ways sum up to the
 * least: a group that is shifted is shifted, whatever its tags. Where two ways are as short, equal tags decide.
 */
export function matchHoles(old: readonly HoleState[], fresh: readonly HoleState[]): HoleMatch {
  const pairs: (readonly [HoleState, HoleState])[] = [];
  const left = new Set(old);
  const open = new Set(fresh);
  const pairUp = (before: HoleState, after: HoleState): void => {
    pairs.push([before, after]);
    left.delete(before);
    open.delete(after);
  };
  for (const like of [isSameHole, isSamePlaceAndRole]) {
    for (const after of fresh) {
      if (!open.has(after)) continue;
      const before = [...left].find((hole) => like(hole, after));
      if (before !== undefined) pairUp(before, after);
    }
  }
  for (const role of ["rod", "opening", "nail", "grout", "bolt"] as const) {
    const ofRole = ({ role: own }: HoleState): boolean => own === role;
    for (const [before, after] of pairNearest([...left].filter(ofRole), [...open].filter(ofRole)))
      pairUp(before, after);
  }
  const order = new Map(fresh.map((hole, index) => [hole, index]));
  const sorted = pairs.sort((a, b) => (order.get(a[1]) ?? 0) - (order.get(b[1]) ?? 0));
  return { pairs: sorted, gone: [...left], added: [...open] };
}

/** The same place and size; the role may be another. */
const isSameHole = (a: HoleState, b: HoleState): boolean => samePlace(a.at, b.at) && sameSize(a.size, b.size);

const isSamePlaceAndRole = (a: HoleState, b: HoleState): boolean => samePlace(a.at, b.at) && a.role === b.role;

/** In square micrometres: decides between equal ways. Holes of one role are never so near to each other. */
const TAG_BIAS = 1;

/** Square micrometres: squares of nanometres would leave the whole numbers. */
const squareOfWay = (a: HoleState, b: HoleState): number =>
  ((a.at.x - b.at.x) / 1000) ** 2 + ((a.at.y - b.at.y) / 1000) ** 2;

function pairNearest(
  old: readonly HoleState[],
  fresh: readonly HoleState[],
): readonly (readonly [HoleState, HoleState])[] {
  if (old.length > fresh.length) return pairNearest(fresh, old).map(([a, b]) => [b, a] as const);
  const costs = old.map((a) => fresh.map((b) => squareOfWay(a, b) + (a.tag === b.tag ? 0 : TAG_BIAS)));
  return assignRows(costs).flatMap((column, row) => {
    const [before, after] = [old[row], fresh[column]];
    return before === undefined || after === undefined ? [] : [[before, after] as const];
  });
}

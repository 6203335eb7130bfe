/** Where a plan is cut along one axis: as few parts as the room allows, between bases, in the widest gaps. Plan millimetres. */

/** What may not be cut through: a base with all its ink, or a line; `wing`: it belongs to no line of the building's own axes. */
export interface Stop {
  readonly low: number;
  readonly high: number;
  readonly wing: boolean;
  readonly isLine: boolean;
}

/** One part: between which match lines, and from where to where its sheet shows the plan. */
export interface Part {
  readonly from: number;
  readonly to: number;
  readonly shownFrom: number;
  readonly shownTo: number;
}

/** Room of one part, how far past a match line the next line is still shown, and what stands free at an end. */
export interface CutRoom {
  readonly room: number;
  readonly nearest: number;
  readonly free: number;
  /** Past the next line that is still shown. */
  readonly past: number;
}

interface Gap {
  readonly low: number;
  readonly high: number;
  /** The building ends here, or a wing does. */
  readonly isBreak: boolean;
  /** The nearest lines outside it; where there is none, no line need be shown across a cut. */
  readonly lineBefore: number;
  readonly lineAfter: number;
}

const NO_LINES = { lineBefore: Number.NEGATIVE_INFINITY, lineAfter: Number.POSITIVE_INFINITY };

/** The parts from `from` to `to`; one alone where all of it fits. */
export function cutParts(from: number, to: number, stops: readonly Stop[], room: CutRoom): readonly Part[] {
  if (to - from <= room.room) return [{ from, to, shownFrom: from, shownTo: to }];
  const ends = [from, to].map((at): Gap => ({ low: at, high: at, isBreak: false, ...NO_LINES }));
  const inner = gapsOf(stops).filter(({ low, high }) => low > from && high < to);
  const gaps = withForced([...ends.slice(0, 1), ...inner, ...ends.slice(1)], room.room);
  const chosen = bestGaps(gaps, room);
  const parts: Part[] = [];
  for (let i = 1; i < chosen.length; i++) {
    const [before, after] = [chosen[i - 1], chosen[i]];
    if (before !== undefined && after !== undefined) parts.push(partBetween(before, after, room));
  }
  return parts;
}

/** Free stretches between stops, in order. */
function gapsOf(stops: readonly Stop[]): readonly Gap[] {
  const sorted = stops.toSorted((a, b) => a.low - b.low || a.high - b.high);
  const gaps: Gap[] = [];
  let [high, wing] = [Number.NEGATIVE_INFINITY, false];
  for (const stop of sorted) {
    if (Number.isFinite(high) && stop.low > high)
      gaps.push({ low: high, high: stop.low, isBreak: wing !== stop.wing, ...NO_LINES });
    if (stop.high >= high) [high, wing] = [stop.high, stop.wing];
  }
  return withLines(
    gaps,
    sorted.filter(({ isLine }) => isLine),
  );
}

/** Both lists in order. */
function withLines(gaps: readonly Gap[], lines: readonly Stop[]): readonly Gap[] {
  let next = 0;
  return gaps.map((gap) => {
    while (next < lines.length && (lines[next]?.high ?? 0) <= gap.low + 1e-6) next += 1;
    const [before, after] = [lines[next - 1], lines[next]];
    return { ...gap, lineBefore: before?.low ?? NO_LINES.lineBefore, lineAfter: after?.high ?? NO_LINES.lineAfter };
  });
}

/** Where no gap comes for a whole sheet, the plan may be cut anywhere. */
function withForced(gaps: readonly Gap[], room: number): readonly Gap[] {
  return gaps.flatMap((gap, i) => {
    const before = gaps[i - 1];
    if (before === undefined || gap.low - before.high <= room * MOST_SOLID) return [gap];
    const step = (gap.low - before.high) / Math.ceil((gap.low - before.high) / (room * FORCED_STEP));
    const count = Math.round((gap.low - before.high) / step) - 1;
    const forced = Array.from({ length: count }, (_, k) => before.high + (k + 1) * step);
    return [...forced.map((at): Gap => ({ low: at, high: at, isBreak: false, ...NO_LINES })), gap];
  });
}

const MOST_SOLID = 0.8;
const FORCED_STEP = 0.08;

/** A part shows the line beyond a match line where that is near; else a little past its own last base. */
function partBetween(before: Gap, after: Gap, { nearest, free, past }: CutRoom): Part {
  const nearBefore = before.high - before.lineBefore <= nearest;
  const nearAfter = after.lineAfter - after.low <= nearest;
  const half = ({ low, high }: Gap) => Math.min(free, (high - low) / 2);
  return {
    from: (before.low + before.high) / 2,
    to: (after.low + after.high) / 2,
    shownFrom: nearBefore ? before.lineBefore - past : before.high - half(before),
    shownTo: nearAfter ? after.lineAfter + past : after.low + half(after),
  };
}

interface Way {
  readonly count: number;
  readonly cost: number;
  readonly back: number;
}

/** The fewest parts; among those the widest gaps, where a wing begins before all, and then parts of even size. */
function bestGaps(gaps: readonly Gap[], room: CutRoom): readonly Gap[] {
  const [first, last] = [gaps[0], gaps.at(-1)];
  if (first === undefined || last === undefined) return gaps;
  const total = last.high - first.low;
  const ways: (Way | null)[] = [{ count: 0, cost: 0, back: -1 }];
  for (let k = 1; k < gaps.length; k++) ways.push(bestWay(gaps, ways, k, total, room));
  const chosen: Gap[] = [];
  for (let k = gaps.length - 1; k >= 0; k = ways[k]?.back ?? -1) {
    const gap = gaps[k];
    if (gap !== undefined) chosen.unshift(gap);
  }
  return chosen;
}

function bestWay(gaps: readonly Gap[], ways: readonly (Way | null)[], k: number, total: number, room: CutRoom): Way {
  const gap = gaps[k];
  let best: Way | null = null;
  for (let back = k - 1; back >= 0; back--) {
    const [from, way] = [gaps[back], ways[back]];
    if (gap === undefined || from === undefined || way === undefined || way === null) continue;
    const { shownFrom, shownTo } = partBetween(from, gap, room);
    if (shownTo - shownFrom > room.room && back < k - 1) break;
    const share = (gap.low - from.low) / total;
    const cost = way.cost + share * share * EVENNESS + (k === gaps.length - 1 ? 0 : roughness(gap, total));
    const count = way.count + 1;
    if (best === null || count < best.count || (count === best.count && cost < best.cost)) best = { count, cost, back };
  }
  return best ?? { count: k, cost: Number.POSITIVE_INFINITY, back: k - 1 };
}

/** Against the cost of a cut, which is the share of the whole over that of its gap. */
const EVENNESS = 1;

function roughness({ low, high, isBreak }: Gap, total: number): number {
  const gap = Math.max(high - low, total / 1e6) / total;
  return (isBreak ? 0.3 : 1) * Math.min(1e4, 0.2 / gap);
}

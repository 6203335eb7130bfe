import type { GridLine } from "../../job/model/plan.js";
import type { PlacedBase } from "../../plan/model.js";
import { leastOf } from "../../units/extremes.js";
import { groupBy } from "../../units/group-by.js";
import type { Unit } from "../../units/index.js";
import { namesOf, PLAN, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, compareCounts } from "../results.js";
import { suspectSlip } from "../slips.js";
import { counted, wordsIn } from "../words.js";

/** Bays against the other bays of their axis, offsets against the bays: what stands far out may be in another unit than was meant. */
export const gridSlip: JobRule<"grid-slip"> = {
  id: "grid-slip",
  plainName: "bays in proportion",
  title:
    "every bay within 8 times the middle one of its axis, every offset of a base less than half of the least bay beside it",
  severity: "ask",
  measured: "a bay of the grid or an offset of a base",
  takes: [],
  clause: () => "bays and offsets in proportion",
  edition: () => "common practice",
  check(context) {
    const { plan, job } = context;
    if (plan === null) return [];
    const bays = AXES.flatMap((axis) => baysOf(plan.spec.lines, axis));
    const rows = [...AXES.flatMap((axis) => bayRows(baysOf(plan.spec.lines, axis), job.unit)), ...offsetRows(context)];
    if (rows.length > 0) return rows;
    return [compareCounts(PLAN, 0, "<=", 0, `${counted(bays.length, "bay")} and every offset in proportion`)];
  },
};

const AXES = ["x", "y"] as const;
type Axis = (typeof AXES)[number];

/** From one line of an axis to the next, in nanometres. */
interface Bay {
  readonly from: GridLine & { readonly kind: Axis };
  readonly to: GridLine & { readonly kind: Axis };
  readonly size: number;
}

function baysOf(lines: readonly GridLine[], axis: Axis): readonly Bay[] {
  const own = lines.flatMap((line) => (line.kind === axis ? [line] : [])).sort((a, b) => a.at - b.at);
  return own.slice(1).map((to, index) => {
    const from = own[index] ?? to;
    return { from, to, size: to.at - from.at };
  });
}

/** The fewest bays of which one can stand out, and how often the middle one may go into it, or it into the middle one. */
const FEWEST = 3;
const MOST_TIMES = 8;

/** A bay much smaller than the others may be a joint with a line on either side: that is advice only. */
function bayRows(bays: readonly Bay[], unit: Unit): readonly RuleResult[] {
  if (bays.length < FEWEST) return [];
  const sizes = bays.map(({ size }) => size).sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const plausible = { from: Math.ceil(middle / MOST_TIMES), to: MOST_TIMES * middle };
  const say = wordsIn(unit);
  return bays.flatMap(({ from, to, size }): RuleResult[] => {
    if (size >= plausible.from && size <= plausible.to) return [];
    const slip = suspectSlip(size, { from: middle / 2, to: middle * 2 }, unit);
    const note = `bay ${say.length(size)}, the middle one of its axis ${say.length(middle)}${slip === null ? "" : `: ${slip.words}`}`;
    const [sense, limit] = size < plausible.from ? ([">=", plausible.from] as const) : (["<=", plausible.to] as const);
    const own = slip === null || sense === ">=" ? ({ severity: "advise" } as const) : {};
    return [compare(`${from.name} - ${to.name}`, 2 * size, sense, 2 * limit, note, own)];
  });
}

/** Offsets that put a base nearer to another line than to its own. */
function offsetRows(context: JobContext): readonly RuleResult[] {
  const lines = context.plan?.spec.lines ?? [];
  const say = wordsIn(context.job.unit);
  return AXES.flatMap((axis) => {
    const least = leastBays(baysOf(lines, axis));
    return [...byOffset(placedBases(context), axis)].flatMap(([offset, bases]): RuleResult[] => {
      const size = Math.abs(offset);
      const beside = bases.map(({ placement }) => leastOf(placement.lines.map((name) => least.get(name) ?? Infinity)));
      const far = bases.filter((_base, index) => 2 * size > (beside[index] ?? Infinity));
      if (far.length === 0) return [];
      const bay = beside.reduce((a, b) => Math.min(a, b));
      const slip = suspectSlip(size, { from: 1, to: bay / 2 }, context.job.unit);
      const note = `offset along ${axis} ${say.length(size)}, the least bay beside it ${say.length(bay)}${slip === null ? "" : `: ${slip.words}`}`;
      return [compare(namesOf(far), 2 * size, "<=", bay, note, { severity: "advise" })];
    });
  });
}

/** The smaller of the two bays beside each line, by its name. */
function leastBays(bays: readonly Bay[]): ReadonlyMap<string, number> {
  const least = new Map<string, number>();
  for (const { from, to, size } of bays)
    for (const { name } of [from, to]) least.set(name, Math.min(size, least.get(name) ?? Infinity));
  return least;
}

function byOffset(bases: readonly PlacedBase[], axis: Axis): ReadonlyMap<number, readonly PlacedBase[]> {
  const offsetOf = ({ placement }: PlacedBase): number => placement.offset[axis];
  return groupBy(
    bases.filter((base) => offsetOf(base) !== 0),
    offsetOf,
  );
}

import { seatOfNut, wholeStack } from "../../job/model/stack.js";
import { extraThread } from "../../standards/index.js";
import { formatWithUnit } from "../../units/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own, Term } from "../results.js";
import { askOnce, compareSums, minus, notChecked, plus } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { layers, rodTopTolerance } from "../stack-terms.js";
import { STACK, THREADS } from "../takes.js";
import { wordsIn } from "../words.js";

const LOW = "stack on the rod, with the rod set low by the elevation tolerance";
const THREAD = {
  clause: "thread reaches down to the washer, so that the nut can be run down on it",
  measured: "the thread at the top of the rod",
};
const THREAD_HIGH = `${THREAD.clause}, with the rod set high by the elevation tolerance`;

/** The rod stands high enough for all that goes on it, and its nut can be run down, as specified and as it may be set. */
export const projection: Rule<"projection"> = {
  id: "projection",
  plainName: "thread at top of rod",
  title:
    "projection >= grout + plates + washer + nut + stick-out, also with the rod low by its tolerance; " +
    "thread >= projection - grout - plates - washer, also with the rod high",
  severity: "ask",
  measured: "the projection of the rod",
  takes: [...THREADS, ...STACK],
  clause: () => "stack on the rod, from the specified T.O.C.",
  edition: () => "geometry",
  check(context) {
    const rods = rodHoles(context);
    const say = wordsIn(context.job.unit);
    const stacks = rods.map((rod) => askOnce([asSpecified(context, rod), setLow(context, rod)], "set low", say));
    const threads = rods.map((rod) => askOnce([runDown(context, rod), runDownHigh(context, rod)], "set high", say));
    return [stacks, threads].flatMap((pairs) => [
      ...pairs.map(([first]) => first),
      ...pairs.map(([, second]) => second),
    ]);
  },
};

function asSpecified({ job, base }: CheckContext, { tag, group, rod }: RodHole): RuleResult {
  const stack = layers(wholeStack(base, group), plus);
  return compareSums(tag, [[plus("projection", rod.projection)], ">=", stack], wordsIn(job.unit));
}

function setLow(context: CheckContext, { tag, group, rod }: RodHole): RuleResult {
  const { job, base } = context;
  const { placing } = job.editions;
  const low = rodTopTolerance(context, "low");
  const own: Own = { clause: LOW, edition: placing, measured: "the projection of the rod, set low," };
  if (!low.found) return notChecked(tag, low.why, own);
  const stack = layers(wholeStack(base, group), plus);
  return compareSums(tag, [[plus("projection", rod.projection), low.term], ">=", stack], wordsIn(job.unit), own);
}

/** From the top of the rod down to the seat of its nut. */
function toSeat({ base }: CheckContext, { group, rod }: RodHole): readonly Term[] {
  return [plus("projection", rod.projection), ...layers(seatOfNut(base, group), minus)];
}

/** Set low it needs less thread, by as much as it is low. */
function runDown(context: CheckContext, rod: RodHole): RuleResult {
  const say = wordsIn(context.job.unit);
  const thread = plus("thread", rod.rod.threadLength);
  const remark = (spare: number): string =>
    spare < 0
      ? `; the nut stops ${say.twice(-spare)} above its washer`
      : `; ${say.twice(spare)} more than needed, Design Guide 1 advises ${formatWithUnit(extraThread.value, "in")} more`;
  return compareSums(rod.tag, [[thread], ">=", toSeat(context, rod)], say, { ...THREAD, remark });
}

function runDownHigh(context: CheckContext, rod: RodHole): RuleResult {
  const { placing } = context.job.editions;
  const high = rodTopTolerance(context, "high");
  const own: Own = { ...THREAD, clause: THREAD_HIGH, edition: placing };
  if (!high.found) return notChecked(rod.tag, high.why, own);
  const say = wordsIn(context.job.unit);
  const remark = (spare: number): string =>
    spare < 0 ? `; the nut would stop ${say.twice(-spare)} above its washer` : "";
  const needed = [...toSeat(context, rod), high.term];
  return compareSums(rod.tag, [[plus("thread", rod.rod.threadLength)], ">=", needed], say, { ...own, remark });
}

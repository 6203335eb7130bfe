import type { Base, Rod } from "../../job/model/job.js";
import { levellingNutsOf, nutHeight, washerName, washerThickness } from "../../job/model/stack.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own, Term } from "../results.js";
import { askOnce, compareSums, fixed, lacking, minus, notApplicable, notChecked, plus } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { concreteTopTolerance, rodTopTolerance } from "../stack-terms.js";
import { NUT, THREADS, WASHER } from "../takes.js";
import { wordsIn } from "../words.js";

/** The grout gap takes a levelling nut, its washer, and room beneath, also where the concrete stands high. */
export const groutGap: Rule<"grout-gap"> = {
  id: "grout-gap",
  plainName: "grout gap",
  title:
    "grout gap >= levelling nut + washer + room, also less what T.O.C. may stand high, and thread reaching below that nut, " +
    "where nuts level the base plate; on shims or a plate the gap >= what T.O.C. may stand high",
  severity: "ask",
  measured: "the grout gap",
  takes: ["grout", "levelling", "rods.levellingNuts", ...THREADS, ...WASHER, ...NUT],
  clause: ({ job }) => `levelling nut + washer + room; room: ${job.shop.groutRoom.from}`,
  edition: () => "geometry",
  check(context) {
    const { levelling } = context.base;
    if (levelling.kind === "missing") return [lacking("base", [levelling]), overHighConcrete(context)];
    const onOwnNuts = rodHoles(context).filter(({ rod }) => hasLevellingNuts(levelling, rod));
    if (onOwnNuts.length > 0) return onNuts(context, onOwnNuts);
    if (levelling.value === "nuts")
      return [notApplicable("base", "no rod has a levelling nut (rods.levellingNuts)"), overHighConcrete(context)];
    const words = levelling.value === "shims" ? "shims" : "a levelling plate";
    return [notApplicable("base", `the base plate is levelled by ${words}`), overHighConcrete(context)];
  },
};

function hasLevellingNuts(levelling: Base["levelling"], rod: Rod): boolean {
  const count = levellingNutsOf(levelling, rod);
  return count.kind === "given" && count.value > 0;
}

/** Rods without a levelling nut, beside others that have one, ask nothing of the grout. */
function onNuts(context: CheckContext, rods: readonly RodHole[]): readonly RuleResult[] {
  const say = wordsIn(context.job.unit);
  const gaps = rods.map((rod) =>
    askOnce([gap(context, rod), gapOverHighConcrete(context, rod)], "with T.O.C. high", say),
  );
  const threads = rods.map((rod) => askOnce([thread(context, rod), threadHigh(context, rod)], "set high", say));
  return [gaps, threads].flatMap((pairs) => [...pairs.map(([first]) => first), ...pairs.map(([, second]) => second)]);
}

/** The levelling nut and its washer, taken as on the base plate, both at their greatest. */
function levellingNut({ group, rod }: RodHole): readonly Term[] {
  const count = rod.levellingNuts.kind === "given" ? rod.levellingNuts.value : 1;
  return [
    plus("levelling nut", nutHeight(rod), 2 * count),
    plus(`${washerName(group, "greatest")} (as on the base plate)`, washerThickness(group, "greatest")),
  ];
}

function gap({ job, base }: CheckContext, rod: RodHole): RuleResult {
  const needed = [...levellingNut(rod), fixed("room", job.shop.groutRoom.value)];
  return compareSums(rod.tag, [[plus("grout", base.grout)], ">=", needed], wordsIn(job.unit));
}

function noConcreteTop({ job }: CheckContext, subject: string): RuleResult {
  return notChecked(subject, `${job.editions.placing}: no tolerance of the top of concrete is tabulated`);
}

function gapOverHighConcrete(context: CheckContext, rod: RodHole): RuleResult {
  const tolerance = concreteTopTolerance(context, "high");
  if (!tolerance.found) return noConcreteTop(context, rod.tag);
  const own: Own = { edition: tolerance.edition, clause: "levelling nut + washer, with T.O.C. high by its tolerance" };
  const needed = [...levellingNut(rod), tolerance.term];
  const say = wordsIn(context.job.unit);
  const remark = (spare: number): string =>
    spare < 0
      ? `; where the concrete stands that high, the nut comes ${say.twice(-spare)} into it: thicker grout, a lower T.O.C. or room cut under the nuts`
      : "";
  return compareSums(rod.tag, [[plus("grout", context.base.grout)], ">=", needed], say, { ...own, remark });
}

/** Concrete that stands as high as it may does not reach above the grout. A plate without grout is set on the concrete. */
function overHighConcrete(context: CheckContext): RuleResult {
  const { grout } = context.base;
  const tolerance = concreteTopTolerance(context, "high");
  if (!tolerance.found) return noConcreteTop(context, "base");
  const own: Own = { edition: tolerance.edition, clause: "grout gap, with T.O.C. high by its tolerance" };
  if (grout.kind === "given" && grout.value === 0)
    return notApplicable("base", "the base plate stands on the concrete, without grout", own);
  return compareSums("base", [[plus("grout", grout)], ">=", [tolerance.term]], wordsIn(context.job.unit), own);
}

const THREAD: Own = {
  clause: "thread reaches below the levelling nut",
  measured: "the thread at the top of the rod",
};

/**
 * From the top of the rod down to the underside of the levelling nut, which carries the base plate, or the setting plate that
 * stays under it: projection - grout + washer + nut.
 */
function toLevellingNut({ base }: CheckContext, rod: RodHole): readonly Term[] {
  return [plus("projection", rod.rod.projection), minus("grout", base.grout), ...levellingNut(rod)];
}

function thread(context: CheckContext, rod: RodHole): RuleResult {
  const needed = toLevellingNut(context, rod);
  return compareSums(
    rod.tag,
    [[plus("thread", rod.rod.threadLength)], ">=", needed],
    wordsIn(context.job.unit),
    THREAD,
  );
}

function threadHigh(context: CheckContext, rod: RodHole): RuleResult {
  const { placing } = context.job.editions;
  const high = rodTopTolerance(context, "high");
  const clause = `${THREAD.clause}, with the rod set high by the elevation tolerance`;
  const own: Own = { ...THREAD, clause, edition: placing };
  if (!high.found) return notChecked(rod.tag, high.why, own);
  const needed = [...toLevellingNut(context, rod), high.term];
  return compareSums(rod.tag, [[plus("thread", rod.rod.threadLength)], ">=", needed], wordsIn(context.job.unit), own);
}

import type { Input, Missing, Nut } from "../../job/model/job.js";
import { nutHeight } from "../../job/model/stack.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compareSums, fixed, minus, plus } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, perRod, rodHoles } from "../rods.js";
import { templateWasherOf, throughTemplate } from "../stack-terms.js";
import { TEMPLATE_STACK, THREADS } from "../takes.js";
import { wordsIn } from "../words.js";

const THREAD = { clause: "thread reaches below the lower nut", measured: "the thread at the top of the rod" };
const UPPER = {
  clause: "s.2.8: a nut above and below the template",
  edition: "Design Guide 1, 2nd ed.",
  measured: "the projection of the rod, for the template and its upper nut,",
};

/** The template stands high enough for its lower nuts and for finishing, and low enough on the rod for its upper nut. */
export const templateHeight: Rule<"template-height"> = {
  id: "template-height",
  plainName: "height of template",
  title:
    "underside above T.O.C. >= lower nut + its washer + finishing room; projection >= underside + template + washer + " +
    "upper nut; thread reaches below the lower nut",
  severity: "stop",
  measured: "the height of the template above the concrete",
  takes: [...THREADS, ...TEMPLATE_STACK],
  clause: ({ job }) => `lower nut + washer + finishing room; room: ${job.shop.finishingRoom.from}`,
  edition: () => "shop",
  check(context) {
    if (isOverCastRods(context)) return [notForSettingPlate("plate")];
    const rows = [upperNutRow, threadRow];
    return [heightRow(context), ...rows.flatMap((row) => perRod(context, (rod) => row(context, rod)))];
  },
};

/** The thickest nut of the plate governs. */
function heightRow(context: CheckContext): RuleResult {
  const { job, base } = context;
  const lower = nutHeight({ nut: thickestNut(rodHoles(context)) });
  const needed = [
    plus("nut", lower),
    plus("washer", templateWasherOf(context)),
    fixed("finishing room", job.shop.finishingRoom.value),
  ];
  const height = plus("height of the underside", base.template.height);
  return compareSums("plate", [[height], ">=", needed], wordsIn(job.unit));
}

function thickestNut(rods: readonly RodHole[]): Input<Nut> {
  const nuts = rods.map(({ rod }) => rod.nut);
  const unknown = nuts.find((nut): nut is Missing => nut.kind === "missing");
  if (unknown !== undefined) return unknown;
  const known = nuts.flatMap((nut) => (nut.kind === "given" ? [nut] : []));
  return known.reduce((thickest, nut) => (nut.value.height > thickest.value.height ? nut : thickest));
}

/** The rod passes through the template, and its upper nut stands wholly on the rod. */
function upperNutRow(context: CheckContext, rodHole: RodHole): RuleResult {
  const { tag, rod } = rodHole;
  const say = wordsIn(context.job.unit);
  const needed = throughTemplate(context, rodHole);
  const remark = (spare: number) => (spare < 0 ? `; the upper nut lacks ${say.twice(-spare)} of rod` : "");
  return compareSums(tag, [[plus("projection", rod.projection)], ">=", needed], say, { ...UPPER, remark });
}

/** Top of rod to the lower face of the lower nut: projection - height + washer + nut. */
function threadRow(context: CheckContext, { tag, rod }: RodHole): RuleResult {
  const needed = [
    plus("projection", rod.projection),
    minus("height of the underside", context.base.template.height),
    plus("washer", templateWasherOf(context)),
    plus("nut", nutHeight(rod)),
  ];
  return compareSums(tag, [[plus("thread", rod.threadLength)], ">=", needed], wordsIn(context.job.unit), THREAD);
}

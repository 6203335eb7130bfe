import type { Input, Missing, Nut } from "../../job/model/job.js";
import { given } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { nanometres } from "../../units/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, perRod, rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

const THREAD_CLAUSE = "thread reaches below the lower nut";

/** The template stands high enough for its lower nuts and for finishing; the rod's thread reaches below those nuts. */
export const templateHeight: Rule<"template-height"> = {
  id: "template-height",
  title: "underside above T.O.C. >= lower nut + its washer + finishing room; thread reaches below that nut",
  severity: "stop",
  measured: "the height of the template above the concrete, or the thread for its lower nut,",
  clause: ({ job }) => `lower nut + washer + finishing room; room: ${job.shop.finishingRoom.from}`,
  edition: () => "shop",
  check(context) {
    if (isOverCastRods(context)) return [notForSettingPlate("plate")];
    return [heightRow(context), ...perRod(context, (rod) => threadRow(context, rod))];
  },
};

/** Thickness of the washer under the template: zero where the nut itself bears. */
function washerUnder({ job, base }: CheckContext): Input<Length> {
  const { templateWasher } = job.shop;
  if (templateWasher.kind === "given") return templateWasher.value.thickness;
  return base.template.material === "plywood" ? templateWasher : given(nanometres(0), "no washer");
}

/** The thickest nut of the plate governs. */
function heightRow(context: CheckContext): RuleResult {
  const { job, base } = context;
  const nut = thickestNut(rodHoles(context));
  const needs = known({ height: base.template.height, nut, washer: washerUnder(context) });
  if (!needs.all) return lacking("plate", needs.missing);
  const { height, nut: lower, washer } = needs.values;
  const room = job.shop.finishingRoom.value;
  const say = wordsIn(job.unit);
  const note =
    `underside ${say.length(height)} above T.O.C. against nut ${say.length(lower.height)} + ` +
    `washer ${say.length(washer)} + finishing room ${say.length(room)}`;
  return compare("plate", 2 * height, ">=", 2 * (lower.height + washer + room), note);
}

function thickestNut(rods: readonly RodHole[]): Input<Nut> {
  const nuts = rods.map(({ rod }) => rod.nut);
  const unknown = nuts.find((nut): nut is Missing => nut.kind === "missing");
  if (unknown !== undefined) return unknown;
  const known = nuts.flatMap((nut) => (nut.kind === "given" ? [nut] : []));
  return known.reduce((thickest, nut) => (nut.value.height > thickest.value.height ? nut : thickest));
}

/** Top of rod to the lower face of the lower nut: projection - height + washer + nut. */
function threadRow(context: CheckContext, { tag, rod }: RodHole): RuleResult {
  const needs = known({
    height: context.base.template.height,
    projection: rod.projection,
    thread: rod.threadLength,
    nut: rod.nut,
    washer: washerUnder(context),
  });
  if (!needs.all) return lacking(tag, needs.missing, { clause: THREAD_CLAUSE });
  const { height, projection, thread, nut, washer } = needs.values;
  const say = wordsIn(context.job.unit);
  const note =
    `thread ${say.length(thread)} from the top against projection ${say.length(projection)} - underside ` +
    `${say.length(height)} + washer ${say.length(washer)} + nut ${say.length(nut.height)}`;
  const needed = projection - height + washer + nut.height;
  return compare(tag, 2 * thread, ">=", 2 * needed, note, { clause: THREAD_CLAUSE });
}

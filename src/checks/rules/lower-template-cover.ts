import { concreteClauses } from "../../standards/index.js";
import { greatestOf } from "../../units/extremes.js";
import { leastGapInside } from "../geometry/gap-inside.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { lacking, notApplicable } from "../results.js";
import { rodHoles } from "../rods.js";
import { CONCRETE, PLATE } from "../takes.js";
import { wordsIn } from "../words.js";
import { coverRow } from "./rod-cover.js";

/** The lower template stays in the concrete: cover between its edge and the form. */
export const lowerTemplateCover: Rule<"lower-template-cover"> = {
  id: "lower-template-cover",
  plainName: "cover of lower template",
  title: "concrete cover between the edge of the lower template and the form >= that of the edition",
  severity: "ask",
  measured: "the concrete cover of the lower template",
  takes: [...PLATE, ...CONCRETE, "concrete.exposure", "template.lower"],
  clause: ({ job }) => concreteClauses(job.editions.concrete).cover,
  edition: ({ job }) => job.editions.concrete,
  check: (context) => [cover(context)],
};

function cover(context: CheckContext): RuleResult {
  const { lower } = context.plate;
  if (lower === null) return notApplicable("plate", "no lower template is asked for");
  const { shape, at } = context.base.concrete;
  const clause = `${concreteClauses(context.job.editions.concrete).cover}: cover beside the lower template, as of a bar of the rods' diameter`;
  if (shape.kind === "missing") return lacking(lower.mark, [shape], { clause });
  const { twice } = leastGapInside(lower.region.outer, planContour(shape.value, at));
  const say = wordsIn(context.job.unit);
  const rods = rodHoles(context);
  const most = greatestOf(rods.map(({ diameter }) => diameter));
  const rod = rods.find(({ diameter }) => diameter === most);
  if (rod === undefined) return notApplicable(lower.mark, "the base has no rods");
  const how = `edge of the plate to the form ${say.twice(twice)} at its nearest`;
  return coverRow(context, { ...rod, tag: lower.mark }, twice, how, clause);
}

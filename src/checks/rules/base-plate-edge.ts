import type { Contour } from "../../geometry/index.js";
import { twiceDepthInside } from "../../geometry/index.js";
import { leastEdge } from "../edges.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking, notTabulated } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod } from "../rods.js";
import { wordsIn } from "../words.js";

/** Centre of each hole of the base plate to its edge, by AISC 360 Tables J3.4 and J3.5 or EN 1993-1-8 Table 3.3. */
export const basePlateEdge: Rule = {
  id: "base-plate-edge",
  title: "hole of the base plate to its edge >= Table J3.4 + C2 of Table J3.5, or 1.2 d0",
  severity: "ask",
  measured: "the edge distance of the hole in the base plate",
  clause: () => "least edge distance",
  edition: ({ job }) => job.editions.edges,
  check(context) {
    const { shape, at } = context.base.basePlate;
    const plan = shape.kind === "given" ? planContour(shape.value, at) : null;
    return perRod(context, (rod) => edge(context, rod, plan));
  },
};

function edge(
  { job, base }: CheckContext,
  { tag, group, rod, diameter, center }: RodHole,
  plan: Contour | null,
): RuleResult {
  const needs = known({ shape: base.basePlate.shape, hole: group.baseHole });
  if (!needs.all || plan === null) return lacking(tag, needs.all ? [] : needs.missing);
  const say = wordsIn(job.unit);
  const least = leastEdge(job.editions.edges, rod.size, diameter, needs.values.hole, say);
  if (!least.found) return notTabulated(tag, least.what, least.nearest);
  return compare(tag, twiceDepthInside(center, plan), ">=", least.twice, least.note, { clause: least.clause });
}

import type { Contour } from "../../geometry/index.js";
import { twiceDepthInside } from "../../geometry/index.js";
import type { Length } from "../../units/index.js";
import { type LeastEdge, leastEdge } from "../edges.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking, notTabulated } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod } from "../rods.js";
import { wordsIn } from "../words.js";

/** Centre of each hole of the base plate to its edge, by AISC 360 Tables J3.4 and J3.5 or EN 1993-1-8 Table 3.3. */
export const basePlateEdge: Rule<"base-plate-edge"> = {
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
  if (plan === null) return lacking(tag, needs.all ? [] : needs.missing);
  const say = wordsIn(job.unit);
  const twice = twiceDepthInside(center, plan);
  const by = (hole: Length): LeastEdge => leastEdge(job.editions.edges, rod.size, diameter, hole, say);
  if (!needs.all) return bestCase(twice, by(diameter), lacking(tag, needs.missing));
  const least = by(needs.values.hole);
  if (!least.found) return bestCase(twice, by(diameter), notTabulated(tag, least.what, least.nearest));
  return compare(tag, twice, ">=", least.twice, least.note, { clause: least.clause });
}

/** A hole no larger than its rod asks for the least: an edge that fails even so fails. */
function bestCase(twice: number, least: LeastEdge, row: RuleResult): RuleResult {
  if (!least.found || twice >= least.twice) return row;
  const note = `${least.note}; fails whatever is missing: ${row.note}`;
  return compare(row.subject, twice, ">=", least.twice, note, { clause: least.clause });
}

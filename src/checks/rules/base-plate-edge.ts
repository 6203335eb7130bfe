import type { Contour } from "../../geometry/index.js";
import { twiceDepthInside } from "../../geometry/index.js";
import { leastEdge } from "../edges.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, inBestCase, lacking, missingAmong, notTabulated } from "../results.js";
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

/** A hole that is not known is no smaller than its rod: the edge distance that such a hole takes is asked of every one. */
function edge(
  { job, base }: CheckContext,
  { tag, group, rod, diameter, center }: RodHole,
  plan: Contour | null,
): RuleResult {
  const { baseHole } = group;
  const missing = missingAmong({ hole: baseHole });
  if (plan === null)
    return lacking(
      tag,
      missingAmong({ shape: base.basePlate.shape, hole: baseHole }).map(({ input }) => input),
    );
  const say = wordsIn(job.unit);
  const hole = baseHole.kind === "given" ? baseHole.value : diameter;
  const least = leastEdge(job.editions.edges, rod.size, diameter, hole, say);
  if (!least.found) return notTabulated(tag, least.what, least.nearest);
  const note = missing.length === 0 ? least.note : `for a hole as small as its rod: ${least.note}`;
  const row = compare(tag, twiceDepthInside(center, plan), ">=", least.twice, note, { clause: least.clause });
  return inBestCase(row, missing);
}

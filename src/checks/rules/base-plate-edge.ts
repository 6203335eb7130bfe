import type { Contour } from "../../geometry/index.js";
import { twiceDepthInside } from "../../geometry/index.js";
import type { Length } from "../../units/index.js";
import { type LeastEdge, leastEdge } from "../edges.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, inBestCase, lacking, missingAmong, notTabulated } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod } from "../rods.js";
import { BASE_HOLE, BASE_PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Centre of each hole of the base plate to its edge, by AISC 360 Tables J3.4 and J3.5 or EN 1993-1-8 Table 3.3. */
export const basePlateEdge: Rule<"base-plate-edge"> = {
  id: "base-plate-edge",
  plainName: "edge of base-plate hole",
  title: "hole of the base plate to its edge >= Table J3.4 + C2 of Table J3.5, or 1.2 d0",
  severity: "ask",
  measured: "the edge distance of the hole in the base plate",
  takes: ["pattern", ...BASE_HOLE, ...BASE_PLATE],
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
  const twice = twiceDepthInside(center, plan);
  const by = (size: Length): LeastEdge => leastEdge(job.editions.edges, rod.size, diameter, size, say);
  const least = by(hole);
  if (!least.found)
    return failsAnyway(twice, by(diameter), notTabulated(tag, least.what, least.nearest, "rules.edges"));
  const note = missing.length === 0 ? least.note : `for a hole as small as its rod: ${least.note}`;
  const row = compare(tag, twice, ">=", least.twice, note, { clause: least.clause });
  return inBestCase(row, missing);
}

/** Where the edition has nothing for the hole, what a hole as small as its rod takes is asked all the same. */
function failsAnyway(twice: number, least: LeastEdge, row: RuleResult): RuleResult {
  if (!least.found || twice >= least.twice) return row;
  const note = `for a hole as small as its rod: ${least.note}; it fails whatever the rest is: ${row.note}`;
  return compare(row.subject, twice, ">=", least.twice, note, { clause: least.clause });
}

import type { Contour } from "../../geometry/index.js";
import { acrossCorners, twiceDepthInside } from "../../geometry/index.js";
import type { Job, Missing, Washer } from "../../job/model/job.js";
import { planContour } from "../geometry/measure.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { holeAndWasher, perRod, washerText, widestWasher } from "../rods.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/** The washer, moved by the radial play of the base plate's hole, stays on the base plate. */
export const washerOnPlate: Rule<"washer-on-plate"> = {
  id: "washer-on-plate",
  title: "W/2 + (H - d)/2 <= distance from the rod to the base plate's edge",
  severity: "ask",
  measured: "the distance from the rod to the base plate's edge, for its washer,",
  clause: () => "W/2 + (H - d)/2 <= edge distance",
  edition: () => "geometry",
  check(context) {
    const { shape, at } = context.base.basePlate;
    const plan = shape.kind === "given" ? planContour(shape.value, at) : null;
    return perRod(context, (rod) => onPlate(context, rod, plan));
  },
};

function onPlate(
  { job, base }: CheckContext,
  { tag, group, diameter, center }: RodHole,
  plan: Contour | null,
): RuleResult {
  const needs = known({ ...holeAndWasher(group), shape: base.basePlate.shape });
  if (plan === null) return lacking(tag, needs.all ? [] : needs.missing);
  if (!needs.all) return bestCase(job, { tag, group, diameter }, twiceDepthInside(center, plan), needs.missing);
  const { hole } = needs.values;
  const washer = widestWasher(needs.values.washer);
  const say = wordsIn(job.unit);
  const twice = twiceDepthInside(center, plan);
  const reach = `${washerText(washer, say.length)} / 2 + (${say.length(hole)} - ${say.length(diameter)}) / 2`;
  const note = `${reach} against edge distance ${say.twice(twice)}${corner(washer, hole - diameter, twice, say)}`;
  return compare(tag, twice, ">=", washer.size + hole - diameter, note);
}

/** Hole and washer are at least as large as the rod: a row that fails even so fails. */
function bestCase(
  job: Job,
  { tag, group, diameter }: Pick<RodHole, "tag" | "group" | "diameter">,
  twice: number,
  missing: readonly Missing[],
): RuleResult {
  const { hole, washer } = holeAndWasher(group);
  const size = washer.kind === "given" ? widestWasher(washer.value).size : diameter;
  const limit = size + (hole.kind === "given" ? hole.value : diameter) - diameter;
  const row = lacking(tag, missing);
  if (twice >= limit) return row;
  const edge = wordsIn(job.unit).twice(twice);
  return compare(tag, twice, ">=", limit, `edge distance ${edge}; fails whatever is missing: ${row.note}`);
}

/** What the corner of a square washer does when it turns; reported, not held. */
function corner(washer: Washer, play: number, edge: number, say: Words): string {
  if (washer.shape === "round") return "";
  const reach = acrossCorners(washer.size) + play;
  const verb = reach <= edge ? "stays on the plate" : "overhangs it";
  return `; turned, its corner reaches ${say.twice(reach)} and ${verb}`;
}

import type { Contour } from "../../geometry/index.js";
import { acrossCorners, twiceDepthInside } from "../../geometry/index.js";
import type { Input, Washer } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { planContour } from "../geometry/measure.js";
import { squareRoom } from "../geometry/square-washer.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, inBestCase, lacking, missingAmong } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod, washerText, widestWasher } from "../rods.js";
import { BASE_HOLE, BASE_PLATE, WASHER } from "../takes.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/**
 * The washer, moved by the radial play of the base plate's hole, stays on the base plate. A square one is held with its sides
 * along the base's axes, as it is drawn, and moved along both: on a round or a chamfered plate its corners come to the edge.
 */
export const washerOnPlate: Rule<"washer-on-plate"> = {
  id: "washer-on-plate",
  plainName: "washer to edge of base plate",
  title: "W/2 + (H - d)/2 <= distance from the rod to the base plate's edge, of a square washer along x or y",
  severity: "ask",
  measured: "the distance from the rod to the base plate's edge, for its washer,",
  takes: ["pattern", ...WASHER, ...BASE_HOLE, ...BASE_PLATE],
  clause: () => "W/2 + (H - d)/2 <= edge distance",
  edition: () => "geometry",
  check(context) {
    const { shape, at } = context.base.basePlate;
    const plan = shape.kind === "given" ? planContour(shape.value, at) : null;
    return perRod(context, (rod) => onPlate(context, rod, plan));
  },
};

/** A washer or a hole that is not known is no smaller than its rod. */
function onPlate(
  { job, base }: CheckContext,
  { tag, group, diameter, center }: RodHole,
  plan: Contour | null,
): RuleResult {
  const inputs = { hole: group.baseHole, washer: group.washer };
  const missing = missingAmong(inputs);
  const { shape } = base.basePlate;
  if (plan === null)
    return lacking(
      tag,
      missingAmong({ ...inputs, shape }).map(({ input }) => input),
    );
  const say = wordsIn(job.unit);
  const depth = twiceDepthInside(center, plan);
  const washer = group.washer.kind === "given" ? widestWasher(group.washer.value) : null;
  const twice = washer?.shape === "square" && depth > 0 ? squareRoom(center, plan) : depth;
  const play = (group.baseHole.kind === "given" ? group.baseHole.value : diameter) - diameter;
  const words = washer === null ? `washer no smaller than rod ${say.length(diameter)}` : washerText(washer, say.length);
  const note =
    `${words} / 2 + ${playText(group.baseHole, diameter, say)} against edge distance ${say.twice(twice)}` +
    (twice === depth ? "" : " along x or y, the washer's sides along the base's axes") +
    (washer === null ? "" : corner(washer, play, depth, say));
  return inBestCase(compare(tag, twice, ">=", (washer?.size ?? diameter) + play, note), missing);
}

function playText(hole: Input<Length>, diameter: Length, say: Words): string {
  return hole.kind === "given" ? `(${say.length(hole.value)} - ${say.length(diameter)}) / 2` : "no play";
}

/** What the corner of a square washer does when it turns; reported, not held. */
function corner(washer: Washer, play: number, edge: number, say: Words): string {
  if (washer.shape === "round") return "";
  const reach = acrossCorners(washer.size) + play;
  const verb = reach <= edge ? "stays on the plate" : "overhangs it";
  return `; turned, its corner reaches ${say.twice(reach)} and ${verb}`;
}

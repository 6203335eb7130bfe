/** The hook of a bent rod: a bend of 90 degrees, with its bar reckoned along the centre line. */
import type { Bottom, Rod, RodMaking } from "../../job/model/job.js";
import type { Input } from "../../job/model/values.js";
import { given, missing } from "../../job/model/values.js";
import { add, type Length, nanometres, roundSymmetric, scale } from "../../units/length.js";
import type { Hook } from "./model.js";

/** Bar along a quarter turn: pi / 2 x (inside radius + half the bar). The neutral line of a round bar is taken at its centre. */
export function bendArc(insideRadius: Length, bar: Length): Length {
  return nanometres(roundSymmetric((Math.PI / 2) * (insideRadius + bar / 2)));
}

/** Missing where the leg is shorter than the bend itself. */
export function hookOf(
  bottom: Extract<Bottom, { kind: "hook" }>,
  rod: Pick<Rod, "diameter">,
  bar: Input<Length>,
  making: RodMaking,
): Input<Hook> {
  if (bar.kind === "missing") return bar;
  const { reach } = bottom;
  const insideRadius = bottom.radius ?? scale(rod.diameter, making.bendRadius.value);
  const radiusFrom = bottom.radius === null ? making.bendRadius.from : "job";
  const leg = nanometres(Math.round(reach - insideRadius - bar.value / 2));
  if (leg < 0) return missing("rods.bottom.reach", "the hook reaches no farther than its bend: it has no leg");
  const arc = bendArc(insideRadius, bar.value);
  return given({ reach, insideRadius, radiusFrom, arc, leg, bar: add(arc, leg) }, "bend along the axis of the bar");
}

import type { Bottom, EndPlate, RodGroup } from "../../job/model/job.js";
import { isWeldedOn } from "../../job/model/stack.js";
import { HOLE_PLAY } from "../../rods/index.js";
import type { Length } from "../../units/index.js";
import { add } from "../../units/length.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own } from "../results.js";
import { compare, lacking, notApplicable } from "../results.js";
import { NUT } from "../takes.js";
import { wordsIn } from "../words.js";

const WELDED: Own = {
  clause: "plate at the lower end >= rod and play of its hole",
  measured: "the plate at the lower end",
};

/** What spreads the load at the lower end of a rod reaches beyond what bears on it. */
export const rodEndPlate: Rule<"rod-end-plate"> = {
  id: "rod-end-plate",
  plainName: "plates at lower ends",
  title: "plate or plate washer at the lower end >= nut across its corners; a plate that is welded on >= rod",
  severity: "ask",
  measured: "the plate at the lower end",
  takes: ["rods.bottom", "rods.thread", ...NUT],
  clause: () => "plate or plate washer at the lower end >= nut across its corners",
  edition: () => "geometry",
  check(context) {
    return context.base.groups.map((group) => ofGroup(context, group));
  },
};

function ofGroup(context: CheckContext, group: RodGroup): RuleResult {
  const subject = `group ${group.letter}`;
  const { bottom, nut, size, diameter } = group.rod;
  if (bottom.kind === "missing") return lacking(subject, [bottom]);
  const plate = plateOf(bottom.value);
  if (plate === null) return notApplicable(subject, "no plate is at the lower end");
  const say = wordsIn(context.job.unit);
  if (isWeldedOn(bottom.value)) {
    const hole: Length = add(diameter, HOLE_PLAY);
    const note = `plate ${say.length(plate.size)} against rod ${size} with play ${say.length(HOLE_PLAY)}`;
    return compare(subject, 2 * plate.size, ">=", 2 * hole, note, WELDED);
  }
  if (nut.kind === "missing") return lacking(subject, [nut]);
  const { acrossCorners } = nut.value;
  const note = `${plate.shape} ${say.length(plate.size)} against nut ${say.length(acrossCorners)} across corners`;
  return compare(subject, 2 * plate.size, ">=", 2 * acrossCorners, note);
}

function plateOf(bottom: Bottom): EndPlate | null {
  if (bottom.kind === "plate") return bottom;
  return bottom.kind === "nut" ? bottom.washer : null;
}

import type { CheckContext, Rule, Verdict } from "../model.js";
import type { RodHole } from "../rods.js";
import { perRod } from "../rods.js";
import { compare, known, lacking, notApplicable } from "../verdict.js";
import { wordsIn } from "../words.js";

/** The grout gap takes a levelling nut, its washer, and room beneath. */
export const groutGap: Rule = {
  id: "grout-gap",
  title: "grout gap >= levelling nut + washer + room, where nuts level the base plate",
  severity: "ask",
  measured: "the grout gap",
  clause: ({ job }) => `levelling nut + washer + room; room: ${job.shop.groutRoom.from}`,
  edition: () => "geometry",
  check(context) {
    const { levelling } = context.base;
    if (levelling.kind === "missing") return [lacking("base", [levelling])];
    if (levelling.value !== "nuts")
      return [notApplicable("base", `the base plate is levelled by ${worded(levelling.value)}`)];
    return perRod(context, (rod) => gap(context, rod));
  },
};

function worded(levelling: "shims" | "plate"): string {
  return levelling === "shims" ? "shims" : "a levelling plate";
}

/** The washer of the base plate is taken as the levelling nut's too. */
function gap({ job, base }: CheckContext, { tag, group, rod }: RodHole): Verdict {
  const thickness = group.washer.kind === "given" ? group.washer.value.thickness : group.washer;
  const needs = known({ grout: base.grout, nut: rod.nut, washer: thickness });
  if (!needs.all) return lacking(tag, needs.missing);
  const { grout, nut, washer } = needs.values;
  const room = job.shop.groutRoom.value;
  const say = wordsIn(job.unit);
  const note =
    `grout ${say.length(grout)} against levelling nut ${say.length(nut.height)} + washer ${say.length(washer)} ` +
    `(as on the base plate) + room ${say.length(room)}`;
  return compare(tag, 2 * grout, ">=", 2 * (nut.height + washer + room), note);
}

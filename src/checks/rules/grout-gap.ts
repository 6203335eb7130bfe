import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod, staysInPlace } from "../rods.js";
import { wordsIn } from "../words.js";

/** The grout gap takes a levelling nut, its washer, and room beneath. */
export const groutGap: Rule<"grout-gap"> = {
  id: "grout-gap",
  title:
    "grout gap >= levelling nut + washer + room, and thread reaching below that nut, where nuts level the base plate",
  severity: "ask",
  measured: "the grout gap or the thread above it",
  clause: ({ job }) => `levelling nut + washer + room; room: ${job.shop.groutRoom.from}`,
  edition: () => "geometry",
  check(context) {
    const { levelling } = context.base;
    if (levelling.kind === "missing") return [lacking("base", [levelling])];
    if (levelling.value !== "nuts")
      return [notApplicable("base", `the base plate is levelled by ${worded(levelling.value)}`)];
    return [gap, thread].flatMap((row) => perRod(context, (rod) => row(context, rod)));
  },
};

function worded(levelling: "shims" | "plate"): string {
  return levelling === "shims" ? "shims" : "a levelling plate";
}

const THREAD = { clause: "thread reaches below the levelling nut" };

/** Thread is needed from the top of the rod down to the underside of the nut beneath the base plate. */
function thread(context: CheckContext, { tag, group, rod }: RodHole): RuleResult {
  const { job, base, plate } = context;
  const thickness = group.washer.kind === "given" ? group.washer.value.thickness : group.washer;
  const { projection, threadLength, nut } = rod;
  const needs = known({ projection, threadLength, grout: base.grout, nut, washer: thickness });
  if (!needs.all) return lacking(tag, needs.missing, THREAD);
  const { values } = needs;
  const left = staysInPlace(context) ? plate.thickness : 0;
  const limit = values.projection - values.grout - left + values.washer + values.nut.height;
  const say = wordsIn(job.unit);
  const note =
    `thread ${say.length(values.threadLength)} from the top against projection ${say.length(values.projection)} - ` +
    `grout ${say.length(values.grout)}${left === 0 ? "" : ` - setting plate ${say.length(left)}`} + washer ` +
    `${say.length(values.washer)} + levelling nut ${say.length(values.nut.height)}`;
  return compare(tag, 2 * values.threadLength, ">=", 2 * limit, note, THREAD);
}

/** The washer of the base plate is taken as the levelling nut's too. */
function gap({ job, base }: CheckContext, { tag, group, rod }: RodHole): RuleResult {
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

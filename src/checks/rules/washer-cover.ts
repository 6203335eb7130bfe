import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { holeAndWasher, perRod, washerText } from "../rods.js";
import { wordsIn } from "../words.js";

/** The washer covers the base plate's hole with the rod hard against its edge. */
export const washerCover: Rule<"washer-cover"> = {
  id: "washer-cover",
  title: "washer on the base plate W >= 2 H - d: it covers the hole with the rod at the hole's edge",
  severity: "ask",
  measured: "the washer on the base plate",
  clause: () => "s.2.6: W >= 2 H - d",
  edition: () => "Design Guide 1, 2nd ed.",
  check: (context) => perRod(context, (rod) => cover(context, rod)),
};

function cover({ job }: CheckContext, { tag, group, diameter }: RodHole): RuleResult {
  const needs = known(holeAndWasher(group));
  if (!needs.all) return lacking(tag, needs.missing);
  const { hole, washer } = needs.values;
  const say = wordsIn(job.unit);
  const note = `${washerText(washer, say.length)} against 2 x hole ${say.length(hole)} - rod ${say.length(diameter)}`;
  return compare(tag, 2 * washer.size, ">=", 2 * (2 * hole - diameter), note);
}

import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod } from "../rods.js";
import { wordsIn } from "../words.js";

/** The base plate's hole against the table of the edition that the job names. */
export const basePlateHole: Rule<"base-plate-hole"> = {
  id: "base-plate-hole",
  title: "hole in the base plate = the hole of the named edition",
  severity: "ask",
  measured: "the hole in the base plate",
  clause: () => "base-plate holes for anchor rods",
  edition: ({ job }) => job.editions.baseHoles,
  check: (context) => perRod(context, (rod) => hole(context, rod)),
};

function hole({ job }: CheckContext, { tag, group, rod }: RodHole): RuleResult {
  const needs = known({ hole: group.baseHole, table: group.tableBaseHole });
  if (!needs.all) return lacking(tag, needs.missing);
  const { hole, table } = needs.values;
  const say = wordsIn(job.unit);
  const by = say.length(Math.abs(hole - table));
  const word = hole === table ? "equal to" : hole < table ? `smaller by ${by} than` : `larger by ${by} than`;
  return compare(
    tag,
    2 * hole,
    "=",
    2 * table,
    `${say.length(hole)} is ${word} the table's ${say.length(table)} for rod ${rod.size}`,
  );
}

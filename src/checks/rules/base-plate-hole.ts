import { alternateBaseHole, type BaseHoleEdition, findBaseHole, listsGreatestHoles } from "../../standards/index.js";
import type { Length } from "../../units/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod } from "../rods.js";
import { BASE_HOLE } from "../takes.js";
import { wordsIn } from "../words.js";

const CLAUSE = "base-plate holes for anchor rods";

/** The base plate's hole against the table of the edition that the job names. */
export const basePlateHole: Rule<"base-plate-hole"> = {
  id: "base-plate-hole",
  plainName: "hole size in base plate",
  title: "hole in the base plate = the hole of the named edition",
  severity: "ask",
  measured: "the hole in the base plate",
  takes: BASE_HOLE,
  clause: () => CLAUSE,
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
  const note = `${say.length(hole)} is ${word} the table's ${say.length(table)} for rod ${rod.size}`;
  const more = hole < table ? smallerNote(job.editions.baseHoles, rod.diameter, hole) : "";
  const held = findBaseHole(job.editions.baseHoles, rod.diameter);
  const own = held.found ? { clause: `${held.clause}: ${CLAUSE}` } : {};
  return compare(tag, 2 * hole, "=", 2 * table, `${note}${more}`, own);
}

/** A smaller hole may keep to a table of greatest sizes: what it takes is room, which `placing-clearance` holds. */
function smallerNote(edition: BaseHoleEdition, diameter: Length, hole: Length): string {
  const other = alternateBaseHole(diameter);
  const alternate = other?.hole === hole ? `; ${other.edition}: ${other.note}` : "";
  const greatest = listsGreatestHoles[edition] ? "; the table lists the greatest" : "";
  return `${greatest}; a smaller hole leaves the rods less room: see placing-clearance${alternate}`;
}

import { washerName, washerThickness } from "../../job/model/stack.js";
import type { BaseHole } from "../../standards/index.js";
import { findBaseHole, rodPerWasherThickness } from "../../standards/index.js";
import { inches } from "../../units/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own, Term } from "../results.js";
import { atLeast, compare, compareSums, fixed, lacking, notApplicable, plus } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod, rodHoles } from "../rods.js";
import { BASE_HOLE, WASHER } from "../takes.js";
import { wordsIn } from "../words.js";

const DESIGN_GUIDE = "Design Guide 1, 2nd ed.";

/** The washer covers the base plate's hole with the rod hard against its edge, and is thick enough over it. */
export const washerCover: Rule<"washer-cover"> = {
  id: "washer-cover",
  plainName: "washer over base-plate hole",
  title:
    "washer on the base plate W >= 2 H - d: it covers the hole with the rod at the hole's edge; its thickness >= that of " +
    "Table 2.3, or d/3 for a rod that the table does not hold",
  severity: "ask",
  measured: "the washer on the base plate",
  takes: [...WASHER, ...BASE_HOLE],
  clause: () => "s.2.6: W >= 2 H - d",
  edition: () => DESIGN_GUIDE,
  check(context) {
    const rods = rodHoles(context);
    return [cover, thickness].flatMap((row) => rods.map((rod) => row(context, rod)));
  },
};

/** The rows of the rule that hang on the hole: for a hole that would be made larger. */
export const washerOverHole: Rule<"washer-cover"> = {
  ...washerCover,
  check: (context) => perRod(context, (rod) => cover(context, rod)),
};

/** A hole that is not known is as large as its rod at least. */
function cover({ job }: CheckContext, { tag, group, diameter }: RodHole): RuleResult {
  const { washer, baseHole } = group;
  if (washer.kind === "missing") return lacking(tag, baseHole.kind === "missing" ? [baseHole, washer] : [washer]);
  const { shape, size, series } = washer.value;
  const name = `${shape} washer${series === undefined ? "" : ` (${series})`}`;
  const needed: readonly Term[] = [atLeast(diameter, plus("hole", baseHole, 4)), fixed("rod", diameter, -2)];
  return compareSums(tag, [[fixed(name, size)], ">=", needed], wordsIn(job.unit));
}

/** A washer of a table is taken at its thinnest. */
function thickness(context: CheckContext, rodHole: RodHole): RuleResult {
  const { tag, group, diameter } = rodHole;
  const table = findBaseHole(DESIGN_GUIDE, diameter);
  const printed = table.found ? table.row.washerThickness : null;
  const own: Own = {
    clause: printed === null ? "s.2.6: washer thickness about d/3" : "s.2.6, Table 2.3: least washer thickness",
    measured: "the thickness of the washer on the base plate",
    chosen: true,
  };
  const thick = washerThickness(group, "least");
  if (thick.kind === "missing") return lacking(tag, [thick], own);
  if (table.found && isPunched(context, rodHole, table.row)) return notApplicable(tag, PUNCHED, own);
  const say = wordsIn(context.job.unit);
  const rod = say.length(diameter);
  const third = Math.ceil((2 * diameter) / rodPerWasherThickness.value);
  const limit = printed === null ? third : 2 * printed;
  const asked = printed === null ? `rod ${rod} / 3, the table does not hold the rod` : `Table 2.3 for rod ${rod}`;
  return compare(
    tag,
    2 * thick.value,
    ">=",
    limit,
    `${washerName(group, "least")} ${say.length(thick.value)} against ${asked}`,
    own,
  );
}

const PUNCHED =
  "Table 2.3, note 3: in plates under 1-1/4 in the smaller hole takes an ASTM F844 washer, on columns in axial compression only (from memory)";
const PUNCHED_BELOW = inches(1.25);

/** The table's second hole, for thin plates, with the plain washer that goes with it. */
function isPunched({ base }: CheckContext, { group }: RodHole, { alternateHole }: BaseHole): boolean {
  const { baseHole, washer } = group;
  const { thickness } = base.basePlate;
  if (baseHole.kind === "missing" || thickness.kind === "missing" || alternateHole === null) return false;
  const isPlain = washer.kind === "given" && washer.from.startsWith("ASTM F844");
  return isPlain && baseHole.value <= alternateHole && thickness.value < PUNCHED_BELOW;
}

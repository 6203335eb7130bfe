import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Input } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, lacking, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { suspectSlip } from "../slips.js";
import { HOLE } from "../takes.js";
import { wordsIn } from "../words.js";

/**
 * A hole that takes more than half of the spacing to the next is a slip of the hand, in the template as in the base plate. Two
 * holes no larger than their tables' are none: they may stand as near as one rod diameter of steel between them.
 */
export const holeSpacing: Rule<"hole-spacing"> = {
  id: "hole-spacing",
  plainName: "overlap of two holes",
  title:
    "spacing of two rods >= their two holes together, so that no hole takes more than half of it; of holes by the table >= hole + d",
  severity: "stop",
  measured: "the spacing of two holes",
  takes: ["pattern", ...HOLE],
  clause: () => "hole <= half the spacing",
  edition: () => "common practice",
  check(context) {
    const rods = rodHoles(context);
    if (rods.length < 2) return [notApplicable("plate", "one rod has no neighbour")];
    return PLATES.flatMap((plate) => rowsOf(context, rods, plate));
  },
};

/** A plate with the holes that it has for the rods. */
interface Plate {
  readonly name: string;
  hole(rod: RodHole): Input<Length>;
  table(rod: RodHole): Input<Length>;
}

const PLATES: readonly Plate[] = [
  { name: "template", hole: ({ group }) => group.hole, table: ({ group }) => group.tableHole },
  { name: "base plate", hole: ({ group }) => group.baseHole, table: ({ group }) => group.tableBaseHole },
];

interface Holed {
  readonly rod: RodHole;
  readonly hole: Length;
  readonly isByTable: boolean;
}

function rowsOf(context: CheckContext, rods: readonly RodHole[], plate: Plate): readonly RuleResult[] {
  const holed = rods.flatMap((rod): Holed[] => {
    const [hole, table] = [plate.hole(rod), plate.table(rod)];
    if (hole.kind === "missing") return [];
    return [{ rod, hole: hole.value, isByTable: table.kind === "given" && hole.value <= table.value }];
  });
  const [first] = rods;
  const lacks = first === undefined ? null : plate.hole(first);
  if (holed.length < 2) return lacks?.kind === "missing" ? [lacking(plate.name, [lacks])] : [];
  const pairs = governingPairs(holed, (a, b) => twiceSpacing(a, b) - twiceNeeded(a, b));
  return pairs.map((pair) => judge(context, plate, pair.first, pair.second));
}

function twiceSpacing(a: Holed, b: Holed): number {
  return twiceDistanceBetweenPoints(a.rod.center, b.rod.center);
}

/** Both holes together; of holes by the table both radii and a rod diameter, the mean of the two. */
function twiceNeeded(a: Holed, b: Holed): number {
  const holes = a.hole + b.hole;
  return a.isByTable && b.isByTable ? holes + a.rod.diameter + b.rod.diameter : 2 * holes;
}

function judge({ job }: CheckContext, { name }: Plate, a: Holed, b: Holed): RuleResult {
  const say = wordsIn(job.unit);
  const [spacing, needed] = [twiceSpacing(a, b), twiceNeeded(a, b)];
  const sizes =
    a.hole === b.hole ? `holes ${say.length(a.hole)}` : `holes ${say.length(a.hole)} and ${say.length(b.hole)}`;
  const slip = spacing < needed ? slipOf(a, b, job.unit) : "";
  const note = `${sizes} of the ${name}, ${say.twice(spacing)} centre to centre${slip}`;
  const own = a.isByTable && b.isByTable ? { clause: "holes by the table: hole + d <= spacing" } : {};
  return compare(`${name} ${a.rod.tag}-${b.rod.tag}`, spacing, ">=", needed, note, own);
}

/** A hole is between one rod and two and a half; a spacing in which the rods themselves overlap may be in another unit. */
function slipOf(a: Holed, b: Holed, unit: Parameters<typeof suspectSlip>[2]): string {
  const diameter = Math.max(a.rod.diameter, b.rod.diameter);
  const hole = suspectSlip(Math.max(a.hole, b.hole), { from: diameter, to: 2.5 * diameter }, unit);
  if (hole !== null) return `; hole, ${hole.words}`;
  if (twiceSpacing(a, b) >= 2 * diameter) return "";
  const spacing = suspectSlip(twiceSpacing(a, b) / 2, { from: 3 * diameter, to: 40 * diameter }, unit);
  return spacing === null ? "" : `; spacing, ${spacing.words}`;
}

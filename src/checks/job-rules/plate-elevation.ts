import { heightOfBasePlate, originOfBasePlateBottom, staysUnderBasePlate } from "../../job/model/stack.js";
import type { PlacedBase } from "../../plan/index.js";
import { groupBy } from "../../units/group-by.js";
import { namesOf, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compareSums, fixed, lacking, notApplicable, plus } from "../results.js";
import { wordsIn } from "../words.js";

/** Two elevations and a grout gap say one thing twice: they agree, or one of them is wrong. */
export const plateElevation: JobRule<"plate-elevation"> = {
  id: "plate-elevation",
  plainName: "elevation of base plate",
  title: "bottom of base plate less top of concrete = grout gap + a setting plate that stays",
  severity: "ask",
  measured: "the height of the bottom of the base plate above the top of concrete",
  takes: ["grout", "template.use", "template.thickness"],
  clause: () => "bottom of base plate = top of concrete + grout + setting plate that stays",
  edition: () => "job",
  check(context) {
    const groups = groupBy(placedBases(context), groupKey);
    return [...groups.values()].flatMap((bases) => judge(context, bases));
  },
};

/** True where nobody wrote the bottom of plate: it comes from what lies beneath. */
function isDerived({ base, placement }: PlacedBase): boolean {
  return placement.bottomOfPlate.kind === "given" && placement.bottomOfPlate.from === originOfBasePlateBottom(base);
}

/** Bases of one mark whose elevations are a like distance apart make one row, and all that are taken from the grout. */
function groupKey(placed: PlacedBase): string {
  const { base, placement } = placed;
  const { topOfConcrete: top, bottomOfPlate: bottom } = placement;
  if (top.kind === "missing" || bottom.kind === "missing") return `${base.mark} ${top.kind} ${bottom.kind}`;
  if (isDerived(placed)) return bottom.from;
  return `${base.mark} ${bottom.value - top.value} ${bottom.from}`;
}

function judge({ job }: JobContext, bases: readonly PlacedBase[]): readonly RuleResult[] {
  const [first] = bases;
  if (first === undefined) return [];
  const { topOfConcrete: top, bottomOfPlate: bottom } = first.placement;
  const below = heightOfBasePlate(first.base);
  const subject = namesOf(bases);
  const lacks = [top, bottom, below].flatMap((input) => (input.kind === "missing" ? [input] : []));
  if (top.kind === "missing" || bottom.kind === "missing") return [lacking(subject, lacks)];
  if (below.kind === "given" && isDerived(first))
    return [notApplicable(subject, `the bottom of the base plate is taken from ${bottom.from}`)];
  const { grout, template } = first.base;
  const setting = staysUnderBasePlate(first.base) ? [fixed("setting plate", template.thickness)] : [];
  const above = fixed("bottom of base plate above top of concrete", bottom.value - top.value);
  const sense = grout.kind === "given" ? "=" : ">=";
  return [compareSums(subject, [[above], sense, [plus("grout", grout), ...setting]], wordsIn(job.unit))];
}

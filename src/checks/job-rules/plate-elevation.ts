import type { PlacedBase } from "../../plan/index.js";
import { namesOf, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, notApplicable, notChecked } from "../results.js";
import { wordsIn } from "../words.js";

/** Two elevations and a grout gap say one thing twice: they agree, or one of them is wrong. */
export const plateElevation: JobRule<"plate-elevation"> = {
  id: "plate-elevation",
  title: "bottom of base plate less top of concrete = grout gap",
  severity: "ask",
  measured: "the height of the bottom of the base plate above the top of concrete",
  clause: () => "bottom of plate = top of concrete + grout",
  edition: () => "job",
  check(context) {
    const groups = new Map<string, PlacedBase[]>();
    for (const placed of placedBases(context)) {
      const key = groupKey(placed);
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [placed]);
      else group.push(placed);
    }
    return [...groups.values()].flatMap((bases) => judge(context, bases));
  },
};

/** Where a bottom of plate comes from that nobody wrote. */
const FROM_GROUT = "top of concrete and grout";

/** Bases of one mark whose elevations are a like distance apart make one row, and all that are taken from the grout. */
function groupKey({ base, placement }: PlacedBase): string {
  const { topOfConcrete: top, bottomOfPlate: bottom } = placement;
  if (top.kind === "missing" || bottom.kind === "missing") return `${base.mark} ${top.kind} ${bottom.kind}`;
  if (bottom.from === FROM_GROUT) return FROM_GROUT;
  return `${base.mark} ${bottom.value - top.value} ${bottom.from}`;
}

function judge({ job }: JobContext, bases: readonly PlacedBase[]): readonly RuleResult[] {
  const [first] = bases;
  if (first === undefined) return [];
  const { topOfConcrete: top, bottomOfPlate: bottom } = first.placement;
  const { grout } = first.base;
  const subject = namesOf(bases);
  const lacks = [top, bottom, grout].flatMap((input) =>
    input.kind === "missing" ? [`${input.why} (${input.key})`] : [],
  );
  if (top.kind === "missing" || bottom.kind === "missing" || grout.kind === "missing")
    return [notChecked(subject, lacks.join("; "))];
  if (bottom.from === FROM_GROUT)
    return [notApplicable(subject, `the bottom of the base plate is taken from ${FROM_GROUT}`)];
  const say = wordsIn(job.unit);
  const height = bottom.value - top.value;
  const note = `bottom of plate ${say.length(height)} above top of concrete; grout ${say.length(grout.value)}`;
  return [compare(subject, 2 * height, "=", 2 * grout.value, note)];
}

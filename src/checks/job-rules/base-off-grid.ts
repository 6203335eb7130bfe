import type { PlacedBase } from "../../plan/index.js";
import { inches, millimetres } from "../../units/index.js";
import { namesOf, PLAN, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { wordsIn } from "../words.js";

/** A base that stands a little off its crossing is more often a slip of the pen than meant. */
export const baseOffGrid: JobRule<"base-off-grid"> = {
  id: "base-off-grid",
  plainName: "base beside its crossing",
  title: "offset of a base from its grid crossing, where it is not 0 >= 1 in (25 mm)",
  severity: "advise",
  measured: "the offset of a base from its grid crossing",
  takes: [],
  clause: () => "offsets below 1 in (25 mm) are looked at twice",
  edition: () => "common practice",
  check(context) {
    const bases = placedBases(context);
    if (bases.length === 0) return [];
    const offsets = [...offsetsOf(bases, "x"), ...offsetsOf(bases, "y")];
    if (offsets.length === 0) return [notApplicable(PLAN, "every base stands on its crossing")];
    return offsets.map((offset) => judge(context, offset));
  },
};

interface OffsetGroup {
  readonly axis: "x" | "y";
  /** Signed, in nanometres. */
  readonly offset: number;
  readonly bases: readonly PlacedBase[];
}

/** Bases of one mark with one offset make one row. */
function offsetsOf(bases: readonly PlacedBase[], axis: "x" | "y"): readonly OffsetGroup[] {
  const groups = new Map<string, { axis: "x" | "y"; offset: number; bases: PlacedBase[] }>();
  for (const base of bases) {
    const offset = base.placement.offset[axis];
    if (offset === 0) continue;
    const key = `${base.base.mark} ${offset}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { axis, offset, bases: [base] });
    else group.bases.push(base);
  }
  return [...groups.values()];
}

function judge({ job }: JobContext, { axis, offset, bases }: OffsetGroup): RuleResult {
  const least = job.unit === "in" ? inches(1) : millimetres(25);
  const say = wordsIn(job.unit);
  const size = Math.abs(offset);
  const doubt = size < least ? ": meant, or a slip of the pen?" : "";
  const note = `${say.length(offset)} ${job.unit} along plan ${axis === "x" ? "east" : "north"}${doubt}`;
  return compare(`${namesOf(bases)} ${axis}`, 2 * size, ">=", 2 * least, note);
}

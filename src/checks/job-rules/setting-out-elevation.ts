import type { Input, Missing } from "../../job/model/job.js";
import type { PlacedBase, Plan } from "../../plan/model.js";
import { groupBy } from "../../units/group-by.js";
import type { Length } from "../../units/length.js";
import type { JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compareCounts, lacking } from "../results.js";
import { counted } from "../words.js";

/** What the setting-out files leave empty is told: an elevation is never guessed. */
export const settingOutElevation: JobRule<"setting-out-elevation"> = {
  id: "setting-out-elevation",
  plainName: "elevation of rods set out",
  title: "every rod set out has an elevation: T.O.C. of its placement + its projection",
  severity: "advise",
  measured: "the number of rods with a known elevation",
  takes: ["pattern", "rods.projection"],
  clause: () => "top of rod = T.O.C. + projection",
  edition: () => "geometry",
  check: ({ plan }) => (plan === null ? [] : byMark(plan).map(([mark, bases]) => resultOf(mark, bases))),
};

/** Placed bases by mark, in the order in which the marks are first placed. */
function byMark({ bases }: Plan): readonly (readonly [string, readonly PlacedBase[]])[] {
  return [...groupBy(bases, ({ base }) => base.mark)];
}

/** One row a mark: how many of its placed rods have an elevation, or why some have none. */
function resultOf(mark: string, bases: readonly PlacedBase[]): RuleResult {
  const gaps = new Map<string, { readonly missing: Missing; rods: number }>();
  let rods = 0;
  for (const { placement, rods: placed } of bases) {
    for (const { rod } of placed) {
      rods += 1;
      const missing = firstMissing([placement.topOfConcrete, rod.group.rod.projection]);
      if (missing === null) continue;
      const gap = gaps.get(missing.why) ?? { missing, rods: 0 };
      gap.rods += 1;
      gaps.set(missing.why, gap);
    }
  }
  if (gaps.size === 0) return compareCounts(mark, rods, "=", rods, `${counted(bases.length, "placement")}, top of rod`);
  const empty = [...gaps.values()].map(({ missing, rods: count }) => ({
    ...missing,
    why: `${missing.why}: the elevation of ${counted(count, "rod")} is left empty in the setting-out files`,
  }));
  return lacking(mark, empty);
}

function firstMissing(inputs: readonly Input<Length>[]): Missing | null {
  return inputs.find((input) => input.kind === "missing") ?? null;
}

import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Proportioned } from "../proportions.js";
import { lengthsOf } from "../proportions.js";
import { compare, compareCounts, notApplicable } from "../results.js";
import type { SlipPair } from "../slips.js";
import { favouredPair, suspectSlip } from "../slips.js";
import { BASE_PLATE, CONCRETE, WASHER } from "../takes.js";
import { counted, wordsIn } from "../words.js";

/**
 * Lengths against the rods and the pattern beside which they stand: one that is far out of proportion was often typed in another
 * unit. The proportions are wide, and no rule of design: common practice.
 */
export const lengthSlip: Rule<"length-slip"> = {
  id: "length-slip",
  plainName: "lengths in proportion",
  title: "every length in proportion to the rods: none that looks as if feet, inches or millimetres were mixed up",
  severity: "ask",
  measured: "a length that is out of proportion",
  takes: [
    "pattern",
    "rods.diameter",
    "rods.projection",
    "rods.embedment",
    "rods.length",
    "rods.threads",
    "rods.wrenchRoom",
    "rods.bottom",
    ...WASHER,
    ...BASE_PLATE,
    "basePlate.thickness",
    "grout",
    ...CONCRETE,
    "column",
    "template.outline",
    "template.nails",
  ],
  clause: () => "wide proportions to rod diameter and pattern",
  edition: () => "common practice",
  check(context) {
    const lengths = lengthsOf(context);
    const favoured = favouredPair(lengths);
    const rows = lengths.flatMap((length) => judge(context, length, favoured));
    if (rows.length > 0) return rows;
    if (lengths.length === 0) return [notApplicable("lengths", "the base gives no length beside its rods and pattern")];
    return [
      compareCounts("lengths", 0, "<=", 0, `${counted(lengths.length, "length")} in proportion to rods and pattern`),
    ];
  },
};

/** A length that no slip explains is advice only. */
function judge(
  { job }: CheckContext,
  { name, value, plausible, severity }: Proportioned,
  favoured: SlipPair | null,
): readonly RuleResult[] {
  const { from, to } = plausible;
  if (value >= from && value <= to) return [];
  const say = wordsIn(job.unit);
  const slip = suspectSlip(value, plausible, job.unit, favoured);
  const asked = `${say.length(value)}, where ${say.length(from)} to ${say.length(to)} is usual beside these rods`;
  const [sense, limit] = value < from ? ([">=", from] as const) : (["<=", to] as const);
  const own = { severity: slip === null ? "advise" : severity } as const;
  return [compare(name, 2 * value, sense, 2 * limit, `${asked}${slip === null ? "" : `: ${slip.words}`}`, own)];
}

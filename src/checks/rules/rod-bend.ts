import type { RodGroup } from "../../job/model/job.js";
import type { Hook, RodDetail } from "../../rods/index.js";
import { detailRod } from "../../rods/index.js";
import { findGrade, type GradeRow, hookedYield } from "../../standards/index.js";
import { scale } from "../../units/length.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own } from "../results.js";
import { compare, compareCounts, lacking, notApplicable, notChecked } from "../results.js";
import { counted, wordsIn } from "../words.js";

const GRADE = "grade of a bent rod";
const RADIUS: Own = { edition: "shop", clause: "inside radius of the bend", measured: "the inside radius of the bend" };
const LEG: Own = {
  clause: "reach of the hook >= inside radius + half the bar",
  measured: "the reach of the hook",
};
const BENT = "the number of rods that are bent and should not be";

/** No hook in a rod of heat-treated grade, none bent tighter than the shop bends, and none that ends within its own bend. */
export const rodBend: Rule<"rod-bend"> = {
  id: "rod-bend",
  plainName: "hooks of rods",
  title:
    "no hook in F1554 grade 105 (common practice: it is heat-treated), nor in a property class of more than 300 MPa yield " +
    "(EN 1993-1-8, 6.2.6.12, from memory); inside radius >= the shop's; reach >= inside radius + half the bar",
  severity: "ask",
  measured: BENT,
  takes: ["pattern", "rods.bottom", "rods.grade", "rods.diameter", "rods.thread", "rods.threading"],
  clause: () => GRADE,
  edition: () => "shop",
  check(context) {
    return context.base.groups.flatMap((group) => ofGroup(context, group));
  },
};

function subjectOf({ letter }: RodGroup): string {
  return `group ${letter}`;
}

function ofGroup(context: CheckContext, group: RodGroup): readonly RuleResult[] {
  const { bottom } = group.rod;
  if (bottom.kind === "missing") return [lacking(subjectOf(group), [bottom])];
  if (bottom.value.kind !== "hook") return [notApplicable(subjectOf(group), "the rod is not bent")];
  const detail = detailRod(context.job, context.base, group);
  return [gradeRow(context, group), radiusRow(context, group), legRow(context, group, detail, bottom.value)];
}

/** F1554 makes bent rods; those of grade 105 are heat-treated, and a bend takes that away: common practice is not to bend them. */
function gradeRow({ rods }: CheckContext, group: RodGroup): RuleResult {
  const { grade } = group.rod;
  const subject = subjectOf(group);
  if (grade.kind === "missing") return lacking(subject, [grade]);
  const found = findGrade(grade.value);
  if (!found.found) return notChecked(subject, `whether rods of ${grade.value} are bent is not kept here`);
  const bent = rods.filter((rod) => rod.group === group).length;
  const { may, why, own } = bending(found.row);
  const note = `${counted(bent, "rod")} of ${found.row.grade} with a hook${why}`;
  return { ...compareCounts(subject, may ? 0 : bent, "<=", 0, note), ...own };
}

interface Bending {
  readonly may: boolean;
  readonly why: string;
  readonly own: Own;
}

function bending({ specification, weldable, yieldLeast, unit }: GradeRow): Bending {
  if (specification === "ASTM F1554") {
    const why = "; it is heat-treated, a headed rod takes the place of a hook (common practice)";
    return weldable === "no" ? { may: false, why, own: {} } : { may: true, why: "", own: {} };
  }
  const { value, edition, clause } = hookedYield;
  const why = `; yield ${yieldLeast} ${unit}, ${value} at the most (from memory)`;
  return { may: yieldLeast <= value, why, own: { edition, clause: `${GRADE}, ${clause}` } };
}

function insideRadius({ job }: CheckContext, { rod }: RodGroup) {
  const shop = scale(rod.diameter, job.shop.rodShop.making.bendRadius.value);
  const own = rod.bottom.kind === "given" && rod.bottom.value.kind === "hook" ? rod.bottom.value.radius : null;
  return { shop, radius: own ?? shop, isShops: own === null };
}

function radiusRow(context: CheckContext, group: RodGroup): RuleResult {
  const { bendRadius } = context.job.shop.rodShop.making;
  const { shop, radius, isShops } = insideRadius(context, group);
  const note = `${bendRadius.value} x rod ${group.rod.size}, ${bendRadius.from}${isShops ? "; the job gives no other radius" : ""}`;
  return compare(subjectOf(group), 2 * radius, ">=", 2 * shop, note, { ...RADIUS, chosen: isShops });
}

function legRow(
  context: CheckContext,
  group: RodGroup,
  { bar }: RodDetail,
  { reach }: Pick<Hook, "reach">,
): RuleResult {
  const subject = subjectOf(group);
  if (bar.kind === "missing") return lacking(subject, [bar], LEG);
  const { radius } = insideRadius(context, group);
  const say = wordsIn(context.job.unit);
  const note = `reach ${say.length(reach)} against inside radius ${say.length(radius)} + bar ${say.length(bar.value)} / 2`;
  return compare(subject, 2 * reach, ">=", 2 * radius + bar.value, note, { ...LEG, edition: "geometry" });
}

import type { Job, RodGroup } from "../../job/model/job.js";
import { detailRod, lengthOfWeight } from "../../rods/index.js";
import type { Unit } from "../../units/index.js";
import { POUND_IN_KG } from "../../units/weight.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import type { Own } from "../results.js";
import { compare, compareCounts, known, lacking, notApplicable } from "../results.js";
import { NUT, THREADS } from "../takes.js";
import { counted, wordsIn } from "../words.js";

const SAME: Own = { clause: "rods and nuts coated by the same process", edition: "ASTM F1554" };
/** A finish and a process that do not go together. */
const CONTRADICTED: Own = { ...SAME, edition: "job", measured: "the number of plain rods with a zinc process" };
const LONG: Own = {
  clause: "longest rod that is galvanized mechanically",
  edition: "shop",
  severity: "advise",
  measured: "the length of the bar",
};
const HEAVY: Own = { ...LONG, clause: "heaviest rod that is galvanized mechanically, as a length of its bar" };

/** Rods, nuts and washers come out of one process; what is tumbled in a barrel is neither long nor heavy. */
export const rodCoating: Rule<"rod-coating"> = {
  id: "rod-coating",
  plainName: "coating of rods and nuts",
  title:
    "rods and nuts coated by the same process; a rod that is galvanized mechanically <= the longest and the heaviest that the shop takes",
  severity: "ask",
  measured: "the number of rods whose nuts are coated otherwise",
  takes: [
    "pattern",
    ...["finish", "zincProcess", "nutFinish", "bottom", "length", "thread", "threading"].map((key) => `rods.${key}`),
    ...THREADS,
    ...NUT,
  ],
  clause: () => "coating of rods and nuts",
  edition: () => "ASTM F1554",
  check(context) {
    return context.base.groups.flatMap((group) => [sameProcess(context, group), ...inBarrel(context, group)]);
  },
};

function subjectOf({ letter }: RodGroup): string {
  return `group ${letter}`;
}

/** What is said of the nuts apart is held against the rods; nuts of which nothing is said are coated as the rods are. */
function sameProcess({ job, base, rods }: CheckContext, group: RodGroup): RuleResult {
  const { finish, nutFinish } = group.rod;
  const subject = subjectOf(group);
  if (finish.kind === "missing") return lacking(subject, [finish], SAME);
  const isPlain = finish.value === "plain";
  const count = rods.filter((rod) => rod.group === group).length;
  if (isPlain && group.rod.zincProcess.kind === "given") {
    const note = `${counted(count, "rod")} plain, and ${group.rod.zincProcess.value} zinc is asked for (rods.zincProcess)`;
    return { ...compareCounts(subject, count, "<=", 0, note), ...CONTRADICTED };
  }
  if (nutFinish.kind === "missing") {
    if (isPlain) return notApplicable(subject, "the rods are plain, and nothing else is said of their nuts", SAME);
    return { ...compareCounts(subject, 0, "<=", 0, "nuts and washers are coated as the rods"), ...SAME };
  }
  const ofRods = isPlain ? finish : (detailRod(job, base, group).zincProcess ?? finish);
  if (ofRods.kind === "missing" && nutFinish.value !== "plain") return lacking(subject, [ofRods], SAME);
  const is = ofRods.kind === "given" ? ofRods.value : "galvanized";
  const note = `${counted(count, "rod")} ${is}, their nuts ${nutFinish.value}`;
  return { ...compareCounts(subject, is === nutFinish.value ? 0 : count, "<=", 0, note), ...SAME };
}

function inBarrel({ job, base }: CheckContext, group: RodGroup): readonly RuleResult[] {
  const { finish, zincProcess } = group.rod;
  if (finish.kind === "missing" || finish.value === "plain") return [];
  if (zincProcess.kind === "missing" || zincProcess.value !== "mechanical") return [];
  const { cut, bar } = detailRod(job, base, group);
  const needs = known({ cut, bar });
  const subject = subjectOf(group);
  if (!needs.all) return [lacking(subject, needs.missing, LONG)];
  const length = needs.values.cut.value;
  return [longest(job, subject, length), heaviest(job, subject, length, needs.values.bar)];
}

function longest({ shop, unit }: Job, subject: string, length: number): RuleResult {
  const { mechanicalLongest } = shop.rodShop.making;
  const say = wordsIn(unit);
  const note = `bar ${say.length(length)}; longer ones are dipped (${mechanicalLongest.from})`;
  return compare(subject, 2 * length, "<=", 2 * mechanicalLongest.value, note, LONG);
}

function heaviest(
  { shop, unit }: Job,
  subject: string,
  length: number,
  bar: Parameters<typeof lengthOfWeight>[1],
): RuleResult {
  const { mechanicalHeaviest } = shop.rodShop.making;
  const limit = lengthOfWeight(mechanicalHeaviest.value, bar, shop.density.steel.value);
  const note = `bar of ${weightText(mechanicalHeaviest.value, unit)} at the most; heavier ones are dipped (${mechanicalHeaviest.from})`;
  return compare(subject, 2 * length, "<=", 2 * limit, note, HEAVY);
}

/** Kilograms as a weight in the job's unit: `1 lb`. */
function weightText(kilograms: number, unit: Unit): string {
  const value = unit === "in" ? kilograms / POUND_IN_KG : kilograms;
  return `${Math.round(value * 100) / 100} ${unit === "in" ? "lb" : "kg"}`;
}

import type { RodGroup } from "../../job/model/job.js";
import { detailRod } from "../../rods/index.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, lacking } from "../results.js";
import { wordsIn } from "../words.js";

/** The shop can make the thread as it is ordered. */
export const rodThreading: Rule<"rod-threading"> = {
  id: "rod-threading",
  plainName: "threading of rods",
  title: "rod size <= the largest that the shop rolls, or cuts",
  severity: "advise",
  measured: "the size of the thread",
  takes: ["rods.diameter", "rods.thread", "rods.threading"],
  clause: () => "largest thread that is rolled or cut",
  edition: () => "shop",
  check(context) {
    return context.base.groups.map((group) => ofGroup(context, group));
  },
};

function ofGroup({ job, base }: CheckContext, group: RodGroup): RuleResult {
  const subject = `group ${group.letter}`;
  const { threading } = detailRod(job, base, group);
  if (threading.kind === "missing") return lacking(subject, [threading]);
  const { rolledUpTo, cutUpTo } = job.shop.rodShop.making;
  const limit = threading.value === "rolled" ? rolledUpTo : cutUpTo;
  const say = wordsIn(job.unit);
  const who = threading.from === "job" ? ", as the job asks" : "";
  const note = `thread ${threading.value}${who}; the shop goes to ${say.length(limit.value)} (${limit.from})`;
  return compare(subject, 2 * group.rod.diameter, "<=", 2 * limit.value, note);
}

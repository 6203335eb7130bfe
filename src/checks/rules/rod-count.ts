import { leastRods, postDefinition } from "../../standards/index.js";
import type { Rule } from "../model.js";
import { compareCounts, notApplicable } from "../results.js";
import { counted } from "../words.js";

/** The least number of rods under a column; a post by 29 CFR 1926.751 is exempt. */
export const rodCount: Rule<"rod-count"> = {
  id: "rod-count",
  plainName: "number of rods",
  title: `at least ${leastRods.value} rods for a column; a post (29 CFR ${postDefinition.clause}) is exempt`,
  severity: "ask",
  measured: "the number of anchor rods",
  takes: ["pattern", "member"],
  clause: () => leastRods.clause,
  edition: () => leastRods.edition,
  check({ base, rods }) {
    const count = counted(rods.length, "rod");
    if (base.member === "post") return [notApplicable("base", postNote(count))];
    return [compareCounts("base", rods.length, ">=", leastRods.value, `${count} for a column`)];
  },
};

/** Whether the member is one is the job's word: the row says what it must be. */
function postNote(count: string): string {
  const { clause, value } = postDefinition;
  return `the job calls the member a post, with ${count}. A post is ${value} (29 CFR ${clause}); any other member is a column`;
}

import { leastRods } from "../../standards/index.js";
import type { Rule } from "../model.js";
import { compareCounts, notApplicable } from "../results.js";
import { counted } from "../words.js";

/** The least number of rods under a column; a post is exempt. */
export const rodCount: Rule = {
  id: "rod-count",
  title: `at least ${leastRods.value} rods for a column; a post is exempt`,
  severity: "ask",
  measured: "the number of anchor rods",
  clause: () => leastRods.clause,
  edition: () => leastRods.edition,
  check({ base, rods }) {
    const count = counted(rods.length, "rod");
    if (base.member === "post") return [notApplicable("base", `the member is a post, with ${count}: posts are exempt`)];
    return [compareCounts("base", rods.length, ">=", leastRods.value, `${count} for a column`)];
  },
};

import type { Rule } from "../model.js";
import { compareCounts, notApplicable } from "../results.js";
import { counted } from "../words.js";

/** At least four rods under a column; a post is exempt. */
export const rodCount: Rule = {
  id: "rod-count",
  title: "at least 4 rods for a column; a post is exempt",
  severity: "ask",
  measured: "the number of anchor rods",
  clause: () => "1926.755(a)(1)",
  edition: () => "29 CFR 1926",
  check({ base, rods }) {
    const count = counted(rods.length, "rod");
    if (base.member === "post") return [notApplicable("base", `the member is a post, with ${count}: posts are exempt`)];
    return [compareCounts("base", rods.length, ">=", 4, `${count} for a column`)];
  },
};

import type { Rule } from "../model.js";
import { compareCounts, notApplicable } from "../verdict.js";
import { counted } from "../words.js";

/** At least four rods under a column; a post is exempt. */
export const rodCount: Rule = {
  id: "rod-count",
  title: "at least 4 rods for a column; a post is exempt",
  severity: "ask",
  measured: "the number of anchor rods",
  clause: () => "1926.755(a)(1)",
  edition: () => "29 CFR 1926",
  check({ base, layout }) {
    const rods = counted(layout.rods.length, "rod");
    if (base.member === "post") return [notApplicable("base", `the member is a post, with ${rods}: posts are exempt`)];
    return [compareCounts("base", layout.rods.length, ">=", 4, `${rods} for a column`)];
  },
};

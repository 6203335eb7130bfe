import { twiceWeb } from "../../geometry/index.js";
import type { Hole } from "../../template/model.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { HOLE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Clear material between two holes, for each hole its governing pair. Openings are held by `hole-edge`. */
export const holeWeb: Rule<"hole-web"> = {
  id: "hole-web",
  plainName: "steel between template holes",
  title: "clear material between two holes of the template >= the shop's least web",
  severity: "stop",
  measured: "the clear material between two holes of the template",
  takes: ["pattern", ...HOLE, "template.nails", "template.groutHoles"],
  clause: ({ job }) => `least web: ${job.shop.web.from}`,
  edition: () => "shop",
  check(context) {
    const holes = context.plate.holes.filter(({ role }) => role !== "opening");
    const pairs = governingPairs(holes, (a, b) => twiceWeb(a.contour, b.contour));
    if (pairs.length === 0) return [notApplicable("plate", "the plate has fewer than two holes")];
    return pairs.map(({ first, second, margin }) => web(context, first, second, margin));
  },
};

function web({ job }: CheckContext, first: Hole, second: Hole, twice: number): RuleResult {
  const say = wordsIn(job.unit);
  const note = `${say.full(twice)} clear between ${first.tag} and ${second.tag}; shop asks for ${say.length(job.shop.web.value)}`;
  return compare(`${first.tag}-${second.tag}`, twice, ">=", 2 * job.shop.web.value, note);
}

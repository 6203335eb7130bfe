import type { Contour } from "../../geometry/index.js";
import { twiceEdgeWeb, twiceWeb } from "../../geometry/index.js";
import { leastTwice, taperOf } from "../../template/cutting.js";
import type { Hole } from "../../template/model.js";
import { leastPair } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** The smallest web between any two cut contours that the process leaves whole. */
export const cutWeb: Rule<"cut-web"> = {
  id: "cut-web",
  plainName: "least web to cut",
  title: "smallest web between cut contours >= what the process can leave",
  severity: "stop",
  measured: "the smallest web of the template",
  takes: PLATE,
  clause: ({ job }) => `smallest web: ${job.shop.smallestWeb.from}`,
  edition: () => "shop",
  check(context) {
    const { plate } = context;
    if (plate.material === "plywood")
      return [notApplicable("plate", "plywood is drilled from a list, not cut from a file")];
    const cut = plate.holes.filter(({ made }) => made === "cut");
    return [webRow(context, cut)];
  },
};

interface Web {
  readonly between: string;
  readonly twice: number;
}

/** A hole's nominal size is that of its wide side; taper makes it smaller, and the web wider, on the other side. */
function webRow({ job, plate }: CheckContext, cut: readonly Hole[]): RuleResult {
  const web = smallestWeb(cut, plate.region.outer);
  if (web === null) return notApplicable("plate", "no hole of the plate is cut: there is no web between cut contours");
  const limit = leastTwice(job.shop.smallestWeb, plate.thickness);
  const taper = taperOf(job.shop, plate.thickness);
  const say = wordsIn(job.unit);
  const note =
    `${web.between}, on the wide side of the holes; taper widens the web by ${say.twice(taper.twice)} on their narrow side ` +
    `(${taper.from}); ${say.twice(limit)} asked for in ${say.length(plate.thickness)}`;
  return compare("plate", web.twice, ">=", limit, note);
}

function smallestWeb(cut: readonly Hole[], outer: Contour): Web | null {
  const pair = leastPair(cut, (a, b) => twiceWeb(a.contour, b.contour));
  const edges = cut.map(
    ({ tag, contour }): Web => ({ between: `${tag} to the edge`, twice: twiceEdgeWeb(contour, outer) }),
  );
  const webs =
    pair === null ? edges : [{ between: `${pair.first.tag} to ${pair.second.tag}`, twice: pair.margin }, ...edges];
  return webs.reduce<Web | null>((least, web) => (least === null || web.twice < least.twice ? web : least), null);
}

import type { Contour } from "../../geometry/index.js";
import { smallestInsideCorner, twiceEdgeWeb, twiceWeb } from "../../geometry/index.js";
import type { Hole } from "../../plate/model.js";
import { leastTwice, taperOf } from "../cutting.js";
import type { CheckContext, Rule, Verdict } from "../model.js";
import { leastPair } from "../pairs.js";
import { compare, notApplicable } from "../verdict.js";
import { wordsIn } from "../words.js";

const CORNER_CLAUSE = "smallest inside corner";

/** The smallest web between any two cut contours, and the smallest inside corner, that the process leaves whole. */
export const cutWeb: Rule = {
  id: "cut-web",
  title: "smallest web between cut contours, and smallest inside corner, >= what the process can leave",
  severity: "stop",
  measured: "the smallest web or inside corner of the template",
  clause: ({ job }) => `smallest web: ${job.shop.smallestWeb.from}`,
  edition: () => "shop",
  check(context) {
    const { plate } = context;
    if (plate.material === "plywood")
      return [notApplicable("plate", "plywood is drilled from a list, not cut from a file")];
    return [
      webRow(
        context,
        plate.holes.filter(({ made }) => made === "cut"),
      ),
      ...cornerRows(context),
    ];
  },
};

interface Web {
  readonly between: string;
  readonly twice: number;
}

/** A hole's nominal size is that of its wide side; taper makes it smaller, and the web wider, on the other side. */
function webRow({ job, plate }: CheckContext, cut: readonly Hole[]): Verdict {
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

/** Openings are held; nothing has to fit a re-entrant corner of the outline, which comes out rounded: it is advised. */
function cornerRows(context: CheckContext): readonly Verdict[] {
  const { plate } = context;
  const openings = plate.holes.flatMap(({ tag, contour, made }) =>
    made === "cut" && contour.kind === "path" ? cornerRow(context, tag, smallestInsideCorner(contour, "inner")) : [],
  );
  const outline = cornerRow(context, "outline", smallestInsideCorner(plate.region.outer, "outer"));
  const rows = [...openings, ...outline.map((row): Verdict => ({ ...row, severity: "advise" }))];
  return rows.length > 0
    ? rows
    : [notApplicable("plate", "no contour has an inside corner", { clause: CORNER_CLAUSE })];
}

function cornerRow({ job }: CheckContext, subject: string, radius: number | null): readonly Verdict[] {
  if (radius === null) return [];
  const { least, from } = job.shop.smallestCorner;
  const say = wordsIn(job.unit);
  const clause = `${CORNER_CLAUSE}: ${from}`;
  const found = radius === 0 ? "sharp inside corner: it comes out rounded" : `inside radius ${say.length(radius)}`;
  return [compare(subject, 2 * radius, ">=", 2 * least, `${found}; least ${say.length(least)}`, { clause })];
}

import { smallestInsideCorner } from "../../geometry/index.js";
import { leastTwice, taperOf } from "../../template/cutting.js";
import type { Hole, HoleShape } from "../../template/model.js";
import { cornerRow } from "../geometry/inside-corner.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/**
 * The smallest hole that the process cuts in this thickness, on the narrow side; a smaller one becomes a drill mark. Also
 * inside corners of the outline and of openings: nothing has to fit them, so that one which comes out rounded is advice.
 */
export const cutHole: Rule<"cut-hole"> = {
  id: "cut-hole",
  plainName: "least hole or corner to cut",
  title:
    "hole, on its narrow side, >= the smallest the process cuts in this thickness, else a drill mark; inside corner of outline or opening >= the smallest it leaves",
  severity: "advise",
  measured: "the hole or inside corner of the template",
  takes: PLATE,
  clause: ({ job }) => `smallest hole: ${job.shop.smallestHole.from}`,
  edition: () => "shop",
  check(context) {
    const { job, plate } = context;
    if (plate.material === "plywood")
      return [notApplicable("plate", "plywood is drilled from a list, not cut from a file")];
    if (job.shop.process === "drill") return [notApplicable("plate", "the shop drills its holes")];
    return [...plate.holes.map((hole) => cut(context, hole)), ...insideCorners(context)];
  },
};

function cut({ job, plate }: CheckContext, hole: Hole): RuleResult {
  const { smallestHole, process } = job.shop;
  const limit = leastTwice(smallestHole, plate.thickness);
  const taper = taperOf(job.shop, plate.thickness);
  const say = wordsIn(job.unit);
  const size = smallestSide(hole.shape);
  const made = hole.made === "drill" ? "; made as a drill mark: centre punch, size and note" : "";
  const note =
    `${say.length(size)} - taper ${say.twice(taper.twice)} (${taper.from}) against ${say.twice(limit)} ` +
    `for ${process} in ${say.length(plate.thickness)}${made}`;
  return compare(hole.tag, 2 * size - taper.twice, ">=", limit, note);
}

function smallestSide(shape: HoleShape): number {
  return shape.kind === "circle" ? shape.diameter : Math.min(shape.width, shape.height);
}

function insideCorners(context: CheckContext): readonly RuleResult[] {
  const { holes, region } = context.plate;
  const openings = holes.flatMap(({ tag, contour, made }) =>
    made === "cut" && contour.kind === "path" ? cornerRow(context, tag, smallestInsideCorner(contour, "inner")) : [],
  );
  return [...openings, ...cornerRow(context, "outline", smallestInsideCorner(region.outer, "outer"))];
}

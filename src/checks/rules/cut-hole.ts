import { smallestInsideCorner } from "../../geometry/index.js";
import { leastTwice, taperOf } from "../../plate/cutting.js";
import type { Hole, HoleShape } from "../../plate/model.js";
import { cornerRow } from "../inside-corner.js";
import type { CheckContext, Rule, Verdict } from "../model.js";
import { compare, notApplicable } from "../verdict.js";
import { wordsIn } from "../words.js";

/**
 * The smallest hole that the process cuts in this thickness, on the narrow side; a smaller one becomes a drill mark. Also
 * re-entrant corners of the outline: nothing has to fit them, so that one which comes out rounded is advice.
 */
export const cutHole: Rule = {
  id: "cut-hole",
  title:
    "hole, on its narrow side, >= the smallest the process cuts in this thickness, else a drill mark; re-entrant corner of the outline >= the smallest it leaves",
  severity: "advise",
  measured: "the hole or outline corner of the template",
  clause: ({ job }) => `smallest hole: ${job.shop.smallestHole.from}`,
  edition: () => "shop",
  check(context) {
    const { job, plate } = context;
    if (plate.material === "plywood")
      return [notApplicable("plate", "plywood is drilled from a list, not cut from a file")];
    if (job.shop.process === "drill") return [notApplicable("plate", "the shop drills its holes")];
    const corner = cornerRow(context, "outline", smallestInsideCorner(plate.region.outer, "outer"));
    return [...plate.holes.map((hole) => cut(context, hole)), ...corner];
  },
};

function cut({ job, plate }: CheckContext, hole: Hole): Verdict {
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

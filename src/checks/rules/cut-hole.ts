import type { Hole, HoleShape } from "../../plate/model.js";
import { leastTwice, taperOf } from "../cutting.js";
import type { CheckContext, Rule, Verdict } from "../model.js";
import { compare, notApplicable } from "../verdict.js";
import { wordsIn } from "../words.js";

/** The smallest hole that the process cuts in this thickness, on the narrow side; a smaller one becomes a drill mark. */
export const cutHole: Rule = {
  id: "cut-hole",
  title:
    "hole, on its narrow side, >= the smallest the process cuts in this thickness; a smaller one becomes a drill mark",
  severity: "advise",
  measured: "the hole of the template",
  clause: ({ job }) => `smallest hole: ${job.shop.smallestHole.from}`,
  edition: () => "shop",
  check(context) {
    const { job, plate } = context;
    if (plate.material === "plywood")
      return [notApplicable("plate", "plywood is drilled from a list, not cut from a file")];
    if (job.shop.process === "drill") return [notApplicable("plate", "the shop drills its holes")];
    return plate.holes.map((hole) => cut(context, hole));
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

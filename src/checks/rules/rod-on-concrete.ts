import { twiceDepthInside } from "../../geometry/index.js";
import { planContour } from "../geometry/measure.js";
import { whyOff } from "../misfit.js";
import type { Rule } from "../model.js";
import { compare, lacking } from "../results.js";
import { perRod, rodHoles } from "../rods.js";
import { CONCRETE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Every rod is cast in whole: none stands out of the side of its pier. The cover that it has is held by `rod-cover`. */
export const rodOnConcrete: Rule<"rod-on-concrete"> = {
  id: "rod-on-concrete",
  plainName: "rods inside concrete",
  title: "centre of every rod inside the concrete by half its diameter and more",
  severity: "stop",
  measured: "the distance of a rod from inside to the side of the concrete",
  takes: ["pattern", "rods.diameter", ...CONCRETE],
  clause: () => "d/2 <= distance to the side",
  edition: () => "geometry",
  check(context) {
    const { shape, at } = context.base.concrete;
    if (shape.kind === "missing") return perRod(context, ({ tag }) => lacking(tag, [shape]));
    const pier = planContour(shape.value, at);
    const say = wordsIn(context.job.unit);
    const depths = rodHoles(context).map((rod) => ({ rod, twice: twiceDepthInside(rod.center, pier) }));
    const why = depths.some(({ rod, twice }) => twice < rod.diameter)
      ? whyOff(context, pier, "concrete", ({ group }) => group.rod.diameter)
      : "";
    return depths.map(({ rod: { tag, diameter }, twice }) => {
      const place =
        twice < 0 ? `the centre lies ${say.twice(-twice)} off the concrete` : `${say.twice(twice)} to the side`;
      return compare(tag, twice, ">=", diameter, `${place}, rod ${say.length(diameter)}${twice < diameter ? why : ""}`);
    });
  },
};

import { twiceDepthInside } from "../../geometry/index.js";
import type { RodGroup } from "../../job/model/job.js";
import type { Length } from "../../units/index.js";
import { planContour } from "../geometry/measure.js";
import { whyOff } from "../misfit.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, lacking } from "../results.js";
import type { RodHole } from "../rods.js";
import { perRod, rodHoles } from "../rods.js";
import { BASE_HOLE, BASE_PLATE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Every rod passes through the base plate: its hole lies whole inside the plate, the rod itself where no hole is given. */
export const rodOnBasePlate: Rule<"rod-on-base-plate"> = {
  id: "rod-on-base-plate",
  plainName: "rods inside base plate",
  title: "centre of every rod inside the base plate by half its hole and more: there is steel around the hole",
  severity: "stop",
  measured: "the distance of a rod from inside to the edge of the base plate",
  takes: ["pattern", ...BASE_HOLE, ...BASE_PLATE],
  clause: () => "H/2 <= edge distance",
  edition: () => "geometry",
  check(context) {
    const { shape, at } = context.base.basePlate;
    if (shape.kind === "missing") return perRod(context, ({ tag }) => lacking(tag, [shape]));
    const plate = planContour(shape.value, at);
    const depths = perRodDepth(context, (rod) => twiceDepthInside(rod.center, plate));
    const why = depths.some(({ twice, needed }) => twice < needed)
      ? whyOff(context, plate, "base plate", ({ group }) => holeOf(group))
      : "";
    return depths.map((depth) => judge(context, depth, why));
  },
};

interface Depth {
  readonly rod: RodHole;
  /** Twice the distance to the edge, negative outside; and twice what the hole needs, which is no smaller than its rod. */
  readonly twice: number;
  readonly needed: number;
}

function perRodDepth(context: CheckContext, twiceDepth: (rod: RodHole) => number): readonly Depth[] {
  return rodHoles(context).map((rod) => {
    return { rod, twice: twiceDepth(rod), needed: holeOf(rod.group) };
  });
}

function holeOf({ baseHole, rod }: RodGroup): Length {
  return baseHole.kind === "given" ? baseHole.value : rod.diameter;
}

function judge({ job }: CheckContext, { rod, twice, needed }: Depth, why: string): RuleResult {
  const say = wordsIn(job.unit);
  const isGiven = rod.group.baseHole.kind === "given";
  const hole = isGiven ? `, hole ${say.length(needed)}` : `, no hole is given: rod ${say.length(needed)}`;
  const place =
    twice < 0 ? `the centre lies ${say.twice(-twice)} off the base plate` : `${say.twice(twice)} to the edge`;
  const broken = twice >= 0 && twice < needed ? `: the ${isGiven ? "hole" : "rod"} breaks the edge` : "";
  const note = `${place}${hole}${broken}${twice < needed ? why : ""}`;
  return compare(rod.tag, twice, ">=", needed, note);
}

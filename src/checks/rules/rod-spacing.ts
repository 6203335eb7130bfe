import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Missing } from "../../job/model/job.js";
import { concreteClauses, findSpacing } from "../../standards/index.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, lacking, notApplicable, notChecked } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

/** Least spacing of cast-in rods in concrete: 4 d, or 6 d of a torqued rod; of a pair the rod that asks for more governs. */
export const rodSpacing: Rule<"rod-spacing"> = {
  id: "rod-spacing",
  plainName: "spacing of rods in concrete",
  title: "spacing of two rods >= 4 d of each, 6 d of one that is torqued",
  severity: "ask",
  measured: "the spacing of two rods in the concrete",
  takes: ["pattern", "rods.diameter", "rods.torqued"],
  clause: ({ job }) => concreteClauses(job.editions.concrete).spacing,
  edition: ({ job }) => job.editions.concrete,
  check(context) {
    const rods = rodHoles(context);
    if (rods.length < 2) return [notApplicable("plate", "one rod has no neighbour")];
    const { concrete } = context.job.editions;
    const [loose, torqued] = [findSpacing(concrete, false), findSpacing(concrete, true)];
    if (!loose.found || !torqued.found)
      return [notChecked("plate", `${concrete}: no general least spacing of cast-in rods is tabulated`)];
    return spacings(context, rods, { loose: loose.row.factor, torqued: torqued.row.factor });
  },
};

interface Factors {
  readonly loose: number;
  readonly torqued: number;
}

function spacings(context: CheckContext, rods: readonly RodHole[], factors: Factors): readonly RuleResult[] {
  const pairs = governingPairs(
    rods,
    (a, b) => twiceDistanceBetweenPoints(a.center, b.center) - 2 * mostOf(a, b, factors, "torqued").least,
  );
  return pairs.map(({ first, second }) => spacing(context, first, second, factors));
}

/** What a rod asks of the spacing, and why. */
interface Asked {
  readonly least: number;
  readonly factor: number;
  readonly rod: RodHole;
  readonly torqued: boolean;
}

/** What the rod of the two asks that asks for more; one of which it is not known whether it is torqued is taken as `unknown`. */
function mostOf(a: RodHole, b: RodHole, factors: Factors, unknown: "torqued" | "loose"): Asked {
  const [first, second] = [asked(a, factors, unknown), asked(b, factors, unknown)];
  return second.least > first.least ? second : first;
}

function asked(rod: RodHole, factors: Factors, unknown: "torqued" | "loose"): Asked {
  const said = rod.rod.torqued;
  const torqued = said.kind === "given" ? said.value : unknown === "torqued";
  const factor = torqued ? factors.torqued : factors.loose;
  return { least: factor * rod.diameter, factor, rod, torqued };
}

function spacing({ job }: CheckContext, a: RodHole, b: RodHole, factors: Factors): RuleResult {
  const subject = `${a.tag}-${b.tag}`;
  const twice = twiceDistanceBetweenPoints(a.center, b.center);
  const say = wordsIn(job.unit);
  const held = ({ least, factor, rod }: Asked, why: string) =>
    compare(subject, twice, ">=", 2 * least, `${factor} x rod ${say.length(rod.diameter)}, ${why}`);
  const [most, fewest] = [mostOf(a, b, factors, "torqued"), mostOf(a, b, factors, "loose")];
  if (most.least === fewest.least) return held(fewest, fewest.torqued ? "torqued" : "not torqued");
  if (twice >= 2 * most.least) return held(most, "holds even when torqued");
  if (twice < 2 * fewest.least) return held(fewest, fewest.torqued ? "torqued" : "fails even when not torqued");
  return lacking(subject, unknownOf([a, b]));
}

function unknownOf(rods: readonly RodHole[]): readonly Missing[] {
  return rods.flatMap(({ rod }) => (rod.torqued.kind === "missing" ? [rod.torqued] : [])).slice(0, 1);
}

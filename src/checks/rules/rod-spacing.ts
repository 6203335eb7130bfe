import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import { concreteClauses, findSpacing } from "../../standards/index.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, lacking, notApplicable, notChecked } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

/** Least spacing of cast-in rods in concrete: 4 d, or 6 d when torqued; the larger rod of a pair governs. */
export const rodSpacing: Rule<"rod-spacing"> = {
  id: "rod-spacing",
  title: "spacing of two rods >= 4 d, or 6 d when torqued",
  severity: "ask",
  measured: "the spacing of two rods in the concrete",
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
    (a, b) => twiceDistanceBetweenPoints(a.center, b.center) - 2 * factorOf(a, b, factors) * larger(a, b),
  );
  return pairs.map(({ first, second }) => spacing(context, first, second, factors));
}

function larger(a: RodHole, b: RodHole): number {
  return Math.max(a.diameter, b.diameter);
}

/** Torqued when either rod is; an unknown one is taken as torqued here, and told apart in `spacing`. */
function factorOf(a: RodHole, b: RodHole, factors: Factors): number {
  return isKnownLoose(a) && isKnownLoose(b) ? factors.loose : factors.torqued;
}

function isKnownLoose({ rod }: RodHole): boolean {
  return rod.torqued.kind === "given" && !rod.torqued.value;
}

function isKnownTorqued({ rod }: RodHole): boolean {
  return rod.torqued.kind === "given" && rod.torqued.value;
}

function spacing({ job }: CheckContext, a: RodHole, b: RodHole, factors: Factors): RuleResult {
  const subject = `${a.tag}-${b.tag}`;
  const twice = twiceDistanceBetweenPoints(a.center, b.center);
  const say = wordsIn(job.unit);
  const held = (factor: number, why: string) =>
    compare(subject, twice, ">=", 2 * factor * larger(a, b), `${factor} x rod ${say.length(larger(a, b))}, ${why}`);
  if (isKnownTorqued(a) || isKnownTorqued(b)) return held(factors.torqued, "torqued");
  const unknown = [a, b].flatMap(({ rod }) => (rod.torqued.kind === "missing" ? [rod.torqued] : []))[0];
  if (unknown === undefined) return held(factors.loose, "not torqued");
  if (twice >= 2 * factors.torqued * larger(a, b)) return held(factors.torqued, "holds even when torqued");
  if (twice < 2 * factors.loose * larger(a, b)) return held(factors.loose, "fails even when not torqued");
  return lacking(subject, [unknown]);
}

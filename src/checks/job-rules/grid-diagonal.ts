import type { Point } from "../../geometry/index.js";
import { millimetresBetween, pointAt } from "../../geometry/index.js";
import type { GridLine } from "../../job/index.js";
import type { PlacedBase, SiteTransform } from "../../plan/index.js";
import { planToSite } from "../../plan/index.js";
import type { Length, SurveyUnit } from "../../units/index.js";
import { coordinateStep, NM_PER_MM, roundCoordinate, roundSymmetric } from "../../units/index.js";
import { PLAN, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { wordsIn } from "../words.js";

/** Diagonals of the bays, from the coordinates as they stand in the setting-out file and from the plan. */
export const gridDiagonal: JobRule<"grid-diagonal"> = {
  id: "grid-diagonal",
  plainName: "diagonal of a bay",
  title: "diagonal of a bay from rounded site coordinates less that of the plan x scale factor <= their rounding",
  severity: "advise",
  measured: "the misclosure of a diagonal",
  takes: [],
  clause: () => "two ends, each coordinate rounded: at most sqrt 2 x one unit of the last place",
  edition: () => "geometry",
  check(context) {
    const transform = context.plan?.transform ?? null;
    if (placedBases(context).length === 0) return [];
    if (transform === null) return [notApplicable(PLAN, "the job asks for no site coordinates")];
    const closures = baysOf(context).flatMap((bay) => closuresOf(context, transform, bay));
    const worst = closures.reduce<Closure | null>(
      (most, one) => (most === null || one.off > most.off ? one : most),
      null,
    );
    if (worst === null) return [notApplicable(PLAN, "no bay between x and y lines has a base at a corner")];
    const wrong = closures.filter(({ off }) => off > limitOf(context));
    return (wrong.length > 0 ? wrong : [worst]).map((closure) => judge(context, closure));
  },
};

interface Bay {
  readonly name: string;
  /** Counter-clockwise from the south-west. */
  readonly corners: readonly [Point, Point, Point, Point];
}

interface Closure {
  readonly name: string;
  /** In nanometres. */
  readonly off: number;
  readonly onPlan: number;
}

/** Bays between neighbouring x and y lines with a base at one corner or more. */
function baysOf(context: JobContext): readonly Bay[] {
  const used = new Set(placedBases(context).map(crossingKey));
  const [xs, ys] = [linesOf(context, "x"), linesOf(context, "y")];
  return xs.slice(1).flatMap((right, i) =>
    ys.slice(1).flatMap((top, j): Bay[] => {
      const [left, bottom] = [xs[i] ?? right, ys[j] ?? top];
      const corners = [
        pointAt(left.at, bottom.at),
        pointAt(right.at, bottom.at),
        pointAt(right.at, top.at),
        pointAt(left.at, top.at),
      ] as const;
      const isUsed = corners.some(({ x, y }) => used.has(`${x} ${y}`));
      return isUsed ? [{ name: `bay ${left.name}-${right.name}, ${bottom.name}-${top.name}`, corners }] : [];
    }),
  );
}

function crossingKey({ crossing }: PlacedBase): string {
  return `${crossing.x} ${crossing.y}`;
}

function linesOf({ plan }: JobContext, kind: "x" | "y"): readonly Extract<GridLine, { kind: "x" | "y" }>[] {
  const lines = (plan?.spec.lines ?? []).flatMap((line) => (line.kind === kind ? [line] : []));
  return lines.sort((a, b) => a.at - b.at);
}

function closuresOf(context: JobContext, transform: SiteTransform, { name, corners }: Bay): readonly Closure[] {
  const unit = unitOf(context);
  const [sw, se, ne, nw] = corners;
  return [
    [sw, ne],
    [se, nw],
  ].map(([from = sw, to = sw]) => {
    const [a, b] = [from, to].map((at) => planToSite(transform, at));
    const rounded = (value: Length | undefined) => (value === undefined ? 0 : roundCoordinate(value, unit));
    const north = rounded(a?.northing) - rounded(b?.northing);
    const east = rounded(a?.easting) - rounded(b?.easting);
    const onPlan = millimetresBetween(from, to) * NM_PER_MM;
    return { name, onPlan, off: Math.abs(roundSymmetric(Math.hypot(north, east) - onPlan * transform.scaleFactor)) };
  });
}

function unitOf({ plan }: JobContext): SurveyUnit {
  return plan?.spec.settingOut.unit ?? "m";
}

/** Each coordinate is off by half a unit of the last place, and by 1 nm of the lattice, at either end. */
function limitOf(context: JobContext): number {
  return Math.ceil(Math.SQRT2 * (coordinateStep(unitOf(context)) + 2));
}

function judge(context: JobContext, { name, off, onPlan }: Closure): RuleResult {
  const say = wordsIn(context.job.unit);
  const note = `diagonal ${say.length(roundSymmetric(onPlan))} ${context.job.unit} on the plan; coordinates in ${unitOf(context)} as in the setting-out file`;
  return compare(name, 2 * off, "<=", 2 * limitOf(context), note);
}

/** Which point is which rod's: by name, with a suffix for a second height; else the one rod that is near. */
import type { Finding } from "../diagnostics/finding.js";
import { toLattice } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { SettingOutPoint } from "../plan/index.js";
import type { PlacedBase, PlannedRod } from "../plan/model.js";
import type { PointsFile, SurveyedPoint } from "../readers/points-model.js";
import { subtract } from "../units/length.js";
import type { OtherPoint, PointOnPlan, SurveyAim, SurveyTerms, UnmatchedPoint } from "./model.js";
import type { PlaceIndex } from "./near.js";
import { indexPlaces, NEAR } from "./near.js";

/** A rod of the plan that points may be of. */
export interface DesignedRod {
  readonly name: string;
  readonly standing: PlacedBase;
  readonly planned: PlannedRod;
  readonly expected: SettingOutPoint;
}

/** Which point is which rod, and what is left over. */
export interface Matched {
  /** One or two points a rod. */
  readonly points: ReadonlyMap<DesignedRod, readonly PointOnPlan[]>;
  readonly targets: readonly DesignedRod[];
  readonly others: readonly OtherPoint[];
  readonly unmatched: readonly UnmatchedPoint[];
  readonly findings: readonly Finding[];
}

interface Pending {
  readonly point: SurveyedPoint;
  readonly on: PointOnPlan;
}

/** Matches every point of the file; `places` are their places on the plan, null: out of reach. */
export function matchPoints(
  file: PointsFile,
  places: readonly (Point | null)[],
  aim: SurveyAim,
  { within }: Pick<SurveyTerms, "within">,
): Matched {
  const targets = targetsOf(aim);
  const names = namesOf(targets);
  const rest = new Map(
    aim.expected.filter(({ kind }) => kind !== "rod").map((each) => [each.name.toUpperCase(), each]),
  );
  const found = new Map<DesignedRod, PointOnPlan[]>();
  const others: OtherPoint[] = [];
  const pending: Pending[] = [];
  const far: UnmatchedPoint[] = [];
  file.points.forEach((point, i) => {
    const plan = places[i] ?? null;
    if (plan === null) {
      far.push(unmatchedPoint(point, "it lies more than 100 km from the job", []));
      return;
    }
    const { stem, end } = readName(point);
    const on: PointOnPlan = { name: point.name, line: point.line, plan, elevation: point.elevation, end };
    const target = names.get(point.name.toUpperCase()) ?? names.get(stem);
    const other = rest.get(point.name.toUpperCase());
    if (target !== undefined) add(found, target, on);
    else if (other !== undefined) others.push(otherOf(on, other));
    else pending.push({ point, on });
  });
  const doubts = nameDoubts(found, targets, within, file.file);
  const unmatched = [...matchByPlace(pending, found, targets, within), ...far].sort((a, b) => a.line - b.line);
  const faults = duplicateFaults(found, file.file);
  const lost = unmatched.filter(({ candidates }) => candidates.length > 1).map((point) => ambiguity(point, file.file));
  return { points: found, targets, others, unmatched, findings: [...faults, ...doubts, ...lost] };
}

function targetsOf({ plan, expected }: SurveyAim): readonly DesignedRod[] {
  const rods = expected.filter(({ kind }) => kind === "rod");
  const planned = plan.bases.flatMap((standing) => standing.rods.map((rod) => ({ standing, planned: rod })));
  return planned.flatMap((each, i) => {
    const point = rods[i];
    return point === undefined ? [] : [{ ...each, name: point.name, expected: point }];
  });
}

/** The name of the setting-out file; `B1_A1` too where the mark stands once, and `A1` where one base stands alone. */
function namesOf(targets: readonly DesignedRod[]): ReadonlyMap<string, DesignedRod> {
  const bases = new Set(targets.map(({ standing }) => standing));
  const counts = new Map<string, number>();
  for (const { base } of bases) counts.set(base.mark, (counts.get(base.mark) ?? 0) + 1);
  const names = new Map<string, DesignedRod>();
  for (const target of targets) {
    const { base } = target.standing;
    const { tag } = target.planned.rod;
    if (bases.size === 1) names.set(tag.toUpperCase(), target);
    if (counts.get(base.mark) === 1) names.set(`${base.mark}_${tag}`.toUpperCase(), target);
  }
  for (const target of targets) names.set(target.name.toUpperCase(), target);
  return names;
}

const ENDS: readonly (readonly [PointOnPlan["end"], RegExp, RegExp])[] = [
  ["upper", /[_.-](T|TOP|U|UPPER)$/, /\b(TOP|UPPER)\b/],
  ["lower", /[_.-](B|BOT|BOTTOM|L|LOWER)$/, /\b(BOT|BOTTOM|LOWER)\b/],
];

/** The name without its suffix for a height, in capitals, and what suffix or description say. */
function readName({ name, description }: SurveyedPoint): { readonly stem: string; readonly end: PointOnPlan["end"] } {
  const upper = name.toUpperCase();
  for (const [end, suffix] of ENDS) if (suffix.test(upper)) return { stem: upper.replace(suffix, ""), end };
  const said = ENDS.find(([, , word]) => word.test(description.toUpperCase()));
  return { stem: upper, end: said?.[0] ?? null };
}

function add(found: Map<DesignedRod, PointOnPlan[]>, target: DesignedRod, point: PointOnPlan): void {
  const points = found.get(target);
  if (points === undefined) found.set(target, [point]);
  else points.push(point);
}

function otherOf({ name, line, plan, elevation }: PointOnPlan, other: SettingOutPoint): OtherPoint {
  const at = other.plan ?? plan;
  return {
    name,
    kind: other.kind,
    line,
    north: toLattice(plan.y - at.y),
    east: toLattice(plan.x - at.x),
    dz: elevation === null || other.elevation === null ? null : subtract(elevation, other.elevation),
  };
}

/** A point without a known name goes to the one rod within reach; several rods, or a rod that has its point, take none. */
function matchByPlace(
  pending: readonly Pending[],
  found: Map<DesignedRod, PointOnPlan[]>,
  targets: readonly DesignedRod[],
  within: number,
): readonly UnmatchedPoint[] {
  const index = indexPlaces(targets, ({ planned }) => planned.plan, within / 1e6);
  const named = new Set(found.keys());
  const asked = pending.map(({ point, on }) => ({ point, on, near: index.near(on.plan).map(({ item }) => item) }));
  const claims = new Map<DesignedRod, PointOnPlan[]>();
  for (const { near, on } of asked) if (near.length === 1 && near[0] !== undefined) add(claims, near[0], on);
  return asked.flatMap(({ point, on, near }) => {
    const [target, ...more] = near;
    const candidates = near.map(({ name }) => name);
    if (target === undefined) return [unmatchedPoint(point, "no rod stands near", candidates)];
    if (more.length > 0) return [unmatchedPoint(point, `it may be any of ${candidates.join(", ")}`, candidates)];
    if (named.has(target)) return [unmatchedPoint(point, `${target.name} has its point by name`, candidates)];
    const rivals = claims.get(target) ?? [];
    if (rivals.length > 1 && !areTwoEnds(rivals))
      return [unmatchedPoint(point, `${rivals.length} points lie near ${target.name}`, candidates)];
    add(found, target, on);
    return [];
  });
}

function unmatchedPoint(
  { name, line, northing, easting }: SurveyedPoint,
  why: string,
  candidates: readonly string[],
): UnmatchedPoint {
  return { name, line, northing, easting, why, candidates };
}

/** Two points of one rod: an upper and a lower one, by name, description, or one of them plain. */
function areTwoEnds(points: readonly PointOnPlan[]): boolean {
  const [a, b] = points;
  return points.length === 2 && a !== undefined && b !== undefined && a.end !== b.end;
}

function duplicateFaults(found: ReadonlyMap<DesignedRod, readonly PointOnPlan[]>, file: string): readonly Finding[] {
  return [...found].flatMap(([{ name }, points]) => {
    if (points.length < 2 || areTwoEnds(points)) return [];
    const lines = points.map(({ line }) => line);
    const message = `rod ${name} has ${points.length} points, in lines ${lines.join(", ")}; allowed are one, or two at two heights`;
    const at = { file, line: lines[1] ?? 1, column: 1 };
    return [{ code: "survey-duplicate", severity: "error", at, message, hint: `name them ${name}_T and ${name}_B` }];
  });
}

/** A point by name that lies at another rod, or far from its own and from every other. */
function nameDoubts(
  found: ReadonlyMap<DesignedRod, readonly PointOnPlan[]>,
  targets: readonly DesignedRod[],
  within: number,
  file: string,
): readonly Finding[] {
  const index: PlaceIndex<DesignedRod> = indexPlaces(targets, ({ planned }) => planned.plan, within / 1e6);
  return [...found].flatMap(([target, points]) =>
    points.flatMap(({ name, line, plan }): Finding[] => {
      const own = Math.hypot(plan.x - target.planned.plan.x, plan.y - target.planned.plan.y);
      const nearest = index.near(plan)[0];
      if (own * 1e6 <= within || nearest?.item === target) return [];
      if (nearest === undefined && own <= NEAR) return [];
      const where = nearest === undefined ? "lies at no rod" : `lies at rod ${nearest.item.name}`;
      const message = `${name} ${where}, ${Math.round(own)} mm from the place of its own name; it is taken by its name`;
      const hint = nearest === undefined ? "a slip in its coordinates?" : "are names changed round?";
      return [{ code: "survey-name", severity: "warning", at: { file, line, column: 1 }, message, hint }];
    }),
  );
}

function ambiguity({ name, line, candidates }: UnmatchedPoint, file: string): Finding {
  const message = `point ${JSON.stringify(name)} may be any of ${candidates.join(", ")}: it is taken for none`;
  const hint = "name it, or give a lesser survey.within";
  return { code: "survey-ambiguous", severity: "warning", at: { file, line, column: 1 }, message, hint };
}

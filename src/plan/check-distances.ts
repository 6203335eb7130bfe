/**
 * Distances to check by tape or instrument: two diagonals of every group, and from group centre to group centre along every
 * grid line. Horizontal distances. Plan distances are ground distances, as a tape gives them; site distances are those
 * between site coordinates, plan distance x the surveyor's combined scale factor.
 */
import { distanceBetweenPoints } from "../geometry/point.js";
import type { Point } from "../geometry/vocabulary.js";
import type { PlacedRod } from "../rods/model.js";
import { greatestOf } from "../units/extremes.js";
import type { Length } from "../units/index.js";
import { nanometres, toMillimetres } from "../units/index.js";
import type { PlacedBase, Plan } from "./model.js";
import { centreName, groupCentre, pointStems, rodName } from "./setting-out-points.js";

/** One distance between two setting-out points. */
export interface CheckDistance {
  /** `diagonal`, `along line` (neighbours) or `whole line` (first to last). */
  readonly what: "diagonal" | "along line" | "whole line";
  /** Name of the base or of the grid line. */
  readonly of: string;
  readonly from: string;
  readonly to: string;
  readonly distance: Length;
  /** Between site coordinates; null where plan and site are not tied. */
  readonly onSite: Length | null;
}

type PlanDistance = Omit<CheckDistance, "onSite">;

interface Stop {
  readonly base: PlacedBase;
  readonly stem: string;
  readonly centre: Point;
}

/** All check distances: diagonals in the order of the placements, then line by line in the order of the grid. */
export function checkDistances(plan: Plan): readonly CheckDistance[] {
  const stems = pointStems(plan);
  const stops = plan.bases.map((base, index): Stop => ({ base, stem: stems[index] ?? "", centre: groupCentre(base) }));
  const byLine = new Map<string, Stop[]>();
  for (const stop of stops) {
    for (const name of new Set(stop.base.placement.lines)) {
      const others = byLine.get(name);
      if (others === undefined) byLine.set(name, [stop]);
      else others.push(stop);
    }
  }
  const diagonals = rememberDiagonals();
  const found = [
    ...stops.flatMap((stop) => diagonalsOf(stop, diagonals(stop.base.ownRods))),
    ...plan.spec.lines.flatMap((line) => alongLine(line, byLine.get(line.name) ?? [])),
  ];
  const factor = plan.transform?.scaleFactor ?? null;
  return found.map((each) => ({ ...each, onSite: factor === null ? null : nanometres(each.distance * factor) }));
}

function diagonalsOf({ base, stem }: Stop, pairs: readonly (readonly [number, number])[]): PlanDistance[] {
  return pairs.flatMap(([i, j]): PlanDistance[] => {
    const [a, b] = [base.rods[i], base.rods[j]];
    if (a === undefined || b === undefined) return [];
    const [from, to] = [rodName(stem, a.rod.tag), rodName(stem, b.rod.tag)];
    return [{ what: "diagonal", of: base.name, from, to, distance: distanceBetweenPoints(a.plan, b.plan) }];
  });
}

/** The pairs of a base are looked for once, in the base's own axes: a turn cannot change them. */
function rememberDiagonals(): (rods: readonly PlacedRod[]) => readonly (readonly [number, number])[] {
  const known = new Map<readonly PlacedRod[], readonly (readonly [number, number])[]>();
  return (rods) => {
    const pairs = known.get(rods) ?? diagonalPairs(rods.map(({ center }) => center));
    known.set(rods, pairs);
    return pairs;
  };
}

/** The farthest pair, and the farthest that has no rod in common with it (of three rods: the next farthest). */
function diagonalPairs(points: readonly Point[]): readonly (readonly [number, number])[] {
  const pairs = points
    .flatMap((a, i) => points.slice(i + 1).map((b, j) => ({ i, j: i + 1 + j, distance: distanceBetweenPoints(a, b) })))
    .sort((a, b) => b.distance - a.distance || a.i - b.i || a.j - b.j);
  const [first, ...others] = pairs;
  if (first === undefined) return [];
  const apart = others.find(({ i, j }) => ![first.i, first.j].includes(i) && ![first.i, first.j].includes(j));
  const second = apart ?? others[0];
  return [first, ...(second === undefined ? [] : [second])].map(({ i, j }) => [i, j] as const);
}

function alongLine(line: Plan["spec"]["lines"][number], stops: readonly Stop[]): PlanDistance[] {
  const sorted = sortAlong(line, stops);
  const between = (what: PlanDistance["what"], a: Stop, b: Stop): PlanDistance => ({
    ...{ what, of: `line ${line.name}`, from: centreName(a.stem), to: centreName(b.stem) },
    distance: distanceBetweenPoints(a.centre, b.centre),
  });
  const steps = sorted.slice(1).map((stop, index) => between("along line", sorted[index] ?? stop, stop));
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (sorted.length < 3 || first === undefined || last === undefined) return steps;
  return [...steps, between("whole line", first, last)];
}

/** Stops in the order in which the line passes them: plan north, plan east, away from a point, or counter-clockwise. */
function sortAlong(line: Plan["spec"]["lines"][number], stops: readonly Stop[]): readonly Stop[] {
  const positions = stops.map((stop) => ({ stop, at: positionOn(line, stop.base.crossing) }));
  const sorted = positions.sort((a, b) => a.at - b.at);
  return (line.kind === "arc" ? fromWidestGap(sorted) : sorted).map(({ stop }) => stop);
}

function positionOn(line: Plan["spec"]["lines"][number], { x, y }: Point): number {
  switch (line.kind) {
    case "x":
      return y;
    case "y":
      return x;
    case "skewed":
    case "radial": {
      const angle = (line.degrees * Math.PI) / 180;
      return x * Math.cos(angle) + y * Math.sin(angle);
    }
    case "arc": {
      const [centerX, centerY] = [toMillimetres(line.center.x), toMillimetres(line.center.y)];
      return Math.atan2(y - centerY, x - centerX);
    }
  }
}

/** Positions round a circle, started after the widest gap, so that the list does not jump across it. */
function fromWidestGap<T extends { readonly at: number }>(sorted: readonly T[]): readonly T[] {
  const gaps = sorted.map(({ at }, index) => {
    const before = sorted.at(index - 1)?.at ?? at;
    return index === 0 ? at - before + 2 * Math.PI : at - before;
  });
  const start = gaps.indexOf(greatestOf(gaps));
  return [...sorted.slice(start), ...sorted.slice(0, start)];
}

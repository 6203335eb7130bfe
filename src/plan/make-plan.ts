/** From grid and placements to where every base and rod stands. */
import { ProgramFault } from "../diagnostics/program-fault.js";
import type { Contour, Extent, Point } from "../geometry/index.js";
import {
  circle,
  extentOf,
  extentOfPoints,
  joinExtents,
  moveContour,
  moveInTurn,
  NO_EXTENT,
  pointAt,
  rectangle,
  shift,
  turn,
  wholeTurn,
} from "../geometry/index.js";
import type { Job, Placement, PlanSpec } from "../job/index.js";
import { chooseCrossing } from "../job/index.js";
import type { BaseWithRods } from "../rods/index.js";
import { makeTransform } from "./make-transform.js";
import type { PlacedBase, Plan } from "./model.js";

/** The plan of a job that was read; null for a job without a grid. A placement that has no place is the program's fault: it throws. */
export function makePlan(job: Job, bases: readonly BaseWithRods[]): Plan | null {
  return job.plan === null ? null : layPlan(job.plan, bases);
}

/** The plan of this grid and these placements, as `makePlan`. */
export function layPlan(spec: PlanSpec, bases: readonly BaseWithRods[]): Plan {
  const types = new Map(bases.map((each) => [each.base.mark, each]));
  const lines = new Map(spec.lines.map((line) => [line.name, line]));
  return planOf(spec, withOwnNames(spec.placements.map((placement) => place(placement, types, lines))));
}

type Lines = ReadonlyMap<string, PlanSpec["lines"][number]>;

function place(placement: Placement, types: ReadonlyMap<string, BaseWithRods>, lines: Lines): PlacedBase {
  const type = types.get(placement.mark);
  const [first, second] = placement.lines.map((name) => lines.get(name));
  const at = placement.lines.join("-");
  if (type === undefined) throw new ProgramFault(`placement ${at}: there is no base ${placement.mark}`);
  if (first === undefined || second === undefined) throw new ProgramFault(`placement ${at}: there is no such line`);
  const crossing = chooseCrossing(first, second, placement.near);
  if (!crossing.ok) throw new ProgramFault(`placement ${at}: the lines have ${crossing.why} crossings`);
  return standing(placement, type, [first, second], crossing.at);
}

function standing(
  placement: Placement,
  { base, rods }: BaseWithRods,
  lines: PlacedBase["lines"],
  crossing: Point,
): PlacedBase {
  const { offset } = placement;
  const working = shift(vectorOf(pointAt(offset.x, offset.y))).apply(crossing);
  const move = placementMove({ placement, workingPoint: working });
  return {
    placement,
    base,
    ownRods: rods,
    name: `${placement.mark} ${placement.lines.join("-")}`,
    lines,
    crossing,
    workingPoint: working,
    rods: rods.map((rod) => ({ rod, plan: move.apply(rod.center) })),
  };
}

function vectorOf({ x, y }: Point) {
  return { dx: x, dy: y };
}

/** From a base's own axes to the plan: its turn, then its working point. Quarter turns are exact. */
function placementMove({ placement, workingPoint }: Pick<PlacedBase, "placement" | "workingPoint">) {
  return moveInTurn(turn(placement.turn), shift(vectorOf(workingPoint)));
}

/** A contour of the base's own axes, where it stands on the plan. */
export function contourOnPlan(placed: PlacedBase, contour: Contour): Contour {
  return moveContour(contour, placementMove(placed));
}

/** The concrete of a placed base on the plan; null where its size is not given. */
export function concreteOnPlan(placed: PlacedBase): Contour | null {
  const { shape, at } = placed.base.concrete;
  if (shape.kind === "missing") return null;
  const center = pointAt(at.x, at.y);
  const { value } = shape;
  const own =
    value.kind === "circle" ? circle(center, value.diameter) : rectangle(center, value.x, value.y, value.corner);
  return contourOnPlan(placed, own);
}

/** `B1 A-1`; the second of two that would read the same is `B1 A-1 (2)`. */
function withOwnNames(placed: readonly PlacedBase[]): readonly PlacedBase[] {
  const counts = new Map<string, number>();
  return placed.map((base) => {
    const count = (counts.get(base.name) ?? 0) + 1;
    counts.set(base.name, count);
    return count === 1 ? base : { ...base, name: `${base.name} (${count})` };
  });
}

function planOf(spec: PlanSpec, bases: readonly PlacedBase[]): Plan {
  return { spec, bases, control: spec.control, transform: makeTransform(spec), extent: extentOfPlan(bases) };
}

function extentOfPlan(bases: readonly PlacedBase[]): Extent {
  return bases.reduce((box, base) => joinExtents(box, extentOfBase(base)), NO_EXTENT);
}

function extentOfBase(base: PlacedBase): Extent {
  const points = extentOfPoints([base.crossing, base.workingPoint, ...base.rods.map(({ plan }) => plan)]);
  const concrete = concreteOnPlan(base);
  return concrete === null ? points : joinExtents(points, extentOf(concrete));
}

/** True where every placement of the marks is turned alike, and each mark has one: north may then be marked on their template. */
export function placedAlike({ placements }: Pick<PlanSpec, "placements">, marks: readonly string[]): boolean {
  const wanted = new Set(marks);
  const own = placements.filter(({ mark }) => wanted.has(mark));
  const turns = own.map(({ turn: degrees }) => wholeTurn(degrees));
  const isPlaced = new Set(own.map(({ mark }) => mark)).size === wanted.size;
  return isPlaced && turns.length > 0 && turns.every((degrees) => degrees === turns[0]);
}

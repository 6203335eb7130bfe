/** From grid and placements to where every base and rod stands. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
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
} from "../geometry/index.js";
import type { Job, Placement, PlanSpec } from "../job/index.js";
import { chooseCrossing } from "../job/index.js";
import type { BaseWithRods } from "../rods/index.js";
import { makeTransform } from "./make-transform.js";
import type { PlacedBase, Plan } from "./model.js";

/** The plan of a job; null for a job without placements or grid. */
export function makePlan(job: Job, bases: readonly BaseWithRods[]): Outcome<Plan | null> {
  const spec = job.plan;
  if (spec === null) return { ok: true, value: null, findings: [] };
  const types = new Map(bases.map((each) => [each.base.mark, each]));
  const findings: Finding[] = [];
  const lines = new Map(spec.lines.map((line) => [line.name, line]));
  const placed = spec.placements.flatMap((placement) => place(placement, types, lines, findings));
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: planOf(spec, withOwnNames(placed)), findings };
}

type Lines = ReadonlyMap<string, PlanSpec["lines"][number]>;

/** Jobs that were read have no fault left here; those made by hand may. */
function place(
  placement: Placement,
  types: ReadonlyMap<string, BaseWithRods>,
  lines: Lines,
  findings: Finding[],
): readonly PlacedBase[] {
  const type = types.get(placement.mark);
  const [first, second] = placement.lines.map((name) => lines.get(name));
  if (type === undefined) findings.push(fault(placement, `there is no base ${placement.mark}`));
  if (first === undefined || second === undefined)
    findings.push(fault(placement, `there is no crossing ${placement.lines.join("-")}`));
  if (type === undefined || first === undefined || second === undefined) return [];
  const crossing = chooseCrossing(first, second, placement.near);
  if (!crossing.ok) {
    findings.push(fault(placement, `lines ${placement.lines.join(" and ")} have ${crossing.why} crossings`));
    return [];
  }
  return [standing(placement, type, [first, second], crossing.at)];
}

function fault({ place: at }: Placement, message: string): Finding {
  return { code: "placement", severity: "error", at, message };
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

/** True where every placement of the mark is turned alike, and there is one: north may then be marked on its template. */
export function placedAlike({ placements }: Pick<PlanSpec, "placements">, mark: string): boolean {
  const turns = placements
    .filter((placement) => placement.mark === mark)
    .map(({ turn: degrees }) => wholeTurn(degrees));
  return turns.length > 0 && turns.every((degrees) => degrees === turns[0]);
}

function wholeTurn(degrees: number): number {
  return ((degrees % 360) + 360) % 360;
}

/** Plans for tests of setting-out, made by hand without the readers. Invented data. */
import { writeSettingOut } from "../src/formats/setting-out-csv.js";
import type { Base, Job } from "../src/job/model/job.js";
import { given, missing } from "../src/job/model/job.js";
import type { ControlPoint, GridLine, Placement, PlanSpec } from "../src/job/model/plan.js";
import type { CoordinateSystem } from "../src/plan/index.js";
import { locatedPoints, makePlan } from "../src/plan/index.js";
import type { Plan } from "../src/plan/model.js";
import { placeRods } from "../src/rods/index.js";
import { inches, type Length, nanometres } from "../src/units/length.js";
import { baseFixture, jobFixture } from "./fixture.js";

export const zero = nanometres(0);
const nothing = missing("test", "not given");

/** Lines A, B, C run plan north at x 0, 30 and 60 ft; lines 1, 2 run plan east at y 0 and 25 ft. */
export const gridLines: readonly GridLine[] = [
  { kind: "x", name: "A", at: zero },
  { kind: "x", name: "B", at: inches(360) },
  { kind: "x", name: "C", at: inches(720) },
  { kind: "y", name: "1", at: zero },
  { kind: "y", name: "2", at: inches(300) },
];

export function placementAt(lines: readonly [string, string], changes: Partial<Placement> = {}): Placement {
  return {
    place: { file: "job.yaml", line: 1, column: 1, path: "placements[0]" },
    mark: "B1",
    lines,
    offset: { x: zero, y: zero },
    near: nothing,
    turn: 0,
    topOfConcrete: given(inches(1200), "job"),
    bottomOfPlate: nothing,
    delivery: "",
    ...changes,
  };
}

export function controlPoint(
  name: string,
  northing: Length,
  easting: Length,
  changes: Partial<ControlPoint> = {},
): ControlPoint {
  return { name, plan: nothing, northing, easting, elevation: nothing, ...changes };
}

export function planFixture(changes: Partial<PlanSpec> = {}): PlanSpec {
  return {
    lines: gridLines,
    placements: [placementAt(["A", "1"]), placementAt(["B", "1"])],
    control: [],
    trueNorth: nothing,
    transform: { kind: "none" },
    scaleFactor: given(1, "default"),
    settingOut: { order: "PNEZD", unit: "ft" },
    bearings: "decimal",
    controlTolerance: given(inches(0.25), "test"),
    ...changes,
  };
}

export interface PlannedJob {
  readonly job: Job;
  readonly plan: Plan;
}

/** The job with that site, and its plan. */
export function planJob(changes: Partial<PlanSpec> = {}, bases: readonly Base[] = [baseFixture()]): PlannedJob {
  const job = jobFixture({ bases, plan: planFixture(changes) });
  const placed = job.bases.map((base) => {
    const rods = placeRods(base);
    if (!rods.ok) throw new Error(rods.findings.map(({ message }) => message).join("; "));
    return { base, rods: rods.value };
  });
  const plan = makePlan(job, placed);
  if (plan === null) throw new Error("the job has no plan");
  return { job, plan };
}

/** The setting-out file of a plan in one coordinate system, as `build` writes it. */
export function settingOutTexts(plan: Plan, system: CoordinateSystem, isHeld?: (mark: string) => boolean) {
  return writeSettingOut(locatedPoints(plan, system, isHeld), plan.spec.settingOut);
}

/** Control points and the way from plan to site, as written -> as the model has them. */

import { placeWords } from "../../diagnostics/finding.js";
import { toLattice } from "../../geometry/index.js";
import type { Length, Unit } from "../../units/index.js";
import { FARTHEST_POINT, NM_PER_MM } from "../../units/index.js";
import { chooseCrossing, noCrossingWords } from "../crossing.js";
import type { SourceDocument, WithFindings } from "../document.js";
import { placeOf } from "../document.js";
import type { Input, Offset } from "../model/job.js";
import { given, missing, optional } from "../model/job.js";
import type { ControlPoint, TransformSpec } from "../model/plan.js";
import type { ControlDocument, SiteDocument } from "../schema/plan.js";
import type { Lines } from "./plan-report.js";
import { farWords, PlanReport, readCrossing } from "./plan-report.js";
import { offsetOf } from "./shapes.js";

/** One control point, with the document that it stands in. */
export interface WrittenControl {
  readonly document: SourceDocument;
  readonly control: ControlDocument;
}

/** Control points with their place on the plan, and their faults; `origin`: the site position of plan 0,0 where it is given. */
export function resolveControl(
  written: readonly WrittenControl[],
  lines: Lines,
  origin: OnSite | null,
  unit: Unit,
): WithFindings<readonly ControlPoint[]> {
  const report = new PlanReport(unit);
  judgeNames(written, report);
  judgeReach(written, origin, report);
  const value = written.map(({ document, control }) => {
    const { point, northing, easting, elevation } = control;
    return {
      name: point,
      plan: planOf(document, control, lines, report),
      northing,
      easting,
      elevation: optional(elevation, "control.elevation", "no elevation of the control point is given"),
    };
  });
  return { value, findings: report.findings };
}

function judgeNames(written: readonly WrittenControl[], report: PlanReport): void {
  const first = new Map<string, SourceDocument>();
  for (const { document, control } of written) {
    const key = control.point.toUpperCase();
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, document);
    else {
      const there = placeWords(placeOf(earlier, ["point"]));
      const message = `the point "${control.point}" is named twice; first at ${there}; every point has its own name`;
      report.fault(document, ["point"], "point-twice", message);
    }
  }
}

/** A position on the site. */
type OnSite = Pick<ControlPoint, "northing" | "easting">;

const apart = (a: OnSite, b: OnSite): number => Math.hypot(a.northing - b.northing, a.easting - b.easting);

/** No point lies farther from the origin than a job reaches; without one, from the point in the middle of all. */
function judgeReach(written: readonly WrittenControl[], origin: OnSite | null, report: PlanReport): void {
  const most = FARTHEST_POINT * NM_PER_MM;
  const middle = middleOf(written.map(({ control }) => control));
  for (const { document, control } of written) {
    const [from, name] = origin === null ? [middle ?? control, middle?.point ?? ""] : [origin, "site.origin"];
    if (apart(control, from) > most)
      report.fault(document, ["northing"], "too-far", `puts ${control.point} ${farWords(apart(control, from), name)}`);
    if (control.elevation !== undefined && Math.abs(control.elevation) > most)
      report.fault(document, ["elevation"], "too-far", `is ${farWords(Math.abs(control.elevation), "zero")}`);
  }
}

/** The point nearest to the median of northings and eastings: one that is far out does not move it. */
function middleOf(points: readonly ControlDocument[]): ControlDocument | null {
  const median = (key: "northing" | "easting"): Length | undefined =>
    points.map((point) => point[key]).sort((a, b) => a - b)[(points.length - 1) >> 1];
  const [northing, easting] = [median("northing"), median("easting")];
  if (northing === undefined || easting === undefined) return null;
  const away = (point: ControlDocument): number => apart(point, { northing, easting });
  return points.reduce<ControlDocument | null>(
    (near, point) => (near === null || away(point) < away(near) ? point : near),
    null,
  );
}

function planOf(
  document: SourceDocument,
  { plan, at }: ControlDocument,
  lines: Lines,
  report: PlanReport,
): Input<Offset> {
  if (plan !== undefined && at !== undefined)
    report.fault(document, ["at"], "plan-and-at", "is given beside plan; allowed is one of them");
  if (plan !== undefined) return given(offsetOf(plan), "job");
  const none = missing("control.plan", "the control point has no place on the plan");
  if (at === undefined || lines.size === 0) return none;
  const reading = readCrossing(at, lines);
  if (!reading.ok) {
    report.fault(document, ["at"], "no-line", reading.message, reading.hint);
    return none;
  }
  const [a, b] = reading.lines.map((name) => lines.get(name));
  const chosen = a === undefined || b === undefined ? null : chooseCrossing(a, b, none);
  if (chosen?.ok) return given({ x: toLattice(chosen.at.x), y: toLattice(chosen.at.y) }, `job, grid ${at}`);
  const message =
    chosen?.why === "several" ? "cross twice; allowed is plan: [x, y]" : noCrossingWords(chosen?.why ?? "none");
  report.fault(document, ["at"], "no-crossing", `lines ${reading.lines.join(" and ")} ${message}`);
  return none;
}

/** Where the transform's faults are told. */
export interface TransformPlaces {
  readonly root: SourceDocument;
  readonly site: SourceDocument;
}

/** By an origin, or by the control points named, or by all that have a place on the plan. */
export function resolveTransform(
  site: SiteDocument | null,
  control: readonly ControlPoint[],
  places: TransformPlaces,
  unit: Unit,
): WithFindings<TransformSpec> {
  const report = new PlanReport(unit);
  return { value: transformBy(site, control, places, report), findings: report.findings };
}

function transformBy(
  site: SiteDocument | null,
  control: readonly ControlPoint[],
  places: TransformPlaces,
  report: PlanReport,
): TransformSpec {
  if (site?.origin !== undefined) {
    if (site.points !== undefined)
      report.fault(places.site, ["points"], "origin-and-points", "is given beside origin; allowed is one of them");
    return { kind: "origin", ...site.origin };
  }
  const named = namedPoints(site, control, places, report);
  if (named === null) return { kind: "none" };
  if (named.length < 2) {
    const message = `${named.length === 1 ? "only one point has" : "no point has"} a place on the plan (plan or at); allowed are two or more, or site.origin`;
    report.fault(places.root, ["control"], "too-few-points", message);
  }
  judgeApart(named, places, report);
  return { kind: "points", points: named.map(({ name }) => name) };
}

/** null where the job asks for no site coordinates. */
function namedPoints(
  site: SiteDocument | null,
  control: readonly ControlPoint[],
  { site: document }: TransformPlaces,
  report: PlanReport,
): readonly ControlPoint[] | null {
  const points = site?.points;
  if (points === undefined) {
    const onPlan = control.filter(({ plan }) => plan.kind === "given");
    return control.length === 0 ? null : onPlan;
  }
  return points.flatMap((name, index) => {
    const found = control.find((point) => point.name === name);
    const fault = (message: string) => report.fault(document, ["points", index], "unknown-point", message);
    if (found === undefined)
      fault(
        `"${name}" is no control point; allowed are ${control.map((point) => point.name).join(", ") || "points of control"}`,
      );
    else if (found.plan.kind === "missing")
      fault(`"${name}" has no place on the plan; allowed are points with plan or at`);
    return found === undefined || found.plan.kind === "missing" ? [] : [found];
  });
}

/** Points on one spot, on the plan or on the site, give no direction. */
function judgeApart(points: readonly ControlPoint[], { root }: TransformPlaces, report: PlanReport): void {
  points.forEach((b, index) => {
    for (const a of points.slice(0, index)) {
      const onSite = a.northing === b.northing && a.easting === b.easting;
      const onPlan =
        a.plan.kind === "given" &&
        b.plan.kind === "given" &&
        a.plan.value.x === b.plan.value.x &&
        a.plan.value.y === b.plan.value.y;
      if (!onSite && !onPlan) continue;
      const message = `${a.name} and ${b.name} have one place on the ${onPlan ? "plan" : "site"}; allowed are points apart`;
      report.fault(root, ["control"], "coincident-points", message);
    }
  });
}

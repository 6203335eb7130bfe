/** Surveys for tests: points moved from where the setting-out file has them. Invented data. */
import type { Base } from "../src/job/model/job.js";
import { given, missing } from "../src/job/model/job.js";
import type { PlanSpec } from "../src/job/model/plan.js";
import { settingOutPoints } from "../src/plan/index.js";
import type { PointsFile, SurveyedPoint } from "../src/readers/points-model.js";
import type { Survey, SurveyAim, SurveyTerms } from "../src/survey/index.js";
import { surveyJob } from "../src/survey/index.js";
import type { Length } from "../src/units/length.js";
import { inches, nanometres } from "../src/units/length.js";
import type { PlannedJob } from "./setting-out-plan.js";
import { planJob } from "./setting-out-plan.js";

export const TERMS: SurveyTerms = {
  accuracy: given(nanometres(0), "test"),
  height: given({ kind: "top" }, "test"),
  within: inches(2),
  line: missing("survey.line", "not given"),
  turn: missing("survey.turn", "not given"),
};

export interface Case extends PlannedJob {
  readonly aim: SurveyAim;
  /** The rods of the setting-out file in plan axes, as a surveyor would give them back. */
  readonly points: readonly SurveyedPoint[];
}

export function surveyCase(site: Partial<PlanSpec> = {}, bases?: readonly Base[]): Case {
  const planned = planJob(site, bases);
  const expected = settingOutPoints(planned.plan);
  const points = expected.flatMap(({ kind, name, plan, elevation, description }, i) =>
    kind !== "rod" || plan === null
      ? []
      : [{ name, northing: mm(plan.y), easting: mm(plan.x), elevation, description, line: i + 2 }],
  );
  return {
    ...planned,
    aim: { plan: planned.plan, expected },
    points,
  };
}

export const mm = (value: number): Length => nanometres(value * 1e6);

/** A point moved on the plan, in inches. */
export function moved(point: SurveyedPoint, east: number, north: number): SurveyedPoint {
  return {
    ...point,
    easting: nanometres(point.easting + inches(east)),
    northing: nanometres(point.northing + inches(north)),
  };
}

export function pointsFile(points: readonly SurveyedPoint[], changes: Partial<PointsFile> = {}): PointsFile {
  return {
    file: "points.csv",
    order: { value: "PNEZD", by: "file name" },
    unit: { value: "m", by: "file name" },
    headed: true,
    points,
    ...changes,
  };
}

export function outcomeOf({ job, aim }: Case, points: readonly SurveyedPoint[], terms: Partial<SurveyTerms> = {}) {
  return surveyJob(job, aim, pointsFile(points), { ...TERMS, ...terms });
}

export function surveyOf(one: Case, points: readonly SurveyedPoint[], terms: Partial<SurveyTerms> = {}): Survey {
  const outcome = outcomeOf(one, points, terms);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join("; "));
  return outcome.value;
}

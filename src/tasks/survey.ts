/** The rods as surveyed against their places and against the base plates. */
import type { Outcome } from "../diagnostics/finding.js";
import { settingOutPoints } from "../plan/index.js";
import { readPoints } from "../readers/points.js";
import type { PointOrder } from "../readers/points-model.js";
import type { Survey, SurveyAim, SurveyTerms } from "../survey/index.js";
import { surveyJob, surveyPlan } from "../survey/index.js";
import type { SurveyUnit } from "../units/index.js";
import type { OpenedJob } from "./open.js";

/** The surveyor's file, and what is stated of it; null: as the file says itself. */
export interface PointsInput {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly unit: SurveyUnit | null;
  readonly order: PointOrder | null;
  readonly terms: SurveyTerms;
}

/** What the points are held against: the job's plan, or of a job without a grid that of its one base. */
export function surveyAim({ job, plan, bases }: OpenedJob): Outcome<SurveyAim> {
  const aimed = plan === null ? surveyPlan(job, bases) : ({ ok: true, value: plan, findings: [] } as const);
  if (!aimed.ok) return aimed;
  const aim = { plan: aimed.value, expected: settingOutPoints(aimed.value) };
  return { ok: true, value: aim, findings: aimed.findings };
}

/** Reads the points and holds every group against its places, its tolerance and its base plate. */
export function surveyPoints({ job }: OpenedJob, aim: SurveyAim, input: PointsInput): Outcome<Survey> {
  const { name, bytes, unit, order, terms } = input;
  const points = readPoints(bytes, name, { unit, order, jobOrder: job.plan?.settingOut.order ?? null });
  return points.ok ? surveyJob(job, aim, points.value, terms) : points;
}

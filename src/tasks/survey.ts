/** The rods as surveyed against their places and against the base plates. */
import type { Outcome } from "../diagnostics/finding.js";
import type { SurveyForm } from "../formats/survey-json.js";
import { surveyForm } from "../formats/survey-json.js";
import { settingOutPoints } from "../plan/index.js";
import { readPoints } from "../readers/points.js";
import type { PointOrder } from "../readers/points-model.js";
import { placingHead } from "../summary/summarize.js";
import type { Survey, SurveyAim, SurveyTerms } from "../survey/index.js";
import { lonePlan, surveyJob as surveyGroups, surveyTerms } from "../survey/index.js";
import type { SurveyUnit } from "../units/index.js";
import { hashOf } from "./hash.js";
import type { OpenedJob } from "./opened-job.js";

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
  const aimed = plan === null ? lonePlan(job, bases) : ({ ok: true, value: plan, findings: [] } as const);
  if (!aimed.ok) return aimed;
  const aim = { plan: aimed.value, expected: settingOutPoints(aimed.value) };
  return { ok: true, value: aim, findings: aimed.findings };
}

/** Reads the points and holds every group against its places, its tolerance and its base plate. */
export function surveyPoints({ job }: OpenedJob, aim: SurveyAim, input: PointsInput): Outcome<Survey> {
  const { name, bytes, unit, order, terms } = input;
  const points = readPoints(bytes, name, { unit, order, jobOrder: job.plan?.settingOut.order ?? null });
  if (!points.ok) return points;
  return surveyGroups(job, aim, { ...points.value, sha256: hashOf(bytes) }, terms);
}

/** The surveyor's file as bytes, by the job's own statements about the survey. */
export interface SurveyedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Omitted: as the file says itself. */
  readonly unit?: SurveyUnit;
  readonly order?: PointOrder;
}

/** A survey in machine form, groups worst first: what `survey --json` prints. */
export function surveyJob(opened: OpenedJob, { name, bytes, unit, order }: SurveyedFile): Outcome<SurveyForm> {
  const aim = surveyAim(opened);
  if (!aim.ok) return aim;
  const { terms } = surveyTerms(opened.job, { accuracy: null, height: null, within: null });
  const survey = surveyPoints(opened, aim.value, { name, bytes, unit: unit ?? null, order: order ?? null, terms });
  return survey.ok ? { ...survey, value: surveyForm(placingHead(opened.job), survey.value) } : survey;
}

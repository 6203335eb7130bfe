/** What is stated of a survey: what is asked for goes before what the job says. */
import type { Job } from "../job/model/job.js";
import type { SurveyHeight } from "../job/model/survey.js";
import { given } from "../job/model/values.js";
import type { Length, Unit } from "../units/length.js";
import { inches, millimetres } from "../units/length.js";
import type { SurveyTerms } from "./model.js";

/** Farthest from its place that a point without a known name is taken for a rod's; common practice. */
const DEFAULT_WITHIN: Readonly<Record<Unit, Length>> = { in: inches(2), mm: millimetres(50) };

/** Terms that are asked for by whoever runs the survey; null: not asked for, so that the job's hold. */
export interface AskedTerms {
  readonly accuracy: Length | null;
  readonly height: SurveyHeight | null;
  readonly within: Length | null;
}

/** A term that cannot be as asked for. */
export interface TermFault {
  readonly term: keyof AskedTerms;
  readonly message: string;
}

/** The terms of a survey, with the faults of those asked for: `within` is above zero, `accuracy` not below. */
export function surveyTerms(
  { survey, unit }: Pick<Job, "survey" | "unit">,
  { accuracy, height, within }: AskedTerms,
): { readonly terms: SurveyTerms; readonly faults: readonly TermFault[] } {
  const terms = {
    ...survey,
    accuracy: accuracy === null ? survey.accuracy : given(accuracy, "option"),
    height: height === null ? survey.height : given(height, "option"),
    within: within ?? (survey.within.kind === "given" ? survey.within.value : DEFAULT_WITHIN[unit]),
  };
  return { terms, faults: [...atLeast("within", within, 1), ...atLeast("accuracy", accuracy, 0)] };
}

function atLeast(term: keyof AskedTerms, value: Length | null, least: 0 | 1): readonly TermFault[] {
  return value === null || value >= least
    ? []
    : [{ term, message: least === 0 ? "is below zero" : "is not above zero" }];
}

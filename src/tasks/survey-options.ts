/** What is stated of a survey where it is asked for, as texts that a person typed. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Job } from "../job/model/job.js";
import { parseSurveyHeight } from "../job/schema/survey.js";
import { POINT_ORDERS, type PointOrder } from "../readers/points-model.js";
import { surveyUnitOf } from "../readers/points-name.js";
import { surveyTerms } from "../survey/index.js";
import type { Reading, SurveyUnit } from "../units/index.js";
import { parseLength } from "../units/index.js";
import type { PointsInput } from "./survey.js";

/** As typed; null: as the file or the job says. */
export interface SurveyOptions {
  readonly unit: string | null;
  readonly order: string | null;
  readonly accuracy: string | null;
  readonly height: string | null;
  readonly within: string | null;
}

/** One of them. */
export type SurveyOption = keyof SurveyOptions;

/** What is typed goes before what the job says. A fault's place is the option's name with `sign` before it. */
export function readSurveyOptions(
  { unit, order, accuracy, height, within }: SurveyOptions,
  job: Job,
  sign: "--" | "",
): Outcome<Pick<PointsInput, "unit" | "order" | "terms">> {
  const findings: Finding[] = [];
  const fault = (option: string, message: string): void =>
    void findings.push({ code: "option", severity: "error", at: { file: `${sign}${option}` }, message });
  const read = <T>(option: SurveyOption, text: string | null, parse: (text: string) => Reading<T>): T | null => {
    const reading = text === null ? null : parse(text);
    if (reading === null || reading.ok) return reading === null ? null : reading.value;
    fault(option, reading.message);
    return null;
  };
  const length = (text: string) => parseLength(text, job.unit);
  const near = read("within", within, length);
  const radius = read("accuracy", accuracy, length);
  const taken = read("height", height, (text) => parseSurveyHeight(text, job.unit));
  const { terms, faults } = surveyTerms(job, { accuracy: radius, height: taken, within: near });
  for (const { term, message } of faults) fault(term, message);
  const options = { unit: read("unit", unit, parseUnit), order: read("order", order, parseOrder), terms };
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: options, findings };
}

function parseUnit(text: string): Reading<SurveyUnit> {
  const unit = text.toLowerCase() === "ft" ? "ft" : surveyUnitOf(text);
  if (unit !== null) return { ok: true, value: unit };
  return {
    ok: false,
    message: `${JSON.stringify(text)} is no unit; allowed are m, mm, ft (0.3048 m), ft-us (1200/3937 m)`,
  };
}

function parseOrder(text: string): Reading<PointOrder> {
  const order = POINT_ORDERS.find((each) => each === text.toUpperCase());
  if (order !== undefined) return { ok: true, value: order };
  return { ok: false, message: `${JSON.stringify(text)} is no order; allowed are ${POINT_ORDERS.join(", ")}` };
}

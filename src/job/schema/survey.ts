/** The survey as a schema, and its values read alone, as options of the command line give them. */
import type { z } from "zod";
import { dateLeaf, keys, leaf, lengthLeaf, textLeaf } from "../../leaves/leaves.js";
import type { Reading, Unit } from "../../units/index.js";
import { parseAngle, parseLength } from "../../units/index.js";
import type { SurveyHeight, SurveySpec } from "../model/survey.js";
import { optional } from "../model/values.js";

/** The `survey` key of a job whose bare numbers are in `unit`. */
export function surveyBlock(unit: Unit) {
  const allowed = "top, or a length above the top of concrete";
  return keys(
    {
      date: dateLeaf("Day of the survey, printed on its sheets.").optional(),
      instrument: textLeaf("With what the rods were surveyed, and by whom; printed in the report.").optional(),
      accuracy: lengthLeaf(
        unit,
        "zero or above",
        "Accuracy of a surveyed point in plan, a radius; ask the surveyor.",
      ).optional(),
      height: leaf(
        allowed,
        "Where on the rods their points were taken: top, or a length above the top of concrete.",
        (text) => parseSurveyHeight(text, unit),
      ).optional(),
      within: lengthLeaf(
        unit,
        "above zero",
        "Farthest from its place that a point without a known name is taken for a rod's; omitted: 2 in or 50 mm.",
      ).optional(),
      line: lengthLeaf(
        unit,
        "zero or above",
        "Erection tolerance: how far the column may stand off its line along each axis of the base.",
      ).optional(),
      turn: leaf(
        "degrees from 0 to 10",
        "Erection tolerance: how far the column may be turned, in degrees.",
        (text) => {
          const reading = parseAngle(text);
          if (!reading.ok || (reading.value >= 0 && reading.value <= 10)) return reading;
          return { ok: false, message: `"${text}" is not degrees from 0 to 10` };
        },
      ).optional(),
    },
    "The survey of the rods as built: its accuracy, where on the rods it was taken, and the erection tolerance.",
  );
}

/** `survey` as written. */
export type SurveyDocument = z.output<ReturnType<typeof surveyBlock>>;

/** `top`, or a length above the top of concrete. */
export function parseSurveyHeight(text: string, unit: Unit): Reading<SurveyHeight> {
  if (text.trim().toLowerCase() === "top") return { ok: true, value: { kind: "top" } };
  const reading = parseLength(text, unit);
  if (!reading.ok) return { ok: false, message: `${reading.message}; or top, for the tops of the rods` };
  if (reading.value < 0) return { ok: false, message: `"${text}" is below the top of concrete` };
  return { ok: true, value: { kind: "above concrete", value: reading.value } };
}

/** A survey of which the job says what `written` holds, or nothing. */
export function resolveSurvey(written: SurveyDocument = {}): SurveySpec {
  return {
    date: optional(written.date, "survey.date", "the day of the survey is not given"),
    instrument: optional(written.instrument, "survey.instrument", "the instrument is not given"),
    accuracy: optional(written.accuracy, "survey.accuracy", "the accuracy of the survey is not stated"),
    height: optional(written.height, "survey.height", "where on the rods they were surveyed is not stated"),
    within: optional(written.within, "survey.within", "how near a point without a name must lie is not given"),
    line: optional(written.line, "survey.line", "no erection tolerance to the line is given"),
    turn: optional(written.turn, "survey.turn", "no erection tolerance of the turn is given"),
  };
}

/** A survey as CSV for the engineer: a line a group, a line a rod, a line a check. Lengths in the job's unit, turns in degrees. */
import type { CheckRow } from "../checks/model.js";
import { summarizeCheck } from "../summary/summarize.js";
import type { GroupSurvey, Survey } from "../survey/index.js";
import { governsWords, placingWords, remedyWords } from "../survey/index.js";
import { toUnit } from "../units/length.js";
import type { CsvCell } from "./csv-cells.js";
import { writeCsvRows } from "./csv-cells.js";

/** Headings of `survey-groups.csv`. */
const SURVEY_GROUP_COLUMNS = [
  "mark",
  "at",
  "verdict",
  "placing",
  "spare",
  "accuracy",
  "shift x",
  "shift y",
  "turn",
  "spare on line",
  "governs",
  "rods surveyed",
  "rods missing",
  "larger holes or slots, engineer to decide",
  "unit",
  "note",
] as const;

/** Headings of `survey-rods.csv`. */
const SURVEY_ROD_COLUMNS = [
  "mark",
  "at",
  "rod",
  "size",
  "points",
  "north",
  "east",
  "dx",
  "dy",
  "radial",
  "dz",
  "projection",
  "lean dx",
  "lean dy",
  "lean over",
  "hole",
  "clearance",
  "margin",
  "unit",
] as const;

/** Headings of `survey-checks.csv`. */
const SURVEY_CHECK_COLUMNS = [
  "mark",
  "at",
  "remedy",
  "rule",
  "subject",
  "status",
  "value",
  "sense",
  "limit",
  "margin",
  "unit",
  "edition",
  "clause",
  "note",
] as const;

/** One line a group, worst first. */
export function writeSurveyGroupsCsv({ groups, terms, unit }: Survey): string {
  const length = (value: number | null): CsvCell => (value === null ? null : toUnit(value, unit));
  const rows = groups.map(
    ({ mark, at, verdict, placing, best, fit, spareOnLine, rods, missing, remedies, why }): CsvCell[] => [
      mark,
      at,
      verdict,
      placingWords(placing),
      length(best?.spare ?? null),
      terms.accuracy.kind === "given" ? length(terms.accuracy.value) : "not stated",
      length(fit.x),
      length(fit.y),
      fit.turn === null ? null : degrees(fit.turn),
      length(spareOnLine),
      best === null ? null : governsWords(best),
      rods.length,
      missing.join(" "),
      remedies.map((remedy) => remedyWords(remedy, unit)).join("; "),
      unit,
      why.join("; "),
    ],
  );
  return writeCsvRows([SURVEY_GROUP_COLUMNS, ...rows]);
}

const degrees = (turn: number): number => Math.round(turn * 1e6) / 1e6 || 0;

/** One line a rod. */
export function writeSurveyRodsCsv({ groups, unit }: Survey): string {
  const length = (value: number | null): CsvCell => (value === null ? null : toUnit(value, unit));
  const rows = groups.flatMap(({ mark, at, rods }) =>
    rods.map(({ tag, placed, points, north, east, dx, dy, radial, dz, projection, lean, clearanceTwice, margin }) => {
      const { baseHole, rod } = placed.group;
      const hole = baseHole.kind === "given" ? baseHole.value : null;
      const clearance = clearanceTwice === null ? null : clearanceTwice / 2;
      const errors = [north, east, dx, dy, radial, dz, projection];
      const leaning = [lean?.dx ?? null, lean?.dy ?? null, lean?.over ?? null];
      const figures = [...errors, ...leaning, hole, clearance, margin].map(length);
      return [mark, at, tag, rod.size, points.join(" "), ...figures, unit];
    }),
  );
  return writeCsvRows([SURVEY_ROD_COLUMNS, ...rows]);
}

/** Every row: of the groups, of their larger holes and slots, and of the lines. */
export function writeSurveyChecksCsv(survey: Survey): string {
  const lines = (head: readonly CsvCell[], rows: readonly CheckRow[]) =>
    rows.map((row) => {
      const { rule, subject, status, value, sense, limit, margin, unit, edition, clause, note } = summarizeCheck(
        row,
        survey.unit,
      );
      return [...head, rule, subject, status, value, sense, limit, margin, unit, edition, clause, note];
    });
  const ofGroup = ({ mark, at, rows, remedies }: GroupSurvey) => [
    ...lines([mark, at, ""], rows),
    ...remedies.flatMap((remedy) => lines([mark, at, remedyWords(remedy, survey.unit)], remedy.rows)),
  ];
  return writeCsvRows([SURVEY_CHECK_COLUMNS, ...survey.groups.flatMap(ofGroup), ...lines(["", "", ""], survey.rows)]);
}

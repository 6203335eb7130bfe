/** Check distances as CSV, in the job's unit and in that of the setting-out files. */
import type { CheckDistance } from "../plan/index.js";
import type { Length, SurveyUnit, Unit } from "../units/index.js";
import { formatCoordinate, formatDecimals, formatFeetInches } from "../units/index.js";
import type { CsvCell } from "./csv-cells.js";
import { writeCsvRows } from "./csv-cells.js";
import { surveyUnitName } from "./survey-unit-name.js";

/** One distance a row, in their order. Site distances are empty where plan and site are not tied. */
export function writeCheckDistances(distances: readonly CheckDistance[], unit: Unit, surveyUnit: SurveyUnit): string {
  const name = surveyUnitName(surveyUnit);
  const heading = [
    ...["what", "of", "from", "to", "to tape"],
    ...[`plan distance (${unit})`, `plan distance (${name})`, `site distance (${unit})`, `site distance (${name})`],
  ];
  const rows = distances.map(({ what, of, from, to, distance, onSite }): CsvCell[] => [
    ...[what, of, from, to, tapeText(distance, unit)],
    ...bothUnits(distance, unit, surveyUnit),
    ...(onSite === null ? [null, null] : bothUnits(onSite, unit, surveyUnit)),
  ]);
  return writeCsvRows([heading, ...rows]);
}

function bothUnits(length: Length, unit: Unit, surveyUnit: SurveyUnit): CsvCell[] {
  return [formatDecimals(length, unit, unit === "in" ? 4 : 1), formatCoordinate(length, surveyUnit)];
}

/** As a tape shows it: feet and inches to 1/16 in, or whole millimetres. */
function tapeText(length: Length, unit: Unit): string {
  return unit === "in" ? formatFeetInches(length, 16) : formatDecimals(length, "mm", 0);
}

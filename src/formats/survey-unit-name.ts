/** Units of setting-out files as they stand in file names and headings. */
import type { SurveyUnit } from "../units/index.js";

/** A bare `ft` would not tell one foot from the other. */
const NAMES: Readonly<Record<SurveyUnit, string>> = { m: "m", mm: "mm", ft: "ft-intl", "ft-us": "ft-us" };

/** `m`, `mm`, `ft-intl` (0.3048 m) or `ft-us` (1200/3937 m). */
export function surveyUnitName(unit: SurveyUnit): string {
  return NAMES[unit];
}

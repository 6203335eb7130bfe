/** Figures of setting-out files: exact lengths to decimals of a survey unit, rounded once. */
import type { SitePlan } from "../site/model.js";

/** m, mm, ft (international, 0.3048 m exactly) or ft-us (US survey foot, 1200/3937 m exactly). */
export type SurveyUnit = SitePlan["site"]["settingOut"]["unit"];

interface Scale {
  /** The unit in nanometres, as a fraction: exact for the US survey foot too. */
  readonly over: bigint;
  readonly under: bigint;
  readonly decimals: number;
  /** The unit as it stands in file names and headings. */
  readonly name: string;
}

/** International foot and US survey foot: NIST SP 811 (2008), B.6; a bare `ft` in a name would not tell one from the other. */
const SCALES: Readonly<Record<SurveyUnit, Scale>> = {
  m: { over: 1_000_000_000n, under: 1n, decimals: 4, name: "m" },
  mm: { over: 1_000_000n, under: 1n, decimals: 1, name: "mm" },
  ft: { over: 304_800_000n, under: 1n, decimals: 4, name: "ft-intl" },
  "ft-us": { over: 1_200_000_000_000n, under: 3937n, decimals: 4, name: "ft-us" },
};

/** `m`, `mm`, `ft-intl` or `ft-us`. */
export function surveyUnitName(unit: SurveyUnit): string {
  return SCALES[unit].name;
}

/** A length in nanometres as a decimal: 4 places in m and ft, 1 in mm, half away from zero, no minus zero. */
export function surveyDecimal(length: number, unit: SurveyUnit): string {
  const { over, under, decimals } = SCALES[unit];
  const size = BigInt(Math.abs(length)) * under * 10n ** BigInt(decimals);
  const ticks = (2n * size + over) / (2n * over);
  const digits = String(ticks).padStart(decimals + 1, "0");
  const sign = length < 0 && ticks > 0n ? "-" : "";
  return `${sign}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

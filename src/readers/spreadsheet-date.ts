/** Days as spreadsheets count them, and the fractions that a spreadsheet takes for days when they are typed. */

/** A day of the Gregorian calendar. */
export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Days from the first of March of the year 0 to what is day 0 of a spreadsheet: the last of 1899, or the first of 1904. */
const [TO_1900, TO_1904] = [693_900, 695_361];

/** The day of a number; null before the first, and beyond the year 9999. A spreadsheet takes 1900 for a leap year: from March on its days are one too many. */
export function dayOf(serial: number, from1904: boolean): Day | null {
  const days = Math.floor(serial);
  if (!(days >= 0 && days < 2_958_466)) return null;
  return calendarDay(from1904 ? TO_1904 + days : TO_1900 + days - (days > 59 ? 1 : 0));
}

/** By days since the first of March of the year 0. */
function calendarDay(days: number): Day {
  const era = Math.floor(days / 146_097);
  const ofEra = days - era * 146_097;
  const year = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const day = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return { year: year + 400 * era + (month < 3 ? 1 : 0), month, day };
}

/** A day written `2026-03-04`, with or without a time; null for another text. */
export function dayOfText(text: string): Day | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})(?:T|$)/.exec(text) ?? [];
  return year === undefined ? null : { year: Number(year), month: Number(month), day: Number(day) };
}

/** `2026-03-04` */
export function dayText({ year, month, day }: Day): string {
  const padded = (value: number, length: number) => String(value).padStart(length, "0");
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}`;
}

/** Parts of an inch that people write. */
const DENOMINATORS = new Set([2, 4, 8, 16, 32, 64]);

/**
 * What may have been typed: `3/4` where a spreadsheet has the 4th of March, or the 3rd of April; `1-1/4` where it has a day
 * of the year 2004; `5/32` where it has the first of May 1932 (two digits from 30 on are years of the last century).
 */
export function fractionsOf({ year, month, day }: Day): readonly string[] {
  const fraction = (above: number, below: number): string[] =>
    DENOMINATORS.has(below) && above < below && above % 2 === 1 ? [`${above}/${below}`] : [];
  const mixed = (first: number, second: number): string[] =>
    year >= 2000 && year < 2030 ? fraction(second, year - 2000).map((part) => `${first}-${part}`) : [];
  const ofCentury = year >= 1930 && year < 2000 && day === 1 ? fraction(month, year - 1900) : [];
  return [
    ...new Set([
      ...fraction(month, day),
      ...fraction(day, month),
      ...ofCentury,
      ...mixed(month, day),
      ...mixed(day, month),
    ]),
  ];
}

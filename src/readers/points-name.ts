/** What the name and the heading of a surveyor's file say of its order and unit. */
import type { SurveyUnit } from "../units/index.js";
import type { Cell } from "./inputs.js";
import type { PointOrder } from "./points-model.js";

/** A bare `ft` does not tell one foot from the other. */
const UNIT_WORDS: ReadonlyMap<string, SurveyUnit> = new Map([
  ["m", "m"],
  ["mm", "mm"],
  ["ft-intl", "ft"],
  ["intl-ft", "ft"],
  ["ft-us", "ft-us"],
  ["us-ft", "ft-us"],
  ["usft", "ft-us"],
  ["ftus", "ft-us"],
]);

/** What was found: none, one, or several that contradict each other; `foot`: a foot that does not say which. */
export interface Clues {
  readonly orders: readonly PointOrder[];
  readonly units: readonly SurveyUnit[];
  readonly foot: boolean;
}

/** The unit that a word stands for; null for `ft` alone and for anything else. */
export function surveyUnitOf(word: string): SurveyUnit | null {
  return UNIT_WORDS.get(word.toLowerCase()) ?? null;
}

/** Words of a file name, as `24-118_rev-B_site_PNEZD_ft-intl.csv`, between underscores and spaces. */
export function cluesOfName(file: string): Clues {
  const name = file.split(/[/\\]/).at(-1) ?? "";
  const words = name.replace(/(\.[A-Za-z]{1,4})+$/, "").split(/[_\s()[\]]+/);
  return cluesOf(words);
}

function cluesOf(words: readonly string[]): Clues {
  const orders = words.flatMap((word) => {
    const upper = word.toUpperCase();
    return upper === "PNEZD" || upper === "PENZD" ? [upper as PointOrder] : [];
  });
  const units = words.flatMap((word) => surveyUnitOf(word) ?? []);
  return {
    orders: distinct(orders),
    units: distinct(units),
    foot: words.some((word) => /^(ft|feet|foot)$/i.test(word)),
  };
}

const distinct = <T>(values: readonly T[]): readonly T[] => [...new Set(values)];

/** Columns of a heading, from 0. `x` and `y` are not read: surveys use them either way. */
export interface Columns {
  readonly name: number | null;
  readonly northing: number | null;
  readonly easting: number | null;
  readonly elevation: number | null;
  readonly description: number | null;
}

const HEADINGS: Readonly<Record<keyof Columns, RegExp>> = {
  name: /^(p|pt|pnt|point|name|id|no|number|point (name|id|no|number))$/,
  northing: /^(n|north|northing)$/,
  easting: /^(e|east|easting)$/,
  elevation: /^(z|el|elev|elevation|h|height|level)$/,
  description: /^(d|desc|description|code|remark|remarks|note)$/,
};

/** The heading's columns and the units in its brackets; null where the row is none. */
export function readHeading(row: readonly Cell[]): { readonly columns: Columns; readonly clues: Clues } | null {
  const titles = row.map(({ text }) =>
    text
      .toLowerCase()
      .replace(/[([].*$/, "")
      .replace(/[^a-z]+/g, " ")
      .trim(),
  );
  const find = (key: keyof Columns): number | null => {
    const index = titles.findIndex((title) => HEADINGS[key].test(title));
    return index < 0 ? null : index;
  };
  const columns = {
    name: find("name"),
    northing: find("northing"),
    easting: find("easting"),
    elevation: find("elevation"),
    description: find("description"),
  };
  const isHeading = row.length >= 3 && !row.slice(1, 3).some(({ text }) => /\d/.test(text));
  if (!isHeading) return null;
  const words = row.flatMap(({ text }) => /[([](.*?)[)\]]/.exec(text)?.[1]?.trim() ?? []);
  return { columns, clues: { ...cluesOf(words), orders: orderOf(columns) } };
}

function orderOf({ northing, easting }: Columns): readonly PointOrder[] {
  if (northing === null || easting === null) return [];
  return [northing < easting ? "PNEZD" : "PENZD"];
}

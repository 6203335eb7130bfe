/** Grades of rods and the nut that goes with them. */
import type { Length } from "../units/length.js";
import { f1554Grades } from "./astm-f1554/grades.js";
import { iso898Grades } from "./iso-898-1/grades.js";
import type { GradeRow, Lookup } from "./model.js";
import { found } from "./sized-index.js";

const TABLES = [f1554Grades, iso898Grades] as const;

/** The grades that are held, a text for each specification: `F1554 36, 55, 105`. */
export const heldGrades: readonly string[] = TABLES.map(({ edition, rows }) => {
  return `${edition.replace("ASTM ", "")} ${rows.map(({ grade }) => numberOf(grade)).join(", ")}`;
});

const BY_NUMBER: ReadonlyMap<string, Lookup<GradeRow>> = new Map(
  TABLES.flatMap((table) => table.rows.map((row) => [numberOf(row.grade), found(table, row)])),
);

/** A grade as written: `55`, `F1554 55`, `F1554 Gr 55`, `ASTM F1554 Grade 55`, `8.8`, `ISO 898-1 8.8`, `class 8.8`. */
export function findGrade(text: string): Lookup<GradeRow> {
  const plain = text.trim().toLowerCase().replace(/\s+/g, " ");
  const us = /^(?:astm )?(?:f ?1554[ -]?)?(?:gr(?:ade|\.)? ?)?(\d+)$/.exec(plain);
  const metric = /^(?:iso 898(?:-1)? )?(?:(?:property )?class )?(\d+\.\d+)$/.exec(plain);
  const number = us?.[1] ?? metric?.[1];
  if (number === undefined) return { found: false, nearest: [] };
  return BY_NUMBER.get(number) ?? { found: false, nearest: nearestGrades(Number(number), metric !== null) };
}

/** A nut's form, or that the grade's standard leaves it to the finish of the rod. */
export type RecommendedNut = "hex" | "heavy hex" | "by finish";

/** The nut that F1554 recommends with a grade for a rod of a diameter; `finish` undefined: it is not known. */
export function recommendedNut(
  { hexUpTo, heavyHexWhenGalvanized }: GradeRow,
  diameter: Length,
  finish: "plain" | "galvanized" | undefined,
): RecommendedNut {
  if (diameter > hexUpTo) return "heavy hex";
  if (!heavyHexWhenGalvanized || finish === "plain") return "hex";
  return finish === "galvanized" ? "heavy hex" : "by finish";
}

function numberOf(grade: string): string {
  return grade.replace(/^F1554 /, "");
}

function nearestGrades(number: number, metric: boolean): readonly string[] {
  const rows = metric ? iso898Grades.rows : f1554Grades.rows;
  const distance = (row: GradeRow): number => Math.abs(Number(numberOf(row.grade)) - number);
  const nearest = rows.toSorted((a, b) => distance(a) - distance(b)).slice(0, 2);
  return nearest.sort((a, b) => a.tensileLeast - b.tensileLeast).map((row) => row.grade);
}

/** Grades of rods and the form of their nut. */
import type { Length } from "../units/length.js";
import { f1554Grades } from "./astm-f1554/grades.js";
import { iso898Grades } from "./iso-898-1/grades.js";
import type { GradeRow, Lookup } from "./model.js";
import { found } from "./sized-index.js";

const BY_NUMBER: ReadonlyMap<string, Lookup<GradeRow>> = new Map(
  [f1554Grades, iso898Grades].flatMap((table) => table.rows.map((row) => [numberOf(row.grade), found(table, row)])),
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

/** Form of the recommended nut for a US rod. A rod whose finish is not known is taken as plain. */
export function nutForm(grade: GradeRow, diameter: Length, galvanized: boolean): "hex" | "heavy hex" {
  if (grade.system === "metric") return "hex";
  return diameter > grade.hexUpTo || (galvanized && grade.heavyHexWhenGalvanized) ? "heavy hex" : "hex";
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

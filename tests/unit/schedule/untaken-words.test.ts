/** A grade or a number of rods that stands in no cell of a base. Invented sheets. */
import { expect, it } from "vitest";
import { NOTHING_BESIDE, readSchedule } from "../../../src/schedule/read-schedule.js";
import { answersOf, read } from "../../untidy/read-sheet.js";
import { drawSheet } from "./drawn-sheet.js";

const HEADINGS = "MARK|NO. RODS|ROD DIA|X|Y";
const ROW = 'B1|4|3/4"|8"|8"';
const told = (lines: readonly string[]) =>
  read(drawSheet(lines))
    .findings.filter(({ code }) => code === "grade-not-taken")
    .map(({ severity, message, hint }) => `${severity}: ${message}: ${hint}`);

it.each([
  ["a note", [HEADINGS, ROW, "NOTES:", "1. ALL ANCHOR RODS F1554 GR 36 U.N.O."], "F1554 36"],
  ["a title", ["BASE SCHEDULE - ANCHOR RODS ASTM F1554, GRADE 55", HEADINGS, ROW], "F1554 55"],
  ["a group", ["MARK|ANCHOR RODS (F1554-105)||X|Y", "|NO.|DIA.||", ROW], "F1554 105"],
  ["a heading", [HEADINGS.replace("ROD DIA", "ROD DIA (F1554 GR. 36)"), ROW], "F1554 36"],
  ["a class in a note", [HEADINGS, ROW, "NOTES:", "1. BOLTS GRADE 8.8"], "8.8"],
])("in %s is told once, with the line to add", (_where, lines, grade) => {
  const [only, ...others] = told(lines);
  expect(others).toEqual([]);
  expect(only).toContain("warning: ");
  expect(only).toContain("says a grade of rods, which no base has; nothing is taken of it");
  expect(only).toContain(`: add to the job: defaults: { rods: { grade: ${grade} } }`);
});

it("of two kinds offers both", () => {
  const [only = ""] = told([HEADINGS, ROW, "NOTES:", "1. RODS F1554 GR 36 OR GR 55 AS SHOWN"]);
  expect(only).toMatch(/grade: F1554 36 \} \}; or defaults: \{ rods: \{ grade: F1554 55 \} \}$/);
});

it.each([
  ["a column gives it", [`${HEADINGS}|GRADE`, `${ROW}|F1554 55`, "NOTES:", "1. ALL RODS F1554 GR 36 U.N.O."]],
  ["it is the plate's", [HEADINGS, ROW, "NOTES:", "1. BASE PLATES A572 GR 50"]],
  ["no grade is said", [HEADINGS, ROW, "NOTES:", "1. ANCHOR RODS SHALL CONFORM TO ASTM F1554"]],
])("is not told where %s", (_why, lines) => {
  expect(told(lines)).toEqual([]);
});

it("is not told where the job gives one", () => {
  const sheet = drawSheet([HEADINGS, ROW, "NOTES:", "1. ALL ANCHOR RODS F1554 GR 36 U.N.O."]);
  const beside = { ...NOTHING_BESIDE, given: new Set(["rods.grade"]) };
  const { findings } = readSchedule([sheet], "s.txt", "in", answersOf({}), beside);
  expect(findings.filter(({ code }) => code === "grade-not-taken")).toEqual([]);
});

const counted = (lines: readonly string[]) =>
  read(drawSheet(lines))
    .findings.filter(({ code }) => code === "count-not-taken")
    .map(({ hint }) => hint);

it.each([
  ["1. PROVIDE (8) ANCHOR RODS AT EACH BASE."],
  ["1. 8 RODS PER COLUMN, TYP."],
  ["1. ANCHOR BOLTS: 8 PER BASE PLATE"],
])("a number of rods is told: %s", (note) => {
  expect(counted(["MARK|ROD DIA|X|Y", "B1|1|14|14", "NOTES:", note])).toEqual([
    "add to the job: defaults: { rods: { count: 8 } }",
  ]);
});

it.each([
  ["a column gives it", ["MARK|NO. RODS|ROD DIA|X|Y", "B1|8|1|14|14", "NOTES:", "1. 4 RODS PER BASE U.N.O."]],
  ["its circle has it", ["MARK|ROD DIA|PATTERN", "B1|1|(8) ON 24 B.C. straddle", "NOTES:", "1. 8 RODS PER BASE"]],
  ["it is a grade", ["MARK|ROD DIA|X|Y", "B1|1|14|14", "NOTES:", "1. GR 36 BOLTS PER COLUMN SCHEDULE"]],
  ["it is a size", ["MARK|ROD DIA|X|Y", "B1|1|14|14", "NOTES:", "1. 3/4 RODS PER PLATE DETAIL"]],
])("a number is not told where %s", (_why, lines) => {
  expect(counted(lines)).toEqual([]);
});

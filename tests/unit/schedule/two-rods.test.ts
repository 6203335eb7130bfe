/** Two rods and one spacing from rod to rod. Invented sheets. */
import { expect, it } from "vitest";
import { toPlain } from "../../../src/job/document.js";
import { read } from "../../untidy/read-sheet.js";
import { drawSheet } from "./drawn-sheet.js";

const SHEET = drawSheet(["MARK|ANCHOR RODS|ROD SPACING", 'T1|(2) 3/4"Ø|6" C/C', 'T2|(2) 1"Ø|6" C/C']);

it("ask along which axis they stand, and offer no four", () => {
  const { questions } = read(SHEET).readAs;
  expect(questions.map(({ text }) => text)).toEqual([
    'Pattern size: "6" C/C" is the spacing of two rods, and nothing says whether their line runs along X or along Y',
  ]);
  expect(questions[0]?.choices.map(({ line }) => line).slice(0, 2)).toEqual([
    String.raw`cells: { C2: "6\" x 0", C3: "6\" x 0" }`,
    String.raw`cells: { C2: "0 in x 6\"", C3: "0 in x 6\"" }`,
  ]);
});

it.each([
  ['6" x 0', "x", "y"],
  ["6 x 0", "x", "y"],
  ['0 in x 6"', "y", "x"],
  ["0 in x 6", "y", "x"],
])("%s is taken: two rods, 3 in either side of the working point", (answer, along, across) => {
  const { bases, readAs } = read(SHEET, "in", { cells: { C2: answer, C3: answer } });
  expect(readAs.questions).toEqual([]);
  const line = { pattern: { [along]: ["-3", "3"], [across]: ["0"] } };
  expect(bases.map((base) => toPlain(base))).toMatchObject([line, line]);
});

it("four rods are a square of it", () => {
  const { readAs } = read(drawSheet(["MARK|ANCHOR RODS|ROD SPACING", 'T1|(4) 3/4"Ø|6" C/C', 'T2|(4) 1"Ø|6" C/C']));
  expect(readAs.questions).toEqual([]);
});

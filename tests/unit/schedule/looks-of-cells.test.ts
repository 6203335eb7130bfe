/** Cells whose look alone says what a heading stands for: ways of writing that are common practice of American prints. */
import { expect, it } from "vitest";
import { read } from "../../untidy/read-sheet.js";
import { drawSheet } from "./drawn-sheet.js";

const taken = (heading: string, text: string) => {
  const sheet = drawSheet([`MARK|${heading}|ROD DIA|X|Y`, `B1|${text}|3/4"|8|8`, `B2|${text}|3/4"|8|8`]);
  const { lines, questions } = read(sheet).readAs;
  const keys = lines.filter(({ mark, heading: of }) => mark === "B1" && of === heading);
  return [...keys.map(({ key, taken: value }) => `${key} ${value}`), ...questions.map(({ text: asked }) => asked)];
};

it.each([
  ["BASE PLATE", "14 1/2 SQ x 1", ["basePlate.x 14 1/2", "basePlate.y 14 1/2", "basePlate.thickness 1"]],
  ["PIER", "24 RND", ["concrete.diameter 24"]],
  ["PIER", '30" ROUND', ['concrete.diameter 30"']],
  ["NO. OF BASES", "(4 THUS)", ["quantity 4"]],
])("%s: %s", (heading, text, values) => {
  expect(taken(heading, text)).toEqual(values);
});

it("a sign of diameter before the size, behind a count and a dash, is a callout of rods", () => {
  const { lines, questions } = read(drawSheet(["MARK|RODS|X|Y", 'B1|4 - Ø1" x 18" EMB|8|8'])).readAs;
  const rods = lines.filter(({ heading, mark }) => heading === "RODS" && mark === "B1");
  expect(rods.map(({ key, taken: value }) => `${key} ${value}`)).toEqual([
    "rods.count 4",
    'rods.diameter 1"',
    'rods.embedment 18"',
  ]);
  expect(questions).toEqual([]);
});

it.each(['18" B.C.', '18"Ø B.C.', '18" DIA'])("a bolt circle says again that it is one: %s", (text) => {
  const { lines } = read(drawSheet(["MARK|RODS|BOLT CIRCLE", `B1|(4) 1"Ø|${text}`])).readAs;
  const circle = lines.filter(({ key }) => key === "pattern.diameter");
  expect(circle.map(({ taken: value }) => value)).toEqual(['18"']);
});

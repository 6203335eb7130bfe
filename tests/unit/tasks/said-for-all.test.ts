/** An answer for all bases that no job file takes is asked again, with the words of the job file. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { SHOP_FOLDER } from "../../../src/job/index.js";
import type { WrittenAnswer } from "../../../src/tasks/answered-sheet.js";
import { answersInLine } from "../../../src/tasks/answered-sheet.js";
import { askFaulty } from "../../../src/tasks/said-for-all.js";

const SHOPS = new Map(
  ["plasma", "plasma-metric"].map((name) => {
    const file = new URL(`../../../templates/shops/${name}.yaml`, import.meta.url);
    return [`${SHOP_FOLDER}${name}.yaml`, readFileSync(file, "utf8")] as const;
  }),
);

const answer = (path: string, text: string): WrittenAnswer => ({ path: path.split("."), text });

describe("answers for all bases", () => {
  it.each([
    ["in", answer("defaults.template.thickness", "1/4")],
    ["in", answer("defaults.rods.diameter", "1-1/4")],
    ["in", answer("defaults.pattern", "{ kind: circle, diameter: 24, count: 8, start: straddle }")],
    ["mm", answer("defaults.template.thickness", "6")],
    ["mm", answer("defaults.rods.diameter", "M30")],
    ["mm", answer("units", "mm")],
  ] as const)("in %s takes %o", (unit, given) => {
    expect(askFaulty([given], unit, SHOPS)).toEqual([]);
  });

  it.each([
    ["in", answer("defaults.template.thickness", "abc"), /"abc" is not a length/],
    ["mm", answer("defaults.template.thickness", '"-6"'), /-6/],
    ["mm", answer("defaults.rods.diameter", "M31"), /"M31".*nearest/],
    ["in", answer("defaults.pattern", "{ kind: rectangle, x: twelve, y: 9 }"), /"twelve" is not a length/],
  ] as const)("in %s asks %o again", (unit, given, words) => {
    const [question, ...others] = askFaulty([given], unit, SHOPS);
    expect(others).toEqual([]);
    expect(question?.text).toMatch(/^at fault: /);
    expect(question?.text).toMatch(words);
    const lines = question?.choices.flatMap(({ line }) => answersInLine(line));
    expect(lines).toEqual([{ path: given.path, text: null }]);
  });

  it("asks the last answer to a question alone", () => {
    const path = "defaults.template.thickness";
    expect(askFaulty([answer(path, "abc"), answer(path, "1/4")], "in", SHOPS)).toEqual([]);
    expect(askFaulty([answer(path, "1/4"), answer(path, "abc")], "in", SHOPS).length).toBe(1);
  });
});

/** Figures as a tape has them, and what is taped. 1/16 in and 1 mm are the marks of a builder's tape (common practice). */
import { describe, expect, it } from "vitest";
import type { Pattern } from "../../../src/job/model/job.js";
import { needsHoleTable } from "../../../src/sheets/hole-table.js";
import { locatedByChains } from "../../../src/sheets/located.js";
import { tapeTable } from "../../../src/sheets/tape-table.js";
import { dimensionWords, referenceWords } from "../../../src/sheets/taped.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { sheetCase } from "./sheet-case.js";

describe("a dimension", () => {
  it.each([
    [inches(12), "in", "12"],
    [inches(3.46875), "in", "3-15/32"],
    [nanometres(inches(18.078125) + 1), "in", "18-5/64"],
    [nanometres(27.7849 * 25.4e6), "in", `2'-3 13/16" (27.7849)`],
    [nanometres(14.1421 * 25.4e6), "in", `1'-2 1/8" (14.1421)`],
    [millimetres(152.5), "mm", "152.5"],
    [millimetres(384.187), "mm", "384 (384.187)"],
  ] as const)("of %d nm in %s is %s", (length, unit, words) => {
    expect(dimensionWords(length, unit)).toBe(words);
  });

  it("for reference is in brackets, exact where it is on the scale, else as a tape has it", () => {
    expect(referenceWords(inches(2.5), "in")).toBe("(2-1/2)");
    expect(referenceWords(millimetres(44.2), "mm")).toBe("(44)");
  });
});

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const requestOf = (pattern: Pattern) => sheetCase(jobFixture(), baseFixture({ groups: [groupFixture({ pattern })] }));
const rows = (pattern: Pattern) => (tapeTable(requestOf(pattern))?.rows ?? []).map((row) => row.join(" ").trim());

describe("the tape check", () => {
  it("of a 3-4-5 rectangle has both gauges and both diagonals", () => {
    expect(rows({ kind: "rectangle", x: inches(8), y: inches(6), nx: 2, ny: 2, perimeter: false })).toEqual([
      `A1-A2, A3-A4 ALONG X 8" (8)`,
      `A1-A4, A2-A3 ALONG Y 6" (6)`,
      `A1-A3, A2-A4 DIAGONAL 10" (10)`,
    ]);
  });

  it("of rods that lie unevenly about the working point starts from it too", () => {
    const eccentric = rows({ kind: "points", at: [at(3, 4), at(-9, 4), at(-9, -6), at(3, -6)] });
    expect(eccentric.some((row) => /W\.P\.-A\d DIAGONAL 5" \(5\)/.test(row))).toBe(true);
  });

  it("fixes every rod of an irregular pattern by two distances at least", () => {
    const words = rows({ kind: "points", at: [at(-8, 5), at(7, 6), at(9, -4), at(-6, -7), at(1, 2)] }).join(" ");
    for (const tag of ["A1", "A2", "A3", "A4", "A5"])
      expect(words.split(/[ ,]+/).filter((pair) => pair.split("-").includes(tag)).length).toBeGreaterThanOrEqual(2);
  });
});

describe("the hole table", () => {
  const staggered = requestOf({
    kind: "points",
    at: [at(-8, -5), at(0, -6), at(8, -5), at(8, 5), at(0, 6), at(-8, 5)],
  });
  const square = requestOf({ kind: "rectangle", x: inches(12), y: inches(10), nx: 2, ny: 2, perimeter: false });

  it("is not needed where chains show every line of the rods", () => {
    expect(locatedByChains(staggered, "full").size).toBe(6);
    expect(needsHoleTable(staggered, "full")).toBe(false);
    expect(needsHoleTable(square, "ends")).toBe(false);
  });

  it("is needed where a line stands in no chain", () => {
    expect(locatedByChains(staggered, "ends").size).toBeLessThan(6);
    expect(needsHoleTable(staggered, "ends")).toBe(true);
    expect(needsHoleTable(square, "overall")).toBe(true);
  });
});

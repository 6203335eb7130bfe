/** A print whose headings are the program's own words, with the shop's template thickness written beside it. Invented sheet. */
import { expect, it } from "vitest";
import { toPlain } from "../../../src/job/document.js";
import { read } from "../../untidy/read-sheet.js";
import { drawSheet } from "./drawn-sheet.js";

it("PATTERN with sizes in its cells is a size, and no kind of pattern", () => {
  const { bases, readAs } = read(drawSheet(["MARK|RODS|PATTERN|TEMPLATE THK", 'B1|(4) 3/4"|6 x 8|1/4']));
  expect(readAs.questions).toEqual([]);
  expect(bases.map((base) => toPlain(base))).toMatchObject([{ pattern: { kind: "rectangle", x: "6", y: "8" } }]);
});

it("PATTERN with kinds in its cells is a kind", () => {
  const { bases } = read(drawSheet(["MARK|ROD DIA|PATTERN|X|Y|TEMPLATE THK", 'B1|3/4"|rectangle|6|8|1/4']));
  expect(bases.map((base) => toPlain(base))).toMatchObject([{ pattern: { kind: "rectangle", x: "6", y: "8" } }]);
});

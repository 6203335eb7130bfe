import { describe, expect, it } from "vitest";
import { heldReasons } from "../../../src/checks/held.js";
import { stockThickness } from "../../../src/checks/rules/stock-thickness.js";
import { missing } from "../../../src/job/model/job.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { inch, isSubject, plus, rowsOf, testAtLimit } from "./context.js";

const thick = (value: number) => rowsOf(stockThickness, { template: { thickness: inches(value) } })[0];

describe("stock-thickness: the shop of the fixture stocks 3/16, 1/4, 3/8, 1/2", () => {
  testAtLimit({
    name: "3/8",
    rule: stockThickness,
    at: (delta) => ({ template: { thickness: plus(inch(0.375), delta) } }),
    passes: 0,
    pick: isSubject("plate"),
  });

  it.each([
    [0.3, "0.3 is not stocked; nearest 1/4; stocked steel: 3/16, 1/4, 3/8, 1/2"],
    [0.3125, "5/16 is not stocked; nearest 1/4; stocked steel: 3/16, 1/4, 3/8, 1/2"],
    [6, "6 is not stocked; nearest 1/2; stocked steel: 3/16, 1/4, 3/8, 1/2; 6 in where 6 mm is meant?"],
    [2.75, "2-3/4 is not stocked; nearest 1/2; stocked steel: 3/16, 1/4, 3/8, 1/2"],
    [3, "3 is not stocked; nearest 1/2; stocked steel: 3/16, 1/4, 3/8, 1/2; 0.25 ft where 0.25 in is meant?"],
  ])("%d", (value, note) => {
    expect(thick(value)).toMatchObject({ status: "fail", severity: "stop", note });
  });

  it("6 mm is not 1/4 in", () => {
    const row = rowsOf(stockThickness, { template: { thickness: millimetres(6) } })[0];
    expect(row).toMatchObject({ status: "fail", note: expect.stringContaining("nearest 1/4") });
  });

  it("has a list of its own for plywood", () => {
    const plywood = (thickness: number) =>
      rowsOf(stockThickness, { template: { material: "plywood", thickness: inch(thickness) } })[0];
    expect(plywood(0.75)).toMatchObject({ status: "pass", note: "stocked plywood: 1/2, 3/4" });
    expect(plywood(0.25)?.status).toBe("fail");
  });

  it("asks for the other material where that is stocked so thick", () => {
    expect(thick(0.75)).toMatchObject({
      status: "fail",
      note: "3/4 is not stocked; nearest 1/2; stocked steel: 3/16, 1/4, 3/8, 1/2; stocked as plywood: is template.material: plywood meant?",
    });
  });

  it("is told with the nearest that is stocked, which is not the only one that would do", () => {
    const row = thick(0.75);
    expect(heldReasons(row === undefined ? [] : [row], "in")).toEqual([
      "stock thickness (stock-thickness) plate: 3/4 in, nearest in stock 1/2 in",
    ]);
  });

  it("is not checked where the shop names none", () => {
    const none = missing("thicknesses of the shop file", "the shop file names no steel in stock");
    expect(rowsOf(stockThickness, { shop: { thicknesses: { steel: none, plywood: none } } })[0]).toMatchObject({
      status: "not-checked",
      note: "the shop file names no steel in stock (thicknesses of the shop file)",
    });
  });
});

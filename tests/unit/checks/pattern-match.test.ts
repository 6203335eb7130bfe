import { describe, expect, it } from "vitest";
import { patternMatch } from "../../../src/checks/rules/pattern-match.js";
import type { SecondSourceHole } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import { nanometres } from "../../../src/units/index.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const unsized = missing("basePlate.pattern", "no size");
const hole = (x: number, y: number, diameter?: Length): SecondSourceHole => ({
  at: { x: nanometres(x), y: nanometres(y) },
  diameter: diameter === undefined ? unsized : given(diameter, "DXF"),
});
const four = (size?: Length) => [
  hole(-inch(6), inch(5), size),
  hole(inch(6), inch(5), size),
  hole(inch(6), -inch(5), size),
  hole(-inch(6), -inch(5), size),
];
const second = (holes: readonly SecondSourceHole[]) => ({ basePlate: { pattern: given(holes, "shop detail") } });
const PLACE = hasClause("A1", "every hole");
const SIZE = hasClause("BP1", "hole size");

describe("pattern-match", () => {
  it.each([0, 1])("each rod has a hole exactly there: %i nm off", (off) => {
    const rows = rowsOf(patternMatch, second([hole(-inch(6) + off, inch(5)), ...four().slice(1)]));
    const status = off === 0 ? "pass" : "fail";
    expect(rows.find(PLACE)).toMatchObject({ status, severity: "stop", value: { kind: "length", twice: 2 * off } });
    expect(rows.find(hasClause("BP1", "every hole"))?.status).toBe(status);
  });

  testAtLimit({
    name: "the size of each hole",
    rule: patternMatch,
    at: (delta) => second(four(plus(inch(2.0625), delta))),
    passes: 0,
    pick: SIZE,
  });

  it("compares the count", () => {
    const rows = rowsOf(patternMatch, second(four().slice(1)));
    expect(rows[0]).toMatchObject({ subject: "plate", status: "fail", margin: { kind: "count", count: -1 } });
    expect(rows.find(PLACE)).toMatchObject({ status: "fail", note: "nearest is BP3, 10 in away" });
  });

  it("finds a hole too many from the other side", () => {
    const rows = rowsOf(patternMatch, second([...four(), hole(0, 0)]));
    expect(rows.find(hasClause("BP5", "every hole"))?.status).toBe("fail");
    expect(rows.find(PLACE)?.status).toBe("pass");
  });

  it("an empty second source fails on the count", () => {
    expect(rowsOf(patternMatch, second([]))).toMatchObject([{ status: "fail" }]);
  });

  it("is not checked without a second source, a size, or a base-plate hole", () => {
    expect(rowsOf(patternMatch)).toMatchObject([{ status: "not-checked" }]);
    expect(rowOf(patternMatch, second(four()), SIZE).status).toBe("not-checked");
    const noHole = { ...second(four(inch(2))), group: { baseHole: missing("basePlate.hole", "no hole is given") } };
    expect(rowOf(patternMatch, noHole, SIZE).note).toContain("basePlate.hole");
  });
});

/** Hooks. That grade 105 is not bent, and no bar tighter than its own thickness, is common practice. */
import { describe, expect, it } from "vitest";
import { rodBend } from "../../../src/checks/rules/rod-bend.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Length } from "../../../src/units/index.js";
import type { Changes } from "./context.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const GRADE = hasClause("group A", "grade of a bent rod");
const RADIUS = hasClause("group A", "inside radius of the bend");
const LEG = (row: { readonly clause: string }) => row.clause.startsWith("reach of the hook");
const hook = (reach: Length, radius: Length | null, grade = "F1554 36"): Changes => ({
  rod: { bottom: given({ kind: "hook", reach, radius }, "job"), grade: given(grade, "job") },
});

describe("rod-bend", () => {
  it.each([
    ["F1554 36", "pass", 0],
    ["F1554 55", "pass", 0],
    ["F1554 105", "fail", 4],
  ])("a hook of %s: %s", (grade, status, count) => {
    const row = rowOf(rodBend, hook(inch(5), null, grade), GRADE);
    expect(row).toMatchObject({ status, severity: "ask", value: { kind: "count", count } });
  });

  it("says why not, and what takes its place", () => {
    const row = rowOf(rodBend, hook(inch(5), null, "F1554 105"), GRADE);
    expect(row.note).toBe(
      "4 rods of F1554 105 with a hook; it is heat-treated, a headed rod takes the place of a hook (common practice)",
    );
  });

  // EN 1993-1-8:2005, 6.2.6.12 (5), from memory: no hook where the yield strength is above 300 MPa.
  it.each([
    ["4.6", "pass", 240],
    ["5.6", "pass", 300],
    ["8.8", "fail", 640],
    ["10.9", "fail", 900],
  ])("a hook of property class %s: %s", (grade, status, strength) => {
    const row = rowOf(rodBend, hook(inch(5), null, grade), GRADE);
    expect(row).toMatchObject({ status, severity: "ask", edition: "EN 1993-1-8:2005" });
    expect(row.note).toContain(`yield ${strength} MPa, 300 at the most`);
  });

  it("keeps nothing of bending a grade of the shop's own", () => {
    expect(rowOf(rodBend, hook(inch(5), null, "A193 B7"), GRADE).status).toBe("not-checked");
  });

  // 1 x d of a 1-1/4 rod.
  testAtLimit({
    name: "inside radius",
    rule: rodBend,
    at: (delta) => hook(inch(6), plus(inch(1.25), delta)),
    passes: 1,
    pick: RADIUS,
  });

  it("takes the shop's radius where the job gives none, which is no close call", () => {
    const row = rowOf(rodBend, hook(inch(6), null), RADIUS);
    expect(row).toMatchObject({ status: "pass", chosen: true, edition: "shop" });
  });

  // Bar of the pitch diameter of 1-1/4-7 UNC: 1-1/4 - 0.649519 / 7 (ASME B1.1, basic) = 29.393174 mm, half of it beside 2 in.
  testAtLimit({
    name: "the hook has a leg beyond its bend",
    rule: rodBend,
    at: (delta) => hook(plus(inch(2), 14_696_587 + delta), inch(2)),
    passes: 1,
    pick: LEG,
  });

  it("asks nothing of a rod that is not bent, and the lower end where it is not given", () => {
    expect(rowsOf(rodBend)).toMatchObject([{ status: "not-applicable", note: "the rod is not bent" }]);
    const none = missing("rods.bottom", "the lower end of the rods is not given");
    expect(rowsOf(rodBend, { rod: { bottom: none } })).toMatchObject([{ status: "not-checked" }]);
  });
});

import { describe, expect, it } from "vitest";
import { groutGap } from "../../../src/checks/rules/grout-gap.js";
import { given, missing } from "../../../src/job/model/job.js";
import { hasClause, inch, plus, rowsOf, testAtLimit } from "./context.js";

const grout = (length: number) => ({ grout: given(plus(inch(1.751), length), "job") });

describe("grout-gap", () => {
  testAtLimit({
    name: "levelling nut 1.251 + washer 1/2",
    rule: groutGap,
    at: (delta) => ({ base: grout(delta) }),
    passes: 1,
    pick: hasClause("A1", "room"),
  });

  testAtLimit({
    name: "and the shop's room",
    rule: groutGap,
    at: (delta) => ({ base: grout(inch(0.5) + delta), shop: { groutRoom: given(inch(0.5), "shop") } }),
    passes: 1,
    pick: hasClause("A1", "room"),
  });

  // Projection 9 - grout 1-1/2 + washer 1/2 + levelling nut 1.251 = 9.251 from the top.
  testAtLimit({
    name: "thread reaches below the levelling nut",
    rule: groutGap,
    at: (delta) => ({ rod: { threadLength: given(plus(inch(9.251), delta), "job") } }),
    passes: 1,
    pick: hasClause("A1", "thread"),
  });

  it.each(["shims", "plate"] as const)("does not apply to %s", (kind) => {
    expect(rowsOf(groutGap, { base: { levelling: given(kind, "job") } })).toMatchObject([{ status: "not-applicable" }]);
  });

  it("is not checked where it is not said what levels the plate", () => {
    const rows = rowsOf(groutGap, { base: { levelling: missing("levelling", "not said") } });
    expect(rows).toMatchObject([{ status: "not-checked", note: "not said (levelling)" }]);
  });

  it.each([
    ["grout", { base: { grout: missing("grout", "none given") } }, "(grout)"],
    ["nut", { rod: { nut: missing("rods.nut", "none tabulated") } }, "rods.nut"],
    ["washer", { group: { washer: missing("basePlate.washer", "none given") } }, "basePlate.washer"],
  ] as const)("is not checked without %s", (_, changes, key) => {
    const rows = rowsOf(groutGap, changes);
    expect(rows.map(({ status }) => status)).toEqual(Array(8).fill("not-checked"));
    expect(rows[0]?.note).toContain(key);
  });
});

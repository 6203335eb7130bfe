import { describe, expect, it } from "vitest";
import { projection } from "../../../src/checks/rules/projection.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres } from "../../../src/units/index.js";
import { jobFixture } from "../../fixture.js";
import { hasClause, inch, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const SPECIFIED = hasClause("A1", "from the specified");
const LOW = hasClause("A1", "set low");
/** 1-1/2 grout + 1-1/2 plate + 1/2 washer + 1.251 nut */
const stack = inch(4.751);
const projecting = (length: number) => ({ projection: given(plus(stack, length), "job") });

describe("projection", () => {
  testAtLimit({
    name: "grout, base plate, washer, nut",
    rule: projection,
    at: (delta) => ({ rod: projecting(delta) }),
    passes: 1,
    pick: SPECIFIED,
  });

  testAtLimit({
    name: "and stick-out",
    rule: projection,
    at: (delta) => ({ rod: { ...projecting(inch(0.25) + delta), stickOut: given(inch(0.25), "job") } }),
    passes: 1,
    pick: SPECIFIED,
  });

  testAtLimit({
    name: "a template left in place joins the stack",
    rule: projection,
    at: (delta) => ({ template: { use: "template left as setting plate" }, rod: projecting(inch(0.25) + delta) }),
    passes: 1,
    pick: SPECIFIED,
  });

  testAtLimit({
    name: "the rod 1/2 in low, ACI 117-10 2.3.4.1",
    rule: projection,
    at: (delta) => ({ rod: projecting(inch(0.5) + delta) }),
    passes: 1,
    pick: LOW,
  });

  testAtLimit({
    name: "the rod 5 mm low, EN 1090-2",
    rule: projection,
    at: (delta) => ({
      job: { editions: { ...jobFixture().editions, placing: "EN 1090-2:2008" } },
      rod: projecting(millimetres(5) + delta),
    }),
    passes: 1,
    pick: LOW,
  });

  it("names the edition of the tolerance where it is used", () => {
    expect(rowOf(projection, {}, SPECIFIED).edition).toBe("geometry");
    expect(rowOf(projection, {}, LOW).edition).toBe("ACI 117-10");
  });

  it("writes the stack, the thread and the advice", () => {
    const shims = { levelling: given("shims" as const, "job") };
    expect(rowOf(projection, { base: shims }, SPECIFIED).note).toBe(
      "9 against grout 1-1/2 + base plate 1-1/2 + washer 1/2 + nut 1.251 + stick-out 0; " +
        "thread 2-1/2 more than needed, Design Guide 1 advises 3 in more",
    );
    expect(rowOf(projection, {}, SPECIFIED).note).toContain("thread 1.251 short of what is needed");
    const unknown = { rod: { threadLength: missing("rods.threadLength", "none given") } };
    expect(rowOf(projection, unknown, SPECIFIED).note).not.toContain("thread");
  });

  it.each([
    ["projection", { rod: { projection: missing("rods.projection", "none given") } }, "rods.projection"],
    ["grout", { base: { grout: missing("grout", "none given") } }, "(grout)"],
    ["base plate", { basePlate: { thickness: missing("basePlate.thickness", "none given") } }, "basePlate.thickness"],
    ["nut", { rod: { nut: missing("rods.nut", "none tabulated") } }, "rods.nut"],
    ["washer", { group: { washer: missing("basePlate.washer", "none given") } }, "basePlate.washer"],
    ["stick-out", { rod: { stickOut: missing("rods.stickOut", "none given") } }, "rods.stickOut"],
  ] as const)("is not checked without %s", (_, changes, key) => {
    const rows = rowsOf(projection, changes);
    expect(rows).toHaveLength(8);
    expect(
      rows.every(({ status, note, severity }) => status === "not-checked" && note.includes(key) && severity === "ask"),
    ).toBe(true);
  });
});

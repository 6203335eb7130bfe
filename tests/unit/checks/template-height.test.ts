import { describe, expect, it } from "vitest";
import { templateHeight } from "../../../src/checks/rules/template-height.js";
import { given, missing } from "../../../src/job/model/job.js";
import { groupFixture } from "../../fixture.js";
import { hasClause, inch, isSubject, onLine, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const THREAD = hasClause("A1", "thread");
const washer = given({ shape: "round", size: inch(2.5), thickness: given(inch(0.25), "shop") } as const, "shop");
const nameless = given(
  { shape: "round", size: inch(2.5), thickness: missing("shop.templateWasher.thickness", "no thickness") } as const,
  "shop",
);

describe("template-height", () => {
  testAtLimit({
    name: "nut 1.251 + finishing room 1",
    rule: templateHeight,
    at: (delta) => ({ template: { height: given(plus(inch(2.251), delta), "job") } }),
    passes: 1,
    pick: isSubject("plate"),
  });

  testAtLimit({
    name: "nut + washer 1/4 + finishing room",
    rule: templateHeight,
    at: (delta) => ({ shop: { templateWasher: washer }, template: { height: given(plus(inch(2.501), delta), "job") } }),
    passes: 1,
    pick: isSubject("plate"),
  });

  // 9 projection - 3 height + 1.251 nut.
  testAtLimit({
    name: "thread below the lower nut",
    rule: templateHeight,
    at: (delta) => ({ rod: { threadLength: given(plus(inch(7.251), delta), "job") } }),
    passes: 1,
    pick: THREAD,
  });

  it.each([
    ["height", { template: { height: missing("template.height", "no height is given") } }, "template.height", 5],
    ["thread", { rod: { threadLength: missing("rods.threadLength", "no thread is given") } }, "rods.threadLength", 4],
    ["projection", { rod: { projection: missing("rods.projection", "no projection is given") } }, "rods.projection", 4],
    ["nut", { rod: { nut: missing("rods.nut", "no nut is tabulated") } }, "rods.nut", 5],
    ["washer thickness", { shop: { templateWasher: nameless } }, "shop.templateWasher.thickness", 5],
    ["washer on plywood", { template: { material: "plywood" } }, "shop.templateWasher", 5],
  ] as const)("is not checked without %s", (_, changes, key, count) => {
    const rows = rowsOf(templateHeight, changes).filter(({ status }) => status === "not-checked");
    expect(rows).toHaveLength(count);
    expect(rows.every(({ note, severity }) => note.includes(key) && severity === "stop")).toBe(true);
  });

  it("takes the thickest nut of two groups", () => {
    const thin = {
      nut: given({ kind: "hex", acrossCorners: inch(1.2), height: inch(0.8) } as const, "t"),
    };
    const groups = [
      groupFixture({}, thin),
      groupFixture({ letter: "B", pattern: onLine(0) }),
      groupFixture({ letter: "C", pattern: onLine(inch(3)) }, thin),
    ];
    const row = rowOf(templateHeight, { base: { groups } }, isSubject("plate"));
    expect(row.limit).toEqual({ kind: "length", twice: 2 * inch(2.251) });
  });

  it("writes figures to follow by hand", () => {
    expect(rowOf(templateHeight, {}, THREAD).note).toBe(
      "thread 8 from the top against projection 9 - underside 3 + washer 0 + nut 1.251",
    );
  });

  it("does not apply to a plate over cast rods", () => {
    const rows = rowsOf(templateHeight, { template: { use: "setting plate over cast rods" } });
    expect(rows.map(({ status }) => status)).toEqual(["not-applicable"]);
  });
});

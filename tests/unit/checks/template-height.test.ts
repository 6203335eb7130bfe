import { describe, expect, it } from "vitest";
import { templateHeight } from "../../../src/checks/rules/template-height.js";
import { given, missing } from "../../../src/job/model/job.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { groupFixture } from "../../fixture.js";
import { hasClause, inch, isSubject, onLine, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const THREAD = hasClause("A1", "thread");
const UPPER = hasClause("A1", "above and below");
const projecting = (length: number, delta: number) => ({ projection: given(plus(nanometres(length), delta), "job") });
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
    ["height", { template: { height: missing("template.height", "no height is given") } }, "template.height", 9],
    ["thread", { rod: { threadLength: missing("rods.threadLength", "no thread is given") } }, "rods.threadLength", 4],
    ["projection", { rod: { projection: missing("rods.projection", "no projection is given") } }, "rods.projection", 8],
    ["nut", { rod: { nut: missing("rods.nut", "no nut is tabulated") } }, "rods.nut", 9],
    ["washer thickness", { shop: { templateWasher: nameless } }, "shop.templateWasher.thickness", 9],
    ["washer on plywood", { template: { material: "plywood" } }, "shop.templateWasher", 9],
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
      "thread 8 against projection 9 - height of the underside 3 + washer 0 + nut 1.251",
    );
  });

  it("does not apply to a plate over cast rods", () => {
    const rows = rowsOf(templateHeight, { template: { use: "setting plate over cast rods" } });
    expect(rows.map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  // Underside 3 + template 1/4 + upper nut 1.251 (Design Guide 1, 2nd ed., s.2.8: a nut above and one below).
  testAtLimit({
    name: "template and upper nut on the rod",
    rule: templateHeight,
    at: (delta) => ({ rod: projecting(inch(4.501), delta) }),
    passes: 1,
    pick: UPPER,
  });

  // A washer on both faces: 1/4 more.
  testAtLimit({
    name: "and the washer under that nut",
    rule: templateHeight,
    at: (delta) => ({ shop: { templateWasher: washer }, rod: projecting(inch(4.751), delta) }),
    passes: 1,
    pick: UPPER,
  });

  // Underside 3 + plywood 3/4 + washer 1/4 + nut 1.251.
  testAtLimit({
    name: "plywood",
    rule: templateHeight,
    at: (delta) => ({
      shop: { templateWasher: washer },
      template: { material: "plywood", thickness: inch(0.75) },
      rod: projecting(inch(5.251), delta),
    }),
    passes: 1,
    pick: UPPER,
  });

  // 9 - 1/4 - 1.251 = 7.499
  testAtLimit({
    name: "a template that stands too high",
    rule: templateHeight,
    at: (delta) => ({ template: { height: given(plus(inch(7.499), delta), "job") } }),
    passes: -1,
    pick: UPPER,
  });

  // 70 + 6 + 19 = 95 mm
  testAtLimit({
    name: "in millimetres",
    rule: templateHeight,
    at: (delta) => ({
      job: { unit: "mm" },
      template: { height: given(millimetres(70), "job"), thickness: millimetres(6) },
      rod: {
        nut: given({ kind: "hex", acrossCorners: millimetres(40), height: millimetres(19) } as const, "test"),
        ...projecting(millimetres(95), delta),
      },
    }),
    passes: 1,
    pick: UPPER,
  });

  it("holds a template that hangs above its rods, whatever it becomes afterwards", () => {
    for (const use of ["template", "template left as setting plate"] as const) {
      expect(rowOf(templateHeight, { template: { use, height: given(inch(12), "job") } }, UPPER)).toMatchObject({
        status: "fail",
        severity: "stop",
        clause: "s.2.8: a nut above and below the template",
        edition: "Design Guide 1, 2nd ed.",
        note: "projection 9 against height of the underside 12 + template 1/4 + washer 0 + upper nut 1.251; the upper nut lacks 4.501 of rod",
      });
    }
  });

  // Template 1/4 + nut 1.251 alone ask for 1.501; underside 3 alone is no less than finishing room 1.
  it.each([
    [
      "height of the underside",
      { template: { height: missing("template.height", "none") }, rod: projecting(inch(1.5), 0) },
      UPPER,
    ],
    ["nut", { rod: { nut: missing("rods.nut", "none"), ...projecting(inch(3.25), -1) } }, UPPER],
    ["washer", { template: { material: "plywood" }, rod: projecting(inch(4.5), 0) }, UPPER],
    [
      "nut",
      { rod: { nut: missing("rods.nut", "none") }, template: { height: given(inch(0.9), "job") } },
      isSubject("plate"),
    ],
  ] as const)("fails whatever the %s is", (name, changes, pick) => {
    expect(rowOf(templateHeight, changes, pick)).toMatchObject({
      status: "fail",
      note: expect.stringMatching(new RegExp(`whatever the (upper )?${name} is`)),
    });
  });
});

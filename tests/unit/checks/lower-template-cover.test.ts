import { describe, expect, it } from "vitest";
import { lowerTemplateCover } from "../../../src/checks/rules/lower-template-cover.js";
import type { LowerSpec, PlanShape } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { inch, isSubject, plus, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = inch(0);
const lower: LowerSpec = {
  thickness: inch(0.25),
  outline: { kind: "rectangle", x: inch(15), y: inch(13), at: { x: zero, y: zero }, corner: { kind: "square" } },
  opening: { kind: "none" },
  level: given({ from: "lower ends", distance: inch(4) }, "job"),
};
const pier = (x: ReturnType<typeof inch>) =>
  given({ kind: "rectangle", x, y: inch(60), corner: { kind: "square" } } as PlanShape, "job");

describe("lower-template-cover", () => {
  it("does not apply where there is none", () => {
    expect(rowsOf(lowerTemplateCover).map(({ status }) => status)).toEqual(["not-applicable"]);
  });

  // ACI 318-19 Table 20.5.1.3.1: against ground 3 in; exposed, No. 6 to 18 (rod 1-1/4) 2 in; not exposed, No. 11 and smaller 1-1/2 in.
  it.each([
    ["against ground", 3],
    ["exposed", 2],
    ["not exposed", 1.5],
  ] as const)("%s asks for %s in", (exposure, cover) => {
    const at = (delta: number) => ({
      template: { lower },
      concrete: { shape: pier(plus(inch(15 + 2 * cover), 2 * delta)), exposure: given(exposure, "job") },
    });
    expect([-1, 0, 1].map((delta) => rowOf(lowerTemplateCover, at(delta), isSubject("T1-L")).status)).toEqual([
      "fail",
      "pass",
      "pass",
    ]);
  });

  testAtLimit({
    name: "a ring in a round pier is held all round",
    rule: lowerTemplateCover,
    at: (delta) => ({
      template: { lower: { ...lower, outline: { kind: "circle", diameter: inch(18), at: { x: inch(1), y: zero } } } },
      concrete: {
        shape: given({ kind: "circle", diameter: plus(inch(18 + 2 + 4), 2 * delta) } as PlanShape, "job"),
        exposure: given("exposed", "job"),
      },
    }),
    passes: 1,
    pick: isSubject("T1-L"),
  });

  it("asks for concrete and exposure where they are not given", () => {
    const bare = { shape: missing("concrete", "no pier"), exposure: missing("concrete.exposure", "no exposure") };
    expect(rowOf(lowerTemplateCover, { template: { lower }, concrete: bare }, isSubject("T1-L")).missing).toEqual([
      "concrete",
    ]);
    const open = { exposure: missing("concrete.exposure", "no exposure") };
    const row = rowOf(lowerTemplateCover, { template: { lower }, concrete: open }, isSubject("T1-L"));
    expect([row.status, row.missing]).toEqual(["not-checked", ["concrete.exposure"]]);
  });
});

import { describe, expect, it } from "vitest";
import { templateInForm } from "../../../src/checks/rules/template-in-form.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, rowOf, rowsOf, testAtLimit } from "./context.js";

const zero = nanometres(0);
const at = { x: zero, y: zero };
const PLATE = isSubject("plate");
const square = { kind: "square" } as const;
const rect = (x: number, y: number, where = at) =>
  ({
    outline: { kind: "rectangle", x: nanometres(x), y: nanometres(y), at: where, corner: square },
    opening: { kind: "none" },
  }) as const;
const round = (diameter: number, where = at) => ({
  shape: given({ kind: "circle", diameter: nanometres(diameter) } as const, "job"),
  at: where,
});
const bearers = { support: given("bearers" as const, "job") };

describe("template-in-form", () => {
  testAtLimit({
    name: "bears on two opposite sides of a 24 in form",
    rule: templateInForm,
    at: (delta) => ({ template: rect(inch(26) + 2 * delta, inch(18)) }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "bears along y where that is better",
    rule: templateInForm,
    at: (delta) => ({ template: rect(inch(20), inch(26) + 2 * delta) }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "the lesser side of a template off the form's centre",
    rule: templateInForm,
    at: (delta) => ({ template: rect(inch(28), inch(18), { x: nanometres(inch(1) + delta), y: zero }) }),
    passes: -1,
    pick: PLATE,
  });

  testAtLimit({
    name: "the lesser side along y",
    rule: templateInForm,
    at: (delta) => ({ template: rect(inch(18), inch(28), { x: zero, y: nanometres(-inch(1) - delta) }) }),
    passes: -1,
    pick: PLATE,
  });

  testAtLimit({
    name: "the concrete off the working point",
    rule: templateInForm,
    at: (delta) => ({
      template: rect(inch(28), inch(18)),
      concrete: { at: { x: nanometres(-inch(1) - delta), y: zero } },
    }),
    passes: -1,
    pick: PLATE,
  });

  // Half width 6, form radius 10: half the chord is 8 (6-8-10); bearing 1 in asks for half a length of 9.
  testAtLimit({
    name: "chord bearing on a round form",
    rule: templateInForm,
    at: (delta) => ({ template: rect(inch(18) + 2 * delta, inch(12)), concrete: round(inch(20)) }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "chord bearing, the long side along y",
    rule: templateInForm,
    at: (delta) => ({ template: rect(inch(12), inch(18) + 2 * delta), concrete: round(inch(20)) }),
    passes: 1,
    pick: PLATE,
  });

  // A chamfer of 4 x 1 on half width 7: the corners that bear lie 6 off the axis again.
  testAtLimit({
    name: "chord bearing with chamfered corners",
    rule: templateInForm,
    at: (delta) => ({
      template: {
        ...rect(inch(18) + 2 * delta, inch(14)),
        outline: {
          kind: "rectangle",
          x: nanometres(inch(18) + 2 * delta),
          y: inch(14),
          at,
          corner: { kind: "chamfer", x: inch(4), y: inch(1) },
        },
      },
      concrete: round(inch(20)),
    }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "round plate on a round form",
    rule: templateInForm,
    at: (delta) => ({
      template: { outline: { kind: "circle", diameter: nanometres(inch(22) + delta), at }, opening: { kind: "none" } },
      concrete: round(inch(20)),
    }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "bearers: gap inside a straight form, concrete off the working point",
    rule: templateInForm,
    at: (delta) => ({
      template: { ...rect(inch(20), inch(18)), ...bearers },
      concrete: { at: { x: nanometres(inch(1.5) - delta), y: zero } },
    }),
    passes: 1,
    pick: PLATE,
  });

  // Corner 6, 8: 10 from the centre; gap 1/2: radius 10-1/2.
  testAtLimit({
    name: "bearers: the farthest corner inside a round form",
    rule: templateInForm,
    at: (delta) => ({ template: { ...rect(inch(12), inch(16)), ...bearers }, concrete: round(inch(21) + delta) }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "bearers: a rounded corner inside a round form",
    rule: templateInForm,
    at: (delta) => ({
      template: {
        ...bearers,
        outline: { kind: "rectangle", x: inch(12), y: inch(14), at, corner: { kind: "round", radius: inch(3) } },
        opening: { kind: "none" },
      },
      // Arc centre 3, 4: 5 from the middle; + 3 = 8; gap 1/2.
      concrete: round(inch(17) + delta),
    }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "bearers: a round plate off the centre of a round form",
    rule: templateInForm,
    at: (delta) => ({
      template: {
        ...bearers,
        outline: { kind: "circle", diameter: inch(14), at: { x: inch(3), y: inch(4) } },
        opening: { kind: "none" },
      },
      group: { pattern: { kind: "points", at: [{ x: inch(3), y: inch(4) }] } },
      concrete: round(inch(25) + delta),
    }),
    passes: 1,
    pick: PLATE,
  });

  const keyedDisc = (diameter: number) =>
    ({
      outline: { kind: "circle", diameter: nanometres(diameter), at },
      opening: { kind: "none" },
      key: "auto",
    }) as const;

  testAtLimit({
    name: "a round plate with a notched rim bears like a whole one",
    rule: templateInForm,
    at: (delta) => ({ template: keyedDisc(inch(24) + 2 * delta), concrete: round(inch(22)) }),
    passes: 1,
    pick: PLATE,
  });

  testAtLimit({
    name: "a round plate with a notched rim clears the form like a whole one",
    rule: templateInForm,
    at: (delta) => ({ template: { ...keyedDisc(inch(24) - 2 * delta), ...bearers }, concrete: round(inch(25)) }),
    passes: 1,
    pick: PLATE,
  });

  it("says that a round plate bears beside its key", () => {
    const row = rowOf(templateInForm, { template: keyedDisc(inch(24)), concrete: round(inch(22)) }, PLATE);
    expect(row.note).toContain("round plate on a round form, beside its key");
  });

  it("says along which direction it bears", () => {
    expect(rowOf(templateInForm, {}, PLATE)).toMatchObject({
      status: "pass",
      severity: "stop",
      note: "along x: bears 1 on opposite sides, 1 asked for",
    });
  });

  it("says how far a template falls short of the form", () => {
    expect(rowOf(templateInForm, { template: rect(inch(20), inch(18)) }, PLATE)).toMatchObject({
      status: "fail",
      note: "along x: falls short of the form by 2 on opposite sides, 1 asked for",
    });
  });

  it("does not measure a plate without a corner in a quarter of a round form", () => {
    const outline = {
      kind: "polygon",
      at: [
        { x: inch(-8), y: inch(2) },
        { x: inch(8), y: inch(2) },
        { x: inch(8), y: inch(9) },
      ],
      corner: square,
    } as const;
    const row = rowOf(
      templateInForm,
      { template: { outline, opening: { kind: "none" } }, concrete: round(inch(20)) },
      PLATE,
    );
    expect(row.status).toBe("not-checked");
  });

  it.each([
    ["concrete", { concrete: { shape: missing("concrete", "no concrete is given") } }, "(concrete)"],
    ["support", { template: { support: missing("template.support", "no support is given") } }, "(template.support)"],
  ] as const)("is not checked without %s", (_, changes, key) => {
    const row = rowOf(templateInForm, changes, PLATE);
    expect(row).toMatchObject({ status: "not-checked" });
    expect(row.note).toContain(key);
  });

  it("does not apply to a plate over cast rods", () => {
    expect(rowsOf(templateInForm, { template: { use: "setting plate over cast rods" } })[0]?.status).toBe(
      "not-applicable",
    );
  });
});

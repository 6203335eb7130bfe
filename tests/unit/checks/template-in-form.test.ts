import { describe, expect, it } from "vitest";
import { templateInForm } from "../../../src/checks/rules/template-in-form.js";
import type { PlanShape } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { inch, isSubject, onLine, rowOf, rowsOf, testAtLimit } from "./context.js";

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

  it("says that a round plate bears beside its orientation cut", () => {
    const row = rowOf(templateInForm, { template: keyedDisc(inch(24)), concrete: round(inch(22)) }, PLATE);
    expect(row.note).toContain("round plate on a round form, beside its orientation cut");
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

  describe("at the form's own contour", () => {
    type Form = Extract<PlanShape, { readonly kind: "rectangle" }>;
    const form = (corner: Form["corner"], x = 24, y = 24) => ({
      shape: given<PlanShape>({ kind: "rectangle", x: inch(x), y: inch(y), corner }, "job"),
      at,
    });
    const onBearers = (x: number, y: number) => ({ ...rect(x, y), ...bearers });
    const asked = (length: number) => ({ shop: { formGap: given(nanometres(length), "shop test") } });

    // The notch's corner stands at (8, 6): a side at 7-1/2 that reaches higher than 6 is 1/2 from it.
    testAtLimit({
      name: "a side beside a notch",
      rule: templateInForm,
      at: (delta) => ({
        template: onBearers(inch(15) - 2 * delta, inch(16)),
        concrete: form({ kind: "notch", x: inch(4), y: inch(6) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    // Chamfer 3 by 4 of a 24 in square: the line 4 x + 3 y = 72; (11, 8-1/2) is 2-1/2 / 5 from it.
    testAtLimit({
      name: "a corner beside a chamfer",
      rule: templateInForm,
      at: (delta) => ({
        ...asked(inch(0.5) - delta),
        template: onBearers(inch(22), inch(17)),
        concrete: form({ kind: "chamfer", x: inch(3), y: inch(4) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    // Radius 5 about (7, 7): the corner (9.7, 10.6) is 4-1/2 from the centre (2.7, 3.6).
    testAtLimit({
      name: "a corner beside a round",
      rule: templateInForm,
      at: (delta) => ({
        ...asked(inch(0.5) - delta),
        template: onBearers(inch(19.4), inch(21.2)),
        concrete: form({ kind: "round", radius: inch(5) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    // A disc of 14 about 0,0 and the notch corner (6, 8), 10 from it: 3 is left.
    testAtLimit({
      name: "a round plate beside a notch",
      rule: templateInForm,
      at: (delta) => ({
        ...asked(inch(3) - delta),
        template: {
          ...bearers,
          outline: { kind: "circle", diameter: inch(14), at },
          opening: { kind: "none" },
        },
        group: { pattern: onLine(0) },
        concrete: form({ kind: "notch", x: inch(6), y: inch(4) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    // The same cut on template and form, 1 in inside it on every side: a 3-4-5 chamfer's lines are 4 (1) + 3 (1) over 5 apart.
    testAtLimit({
      name: "a chamfer beside a chamfer",
      rule: templateInForm,
      at: (delta) => ({
        ...asked(inch(1) - delta),
        template: {
          ...onBearers(inch(22), inch(22)),
          outline: {
            kind: "rectangle",
            x: inch(22),
            y: inch(22),
            at,
            corner: { kind: "chamfer", x: inch(3), y: inch(4) },
          },
        },
        concrete: form({ kind: "chamfer", x: inch(3), y: inch(4) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    it.each([
      ["notches of 4", form({ kind: "notch", x: inch(4), y: inch(4) }), inch(3)],
      ["chamfers of 11", form({ kind: "chamfer", x: inch(11), y: inch(11) }), (9 / Math.SQRT2) * 25_400_000],
      ["rounds of 11", form({ kind: "round", radius: inch(11) }), (10 * Math.SQRT2 - 11) * 25_400_000],
    ] as const)("fails where a corner of 22 x 22 reaches past %s of a 24 in form", (_, concrete, past) => {
      const row = rowOf(templateInForm, { template: onBearers(inch(22), inch(22)), concrete }, PLATE);
      expect(row).toMatchObject({ status: "fail", severity: "stop" });
      const twice = row.value?.kind === "length" ? row.value.twice : 0;
      expect(Math.abs(twice + 2 * past)).toBeLessThanOrEqual(1);
      expect(row.note).toContain("the template reaches");
    });

    it("fails where a notch of the form reaches into a template whose own corners lie inside it", () => {
      const row = rowOf(
        templateInForm,
        {
          template: {
            ...onBearers(inch(22), inch(22)),
            outline: {
              kind: "rectangle",
              x: inch(22),
              y: inch(22),
              at,
              corner: { kind: "chamfer", x: inch(3), y: inch(3) },
            },
          },
          concrete: form({ kind: "notch", x: inch(4), y: inch(4) }),
        },
        PLATE,
      );
      expect(row.status).toBe("fail");
    });

    it("says where the gap is least", () => {
      const changes = {
        template: onBearers(inch(15), inch(16)),
        concrete: form({ kind: "notch", x: inch(4), y: inch(6) }),
      };
      expect(rowOf(templateInForm, changes, PLATE).note).toMatch(
        /^gap 1\/2 between template and form where it is least, at \(-?8, -?\d.*\), 1\/2 asked for$/,
      );
    });

    it("in millimetres: 600 square with notches of 100, a template of 500", () => {
      const mm = (value: number) => nanometres(value * 1_000_000);
      const gapped = (notch: number) =>
        rowOf(
          templateInForm,
          {
            job: { unit: "mm" },
            ...asked(mm(12)),
            template: onBearers(mm(500), mm(300)),
            concrete: {
              shape: given(
                { kind: "rectangle", x: mm(600), y: mm(600), corner: { kind: "notch", x: mm(38), y: mm(notch) } },
                "job",
              ),
              at,
            },
          },
          PLATE,
        );
      expect(gapped(100)).toMatchObject({ status: "pass", value: { twice: 2 * 50e6 } });
      expect(gapped(162)).toMatchObject({ status: "pass", value: { twice: 2 * 12e6 } });
      expect(gapped(200)).toMatchObject({ status: "pass", value: { twice: 2 * 12e6 } });
    });

    const cut = (x: number, y: number, corner: Form["corner"]) => ({
      outline: { kind: "rectangle", x: nanometres(x), y: nanometres(y), at, corner } as const,
      opening: { kind: "none" } as const,
    });

    testAtLimit({
      name: "bears on the faces of a form with chamfered corners",
      rule: templateInForm,
      at: (delta) => ({
        template: rect(inch(26) + 2 * delta, inch(16)),
        concrete: form({ kind: "chamfer", x: inch(1), y: inch(1) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    testAtLimit({
      name: "bears beside its own cut corners",
      rule: templateInForm,
      at: (delta) => ({ template: cut(inch(26) + 2 * delta, inch(18), { kind: "notch", x: inch(3), y: inch(4) }) }),
      passes: 1,
      pick: PLATE,
    });

    // A 20 in square reaches 2 in past the notch faces at 8 with every corner, and never the outer faces at 12.
    testAtLimit({
      name: "bears in the notches of a form",
      rule: templateInForm,
      at: (delta) => ({
        shop: { bearing: given(nanometres(inch(2) - delta), "shop test") },
        template: rect(inch(20), inch(20)),
        concrete: form({ kind: "notch", x: inch(4), y: inch(4) }),
      }),
      passes: 1,
      pick: PLATE,
    });

    it("does not bear with ears that lie beyond the form", () => {
      // A T of 16 in and arms to 13 at y from 13 to 15: beside the faces it ends at 8.
      const points = [
        [-8, -9],
        [8, -9],
        [8, 13],
        [13, 13],
        [13, 15],
        [-13, 15],
        [-13, 13],
        [-8, 13],
      ] as const;
      const outline = {
        kind: "polygon",
        at: points.map(([x, y]) => ({ x: inch(x), y: inch(y) })),
        corner: square,
      } as const;
      const row = rowOf(templateInForm, { template: { outline, opening: { kind: "none" } } }, PLATE);
      expect(row).toMatchObject({ status: "fail", value: { twice: -2 * inch(3) } });
    });

    it("does not bear on one side of the rods only", () => {
      // Arms to 13 at y from 6 to 8 only; the rods' centre is at 0: below it the plate ends at 8.
      const points = [
        [-8, -9],
        [8, -9],
        [8, 6],
        [13, 6],
        [13, 8],
        [-13, 8],
        [-13, 6],
        [-8, 6],
      ] as const;
      const outline = {
        kind: "polygon",
        at: points.map(([x, y]) => ({ x: inch(x), y: inch(y) })),
        corner: square,
      } as const;
      expect(rowOf(templateInForm, { template: { outline, opening: { kind: "none" } } }, PLATE).status).toBe("fail");
    });
  });

  // A form of 24 in: 1 in of bearing asks for 26, a gap of 1/2 in for 23.
  describe("what carries it is not known", () => {
    const unknown = missing("template.support", "what carries the template is not given");
    const row = (x: number, y: number) =>
      rowOf(templateInForm, { template: { ...rect(x, y), support: unknown } }, PLATE);

    it.each([
      ["short of both", inch(24), "fail"],
      ["1 nm a side short of both, nearer to bearers", inch(23) + 2, "fail"],
      ["1 nm a side short of both, nearer to the form", inch(26) - 2, "fail"],
      ["right on bearers", inch(23), "not-checked"],
      ["right on the form", inch(26), "not-checked"],
    ])("%s", (_, side, status) => {
      expect(row(side, side).status).toBe(status);
    });

    it("says both ways, the nearer first", () => {
      expect(row(inch(25), inch(25))).toMatchObject({ severity: "stop", clause: "bearing on the form: shop test" });
      expect(row(inch(25), inch(25)).note).toMatch(
        /^along x: bears 1\/2 on opposite sides, 1 asked for; else, the template reaches 0\.7071 past .*; it fails whatever the support is: what carries/,
      );
      expect(row(inch(23.25), inch(23.25)).clause).toBe("gap inside the form: shop test");
    });
  });
});

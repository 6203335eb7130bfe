import { describe, expect, it } from "vitest";
import type { TemplateUse } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import {
  heightOfBasePlate,
  nutHeight,
  originOfBasePlateBottom,
  seatOfNut,
  settingPlateThickness,
  washerThickness,
  wholeStack,
} from "../../../src/job/model/stack.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { baseFixture, groupFixture } from "../../fixture.js";

const baseOf = (use: TemplateUse, thickness = inches(0.25)) => {
  const base = baseFixture();
  return baseFixture({ template: { ...base.template, use, thickness } });
};
const heights = (parts: ReturnType<typeof wholeStack>) =>
  parts.map(({ name, height }) => [name, height.kind === "given" ? height.value : null]);

describe("the stack on a rod", () => {
  it("is grout, base plate, washer, nut and stick-out, upwards", () => {
    expect(heights(wholeStack(baseOf("template"), groupFixture()))).toEqual([
      ["grout", inches(1.5)],
      ["base plate", inches(1.5)],
      ["washer", inches(0.5)],
      ["nut", inches(1.251)],
      ["stick-out", 0],
    ]);
  });

  it.each(["template left as setting plate", "setting plate over cast rods"] as const)("has the %s", (use) => {
    const parts = wholeStack(baseOf(use, inches(0.375)), groupFixture());
    expect(heights(parts).slice(0, 3)).toEqual([
      ["grout", inches(1.5)],
      ["setting plate", inches(0.375)],
      ["base plate", inches(1.5)],
    ]);
  });

  it("ends in the washer where the nut comes to bear", () => {
    expect(seatOfNut(baseOf("template"), groupFixture()).map(({ name }) => name)).toEqual([
      "grout",
      "base plate",
      "washer",
    ]);
  });

  // F436 for a 1 in rod: 0.136 to 0.177 in (ASTM F436).
  it("takes a washer of a table at either end of its range, another as it is given", () => {
    const limits = { least: inches(0.136), greatest: inches(0.177) };
    const thickness = given(inches(0.177), "ASTM F436");
    const washer = given({ shape: "round", size: inches(2), thickness, limits } as const, "ASTM F436");
    expect(washerThickness({ washer }, "greatest")).toEqual(given(inches(0.177), "ASTM F436"));
    expect(washerThickness({ washer }, "least")).toEqual(given(inches(0.136), "ASTM F436"));
    expect(washerThickness(groupFixture(), "least")).toEqual(given(inches(0.5), "job"));
    const none = missing("basePlate.washer", "none given");
    expect(washerThickness({ washer: none }, "least")).toBe(none);
  });

  it("takes the nut's greatest height, and says what is missing", () => {
    expect(nutHeight(groupFixture().rod)).toMatchObject({ value: inches(1.251) });
    const none = missing("rods.nut", "none tabulated");
    expect(nutHeight({ nut: none })).toBe(none);
  });
});

describe("the underside of the base plate", () => {
  it.each([
    ["template", inches(1.5), "top of concrete and grout"],
    ["template left as setting plate", inches(1.75), "top of concrete, grout and setting plate"],
    ["setting plate over cast rods", inches(1.75), "top of concrete, grout and setting plate"],
  ] as const)("stands on grout and on what stays: %s", (use, height, from) => {
    const base = baseOf(use);
    expect(heightOfBasePlate(base)).toMatchObject({ value: height });
    expect(originOfBasePlateBottom(base)).toBe(from);
  });

  it("is in millimetres as in inches", () => {
    const base = { ...baseOf("template left as setting plate", millimetres(6)), grout: given(millimetres(40), "job") };
    expect(settingPlateThickness(base)).toBe(millimetres(6));
    expect(heightOfBasePlate(base)).toMatchObject({ value: millimetres(46) });
  });

  it("is not known without the grout", () => {
    const grout = missing("grout", "no grout gap is given");
    expect(heightOfBasePlate({ ...baseOf("template left as setting plate"), grout })).toBe(grout);
  });
});

/** Holes that are larger than their plate are faults of the input: a hole that is as large just passes, for the checks to judge. */
import { describe, expect, it } from "vitest";
import type { Base } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { placeRods } from "../../../src/rods/index.js";
import { makePlateShape } from "../../../src/template/index.js";
import { type Length, millimetres, nanometres } from "../../../src/units/length.js";
import { baseFixture, jobFixture } from "../../fixture.js";

const faults = (base: Base) => {
  const rods = placeRods(base);
  return rods.ok ? makePlateShape(jobFixture(), base, rods.value).findings : ["no rods"];
};

/** The fixture's rods in a template of 700 x 500 mm. */
function baseWith(change: (base: Base) => Partial<Base>): Base {
  const base = baseFixture();
  const outline = {
    kind: "rectangle",
    x: millimetres(700),
    y: millimetres(500),
    at: { x: millimetres(0), y: millimetres(0) },
    corner: { kind: "square" },
  } as const;
  const sized: Base = { ...base, template: { ...base.template, outline } };
  return { ...sized, ...change(sized) };
}

const at = { x: nanometres(0), y: nanometres(0) };

describe.each([
  [
    "hole",
    (diameter: Length) =>
      baseWith(({ groups }) => ({ groups: groups.map((group) => ({ ...group, hole: given(diameter, "job") })) })),
  ],
  [
    "nails",
    (diameter: Length) => baseWith(({ template }) => ({ template: { ...template, nailHoles: [{ at, diameter }] } })),
  ],
  [
    "groutHoles",
    (diameter: Length) => baseWith(({ template }) => ({ template: { ...template, groutHoles: [{ at, diameter }] } })),
  ],
])("%s", (part, base) => {
  it.each([
    [-1, 0],
    [0, 0],
    [1, 1],
  ])("%d nm beyond the smaller side: %d faults", (beyond, count) => {
    const told = faults(base(nanometres(500_000_000 + beyond)));
    expect(told).toHaveLength(count);
    for (const fault of told)
      expect(fault).toMatchObject({
        code: "hole-beyond-plate",
        severity: "error",
        at: { path: expect.stringContaining(`template.${part}`) },
      });
  });
});

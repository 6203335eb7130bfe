/** Hooks: the bar along a bend, and the length that a bent rod is cut to. */
import { describe, expect, it } from "vitest";
import type { Rod } from "../../../../src/job/model/job.js";
import { given } from "../../../../src/job/model/job.js";
import { bendArc } from "../../../../src/rods/detail/hook.js";
import { detailRod } from "../../../../src/rods/detail/index.js";
import type { Length } from "../../../../src/units/length.js";
import { inches, millimetres, toMillimetres } from "../../../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../../../fixture.js";

const ZERO = inches(0);

/** A rod of full size (its thread is cut), bent; its lengths are not rounded. */
function bent(diameter: Length, reach: Length, radius: Length | null, rod: Partial<Rod> = {}) {
  const job = jobFixture();
  const { making } = job.shop.rodShop;
  const unrounded = {
    ...job.shop,
    rodShop: { ...job.shop.rodShop, making: { ...making, lengthStep: given(1 as Length, "test") } },
  };
  const group = groupFixture(
    {},
    {
      ...{ diameter, threading: given("cut" as const, "job"), finish: given("plain" as const, "job") },
      ...{ bottom: given({ kind: "hook", reach, radius }, "job"), bottomThread: given(ZERO, "job"), ...rod },
    },
  );
  return detailRod({ ...job, shop: unrounded }, baseFixture(), group);
}

const lengthOf = (input: ReturnType<typeof bent>["cut"]) => (input.kind === "given" ? input.value.value : Number.NaN);

describe("bar along a bend of 90 degrees", () => {
  // "Calculate Length of Bent Tube" (calculator.city), worked example: 90 degrees on a centre line of 100 mm, about 157 mm.
  it("is a quarter of a circle about the centre line", () => {
    expect(toMillimetres(bendArc(millimetres(90), millimetres(20)))).toBeCloseTo(157.08, 2);
  });

  // physicsforums.com, "The math involved in bending a rod": inside radius 0.416 in, outside 0.892 in: pi / 2 x their mean.
  it("goes by the mean of the inside and the outside radius", () => {
    const arc = bendArc(inches(0.416), inches(0.892 - 0.416));
    expect(arc / inches(1)).toBeCloseTo((Math.PI / 2) * ((0.416 + 0.892) / 2), 6);
  });
});

describe("a bent rod", () => {
  // BS 8666:2005, shape code 11, as engineersedge.com gives it: L = A + B - r / 2 - d, legs to the outside of the bend, for the
  // radii of that table, 2 d to 3.5 d. The rule is rounded: it agrees to an eighth of the bar's diameter.
  it.each([
    [8, 16],
    [12, 24],
    [16, 32],
    [20, 70],
    [32, 112],
    [40, 140],
  ])("of %d mm, inside radius %d mm, is cut as bars are scheduled", (d, r) => {
    const [above, below, reach] = [millimetres(100), millimetres(600), millimetres(300)];
    const lengths = { projection: given(above, "job"), embedment: given(below, "job") };
    const { cut, overall } = bent(millimetres(d), reach, millimetres(r), lengths);
    const [a, b] = [toMillimetres(lengthOf(overall) as Length), toMillimetres(reach) + d / 2];
    expect(a).toBe(700 + d);
    expect(Math.abs(toMillimetres(lengthOf(cut) as Length) - (a + b - r / 2 - d))).toBeLessThan(d / 8);
  });

  // fourwheeler.com, "Build a Rollcage at Home": outside of the bend at 25 in, radius of the die 6 in, half the tube 1 in: the
  // bend begins at 18 in.
  it("has its bend begin where a bender starts it", () => {
    const radius = inches(5);
    const { overall, hook } = bent(inches(2), inches(12), radius, {
      projection: given(inches(5), "job"),
      embedment: given(inches(18), "job"),
    });
    expect(lengthOf(overall)).toBe(inches(25));
    const begins = hook?.kind === "given" ? lengthOf(overall) - inches(2) - hook.value.insideRadius : Number.NaN;
    expect(begins).toBe(inches(18));
  });

  it("adds up: straight part, bend and leg", () => {
    const { cut, hook } = bent(inches(1), inches(4), inches(1.5));
    if (cut.kind === "missing" || hook === null || hook.kind === "missing") throw new Error("not known");
    expect(cut.value.terms.reduce((sum, { length }) => sum + length, 0)).toBe(cut.value.value);
    // 9 + 24 - 1.5, a quarter turn on 2 in, and 4 - 1.5 - 0.5.
    expect(cut.value.value / inches(1)).toBeCloseTo(31.5 + Math.PI + 2, 6);
    expect(hook.value.bar).toBe(hook.value.arc + hook.value.leg);
  });

  // ASTM F1554 (portlandbolt.com, tolerances): the length of a bent bolt goes to the inside of its bend.
  it("is as long as the job says to the inside of its bend, whatever its embedment", () => {
    const { cut, overall } = bent(inches(1), inches(4), inches(1.5), { length: given(inches(30), "job") });
    expect(overall).toMatchObject({ value: { value: inches(31), by: "given" } });
    expect(lengthOf(cut) / inches(1)).toBeCloseTo(30 - 1.5 + Math.PI + 2, 6);
  });

  it("takes the shop's radius, and bar of the pitch diameter where its thread is rolled", () => {
    const { hook, bar } = bent(inches(1.25), inches(5), null, { threading: given("rolled", "job") });
    if (hook === null || hook.kind === "missing" || bar.kind === "missing") throw new Error("not known");
    expect([hook.value.insideRadius, hook.value.radiusFrom]).toEqual([inches(1.25), "common practice"]);
    // ASME B1.1, 1-1/4-7 UNC: basic pitch diameter 1.1572 in.
    expect(bar.value / inches(1)).toBeCloseTo(1.1572, 4);
  });

  it("is not known where the hook ends within its bend, by a nanometre", () => {
    const reach = inches(2);
    expect(bent(inches(1), reach, inches(1.5)).hook?.kind).toBe("given");
    const short = bent(inches(1), (reach - 1) as Length, inches(1.5));
    for (const each of [short.hook, short.cut, short.kilograms])
      expect(each).toMatchObject({ kind: "missing", key: "rods.bottom.reach" });
  });

  it("has the F1554 tolerances of its hook on its detail", () => {
    const { notes, operations } = bent(inches(1), inches(6), inches(1.5));
    expect(notes).toContain(
      "Hook length +/- 0.6 in, bend angle +/- 5 degrees, section at the bend at least 90 % of the body (ASTM F1554).",
    );
    expect(operations.map(({ name }) => name)).toEqual(["cut", "thread", "bend", "mark", "assemble", "pack"]);
  });
});

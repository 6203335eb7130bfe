/**
 * The worked example of README's clearance chapter, by hand: four 1-1/4 in rods at 12 x 10 in, base-plate holes 1-3/4 in,
 * placing by ACI 117-10 2.3.4.2: 3/8 in.
 */
import { describe, expect, it } from "vitest";
import { reckonBudget } from "../../../src/budget/index.js";
import { given } from "../../../src/job/model/job.js";
import { resolveBudget } from "../../../src/job/resolve/budget.js";
import { placeRods } from "../../../src/rods/index.js";
import { inches } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";

const IN = 25_400_000;

function example(hole: number) {
  const base = baseFixture({ groups: [groupFixture({ baseHole: given(inches(hole), "job") })] });
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("no layout");
  const job = jobFixture({ budget: { ...resolveBudget(), target: given(0.95, "job") } });
  const budget = reckonBudget(job, base, rods.value);
  if (budget.kind !== "reckoned") throw new Error(budget.why.join("; "));
  return budget;
}

describe("the worked example", () => {
  const { rods, worst, rss, probability, target, governs } = example(1.75);

  it("clearance (1-3/4 - 1-1/4)/2 = 1/4, error 3/8", () => {
    expect(rods.map(({ clearanceTwice, terms }) => [clearanceTwice / 2, (terms[0]?.twice ?? 0) / 2])).toEqual(
      rods.map(() => [IN / 4, (IN * 3) / 8]),
    );
  });

  it("worst case: 3/8 + 3/8 = 3/4 > 1/4 + 1/4 = 1/2, short by (3/4 - 1/2)/2 = 1/8 at each hole", () => {
    expect(worst.free).toMatchObject({ errorTwice: 1.5 * IN, clearanceTwice: IN, holds: false, spare: -IN / 8 });
    expect(governs).toMatchObject({ subject: "A1-A2", term: "placing", share: 1 });
  });

  it("root sum square: sqrt(2) x 3/8 = 0.530, (1/2 - 0.530)/2 = -0.015", () => {
    expect(rss.free.spare / IN).toBeCloseTo((0.5 - Math.SQRT2 * 0.375) / 2, 6);
  });

  it("fixed in place: one rod is inside in (1/4)^2/(3/8)^2 = 4/9 of the cases, all four in (4/9)^4 = 3.9 %", () => {
    const exact = (4 / 9) ** 4;
    const error = Math.sqrt((exact * (1 - exact)) / probability.samples);
    expect(Math.abs(probability.held - exact)).toBeLessThan(4 * error);
  });

  it("free to shift and turn: as the chapter prints it", () => {
    const percent = (share: number) => Math.round(share * 1000) / 10;
    expect(
      [
        percent(probability.held),
        percent(probability.shifted),
        percent(probability.free),
        probability.samples,
        target?.holes.change[0]?.hole,
        target?.placing?.change[0]?.reach,
      ].join(" "),
    ).toMatchInlineSnapshot(`"4 38.2 59.2 62000 49212500 7143750"`);
  });

  it("certain from a hole of d + 2 T = 2 in, one nanometre less is not", () => {
    expect(example(2).worst.free.holds).toBe(true);
    expect(example(2).probability.free).toBe(1);
    expect(example(2 - 1 / IN).worst.free.holds).toBe(false);
  });

  it("the table's hole 2-1/16 leaves 13/32 - 3/8 = 1/32", () => {
    expect(example(2.0625).worst.free.spare).toBe(IN / 32);
  });
});

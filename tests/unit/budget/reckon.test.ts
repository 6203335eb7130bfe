import { describe, expect, it } from "vitest";
import type { ReckonedBase } from "../../../src/budget/index.js";
import { reckonBudget, shareWords, spareWords, worstBudgetsFirst } from "../../../src/budget/index.js";
import { histogramOf } from "../../../src/budget/trials.js";
import type { BudgetSpec } from "../../../src/job/model/budget.js";
import type { Base, Job } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { resolveBudget } from "../../../src/job/resolve/budget.js";
import { placeRods } from "../../../src/rods/index.js";
import { inches, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";

const IN = 25_400_000;

function reckon(spec: Partial<BudgetSpec>, base: Base = baseFixture(), job: Partial<Job> = {}) {
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("no layout");
  const budget: BudgetSpec = { ...resolveBudget(), standardError: 0.01, ...spec };
  return reckonBudget(jobFixture({ budget, ...job }), base, rods.value);
}

function reckoned(...args: Parameters<typeof reckon>): ReckonedBase {
  const budget = reckon(...args);
  if (budget.kind !== "reckoned") throw new Error(budget.why.join("; "));
  return budget;
}

const withHole = (hole: number): Base =>
  baseFixture({ groups: [groupFixture({ baseHole: given(inches(hole), "job") })] });
const components = { rods: "components", setting: given(inches(0.25), "job") } as const;

describe("terms", () => {
  it("the edition's tolerance alone: ACI 117-10, 3/8 in for 1-1/4 in", () => {
    const { rods, worst } = reckoned({});
    expect(rods[0]?.terms).toEqual([
      { name: "placing", zone: "round", twice: 0.75 * IN, commonTwice: 0, from: "ACI 117-10 2.3.4.2" },
    ]);
    expect(worst.free).toMatchObject({ errorTwice: 1.5 * IN, clearanceTwice: 1.625 * IN, holds: true });
  });

  it("an edition that limits spacings leaves half of it to each rod of a pair: AISC 303-10, 1/8 in", () => {
    const editions = { ...jobFixture().editions, placing: "AISC 303-10" } as const;
    const { rods, worst } = reckoned({}, baseFixture(), { editions });
    expect(rods[0]?.terms[0]?.twice).toBe(IN / 8);
    expect(worst.free.errorTwice).toBe(IN / 4);
  });

  it("components: setting, play, cutting and lean, and never the tolerance that they make up", () => {
    const lean = given({ by: inches(1 / 8), per: inches(12) }, "job");
    const { rods } = reckoned({ ...components, lean, baseHoles: given(inches(1 / 16), "job") });
    expect(rods[0]?.terms.map(({ name, twice }) => [name, twice])).toEqual([
      ["setting", IN / 2],
      ["template play", IN / 16],
      // ISO 9013:2017, class 1, over 6.3 to 10 mm thick, 315 to 1000 mm long: 0.45 mm; twice its half
      ["cutting", 450_000],
      ["lean", 2 * 1.5 * (1 / 96) * IN],
      ["base-plate hole", IN / 8],
    ]);
  });

  it("cutting: half of the shop's own figure, or the job's", () => {
    const shop = shopFixture({ deviation: { kind: "own", value: inches(1 / 16) } });
    const cutting = (budget: ReckonedBase) => budget.rods[0]?.terms.find(({ name }) => name === "cutting")?.twice;
    expect(cutting(reckoned(components, baseFixture(), { shop }))).toBe(IN / 16);
    expect(cutting(reckoned({ ...components, cutting: given(inches(1 / 32), "job") }))).toBe(IN / 16);
  });

  it("a common part is the same for all rods and never more than the least of them", () => {
    const { rods } = reckoned({ common: 0.5 });
    expect(rods.map(({ terms }) => [terms[0]?.twice, terms[0]?.commonTwice])).toEqual(
      rods.map(() => [0.375 * IN, 0.375 * IN]),
    );
  });

  it.each([
    [
      "no base-plate hole",
      {},
      baseFixture({ groups: [groupFixture({ baseHole: missing("basePlate.hole", "none given") })] }),
      "basePlate.hole",
    ],
    ["no setting", { rods: "components" } as const, baseFixture(), "budget.setting"],
    [
      "a plate over cast rods",
      components,
      baseFixture({ template: { ...baseFixture().template, use: "setting plate over cast rods" } }),
      "cast rods",
    ],
    [
      "plywood without a figure",
      components,
      baseFixture({ template: { ...baseFixture().template, material: "plywood" } }),
      "budget.cutting",
    ],
    [
      "a rod that the edition lacks",
      {},
      baseFixture({ groups: [groupFixture({}, { size: "1-1/8", diameter: inches(1.125) })] }),
      "1-1/8",
    ],
  ])("not checked: %s", (_what, spec, base, why) => {
    const budget = reckon(spec, base);
    expect(budget.kind).toBe("not-checked");
    expect(budget.kind === "not-checked" && budget.why.join("; ")).toContain(why);
  });
});

describe("probability", () => {
  it("is 1 where the worst case holds, and below the worst mark falls no trial", () => {
    for (const hole of [2.0625, 1.75, 1.5]) {
      const { worst, probability, histogram } = reckoned({}, withHole(hole));
      if (worst.free.holds) expect(probability.free).toBe(1);
      expect(histogram.from * histogram.step).toBeGreaterThanOrEqual(worst.free.spare - histogram.step);
      expect(histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(histogram.samples);
    }
  });

  it("agrees with the share of fitted trials, for each freedom and every way to draw", () => {
    for (const plate of ["held", "shifted", "free"] as const)
      for (const zone of ["round", "square"] as const)
        for (const spread of ["uniform", "normal"] as const) {
          const { probability, histogram } = reckoned(
            { plate, zone, spread, sigmas: 1.5, common: 0.3, standardError: 0.02 },
            withHole(1.75),
          );
          const share = histogram.drops / histogram.samples;
          expect(probability.held).toBeLessThanOrEqual(probability.shifted);
          expect(probability.shifted).toBeLessThanOrEqual(probability.free);
          const error = Math.sqrt((share * (1 - share)) / histogram.samples) + probability.standardError;
          expect(Math.abs(share - probability[plate])).toBeLessThanOrEqual(4 * error);
        }
  });

  it("ends at the standard error asked for, and the same job gives the same figures", () => {
    const once = reckoned({ standardError: 0.004 }, withHole(1.75));
    expect(once.probability.standardError).toBeLessThanOrEqual(0.004);
    expect(once.probability.samples).toBeGreaterThan(4000);
    expect(reckoned({ standardError: 0.004 }, withHole(1.75))).toEqual(once);
    expect(reckoned({ standardError: 0.004, seed: 2 }, withHole(1.75)).probability).not.toEqual(once.probability);
  });

  it("names the rod and the term that govern", () => {
    const { governs } = reckoned({ ...components, baseHoles: given(inches(1 / 16), "job") }, withHole(1.5));
    expect(governs).toMatchObject({ subject: "A1-A2", term: "setting" });
    expect(governs.rods.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });
});

describe("the target", () => {
  const target = given(0.95, "job");

  it("is reached by the smallest hole of the steps: one step less does not reach it", () => {
    const answer = reckoned({ target }, withHole(1.5)).target;
    expect(answer?.met).toBe(false);
    const hole = answer?.holes.change[0]?.hole ?? 0;
    expect((hole - 1.5 * IN) % (IN / 16)).toBe(0);
    const share = (nm: number) => reckoned({}, withHole(nm / IN)).probability.free;
    expect(share(hole)).toBeGreaterThanOrEqual(0.95);
    expect(share(hole - IN / 16)).toBeLessThan(0.95);
    expect(answer?.holes.probability).toBeGreaterThanOrEqual(0.95);
  });

  it("is reached by the widest placing of the steps: one step more does not reach it", () => {
    const answer = reckoned({ target }, withHole(1.5)).target;
    const reach = answer?.placing?.change[0]?.reach ?? 0;
    expect((0.375 * IN - reach) % (IN / 32)).toBe(0);
    const share = (nm: number) => reckoned({ placing: given(nanometres(nm), "job") }, withHole(1.5)).probability.free;
    expect(share(reach)).toBeGreaterThanOrEqual(0.95);
    expect(share(reach + IN / 32)).toBeLessThan(0.95);
  });

  it("is not reached by placing where the base plate's own holes are too far off", () => {
    const answer = reckoned({ target, baseHoles: given(inches(0.5), "job") }, withHole(1.375)).target;
    expect(answer?.placing).toBeNull();
  });

  it("that is reached as it is says so, and how far the holes could shrink", () => {
    const answer = reckoned({ target }).target;
    expect(answer?.met).toBe(true);
    expect(answer?.holes.change[0]?.hole).toBeLessThanOrEqual(2.0625 * IN);
    expect(answer?.placing?.change[0]?.reach).toBe(0.375 * IN);
  });

  it("is not answered where the job names none", () => {
    expect(reckoned({}).target).toBeNull();
  });
});

describe("words and order", () => {
  it("worst first, not checked last", () => {
    const bad = { ...reckoned({}, withHole(1.5)), mark: "B2" };
    const good = { ...reckoned({}), mark: "B1" };
    const none = reckon({ rods: "components" });
    expect(worstBudgetsFirst([none, good, bad])).toEqual([bad, good, none]);
  });

  it.each([
    [0, "0 %"],
    [1, "100 %"],
    [0.999_99, "> 99.99 %"],
    [0.000_01, "< 0.01 %"],
    [0.5, "50.00 %"],
    [0.9905, "99.05 %"],
  ])("%d is %s", (share, words) => expect(shareWords(share)).toBe(words));

  it("spare clearance has its sign", () => {
    expect([spareWords(-IN / 16, "in"), spareWords(0, "in"), spareWords(1_234_567, "mm")]).toEqual([
      "-0.063 in",
      "0.000 in",
      "+1.23 mm",
    ]);
  });

  it("a histogram has zero for an edge, and the finest step that looks well", () => {
    const { step, from, counts, drops } = histogramOf([-1, -2, -25, 0, 5, 19, 31], [1, 10, 100]);
    // the fits of -1 is a rod in touch: certified far finer than 1 nm
    expect([step, from, counts, drops]).toEqual([10, -3, [1, 0, 1, 3, 1, 0, 1], 5]);
  });
});

/** The sheet of a budget: bars that hold every trial, marks where they belong, and no text over anything. Invented data. */
import { describe, expect, it } from "vitest";
import type { ReckonedBase } from "../../../src/budget/index.js";
import { reckonBudget } from "../../../src/budget/index.js";
import { drawBudgetSheet } from "../../../src/drawing/budget-sheet.js";
import type { SceneGroup, SceneItem } from "../../../src/drawing/index.js";
import { findTextCollisions } from "../../../src/drawing/index.js";
import type { BudgetSpec } from "../../../src/job/budget-model.js";
import type { Base, Job } from "../../../src/job/model.js";
import { given } from "../../../src/job/model.js";
import { resolveBudget } from "../../../src/job/resolve-budget.js";
import { layoutPattern } from "../../../src/pattern/index.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { wordsOf } from "./scene-walk.js";

interface Case {
  readonly spec?: Partial<BudgetSpec>;
  readonly base?: Base;
  readonly job?: Partial<Job>;
}

const holed = (hole: number): Base => baseFixture({ groups: [groupFixture({ baseHole: given(inches(hole), "job") })] });
const components: Partial<BudgetSpec> = {
  rods: "components",
  setting: given(inches(5 / 16), "job"),
  lean: given({ by: inches(1 / 8), per: inches(12) }, "job"),
  baseHoles: given(inches(1 / 16), "job"),
  common: 0.3,
};

const cases: Readonly<Record<string, Case>> = {
  "as the edition has it": {},
  "holes that are too small": { base: holed(1.625) },
  "a rod larger than its hole": { base: holed(1.2) },
  "every trial alike": { spec: { placing: given(inches(0), "job") } },
  "components and a target": { spec: { ...components, target: given(0.99, "job") }, base: holed(1.625) },
  "held in place, square, normal": {
    spec: { plate: "held", zone: "square", spread: "normal", sigmas: 2 },
    base: holed(1.75),
  },
  "millimetres and long words": {
    spec: { placing: given(millimetres(6), "job"), target: given(0.995, "job") },
    base: baseFixture({
      mark: "W".repeat(60),
      groups: ["A", "B", "C"].map((letter, i) =>
        groupFixture({
          letter,
          pattern: {
            kind: "points",
            at: [
              { x: inches(i), y: inches(9) },
              { x: inches(-i - 1), y: inches(-9) },
            ],
          },
        }),
      ),
    }),
    job: {
      unit: "mm",
      title: "Extension ".repeat(40),
      number: "9".repeat(80),
      owner: "Fabricator ".repeat(20),
      drawnBy: "W".repeat(60),
    },
  },
};

function reckon({ spec = {}, base = baseFixture(), job = {} }: Case): {
  readonly job: Job;
  readonly budget: ReckonedBase;
} {
  const whole = jobFixture({ ...job, budget: { ...resolveBudget(), standardError: 0.02, ...spec } });
  const layout = layoutPattern(base);
  if (!layout.ok) throw new Error("no layout");
  const budget = reckonBudget(whole, base, layout.value);
  if (budget.kind !== "reckoned") throw new Error(budget.why.join("; "));
  return { job: whole, budget };
}

function groupsNamed(items: readonly SceneItem[], name: string): SceneGroup[] {
  return items.flatMap((item) =>
    item.kind === "group" ? [...(item.name === name ? [item] : []), ...groupsNamed(item.items, name)] : [],
  );
}

describe("the sheet of a budget", () => {
  it.each(Object.entries(cases))("%s", (_name, each) => {
    const { job, budget } = reckon(each);
    const scene = drawBudgetSheet({ job, budget, version: "0.1.0" });
    expect(findTextCollisions(scene)).toEqual([]);
    const bars = groupsNamed(scene.items, "bar");
    const all = bars.map(({ data, items }) => ({
      from: Number(data.fromNm),
      count: Number(data.count),
      black: items[0]?.kind === "fill",
    }));
    expect(all.reduce((sum, { count }) => sum + count, 0)).toBe(budget.histogram.samples);
    expect(all.every(({ from, black }) => black === from < 0)).toBe(true);
    const failing = all.filter(({ black }) => black).reduce((sum, { count }) => sum + count, 0);
    expect(budget.histogram.samples - failing).toBe(budget.histogram.drops);
    expect(groupsNamed(scene.items, "mark").map(({ data }) => data.spareNm)).toContain(0);
    const words = wordsOf(scene);
    expect(words).toContain("Engineer to decide");
    expect(words).not.toMatch(/acceptable/i);
  });
});

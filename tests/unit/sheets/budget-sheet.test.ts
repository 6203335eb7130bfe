/** The sheet of a budget: bars that hold every trial, marks where they belong, and no text over anything. Invented data. */
import { describe, expect, it } from "vitest";
import { drawBudgetSheet } from "../../../src/sheets/budget-sheet.js";
import type { SceneGroup, SceneItem } from "../../../src/sheets/index.js";
import { budgetCases, reckonCase } from "./budget-cases.js";
import { collisionsOf } from "./collisions.js";
import { wordsOf } from "./scene-walk.js";

function groupsNamed(items: readonly SceneItem[], name: string): SceneGroup[] {
  return items.flatMap((item) =>
    item.kind === "group" ? [...(item.name === name ? [item] : []), ...groupsNamed(item.items, name)] : [],
  );
}

describe("the sheet of a budget", () => {
  it.each(Object.entries(budgetCases))("%s", (_name, each) => {
    const { job, budget } = reckonCase(each);
    const scene = drawBudgetSheet({ job, budget, version: "0.1.0" });
    expect(collisionsOf(scene)).toEqual([]);
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

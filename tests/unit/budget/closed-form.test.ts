import { describe, expect, it } from "vitest";
import type { BudgetRod, BudgetTerm } from "../../../src/budget/index.js";
import { around, rootSumSquareCase, worstCase } from "../../../src/budget/index.js";
import { nanometres } from "../../../src/units/index.js";

const term = (twice: number, changes: Partial<BudgetTerm> = {}): BudgetTerm => ({
  name: "placing",
  zone: "round",
  twice,
  commonTwice: 0,
  from: "test",
  ...changes,
});

const rod = (tag: string, clearanceTwice: number, ...terms: readonly BudgetTerm[]): BudgetRod => ({
  tag,
  size: "1",
  at: { x: 0, y: 0 },
  diameter: nanometres(100),
  hole: nanometres(100 + clearanceTwice),
  clearanceTwice,
  terms,
});

describe("worst case", () => {
  it.each([
    [19, true],
    [20, true],
    [21, false],
  ])("a free plate, a pair with errors %i against clearances 20", (error, holds) => {
    const { free } = worstCase([rod("A1", 6, term(7)), rod("A2", 14, term(error - 7)), rod("A3", 90, term(7))]);
    expect(free).toMatchObject({ subject: "A1-A2", errorTwice: error, clearanceTwice: 20, holds });
    expect(free.spare).toBe((20 - error) / 4);
  });

  it.each([
    [5, true],
    [6, true],
    [7, false],
  ])("a held plate, an error %i against a clearance 6", (error, holds) => {
    const { held } = worstCase([rod("A1", 90, term(9)), rod("A2", 6, term(error))]);
    expect(held).toMatchObject({ subject: "A2", errorTwice: error, clearanceTwice: 6, holds, spare: (6 - error) / 2 });
  });

  it("a common error drops out of a free plate and counts for a held one", () => {
    const shifted = { commonTwice: 5 };
    const { held, free } = worstCase([rod("A1", 10, term(4, shifted)), rod("A2", 10, term(4, shifted))]);
    expect(free.errorTwice).toBe(8);
    expect(held.errorTwice).toBe(9);
  });

  it("one rod alone: a free plate always drops on, with its whole clearance to spare", () => {
    expect(worstCase([rod("A1", 6, term(50))]).free).toMatchObject({ holds: true, spare: 3, subject: "A1" });
  });

  it("no hole has more to spare than its own clearance", () => {
    expect(worstCase([rod("A1", 2, term(0)), rod("A2", 90, term(1))]).free).toMatchObject({ subject: "A1", spare: 1 });
  });

  it("a square zone is taken by the circle around it, rounded up", () => {
    expect(around({ zone: "square" }, 1000)).toBe(1415);
    expect(around({ zone: "round" }, 1000)).toBe(1000);
    expect(worstCase([rod("A1", 1415, term(1000, { zone: "square" }))]).held.holds).toBe(true);
    expect(worstCase([rod("A1", 1414, term(1000, { zone: "square" }))]).held.holds).toBe(false);
  });
});

describe("root sum square", () => {
  it("of a rod's terms, and of both rods of a pair: 3-4-5 and 5-12-13", () => {
    const { held, free } = rootSumSquareCase([rod("A1", 20, term(3), term(4)), rod("A2", 20, term(12), term(0))]);
    expect(held).toMatchObject({ subject: "A2", errorTwice: 12 });
    expect(free.errorTwice).toBe(13);
  });

  it("never asks for more than the worst case", () => {
    const rods = [rod("A1", 30, term(3), term(9)), rod("A2", 30, term(5), term(2))];
    expect(rootSumSquareCase(rods).free.errorTwice).toBeLessThan(worstCase(rods).free.errorTwice);
  });
});

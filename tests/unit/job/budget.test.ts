import { describe, expect, it } from "vitest";
import { resolveBudget } from "../../../src/job/resolve/budget.js";
import { faultsOf, jobOf, withBases } from "./files.js";

const base =
  "  - { mark: B1, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 10, y: 10 }, template: { thickness: 1/4 } }";
const withBudget = (budget: string): string => `${withBases(base)}budget: ${budget}\n`;
const budgetOf = (budget: string) => jobOf(withBudget(budget)).budget;

describe("the budget of a job", () => {
  it("has its defaults where the job says nothing", () => {
    expect(jobOf(withBases(base)).budget).toEqual(resolveBudget());
    expect(resolveBudget()).toMatchObject({
      rods: "edition",
      zone: "round",
      spread: "uniform",
      sigmas: 3,
      common: 0,
      plate: "free",
      maxTurn: 0.05,
      seed: 1,
      standardError: 0.002,
    });
  });

  it("is read with units, shares and angles as they are written", () => {
    const budget = budgetOf(
      "{ rods: components, setting: 3 mm, cutting: 1/32, lean: { by: 1/8, per: 12 }, common: 25 %, turn: 1, target: 99.5 %, seed: 7, standardError: 0.005, sigmas: 2.5 }",
    );
    expect(budget).toMatchObject({
      rods: "components",
      setting: { kind: "given", value: 3_000_000 },
      cutting: { value: 793_750 },
      lean: { value: { by: 3_175_000, per: 304_800_000 } },
      common: 0.25,
      target: { value: 0.995 },
      seed: 7,
      standardError: 0.005,
      sigmas: 2.5,
    });
    expect(budget.maxTurn).toBeCloseTo(Math.PI / 180, 15);
    expect(budgetOf("{ target: 0.9 }").target).toMatchObject({ value: 0.9 });
  });

  it.each([
    ["{ setting: 1/4 }", /budget\.setting: .*never added to it.*rods: components/],
    ["{ rods: edition, lean: { by: 1, per: 12 } }", /budget\.lean: .*never added/],
    ["{ rods: components, setting: 1/4, placing: 1/4 }", /budget\.placing: .*beside components/],
    ["{ target: 100 % }", /budget\.target: .*between 0 and 1/],
    ["{ target: 0 }", /budget\.target/],
    ["{ common: 1.2 }", /budget\.common: .*from 0 to 1/],
    ["{ standardError: 0.00001 }", /budget\.standardError: .*0\.0002 to 0\.1/],
    ["{ sigmas: 0 }", /budget\.sigmas/],
    ["{ turn: 11 }", /budget\.turn: .*0 to 10/],
    ["{ seed: -1 }", /budget\.seed/],
    ["{ zone: oval }", /budget\.zone: .*round, square/],
    ["{ placing: -1/4 }", /budget\.placing/],
    ["{ lean: { by: 1, per: 0 }, rods: components }", /budget\.lean\.per/],
    ["{ settings: 1 }", /budget\.settings: unknown key.*did you mean setting/],
  ])("refuses %s", (budget, message) => {
    expect(faultsOf(withBudget(budget)).join("\n")).toMatch(message);
  });
});

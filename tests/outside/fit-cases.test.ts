/**
 * 120 reference cases of the minimax fit with optima certified by weak duality, computed beforehand by a program of its own
 * (millimetres, radians): 20 by hand, many with a closed form, the others drawn at random. Source: reference set of this project.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { FitHole, FitRod } from "../../src/fit/index.js";
import { certifyFit, turnRange } from "../../src/fit/index.js";

interface Case {
  readonly id: string;
  readonly description: string;
  readonly maxTurn: number;
  readonly holes: readonly (readonly [number, number, number])[];
  readonly rods: readonly (readonly [number, number])[];
  readonly value: number;
  readonly theta: number;
  readonly active: readonly number[];
  readonly lowerBound: number;
  readonly thetaInterval: readonly [number, number];
  readonly motionUnique: boolean;
  readonly closedForm: number | null;
}

const cases: readonly Case[] = JSON.parse(readFileSync(new URL("fit-cases.json", import.meta.url), "utf8"));
const WITHIN = 1e-6;
/** Two rods swapped in the list of a mirror-symmetric pattern: both bounds of the angle are optimal. */
const TWO_OPTIMA = "H19";

const holesOf = ({ holes }: Case): FitHole[] => holes.map(([x, y, clearance]) => ({ x, y, clearance }));
const rodsOf = ({ rods }: Case): FitRod[] => rods.map(([x, y]) => ({ x, y }));
const fitOf = (each: Case) => certifyFit(holesOf(each), rodsOf(each), { maxTurn: each.maxTurn });

/** The largest residual of a motion, by its definition. */
function largestResidual(each: Case, { theta, tx, ty }: { theta: number; tx: number; ty: number }): number {
  const [cos, sin] = [Math.cos(theta), Math.sin(theta)];
  const residuals = each.holes.map(([x, y, clearance], i) => {
    const [rx, ry] = each.rods[i] ?? [Number.NaN, Number.NaN];
    return Math.hypot(cos * x - sin * y + tx - rx, sin * x + cos * y + ty - ry) - clearance;
  });
  return Math.max(...residuals);
}

describe("certified reference cases of the fit", () => {
  it("are all here", () => {
    expect(cases.length).toBe(120);
    expect(cases.filter(({ closedForm }) => closedForm !== null).length).toBeGreaterThan(10);
  });

  it.each(cases.map((each) => [each.id, each] as const))("%s", (_id, each) => {
    const fit = fitOf(each);
    expect(Math.abs(fit.value - each.value)).toBeLessThanOrEqual(WITHIN);
    if (each.closedForm !== null) expect(Math.abs(fit.value - each.closedForm)).toBeLessThanOrEqual(WITHIN);
    expect(largestResidual(each, fit)).toBeLessThanOrEqual(each.value + WITHIN);
    expect(Math.abs(fit.theta)).toBeLessThanOrEqual(each.maxTurn);
    expect(fit.active).toEqual(each.active);
    expect(fit.lowerBound).toBeLessThanOrEqual(each.value + 1e-9);
    expect(fit.value - fit.lowerBound).toBeLessThanOrEqual(1e-8);
  });

  it.each(
    cases.filter(({ motionUnique, id }) => motionUnique && id !== TWO_OPTIMA).map((each) => [each.id, each] as const),
  )("%s: the angle", (_id, each) => {
    const fit = fitOf(each);
    const [from, to] = each.thetaInterval;
    expect(fit.theta).toBeGreaterThanOrEqual(from);
    expect(fit.theta).toBeLessThanOrEqual(to);
    const range = turnRange(holesOf(each), rodsOf(each), fit, WITHIN, { maxTurn: each.maxTurn });
    expect(Math.abs(range.from - from)).toBeLessThanOrEqual(1e-3 * (to - from));
    expect(Math.abs(range.to - to)).toBeLessThanOrEqual(1e-3 * (to - from));
  });

  it("has two optimal angles where a mirror-symmetric pattern has two rods swapped", () => {
    const swapped = cases.find(({ id }) => id === TWO_OPTIMA);
    expect(swapped && Math.abs(fitOf(swapped).theta)).toBe(swapped?.maxTurn);
  });
});

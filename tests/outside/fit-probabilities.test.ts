/**
 * 12 reference probabilities that a plate drops on, simulated beforehand by a program of its own with a million samples each
 * (millimetres, radians), some with an exact closed form. Source: reference set of this project. Two simulations agree when
 * they differ by at most four combined standard errors.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { FitProbability, PositionError } from "../../src/fit/index.js";
import { fitProbability } from "../../src/fit/index.js";
import { SEED } from "../seed.js";

interface Case {
  readonly id: string;
  readonly holes: readonly (readonly [number, number, number])[];
  readonly rodError: PositionError;
  readonly holeError: PositionError | null;
  readonly maxTurn: number;
  readonly samples: number;
  readonly fixed: number;
  readonly shifted: number;
  readonly free: number;
  readonly fixedExact: number | null;
  readonly freeExact: number | null;
  readonly worstCaseTmax: number;
  readonly alwaysFits: boolean;
}

const cases: readonly Case[] = JSON.parse(readFileSync(new URL("fit-probabilities.json", import.meta.url), "utf8"));
const SAMPLES = 40_000;

function simulate({ holes, rodError, holeError, maxTurn }: Case): FitProbability {
  return fitProbability({
    holes: holes.map(([x, y, clearance]) => ({ x, y, clearance })),
    rodError,
    holeError: holeError ?? undefined,
    maxTurn,
    samples: SAMPLES,
    seed: SEED,
  });
}

const variance = (share: number, samples: number): number => (share * (1 - share)) / samples;

function expectAgreement(share: number, expected: number, samples: number): void {
  const error = Math.sqrt(variance(share, SAMPLES) + variance(expected, samples));
  expect(Math.abs(share - expected)).toBeLessThanOrEqual(4 * error);
}

describe("reference probabilities", () => {
  it("are all here", () => {
    expect(cases.length).toBe(12);
    expect(cases.filter(({ fixedExact, freeExact }) => fixedExact !== null || freeExact !== null).length).toBe(11);
  });

  it.each(cases.map((each) => [each.id, each] as const))("%s", { timeout: 60_000 }, (_id, each) => {
    const { fixed, shifted, free, standardError } = simulate(each);
    expectAgreement(fixed, each.fixed, each.samples);
    expectAgreement(shifted, each.shifted, each.samples);
    expectAgreement(free, each.free, each.samples);
    if (each.fixedExact !== null) expectAgreement(fixed, each.fixedExact, Number.POSITIVE_INFINITY);
    if (each.freeExact !== null) expectAgreement(free, each.freeExact, Number.POSITIVE_INFINITY);
    if (each.alwaysFits) expect(free).toBe(1);
    expect(standardError).toBeCloseTo(Math.sqrt(variance(free, SAMPLES)), 12);
  });
});

/** Surveys for any input: own setting-out files, rigid motions, bigger holes, and a search that shares nothing with the fit. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { surveyUnitName } from "../../src/formats/survey-unit-name.js";
import { given } from "../../src/job/model/job.js";
import type { PlanSpec } from "../../src/job/model/plan.js";
import { readPoints } from "../../src/readers/points.js";
import type { GroupSurvey } from "../../src/survey/index.js";
import { surveyJob } from "../../src/survey/index.js";
import { SURVEY_UNITS } from "../../src/units/index.js";
import { inches, nanometres } from "../../src/units/length.js";
import { baseFixture, groupFixture } from "../fixture.js";
import { placementAt, settingOutTexts } from "../setting-out-plan.js";
import { mm, surveyCase, surveyOf, TERMS } from "../survey-case.js";

const RUNS = { numRuns: 60 } as const;
const one = surveyCase({ placements: [placementAt(["A", "1"], { turn: 30 })] });

/** Errors of four rods, in inches. */
const errors = fc.array(
  fc.tuple(fc.double({ min: -0.7, max: 0.7, noNaN: true }), fc.double({ min: -0.7, max: 0.7, noNaN: true })),
  {
    minLength: 4,
    maxLength: 4,
  },
);

const built = (
  from: typeof one,
  off: readonly (readonly [number, number])[],
  move = (x: number, y: number) => [x, y] as const,
) =>
  from.points.map((point, i) => {
    const [east, north] = off[i] ?? [0, 0];
    const [x, y] = move(point.easting / 1e6 + east * 25.4, point.northing / 1e6 + north * 25.4);
    return { ...point, easting: mm(x), northing: mm(y) };
  });

const first = (groups: readonly GroupSurvey[]): GroupSurvey => {
  const [group] = groups;
  if (group === undefined) throw new Error("no group");
  return group;
};

describe("a file of setting-out, given back as it is", () => {
  const site: Partial<PlanSpec> = {
    placements: [placementAt(["A", "1"]), placementAt(["B", "1"], { turn: 17 }), placementAt(["C", "2"], { turn: 90 })],
    transform: { kind: "origin", northing: nanometres(5.5e12), easting: nanometres(4e12), bearing: 12.5 },
    scaleFactor: given(0.99987, "job"),
  };
  const cases = SURVEY_UNITS.flatMap((unit) =>
    (["PNEZD", "PENZD"] as const).flatMap((order) =>
      (["local", "site"] as const).flatMap((system) =>
        [true, false].map((headed) => ({ unit, order, system, headed })),
      ),
    ),
  );

  it.each(cases)(
    "fits with the clearance to spare and without errors: $system $order $unit, heading $headed",
    ({ unit, order, system, headed }) => {
      const planned = surveyCase({ ...site, settingOut: { order, unit } });
      const texts = settingOutTexts(planned.plan, system);
      const name = `24-118_rev-B_${system}_${order}_${surveyUnitName(unit)}.csv`;
      const points = readPoints(headed ? texts.headed : texts.bare, name, { unit: null, order: null, jobOrder: null });
      if (!points.ok) throw new Error(points.findings.map(({ message }) => message).join("; "));
      const survey = surveyJob(planned.job, planned.aim, points.value, TERMS);
      if (!survey.ok) throw new Error(survey.findings.map(({ message }) => message).join("; "));
      // The file's last place is 0.1 mm in metres and millimetres, 0.03 mm in feet: half of it either way.
      const step = 0.0708e6;
      expect([survey.value.system, survey.value.unmatched, survey.value.groups.length]).toEqual([system, [], 3]);
      for (const { verdict, best, rods } of survey.value.groups) {
        expect(verdict).toBe("fits");
        expect(Math.abs((best?.spare ?? 0) - inches(0.40625))).toBeLessThan(step);
        for (const { radial, dz } of rods) {
          expect(radial).toBeLessThan(step);
          expect(Math.abs(dz ?? 1e9)).toBeLessThan(step);
        }
      }
    },
  );
});

describe("motions and holes", () => {
  it("a rigid motion of all points of a group changes shift and turn, and not its spare", () => {
    fc.assert(
      fc.property(
        errors,
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: -9, max: 9, noNaN: true }),
        (off, shift, turn) => {
          const angle = (turn * Math.PI) / 180;
          const move = (x: number, y: number) =>
            [
              Math.cos(angle) * x - Math.sin(angle) * y + shift,
              Math.sin(angle) * x + Math.cos(angle) * y - shift,
            ] as const;
          const still = first(surveyOf(one, built(one, off)).groups);
          const away = first(surveyOf(one, built(one, off, move)).groups);
          expect(Math.abs((away.best?.spare ?? 0) - (still.best?.spare ?? 0))).toBeLessThanOrEqual(5);
          expect((away.fit.turn ?? 0) - (still.fit.turn ?? 0)).toBeCloseTo(turn, 5);
        },
      ),
      RUNS,
    );
  });

  it("a plate never gets worse with bigger holes", () => {
    fc.assert(
      fc.property(errors, fc.integer({ min: 1, max: 12 }), (off, sixteenths) => {
        const group = groupFixture({ baseHole: given(inches(2.0625 + sixteenths / 16), "test") });
        const bigger = surveyCase({ placements: [placementAt(["A", "1"], { turn: 30 })] }, [
          baseFixture({ groups: [group] }),
        ]);
        const before = first(surveyOf(one, built(one, off)).groups).best?.spare ?? 0;
        const after = first(surveyOf(bigger, built(one, off)).groups).best?.spare ?? 0;
        expect(Math.abs(after - before - inches(sixteenths / 32))).toBeLessThanOrEqual(2);
      }),
      RUNS,
    );
  });

  it("every remedy lets it drop on: the fit with that hole says so, a step less does not", () => {
    fc.assert(
      fc.property(errors, (off) => {
        const group = first(surveyOf(one, built(one, off)).groups);
        fc.pre((group.best?.spare ?? 0) < 0);
        expect(group.remedies.length).toBeGreaterThan(0);
        for (const { spare, kind } of group.remedies) {
          expect(spare).toBeGreaterThanOrEqual(0);
          if (kind === "all holes") expect(spare).toBeLessThan(inches(1 / 32));
        }
      }),
      RUNS,
    );
  });
});

/** Least value over a grid of turns and shifts, ever finer around the best: shares nothing with the fit but the formula. */
function searched(group: GroupSurvey): number {
  const holes = group.rods.map(({ placed, at, clearanceTwice }) => ({
    hole: placed.center,
    rod: at,
    clearance: (clearanceTwice ?? 0) / 2e6,
  }));
  const value = (turn: number, x: number, y: number): number => {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return Math.max(
      ...holes.map(
        ({ hole, rod, clearance }) =>
          Math.hypot(cos * hole.x - sin * hole.y + x - rod.x, sin * hole.x + cos * hole.y + y - rod.y) - clearance,
      ),
    );
  };
  let best = { turn: 0, x: 0, y: 0, value: value(0, 0, 0) };
  const steps = Array.from({ length: 13 }, (_, i) => i / 6 - 1);
  for (let [turnReach, reach] = [0.2, 24]; reach > 1e-4; turnReach *= 0.6, reach *= 0.6) {
    const { turn, x, y } = best;
    for (const i of steps)
      for (const j of steps)
        for (const k of steps) {
          const at = { turn: turn + i * turnReach, x: x + j * reach, y: y + k * reach };
          const found = value(at.turn, at.x, at.y);
          if (found < best.value) best = { ...at, value: found };
        }
  }
  return best.value;
}

describe("the verdict against a grid search", () => {
  it("drops on if and only if the search finds a position", () => {
    fc.assert(
      fc.property(errors, (off) => {
        const group = first(surveyOf(one, built(one, off)).groups);
        const spare = (group.best?.spare ?? 0) / 1e6;
        const found = -searched(group);
        expect(found).toBeLessThanOrEqual(spare + 1e-6);
        expect(found).toBeGreaterThan(spare - 0.02);
        if (Math.abs(spare) > 0.02) expect(spare >= 0).toBe(found >= 0);
      }),
      { numRuns: 12 },
    );
  });
});

/** One group: verdicts at their limits, both answers, the placing edition, remedies with their checks. */
import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/model.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { GroupSurvey } from "../../../src/survey/index.js";
import { lonePlan } from "../../../src/survey/index.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { placementAt } from "../../setting-out-plan.js";
import { moved, surveyCase, surveyOf } from "../../survey-case.js";

const one = surveyCase({ placements: [placementAt(["A", "1"])] });
/** A1 pushed to the left, the others where they should be: the plate wants half of it beyond 2 clearances of 13/32. */
const pushed = (by: number) => one.points.map((point, i) => (i === 0 ? moved(point, -by, 0) : point));
const groupOf = (...args: Parameters<typeof surveyOf>): GroupSurvey => {
  const [group] = surveyOf(...args).groups;
  if (group === undefined) throw new Error("no group");
  return group;
};
const statuses = (rows: readonly CheckRow[], rule: string) =>
  rows.filter((row) => row.rule === rule).map(({ status }) => status);

/** Two rods in x alone: spare = clearance - (spread error)/2, by hand. */
const pair = surveyCase({ placements: [placementAt(["A", "1"])] }, [
  baseFixture({
    member: "post",
    groups: [
      groupFixture({
        pattern: {
          kind: "points",
          at: [
            { x: inches(-6), y: nanometres(0) },
            { x: inches(6), y: nanometres(0) },
          ],
        },
      }),
    ],
  }),
]);
const spread = (by: number) => pair.points.map((point, i) => moved(point, i === 0 ? -by / 2 : by / 2, 0));

describe("does it drop on", () => {
  it("two rods apart by e: the spare is the clearance less e/2", () => {
    for (const by of [0, 0.25, 0.5, 0.8125, 1]) {
      expect(groupOf(pair, spread(by)).best?.spare).toBeCloseTo(inches(0.40625 - by / 2), -1);
    }
  });

  it.each([
    [0.8125, "fits"],
    [0.8125 + 2e-6, "does not fit"],
  ] as const)("a limit met exactly fits: spread %s", (by, verdict) => {
    const unknown = { accuracy: missing("survey.accuracy", "not stated") };
    expect(groupOf(pair, spread(by), unknown).verdict).toBe(verdict);
  });

  it.each([
    [0.125, 0.5625, "within measuring uncertainty"],
    [0.125, 0.5624, "fits"],
    [0.125, 1.0625, "within measuring uncertainty"],
    [0.125, 1.0627, "does not fit"],
  ] as const)("accuracy %s, spread %s: %s", (accuracy, by, verdict) => {
    expect(groupOf(pair, spread(by), { accuracy: given(inches(accuracy), "test") }).verdict).toBe(verdict);
  });

  it("without an accuracy the points are taken as they are, and it says so", () => {
    const unknown = { accuracy: missing("survey.accuracy", "not stated") };
    const group = groupOf(pair, spread(0.8), unknown);
    expect([group.verdict, group.why[0]]).toEqual(["fits", expect.stringContaining("not known")]);
  });

  it("a rod without a point leaves it not checked, unless those that are known decide", () => {
    const { verdict, missing: absent } = groupOf(one, one.points.slice(1));
    expect([verdict, absent]).toEqual(["not-checked", ["A1"]]);
    expect(groupOf(one, pushed(2).slice(0, 3)).verdict).toBe("does not fit");
  });

  it("a hole that is not given leaves it not checked, with the key that would give it", () => {
    const group = groupFixture({ baseHole: missing("basePlate.hole", "no hole") });
    const blind = surveyCase({ placements: [placementAt(["A", "1"])] }, [baseFixture({ groups: [group] })]);
    const { verdict, best, why } = groupOf(blind, blind.points);
    expect([verdict, best]).toEqual(["not-checked", null]);
    expect(why.join()).toContain("basePlate.hole");
  });
});

describe("how it stands is another answer", () => {
  const tolerance = { line: given(inches(0.25), "test"), turn: given(0.5, "test") };

  it("a group off its line as a whole drops on, and stands off its line", () => {
    const group = groupOf(
      one,
      one.points.map((point) => moved(point, 0.3, 0)),
      tolerance,
    );
    expect([group.verdict, group.best?.spare]).toEqual(["fits", inches(0.40625)]);
    expect(group.fit).toMatchObject({ x: inches(0.3), y: 0 });
    expect(statuses(group.rows, "stands-on-line")).toEqual(["fail", "pass"]);
    expect(statuses(group.rows, "stands-unturned")).toEqual(["pass"]);
    expect(group.spareOnLine).toBe(inches(0.40625 - 0.3));
  });

  it.each([
    [0.25, "pass"],
    [0.25 + 4e-8, "fail"],
  ])("the limit met exactly passes: %s", (by, status) => {
    expect(
      statuses(
        groupOf(
          one,
          one.points.map((point) => moved(point, by, 0)),
          tolerance,
        ).rows,
        "stands-on-line",
      )[0],
    ).toBe(status);
  });

  it("without a tolerance it is not checked", () => {
    expect(statuses(groupOf(one, one.points).rows, "stands-on-line")).toEqual(["not-checked", "not-checked"]);
  });

  it("shift in the base's own axes: a base turned by 90 degrees, moved plan east, moves to its own -y", () => {
    const turned = surveyCase({ placements: [placementAt(["A", "1"], { turn: 90 })] });
    expect(
      groupOf(
        turned,
        turned.points.map((point) => moved(point, 0.5, 0)),
      ).fit,
    ).toMatchObject({ x: 0, y: -inches(0.5) });
  });
});

describe("the placing edition", () => {
  it.each([
    [0.375, "pass"],
    [0.375 + 4e-8, "fail"],
  ])("ACI 117-10 2.3.4.2, rod 1-1/4: 3/8 in; off by %s", (by, status) => {
    expect(statuses(groupOf(one, pushed(by)).rows, "placed-rod")[0]).toBe(status);
  });

  it.each([
    [0.125, "pass"],
    [0.125 + 4e-8, "fail"],
  ])("AISC 303-10 7.5.1(a): 1/8 in between any two rods of a group; apart by %s", (by, status) => {
    const job = { ...pair.job, editions: { ...pair.job.editions, placing: "AISC 303-10" as const } };
    expect(statuses(groupOf({ ...pair, job }, spread(by)).rows, "placed-spacing")).toEqual([status]);
  });

  it("tops of rods by 1/2 in, only where tops were taken", () => {
    const high = one.points.map((point, i) => ({
      ...point,
      elevation: nanometres((point.elevation ?? 0) + inches(i === 0 ? 0.51 : 0.5)),
    }));
    const group = groupOf(one, high);
    expect(statuses(group.rows, "placed-elevation")).toEqual(["fail", "pass", "pass", "pass"]);
    expect(group.rods[1]).toMatchObject({ dz: inches(0.5), projection: inches(9.5) });
    const low = groupOf(one, high, { height: given({ kind: "above concrete", value: inches(2) }, "test") });
    expect(statuses(low.rows, "placed-elevation")).toEqual(Array(4).fill("not-checked"));
    expect(low.rods[1]?.projection).toBeNull();
  });

  it("AISC 303-10: group to column line, adjacent groups, a column line in all", () => {
    const two = surveyCase();
    const job = { ...two.job, editions: { ...two.job.editions, placing: "AISC 303-10" as const } };
    const points = two.points.map((point, i) => (i < 4 ? point : moved(point, 0.26, 0)));
    const { rows } = surveyOf({ ...two, job }, points);
    const fails = rows.filter(({ status }) => status === "fail").map(({ rule, subject }) => [rule, subject]);
    // 7.5.1(e) 1/4 in; (b) 1/4 in; (d) 1/4 in for each 100 ft, here 30 ft.
    expect(fails).toEqual([
      ["group-position", "B1 B-1 to line B"],
      ["group-spacing", "B1 A-1 - B1 B-1"],
      ["line-accumulation", "line 1"],
    ]);
  });

  it("lean is not checked without a second point", () => {
    expect(statuses(groupOf(one, one.points).rows, "placed-lean")).toEqual(Array(4).fill("not-checked"));
  });
});

describe("what would let it drop on", () => {
  const group = groupOf(pair, spread(1));

  it("by hand: 1 in apart wants (1 - 13/16)/2 = 3/32 a hole: one hole 3/16 larger, or both 3/32, in sixteenths 1/8", () => {
    const holes = group.remedies.map(({ kind, tags, hole, slot }) => [
      kind,
      tags.join(" "),
      hole,
      slot?.length ?? null,
    ]);
    const slot = [inches(2.0625), inches(2.0625 + 0.1875)];
    expect(holes).toEqual([
      ["hole", "A1", inches(2.0625 + 0.375 / 2 + 0.1875), null],
      ["slot", "A1", ...slot],
      ["hole", "A2", inches(2.0625 + 0.375 / 2 + 0.1875), null],
      ["slot", "A2", ...slot],
      ["all holes", "A1 A2", inches(2.0625 + 0.1875), null],
    ]);
    expect(group.remedies[1]?.slot?.direction).toBeCloseTo(180, 6);
    expect(group.remedies.every(({ spare }) => spare >= 0)).toBe(true);
  });

  it("each has the base plate's checks again: washer 3 covers 2 x 2-1/4 - 1-1/4 = 3-1/4 no longer", () => {
    const rows = group.remedies.at(-1)?.rows ?? [];
    expect(rows.map(({ rule, subject }) => `${rule} ${subject}`)).toEqual([
      "washer-cover A1",
      "washer-cover A2",
      "washer-on-plate A1",
      "washer-on-plate A2",
      "base-plate-edge A1",
      "base-plate-edge A2",
    ]);
    expect(rows[0]).toMatchObject({
      status: "fail",
      value: { twice: 2 * inches(3) },
      limit: { twice: 2 * inches(3.25) },
    });
  });

  it("none where it drops on", () => {
    expect(groupOf(one, one.points).remedies).toEqual([]);
  });
});

describe("a job without a grid", () => {
  it("of one base: it stands at 0,0 unturned", () => {
    const base = baseFixture({ quantity: 1 });
    const plan = lonePlan(jobFixture({ bases: [base] }), [{ base, rods: one.aim.plan.bases[0]?.ownRods ?? [] }]);
    expect(plan.findings).toEqual([]);
    expect(plan.ok && plan.value.bases.map(({ name, workingPoint }) => [name, workingPoint])).toEqual([
      ["B1 x0-y0", { x: 0, y: 0 }],
    ]);
  });

  it("of several: a clear fault", () => {
    const plan = lonePlan(jobFixture({ bases: [baseFixture({ quantity: 6 })] }), []);
    expect(plan.ok).toBe(false);
    expect(plan.findings[0]?.message).toContain("the job has no grid, and 6 bases");
  });
});

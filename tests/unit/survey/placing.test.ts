/** Both verdicts of a survey: whether the plate drops on, and whether rods and column are in place. */
import { describe, expect, it } from "vitest";
import { given } from "../../../src/job/model/job.js";
import {
  isNotable,
  isOutside,
  placingWords,
  surveyRules,
  surveyTotals,
  totalsWords,
} from "../../../src/survey/index.js";
import { concernOf } from "../../../src/survey/rules.js";
import { inches, nanometres } from "../../../src/units/length.js";
import { placementAt } from "../../setting-out-plan.js";
import { moved, surveyCase, surveyOf } from "../../survey-case.js";

const one = surveyCase({ placements: [placementAt(["A", "1"])] });
const two = surveyCase();
type Points = typeof one.points;
const shifted = (points: Points, by: number): Points => points.map((point) => moved(point, by, 0));
/** The first rod moved by so many inches east. */
const pushed = (by: number): Points => one.points.map((point, i) => (i === 0 ? moved(point, by, 0) : point));
const NM = 1 / 25_400_000;

describe("the placing of a group", () => {
  // ACI 117-10, 2.3.4.2: 3/8 in for rods of 1-1/4 in, as the reference table of the standards holds it.
  it.each([
    [0.375 - NM, "within", []],
    [0.375, "within", []],
    [0.375 + NM, "outside", ["A1"]],
    [-0.375 - NM, "outside", ["A1"]],
  ])("one rod %d in off: %s, though the plate drops on", (by, verdict, rods) => {
    const survey = surveyOf(one, pushed(by));
    const [group] = survey.groups;
    expect([group?.verdict, group?.placing.verdict, group?.placing.rods]).toEqual(["fits", verdict, rods]);
    expect(isOutside(surveyTotals(survey))).toBe(verdict === "outside");
    expect(group !== undefined && isNotable(group)).toBe(verdict === "outside");
  });

  it("all four rods off as a whole: the plate drops on and five figures are outside", () => {
    const survey = surveyOf(one, shifted(one.points, 0.4), { line: given(inches(0.25), "test") });
    const totals = surveyTotals(survey);
    expect(totals).toMatchObject({ drop: 1, fail: 0, rodsOutside: 4, columnsOffLine: 1, onlyOffLine: 0 });
    expect(totalsWords(totals, "ACI 117-10")).toBe(
      "4 rods outside ACI 117-10; 1 column does not stand on line; 1 drops on",
    );
    const [group] = survey.groups;
    expect(group === undefined ? "" : placingWords(group.placing)).toBe("FAIL A1 A2 A3 A4, off line");
  });

  it("a plate that drops on, but not while it stands on line, is told so", () => {
    const totals = surveyTotals(surveyOf(one, shifted(one.points, 0.5)));
    expect([totals.drop, totals.onlyOffLine]).toEqual([1, 1]);
    expect(totalsWords(totals, "X")).toBe("4 rods outside X; 1 drops on; 1 of them only off its line");
  });

  it("the top of a rod outside its tolerance is a rod outside, counted once with its place", () => {
    const high = pushed(0.5).map((point, i) =>
      i === 0 ? { ...point, elevation: nanometres((point.elevation ?? 0) + inches(0.75)) } : point,
    );
    const [group] = surveyOf(one, high).groups;
    expect(group?.placing.rods).toEqual(["A1"]);
    expect(group?.rows.filter(({ status }) => status === "fail").map(({ rule }) => rule)).toEqual([
      "placed-rod",
      "placed-elevation",
    ]);
  });

  it("of an edition that limits spacings names both rods of the pair", () => {
    const job = { ...one.job, editions: { ...one.job.editions, placing: "AISC 303-10" as const } };
    const survey = surveyOf({ ...one, job }, pushed(-0.2));
    expect(survey.groups[0]?.placing.rods).toContain("A1");
    expect(survey.groups[0]?.placing.rods.length).toBeGreaterThan(1);
  });

  it("a missing rod leaves it not checked; a rod outside decides all the same", () => {
    const [part, off] = [surveyOf(one, one.points.slice(1)), surveyOf(one, pushed(0.5).slice(0, 3))];
    expect([part.groups[0]?.placing.verdict, off.groups[0]?.placing.verdict]).toEqual(["not-checked", "outside"]);
    expect([isOutside(surveyTotals(part)), isOutside(surveyTotals(off))]).toEqual([false, true]);
    expect(totalsWords(surveyTotals(part), "X")).toBe("1 not checked; 0 drop on; 1 group whose placing is not checked");
  });

  it("a group whose placing is outside comes before one that merely fits", () => {
    const points = two.points.map((point) => (point.name === "B-1_A1" ? moved(point, 0.5, 0) : point));
    expect(surveyOf(two, points).groups.map(({ at }) => at)).toEqual(["B-1", "A-1"]);
  });

  it("everything in place says so in one line", () => {
    const totals = surveyTotals(surveyOf(two, two.points));
    expect([isOutside(totals), totalsWords(totals, "ACI 117-10")]).toEqual([
      false,
      "2 drop on; no rod outside ACI 117-10",
    ]);
  });

  it("a working point off its column line counts its column, and neighbours their distance (AISC 303-10, 7.5.1)", () => {
    const job = { ...two.job, editions: { ...two.job.editions, placing: "AISC 303-10" as const } };
    const points = two.points.map((point) => (point.name.startsWith("B-1") ? moved(point, 0.3, 0) : point));
    const totals = surveyTotals(surveyOf({ ...two, job }, points));
    expect(totals).toMatchObject({ drop: 2, rodsOutside: 0, columnsOffLine: 1 });
    expect(totals.groupsOutside).toBeGreaterThan(0);
    expect(isOutside(totals)).toBe(true);
  });
});

describe("the rules of a survey", () => {
  it("are those of its rows, each with a title", () => {
    const ids = surveyRules.map(({ id }) => id);
    const survey = surveyOf(two, two.points);
    const used = [...survey.groups.flatMap(({ rows }) => rows), ...survey.rows].map(({ rule }) => rule);
    expect(used.filter((rule) => !ids.some((id) => id === rule))).toEqual([]);
    expect(surveyRules.filter(({ title }) => title.length < 20)).toEqual([]);
    expect(() => concernOf("hole-web")).toThrow(RangeError);
  });
});

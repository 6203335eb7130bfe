/** The report to the engineer: which rods, which way by the compass, what was reckoned, and that nothing is ever called acceptable. */
import { describe, expect, it } from "vitest";
import { writeSurveyReportText } from "../../../src/formats/survey-report-text.js";
import { given } from "../../../src/job/model/job.js";
import type { SurveyedPoint } from "../../../src/readers/points-model.js";
import { findCollisions } from "../../../src/sheets/index.js";
import { drawSurveyReport } from "../../../src/sheets/survey-report.js";
import { surveyReport } from "../../../src/survey/index.js";
import { inches, millimetres } from "../../../src/units/length.js";
import { placementAt } from "../../setting-out-plan.js";
import { type Case, moved, surveyCase, surveyOf } from "../../survey-case.js";
import { wordsOf } from "../sheets/scene-walk.js";

const one = surveyCase({ placements: [placementAt(["A", "1"]), placementAt(["B", "1"], { turn: 90 })] });

/** One rod moved by so much east and north, in inches. */
const pushed = (name: string, east: number, north: number, of: Case = one): readonly SurveyedPoint[] =>
  of.points.map((point) => (point.name === name ? moved(point, east, north) : point));

function textOf(points: readonly SurveyedPoint[], changes: Partial<Case["job"]> = {}, of: Case = one): string {
  const job = { ...of.job, ...changes };
  return writeSurveyReportText(surveyReport(job, surveyOf(of, points)), "0");
}

/** As a reader takes wrapped lines in. */
const readOn = (text: string): string => text.replace(/\n +/g, " ").replace(/\n/g, " ");

describe("the report of a survey", () => {
  const [first = ""] = one.points.map(({ name }) => name).filter((name) => name.startsWith("B-1"));

  it("names the rod that is out, how far by the compass and in the base's own axes, and what is allowed", () => {
    const words = readOn(textOf(pushed(first, 0, 1.3)));
    // Turned a quarter counter-clockwise, the base's own +x points north.
    expect(words).toMatch(/Rod A1 OUT, 1\.3 in off: 1\.3 in north; 3\/8 in is allowed \(2\.3\.4\.2\)/);
    expect(words).toMatch(/own axes x 1\.3 in, y 0 in/);
    expect(words).toMatch(/B1 at B-1: out of tolerance A1; farthest A1, 1\.3 in off: 1\.3 in north/);
  });

  it.each([
    [0.55, 0, "0.55 in east"],
    [-0.55, 0, "0.55 in west"],
    [0, -0.55, "0.55 in south"],
    [0.33, -0.44, "0.44 in south and 0.33 in east"],
  ])("%d east and %d north: %s", (east, north, words) => {
    expect(readOn(textOf(pushed(first, east, north)))).toContain(`0.55 in off: ${words}`);
  });

  it("where the plate does not drop on: the rod without which it would, not those that share the error of its best position", () => {
    const words = readOn(textOf(pushed(first, 0, 1.7)));
    expect(words).toContain("Base plate drops on: DOES NOT FIT");
    expect(words).toMatch(
      /Without rod A1 the plate would drop on the others with [\d.]+ in to spare: look at A1 first\./,
    );
    expect(words).not.toMatch(/look at A[234] first/);
    const rods = words.slice(words.indexOf("BASE B1 AT B-1")).match(/Rod A\d/g);
    expect(rods?.[0]).toBe("Rod A1");
    expect(words).toMatch(/washer-cover (FAIL|pass)/);
  });

  it("two rods that are off: that no one alone keeps the plate from dropping on", () => {
    const [, second = ""] = one.points.map(({ name }) => name).filter((name) => name.startsWith("B-1"));
    const both = pushed(first, 0, 2).map((point) => (point.name === second ? moved(point, 0, -2) : point));
    expect(readOn(textOf(both))).toContain("No one rod alone keeps the plate from dropping on");
  });

  it("a rod that is not in the file, a point that is no rod's, and bases that nobody surveyed", () => {
    const stray = {
      name: "gate",
      northing: inches(120),
      easting: inches(120),
      elevation: null,
      description: "",
      line: 99,
    };
    const words = readOn(textOf([...one.points.filter(({ name }) => name !== "A-1_A2"), stray]));
    expect(words).toContain("Rod A2: NOT SURVEYED");
    expect(words).toMatch(/POINTS THAT ARE NO ROD OF THE JOB - Line 99, gate:/);
    const half = readOn(textOf(one.points.filter(({ name }) => name.startsWith("A-1"))));
    expect(half).toMatch(/NOT SURVEYED - B1 at B-1/);
  });

  it("all in place: nothing is out by what was checked, and still the engineer decides", () => {
    const text = textOf(one.points);
    expect(text).toContain("Nothing is out by what was checked. ENGINEER TO DECIDE.");
    expect(text).not.toContain("BASE B1 AT");
  });

  it("lines of 72 characters at most; day, instrument and accuracy as stated; never that anything is acceptable", () => {
    const survey = {
      ...one.job.survey,
      date: given("2026-12-05", "job"),
      instrument: given("total station, crew 2", "job"),
    };
    for (const points of [one.points, pushed(first, 0, 1.7), pushed(first, 0.4, 0)]) {
      const text = textOf(points, { survey });
      for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(72);
      expect(text).toContain("Survey of 2026-12-05");
      expect(text).toContain("Instrument: total station, crew 2.");
      expect(readOn(text)).toContain("ENGINEER TO DECIDE");
      expect(text).not.toMatch(/acceptable|may stay|is fine/i);
    }
  });

  it("the same words on paper, nothing over anything", () => {
    const report = surveyReport(one.job, surveyOf(one, pushed(first, 0, 1.7)));
    for (const unit of ["in", "mm"] as const) {
      const pages = drawSurveyReport({ ...one.job, unit }, report, "0");
      for (const page of pages) expect(findCollisions(page)).toEqual([]);
      const words = pages.map(wordsOf).join("\n").replaceAll("\n", " ");
      for (const { heading } of report.parts) expect(words).toContain(heading);
      expect(words).toContain("look at A1 first");
    }
  });

  it("in millimetres", () => {
    const metric = surveyOf(one, pushed(first, 0, millimetres(40) / inches(1)));
    const text = writeSurveyReportText(surveyReport({ ...one.job, unit: "mm" }, { ...metric, unit: "mm" }), "0");
    expect(readOn(text)).toContain("40 mm off: 40 mm north");
  });
});

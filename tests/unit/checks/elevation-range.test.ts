import { describe, expect, it } from "vitest";
import { elevationRange } from "../../../src/checks/job-rules/elevation-range.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Placement } from "../../../src/job/model/plan.js";
import type { Length } from "../../../src/units/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture } from "../../fixture.js";
import { controlPoint, placementAt, zero } from "../../setting-out-plan.js";
import { around, jobRowsOf } from "./layout-context.js";

const feet = (value: number) => inches(12 * value);
const control = [99, 101].map((level, index) =>
  controlPoint(`CP${index + 1}`, zero, zero, { elevation: given(feet(level), "job") }),
);
const at = (topOfConcrete: Length, changes: Partial<Placement> = {}) =>
  placementAt(["A", "1"], { topOfConcrete: given(topOfConcrete, "job"), ...changes });
const allRows = (placements: readonly Placement[], points = control) =>
  jobRowsOf(elevationRange, { placements, control: points });
/** Of the bases. */
const rows = (placements: readonly Placement[], points = control) =>
  allRows(placements, points).filter(({ subject }) => !subject.startsWith("control point"));
const benchmark = (name: string, elevation: Length) =>
  controlPoint(name, zero, zero, { elevation: given(elevation, "job") });

describe("elevation-range: control points at 99 and 101 ft", () => {
  it.each(around(nanometres(feet(131)), "pass", "fail"))("30 ft above them, %d nm: %s", (top, status) => {
    expect(rows([at(nanometres(top))]).map((row) => row.status)).toEqual([status]);
  });

  it.each(around(nanometres(feet(69)), "fail", "pass"))("30 ft below them, %d nm: %s", (top, status) => {
    expect(rows([at(nanometres(top))])[0]?.status).toBe(status);
  });

  it.each([
    ["99.5 typed in inches", inches(99.5), "99-1/2 in where 99-1/2 ft is meant?"],
    ["feet where metres are meant: 30.48 m is 100 ft", feet(30.48), "30.48 ft where 30.48 m is meant?"],
    ["metres where feet are meant", millimetres(99_500), "99.5 m where 99.5 ft is meant?"],
    ["a decimal point lost", feet(1000), "12000 where 1200 is meant?"],
  ])("stops where another unit explains it: %s", (_name, top, words) => {
    const [row] = rows([at(top)]);
    expect(row).toMatchObject({ status: "fail", severity: "stop" });
    expect(row?.note).toContain(words);
  });

  it("asks where nothing explains it", () => {
    expect(rows([at(feet(60))])[0]).toMatchObject({
      status: "fail",
      severity: "ask",
      subject: "B1 A-1 top of concrete",
    });
  });

  it("holds a bottom of plate that somebody wrote, not one that follows from the grout", () => {
    const bottoms = (from: string) =>
      rows([at(feet(100), { bottomOfPlate: given(inches(100), from) })]).map(({ subject, status }) => [
        subject,
        status,
      ]);
    expect(bottoms("job")).toEqual([
      ["B1 A-1 top of concrete", "pass"],
      ["B1 A-1 bottom of plate", "fail"],
    ]);
    expect(bottoms("top of concrete and grout")).toEqual([["B1 A-1 top of concrete", "pass"]]);
  });

  it("metric: 10 m", () => {
    const points = [controlPoint("CP", zero, zero, { elevation: given(millimetres(45_000), "job") })];
    const status = (delta: number) =>
      jobRowsOf(
        elevationRange,
        { placements: [at(nanometres(millimetres(55_000) + delta))], control: points },
        [baseFixture()],
        { unit: "mm" },
      )[0]?.status;
    expect([-1, 0, 1].map(status)).toEqual(["pass", "pass", "fail"]);
  });

  it("without control points, against the elevation of most bases", () => {
    const [a, b, c] = [placementAt(["A", "1"]), placementAt(["B", "1"]), at(inches(99.5), { lines: ["C", "1"] })];
    const [most, slip] = rows([a, b, c], []);
    expect(most).toMatchObject({ status: "not-checked", subject: "B1 A-1, B1 B-1 top of concrete" });
    expect(most?.note).toContain("most bases have this one, and the others are compared with it");
    expect(slip).toMatchObject({ status: "fail", severity: "stop", subject: "B1 C-1 top of concrete" });
    expect(slip?.note).toContain("99-1/2 in where 99-1/2 ft is meant?");
  });

  it("is not checked where there is one elevation alone, and does not apply where there is none", () => {
    expect(rows([at(feet(100))], [])[0]?.note).toBe(
      "no control point has an elevation, and all bases have this one (control.elevation)",
    );
    const none = placementAt(["A", "1"], { topOfConcrete: missing("t", "none") });
    expect(rows([none]).map(({ status, subject }) => [status, subject])).toEqual([["not-applicable", "plan"]]);
  });
});

describe("elevation-range: control points among themselves", () => {
  const points = (...levels: readonly Length[]) =>
    allRows(
      [at(feet(100))],
      levels.map((level, index) => benchmark(`CP${index + 1}`, level)),
    ).filter(({ subject }) => subject.startsWith("control point"));

  it.each(around(nanometres(feet(130)), "pass", "fail"))("one at %d nm beside one at 100 ft: %s", (level, status) => {
    expect(points(feet(100), nanometres(level))[0]?.status).toBe(status);
  });

  it("names the one that is far from all others, and stops where a slip explains it", () => {
    expect(points(feet(100), feet(10), feet(100.5))).toMatchObject([
      {
        subject: "control point CP2",
        status: "fail",
        severity: "stop",
        note: "120 in beside CP1, 1200: 120 where 1200 is meant?",
      },
    ]);
    expect(points(feet(100), inches(100))[0]?.note).toContain("100 ft where 100 in is meant?");
  });

  it("asks where nothing explains it; both of two", () => {
    expect(points(feet(100), feet(57)).map(({ subject, severity }) => [subject, severity])).toEqual([
      ["control point CP1", "ask"],
      ["control point CP2", "ask"],
    ]);
  });

  it("says nothing of a single one; of several that agree one row", () => {
    expect(points(feet(100))).toEqual([]);
    expect(points(feet(100), feet(101), feet(125), feet(150))).toMatchObject([
      { subject: "control points", status: "pass", value: { kind: "length", twice: 2 * feet(25) } },
    ]);
  });
});

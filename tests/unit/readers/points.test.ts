/** The surveyor's file: orders, units, headings, and what is asked for instead of guessed. */
import { describe, expect, it } from "vitest";
import { readPoints } from "../../../src/readers/points.js";
import type { PointsOptions } from "../../../src/readers/points-model.js";

const NOTHING: PointsOptions = { unit: null, order: null, jobOrder: null };
const read = (text: string, file: string, options: Partial<PointsOptions> = {}) =>
  readPoints(text, file, { ...NOTHING, ...options });

function pointsOf(text: string, file: string, options: Partial<PointsOptions> = {}) {
  const outcome = read(text, file, options);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message).join("; "));
  return outcome.value;
}

const codes = (text: string, file: string, options: Partial<PointsOptions> = {}) =>
  read(text, file, options).findings.map(({ code }) => code);

describe("a file of points", () => {
  it.each([
    ["a_PNEZD_m.csv", "m", 10_000_000_000],
    ["a_PNEZD_mm.csv", "mm", 10_000_000],
    ["a_PNEZD_ft-intl.csv", "ft", 3_048_000_000],
    ["a_PNEZD_ft-us.csv", "ft-us", 3_048_006_096],
    ["24-118_rev-B_site_PNEZD_ft-us_bare.csv", "ft-us", 3_048_006_096],
  ])("%s: the unit of its name", (file, unit, northing) => {
    const { points, unit: told, headed } = pointsOf("P1,10,20,30,ROD", file);
    expect([told.value, told.by, headed]).toEqual([unit, "file name", false]);
    expect(points[0]).toMatchObject({ name: "P1", northing, description: "ROD", line: 1 });
  });

  it("easting first by its name, and whatever its heading says by its columns", () => {
    expect(pointsOf("P1,20,10,30,ROD", "a_PENZD_m.csv").points[0]).toMatchObject({ northing: 10e9, easting: 20e9 });
    const headed = pointsOf("Desc,East (m),Point,North (m),Elev\nROD,20,P1,10,3", "a.csv");
    expect([headed.order, headed.unit]).toEqual([
      { value: "PENZD", by: "heading" },
      { value: "m", by: "heading" },
    ]);
    expect(headed.points).toEqual([
      { name: "P1", northing: 10e9, easting: 20e9, elevation: 3e9, description: "ROD", line: 2 },
    ]);
  });

  it("an option goes before name and heading; the job's order comes last", () => {
    expect(pointsOf("P1,1,2", "a_PNEZD_m.csv", { order: "PENZD", unit: "mm" }).points[0]).toMatchObject({
      northing: 2e6,
      easting: 1e6,
      elevation: null,
    });
    expect(pointsOf("P1,1,2", "a.csv", { unit: "m", jobOrder: "PENZD" }).order).toEqual({ value: "PENZD", by: "job" });
  });

  it("asks for what is nowhere told, all at once", () => {
    expect(codes("P1,1,2", "a.csv")).toEqual(["points-order", "points-unit"]);
    const [finding] = read("P1,1,2", "a_PNEZD_ft.csv").findings;
    expect(finding?.message).toContain("does not tell the international foot");
    expect(finding?.hint).toBe("--unit ft or --unit ft-us");
  });

  it("a name and a heading that contradict each other", () => {
    expect(codes("point,easting,northing\nP1,1,2", "a_PNEZD_m.csv")).toEqual(["points-order"]);
    expect(codes("point,northing (mm),easting (mm)\nP1,1,2", "a_m.csv")).toEqual(["points-unit"]);
  });

  it("tells every cell that is no number, with line and column", () => {
    const outcome = read("point,northing,easting,elevation\nP1,1,2,3\nP2,x,2,3\nP3,1,,1.2.3\n", "a_PNEZD_m.csv");
    expect(outcome.ok).toBe(false);
    expect(outcome.findings.map(({ at }) => [at.line, at.column, at.path])).toEqual([
      [3, 2, "northing"],
      [4, 3, "easting"],
      [4, 4, "elevation"],
    ]);
  });

  it("refuses x and y, which surveys use either way, and a file without points", () => {
    expect(codes("point,x,y\nP1,1,2", "a_PNEZD_m.csv")).toEqual(["points-heading"]);
    expect(codes("\n", "a_PNEZD_m.csv")).toEqual(["points-empty"]);
    expect(codes("point,northing,easting\n", "a_PNEZD_m.csv")).toEqual(["points-empty"]);
  });

  it("semicolons, tabs, empty lines", () => {
    expect(pointsOf("P1;1;2;3\n\nP2;1;2;3", "a_PNEZD_m.csv").points.map(({ line }) => line)).toEqual([1, 3]);
    expect(pointsOf("P1\t1\t2\t3", "a_PNEZD_m.csv").points).toHaveLength(1);
  });
});

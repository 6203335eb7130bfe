import { describe, expect, it } from "vitest";
import { plateElevation } from "../../../src/checks/job-rules/plate-elevation.js";
import { given, missing } from "../../../src/job/model/job.js";
import { nanometres } from "../../../src/units/index.js";
import { baseFixture } from "../../fixture.js";
import { placementAt } from "../../setting-out-plan.js";
import { at, jobRowsOf } from "./layout-context.js";

const top = at(1200);
const withBottom = (bottom: number, from = "job") =>
  placementAt(["A", "1"], { bottomOfPlate: given(nanometres(bottom), from) });

describe("plate-elevation", () => {
  /** Grout 1-1/2 in. */
  it.each([
    [top + at(1.5) - 1, "fail"],
    [top + at(1.5), "pass"],
    [top + at(1.5) + 1, "fail"],
  ])("bottom of plate at %d nm: %s", (bottom, status) => {
    const rows = jobRowsOf(plateElevation, { placements: [withBottom(bottom)] });
    expect(rows.map((row) => row.status)).toEqual([status]);
  });

  it("is not checked without an elevation or a grout gap, and says which", () => {
    const [row] = jobRowsOf(plateElevation, { placements: [placementAt(["A", "1"])] });
    expect([row?.status, row?.note]).toEqual(["not-checked", "not given (test)"]);
    const base = baseFixture({ grout: missing("grout", "no grout gap is given") });
    const [other] = jobRowsOf(plateElevation, { placements: [withBottom(top)] }, [base]);
    expect([other?.status, other?.note]).toEqual(["not-checked", "no grout gap is given (grout)"]);
  });

  it("does not vouch for a bottom of plate that comes from the grout itself", () => {
    const rows = jobRowsOf(plateElevation, { placements: [withBottom(top + at(1.5), "top of concrete and grout")] });
    expect(rows.map((row) => row.status)).toEqual(["not-applicable"]);
  });

  it("has one row for bases that agree, another for one that does not", () => {
    const high = placementAt(["B", "1"], { bottomOfPlate: given(nanometres(top + at(2)), "job") });
    const placements = [withBottom(top + at(1.5)), high];
    expect(jobRowsOf(plateElevation, { placements }).map(({ status, subject }) => [status, subject])).toEqual([
      ["pass", "B1 A-1"],
      ["fail", "B1 B-1"],
    ]);
  });

  // Grout 1-1/2 + setting plate 1/4: a column set to the grout alone would stand 1/4 low.
  it.each(["template left as setting plate", "setting plate over cast rods"] as const)("takes in a %s", (use) => {
    const base = baseFixture({ template: { ...baseFixture().template, use } });
    const statusAt = (height: number) =>
      jobRowsOf(plateElevation, { placements: [withBottom(top + height)] }, [base]).map(({ status }) => status);
    expect(statusAt(at(1.75))).toEqual(["pass"]);
    expect(statusAt(at(1.75) - 1)).toEqual(["fail"]);
    expect(statusAt(at(1.75) + 1)).toEqual(["fail"]);
    expect(statusAt(at(1.5))).toEqual(["fail"]);
    const derived = withBottom(top + at(1.75), "top of concrete, grout and setting plate");
    const [row] = jobRowsOf(plateElevation, { placements: [derived] }, [base]);
    expect([row?.status, row?.note]).toEqual([
      "not-applicable",
      "the bottom of the base plate is taken from top of concrete, grout and setting plate",
    ]);
  });

  // Without the grout nothing is too high, but what lies under the top of concrete, or within a setting plate, is too low.
  it.each([
    ["template", 0, -1, "fail"],
    ["template", 0, 0, "not-checked"],
    ["template left as setting plate", 0.25, -1, "fail"],
    ["template left as setting plate", 0.25, 0, "not-checked"],
  ] as const)("without a grout gap, %s, %d in %i nm: %s", (use, height, delta, status) => {
    const grout = missing("grout", "no grout gap is given");
    const base = baseFixture({ grout, template: { ...baseFixture().template, use } });
    const [row] = jobRowsOf(plateElevation, { placements: [withBottom(top + at(height) + delta)] }, [base]);
    expect(row?.status).toBe(status);
  });
});

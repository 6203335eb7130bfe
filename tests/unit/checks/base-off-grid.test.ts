import { describe, expect, it } from "vitest";
import { baseOffGrid } from "../../../src/checks/job-rules/base-off-grid.js";
import { millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture } from "../../fixture.js";
import { placementAt } from "../../setting-out-plan.js";
import { around, at, jobRowsOf } from "./layout-context.js";

const off = (x: number, y = 0) => ({
  placements: [placementAt(["A", "1"], { offset: { x: nanometres(x), y: nanometres(y) } })],
});

describe("base-off-grid", () => {
  it.each(around(at(1), "fail", "pass"))("%d nm off the crossing: %s", (x, status) => {
    expect(jobRowsOf(baseOffGrid, off(x)).map((row) => row.status)).toEqual([status]);
    expect(jobRowsOf(baseOffGrid, off(0, -x)).map((row) => row.status)).toEqual([status]);
  });

  it.each(around(millimetres(25), "fail", "pass"))("metric: %d nm off the crossing: %s", (x, status) => {
    expect(jobRowsOf(baseOffGrid, off(x), [baseFixture()], { unit: "mm" }).map((row) => row.status)).toEqual([status]);
  });

  it("judges each direction by itself: a large offset does not hide a small one across it", () => {
    const rows = jobRowsOf(baseOffGrid, off(at(12), at(0.25)));
    expect(rows.map(({ status, subject, note }) => [status, subject, note])).toEqual([
      ["pass", "B1 A-1 x", "12 in along plan east"],
      ["fail", "B1 A-1 y", "1/4 in along plan north: meant, or a slip of the pen?"],
    ]);
  });

  it("joins bases of one mark and offset in one row, and has nothing to say of bases on their crossings", () => {
    const offset = { x: at(6), y: at(0) };
    const placements = [placementAt(["A", "1"], { offset }), placementAt(["B", "1"], { offset })];
    expect(jobRowsOf(baseOffGrid, { placements }).map(({ subject }) => subject)).toEqual(["B1 A-1, B1 B-1 x"]);
    expect(jobRowsOf(baseOffGrid).map(({ status, subject }) => [status, subject])).toEqual([
      ["not-applicable", "plan"],
    ]);
  });
});

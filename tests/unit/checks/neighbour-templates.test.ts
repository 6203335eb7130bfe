import { describe, expect, it } from "vitest";
import { neighbourTemplates } from "../../../src/checks/job-rules/neighbour-templates.js";
import { given } from "../../../src/job/model/job.js";
import { placementAt } from "../../setting-out-plan.js";
import { around, at, jobRowsOf, twoApart } from "./layout-context.js";

describe("neighbour-templates", () => {
  /** Templates of 26 x 18 in. */
  it.each(around(at(26), "fail", "pass"))("side by side, %d nm apart: %s", (apart, status) => {
    const rows = jobRowsOf(neighbourTemplates, twoApart(apart));
    expect(rows.map((row) => [row.status, row.value])).toEqual([
      [status, { kind: "length", twice: 2 * (apart - at(26)) }],
    ]);
  });

  it.each(around(at(22), "fail", "pass"))("the second turned a quarter, %d nm apart: %s", (apart, status) => {
    expect(jobRowsOf(neighbourTemplates, twoApart(apart, 90)).map((row) => row.status)).toEqual([status]);
  });

  it("uses the true outline, chamfers included, not its box", () => {
    // Corners of 1 x 1 in are cut off: the boxes overlap by 1/2 in both ways, the chamfers are 1/sqrt 2 in apart.
    const offset = { x: at(25.5), y: at(17.5) };
    const [row] = jobRowsOf(neighbourTemplates, {
      placements: [placementAt(["A", "1"]), placementAt(["A", "1"], { offset })],
    });
    expect([row?.status, row?.value]).toEqual(["pass", { kind: "length", twice: Math.round(Math.SQRT2 * at(1)) }]);
  });

  it("finds plates that cross without a corner in each other", () => {
    const [row] = jobRowsOf(neighbourTemplates, twoApart(at(0.001), 90));
    expect(row?.status).toBe("fail");
    expect(row?.note).toBe("T1 and T1 overlap");
  });

  it("says how far apart the tops of concrete are", () => {
    const offset = { x: at(6), y: at(0) };
    const low = given(at(1188), "job");
    const placements = [placementAt(["A", "1"]), placementAt(["A", "1"], { offset, topOfConcrete: low })];
    expect(jobRowsOf(neighbourTemplates, { placements })[0]?.note).toBe(
      "T1 and T1 overlap; their tops of concrete are 12 apart",
    );
  });
});

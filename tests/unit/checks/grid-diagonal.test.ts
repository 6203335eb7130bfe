import { describe, expect, it } from "vitest";
import { gridDiagonal } from "../../../src/checks/job-rules/grid-diagonal.js";
import { runJobRules } from "../../../src/checks/job-run.js";
import { given } from "../../../src/job/model/job.js";
import type { PlanSpec } from "../../../src/job/model/plan.js";
import { placementAt } from "../../setting-out-plan.js";
import { at, jobRowsOf, layoutContext } from "./layout-context.js";

const turned = (bearing: number, unit: "m" | "mm" | "ft" | "ft-us", factor = 1): Partial<PlanSpec> => ({
  transform: { kind: "origin", northing: at(60000), easting: at(24000), bearing },
  scaleFactor: given(factor, "job"),
  settingOut: { order: "PNEZD", unit },
});

describe("grid-diagonal", () => {
  it("closes exactly where the site lies along the grid and no coordinate is rounded", () => {
    const rows = jobRowsOf(gridDiagonal, turned(90, "ft"));
    expect(rows.map((row) => [row.status, row.value])).toEqual([["pass", { kind: "length", twice: 0 }]]);
  });

  /** A unit of the last place: 0.1 mm, or 0.0001 ft; the limit is sqrt 2 of them, and 1 nm of the lattice at either end. */
  it.each([
    ["m", 100_000],
    ["mm", 100_000],
    ["ft", 30_480],
    ["ft-us", 30_480.06096],
  ] as const)("closes within the rounding of a file in %s", (unit, step) => {
    for (const bearing of [0, 17.3, 31.25, 45, 123.456, 271]) {
      const rows = jobRowsOf(gridDiagonal, turned(bearing, unit, 0.99987));
      expect(rows.map((row) => [row.status, row.limit])).toEqual([
        ["pass", { kind: "length", twice: 2 * Math.ceil(Math.SQRT2 * (step + 2)) }],
      ]);
    }
  });

  it("fails where the coordinates do not come from one transform", () => {
    const context = layoutContext(turned(31.25, "ft"));
    const { plan } = context;
    const transform = plan?.transform ?? null;
    if (plan === null || transform === null) throw new Error("no transform");
    let bearing = transform.bearing;
    const drifting = {
      ...transform,
      get bearing() {
        bearing += 0.001;
        return bearing;
      },
    };
    const rows = runJobRules([gridDiagonal], { ...context, plan: { ...plan, transform: drifting } });
    expect(rows.map((row) => row.status)).toContain("fail");
  });

  it("looks at bays with a base at a corner only", () => {
    const rows = jobRowsOf(gridDiagonal, { ...turned(31, "ft"), placements: [placementAt(["C", "2"])] });
    expect(rows.map(({ subject }) => subject)).toEqual(["bay B-C, 1-2"]);
  });

  it("does not apply without site coordinates", () => {
    expect(jobRowsOf(gridDiagonal).map((row) => row.status)).toEqual(["not-applicable"]);
  });
});

import { describe, expect, it } from "vitest";
import { groupSpacing } from "../../../src/checks/job-rules/group-spacing.js";
import type { PlacingEdition } from "../../../src/standards/index.js";
import { jobFixture } from "../../fixture.js";
import { placementAt } from "../../setting-out-plan.js";
import { jobRowsOf } from "./layout-context.js";

const placing = (edition: PlacingEdition) => ({ editions: { ...jobFixture().editions, placing: edition } });
const placements = [placementAt(["C", "1"]), placementAt(["A", "1"]), placementAt(["B", "1"]), placementAt(["A", "2"])];

describe("group-spacing", () => {
  it("writes out what the survey is held to, line by line: AISC 303-10 s.7.5.1(b), 1/4 in", () => {
    const rows = jobRowsOf(groupSpacing, { placements }, undefined, placing("AISC 303-10"));
    expect(rows.map(({ status, subject, clause, note }) => [status, subject, clause, note])).toEqual([
      [
        "not-checked",
        "line A",
        "7.5.1(b)",
        "1 spacing of 300 in, each within 1/4 as placed: not checked until the rods are surveyed",
      ],
      [
        "not-checked",
        "line 1",
        "7.5.1(b)",
        "2 spacings of 360 in, each within 1/4 as placed: not checked until the rods are surveyed",
      ],
    ]);
  });

  it.each(["ACI 117-10", "AISC 303-22", "EN 1090-2:2008"] as const)("has nothing to hold by %s", (edition) => {
    expect(jobRowsOf(groupSpacing, {}, undefined, placing(edition)).map((row) => row.status)).toEqual([
      "not-applicable",
    ]);
  });

  it("has nothing to hold where no line has two groups", () => {
    const rows = jobRowsOf(groupSpacing, { placements: [placementAt(["A", "1"])] }, undefined, placing("AISC 303-10"));
    expect(rows.map(({ status, note }) => [status, note])).toEqual([["not-applicable", "no line has two groups"]]);
  });
});

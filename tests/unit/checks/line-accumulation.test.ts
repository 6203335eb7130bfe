import { describe, expect, it } from "vitest";
import { allowedAlong, lineAccumulation } from "../../../src/checks/job-rules/line-accumulation.js";
import { findGroupPlacing } from "../../../src/standards/index.js";
import { jobFixture } from "../../fixture.js";
import { placementAt } from "../../setting-out-plan.js";
import { at, jobRowsOf } from "./layout-context.js";

const editions = { ...jobFixture().editions, placing: "AISC 303-10" } as const;
const found = findGroupPlacing("AISC 303-10", "accumulated along a column line");

describe("line-accumulation", () => {
  it("writes out what the survey is held to, whatever the order of the list", () => {
    const placements = [placementAt(["C", "1"]), placementAt(["A", "1"]), placementAt(["B", "1"])];
    const rows = jobRowsOf(lineAccumulation, { placements }, undefined, { editions });
    expect(rows.map(({ status, subject, clause, note }) => [status, subject, clause, note])).toEqual([
      [
        "not-checked",
        "line 1",
        "7.5.1(d)",
        "3 groups along 720 in: at most 0.15 may add up as placed; not checked until the rods are surveyed",
      ],
    ]);
  });

  /** AISC 303-10 s.7.5.1(d): 1/4 in for each 100 ft, not more than 1 in in total: reached at 400 ft. */
  it.each([
    [at(0), 0],
    [at(600), at(0.125)],
    [at(1200), at(0.25)],
    [at(4800) - 1, at(1) - 1],
    [at(4800), at(1)],
    [at(4800) + 1, at(1)],
    [at(48000), at(1)],
  ])("along %d nm: %d nm", (length, allowed) => {
    expect(found.found && allowedAlong(length, found.row)).toBe(allowed);
  });

  it("has nothing to hold by an edition without such a limit", () => {
    expect(jobRowsOf(lineAccumulation).map((row) => row.status)).toEqual(["not-applicable"]);
  });
});

import { describe, expect, it } from "vitest";
import { neighbourRods } from "../../../src/checks/job-rules/neighbour-rods.js";
import { runJobRules } from "../../../src/checks/job-run.js";
import { around, at, jobRowsOf, layoutContext, twoApart } from "./layout-context.js";

describe("neighbour-rods", () => {
  /** Rods 1-1/4 at +-6 x +-5 in: those of the second base touch the first's at 12 + 1-1/4 in. */
  it.each(around(at(13.25), "fail", "pass"))("bases %d nm apart: %s", (apart, status) => {
    const rows = jobRowsOf(neighbourRods, twoApart(apart));
    expect(rows.map((row) => [row.status, row.value])).toEqual([
      [status, { kind: "length", twice: 2 * (apart - at(13.25)) }],
    ]);
    expect(rows[0]?.subject).toBe("B1 A-1 - B1 A-1 (2)");
  });

  it("names the two rods, turned as placed", () => {
    // Turned a half, A3, the south-east rod of the type, stands at the north-west of the second base, beside A2 of the first.
    const [row] = jobRowsOf(neighbourRods, twoApart(at(13), 180));
    expect(row?.note).toBe("A2 and A3: -1/4 in clear between the shanks, nuts and plates not counted");
  });

  it("gives the nearest pair where none touch, and no row without a plan", () => {
    const [row, ...more] = jobRowsOf(neighbourRods);
    expect([row?.subject, row?.status, row?.value]).toEqual([
      "B1 A-1 - B1 B-1",
      "pass",
      { kind: "length", twice: 2 * at(360 - 13.25) },
    ]);
    expect(more).toEqual([]);
    expect(runJobRules([neighbourRods], { ...layoutContext(), plan: null })).toEqual([]);
  });
});

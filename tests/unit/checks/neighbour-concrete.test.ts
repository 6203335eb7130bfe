import { describe, expect, it } from "vitest";
import { neighbourConcrete } from "../../../src/checks/job-rules/neighbour-concrete.js";
import { given, missing } from "../../../src/job/model/job.js";
import { baseFixture } from "../../fixture.js";
import { placementAt } from "../../setting-out-plan.js";
import { around, at, jobRowsOf, twoApart } from "./layout-context.js";

const { concrete } = baseFixture();

describe("neighbour-concrete", () => {
  /** Piers of 24 x 24 in. */
  it.each(around(at(24), "fail", "pass"))("piers %d nm apart: %s", (apart, status) => {
    expect(jobRowsOf(neighbourConcrete, twoApart(apart)).map((row) => row.status)).toEqual([status]);
  });

  it("takes a pier that stands off its working point where it stands, turned", () => {
    // 2 in east of the working point; turned a half, the second's is 2 in west of its own: 4 in nearer.
    const base = baseFixture({ concrete: { ...concrete, at: { x: at(2), y: at(0) } } });
    const [row] = jobRowsOf(neighbourConcrete, twoApart(at(30), 180), [base]);
    expect(row?.value).toEqual({ kind: "length", twice: 2 * at(2) });
  });

  it("measures round piers as round", () => {
    const base = baseFixture({
      concrete: { ...concrete, shape: given({ kind: "circle", diameter: at(30) } as const, "job") },
    });
    const offset = { x: at(24), y: at(32) };
    const placements = [placementAt(["A", "1"]), placementAt(["A", "1"], { offset })];
    const [row] = jobRowsOf(neighbourConcrete, { placements }, [base]);
    expect(row?.value).toEqual({ kind: "length", twice: 2 * at(10) });
  });

  it("names the marks whose concrete is not given", () => {
    const base = baseFixture({ concrete: { ...concrete, shape: missing("concrete", "no size") } });
    const rows = jobRowsOf(neighbourConcrete, {}, [base]);
    expect(rows.map(({ status, subject }) => [status, subject])).toEqual([
      ["not-applicable", "plan"],
      ["not-checked", "B1"],
    ]);
  });
});

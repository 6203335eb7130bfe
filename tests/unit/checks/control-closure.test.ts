import { describe, expect, it } from "vitest";
import { controlClosure } from "../../../src/checks/job-rules/control-closure.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { ControlPoint, PlanSpec } from "../../../src/job/model/plan.js";
import { nanometres, scale } from "../../../src/units/index.js";
import { controlPoint, zero } from "../../setting-out-plan.js";
import { at, jobRowsOf } from "./layout-context.js";

const point = (name: string, x: number, east: number): ControlPoint =>
  controlPoint(name, at(60000), nanometres(at(24000) + east), { plan: given({ x: nanometres(x), y: zero }, "job") });

const sited = (...control: readonly ControlPoint[]): Partial<PlanSpec> => ({
  control,
  transform: { kind: "points", points: control.map(({ name }) => name) },
});

describe("control-closure", () => {
  it.each([
    [at(0.25) - 1, "pass"],
    [at(0.25), "pass"],
    [at(0.25) + 1, "fail"],
    [-at(0.25), "pass"],
    [-at(0.25) - 1, "fail"],
  ])("a distance %d nm longer on the site: %s", (more, status) => {
    const rows = jobRowsOf(controlClosure, sited(point("CP1", 0, 0), point("CP2", at(1200), at(1200) + more)));
    expect(rows.map((row) => [row.subject, row.status, row.value])).toEqual([
      ["CP1 - CP2", status, { kind: "length", twice: 2 * Math.abs(more) }],
    ]);
  });

  it("multiplies the plan's distance by the scale factor", () => {
    const site = sited(point("CP1", 0, 0), point("CP2", at(12000), scale(at(12000), 0.9998)));
    expect(jobRowsOf(controlClosure, { ...site, scaleFactor: given(0.9998, "job") })[0]?.value).toEqual({
      kind: "length",
      twice: 0,
    });
    expect(jobRowsOf(controlClosure, site)[0]?.status).toBe("fail");
  });

  it.each([
    [1 / 0.3048, "metres where feet are meant"],
    [12, "feet where inches are meant"],
    [25.4, "inches where millimetres are meant"],
  ])("suspects a unit where the ratio is %d", (ratio, words) => {
    const site = sited(point("CP1", 0, 0), point("CP2", at(1200), scale(at(1200), ratio)));
    expect(jobRowsOf(controlClosure, site)[0]?.note).toMatch(`: ${words}?`);
  });

  it("takes every pair of three points, and is reported, not held, without a tolerance", () => {
    const site = sited(point("A", 0, 0), point("B", at(100), at(100)), point("C", at(200), at(200)));
    const controlTolerance = missing("site.tolerance", "the job names no tolerance");
    const rows = jobRowsOf(controlClosure, { ...site, controlTolerance });
    expect(rows.map((row) => [row.subject, row.status])).toEqual([
      ["A - B", "not-checked"],
      ["A - C", "not-checked"],
      ["B - C", "not-checked"],
    ]);
  });

  it("does not apply to fewer than two", () => {
    expect(jobRowsOf(controlClosure).map((row) => row.status)).toEqual(["not-applicable"]);
  });
});

describe("a gross misclosure", () => {
  const untold = { controlTolerance: missing("site.tolerance", "the job names no tolerance") };
  /** 1200 in on the plan: a tenth is 120 in, as far as a scale factor may go. */
  const over = (more: number): Partial<PlanSpec> => sited(point("CP1", 0, 0), point("CP2", at(1200), at(1200) + more));

  it.each([
    [at(120) - 1, "not-checked"],
    [at(120), "not-checked"],
    [at(120) + 1, "fail"],
    [-at(120), "not-checked"],
    [-at(120) - 1, "fail"],
    [at(10800), "fail"],
  ])("%d nm longer, without a tolerance: %s", (more, status) => {
    const [row] = jobRowsOf(controlClosure, { ...over(more), ...untold });
    expect(row?.status).toBe(status);
    if (status === "fail")
      expect(row).toMatchObject({ severity: "stop", limit: { kind: "length", twice: 2 * at(120) } });
  });

  it("is one whatever tolerance the job names; a tolerance that is less decides before it", () => {
    const told = (tolerance: number, more: number) =>
      jobRowsOf(controlClosure, { ...over(more), controlTolerance: given(nanometres(tolerance), "job") })[0];
    expect(told(at(24000), at(120) + 1)?.status).toBe("fail");
    expect(told(at(24000), at(120))?.status).toBe("pass");
    expect(told(at(1), at(1) + 1)).toMatchObject({ status: "fail", severity: "stop", clause: "site.tolerance" });
  });

  it("takes the scale factor into account", () => {
    const site = { ...over(at(132) + 1), ...untold };
    expect(jobRowsOf(controlClosure, { ...site, scaleFactor: given(1.01, "job") })[0]?.status).toBe("not-checked");
    expect(jobRowsOf(controlClosure, site)[0]?.status).toBe("fail");
  });

  it("with a point that takes no part in the way to the site is advice", () => {
    const points = [point("CP1", 0, 0), point("CP2", at(1200), at(1200)), point("CP3", at(2400), at(4800))];
    const site = { ...sited(...points), transform: { kind: "points", points: ["CP1", "CP2"] } as const, ...untold };
    expect(jobRowsOf(controlClosure, site).map(({ subject, status, severity }) => [subject, status, severity])).toEqual(
      [
        ["CP1 - CP2", "not-checked", "stop"],
        ["CP1 - CP3", "fail", "advise"],
        ["CP2 - CP3", "fail", "advise"],
      ],
    );
  });
});

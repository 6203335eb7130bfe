import { describe, expect, it } from "vitest";
import { settingOutElevation } from "../../../src/checks/job-rules/setting-out-elevation.js";
import { runJobRules } from "../../../src/checks/job-run.js";
import { missing } from "../../../src/job/model/job.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { type PlannedJob, placementAt, planJob, settingOutTexts } from "../../setting-out-plan.js";

const rowsOf = ({ job, plan }: PlannedJob) => runJobRules([settingOutElevation], { job, plan, bases: [] });
const noConcrete = { topOfConcrete: missing("placements[].topOfConcrete", "no top of concrete is given") };

/** Rod points of the local file whose elevation is empty. */
const emptyRods = ({ plan }: PlannedJob): number =>
  settingOutTexts(plan, "local")
    .bare.split("\r\n")
    .filter((line) => /^[^,]*,[^,]*,[^,]*,,ROD /.test(line)).length;

describe("setting-out-elevation", () => {
  it("passes where every rod has an elevation, counting the rods", () => {
    const planned = planJob();
    expect(rowsOf(planned)).toMatchObject([
      { subject: "B1", status: "pass", value: { count: 8 }, limit: { count: 8 } },
    ]);
    expect(emptyRods(planned)).toBe(0);
  });

  it("is not checked where a placement has no T.O.C., and names as many rods as the file leaves empty", () => {
    const planned = planJob({ placements: [placementAt(["A", "1"]), placementAt(["B", "1"], noConcrete)] });
    const note =
      "no top of concrete is given: the elevation of 4 rods is left empty in the setting-out files (placements[].topOfConcrete)";
    expect(rowsOf(planned)).toMatchObject([{ subject: "B1", status: "not-checked", note }]);
    expect(emptyRods(planned)).toBe(4);
  });

  it("is not checked where rods have no projection", () => {
    const base = baseFixture({
      groups: [groupFixture({}, { projection: missing("rods.projection", "no projection is given") })],
    });
    const planned = planJob({}, [base]);
    const [row] = rowsOf(planned);
    expect([row?.status, row?.note]).toEqual([
      "not-checked",
      "no projection is given: the elevation of 8 rods is left empty in the setting-out files (rods.projection)",
    ]);
    expect(emptyRods(planned)).toBe(8);
  });

  it("has one row a mark that is placed, and none without a plan", () => {
    const bases = [baseFixture(), baseFixture({ mark: "B2" })];
    const placements = [placementAt(["B", "1"], { mark: "B2" }), placementAt(["A", "1"]), placementAt(["C", "1"])];
    expect(rowsOf(planJob({ placements }, bases)).map(({ subject }) => subject)).toEqual(["B2", "B1"]);
    expect(runJobRules([settingOutElevation], { job: jobFixture(), plan: null, bases: [] })).toEqual([]);
  });
});

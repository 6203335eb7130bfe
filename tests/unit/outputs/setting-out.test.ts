/** The setting-out files of a package: their names say job, revision, status, coordinates, order and unit. */
import { describe, expect, it } from "vitest";
import type { PlanSpec } from "../../../src/job/model/plan.js";
import { jobOutputs } from "../../../src/outputs/index.js";
import { nanometres } from "../../../src/units/length.js";
import { planJob } from "../../setting-out-plan.js";

const KINDS = ["setting-out-csv", "setting-out-bare-csv", "check-distances-csv"];
const tied = { kind: "origin", northing: nanometres(0), easting: nanometres(0), bearing: 0 } as const;

function filesOf(site: Partial<PlanSpec>, status: "released" | "for approval" = "released"): readonly string[] {
  const { job, plan } = planJob(site);
  const checked = {
    job: { ...job, status },
    plan,
    rows: [],
    held: new Map(),
    layoutHeld: { reasons: [], siteOnly: true },
  };
  const around = { document: null, version: "0", includeHeld: false, made: [] };
  return jobOutputs
    .filter(({ kind }) => KINDS.includes(kind))
    .flatMap((output) => [...output.write(checked, around)].map(({ path }) => path));
}

describe("setting-out files", () => {
  it("site and local coordinates, each with a header and bare, and the check distances", () => {
    expect(filesOf({ transform: tied, settingOut: { order: "PENZD", unit: "ft-us" } })).toEqual([
      "setting-out/24-118_rev-B_local_PENZD_ft-us.csv",
      "setting-out/24-118_rev-B_site_PENZD_ft-us.csv",
      "setting-out/24-118_rev-B_local_PENZD_ft-us_bare.csv",
      "setting-out/24-118_rev-B_site_PENZD_ft-us_bare.csv",
      "setting-out/24-118_rev-B_check-distances_ft-us.csv",
    ]);
  });

  it("no site file where plan and site are not tied; NOT-RELEASED in every name of a job that is not", () => {
    expect(filesOf({ settingOut: { order: "PNEZD", unit: "ft" } }, "for approval")).toEqual([
      "setting-out/24-118_rev-B_NOT-RELEASED_local_PNEZD_ft-intl.csv",
      "setting-out/24-118_rev-B_NOT-RELEASED_local_PNEZD_ft-intl_bare.csv",
      "setting-out/24-118_rev-B_NOT-RELEASED_check-distances_ft-intl.csv",
    ]);
  });
});

/** The setting-out files of a package: their names say job, revision, status, coordinates, order and unit. */

import { describe, expect, it } from "vitest";
import { startDigest } from "../../../src/checks/digest.js";
import type { HeldLayout } from "../../../src/checks/held.js";
import type { PlanSpec } from "../../../src/job/model/plan.js";
import { jobOutputs } from "../../../src/outputs/index.js";
import { nanometres } from "../../../src/units/length.js";
import { planJob } from "../../setting-out-plan.js";

const KINDS = ["setting-out-csv", "setting-out-bare-csv", "check-distances-csv"];
const tied = { kind: "origin", northing: nanometres(0), easting: nanometres(0), bearing: 0 } as const;

const NOTHING_HELD: HeldLayout = { reasons: [], siteOnly: true };

function filesOf(
  site: Partial<PlanSpec>,
  status: "released" | "for approval" = "released",
  layoutHeld = NOTHING_HELD,
  includeHeld = false,
): readonly string[] {
  const { job, plan } = planJob(site);
  const checked = { job: { ...job, status }, plan, rows: [], layoutOpen: [], held: new Map(), layoutHeld };
  const around = {
    document: null,
    version: "0",
    includeHeld,
    made: [],
    set: null,
    pdf: null,
    paper: null,
    facts: [],
    questions: () => [],
    closedQuestions: () => [],
    digest: () => startDigest().digest(),
    closedFiles: () => [],
  };
  return jobOutputs
    .filter(({ kind }) => KINDS.includes(kind))
    .flatMap((output) => [...output.write(checked, around)].map(({ path }) => path));
}

describe("setting-out files", () => {
  it("site and local coordinates, each with a header and bare, and the check distances", () => {
    expect(filesOf({ transform: tied, settingOut: { order: "PENZD", unit: "ft-us" } })).toEqual([
      "field/24-118_rev-B_local_PENZD_ft-us.csv",
      "field/24-118_rev-B_site_PENZD_ft-us.csv",
      "field/24-118_rev-B_local_PENZD_ft-us_bare.csv",
      "field/24-118_rev-B_site_PENZD_ft-us_bare.csv",
      "field/24-118_rev-B_check-distances_ft-us.csv",
    ]);
  });

  it("no site file where plan and site are not tied; NOT-RELEASED in every name of a job that is not", () => {
    expect(filesOf({ settingOut: { order: "PNEZD", unit: "ft" } }, "for approval")).toEqual([
      "field/24-118_rev-B_NOT-RELEASED_local_PNEZD_ft-intl.csv",
      "field/24-118_rev-B_NOT-RELEASED_local_PNEZD_ft-intl_bare.csv",
      "field/24-118_rev-B_NOT-RELEASED_check-distances_ft-intl.csv",
    ]);
  });

  const site: Partial<PlanSpec> = { transform: tied, settingOut: { order: "PNEZD", unit: "m" } };
  const stem = "field/24-118_rev-B";

  it("held in site coordinates: those are not written, local ones are; asked for, they say HELD in their names", () => {
    const held = { reasons: ["control-closure CP1 - CP2"], siteOnly: true };
    expect(filesOf(site, "released", held)).toEqual([
      `${stem}_local_PNEZD_m.csv`,
      `${stem}_local_PNEZD_m_bare.csv`,
      `${stem}_check-distances_m.csv`,
    ]);
    expect(filesOf(site, "for approval", held, true)).toEqual([
      `${stem}_NOT-RELEASED_local_PNEZD_m.csv`,
      `${stem}_HELD_NOT-RELEASED_site_PNEZD_m.csv`,
      `${stem}_NOT-RELEASED_local_PNEZD_m_bare.csv`,
      `${stem}_HELD_NOT-RELEASED_site_PNEZD_m_bare.csv`,
      `${stem}_NOT-RELEASED_check-distances_m.csv`,
    ]);
  });

  it("held as a layout: no points are written in any coordinates", () => {
    expect(filesOf(site, "released", { reasons: ["neighbour-rods"], siteOnly: false })).toEqual([
      `${stem}_check-distances_m.csv`,
    ]);
  });
});

/** The list of check distances as it is written. */
import { describe, expect, it } from "vitest";
import { writeCheckDistances } from "../../../src/formats/check-distances-csv.js";
import { given } from "../../../src/job/model/job.js";
import { checkDistances } from "../../../src/plan/index.js";
import { nanometres } from "../../../src/units/length.js";
import { gridLines, planJob } from "../../setting-out-plan.js";

describe("the list", () => {
  it("gives both units, and site distances with the scale factor", () => {
    const transform = { kind: "origin", northing: nanometres(0), easting: nanometres(0), bearing: 12.5 } as const;
    const { plan } = planJob({
      transform,
      scaleFactor: given(0.9996, "job"),
      settingOut: { order: "PNEZD", unit: "ft" },
    });
    const lines = writeCheckDistances(checkDistances(plan), "in", "ft").split("\r\n");
    expect(lines[0]).toBe(
      "what,of,from,to,to tape,plan distance (in),plan distance (ft-intl),site distance (in),site distance (ft-intl)",
    );
    expect(lines[1]).toBe(`diagonal,B1 A-1,A-1_A1,A-1_A3,"1'-3 5/8""",15.6205,1.3017,15.6143,1.3012`);
    expect(lines.at(-2)).toBe(`along line,line 1,A-1_C,B-1_C,"30'-0""",360.0000,30.0000,359.8560,29.9880`);
  });

  it("leaves site distances empty where plan and site are not tied", () => {
    expect(writeCheckDistances(checkDistances(planJob({ lines: gridLines }).plan), "mm", "ft").split("\r\n")[1]).toBe(
      "diagonal,B1 A-1,A-1_A1,A-1_A3,397,396.8,1.3017,,",
    );
  });
});

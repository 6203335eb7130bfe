/** Setting-out files: order, names, elevations, coordinate systems. */
import { describe, expect, it } from "vitest";
import { given, missing } from "../../../src/job/model/job.js";
import { inches, millimetres, nanometres } from "../../../src/units/length.js";
import { baseFixture, groupFixture } from "../../fixture.js";
import { controlPoint, placementAt, planJob, settingOutTexts } from "../../setting-out-plan.js";

const unknown = missing("test", "not given");
const metres = (value: number) => nanometres(value * 1e9);

describe("local coordinates", () => {
  // By hand: 12 x 10 in pattern at B-1, x 30 ft: rods at 30 ft -+ 6 in, -+ 5 in = 0.4167 ft; T.O.C. 100 ft, 9 in of rod.
  it("holds rods by placement and tag, then centres, northing first", () => {
    const { plan } = planJob({ placements: [placementAt(["B", "1"])] });
    expect(settingOutTexts(plan, "local").headed).toBe(
      [
        "point,northing,easting,elevation,description",
        "B-1_A1,0.4167,29.5000,100.7500,ROD B1 B-1 A1 1-1/4",
        "B-1_A2,0.4167,30.5000,100.7500,ROD B1 B-1 A2 1-1/4",
        "B-1_A3,-0.4167,30.5000,100.7500,ROD B1 B-1 A3 1-1/4",
        "B-1_A4,-0.4167,29.5000,100.7500,ROD B1 B-1 A4 1-1/4",
        "B-1_C,0.0000,30.0000,100.0000,CENTRE B1 B-1",
        "",
      ].join("\r\n"),
    );
  });

  it("PENZD: easting first, in the heading too", () => {
    const { plan } = planJob({ placements: [placementAt(["B", "1"])], settingOut: { order: "PENZD", unit: "mm" } });
    const lines = settingOutTexts(plan, "local").headed.split("\r\n");
    expect(lines.slice(0, 2)).toEqual([
      "point,easting,northing,elevation,description",
      "B-1_A1,8991.6,127.0,30708.6,ROD B1 B-1 A1 1-1/4",
    ]);
  });

  it("a quarter turn brings the north-west rod to the south-west", () => {
    const { plan } = planJob({ placements: [placementAt(["A", "1"], { turn: 90 })] });
    expect(settingOutTexts(plan, "local").bare.split("\r\n")[0]).toMatch(/^A-1_A1,-0\.5000,-0\.4167,/);
  });

  it("an unknown T.O.C. or projection leaves the elevation empty, never a guess", () => {
    const noConcrete = planJob({ placements: [placementAt(["A", "1"], { topOfConcrete: unknown })] }).plan;
    for (const line of settingOutTexts(noConcrete, "local").bare.trim().split("\r\n"))
      expect(line.split(",")[3]).toBe("");
    const noRod = baseFixture({ groups: [groupFixture({}, { projection: unknown })] });
    const lines = settingOutTexts(planJob({ placements: [placementAt(["A", "1"])] }, [noRod]).plan, "local").bare.split(
      "\r\n",
    );
    expect(lines[0]).toMatch(/^A-1_A1,0\.4167,-0\.5000,,ROD/);
    expect(lines[4]).toMatch(/^A-1_C,0\.0000,0\.0000,100\.0000,/);
  });

  it("the points of a held base say so", () => {
    const { plan } = planJob({ placements: [placementAt(["A", "1"])] });
    const lines = settingOutTexts(plan, "local", (mark) => mark === "B1")
      .bare.trim()
      .split("\r\n");
    expect(lines.map((line) => line.split(",")[4])).toEqual([
      ...["A1", "A2", "A3", "A4"].map((tag) => `ROD B1 A-1 HELD ${tag} 1-1/4`),
      "CENTRE B1 A-1 HELD",
    ]);
    expect(settingOutTexts(plan, "local", (mark) => mark === "B2").bare).not.toContain("HELD");
  });

  it("the bare file is the other without its first line", () => {
    const { headed, bare } = settingOutTexts(planJob().plan, "local");
    expect(headed.slice(headed.indexOf("\n") + 1)).toBe(bare);
    expect(headed).toMatch(/^[ -~\r\n]*$/);
    expect(headed).not.toContain('"');
  });

  it("a group that does not balance about its working point has both points", () => {
    const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
    const pattern = { kind: "points", at: [at(0, 0), at(12, 0), at(12, 6), at(0, 6)] } as const;
    const base = baseFixture({ groups: [groupFixture({ pattern })] });
    const lines = settingOutTexts(planJob({ placements: [placementAt(["A", "1"])] }, [base]).plan, "local").bare.split(
      "\r\n",
    );
    expect(lines[4]).toBe("A-1_C,0.2500,0.5000,100.0000,CENTRE B1 A-1");
    expect(lines[5]).toBe("A-1_WP,0.0000,0.0000,100.0000,WORKING POINT B1 A-1");
  });
});

describe("site coordinates", () => {
  const transform = { kind: "origin", northing: metres(5000), easting: metres(2000), bearing: 90 } as const;

  // By hand: plan north bears 90 degrees, so plan north is site east and plan east is site south.
  it("turns and shifts", () => {
    const { plan } = planJob({
      transform,
      placements: [placementAt(["B", "2"])],
      settingOut: { order: "PNEZD", unit: "m" },
    });
    const centre = settingOutTexts(plan, "site")
      .bare.split("\r\n")
      .find((line) => line.startsWith("B-2_C"));
    expect(centre).toBe("B-2_C,4990.8560,2007.6200,30.4800,CENTRE B1 B-2");
  });

  it("control points stand as the surveyor gave them, and in local files where their plan place is known", () => {
    const control = [
      controlPoint("CP1", metres(5000.0001), metres(2000), { elevation: given(metres(30), "job") }),
      controlPoint("TBM, gate", metres(1), metres(-2), {
        plan: given({ x: millimetres(100), y: millimetres(-200) }, "job"),
      }),
    ];
    const { plan } = planJob({ transform, control, settingOut: { order: "PNEZD", unit: "m" } });
    expect(settingOutTexts(plan, "site").bare.trim().split("\r\n").slice(-2)).toEqual([
      "CP1,5000.0001,2000.0000,30.0000,CONTROL CP1",
      "TBMgate,1.0000,-2.0000,,CONTROL TBM gate",
    ]);
    expect(settingOutTexts(plan, "local").bare.trim().split("\r\n").slice(-1)).toEqual([
      "TBMgate,-0.2000,0.1000,,CONTROL TBM gate",
    ]);
  });
});

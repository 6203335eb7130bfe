import { describe, expect, it } from "vitest";
import { controlResidual } from "../../../src/checks/job-rules/control-residual.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { PlanSpec } from "../../../src/job/model/plan.js";
import { nanometres } from "../../../src/units/index.js";
import { controlPoint, zero } from "../../setting-out-plan.js";
import { at, jobRowsOf } from "./layout-context.js";

/** Two points 100 ft apart on the plan, `more` nanometres farther on the site: each is left with half of that. */
const stretched = (more: number): Partial<PlanSpec> => ({
  control: [
    controlPoint("CP1", at(60000), at(24000), { plan: given({ x: zero, y: zero }, "job") }),
    controlPoint("CP2", at(60000), nanometres(at(25200) + more), { plan: given({ x: at(1200), y: zero }, "job") }),
  ],
  transform: { kind: "points", points: ["CP1", "CP2"] },
});

describe("control-residual", () => {
  /** The fixture's tolerance: 1/4 in. */
  it.each([
    [2 * at(0.25) - 2, "pass"],
    [2 * at(0.25), "pass"],
    [2 * at(0.25) + 2, "fail"],
  ])("%d nm farther: %s at both points", (more, status) => {
    const rows = jobRowsOf(controlResidual, stretched(more));
    expect(rows.map((row) => [row.subject, row.status, row.value])).toEqual([
      ["CP1", status, { kind: "length", twice: more }],
      ["CP2", status, { kind: "length", twice: more }],
    ]);
  });

  it("says which way, as given less as computed", () => {
    const rows = jobRowsOf(controlResidual, stretched(at(0.25)));
    expect(rows.map(({ note }) => note)).toEqual([
      "residual 1/8 in: 0 north, -1/8 east, as given less as computed",
      "residual 1/8 in: 0 north, 1/8 east, as given less as computed",
    ]);
  });

  it("is reported, not held, without a tolerance", () => {
    const controlTolerance = missing("site.tolerance", "the job names no tolerance");
    const rows = jobRowsOf(controlResidual, { ...stretched(0), controlTolerance });
    expect(rows.map((row) => row.status)).toEqual(["not-checked", "not-checked"]);
  });

  it("does not apply without control points on the plan", () => {
    expect(jobRowsOf(controlResidual).map(({ status, note }) => [status, note])).toEqual([
      ["not-applicable", "the job asks for no site coordinates"],
    ]);
    const origin = { kind: "origin", northing: zero, easting: zero, bearing: 0 } as const;
    expect(jobRowsOf(controlResidual, { transform: origin })[0]?.note).toMatch(/origin and a bearing/);
  });

  it("holds control points against an origin and a bearing too", () => {
    const origin = { kind: "origin", northing: at(60000), easting: at(24000), bearing: 0 } as const;
    const rows = jobRowsOf(controlResidual, { ...stretched(at(0.5)), transform: origin });
    expect(rows.map((row) => [row.subject, row.status])).toEqual([
      ["CP1", "pass"],
      ["CP2", "fail"],
    ]);
  });
});

describe("a gross residual", () => {
  const untold = { controlTolerance: missing("site.tolerance", "the job names no tolerance") };
  const tie = (name: string, x: number, y: number, east: number, north: number) =>
    controlPoint(name, nanometres(at(60000) + north), nanometres(at(24000) + east), {
      plan: given({ x: nanometres(x), y: nanometres(y) }, "job"),
    });

  it("three points whose distances all close, with northing and easting changed round: mirrored", () => {
    const control = [tie("CP1", 0, 0, 0, 0), tie("CP2", at(1200), 0, 0, at(1200)), tie("CP3", 0, at(600), at(600), 0)];
    const site = { control, transform: { kind: "points", points: ["CP1", "CP2", "CP3"] } as const, ...untold };
    const rows = jobRowsOf(controlResidual, site);
    const failing = rows.filter(({ status, severity }) => status === "fail" && severity === "stop");
    expect(failing.length).toBeGreaterThan(0);
    for (const { note } of failing)
      expect(note).toMatch(/go round the other way than on the plan: are north and east swapped\?$/);
  });

  it("three points of which one is elsewhere: nothing is said of north and east", () => {
    const control = [
      tie("CP1", 0, 0, 0, 0),
      tie("CP2", at(1200), 0, at(1200), 0),
      tie("CP3", 0, at(600), at(900), at(600)),
    ];
    const site = { control, transform: { kind: "points", points: ["CP1", "CP2", "CP3"] } as const, ...untold };
    const rows = jobRowsOf(controlResidual, site);
    expect(rows.some(({ status }) => status === "fail")).toBe(true);
    expect(rows.filter(({ note }) => note.includes("swapped"))).toEqual([]);
  });

  it.each([
    [at(120), "not-checked"],
    [at(120) + 1, "fail"],
  ])("from an origin and a bearing, %d nm off at a point 1200 in from the other: %s", (off, status) => {
    const origin = { kind: "origin", northing: at(60000), easting: at(24000), bearing: 0 } as const;
    const control = [tie("CP1", 0, 0, 0, 0), tie("CP2", at(1200), 0, at(1200), off)];
    const rows = jobRowsOf(controlResidual, { control, transform: origin, ...untold });
    expect(rows.map((row) => [row.subject, row.status])).toEqual([
      ["CP1", "not-checked"],
      ["CP2", status],
    ]);
  });

  it("of a single point is held against the size of the plan", () => {
    const origin = { kind: "origin", northing: at(60000), easting: at(24000), bearing: 0 } as const;
    const rowFor = (off: number) =>
      jobRowsOf(controlResidual, { control: [tie("CP1", 0, 0, 0, off)], transform: origin, ...untold })[0];
    expect([rowFor(at(1))?.status, rowFor(at(10000))?.status]).toEqual(["not-checked", "fail"]);
  });
});

/** The layout as a job file has it. */
import { describe, expect, it } from "vitest";
import type { Job, Placement, PlanSpec } from "../../../src/job/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { jobOf } from "./files.js";

const GRID = [
  "grid:",
  "  x: { names: [1, 2, 007], spacing: 25' }",
  "  y: { names: [A, 1E2, A.1], spacing: [20', 10'-6\"], from: -5' }",
  "  others:",
  "    - { kind: skewed, name: S, through: [50', 0], degrees: 45 }",
  "    - { kind: radial, name: R, center: [0, 0], degrees: 90 }",
  "    - { kind: arc, name: K, center: [0, 0], radius: 30' }",
];
const BASE =
  "{ mark: B1, rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, grout: 1-1/2, template: { thickness: 1/4 } }";

function jobWith(...lines: readonly string[]): Job {
  return jobOf(['job: { number: "1" }', "units: in", ...GRID, ...lines, "bases:", `  - ${BASE}`, ""].join("\n"));
}

function siteOf(job: Job): PlanSpec {
  if (job.plan === null) throw new Error("no layout");
  return job.plan;
}

const placed = (...lines: readonly string[]): readonly Placement[] => siteOf(jobWith(...lines)).placements;
const where = (placements: readonly Placement[]) => placements.map(({ lines }) => lines.join("-"));

describe("a job without a layout", () => {
  it("has none", () => {
    const job = jobOf(['job: { number: "1" }', "units: in", "bases:", `  - ${BASE}`, ""].join("\n"));
    expect(job.plan).toBeNull();
    expect(job.lookAlike).toEqual({ kind: "given", value: inches(1), from: "default 1 in" });
  });

  it("names its own limit of likeness", () => {
    const job = jobOf(
      [
        'job: { number: "1" }',
        "units: mm",
        "lookAlike: 15",
        "bases:",
        `  - ${BASE.replace("diameter: 1 ", "diameter: M24 ")}`,
        "",
      ].join("\n"),
    );
    expect(job.lookAlike).toEqual({ kind: "given", value: millimetres(15), from: "job" });
  });
});

describe("grid", () => {
  const { lines } = siteOf(jobWith("placements: [{ base: B1, at: A-1 }]"));

  it("keeps names as written, and the order x, y, others", () => {
    expect(lines.map(({ name }) => name)).toEqual(["1", "2", "007", "A", "1E2", "A.1", "S", "R", "K"]);
  });

  it("adds spacings up from where the first line lies", () => {
    const at = lines.flatMap((line) => (line.kind === "x" || line.kind === "y" ? [line.at] : []));
    expect(at).toEqual([0, 300, 600, -60, 180, 306].map(inches));
  });

  it("repeats a spacing, and takes positions instead", () => {
    const text = [
      'job: { number: "1" }',
      "units: mm",
      "grid:",
      "  x: { names: [a, b, c, d, e, f], spacing: [2 @ 7500, 6000, 2 x 5.5 m] }",
      "  y: { names: [g, h], at: [0, 3000 m] }",
      "placements: [{ base: B1, at: a-g }]",
      "bases:",
      `  - ${BASE.replace("diameter: 1 ", "diameter: M24 ")}`,
      "",
    ];
    const job = jobOf(text.join("\n"));
    const metric = siteOf(job);
    const at = metric.lines.flatMap((line) => (line.kind === "x" || line.kind === "y" ? [line.at] : []));
    expect(at).toEqual([0, 7500, 15000, 21000, 26500, 32000, 0, 3_000_000].map(millimetres));
    expect(metric.settingOut).toEqual({ order: "PNEZD", unit: "m" });
    expect(job.lookAlike).toEqual({ kind: "given", value: millimetres(25), from: "default 25 mm" });
  });

  it("holds skewed and radial lines and arcs", () => {
    expect(lines.slice(6)).toEqual([
      { kind: "skewed", name: "S", through: { x: inches(600), y: inches(0) }, degrees: 45 },
      { kind: "radial", name: "R", center: { x: inches(0), y: inches(0) }, degrees: 90 },
      { kind: "arc", name: "K", center: { x: inches(0), y: inches(0) }, radius: inches(360) },
    ]);
  });
});

describe("placements", () => {
  it.each([
    ["one crossing", "at: A-1", ["A-1"]],
    ["with a slash", "at: A/1", ["A-1"]],
    ["the other way round", "at: 1-A", ["1-A"]],
    ["as a pair", "at: [A, 1]", ["A-1"]],
    ["a list", "at: [A-1, 1E2-2, A.1-007]", ["A-1", "1E2-2", "A.1-007"]],
    ["a list of pairs", "at: [[A, 1], [A, 2]]", ["A-1", "A-2"]],
    ["every crossing", "every: [[A, 1E2], [1, 2]]", ["A-1", "A-2", "1E2-1", "1E2-2"]],
    ["every crossing of one line", "every: [A, [1, 2, 007]]", ["A-1", "A-2", "A-007"]],
    ["a skewed line", "at: S-1E2", ["S-1E2"]],
    ["an arc and a line, near a point", "at: K-1E2, near: [30', 15']", ["K-1E2"]],
    ["a radial line meets an arc once", "at: R-K", ["R-K"]],
  ])("%s", (_name, keys, expected) => {
    expect(where(placed(`placements: [{ base: B1, ${keys} }]`))).toEqual(expected);
  });

  it.each([
    ["template left as setting plate", "3/8", 1195.875],
    ["setting plate over cast rods", "1/4", 1195.75],
  ])("stand on a %s as on grout", (use, thickness, bottom) => {
    const base = BASE.replace("thickness: 1/4", `thickness: ${thickness}, use: ${use}`);
    const job = jobOf(
      ['job: { number: "1" }', "units: in", ...GRID, "placements: [{ base: B1, at: A-1, topOfConcrete: 1194 in }]"]
        .concat(["bases:", `  - ${base}`, ""])
        .join("\n"),
    );
    expect(siteOf(job).placements[0]?.bottomOfPlate).toEqual({
      kind: "given",
      value: inches(bottom),
      from: "top of concrete, grout and setting plate",
    });
  });

  it("take offset, turn and elevations, the site's where they name none", () => {
    const [one, two] = placed(
      "site: { topOfConcrete: 99'-6\" }",
      "placements:",
      "  - { base: B1, at: A-1, offset: [-6, 1/4], turn: -90, topOfConcrete: EL. 98.5 ft, bottomOfPlate: 1184 in }",
      "  - { base: B1, at: A-2 }",
    );
    expect(one).toMatchObject({
      mark: "B1",
      offset: { x: inches(-6), y: inches(0.25) },
      turn: -90,
      topOfConcrete: { kind: "given", value: inches(1182), from: "job" },
      bottomOfPlate: { kind: "given", value: inches(1184), from: "job" },
    });
    expect(two).toMatchObject({
      turn: 0,
      topOfConcrete: { value: inches(1194), from: "job, site.topOfConcrete" },
      bottomOfPlate: { value: inches(1195.5), from: "top of concrete and grout" },
    });
  });

  it("say what is missing where no elevation is given", () => {
    const [one] = placed("placements: [{ base: B1, at: A-1 }]");
    expect(one?.topOfConcrete).toEqual({
      kind: "missing",
      key: "placements.topOfConcrete",
      why: "no top of concrete is given",
    });
  });

  it("count the columns of a base that names no quantity, templates too", () => {
    const job = jobWith("placements: [{ base: B1, at: [A-1, A-2, A-007] }]");
    expect(job.bases.map(({ quantity, template }) => [quantity, template.quantity])).toEqual([[3, 3]]);
  });

  it("a name that holds a hyphen is read where only one reading names two lines", () => {
    const text = ['job: { number: "1" }', "units: in", "grid:"];
    const rest = ["placements: [{ base: B1, at: A-1-2 }]", "bases:", `  - ${BASE}`, ""];
    const job = jobOf(
      [...text, "  x: { names: [2, 3], spacing: 9' }", "  y: { names: [A-1, B], spacing: 9' }", ...rest].join("\n"),
    );
    expect(siteOf(job).placements[0]?.lines).toEqual(["A-1", "2"]);
  });
});

describe("the way to the site", () => {
  const control = [
    "settingOut: { order: PENZD, unit: ft-us }",
    "control:",
    "  - { point: CP1, northing: 3937, easting: 0, elevation: 100.25 ft, at: A-1 }",
    "  - { point: CP2, northing: 3937, easting: 82.02 ft, plan: [25', -5'] }",
    "  - { point: BM, northing: 0, easting: 0 }",
    "placements: [{ base: B1, at: A-1 }]",
  ];

  it("is made by the control points with a place on the plan", () => {
    const site = siteOf(jobWith(...control));
    expect(site.transform).toEqual({ kind: "points", points: ["CP1", "CP2"] });
    expect(site.control[0]).toEqual({
      name: "CP1",
      plan: { kind: "given", value: { x: 0, y: inches(-60) }, from: "job, grid A-1" },
      northing: 1_200_000_000_000,
      easting: 0,
      elevation: { kind: "given", value: nanometres(100.25 * 304_800_000), from: "job" },
    });
    expect(site.control[2]?.plan).toMatchObject({ kind: "missing", key: "control.plan" });
    expect(site.settingOut).toEqual({ order: "PENZD", unit: "ft-us" });
    expect(site.scaleFactor).toEqual({ kind: "given", value: 1, from: "default 1" });
  });

  it("is made by an origin and a bearing", () => {
    const site = siteOf(
      jobWith(
        "settingOut: { unit: m }",
        "site: { origin: { northing: 5000, easting: 2000, bearing: N 30-00 W }, scaleFactor: 0.99987, trueNorth: 12-30, tolerance: 1/8 }",
        "placements: [{ base: B1, at: A-1 }]",
      ),
    );
    expect(site.transform).toEqual({ kind: "origin", northing: 5e12, easting: 2e12, bearing: 330 });
    expect(site.scaleFactor).toEqual({ kind: "given", value: 0.99987, from: "job" });
    expect(site.trueNorth).toEqual({ kind: "given", value: 12.5, from: "job" });
    expect(site.controlTolerance).toEqual({ kind: "given", value: inches(0.125), from: "job" });
  });

  it("is none without control points", () => {
    expect(siteOf(jobWith("placements: [{ base: B1, at: A-1 }]")).transform).toEqual({ kind: "none" });
  });
});

/** Faults of the layout: place, what is wrong, what is allowed; all of them at once. */
import { describe, expect, it } from "vitest";
import { faultsOf } from "./files.js";

const BASE = "rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { thickness: 1/4 } }";

/** A job whose grid stands on lines 3 to 6, the lines under test from line 7. */
function faults(lines: readonly string[], bases: readonly string[] = [`{ mark: B1, ${BASE}`]): string[] {
  const head = [
    'job: { number: "1" }',
    "units: in",
    "grid:",
    "  x: { names: [1, 2, 3, 8], spacing: 25' }",
    "  y: { names: [A, B], at: [0, 20'] }",
    "  others: [{ kind: arc, name: K, center: [0, 0], radius: 30' }]",
  ];
  return faultsOf([...head, ...lines, "bases:", ...bases.map((base) => `  - ${base}`), ""].join("\n"));
}

describe("grid", () => {
  const gridFaults = (x: string, others = "") =>
    faultsOf(
      [
        'job: { number: "1" }',
        "units: in",
        "grid:",
        `  x: ${x}`,
        "  y: { names: [A, B], at: [0, 20'] }",
        ...(others === "" ? [] : [`  others: ${others}`]),
        "placements: [{ base: B1, at: Z-9 }]",
        "bases:",
        `  - { mark: B1, ${BASE}`,
        "",
      ].join("\n"),
    );

  it.each([
    [
      "a spacing list of wrong length",
      "{ names: [1, 2, 3], spacing: [25', 25', 25'] }",
      ["job.yaml:4:35 grid.x.spacing: gives 3 spacings for 3 names; allowed is one less than the names: 2"],
    ],
    [
      "positions of wrong number",
      "{ names: [1, 2, 3], at: [0, 25'] }",
      ["job.yaml:4:30 grid.x.at: gives 2 positions for 3 names; allowed is one a name"],
    ],
    [
      "neither spacing nor positions",
      "{ names: [1, 2, 3] }",
      ["job.yaml:4:6 grid.x.spacing: is required for 3 names; allowed is one less than the names: 2, or at"],
    ],
    [
      "both",
      "{ names: [1, 2], at: [0, 9'], spacing: 9' }",
      ["job.yaml:4:45 grid.x.spacing: is given beside at; allowed is at, or spacing and from"],
    ],
    [
      "a name twice, in either direction",
      "{ names: [1, A], spacing: 9' }",
      [
        'job.yaml:5:16 grid.y.names[0]: the line "A" is named twice; first at job.yaml:4:19; every line has its own name',
      ],
    ],
    [
      "two lines in one place",
      "{ names: [1, 2, 3], at: [0, 108, 9'] }",
      ["job.yaml:4:39 grid.x.at[2]: line 3 lies where line 2 does; allowed are lines that differ"],
    ],
    [
      "a spacing of zero",
      "{ names: [1, 2], spacing: 0 }",
      ["job.yaml:4:32 grid.x.spacing: \"0\" is not above zero; allowed is a spacing above zero, as 25', or 6 @ 25'"],
    ],
    [
      "a position beyond 10 km",
      "{ names: [1, 2], at: [0, 10000.001 m] }",
      ['job.yaml:4:31 grid.x.at[1]: "10000.001 m" is more than 10000 m: lengths up to 10000 m are allowed'],
    ],
  ])("%s", (_name, x, expected) => {
    expect(gridFaults(x)).toEqual(expected);
  });

  it("a radius that is not above zero; an unknown kind of line", () => {
    const others = "[{ kind: arc, name: K, center: [0, 0], radius: 0 }, { kind: curve, name: L }]";
    expect(gridFaults("{ names: [1, 2], spacing: 9' }", others)).toEqual([
      'job.yaml:6:71 grid.others[1].kind: "curve" is not allowed; allowed is kind: skewed, radial or arc',
    ]);
    expect(gridFaults("{ names: [1, 2], spacing: 9' }", others.replace(/, { kind: curve.*}/, ""))).toEqual([
      "job.yaml:6:58 grid.others[0].radius: 0 in is not above zero",
    ]);
  });

  it("10 km exactly is allowed", () => {
    expect(gridFaults("{ names: [1, 2], at: [0, 10000 m] }")).toEqual([
      'job.yaml:6:30 placements[0].at: there is no grid line "Z"; allowed are the names in grid (nearest: B, A)',
    ]);
  });
});

describe("placements", () => {
  it.each<[string, string, string[]]>([
    [
      "a base that does not exist",
      "{ base: B7, at: A-1 }",
      [
        'job.yaml:8:13 placements[0].base: "B7" is no base of this job; allowed is the mark of a base (did you mean B1?)',
      ],
    ],
    [
      "a line that does not exist, and the nearest by number",
      "{ base: B1, at: A-7 }",
      ['job.yaml:8:21 placements[0].at: there is no grid line "7"; allowed are the names in grid (nearest: 8, 3)'],
    ],
    [
      "a crossing without a hyphen",
      "{ base: B1, at: A9 }",
      ['job.yaml:8:21 placements[0].at: "A9" names no crossing; allowed are two grid lines, as A-1'],
    ],
    [
      "parallel lines",
      "{ base: B1, at: 1-2 }",
      ["job.yaml:8:21 placements[0].at: lines 1 and 2 do not cross; allowed are two lines that do"],
    ],
    [
      "a line and an arc that do not meet",
      "{ base: B1, at: 3-K }",
      ["job.yaml:8:21 placements[0].at: lines 3 and K do not cross; allowed are two lines that do"],
    ],
    [
      "two crossings, 20 ft up on a circle of 30 ft: x = sqrt(30^2 - 20^2) ft",
      "{ base: B1, at: B-K }",
      [
        "job.yaml:8:21 placements[0].at: lines B and K cross twice, at [-268.3282, 240] in and [268.3282, 240] in; say which by near: [x, y]",
      ],
    ],
    [
      "two crossings, and a point as near to one as to the other",
      "{ base: B1, at: B-K, near: [0, 0] }",
      [
        "job.yaml:8:21 placements[0].at: lines B and K cross twice, at [-268.3282, 240] in and [268.3282, 240] in; say which by near: [x, y]",
      ],
    ],
    [
      "two bases on one spot",
      "{ base: B1, at: [A-1, B-1, A-1] }",
      [
        "job.yaml:8:32 placements[0].at[2]: B1 at A-1 stands on one spot with B1 at A-1, job.yaml:8:22 placements[0].at[0]; every base has its own",
      ],
    ],
    [
      "two bases on one spot by their offsets",
      "{ base: B1, at: A-1 }\n  - { base: B1, at: A-2, offset: [-25', 0] }",
      [
        "job.yaml:9:21 placements[1].at: B1 at A-2 stands on one spot with B1 at A-1, job.yaml:8:21 placements[0].at; every base has its own",
      ],
    ],
    [
      "opposite hand",
      "{ base: B1, at: A-1, hand: opposite }",
      [
        'job.yaml:8:32 placements[0].hand: "opposite" cannot be placed: a base of opposite hand gets a mark of its own, with its pattern mirrored',
      ],
    ],
    [
      "a turn that is no number",
      "{ base: B1, at: A-1, turn: quarter }",
      [
        'job.yaml:8:32 placements[0].turn: "quarter" is not an angle: allowed are decimal degrees from -360 to 360, as 45, 22.5 or -30 deg',
      ],
    ],
    [
      "neither at nor every",
      "{ base: B1 }",
      ["job.yaml:8:5 placements[0].at: is required; allowed are two grid lines, as A-1, or a list of them"],
    ],
    [
      "both",
      "{ base: B1, at: A-1, every: [A, 2] }",
      ["job.yaml:8:33 placements[0].every: is given beside at; allowed is one of them"],
    ],
    [
      "every with an unknown line",
      "{ base: B1, every: [[A, C], [1, 2]] }",
      [
        'job.yaml:8:29 placements[0].every[0][1]: there is no grid line "C"; allowed are the names in grid (nearest: B, A)',
      ],
    ],
    [
      "an empty list",
      "{ base: B1, at: [] }",
      ["job.yaml:8:21 placements[0].at: is an empty list; allowed are two grid lines, as A-1, or a list of them"],
    ],
    [
      "an unknown key",
      "{ base: B1, at: A-1, rotation: 90 }",
      [
        "job.yaml:8:26 placements[0].rotation: unknown key; allowed are base, at, every, near, offset, turn, topOfConcrete, bottomOfPlate, hand, delivery",
      ],
    ],
  ])("%s", (_name, placement, expected) => {
    expect(faults(["placements:", `  - ${placement}`])).toEqual(expected);
  });

  it("hold their count against the quantity, and a mark that nobody placed", () => {
    const bases = [`{ mark: B1, quantity: 3, ${BASE}`, `{ mark: B2, ${BASE}`];
    expect(faults(["placements:", "  - { base: B1, at: [A-1, A-2] }"], bases)).toEqual([
      "job.yaml:10:27 bases[0].quantity: is 3, but 2 of B1 are placed (job.yaml:8:22, job.yaml:8:27); allowed is as many as are placed",
      'job.yaml:11:13 bases[1].mark: "B2" is placed nowhere (placements at job.yaml:8:3); every base of a job with placements stands somewhere',
    ]);
  });

  it("do not miscount what was refused", () => {
    const bases = [`{ mark: B1, quantity: 3, ${BASE}`];
    expect(faults(["placements:", "  - { base: B1, at: [A-1, A-2, A-9] }"], bases)).toHaveLength(1);
    expect(faults(["placements:", "  - { base: B2, at: [A-1, A-2, A-3] }"], bases)).toHaveLength(1);
  });

  it("tell every fault at once", () => {
    const lines = [
      "placements:",
      "  - { base: B9, at: [A-1, Q-1, 1-2], turn: x }",
      "  - { base: B1, at: A-1, hand: opposite }",
      "  - { base: B1, at: [A-1, B-K], colour: red }",
    ];
    expect(faults(lines).map((fault) => fault.split(":")[1])).toEqual(["8", "9", "10"]);
  });

  it.each([
    ["a grid alone", "", ["job.yaml:1:1 placements: is required beside grid; a layout has a grid and placements"]],
    [
      "no list",
      "placements: { where: A-1 }",
      [
        "job.yaml:7:13 placements.file: is required; allowed is a line of text, at most 200 characters",
        "job.yaml:7:15 placements.where: unknown key; allowed are file, sheet, table, columns, notes, cells",
      ],
    ],
    [
      "a file that is not there",
      "placements: list.csv",
      [
        "job.yaml:7:13 placements: there is no placement list list.csv; allowed is a CSV or XLSX file beside the job file",
      ],
    ],
  ])("%s", (_name, line, expected) => {
    expect(faults([line])).toEqual(expected);
  });

  it("need a grid", () => {
    const text = [
      'job: { number: "1" }',
      "units: in",
      "placements: [{ base: B1, at: A-1 }]",
      "bases:",
      `  - { mark: B1, ${BASE}`,
    ];
    expect(faultsOf(text.join("\n"))).toEqual([
      "job.yaml:1:1 grid: is required beside placements; a layout has a grid and placements",
    ]);
  });
});

describe("elevations say their unit", () => {
  const fault = (key: "topOfConcrete" | "bottomOfPlate", text: string) =>
    faults([`placements: [{ base: B1, at: A-1, ${key}: ${text} }]`]);

  it.each(["topOfConcrete", "bottomOfPlate"] as const)(
    "%s without a unit is a fault that says what to write",
    (key) => {
      const [told, ...others] = fault(key, "99.5");
      expect(others).toEqual([]);
      expect(told).toMatch(
        new RegExp(
          `placements\\[0\\]\\.${key}: "99.5" has no unit, which an elevation must say: write 99.5 ft or 99.5 in$`,
        ),
      );
    },
  );

  it.each(["0", "-12", "+100.00", "EL. 99.5", "EL 99 1/2", "99-1/2", "\u22120.300"])("%s", (text) => {
    expect(fault("topOfConcrete", `"${text}"`)[0]).toContain(`"${text}" has no unit`);
  });

  it("so does that of the site, and a metric job's", () => {
    const site = ["placements: [{ base: B1, at: A-1 }]", "site: { topOfConcrete: 99.5 }"];
    expect(faults(site)).toEqual([
      'job.yaml:8:24 site.topOfConcrete: "99.5" has no unit, which an elevation must say: write 99.5 ft or 99.5 in',
    ]);
    const metric = [
      'job: { number: "1" }',
      "units: mm",
      "grid: { x: { names: [1, 2], spacing: 6000 }, y: { names: [A] } }",
      "placements: [{ base: B1, at: A-1, topOfConcrete: 4500 }]",
      "bases: [{ mark: B1, rods: { diameter: M24 }, pattern: { kind: rectangle, x: 300, y: 200 }, template: { thickness: 6 } }]",
    ];
    expect(faultsOf(metric.join("\n"))).toEqual([
      'job.yaml:4:50 placements[0].topOfConcrete: "4500" has no unit, which an elevation must say: write 4500 mm or 4500 m',
    ]);
  });

  it.each([
    "99'-6\"",
    "+100'-0\"",
    "100.00 ft",
    "EL. 98.5 ft",
    "el +98'-6 1/2\"",
    "99'-6",
    "1194 in",
    "-0.300 m",
    "\u22120.300 m",
    "\u00B10.000 m",
    "+/-0 mm",
    "30480mm",
  ])("%s is read", (text) => {
    expect(fault("topOfConcrete", `'${text.replaceAll("'", "''")}'`)).toEqual([]);
  });

  it("a distance on the plan stays in the unit of the job", () => {
    expect(faults(["placements: [{ base: B1, at: A-1, offset: [6, -6] }]"])).toEqual([]);
  });
});

describe("control points and the way to the site", () => {
  const PLACED = "placements: [{ base: B1, at: A-1 }]";
  const control = (...lines: readonly string[]) => faults([PLACED, "settingOut: { unit: m }", ...lines]);

  it.each<[string, string[], string[]]>([
    [
      "too few",
      ["control: [{ point: CP1, northing: 1, easting: 2, at: A-1 }, { point: CP2, northing: 3, easting: 4 }]"],
      [
        "job.yaml:9:10 control: only one point has a place on the plan (plan or at); allowed are two or more, or site.origin",
      ],
    ],
    [
      "on one spot of the site",
      ["control: [{ point: C1, northing: 1, easting: 2, at: A-1 }, { point: C2, northing: 1, easting: 2, at: A-2 }]"],
      ["job.yaml:9:10 control: C1 and C2 have one place on the site; allowed are points apart"],
    ],
    [
      "on one spot of the plan",
      [
        "control: [{ point: C1, northing: 1, easting: 2, at: A-1 }, { point: C2, northing: 5, easting: 2, plan: [0, 0] }]",
      ],
      ["job.yaml:9:10 control: C1 and C2 have one place on the plan; allowed are points apart"],
    ],
    [
      "a name twice",
      [
        "control:",
        "  - { point: C1, northing: 1, easting: 2 }",
        "  - { point: c1, northing: 1, easting: 2 }",
        "site: { origin: { northing: 0, easting: 0, bearing: 0 } }",
      ],
      [
        'job.yaml:11:14 control[1].point: the point "c1" is named twice; first at job.yaml:10:14; every point has its own name',
      ],
    ],
    [
      "a name that a logger cannot take, a coordinate that is no number",
      ['control: [{ point: "C,1", northing: 1e3, easting: 2, at: A-1 }]'],
      [
        'job.yaml:9:20 control[0].point: "C,1" is no name of a point; allowed are at most 16 letters, digits, dots, hyphens and underscores, as CP1',
        'job.yaml:9:37 control[0].northing: "1e3" is not a coordinate: allowed are decimal numbers up to 10 000 km, as 5000.125, 312.5 m, 1640.42 ft, 1640.41 ft-us',
      ],
    ],
    [
      "points that are not there",
      [
        "control: [{ point: C1, northing: 1, easting: 2, at: A-1 }, { point: C2, northing: 5, easting: 2, at: A-2 }]",
        "site: { points: [C1, C2, C3] }",
      ],
      ['job.yaml:10:26 site.points[2]: "C3" is no control point; allowed are C1, C2'],
    ],
    [
      "an origin beside points",
      ["site: { points: [C1], origin: { northing: 0, easting: 0, bearing: 0 } }"],
      ["job.yaml:9:17 site.points: is given beside origin; allowed is one of them"],
    ],
    [
      "scale factors out of 0.9 to 1.1",
      ["site: { scaleFactor: 1.1001 }"],
      ['job.yaml:9:22 site.scaleFactor: "1.1001" is not allowed; allowed is a factor from 0.9 to 1.1, as 0.99987'],
    ],
    [
      "a bearing that is none",
      ["site: { trueNorth: 32-75 }"],
      [
        'job.yaml:9:20 site.trueNorth: "32-75" is no bearing: allowed are degrees clockwise from north from 0 to 360, as 32.5, 32-30-15, 32\u00B030\'15", or N 32-30-15 E',
      ],
    ],
    [
      "a crossing of the control that is two",
      [
        "control: [{ point: C1, northing: 1, easting: 2, at: B-K }]",
        "site: { origin: { northing: 0, easting: 0, bearing: 0 } }",
      ],
      ["job.yaml:9:53 control[0].at: lines B and K cross twice; allowed is plan: [x, y]"],
    ],
  ])("%s", (_name, lines, expected) => {
    expect(control(...lines)).toEqual(expected);
  });

  it.each(["0.9", "1.1", "1", "0.99987"])("a scale factor of %s is allowed", (factor) => {
    expect(control(`site: { scaleFactor: ${factor} }`)).toEqual([]);
  });

  it("which foot it is must be said", () => {
    expect(faults([PLACED, "site: { origin: { northing: 1 m, easting: 2 m, bearing: 0 } }"])).toEqual([
      "job.yaml:1:1 settingOut.unit: is required beside site.origin; allowed is m, mm, ft (international) or ft-us (US survey): which foot it is makes 2 ft in a million",
    ]);
  });

  it("points that do not fit are no fault: the residual is reported", () => {
    const lines = [
      "control: [{ point: C1, northing: 1, easting: 2, at: A-1 }, { point: C2, northing: 900, easting: 2, at: A-2 }]",
    ];
    expect(control(...lines)).toEqual([]);
  });
});

describe("the farthest that a point of a job may lie: 100 km from plan 0,0, and on the site from the others", () => {
  const metric = (grid: string, placements: string, more: readonly string[] = []): string[] =>
    faultsOf(
      [
        'job: { number: "1" }',
        "units: mm",
        "rules: metric",
        "shop: plasma-metric",
        `grid: ${grid}`,
        `placements: ${placements}`,
        ...more,
        "bases:",
        "  - { mark: B1, rods: { diameter: M20 }, pattern: { kind: rectangle, x: 200, y: 200 }, template: { thickness: 6 } }",
        "",
      ].join("\n"),
    );
  const steps = (count: number, spacing: string, from = "0") => {
    const names = Array.from({ length: count + 1 }, (_, i) => `n${i}`).join(", ");
    return `{ x: { names: [${names}], spacing: ${count} @ ${spacing}, from: ${from} }, y: { names: [1], at: [0] } }`;
  };
  const PLAIN = "{ x: { names: [A, B], at: [0, 6000] }, y: { names: [1], at: [0] } }";

  it.each([
    ["on the limit", steps(10, "10000 m"), []],
    [
      "1 nm beyond it",
      steps(10, "10000 m", "0.000001"),
      ["job.yaml:5:77 grid.x.spacing: puts line n10 a little more than 100 km from plan 0,0; allowed are 100 km"],
    ],
    [
      "1 nm beyond it on the other side of it",
      "{ x: { names: [A, B], spacing: 1, from: -10000 m }, y: { names: [1], at: [0] } }",
      [],
    ],
    [
      "beyond every lattice",
      steps(901, "10000 m"),
      [expect.stringMatching(/grid\.x\.spacing: puts line n11 110\.0 km from plan 0,0; allowed are 100 km$/)],
    ],
  ])("grid: %s", (_, grid, wanted) => {
    const at = grid.startsWith("{ x: { names: [A") ? "A-1" : "n0-1";
    expect(metric(grid, `[{ base: B1, at: ${at} }]`)).toEqual(wanted);
  });

  it("lines that cross too far out, and a base that stands there by its offset", () => {
    const slant = (degrees: string) =>
      `{ x: { names: [A], at: [0] }, others: [{ kind: skewed, name: S, through: [0, 0], degrees: 10 }, { kind: skewed, name: T, through: [0, 10000 m], degrees: ${degrees} }] }`;
    expect(metric(slant("10.001"), "[{ base: B1, at: [S, T] }]")).toEqual([
      "job.yaml:6:30 placements[0].at: lines S and T cross farther than 100 km from plan 0,0; allowed are two lines that cross nearer",
    ]);
    expect(metric(slant("10.0000001"), "[{ base: B1, at: [S, T] }]")).toHaveLength(1);
    expect(metric(slant("30"), "[{ base: B1, at: [S, T] }]")).toEqual([]);
    const edge = steps(10, "10000 m");
    expect(metric(edge, "[{ base: B1, at: n10-1 }]")).toEqual([]);
    expect(metric(edge, "[{ base: B1, at: n10-1, offset: [0.000001, 0] }]")).toEqual([
      "job.yaml:6:30 placements[0].at: stands a little more than 100 km from plan 0,0; allowed are 100 km",
    ]);
  });

  const control = (...points: readonly string[]): string[] =>
    metric(PLAIN, "[{ base: B1, at: A-1 }]", [
      "settingOut: { unit: m }",
      "control:",
      ...points.map((point) => `  - { point: ${point} }`),
    ]);
  const CP1 = "CP1, northing: 5000, easting: 2000, plan: [0, 0]";
  const CP2 = "CP2, northing: 5000, easting: 2006, plan: [6000, 0]";

  it.each([
    ["near", "CP3, northing: 5100, easting: 2006", []],
    ["on the limit", "CP3, northing: 105000, easting: 2006", []],
    [
      "1 nm beyond it",
      "CP3, northing: 105000.000000001, easting: 2006",
      ["job.yaml:11:29 control[2].northing: puts CP3 a little more than 100 km from CP2; allowed are 100 km"],
    ],
    [
      "of another system",
      "CP3, northing: 4500000, easting: 500000",
      ["job.yaml:11:29 control[2].northing: puts CP3 4522.5 km from CP2; allowed are 100 km"],
    ],
    [
      "as far as a coordinate goes",
      "CP3, northing: -10000000, easting: -10000000",
      [
        expect.stringMatching(
          /^job\.yaml:11:29 control\[2\]\.northing: puts CP3 \d+\.\d km from CP\d; allowed are 100 km$/,
        ),
      ],
    ],
    [
      "of a lost decimal in its elevation",
      "CP3, northing: 5100, easting: 2006, elevation: 100001",
      ["job.yaml:11:61 control[2].elevation: is a little more than 100 km from zero; allowed are 100 km"],
    ],
  ])("a control point %s", (_, third, wanted) => {
    expect(control(CP1, CP2, third)).toEqual(wanted);
  });

  it("of two control points either may be the slip: the second is told, from the first", () => {
    expect(control(CP1, "CP2, northing: 5000, easting: 2006000, plan: [6000, 0]")).toEqual([
      "job.yaml:10:29 control[1].northing: puts CP2 2004.0 km from CP1; allowed are 100 km",
    ]);
  });

  it("beside an origin control points lie near it", () => {
    const sited = (northing: string) =>
      metric(PLAIN, "[{ base: B1, at: A-1 }]", [
        "settingOut: { unit: m }",
        "site: { origin: { northing: 5000, easting: 2000, bearing: 0 } }",
        `control: [{ point: CP1, northing: ${northing}, easting: 2000 }]`,
      ]);
    expect(sited("5010")).toEqual([]);
    expect(sited("4500000")).toEqual([
      "job.yaml:9:35 control[0].northing: puts CP1 4495.0 km from site.origin; allowed are 100 km",
    ]);
  });

  it("a whole site far from any origin is allowed: only distances count", () => {
    const far = "northing: 4500000.125, easting: 500000";
    expect(
      control(`CP1, ${far}, plan: [0, 0]`, "CP2, northing: 4500000.125, easting: 500006, plan: [6000, 0]"),
    ).toEqual([]);
  });
});

/** The job file of the public documentation, and what its defaults become. */
import { describe, expect, it } from "vitest";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { faultsOf, jobOf, withBase, withBases } from "./files.js";

const DOCUMENTED = `job:
  number: "24-118"
  title: Cold store, phase 2
  revision: B
  status: released
  date: 2026-11-24
units: in
rules: us
shop: plasma
bases:
  - mark: B1
    quantity: 6
    member: column
    rods: { diameter: 1-1/4, grade: 55, finish: galvanized, projection: 9, embedment: 24, torqued: false }
    pattern: { kind: rectangle, x: 12, y: 10 }
    basePlate: { x: 18, y: 16, at: [0, 0], thickness: 1-1/2, hole: 2-1/16, washer: { shape: square, size: 3, thickness: 1/2 } }
    concrete: { x: 24, y: 24, at: [0, 0] }
    template:
      mark: T1
      quantity: 2
      use: template
      support: form
      material: steel
      thickness: 1/4
      hole: 1-5/16
      outline: { kind: rectangle, x: 20, y: 18, at: [0, 0], corner: { kind: chamfer, size: 1 } }
      opening: { diameter: 6 }
      key: auto
`;

const missing = (key: string) => ({ kind: "missing", key });

describe("the documented job", () => {
  const job = jobOf(DOCUMENTED);
  const base = job.bases[0];
  const group = base?.groups[0];

  it("keeps its title block as written", () => {
    expect(job).toMatchObject({
      number: "24-118",
      title: "Cold store, phase 2",
      revision: "B",
      status: "released",
      date: "2026-11-24",
      unit: "in",
    });
  });

  it("names the default editions", () => {
    expect(job.editions).toEqual({
      set: "us",
      templateHoles: "Design Guide 1, 2nd ed.",
      baseHoles: "AISC 360-22 C-J9.1",
      placing: "ACI 117-10",
      edges: "AISC 360-22",
      concrete: "ACI 318-19",
    });
  });

  it("completes the rods from the standards, each value with its origin", () => {
    expect(group?.rod).toMatchObject({
      size: "1-1/4",
      diameter: inches(1.25),
      thread: "UNC",
      grade: { kind: "given", value: "F1554 55", from: "job" },
      zincGrowth: { kind: "given", value: inches(0.007), from: "typical zinc, upper value (3.6 to 7.0 mil)" },
      // ASME B18.2.2 heavy hex 1-1/4: F 2.000, G 2.309, H 1.251 (maxima); heavy hex since galvanized, ASTM F1554.
      nut: {
        kind: "given",
        from: "F1554 55; ASME B18.2.2 heavy hex",
        value: { kind: "heavy hex", acrossCorners: inches(2.309), height: inches(1.251) },
      },
      torqued: { kind: "given", value: false },
      projection: { kind: "given", value: inches(9) },
      length: missing("rods.length"),
      threadLength: missing("rods.threads"),
      bottom: missing("rods.bottom"),
      wrenchRoom: missing("rods.wrenchRoom"),
    });
  });

  it("has the holes of the job and those of the tables", () => {
    expect(group).toMatchObject({
      letter: "A",
      // d + 1/16 in, Design Guide 1, 2nd ed., s.2.9
      tableHole: { kind: "given", value: inches(1.3125), from: "Design Guide 1, 2nd ed., s.2.9" },
      hole: { kind: "given", value: inches(1.3125), from: "job" },
      // AISC 360-22 Table C-J9.1: 2-1/16 for 1-1/4
      tableBaseHole: { kind: "given", value: inches(2.0625), from: "AISC 360-22 C-J9.1" },
      baseHole: { kind: "given", value: inches(2.0625), from: "job" },
      washer: { kind: "given", value: { shape: "square", size: inches(3) } },
    });
  });

  it("has the template as written", () => {
    expect(base?.template).toMatchObject({
      mark: "T1",
      quantity: 2,
      outline: { kind: "rectangle", x: inches(20), corner: { kind: "chamfer", x: inches(1), y: inches(1) } },
      opening: { kind: "circle", diameter: inches(6), at: { x: 0, y: 0 } },
      key: "auto",
      height: missing("template.height"),
    });
  });

  it("remembers where the base stands", () => {
    expect(base?.place).toEqual({ file: "job.yaml", line: 11, column: 5, path: "bases[0]" });
  });
});

describe("what is required is enough", () => {
  const job = jobOf(withBase({}));

  it("everything else has a default or is missing", () => {
    expect(job).toMatchObject({ status: "preliminary", date: "2026-01-01", revision: "-", shop: { name: "plasma" } });
    expect(job.bases[0]).toMatchObject({
      quantity: 1,
      member: "column",
      basePlate: { shape: missing("basePlate"), thickness: missing("basePlate.thickness") },
      concrete: { shape: missing("concrete"), exposure: missing("concrete.exposure") },
      column: missing("column"),
      columnName: "",
      grout: missing("grout"),
      levelling: missing("levelling"),
      template: {
        mark: "B1",
        quantity: 1,
        use: "template",
        support: missing("template.support"),
        material: "steel",
        outline: { kind: "auto", corner: { kind: "square" } },
        opening: { kind: "none" },
        key: "auto",
      },
    });
    expect(job.bases[0]?.groups[0]).toMatchObject({
      hole: { value: inches(1.0625) },
      baseHole: missing("basePlate.hole"),
      washer: missing("basePlate.washer"),
      rod: {
        grade: missing("rods.grade"),
        zincGrowth: missing("rods.finish"),
        nut: missing("rods.grade or rods.nut, rods.finish or rods.nut"),
      },
    });
  });
});

describe("marks, numbers, revisions and grades are read as written", () => {
  it.each(["007", "1E2", "yes", "1.50", "0x10", "null1", "2026-11-24"])("%s", (written) => {
    const job = jobOf(
      withBase({ mark: written }).replace('{ number: "1" }', `{ number: ${written}, revision: ${written} }`),
    );
    expect([job.number, job.revision, job.bases[0]?.mark]).toEqual([written, written, written]);
  });
});

const rodOf = (rods: string, changes: Record<string, string | null> = {}) =>
  jobOf(withBase({ rods, ...changes })).bases[0]?.groups[0];

describe("rods", () => {
  it.each([
    ["1-1/4", "1-1/4", inches(1.25)],
    ['"1 1/4\\""', "1-1/4", inches(1.25)],
    ["1.25", "1-1/4", inches(1.25)],
    ["M30", "M30", millimetres(30)],
    ["30 mm", "M30", millimetres(30)],
    ["1-7/8", "1-7/8", inches(1.875)],
  ])("size %s", (written, size, diameter) => {
    expect(rodOf(`{ diameter: ${written} }`)?.rod).toMatchObject({ size, diameter });
  });

  it.each([
    // ASTM F1554: A563 A hex up to 1-1/2 in, heavy hex above; grade 55 heavy hex where galvanized; grade 105 DH heavy hex.
    ["1, grade: 36, finish: galvanized", "hex"],
    ["1-3/4, grade: 36, finish: plain", "heavy hex"],
    ["1, grade: 55, finish: plain", "hex"],
    ["1, grade: F1554 Gr 55, finish: galvanized", "heavy hex"],
    ["1, grade: 105", "heavy hex"],
    ["1, grade: 105, nut: hex", "hex"],
  ])("nut of %s", (rods, kind) => {
    expect(rodOf(`{ diameter: ${rods} }`)?.rod.nut).toMatchObject({ kind: "given", value: { kind } });
  });

  it("nut of grade 55 hangs on the finish", () => {
    expect(rodOf("{ diameter: 1, grade: 55 }")?.rod.nut).toMatchObject(missing("rods.finish or rods.nut"));
  });

  it("nut of a metric rod: ISO 4032, corners s / cos 30", () => {
    // ISO 4032 M30: s = 46 mm, m = 25.6 mm; 46 / cos 30 = 53.1162 mm
    expect(
      rodOf("{ diameter: M30, grade: 8.8 }", { template: "{ thickness: 1/4, hole: 33 mm }" })?.rod.nut,
    ).toMatchObject({
      from: "ISO 4032",
      value: { acrossCorners: millimetres(53.116225), height: millimetres(25.6) },
    });
  });

  it("grades that the shop file declares", () => {
    const shop = shopText("grades: [{ name: A193 B7, nut: heavy hex }, { name: Special }]");
    const job = (grade: string) =>
      withBase({ rods: `{ diameter: 1, grade: ${grade} }` }).replace("rules: us", "rules: us\nshop: my.yaml");
    expect(jobOf(job("a193 b7"), { "my.yaml": shop }).bases[0]?.groups[0]?.rod).toMatchObject({
      grade: { value: "A193 B7" },
      nut: { from: "shop; ASME B18.2.2 heavy hex" },
    });
    expect(jobOf(job("Special"), { "my.yaml": shop }).bases[0]?.groups[0]?.rod.nut).toMatchObject(missing("rods.nut"));
  });
});

/** The packaged plasma shop with more keys. */
function shopText(more: string): string {
  return [
    "units: in",
    "process: plasma",
    "cut: { deviation: 0.01, taper: ISO 9013 range 1 }",
    "smallest:",
    "  hole: { perThickness: 1, least: 0, from: test }",
    "  web: { perThickness: 1, least: 0, from: test }",
    "  corner: { least: 0, from: test }",
    "distances: { edge: 1/2, web: 1/2, nutGap: 1/8, bearing: 1, formGap: 1/2, increment: 1/2, finishingRoom: 1 }",
    "marking: { how: none, textHeight: 1/2, leastTextHeight: 1/4, clearance: 1/8 }",
    "cutFile: { layers: { outline: A, holes: A, openings: A, marks: M, drill: D } }",
    more,
    "",
  ].join("\n");
}

describe("holes", () => {
  it("metric: ISO 273 medium up to M39, d + 3 mm above (common practice); base plate d + 6 mm (common practice)", () => {
    const group = (size: string) =>
      jobOf(withBase({ rods: `{ diameter: ${size} }` }).replace("rules: us", "rules: metric")).bases[0]?.groups[0];
    expect(group("M30")).toMatchObject({ hole: { value: millimetres(33) }, tableBaseHole: { value: millimetres(36) } });
    expect(group("M48")).toMatchObject({ hole: { value: millimetres(51) }, tableBaseHole: { value: millimetres(54) } });
  });

  it("a size outside the table is missing, with the nearest sizes", () => {
    expect(rodOf("{ diameter: 1-3/8 }")?.tableBaseHole).toEqual({
      kind: "missing",
      key: "rules.baseHoles",
      why: "AISC 360-22 C-J9.1 does not hold 1-3/8; nearest sizes: 1-1/4, 1-1/2",
    });
  });

  it("an edition that the job chooses", () => {
    const text = withBase({ basePlate: "{ hole: 2 }" }).replace(
      "rules: us",
      'rules: { set: us, baseHoles: "design guide 1, 3rd ed. examples" }',
    );
    const job = jobOf(text);
    expect(job.editions.baseHoles).toBe("Design Guide 1, 3rd ed. examples");
    // Design Guide 1, 3rd ed., examples: 1-7/8 for 1 in
    expect(job.bases[0]?.groups[0]?.tableBaseHole).toMatchObject({ value: inches(1.875) });
  });

  it("a plate over cast rods takes the base-plate hole: the job's, else the table's", () => {
    const over = "{ thickness: 1/4, use: setting plate over cast rods }";
    expect(rodOf("{ diameter: 1 }", { template: over, basePlate: "{ hole: 2 }" })).toMatchObject({
      hole: { value: inches(2), from: "base-plate hole of the job" },
    });
    // AISC 360-22 Table C-J9.1: 1-13/16 for 1 in
    expect(rodOf("{ diameter: 1 }", { template: over })).toMatchObject({
      hole: { value: inches(1.8125), from: "AISC 360-22 C-J9.1" },
    });
    expect(faultsOf(withBase({ rods: "{ diameter: 1-3/8 }", template: over }))).toEqual([
      "job.yaml:8:15 bases[0].template.hole: is required here: a plate over cast rods takes the base-plate hole: " +
        "AISC 360-22 C-J9.1 does not hold 1-3/8; nearest sizes: 1-1/4, 1-1/2",
    ]);
  });
});

describe("washers by the name of their standard", () => {
  it.each([
    // ASTM F844-07a s.7.1: narrow unless wide is ordered; 7/8 in: outside 1.750 narrow, 2.250 wide. ASTM F436 1 in: 2.000
    ["F844", "7/8", inches(1.75), "ASTM F844"],
    ["F844 wide", "7/8", inches(2.25), "ASTM F844 wide"],
    ["F844 narrow", "7/8", inches(1.75), "ASTM F844 narrow"],
    ["ASTM F844 narrow", "2", inches(4.5), "ASTM F844 narrow"],
    ["ASTM F436", "1", inches(2), "ASTM F436"],
  ])("%s", (written, rod, size, from) => {
    const washer = rodOf(`{ diameter: ${rod} }`, { basePlate: `{ washer: ${written} }` })?.washer;
    expect(washer).toMatchObject({ kind: "given", from, value: { shape: "round", size } });
  });
});

describe("a washer standard of two series", () => {
  const washerOf = (written: string, rod: string) => {
    const washer = rodOf(`{ diameter: ${rod} }`, { basePlate: `{ washer: ${written} }` })?.washer;
    return washer?.kind === "given" ? washer.value : undefined;
  };

  // ASTM F844 / ASME B18.21.1 Type A: narrow and wide outside diameters to 1-1/2 in; one series from 1-3/4 in on.
  it.each([
    ["3/4", 1.469, 2],
    ["7/8", 1.75, 2.25],
    ["1-1/2", 3, 3.5],
  ])("F844 for rod %s says that it may be either", (rod, narrow, wide) => {
    expect(washerOf("F844", rod)).toMatchObject({
      size: inches(narrow),
      series: "F844 narrow, as no series is named",
      widest: { size: inches(wide), series: "F844 wide, as no series is named" },
    });
  });

  it.each([
    ["F844", "1-3/4", undefined],
    ["F844 wide", "2", undefined],
    ["F844 narrow", "1", "F844 narrow"],
    ["F844 wide", "1", "F844 wide"],
    ["F436", "1", undefined],
  ])("%s for rod %s is one washer", (written, rod, series) => {
    expect(washerOf(written, rod)).not.toHaveProperty("widest");
    expect(washerOf(written, rod)?.series).toBe(series);
  });
});

describe("the deviation of a drilled hole", () => {
  const drilled = (shop: string) =>
    jobOf(withBase({}).replace("rules: us", "rules: us\nshop: my.yaml"), { "my.yaml": shop }).shop.drilled;
  const cut = "cut: { deviation: 0.01, taper: ISO 9013 range 1 }";

  it.each([
    ["is the deviation of a shop that drills", shopText("").replace("process: plasma", "process: drill"), inches(0.01)],
    ["is the shop's own figure", shopText("").replace(cut, cut.replace(" }", ", drilled: 1/64 }")), inches(1 / 64)],
    [
      "is the shop's own figure before its deviation",
      shopText("").replace("plasma", "drill").replace(cut, cut.replace(" }", ", drilled: 1/64 }")),
      inches(1 / 64),
    ],
  ])("%s", (_, shop, value) => {
    expect(drilled(shop)).toMatchObject({ kind: "given", value, from: "shop my" });
  });

  it.each([
    ["a shop that cuts gives none", shopText("")],
    ["a class for thermal cuts is none", shopText("").replace("plasma", "drill").replace("0.01,", "ISO 9013 class 1,")],
  ])("%s", (_, shop) => {
    expect(drilled(shop)).toMatchObject(missing("cut.drilled of the shop file"));
  });
});

describe("editions", () => {
  const editions = (chosen: string) => jobOf(withBase({}).replace("rules: us", `rules: ${chosen}`)).editions;

  it("of metric rules are of their year, with the metric cover", () => {
    expect(editions("metric")).toEqual({
      set: "metric",
      templateHoles: "ISO 273",
      baseHoles: "d + 6 mm",
      placing: "EN 1090-2:2008",
      edges: "EN 1993-1-8:2005",
      concrete: "ACI 318M-19",
    });
  });

  it("may be named without their year where one year is held", () => {
    const chosen = editions("{ set: us, placing: EN 1090-2, edges: en 1993-1-8 }");
    expect(chosen).toMatchObject({ placing: "EN 1090-2:2008", edges: "EN 1993-1-8:2005" });
  });

  it("of a year that is not held are a fault", () => {
    const text = withBase({}).replace("rules: us", "rules: { set: metric, placing: 'EN 1090-2:2018' }");
    expect(faultsOf(text)).toEqual([
      expect.stringContaining('"EN 1090-2:2018" is not an edition that is known; allowed are ACI 117-10;'),
    ]);
  });
});

describe("the template hole of an inch rod under metric rules", () => {
  const groupOf = (rods: string, rules: string, more = {}) =>
    jobOf(withBase({ rods, ...more }).replace("rules: us", `rules: ${rules}`)).bases[0]?.groups[0];

  // Design Guide 1, 2nd ed., s.2.9: d + 1/16 in. ISO 273 has metric sizes alone.
  it.each([
    ["1-1/4", 1.3125, "M30, M33"],
    ["3/4", 0.8125, "M18, M20"],
    ["1-1/2", 1.5625, "M36, M39"],
  ])("%s says whose it is, and that the job does not name it", (size, hole, nearest) => {
    expect(groupOf(`{ diameter: ${size} }`, "metric")).toMatchObject({
      hole: { value: inches(hole), from: "d + 1/16 in by Design Guide 1, 2nd ed., s.2.9, which the job does not name" },
      tableHole: {
        ...missing("template.hole or rules.templateHoles"),
        why: `ISO 273 does not hold ${size}; nearest sizes: ${nearest}`,
      },
    });
  });

  it("is the edition's own once the job names it, and the job's where it gives one", () => {
    const named = groupOf("{ diameter: 1-1/4 }", "{ set: metric, templateHoles: 'Design Guide 1, 2nd ed.' }");
    expect(named?.tableHole).toMatchObject({ kind: "given", from: "Design Guide 1, 2nd ed., s.2.9" });
    const own = groupOf("{ diameter: 1-1/4 }", "metric", { template: "{ thickness: 1/4, hole: 1.3 }" });
    expect(own?.hole).toMatchObject({ value: inches(1.3), from: "job" });
  });
});

describe("groups", () => {
  it("are lettered; a hole of the whole base holds for groups that name none", () => {
    const groups = [
      "[{ rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 12 }, hole: 1.1, baseHole: 1-13/16 },",
      " { rods: { diameter: 3/4 }, pattern: { kind: points, at: [[0, 5]] } }]",
    ].join("");
    const job = jobOf(
      withBase({ rods: null, pattern: null, groups, basePlate: "{ hole: 2 }", template: "{ thickness: 1/4 }" }),
    );
    expect(job.bases[0]?.groups).toMatchObject([
      { letter: "A", hole: { value: inches(1.1) }, baseHole: { value: inches(1.8125) } },
      { letter: "B", hole: { value: inches(0.8125) }, baseHole: { value: inches(2) } },
    ]);
  });
});

describe("units side by side", () => {
  it("a length may carry its own unit", () => {
    const job = jobOf(withBase({ pattern: '{ kind: rectangle, x: 300 mm, y: "1\'-0 1/2\\"" }' }));
    expect(job.bases[0]?.groups[0]?.pattern).toMatchObject({ x: millimetres(300), y: inches(12.5) });
  });
});

describe("the rest of the job", () => {
  it("answers, severities, drawing, revisions", () => {
    const text = withBases(
      "  - { mark: B1, rods: { diameter: 1 }, pattern: { kind: points, at: [[0, 0], [3, 0]] }, template: { thickness: 1/4 } }",
      "answers: [{ mark: B1, rule: washer-cover, by: EOR, date: 2026-02-28, text: Accepted., subject: A1, value: 2-1/2 }]",
      "severities: { rod-play: stop, washer-cover: ask }",
    ).replace(
      '{ number: "1" }',
      '{ number: "1", drawing: { number: S-1 }, revisions: [{ revision: A, date: 2026-01-01 }], drawnBy: X, owner: Y }',
    );
    expect(jobOf(text)).toMatchObject({
      answers: [{ mark: "B1", rule: "washer-cover", subject: "A1", value: { kind: "given", value: 2.5 } }],
      raised: { "rod-play": "stop", "washer-cover": "ask" },
      drawing: { number: "S-1", revision: "" },
      revisions: [{ revision: "A", date: "2026-01-01", text: "", marks: null }],
      drawnBy: "X",
      owner: "Y",
    });
  });

  it("revisions by their dates, however they stand: the last one is the newest", () => {
    const listed = ["C, date: 2026-03-01", "B, date: 2026-02-01", "A, date: 2026-01-01"].map(
      (row) => `{ revision: ${row} }`,
    );
    const text = withBases(
      "  - { mark: B1, rods: { diameter: 1 }, pattern: { kind: points, at: [[0, 0], [3, 0]] }, template: { thickness: 1/4 } }",
    ).replace('{ number: "1" }', `{ number: "1", revisions: [${listed.join(", ")}] }`);
    expect(jobOf(text).revisions.map(({ revision }) => revision)).toEqual(["A", "B", "C"]);
  });

  it("second source, column, bottom, nail and grout holes", () => {
    const base = jobOf(
      withBase({
        rods: "{ diameter: 1, bottom: { kind: plate, shape: square, size: 3, thickness: 1/2 } }",
        basePlate: "{ pattern: [{ at: [[-6, 5], [6, 5]], hole: 2 }, { at: [[0, 0]] }] }",
        column: "{ kind: wide flange, depth: 12, width: 8, flange: 5/8, web: 3/8, depthAlong: y }",
        template:
          "{ thickness: 1/4, nails: { at: [[1, 2]], diameter: 1/8 }, groutHoles: { at: [[3, 4]], diameter: 2 } }",
      }),
    ).bases[0];
    expect(base).toMatchObject({
      groups: [{ rod: { bottom: { value: { kind: "plate", size: inches(3) } } } }],
      basePlate: {
        pattern: {
          value: [{ at: { x: inches(-6) }, diameter: { value: inches(2) } }, {}, { diameter: { kind: "missing" } }],
        },
      },
      column: { value: { kind: "wide flange", depthAlong: "y", at: { x: nanometres(0), y: nanometres(0) } } },
      template: { nailHoles: [{ at: { x: inches(1), y: inches(2) } }], groutHoles: [{ diameter: inches(2) }] },
    });
  });

  it("keys that are left empty are not given", () => {
    const job = jobOf(withBase({ rods: "{ diameter: 1, grade: , finish: ~, projection: null }" }));
    expect(job.bases[0]?.groups[0]?.rod).toMatchObject({
      grade: missing("rods.grade"),
      finish: missing("rods.finish"),
    });
  });
});

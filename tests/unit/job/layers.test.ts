/**
 * Defaults and kinds: each rule of joining, by a base that takes them held against the same base written out. Invented data.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { requestedFiles } from "../../../src/job/index.js";
import type { Base } from "../../../src/job/model/job.js";
import { NM_PER_INCH } from "../../../src/units/index.js";
import { faultsOf, inputsOf, jobOf } from "./files.js";

const PATTERN = "pattern: { kind: rectangle, x: 12, y: 10 }";

/** A job of one base in flow style; the base stands on the last line. */
function jobText(base: string, layers = "", units = "in"): string {
  return `job: { number: "1" }\nunits: ${units}\nrules: ${units === "in" ? "us" : "metric"}\n${layers}\nbases:\n  - { mark: B1, ${base} }\n`;
}

/** What a base says, without who gave it and where it stands. */
function said(text: string): unknown {
  const [base] = jobOf(text).bases;
  const bare = JSON.stringify(base, (key, value) =>
    ["from", "place", "origins", "kind_"].includes(key) ? undefined : value,
  );
  return { ...JSON.parse(bare), kind: "" };
}

function baseOf(base: string, layers: string): Base {
  const [first] = jobOf(jobText(base, layers)).bases;
  if (first === undefined) throw new Error("no base");
  return first;
}

const ROD = "rods: { diameter: 1 }";
const T = "template: { thickness: 1/4 }";

type Case = readonly [rule: string, layers: string, base: string, writtenOut: string];

describe("a base with its layers is the base written out", () => {
  it.each<Case>([
    [
      "grade: for a template of the same material",
      "defaults: { template: { thickness: 1/4, grade: A36 } }",
      `${ROD}, ${PATTERN}, template: { material: steel }`,
      `${ROD}, ${PATTERN}, template: { material: steel, thickness: 1/4, grade: A36 }`,
    ],
    [
      "grade: that of steel is none of a board",
      "defaults: { template: { thickness: 3/4, grade: A36 } }",
      `${ROD}, ${PATTERN}, template: { material: plywood }`,
      `${ROD}, ${PATTERN}, template: { material: plywood, thickness: 3/4 }`,
    ],
    [
      "groups of keys join key by key",
      "defaults: { rods: { grade: 55, finish: plain, projection: 9 }, template: { thickness: 1/4, support: bearers } }",
      `rods: { diameter: 1, projection: 7 }, ${PATTERN}, template: { height: 3 }`,
      `rods: { diameter: 1, grade: 55, finish: plain, projection: 7 }, ${PATTERN}, template: { thickness: 1/4, support: bearers, height: 3 }`,
    ],
    [
      "a base that has nothing of a group takes all of it",
      "defaults: { rods: { diameter: 1, grade: 36 }, template: { thickness: 3/8 }, basePlate: { x: 18, y: 16, thickness: 1 }, concrete: { x: 24, y: 30, depth: 40 } }",
      PATTERN,
      `rods: { diameter: 1, grade: 36 }, ${PATTERN}, template: { thickness: 3/8 }, basePlate: { x: 18, y: 16, thickness: 1 }, concrete: { x: 24, y: 30, depth: 40 }`,
    ],
    [
      "keys of the base itself",
      "defaults: { grout: 1-1/2, levelling: nuts, member: post, note: by the yard }",
      `${ROD}, ${PATTERN}, ${T}, levelling: shims`,
      `${ROD}, ${PATTERN}, ${T}, levelling: shims, grout: 1-1/2, member: post, note: by the yard`,
    ],
    [
      "base over its kind over defaults",
      "defaults: { grout: 1, rods: { grade: 36, finish: plain, projection: 6 } }\nkinds: { heavy: { grout: 2, rods: { grade: 105, projection: 9 } } }",
      `kind: heavy, rods: { diameter: 1, projection: 12 }, ${PATTERN}, ${T}`,
      `rods: { diameter: 1, grade: 105, finish: plain, projection: 12 }, ${PATTERN}, ${T}, grout: 2`,
    ],
    [
      "a kind whatever its capitals",
      "kinds: { Heavy: { grout: 2 } }",
      `kind: HEAVY, ${ROD}, ${PATTERN}, ${T}`,
      `${ROD}, ${PATTERN}, ${T}, grout: 2`,
    ],
    [
      "a pattern is taken whole",
      "defaults: { pattern: { kind: rectangle, x: 30, y: 20, nx: 4, ny: 3 } }",
      `${ROD}, ${PATTERN}, ${T}`,
      `${ROD}, ${PATTERN}, ${T}`,
    ],
    [
      "a default pattern",
      "defaults: { pattern: { kind: circle, diameter: 24, count: 8, start: straddle } }",
      `${ROD}, ${T}`,
      `${ROD}, pattern: { kind: circle, diameter: 24, count: 8, start: straddle }, ${T}`,
    ],
    [
      "outline and opening are taken whole",
      "defaults: { template: { thickness: 1/4, outline: { kind: rectangle, x: 40, y: 30, corner: { kind: chamfer, size: 2 } }, opening: { x: 8, y: 6, radius: 1 } } }",
      `${ROD}, ${PATTERN}, template: { outline: { kind: rectangle, x: 20, y: 18 }, opening: { diameter: 4 } }`,
      `${ROD}, ${PATTERN}, template: { thickness: 1/4, outline: { kind: rectangle, x: 20, y: 18 }, opening: { diameter: 4 } }`,
    ],
    [
      "washer, bottom and column are taken whole",
      "defaults: { rods: { bottom: { kind: plate, shape: square, size: 3, thickness: 1/2 } }, basePlate: { washer: { shape: square, size: 3, thickness: 1/2 } }, column: { kind: tube, x: 8, y: 8, at: [1, 0] } }",
      `rods: { diameter: 1, bottom: nut }, ${PATTERN}, ${T}, basePlate: { washer: { shape: round, size: 2-1/2 } }, column: { kind: pipe, diameter: 8 }`,
      `rods: { diameter: 1, bottom: nut }, ${PATTERN}, ${T}, basePlate: { washer: { shape: round, size: 2-1/2 } }, column: { kind: pipe, diameter: 8 }`,
    ],
    [
      "a corner is taken whole",
      "defaults: { basePlate: { corner: { kind: chamfer, x: 1, y: 2 } } }",
      `${ROD}, ${PATTERN}, ${T}, basePlate: { x: 18, y: 16, corner: { kind: round, radius: 1 } }`,
      `${ROD}, ${PATTERN}, ${T}, basePlate: { x: 18, y: 16, corner: { kind: round, radius: 1 } }`,
    ],
    [
      "a default corner for a rectangle that the base gives",
      "defaults: { concrete: { corner: { kind: chamfer, size: 3/4 } } }",
      `${ROD}, ${PATTERN}, ${T}, concrete: { x: 24, y: 24 }`,
      `${ROD}, ${PATTERN}, ${T}, concrete: { x: 24, y: 24, corner: { kind: chamfer, size: 3/4 } }`,
    ],
    [
      "a diameter takes neither sides nor corner of the default",
      "defaults: { concrete: { x: 24, y: 24, corner: { kind: chamfer, size: 3/4 }, depth: 36 } }",
      `${ROD}, ${PATTERN}, ${T}, concrete: { diameter: 30 }`,
      `${ROD}, ${PATTERN}, ${T}, concrete: { diameter: 30, depth: 36 }`,
    ],
    [
      "sides take no diameter of the default",
      "defaults: { basePlate: { diameter: 30, thickness: 1 } }",
      `${ROD}, ${PATTERN}, ${T}, basePlate: { x: 18, y: 16 }`,
      `${ROD}, ${PATTERN}, ${T}, basePlate: { x: 18, y: 16, thickness: 1 }`,
    ],
    [
      "a kind's shape goes before the default's, which is of another form",
      "defaults: { concrete: { x: 24, y: 24 } }\nkinds: { mast: { concrete: { diameter: 60 } } }",
      `kind: mast, ${ROD}, ${PATTERN}, ${T}`,
      `${ROD}, ${PATTERN}, ${T}, concrete: { diameter: 60 }`,
    ],
    [
      "finish of the base, not zinc of the default",
      "defaults: { rods: { finish: galvanized, zincGrowth: 0.01 } }",
      `rods: { diameter: 1, finish: plain }, ${PATTERN}, ${T}`,
      `rods: { diameter: 1, finish: plain }, ${PATTERN}, ${T}`,
    ],
    [
      "lower end of the base, not the thread of another at the default's",
      "defaults: { rods: { bottom: nut, bottomThreads: 4, threads: 8 } }",
      `rods: { diameter: 1, bottom: straight }, ${PATTERN}, ${T}`,
      `rods: { diameter: 1, bottom: straight, threads: 8 }, ${PATTERN}, ${T}`,
    ],
    [
      "finish of the base, not the zinc process and the nuts' coating of the default",
      "defaults: { rods: { finish: galvanized, zincProcess: hot-dip, nutFinish: hot-dip, topNuts: 2 } }",
      `rods: { diameter: 1, finish: plain }, ${PATTERN}, ${T}`,
      `rods: { diameter: 1, finish: plain, topNuts: 2 }, ${PATTERN}, ${T}`,
    ],
    [
      "groups of a base take rods into each",
      "defaults: { rods: { grade: 55, finish: plain }, pattern: { kind: rectangle, x: 4, y: 4 } }",
      `groups: [{ rods: { diameter: 1, grade: 36 }, ${PATTERN} }, { rods: { diameter: 3/4 }, pattern: { kind: points, at: [[0, 0]] } }], ${T}`,
      `groups: [{ rods: { diameter: 1, grade: 36, finish: plain }, ${PATTERN} }, { rods: { diameter: 3/4, grade: 55, finish: plain }, pattern: { kind: points, at: [[0, 0]] } }], ${T}`,
    ],
    [
      "a group without rods takes them whole",
      "defaults: { rods: { diameter: 1, grade: 55 } }",
      `groups: [{ ${PATTERN} }], ${T}`,
      `groups: [{ rods: { diameter: 1, grade: 55 }, ${PATTERN} }], ${T}`,
    ],
    [
      "groups take hole, base-plate hole and washer where they give none",
      "defaults: { template: { hole: 1-1/8 }, basePlate: { hole: 1-3/4, washer: F436 } }",
      `groups: [{ rods: { diameter: 1 }, ${PATTERN}, hole: 1-1/16 }, { rods: { diameter: 1 }, pattern: { kind: points, at: [[0, 0]] }, washer: F844 narrow }], ${T}`,
      `groups: [{ rods: { diameter: 1 }, ${PATTERN}, hole: 1-1/16, baseHole: 1-3/4, washer: F436 }, { rods: { diameter: 1 }, pattern: { kind: points, at: [[0, 0]] }, hole: 1-1/8, baseHole: 1-3/4, washer: F844 narrow }], ${T}`,
    ],
    [
      "a pattern of the base, not the groups of its kind, which leaves the rods of the defaults",
      `defaults: { rods: { grade: 55 } }\nkinds: { two: { groups: [{ rods: { diameter: 2 }, ${PATTERN} }] } }`,
      `kind: two, ${ROD}, pattern: { kind: points, at: [[0, 0]] }, ${T}`,
      `rods: { diameter: 1, grade: 55 }, pattern: { kind: points, at: [[0, 0]] }, ${T}`,
    ],
    [
      "groups of a kind with rods of the defaults",
      `defaults: { rods: { grade: 55 } }\nkinds: { two: { groups: [{ rods: { diameter: 2 }, ${PATTERN} }] } }`,
      `kind: two, ${T}`,
      `groups: [{ rods: { diameter: 2, grade: 55 }, ${PATTERN} }], ${T}`,
    ],
    [
      "nothing in a base: not the default either",
      "defaults: { grout: 1, levelling: nuts, concrete: { x: 24, y: 24 }, basePlate: { thickness: 1, hole: 1-13/16 }, rods: { grade: 36 } }",
      `grout: ~, levelling: null, concrete: ~, basePlate: { thickness: ~ }, rods: { diameter: 1, grade: }, ${PATTERN}, ${T}`,
      `basePlate: { hole: 1-13/16 }, ${ROD}, ${PATTERN}, ${T}`,
    ],
    [
      "nothing in a kind stops the default for its bases",
      "defaults: { grout: 1, levelling: nuts }\nkinds: { dry: { grout: ~ } }",
      `kind: dry, ${ROD}, ${PATTERN}, ${T}`,
      `levelling: nuts, ${ROD}, ${PATTERN}, ${T}`,
    ],
    [
      "nothing for one side is nothing for the shape",
      "defaults: { concrete: { x: 24, y: 24, depth: 36 } }",
      `concrete: { x: ~ }, ${ROD}, ${PATTERN}, ${T}`,
      `concrete: { depth: 36 }, ${ROD}, ${PATTERN}, ${T}`,
    ],
    [
      "nothing in defaults, nothing under defaults, no kind",
      "defaults: { grout: ~ }\nkinds:",
      `kind: ~, ${ROD}, ${PATTERN}, ${T}`,
      `${ROD}, ${PATTERN}, ${T}`,
    ],
  ])("%s", (_, layers, base, writtenOut) => {
    expect(faultsOf(jobText(base, layers))).toEqual([]);
    expect(said(jobText(base, layers))).toEqual(said(jobText(writtenOut)));
  });

  it("in millimetres too", () => {
    const layers = "defaults: { rods: { diameter: M24, grade: 8.8 }, template: { thickness: 6 } }";
    const [base, whole] = [
      "pattern: { kind: rectangle, x: 300, y: 300 }",
      "pattern: { kind: rectangle, x: 300, y: 300 }, rods: { diameter: M24, grade: 8.8 }, template: { thickness: 6 }",
    ];
    expect(said(jobText(base, layers, "mm"))).toEqual(said(jobText(whole, "", "mm")));
  });

  it("second sources exclude each other: holes listed, or a file", () => {
    const listed = "basePlate: { pattern: { at: [[6, 5], [-6, 5], [6, -5], [-6, -5]] } }";
    const layers = "defaults: { basePlate: { from: plate.dxf } }";
    const base = `${ROD}, ${PATTERN}, ${T}, ${listed}`;
    expect(said(jobText(base, ""))).toMatchObject({ basePlate: { patternOrigin: "as listed" } });
    const faults = faultsOf(jobText(base, layers));
    expect(faults).toEqual([
      "job.yaml:4:32 defaults.basePlate.from: there is no file plate.dxf; allowed is a DXF file beside the job file",
    ]);
  });
});

describe("rows of a schedule", () => {
  const job = (layers: string) => `job: { number: "1" }\nunits: in\n${layers}\nschedule: s.csv\n`;

  it("take defaults and the kind that they cite", () => {
    const csv = "Mark,Kind,Rod dia,X,Y,Grade,Grout\nB1,heavy,1,12,10,,\nB2,,1,12,10,36,2\n";
    const layers =
      "defaults: { template: { thickness: 1/4 }, grout: 1 }\nkinds: { heavy: { rods: { grade: 105 }, pattern: { kind: points, at: [[0, 0]] } } }";
    const bases = jobOf(job(layers), { "s.csv": csv }).bases;
    expect(bases.map(({ kind }) => kind)).toEqual(["heavy", ""]);
    expect(bases.map(({ groups }) => groups[0]?.pattern.kind)).toEqual(["rectangle", "rectangle"]);
    expect(bases.map(({ groups }) => groups[0]?.rod.grade)).toMatchObject([
      { value: "F1554 105", from: "kind heavy" },
      { value: "F1554 36", from: "job" },
    ]);
    expect(bases.map(({ grout }) => grout.kind === "given" && grout.from)).toEqual(["default", "job"]);
  });

  it("take the groups of a kind where they say nothing of rods", () => {
    const layers = `kinds: { two: { groups: [{ rods: { diameter: 1 }, ${PATTERN} }], template: { thickness: 1/4 } } }`;
    expect(faultsOf(job(layers), { "s.csv": "Mark,Kind\nB1,two\n" })).toEqual([]);
    expect(faultsOf(job(layers), { "s.csv": "Mark,Kind,Grade\nB1,two,36\n" })).toEqual([
      "s.csv:2:1 row 2 Rod dia: is required; allowed is a line of text, at most 40 characters",
      "s.csv A2: rods beside groups, which kind two gives; allowed is one of them",
    ]);
  });

  it("are told once that no template has a thickness", () => {
    const csv = "Mark,Rod dia,X,Y\nB1,1,12,10\nB2,1,12,10\nB3,1,12,10\n";
    expect(faultsOf(job(""), { "s.csv": csv })).toEqual([
      "job.yaml:1:1 defaults.template.thickness: is required: none of the 3 bases gives the thickness of its template (for all of them: defaults: { template: { thickness: 1/4 } })",
    ]);
  });
});

describe("who gave what", () => {
  it("is known for every leaf that is not the base's own", () => {
    const layers =
      "defaults: { grout: 1, rods: { grade: 36, finish: plain }, template: { thickness: 1/4 }, concrete: { x: 24, y: 24 } }\nkinds: { heavy: { rods: { grade: 105 }, column: { kind: pipe, diameter: 8 }, concrete: { diameter: 30 } } }";
    const base = baseOf(`kind: heavy, rods: { diameter: 1, finish: galvanized }, ${PATTERN}`, layers);
    expect(base.origins).toEqual({
      "rods.grade": "kind heavy",
      column: "kind heavy",
      "concrete.diameter": "kind heavy",
      grout: "default",
      "template.thickness": "default",
    });
    const rod = base.groups[0]?.rod;
    expect(rod).toMatchObject({ grade: { from: "kind heavy" }, finish: { from: "job" } });
    expect([base.grout, base.column, base.concrete.shape]).toMatchObject([
      { from: "default" },
      { from: "kind heavy" },
      { from: "kind heavy" },
    ]);
  });

  it("is known of each group of rods", () => {
    const layers = `defaults: { rods: { grade: 55 }, basePlate: { washer: F436 } }`;
    const base = baseOf(
      `groups: [{ rods: { diameter: 1, grade: 36 }, ${PATTERN} }, { rods: { diameter: 3/4 }, pattern: { kind: points, at: [[0, 0]] }, washer: F844 narrow }], ${T}`,
      layers,
    );
    expect(base.origins).toEqual({ "groups[1].rods.grade": "default", "basePlate.washer": "default" });
  });

  it("is nobody else in a job without layers", () => {
    expect(baseOf(`${ROD}, ${PATTERN}, ${T}`, "").origins).toEqual({});
  });
});

describe("faults of layers are told once, where they stand", () => {
  const good = [1, 2, 3].map((n) => `  - { mark: B${n}, ${ROD}, ${PATTERN}, ${T} }`).join("\n");
  const fault = (layers: string, bases = good) =>
    faultsOf(`job: { number: "1" }\nunits: in\n${layers}\nbases:\n${bases}\n`);

  it.each<[string, string, readonly string[]]>([
    [
      "a wrong word",
      "defaults: { levelling: nut }",
      [
        'job.yaml:3:24 defaults.levelling: "nut" is not allowed; allowed is one of nuts, shims, plate (did you mean nuts?)',
      ],
    ],
    [
      "an unknown key",
      "defaults: { tempalte: { thickness: 1/4 } }",
      [
        "job.yaml:3:13 defaults.tempalte: unknown key; allowed are member, note, delivery, rods, pattern, groups, basePlate, column, concrete, grout, levelling, template (did you mean template?)",
      ],
    ],
    [
      "a side that is none, without asking for it beside the other",
      "defaults: { basePlate: { x: -3, y: 20 } }",
      ['job.yaml:3:29 defaults.basePlate.x: "-3" is not above zero'],
    ],
    [
      "an unknown key inside",
      "defaults: { template: { thicknes: 1/4 } }",
      [
        "job.yaml:3:25 defaults.template.thicknes: unknown key; nearest are thickness, hole, outline; the JSON Schema lists all (did you mean thickness?)",
      ],
    ],
    [
      "a mark",
      "defaults: { mark: B }",
      [
        "job.yaml:3:13 defaults.mark: is for each base to say; allowed are member, note, delivery, rods, pattern, groups, basePlate, column, concrete, grout, levelling, template",
      ],
    ],
    [
      "a quantity",
      "defaults: { quantity: 2 }",
      [
        "job.yaml:3:13 defaults.quantity: is for each base to say; allowed are member, note, delivery, rods, pattern, groups, basePlate, column, concrete, grout, levelling, template",
      ],
    ],
    [
      "a grade that no base takes",
      "defaults: { rods: { grade: 99 } }",
      [
        'job.yaml:3:28 defaults.rods.grade: "99" is not a known grade; allowed are F1554 36, 55, 105; ISO 898-1 4.6, 5.6, 8.8, 10.9 (the shop file may declare others)',
      ],
    ],
    [
      "half of a shape",
      "defaults: { concrete: { x: 24 } }",
      ["job.yaml:3:23 defaults.concrete.y: is required beside x; allowed is x and y, or diameter"],
    ],
    [
      "two shapes",
      "defaults: { concrete: { x: 24, y: 24, diameter: 30 } }",
      [
        "job.yaml:3:28 defaults.concrete.x: is given beside diameter; allowed is x and y, or diameter",
        "job.yaml:3:35 defaults.concrete.y: is given beside diameter; allowed is x and y, or diameter",
      ],
    ],
    [
      "a washer of no standard",
      "defaults: { basePlate: { washer: F863 } }",
      [
        'job.yaml:3:34 defaults.basePlate.washer: "F863" is not a washer standard that is known; allowed are ASTM F436; ASTM F844; ASTM F844 narrow; ASTM F844 wide; ISO 7089; ISO 7090 / DIN 125-B, or shape, size, thickness',
      ],
    ],
    [
      "no group of keys",
      "defaults: 5",
      [
        'job.yaml:3:11 defaults: "5" is not allowed; allowed is a group of keys: member, note, delivery, rods, pattern, groups, basePlate, column, concrete, grout, levelling, template',
      ],
    ],
    [
      "a list of kinds",
      "kinds: [heavy]",
      ["job.yaml:3:8 kinds: is no group of keys; allowed are names of kinds, each with a part of a base"],
    ],
  ])("%s", (_, layers, faults) => {
    const washers = (text: string) => text.replace(/allowed are ASTM.*, or shape/, "allowed are ASTM..., or shape");
    expect(fault(layers).map(washers)).toEqual(faults.map(washers));
  });

  it("a kind: in a key of its own that no base takes, in its name, and when nobody cites it", () => {
    const layers = "kinds:\n  a: { grout: -1, kind: b }\n  A: {}\n  'b;': {}";
    expect(fault(layers, `  - { mark: B1, kind: a, grout: 1, ${ROD}, ${PATTERN}, ${T} }`)).toEqual([
      'job.yaml:4:15 kinds.a.grout: "-1" is below zero',
      "job.yaml:4:19 kinds.a.kind: is for each base to say; allowed are member, note, delivery, rods, pattern, groups, basePlate, column, concrete, grout, levelling, template",
      "job.yaml:5:3 kinds.A: is the kind a again: capitals do not count",
      `job.yaml:6:3 kinds.b;: "b;" is no name of a kind; allowed is a name of 1 to 40 plain ASCII characters, without ; and without spaces at its ends`,
      "job.yaml:6:3 kinds.b;: no base cites the kind b;",
    ]);
  });

  it("a number of rods is held against the patterns of the bases, where the layer has none of its own", () => {
    const base = (mark: string, nx: number) =>
      `  - { mark: ${mark}, ${ROD}, pattern: { kind: rectangle, x: 24, y: 10, nx: ${nx} }, ${T} }`;
    expect(fault("defaults: { rods: { count: 8 } }", base("B1", 4))).toEqual([]);
    expect(fault("defaults: { rods: { count: 8 } }", `${base("B1", 4)}\n${base("B2", 3)}`)).toEqual([
      expect.stringMatching(/^job\.yaml:3:28 .*8 rods are written, but the pattern has 6 \(job\.yaml:6:/),
    ]);
    const own = "defaults: { rods: { count: 8 }, pattern: { kind: rectangle, x: 12, y: 12 } }";
    expect(fault(own, base("B1", 4))).toEqual([expect.stringContaining("but the pattern has 4 (job.yaml:3:")]);
  });

  it("a kind that nobody cites is a warning: the job is whole", () => {
    const text = `job: { number: "1" }\nunits: in\nkinds: { heavy: { grout: 1 } }\nbases:\n${good}\n`;
    expect(faultsOf(text)).toEqual(["job.yaml:3:10 kinds.heavy: no base cites the kind heavy"]);
    expect(jobOf(text).bases).toHaveLength(3);
  });

  it("a kind that is not there, once for all bases, with the three nearest", () => {
    const kinds = "kinds: { heavy: {}, light: {}, mast: {}, brace: {} }";
    const bases = ["hevy", "hevy", "lite"].map((kind, n) => `  - { mark: B${n}, kind: ${kind}, ${ROD}, ${PATTERN} }`);
    expect(fault(kinds, bases.join("\n"))).toEqual([
      'job.yaml:5:23 bases[0].kind: "hevy": no such kind; nearest are heavy, light, mast; cited by 2 bases: B0, B1',
      'job.yaml:7:23 bases[2].kind: "lite": no such kind; nearest are light, brace, heavy',
    ]);
    expect(fault("", `  - { mark: B1, kind: heavy, ${ROD}, ${PATTERN}, ${T} }`)).toEqual([
      'job.yaml:5:23 bases[0].kind: "heavy": the job has no kinds (write it as kinds: { heavy: { ... } })',
    ]);
  });

  it("kinds that cannot be read say nothing of what a base cites", () => {
    const base = `  - { mark: B1, kind: heavy, ${ROD}, ${PATTERN} }`;
    expect(fault("kinds: heavy", base)).toEqual([
      "job.yaml:3:8 kinds: is no group of keys; allowed are names of kinds, each with a part of a base",
    ]);
    const many = Array.from({ length: 501 }, (_, n) => `k${n}: {}`).join(", ");
    expect(fault(`kinds: { ${many} }`, base)).toEqual(["job.yaml:3:8 kinds: has 501 kinds; at most 500 are allowed"]);
  });

  it("what a default and bases make together, with the bases that it is so with", () => {
    const bases = [24, 24, 6].map(
      (embedment, n) => `  - { mark: B${n}, rods: { embedment: ${embedment} }, ${PATTERN} }`,
    );
    const layers = "defaults: { rods: { diameter: 1, length: 20, projection: 8 }, template: { thickness: 1/4 } }";
    expect(fault(layers, bases.join("\n"))).toEqual([
      "job.yaml:3:42 defaults.rods.length: 20 in is shorter than projection and embedment together; allowed is 32 in or more; so with 2 bases: B0, B1",
    ]);
  });

  it("a thread series is judged with the size of its base", () => {
    const layers = "defaults: { rods: { thread: 8UN } }";
    expect(fault(layers)).toEqual([]);
    expect(fault(layers, `  - { mark: B1, rods: { diameter: 3/4 }, ${PATTERN}, ${T} }`)).toEqual([
      'job.yaml:3:29 defaults.rods.thread: "8UN" has no thread of size 3/4; allowed here is UNC; so with 1 base: B1 (nearest: 1, 1-1/8)',
    ]);
  });

  it("a doubt about a default is told once, and the job is whole", () => {
    const layers = "defaults: { pattern: { kind: circle, count: 6, diameter: 12, start: straddle } }";
    const bases = [1, 2].map((n) => `  - { mark: B${n}, ${ROD}, ${T} }`).join("\n");
    expect(fault(layers, bases)).toEqual([
      "job.yaml:3:69 defaults.pattern.start: straddle of 6 rods names no axis, and the two differ; read as straddle x: straddles the x axis; rods stand on the y axis (write straddle x or straddle y)",
    ]);
  });

  it("some bases without a thickness are told one by one, at their own place", () => {
    const bases = [
      `  - { mark: B1, ${ROD}, ${PATTERN}, ${T} }`,
      `  - { mark: B2, ${ROD}, ${PATTERN}, template: { height: 3 } }`,
    ];
    expect(fault("", bases.join("\n"))).toEqual([
      "job.yaml:6:94 bases[1].template.thickness: is required; allowed is a length above zero, as 1-1/4 or with its unit",
    ]);
  });

  it("what a base lacks of a group that defaults began is asked for at the base", () => {
    const layers = "defaults:\n  template: { height: 3 }\n  rods: { grade: 36 }";
    const bases = [`  - { mark: B1, ${PATTERN}, ${T} }`, `  - { mark: B2, ${ROD}, ${PATTERN} }`];
    expect(fault(layers, bases.join("\n"))).toEqual([
      "job.yaml:7:5 bases[0].rods.diameter: is required; allowed is a line of text, at most 40 characters",
      "job.yaml:8:5 bases[1].template.thickness: is required; allowed is a length above zero, as 1-1/4 or with its unit",
    ]);
  });
});

describe("README's example", () => {
  const readme = readFileSync(new URL("../../../README.md", import.meta.url), "utf8");
  const example = /### Said once for many bases[\s\S]*?```yaml\n([\s\S]*?)```/.exec(readme)?.[1] ?? "";

  it("gives what README says of it", () => {
    const job = `job: { number: "1" }\nunits: in\n${example}`;
    expect(faultsOf(job)).toEqual([]);
    const [b1, b2, m1] = jobOf(job).bases;
    expect([b1?.levelling.kind, b2?.levelling.kind]).toEqual(["given", "missing"]);
    expect(m1?.groups[0]?.rod).toMatchObject({ grade: { value: "F1554 55" }, finish: { value: "plain" } });
    expect(m1?.concrete.shape).toMatchObject({ value: { kind: "circle", diameter: 72 * NM_PER_INCH } });
    expect(m1?.template).toMatchObject({ thickness: 0.375 * NM_PER_INCH, support: { value: "bearers" } });
  });
});

describe("files that layers name", () => {
  it("are asked for, as those of bases are", () => {
    const layers = "defaults: { basePlate: { from: a.dxf } }\nkinds: { k: { basePlate: { from: { file: b.dxf } } } }";
    const names = requestedFiles(inputsOf(jobText(`kind: k, ${ROD}, ${PATTERN}, ${T}`, layers)))
      .filter(({ kind }) => kind === "base plate")
      .map(({ name }) => name);
    expect(names.sort()).toEqual(["a.dxf", "b.dxf"]);
  });
});

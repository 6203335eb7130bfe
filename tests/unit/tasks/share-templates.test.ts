/** One template for several bases: what is one plate and what is not, names, numbers, what holds it. */
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../src/checks/checked.js";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import type { OutputKind } from "../../../src/outputs/index.js";
import { build } from "../../../src/tasks/build.js";
import { openJob } from "../../../src/tasks/open.js";
import type { OpenedJob } from "../../../src/tasks/opened-job.js";
import { plateKey } from "../../../src/template/index.js";
import type { SharedBase } from "../../shared-job.js";
import { sharedJob, shedJob } from "../../shared-job.js";
import { inputsOf } from "../job/files.js";

/** No turn lays it on itself: the template gets a key. */
const LOPSIDED = "kind: points, at: [[-6, 5], [6, 5], [6, -5], [-5, -5]]";

const DATE = { date: "2026-11-24" };
const AUTO = ["merge: auto"];

function opened(text: string): OpenedJob {
  const job = openJob(inputsOf(text), DATE);
  if (!job.ok) throw new Error(job.findings.map(formatFinding).join("\n"));
  return job.value;
}

const findings = (text: string): string[] => openJob(inputsOf(text), DATE).findings.map(formatFinding);

/** Template marks of the bases, in their order. */
const marksOf = (text: string): readonly string[] => opened(text).bases.map(({ base }) => base.template.mark);

const both = (template: string, other: Partial<SharedBase> = {}): string =>
  sharedJob([
    { mark: "B3", template: `, mark: T4${template}` },
    { mark: "B9", template: `, mark: T4${template}`, ...other },
  ]);

describe("a template mark on several bases", () => {
  it("is one template where the plates are the same, and every base knows the others", () => {
    const { bases, job } = opened(both(""));
    expect(bases.map(({ base }) => base.template.sharedBy)).toEqual([
      ["B3", "B9"],
      ["B3", "B9"],
    ]);
    const [one, other] = bases.map((base) => checkBase(job, base).plate);
    if (one === undefined || other === undefined) throw new Error("no plates");
    expect(plateKey(one, "template")).toBe(plateKey(other, "template"));
    expect(one.marks.map(({ text }) => text)).toContain("T4 REV A");
    expect(one.marks.map(({ text }) => text).join(" ")).not.toMatch(/B3|B9/);
  });

  it.each([
    ["a diameter 1 nm larger", ", mark: T4, hole: 1.06250004", "hole A1 is 1-1/16 on B3 and 1.06250004 on B9"],
    ["thickness", "", "whose plates differ: they are 1/4 thick on B3 and 3/8 thick on B9"],
    ["grade", ", mark: T4, grade: A36", "they are of no grade that is given on B3 and of A36 on B9"],
    ["material", ", mark: T4, material: plywood", "they are of steel on B3 and of plywood on B9"],
    [
      "use",
      ", mark: T4, use: template left as setting plate",
      "are not for one use: template on B3 and template left as setting plate on B9",
    ],
    ["an opening", ", mark: T4, opening: { diameter: 4 }", "B9 has a hole OP1, which B3 has not"],
    [
      "the outline 1/64 in wider",
      ", mark: T4, outline: { kind: rectangle, x: 14-33/64, y: 13-1/2 }",
      "the outline is 14-1/2 x 12-1/2 on B3 and 14.5156 x 13-1/2 on B9",
    ],
    ["nail holes", ", mark: T4, nails: { at: [[6, 0]], diameter: 1/8 }", "B9 has a hole NH1, which B3 has not"],
  ])("is refused for %s, in words", (_, template, words) => {
    const text =
      template === "" ? both("").replace(/1\/4, mark: T4 } }\n$/, "3/8, mark: T4 } }\n") : both("", { template });
    const told = findings(text);
    expect(told).toHaveLength(1);
    expect(told[0]).toContain("bases[1].template.mark: T4 stands on B3 and B9, whose plates");
    expect(told[0]).toContain(words);
    expect(told[0]).toContain("; B3 is at job.yaml:4:5");
  });

  it("is refused for one hole 1 nm off, with as many digits as it takes", () => {
    const at = (y: string): string => `kind: points, at: [[-6, 5], [6, ${y}], [6, -5], [-6, -5]]`;
    const text = sharedJob([
      { mark: "B3", template: ", mark: T4", pattern: at("5") },
      { mark: "B9", template: ", mark: T4", pattern: at("5.00000004") },
    ]);
    expect(findings(text)[0]).toContain("hole A2 is at 6, 5 on B3 and at 6, 5.00000004 on B9");
  });

  it("is refused for a key on one alone", () => {
    const text = sharedJob([
      { mark: "B3", template: ", mark: T4", pattern: LOPSIDED },
      { mark: "B9", template: ", mark: T4, key: none", pattern: LOPSIDED },
    ]);
    expect(findings(text)[0]).toContain("whose plates differ: the outline has an orientation cut on B3 and none on B9");
  });

  it("is refused for a corner of an opening", () => {
    const opening = (radius: string): string => `, mark: T4, opening: { x: 4, y: 3, radius: ${radius} }`;
    const text = sharedJob([
      { mark: "B3", template: opening("1/2") },
      { mark: "B9", template: opening("0.50000004") },
    ]);
    expect(findings(text)[0]).toContain(
      "hole OP1 is 4 x 3 with corners of radius 1/2 on B3 and 4 x 3 with corners of radius 0.50000004 on B9",
    );
  });

  it("is refused where nuts of another size push a scribed tag aside", () => {
    const heavy = { rods: "diameter: 1, grade: 36, projection: 9, embedment: 18, threads: 6, nut: heavy hex" };
    expect(findings(both("", heavy))[0]).toContain(
      "whose plates are scribed differently: T4 REV A stands in another place",
    );
  });

  it("may differ in what the plate does not show", () => {
    expect(
      findings(
        both("", {
          rods: "diameter: 1, grade: 36, finish: plain, projection: 10, embedment: 24, threads: 7",
          more: ", grout: 2",
        }),
      ),
    ).toEqual([]);
  });

  it("tells every set that differs, not the first alone", () => {
    const text = sharedJob([
      { mark: "B1", template: ", mark: T1" },
      { mark: "B2", template: ", mark: T1, hole: 1-1/8" },
      { mark: "B3", template: ", mark: T2" },
      { mark: "B4", template: ", mark: T2, opening: { diameter: 4 }" },
    ]);
    expect(findings(text)).toHaveLength(2);
  });
});

describe("merge: auto", () => {
  it("makes 11 templates of 35 marks with 11 different plates, and counts them together", () => {
    const { bases } = opened(shedJob(AUTO));
    const templates = new Map(bases.map(({ base: { template } }) => [template.mark, template.quantity]));
    expect([...templates.keys()]).toEqual(Array.from({ length: 11 }, (_, at) => `T-B${at + 1}`));
    const columns = bases.reduce((sum, { base }) => sum + base.quantity, 0);
    expect([...templates.values()].reduce((sum, quantity) => sum + quantity, 0)).toBe(columns);
  });

  it("merges nothing unless it is asked for", () => {
    expect(new Set(marksOf(shedJob())).size).toBe(35);
    expect(new Set(marksOf(shedJob(["merge: none"]))).size).toBe(35);
  });

  it.each<[string, readonly SharedBase[], readonly string[]]>([
    [
      "the mark that all share",
      [
        { mark: "B1", template: ", mark: T7" },
        { mark: "B2", template: ", mark: T7" },
      ],
      ["T7", "T7"],
    ],
    [
      "the least mark given, in natural order",
      [{ mark: "B1", template: ", mark: T10" }, { mark: "B2", template: ", mark: T2" }, { mark: "B3" }],
      ["T2", "T2", "T2"],
    ],
    ["T- and the least base mark", [{ mark: "B10" }, { mark: "B9" }], ["T-B9", "T-B9"]],
    [
      "no base's own mark, though a template is given it",
      [{ mark: "B1", template: ", mark: B1" }, { mark: "B2" }],
      ["T-B1", "T-B1"],
    ],
    [
      "the next base mark where the first choice is in use",
      [{ mark: "B1" }, { mark: "B2" }, { mark: "t-b1", template: ", hole: 1-1/8" }],
      ["T-B2", "T-B2", "t-b1"],
    ],
    [
      "its own name for a plate that serves one base",
      [
        { mark: "B1" },
        { mark: "B2" },
        { mark: "B3", template: ", hole: 1-1/8" },
        { mark: "B4", template: ", hole: 1-3/16, mark: T9" },
      ],
      ["T-B1", "T-B1", "B3", "T9"],
    ],
    [
      "nothing where no name is to be had",
      [{ mark: "B".repeat(59) }, { mark: "C".repeat(60) }],
      ["B".repeat(59), "C".repeat(60)],
    ],
  ])("names %s, whatever the order of the bases", (_, bases, marks) => {
    expect(marksOf(sharedJob(bases, AUTO))).toEqual(marks);
    expect(marksOf(sharedJob([...bases].reverse(), AUTO))).toEqual([...marks].reverse());
  });

  it.each([
    ["1 nm in one hole's place", { pattern: "kind: points, at: [[-6, 5], [6, 5.00000004], [6, -5], [-6, -5]]" }],
    ["1 nm in a diameter", { template: ", hole: 1.06250004" }],
    ["one scribe", { rods: "diameter: 1, grade: 36, projection: 9, embedment: 18, threads: 6, nut: heavy hex" }],
    ["1/64 in of outline", { template: ", outline: { kind: rectangle, x: 14-33/64, y: 12-1/2 }" }],
    ["material", { template: ", material: plywood" }],
    ["grade", { template: ", grade: S235JR" }],
    ["use", { template: ", use: template left as setting plate" }],
    [
      "a rod of another size in the same hole",
      { rods: "diameter: 7/8, grade: 36, projection: 9", template: ", hole: 1-1/16" },
    ],
    ["a quarter turn", { pattern: "kind: rectangle, x: 10, y: 12" }],
  ])("leaves apart what differs in %s", (_, other: Partial<SharedBase>) => {
    const pattern = "kind: points, at: [[-6, 5], [6, 5], [6, -5], [-6, -5]]";
    const first = { mark: "B1", ...(other.pattern?.includes("points") ? { pattern } : {}) };
    expect(marksOf(sharedJob([first, { mark: "B2", ...other }], AUTO))).toEqual(["B1", "B2"]);
    expect(marksOf(sharedJob([first, { ...first, mark: "B3" }, { mark: "B2", ...other }], AUTO))).toEqual([
      "T-B1",
      "T-B1",
      "B2",
    ]);
  });

  it("leaves the key apart", () => {
    const bases = [
      { mark: "B1", pattern: LOPSIDED },
      { mark: "B2", pattern: LOPSIDED, template: ", key: none" },
      { mark: "B3", pattern: LOPSIDED },
    ];
    expect(marksOf(sharedJob(bases, AUTO))).toEqual(["T-B1", "B2", "T-B1"]);
  });

  it("leaves thicknesses apart", () => {
    const text = sharedJob([{ mark: "B1" }, { mark: "B2" }], AUTO).replace(/1\/4 } }\n$/, "0.25000004 } }\n");
    expect(marksOf(text)).toEqual(["B1", "B2"]);
  });

  it("leaves corners of openings apart by their radius", () => {
    const opening = (radius: string): string => `, opening: { x: 4, y: 3, radius: ${radius} }`;
    const bases = [
      { mark: "B1", template: opening("1/2") },
      { mark: "B2", template: opening("0.50000004") },
    ];
    expect(marksOf(sharedJob(bases, AUTO))).toEqual(["B1", "B2"]);
  });

  it("holds the plates against each other as they are cut, not the words that made them", () => {
    const bases = [
      { mark: "B1", template: ", key: none" },
      { mark: "B2", template: ", key: none, outline: { kind: rectangle, x: 14-1/2, y: 12-1/2 }, hole: 1-1/16" },
    ];
    expect(marksOf(sharedJob(bases, AUTO))).toEqual(["T-B1", "T-B1"]);
  });

  it.each([
    [
      "a polygon from another corner, the other way round",
      "outline: { kind: polygon, at: [[-11, -7], [11, -7], [11, 4], [8, 7], [-11, 7]] }",
      "outline: { kind: polygon, at: [[8, 7], [11, 4], [11, -7], [-11, -7], [-11, 7]] }",
    ],
    [
      "a rectangle by its corners",
      "outline: { kind: rectangle, x: 22, y: 14, corner: { kind: chamfer, size: 1 } }",
      "outline: { kind: polygon, at: [[11, 7], [-11, 7], [-11, -7], [11, -7]], corner: { kind: chamfer, x: 1, y: 1 } }",
    ],
    [
      "nail and grout holes in another order",
      "nails: { at: [[-6, 0], [6, 0]], diameter: 3/8 }, groutHoles: { at: [[0, 2], [0, -2]], diameter: 1 }",
      "nails: { at: [[6, 0], [-6, 0]], diameter: 3/8 }, groutHoles: { at: [[0, -2], [0, 2]], diameter: 1 }",
    ],
  ])("makes no difference of %s", (_, one, other) => {
    const bases = [
      { mark: "B1", template: `, key: none, ${one}` },
      { mark: "B2", template: `, key: none, ${other}` },
    ];
    expect(marksOf(sharedJob(bases, AUTO))).toEqual(["T-B1", "T-B1"]);
  });

  it("refuses a given mark on two plates all the same", () => {
    const text = both("", { template: ", mark: T4, hole: 1-1/8" }).replace("units: in", "units: in\nmerge: auto");
    expect(findings(text)[0]).toContain("hole A1 is 1-1/16 on B3 and 1-1/8 on B9");
  });
});

describe("where a shared template is set", () => {
  const grid = (turns: readonly number[], at = ["A-1", "B-1", "A-2"]): readonly string[] => [
    "grid: { x: { names: [A, B], spacing: 20' }, y: { names: [1, 2], spacing: 20' } }",
    `placements: [${turns.map((turn, i) => `{ base: B${i + 1}, at: ${at[i]}, turn: ${turn} }`).join(", ")}]`,
  ];
  const texts = (text: string): readonly string[] => {
    const { job, bases } = opened(text);
    const [first] = bases;
    if (first === undefined) throw new Error("no base");
    return checkBase(job, first).plate.marks.map(({ text: said }) => said);
  };
  const two = [{ mark: "B1" }, { mark: "B2" }].map(({ mark }) => ({ mark, template: ", key: none" }));

  it("bears no grid line, which would be that of one base, and north only where it holds for all", () => {
    expect(texts(sharedJob([{ mark: "B1" }], grid([0])).replace(/, quantity: 1/g, ""))).toEqual(
      expect.arrayContaining(["N", "GRID A", "GRID 1"]),
    );
    const alike = texts(sharedJob(two, [...AUTO, ...grid([0, 0])]));
    expect(alike).toContain("N");
    expect(alike.join(" ")).not.toContain("GRID");
    const turned = texts(sharedJob(two, [...AUTO, ...grid([0, 90])]));
    expect(turned).toContain("T-B1 REV A");
    expect(turned).not.toContain("N");
  });
});

describe("numbers of a shared template", () => {
  const rows = (template = ""): readonly SharedBase[] => [
    { mark: "B3", quantity: 2, template: `, mark: T4${template}` },
    { mark: "B9", quantity: 5, template: `, mark: T4${template}` },
  ];
  const quantities = (text: string) => opened(text).bases.map(({ base }) => base.template.quantity);

  it("are those of the bases together", () => {
    expect(quantities(sharedJob(rows()))).toEqual([7, 7]);
    expect(findings(sharedJob(rows()))).toEqual([]);
  });

  it("are summed with a warning where every row says the same number", () => {
    const text = sharedJob(rows(", quantity: 3"));
    expect(quantities(text)).toEqual([6, 6]);
    expect(findings(text)).toEqual([
      "job.yaml:4:5 bases[0]: template T4 serves B3, B9, and each of them says 3: 6 are made, the sum (for another number write templates: { T4: { quantity: 3 } })",
    ]);
  });

  it("are those that the job gives for the template, shared or not, without a warning", () => {
    const text = sharedJob(
      [...rows(", quantity: 3"), { mark: "B1" }],
      ["templates: { t4: { quantity: 4 }, B1: { quantity: 9 } }"],
    );
    expect(quantities(text)).toEqual([4, 4, 9]);
    expect(findings(text)).toEqual([]);
  });

  it.each([
    [
      "a mark that is not there",
      "T5: { quantity: 4 }",
      'templates.T5: no template is marked "T5"; allowed are the template marks of the job: T4 (did you mean T4?)',
    ],
    ["a base's mark", "B9: { quantity: 4 }", 'templates.B9: no template is marked "B9": that of B9 is T4 (write T4)'],
    [
      "one template twice",
      "T4: { quantity: 4 }, t4: { quantity: 5 }",
      'templates.t4: the template "t4" stands twice in this list; allowed is one quantity a template',
    ],
    ["a name that no object takes", "__proto__: { quantity: 4 }", 'templates.__proto__: "__proto__" is no key'],
    [
      "a name that every object has",
      "constructor: { quantity: 4 }",
      'templates.constructor: no template is marked "constructor"; allowed are the template marks of the job: T4',
    ],
  ])("are refused for %s", (_, entry, words) => {
    const [told = ""] = findings(sharedJob(rows(), [`templates: { ${entry} }`]));
    expect(told).toContain(words);
  });

  it("are refused for a mark that went into another", () => {
    const bases = [
      { mark: "B1", template: ", mark: T10" },
      { mark: "B2", template: ", mark: T2" },
    ];
    const text = sharedJob(bases, [...AUTO, "templates: { T10: { quantity: 4 } }"]);
    expect(findings(text)[0]).toContain('no template is marked "T10": that of T10 is T2 (write T2)');
  });
});

describe("a held base", () => {
  /** A form 30 in wide, which the template of B9 does not reach across: a stop. */
  const held = sharedJob([
    { mark: "B3", template: ", mark: T4, outline: { kind: rectangle, x: 16, y: 14 }" },
    {
      mark: "B9",
      template: ", mark: T4, outline: { kind: rectangle, x: 16, y: 14 }, support: form",
      more: ", concrete: { x: 30, y: 30 }",
    },
    { mark: "B1" },
  ]);

  it("holds its template for every base that it serves, and says which base holds it", () => {
    const built = build(inputsOf(held), { ...DATE, version: "0", document: newLeanDocument() });
    const bases = [...built.bases];
    expect(bases.map((base) => [base.mark, base.held])).toEqual([
      ["B3", true],
      ["B9", true],
      ["B1", false],
    ]);
    const { summary } = built.finish();
    expect(summary.bases.map(({ template }) => template.heldBy)).toEqual([["B9"], ["B9"], undefined]);
    const kinds = ["cut-joined", "cut-r12", "sheet-svg"];
    const paths = summary.bases.map(({ files }) =>
      files.map(({ kind }) => kind).filter((kind) => kinds.includes(kind)),
    );
    expect(paths).toEqual([["sheet-svg"], ["sheet-svg"], ["cut-joined", "cut-r12", "sheet-svg"]]);
    const sheet = bases[0]?.files.find(({ kind }) => kind === "sheet-svg");
    const words = new TextDecoder()
      .decode(sheet?.bytes)
      .replace(/<[^>]*>/g, " ")
      .replace(/\s+/g, " ");
    expect(words).toContain("Template T4 also serves B9, which is held: bearing or gap in form (template-in-form)");
  });

  it("names bases that hold it for one reason in one sentence, and not those that are held for the base's own", () => {
    const wide = ", outline: { kind: rectangle, x: 16, y: 14 }";
    const other = (mark: string) => ({
      mark,
      template: `${wide}, support: form`,
      more: ", concrete: { x: 30, y: 30 }",
    });
    const { job, bases } = opened(sharedJob([{ mark: "B1", template: wide }, ...["B2", "B3", "B4"].map(other)], AUTO));
    const reasons = bases.map((each) => checkBase(job, each).held);
    expect(reasons.map(({ length }) => length)).toEqual([1, 1, 1, 1]);
    expect(reasons[0]?.[0]).toMatch(
      /^template T-B1 also serves B2, B3, B4, which are held: bearing or gap in form \(template-in-form\)/,
    );
    expect(reasons[1]?.[0]).toMatch(/^bearing or gap in form \(template-in-form\)/);
    expect(bases.map(({ shared }) => shared?.heldBy)).toEqual(bases.map(() => ["B2", "B3", "B4"]));
  });

  it("is known to a base that is made alone", () => {
    const { job, bases } = opened(held);
    const [first] = bases;
    if (first === undefined) throw new Error("no base");
    expect(checkBase(job, first).held).toHaveLength(1);
    const { shared: _, ...lost } = first;
    expect(() => checkBase(job, lost)).toThrow(/nothing is known of the others/);
  });
});

describe("the package of shared templates", () => {
  const options = { ...DATE, version: "0", document: newLeanDocument() };
  const filesOf = (text: string, outputs?: readonly OutputKind[]) => {
    const built = build(inputsOf(text), outputs === undefined ? options : { ...options, outputs });
    const files = [...built.bases].flatMap((base) => base.files);
    return { files, summary: built.finish().summary };
  };

  it("hands every file out once, and lists it with each base by the same path", () => {
    const { files, summary } = filesOf(shedJob(AUTO));
    const paths = files.map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(files.filter(({ kind }) => kind === "cut-joined")).toHaveLength(11);
    expect(files.filter(({ kind }) => kind === "sheet-svg")).toHaveLength(11);
    for (const { mark, template, files: own } of summary.bases) {
      expect(template.bases, mark).toContain(mark);
      const stem = `${template.mark}_${template.quantity}-off_PL1-4_steel`;
      expect(own.map(({ path }) => path)).toEqual([
        `cut/${stem}_rev-A.dxf`,
        `cut/lines/${stem}_rev-A_lines.dxf`,
        `machine/${stem}_rev-A.stl`,
        `machine/${stem}_rev-A.3mf`,
        `sheets/${template.mark}_rev-A_sheet.svg`,
        `field/${mark}_rev-A_setting-sheet.svg`,
      ]);
      for (const { path, sha256 } of own) expect(files.find((file) => file.path === path)?.sha256).toBe(sha256);
    }
  });

  it("does not change a name or a byte of a cut file with the order of the bases", () => {
    const turned = shedJob(AUTO).split("\n");
    const head = turned.filter((line) => !line.startsWith("  - "));
    const rows = turned.filter((line) => line.startsWith("  - ")).reverse();
    const cut = (text: string) =>
      filesOf(text, ["cut-joined", "cut-r12"])
        .files.map(({ path, sha256 }) => `${path} ${sha256}`)
        .sort();
    expect(cut([...head.slice(0, -1), ...rows, ""].join("\n"))).toEqual(cut(shedJob(AUTO)));
  });

  it("leaves the paths of what serves one base as they were", () => {
    const { files } = filesOf(
      sharedJob(
        [
          { mark: "B3", template: ", mark: T9" },
          { mark: "B4", template: ", hole: 1-1/8" },
        ],
        AUTO,
      ),
    );
    expect(files.filter(({ kind }) => kind === "cut-joined").map(({ path }) => path)).toEqual([
      "cut/T9_1-off_PL1-4_steel_rev-A.dxf",
      "cut/B4_1-off_PL1-4_steel_rev-A.dxf",
    ]);
  });

  it("draws a sheet for each kind of base, all with every base and the number of templates", () => {
    const bases: readonly SharedBase[] = [
      { mark: "B3", quantity: 2 },
      { mark: "B9", quantity: 4, rods: "diameter: 1, grade: 36, projection: 12, embedment: 18, threads: 6" },
      { mark: "B13", quantity: 1 },
    ];
    const { files, summary } = filesOf(sharedJob(bases, AUTO));
    const sheets = files.filter(({ kind }) => kind === "sheet-svg");
    expect(sheets.map(({ path }) => path)).toEqual([
      "sheets/T-B3_rev-A_for-B3_sheet.svg",
      "sheets/T-B3_rev-A_for-B9_sheet.svg",
    ]);
    const listed = summary.bases.map(({ files: own }) => own.find(({ kind }) => kind === "sheet-svg")?.path);
    expect(listed).toEqual([sheets[0]?.path, sheets[1]?.path, sheets[0]?.path]);
    for (const [at, { bytes }] of sheets.entries()) {
      const words = new TextDecoder()
        .decode(bytes)
        .replace(/<[^>]*>/g, "|")
        .replace(/\|+/g, "|");
      expect(words).toContain("B3: 2, B9: 4, B13: 1");
      expect(words).toContain("|QTY 7|");
      expect(words).toContain(`|${at + 1} OF 2|`);
      expect(words).toContain(at === 0 ? "|9|" : "|12|");
    }
  });

  it.each([30, 90])("names its bases whole where there is no room for all of %i", (count) => {
    const marks = Array.from({ length: count }, (_, at) => `COLUMN-${at + 101}`);
    const { files } = filesOf(
      sharedJob(
        marks.map((mark) => ({ mark })),
        AUTO,
      ),
      ["cut-joined", "cut-r12", "sheet-svg"],
    );
    const [sheet] = files.filter(({ kind }) => kind === "sheet-svg");
    const words = new TextDecoder().decode(sheet?.bytes).replace(/<[^>]*>/g, " ");
    const named = [...words.matchAll(/(COLUMN-\d+): 1/g)].map(([, mark]) => mark);
    expect(named).toEqual(marks.slice(0, named.length));
    const more = /and (\d+) more in summary.json/.exec(words.replace(/\s+/g, " "))?.[1];
    expect(named.length + Number(more ?? 0)).toBe(count);
  });

  it("may be walked twice, or made base by base, with the same files", () => {
    const built = build(inputsOf(sharedJob([{ mark: "B1" }, { mark: "B2" }], AUTO)), options);
    const [first, second] = [[...built.bases], [...built.bases]];
    expect(second).toEqual(first);
    expect(first.map(({ files }) => files.length)).toEqual([6, 1]);
    expect(first.map(({ summary }) => summary.files.length)).toEqual([6, 6]);
  });
});

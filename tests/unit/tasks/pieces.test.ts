/** Pieces of templates through whole packages: marks, faults, counts, files, sharing, proof and comparison. Invented data. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkBase } from "../../../src/checks/checked.js";
import { readCutFile } from "../../../src/readers/dxf.js";
import { build } from "../../../src/tasks/build.js";
import { compareJobs } from "../../../src/tasks/compare.js";
import { openJob } from "../../../src/tasks/open.js";
import { sharedJob } from "../../shared-job.js";

const SHOP = "templates/shops/plasma.yaml";
const shop = readFileSync(new URL(`../../../${SHOP}`, import.meta.url), "utf8");
const inputsOf = (job: string) => ({
  job: "job.yaml",
  files: new Map([
    ["job.yaml", job],
    [SHOP, shop],
  ]),
});
const options = { date: "2026-11-24", version: "test", document: null } as const;

function open(job: string) {
  const opened = openJob(inputsOf(job), options);
  if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("; "));
  return opened.value;
}

const faultsOf = (job: string) =>
  openJob(inputsOf(job), options)
    .findings.filter(({ severity }) => severity === "error")
    .map(({ code, at }) => `${code} ${at.path ?? ""}`);

function packageOf(job: string) {
  const made = build(inputsOf(job), {
    ...options,
    includeHeld: true,
    outputs: ["cut-joined", "cut-r12", "summary", "ledger"],
  });
  const files = [...made.bases].flatMap((base) => base.files);
  return { summary: made.finish().summary, files };
}

const STRIP = ", outline: { kind: rectangle, x: 60, y: 24 }, key: none";

describe("marks of pieces", () => {
  it("are their own: a fault at the key where another template or base bears one, in any case of its letters", () => {
    const lower = (mark: string) => faultsOf(sharedJob([{ mark: "T1", template: ", lower: auto" }, { mark }]));
    expect(lower("T1-L")).toEqual(["piece-mark-taken bases[0].template.lower"]);
    expect(lower("t1-l")).toEqual(["piece-mark-taken bases[0].template.lower"]);
    expect(lower("T1-L2")).toEqual([]);
    const parted = (mark: string) =>
      faultsOf(
        sharedJob([
          { mark: "T1", template: `${STRIP}, segments: 2` },
          { mark: "B2", template: `, mark: ${mark}` },
        ]),
      );
    expect(parted("T1-S2")).toEqual(["piece-mark-taken bases[0].template.segments"]);
    expect(parted("T1-SP")).toEqual(["piece-mark-taken bases[0].template.segments"]);
    expect(parted("T1-X")).toEqual([]);
  });
});

describe("what no pieces can be of", () => {
  it.each([
    ["hooks", "diameter: 1, bottom: { kind: hook, reach: 4 }", ", lower: auto", "lower-with-hooks"],
    ["cast rods", "diameter: 1", ", use: setting plate over cast rods, lower: auto", "lower-over-cast-rods"],
    ["two heights", "diameter: 1", ", lower: { above: 2, below: 3 }", "level-twice"],
    ["plywood in segments", "diameter: 1", ", material: plywood, segments: 2", "segments-of-plywood"],
    [
      "a plate that stays",
      "diameter: 1",
      ", use: template left as setting plate, segments: 2",
      "segments-under-base-plate",
    ],
    ["a bolt of no size", "diameter: 1", ", segments: { count: 2, bolt: 0.3 }", "unknown-bolt"],
    [
      "a hole past its edge",
      "diameter: 1",
      ", lower: { outline: { kind: rectangle, x: 1, y: 1 } }",
      "hole-beyond-plate",
    ],
  ])("%s", (_, rods, template, code) => {
    const faults = faultsOf(sharedJob([{ mark: "B1", rods, template }]));
    expect(faults.map((each) => each.split(" ")[0])).toContain(code);
    for (const each of faults) expect(each).toMatch(/template\.(lower|segments)/);
  });

  it("none where they are turned off against a default", () => {
    const head = ["defaults: { template: { lower: auto, segments: auto } }"];
    const hooked = { mark: "B1", rods: "diameter: 1, bottom: { kind: hook, reach: 4 }" };
    expect(faultsOf(sharedJob([{ ...hooked, template: ", lower: none, segments: none" }], head))).toEqual([]);
    expect(faultsOf(sharedJob([hooked], head))).toEqual(["lower-with-hooks defaults.template.lower"]);
  });
});

describe("a package with pieces", () => {
  const job = sharedJob([
    { mark: "B1", quantity: 3, template: `, mark: T1, quantity: 2${STRIP}, segments: 2, lower: { above: 3 }` },
    { mark: "B2", template: ", mark: T2" },
  ]);
  const { summary, files } = packageOf(job);
  const [first, second] = summary.bases.map(({ template }) => template);

  it("lists pieces where there are more than the template alone: how many, of what role", () => {
    const pieces = first?.pieces?.map(({ role, mark, quantity }) => [role, mark, quantity]);
    // Templates are used again: two of them; lower templates stay in the concrete: one a column.
    expect(pieces).toEqual([
      ["segment", "T1-S1", 2],
      ["segment", "T1-S2", 2],
      ["splice plate", "T1-SP", 2],
      ["lower template", "T1-L", 3],
    ]);
    expect(second).not.toHaveProperty("pieces");
  });

  it("has cut files of every piece, none of the whole, each with the holes that the summary says", () => {
    const cut = files.filter(({ kind }) => kind === "cut-joined");
    expect(cut.map(({ piece }) => piece)).toEqual(["T1-S1", "T1-S2", "T1-SP", "T1-L", undefined]);
    for (const piece of first?.pieces ?? []) {
      const file = cut.find((each) => each.piece === piece.mark);
      const read = readCutFile(file?.bytes ?? new Uint8Array());
      const round = piece.holes.filter(({ made, diameter }) => made === "cut" && diameter !== undefined);
      expect(read.holes.length).toBe(round.length);
      expect(read.pierces).toBe(piece.pierces);
    }
  });

  it("weighs a template as it is put together", () => {
    const parts = (first?.pieces ?? []).filter(({ role }) => role !== "lower template");
    const sum = parts.reduce((total, { weight, quantity }) => total + (weight?.value ?? 0) * (quantity / 2), 0);
    expect(first?.weight?.value).toBeCloseTo(sum, 5);
  });

  it("is as before where none are asked for: the same bytes with and without none", () => {
    const plain = packageOf(sharedJob([{ mark: "B2" }]));
    const none = packageOf(sharedJob([{ mark: "B2", template: ", lower: none, segments: none" }]));
    expect(none.files.map(({ sha256 }) => sha256)).toEqual(plain.files.map(({ sha256 }) => sha256));
  });

  it("cuts what fits the table in one piece where the number is left to it", () => {
    const auto = packageOf(sharedJob([{ mark: "B2", template: ", segments: auto" }]));
    expect(auto.summary.bases[0]?.template).not.toHaveProperty("pieces");
  });
});

describe("a template of several bases", () => {
  const alike = (lower: string) => [
    { mark: "B1", quantity: 2, template: ", mark: T1, lower: { above: 3 }" },
    { mark: "B2", quantity: 5, template: `, mark: T1, lower: ${lower}` },
  ];

  it("has one lower template for each column of them all", () => {
    const { summary } = packageOf(sharedJob(alike("{ above: 6 }")));
    expect(
      summary.bases.map(({ template }) => template.pieces?.map(({ mark, quantity }) => `${mark} ${quantity}`)),
    ).toEqual([
      ["T1 7", "T1-L 7"],
      ["T1 7", "T1-L 7"],
    ]);
  });

  it("is a fault where the lower templates differ", () => {
    expect(faultsOf(sharedJob(alike("none")))).toEqual(["template-differs bases[1].template.mark"]);
    expect(faultsOf(sharedJob(alike("{ thickness: 3/8 }")))).toEqual(["template-differs bases[1].template.mark"]);
  });
});

describe("compare", () => {
  const verdicts = (old: string, fresh: string) => {
    const { templates } = compareJobs(
      open(sharedJob([{ mark: "B1", template: old }])),
      open(sharedJob([{ mark: "B1", template: fresh }])),
    );
    return Object.fromEntries(templates.map((each) => [each.new?.template ?? each.old?.template, each.verdict]));
  };

  it("sees a piece that changes, and that the others do not", () => {
    const old = ", lower: { above: 3 }";
    expect(verdicts(old, old)).toEqual({ B1: "unchanged", "B1-L": "unchanged" });
    expect(verdicts(old, ", lower: { above: 3, thickness: 3/8 }")).toEqual({ B1: "unchanged", "B1-L": "recut" });
    expect(verdicts("", old)).toEqual({ B1: "unchanged", "B1-L": "new" });
  });

  it("sees bolts of another size in segments and splice plates", () => {
    const segments = (bolt: string) => `${STRIP}, segments: { count: 2, bolt: ${bolt} }`;
    const found = verdicts(segments("1/2"), segments("5/8"));
    expect(found).toEqual({ "B1-S1": "recut", "B1-S2": "recut", "B1-SP": "recut" });
  });
});

describe("segments of a ring", () => {
  const ring = (count: number, start: string, diameter: number, segments: string, width = 20) =>
    [
      'job: { number: "1", revision: A, status: released }',
      "units: in",
      "shop: plasma",
      "bases:",
      "  - mark: V1",
      "    rods: { diameter: 1-1/2, grade: 55, projection: 9, embedment: 30, threads: 8 }",
      `    pattern: { kind: circle, diameter: ${diameter}, count: ${count}, start: ${start} }`,
      `    template: { thickness: 3/8, height: 3, outline: { kind: ring, outer: ${diameter + width / 2}, inner: ${diameter - width / 2} }, segments: ${segments} }`,
      "",
    ].join("\n");
  const plateOf = (job: string) => {
    const { job: resolved, bases } = open(job);
    const [checked] = bases.map((base) => checkBase(resolved, base));
    if (checked?.plate.parted == null) throw new Error("not in segments");
    return { ...checked, parted: checked.plate.parted };
  };

  it("a joint at 0 degrees moves to either side: its segments have every rod once", () => {
    const { parted, rows } = plateOf(ring(18, "2", 150, "5"));
    expect(parted.joints.map(({ degrees }) => degrees)).toEqual([72, 144.25, 216, 288, 359.75]);
    expect(rows.filter(({ rule, status }) => rule === "segment-joint" && status === "fail")).toEqual([]);
    const tags = parted.segments.flatMap(({ plate }) =>
      plate.holes.flatMap(({ role, tag }) => (role === "rod" ? [tag] : [])),
    );
    expect(new Set(tags).size).toBe(18);
    expect(tags).toHaveLength(18);
  });

  it.each([
    [
      "the fewest that the table takes",
      ring(24, "straddle", 158, "auto"),
      /^4 segments, the fewest that lie on table and stock of 144 in × 72 in \(.*\); joints along/,
    ],
    ["a number of the job's own", ring(24, "straddle", 158, "6"), /^joints along radii/],
    [
      "rods too close for any joint",
      ring(130, "0", 158, "auto"),
      /^\d segments, the fewest that lie on table .*, though joints have no room;/,
    ],
    [
      "larger than any part of the table",
      ring(24, "straddle", 1500, "auto", 300),
      /^2 segments, since none of up to 24 lie on table/,
    ],
  ])("says why there are so many: %s", (_, job, words) => {
    expect(plateOf(job).parted.how).toMatch(words);
  });

  it("letters a part that is cut out of a whole disc: its arc leaves room for every mark", () => {
    const disc = ring(16, "0", 80, "2").replace(/outline: \{[^}]*\}/, "outline: { kind: circle, diameter: 92 }");
    const { plate } = plateOf(disc);
    expect(plate.omitted).toEqual([]);
    expect(plate.marks.filter(({ kind }) => kind === "joint").map(({ text }) => text)).toEqual(["J1", "J1"]);
  });
});

/** One count of a thing, wherever it is told: rods in the summary, lots, bars, packing list, hardware, travellers, labels; plates and templates. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import readXlsxFile from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import type { OutputFile } from "../../src/outputs/index.js";
import { labelsOf } from "../../src/outputs/label-pdf.js";
import type { Inputs } from "../../src/readers/inputs.js";
import { rodLots } from "../../src/rods/lots.js";
import type { Scene, SceneGroup } from "../../src/sheets/index.js";
import { drawLabels } from "../../src/sheets/rods/labels.js";
import { drawRodDetails } from "../../src/sheets/rods/rod-details.js";
import { drawTravellers } from "../../src/sheets/rods/travellers.js";
import type { Summary } from "../../src/summary/model.js";
import { build } from "../../src/tasks/build.js";
import { makeBases } from "../../src/tasks/make-base.js";
import { openJob } from "../../src/tasks/open.js";
import { groupBy } from "../../src/units/group-by.js";
import { makeInputs, withPlacements } from "../bench/jobs.js";
import { inputsWith, usBase } from "../delivered.js";
import { drawFrom } from "../seed.js";
import { groupsOf } from "../unit/sheets/scene-walk.js";

const KINDS = [
  "cut-joined",
  "drill-list",
  "cut-list-csv",
  "rod-list-xlsx",
  "rod-lists-csv",
  "quote-xlsx",
  "quote-csv",
  "summary",
] as const;

type Row = Readonly<Record<string, string>>;

interface Made {
  readonly summary: Summary;
  readonly files: readonly OutputFile[];
  /** Rows of the CSV whose name ends so. */
  readonly rows: (key: string) => readonly Row[];
}

function make(inputs: Inputs): Made {
  const built = build(inputs, { date: "2026-11-24", version: "0", document: null, outputs: KINDS });
  expect(built.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const { summary, files } = built.finish();
  const rows = (key: string) => {
    const file = files.find(({ path }) => path.endsWith(`_${key}.csv`));
    const text = new TextDecoder().decode(file?.bytes);
    return Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;
  };
  return { summary, files, rows };
}

const sum = (rows: readonly Row[], column: string): number =>
  rows.reduce((all, row) => all + Number(row[column] ?? Number.NaN), 0);

/** Rods of a sample's folder. */
function sampleInputs(name: string): Inputs {
  const folder = fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));
  const shops = fileURLToPath(new URL("../../templates/shops", import.meta.url));
  const own = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
  return {
    job: "job.yaml",
    files: new Map<string, string>([
      ...own.map(({ name: file }) => [file, readFileSync(join(folder, file), "utf8")] as const),
      ...readdirSync(shops).map(
        (file) => [`templates/shops/${file}`, readFileSync(join(shops, file), "utf8")] as const,
      ),
    ]),
  };
}

/** Groups of this name in all scenes, by what their data says. */
const dataOf = (scenes: readonly Scene[], name: string): readonly SceneGroup["data"][] =>
  scenes.flatMap(({ items }) => groupsOf(items, name)).map(({ data }) => data);

/** Rods on details and travellers by lot, on labels by bundle; template pieces on labels. */
function expectPapersAgree(inputs: Inputs, { summary, rows }: Made): void {
  const opened = openJob(inputs, { date: "2026-11-24" });
  if (!opened.ok) throw new Error("a job without faults is meant");
  const { job } = opened.value;
  const papers = { job, lots: rodLots(job), held: new Set<string>(), version: "0" };
  const byLot = rows("rods").map(({ lot, quantity }) => [lot, Number(quantity)]);
  const quantities = (list: readonly SceneGroup["data"][]) => list.map(({ lot, quantity }) => [lot, quantity]);
  expect(quantities(dataOf(drawRodDetails(papers), "rod-detail"))).toEqual(byLot);
  expect(quantities(dataOf(drawTravellers(papers), "traveller-head"))).toEqual(byLot);
  const options = { version: "0", document: null, outputs: KINDS, inSet: false };
  const facts = [...makeBases(opened.value, options)].map((made) => made.facts);
  const labels = dataOf([...drawLabels({ job, version: "0", labels: labelsOf(papers, facts) })], "label");
  const bundles = labels.filter(({ what }) => what === "bundle");
  for (const { mark, quantity, rods } of summary.bases) {
    const own = bundles.filter(({ base }) => base === mark);
    expect([mark, own.length]).toEqual([mark, quantity * rods.length]);
    const counted = own.reduce((all, each) => all + Number(each.rods), 0);
    expect([mark, counted]).toEqual([mark, rods.reduce((all, group) => all + group.total, 0)]);
  }
  const packed = rows("packing").filter(({ what }) => what === "template");
  for (const [mark, own] of groupBy(packed, (row) => row.mark))
    expect([mark, labels.filter((each) => each.what === "piece" && each.mark === mark).length]).toEqual([
      mark,
      sum(own, "count"),
    ]);
  expect(labels.length - bundles.length).toBe(sum(packed, "count"));
}

/** `inputs`: null where papers, which take longer, are left out. */
function expectCountsAgree(made: Made, inputs: Inputs | null): void {
  if (inputs !== null) expectPapersAgree(inputs, made);
  const { summary, rows } = made;
  const rods = summary.bases.flatMap((base) => base.rods.map((group) => ({ base, group })));
  const total = rods.reduce((all, { group }) => all + group.total, 0);
  const lots = rows("rods");
  expect(sum(lots, "quantity")).toBe(total);
  const packing = rows("packing");
  const packed = (what: string) => packing.filter((row) => row.what === what);
  expect(sum(packed("rods"), "count")).toBe(total);
  for (const { base } of rods) {
    const own = packed("rods").filter((row) => row.base === base.mark);
    expect(sum(own, "count")).toBe(base.rods.reduce((all, group) => all + group.total, 0));
  }
  expectBarsAgree(lots, rows);
  const hardware = rows("hardware");
  for (const what of ["nut", "washer", "plate washer", "plate"]) {
    const counted = sum(
      hardware.filter((row) => row.what === what),
      "on rods",
    );
    expect([what, sum(packed(what), "count")]).toEqual([what, counted]);
  }
  expectTemplatesAgree(summary, packed("template"));
  expectPlatesPacked(rows("plates"), packed("template"));
}

/** Every plate of the cut list is packed, as many and as heavy, with one delivery or with several. */
function expectPlatesPacked(plates: readonly Row[], packed: readonly Row[]): void {
  const heavy = (row: Row) => Object.entries(row).find(([heading]) => heading.startsWith("weight total"))?.[1] ?? "";
  const listed = (list: readonly Row[], count: string) =>
    [...groupBy(list, ({ mark }) => mark)]
      .map(([mark, own]) => {
        const grams = own.map((row) => Math.round(Number(heavy(row).replace("not given", "0")) * 1000));
        return [mark, sum(own, count), grams.reduce((all, each) => all + each, 0)].join(" ");
      })
      .sort();
  expect(listed(packed, "count")).toEqual(listed(plates, "quantity"));
}

const madeOf = (inputs: Inputs): readonly [Made, Inputs] => [make(inputs), inputs];

/** Every lot whose cut length is known and that a bar holds is on bars, rod by rod. */
function expectBarsAgree(lots: readonly Row[], rows: Made["rows"]): void {
  const pieces = rows("pieces-on-bars");
  const bars = rows("bars-to-cut");
  for (const { lot, quantity, ...row } of lots) {
    const onBars = sum(
      pieces.filter((piece) => piece.lot === lot),
      "pieces",
    );
    const length = Object.entries(row).find(([heading]) => heading.startsWith("cut length"))?.[1];
    expect([lot, onBars]).toEqual([lot, length === "not given" ? 0 : Number(quantity)]);
  }
  expect(sum(bars, "pieces")).toBe(sum(pieces, "pieces"));
  expect(sum(pieces, "bars")).toBe(sum(bars, "bars"));
  expect(sum(rows("bars-by-size"), "bars")).toBe(sum(bars, "bars"));
  expect(sum(rows("bars-by-size"), "pieces")).toBe(sum(pieces, "pieces"));
}

function expectTemplatesAgree(summary: Summary, packed: readonly Row[]): void {
  const made = new Map(summary.bases.map(({ template }) => [template.mark, template.quantity]));
  const total = [...made.values()].reduce((all, quantity) => all + quantity, 0);
  expect(sum(packed, "count")).toBe(total);
}

const drawnBase = (mark: string, draw: () => number): string => {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)] as T;
  const bottom = pick([
    "nut",
    "straight",
    "{ kind: hook, reach: 4 }",
    "{ kind: plate, shape: square, size: 3, thickness: 1/2 }",
    "",
  ]);
  const rods = [
    `diameter: ${pick(["3/4", "1", "1-1/4"])}`,
    `grade: ${pick([36, 55])}`,
    `finish: ${pick(["plain", "galvanized"])}`,
    `projection: ${6 + Math.floor(draw() * 8)}`,
    `embedment: ${12 + Math.floor(draw() * 20)}`,
    ...(bottom === "" ? [] : [`bottom: ${bottom}`]),
    ...(draw() < 0.7 ? ["threads: 6", ...(bottom === "nut" ? ["bottomThreads: 3"] : [])] : []),
  ];
  const groups = `groups: [{ rods: { ${rods.join(", ")} }, pattern: { kind: rectangle, x: 12, y: 10 } }`;
  const second =
    draw() < 0.4
      ? ", { rods: { diameter: 3/4, projection: 6 }, pattern: { kind: points, at: [[0, 9], [0, -9]] } }"
      : "";
  const delivery = draw() < 0.5 ? "" : `delivery: ${pick(["truck 1", "truck 2"])}, `;
  return `{ mark: ${mark}, quantity: ${1 + Math.floor(draw() * 30)}, ${delivery}${groups}${second}], levelling: ${pick(["nuts", "shims"])}, template: { thickness: 1/4 } }`;
};

describe("counts agree", () => {
  it.each(readdirSync(fileURLToPath(new URL("../../samples", import.meta.url))))("in the sample %s", (name) => {
    expectCountsAgree(...madeOf(sampleInputs(name)));
  });

  it("in jobs with a grid and without", () => {
    expectCountsAgree(...madeOf(makeInputs(4)));
    expectCountsAgree(...madeOf(withPlacements(makeInputs(3), 3, 12)));
  });

  it("where bases of one mark go with several deliveries, by their placements", () => {
    const bases = [drawnBase("B1", drawFrom(1)), drawnBase("B2", drawFrom(2))].map((text) =>
      text.replace(/quantity: \d+, (delivery: truck \d, )?/, ""),
    );
    const inputs = inputsWith(bases);
    const plan = [
      "grid: { x: { names: [1, 2, 3, 4, 5], spacing: 25' }, y: { names: [A, B], spacing: 30' } }",
      "placements:",
      "  - { base: B1, every: [A, [1, 2, 3]], delivery: pour 1 }",
      "  - { base: B1, every: [A, [4, 5]], delivery: pour 2 }",
      "  - { base: B2, every: [B, [1, 2, 3, 4]], delivery: pour 2 }",
      "  - { base: B2, at: B-5 }",
    ];
    const text = `${inputs.files.get(inputs.job)}${plan.join("\n")}\n`;
    const split = { ...inputs, files: new Map([...inputs.files, [inputs.job, text]]) };
    const [made] = madeOf(split);
    expectCountsAgree(made, split);
    const rods = made.rows("packing").filter(({ what }) => what === "rods");
    const bundles = [...groupBy(rods, ({ delivery }) => delivery).keys()];
    expect(bundles).toEqual(["pour 1", "pour 2", "not given"]);
  });

  it("in jobs that are drawn: any lower end, any delivery, several groups, values left out", () => {
    for (let k = 0; k < 25; k++) {
      const draw = drawFrom(500 + k);
      const bases = Array.from({ length: 1 + Math.floor(draw() * 6) }, (_, i) => drawnBase(`B${i + 1}`, draw));
      const [made, inputs] = madeOf(inputsWith(bases, { status: k % 2 === 0 ? "released" : "preliminary" }));
      expectCountsAgree(made, k % 4 === 0 ? inputs : null);
    }
  });

  it("where one template serves several bases, and where a base is held", () => {
    const shared = [
      usBase("B1", "mark: T1, thickness: 1/4"),
      usBase("B2", "mark: T1, thickness: 1/4"),
      usBase("B3", "thickness: 1/4", 40),
    ];
    const [made, inputs] = madeOf(inputsWith(shared));
    expectCountsAgree(made, inputs);
    expect(
      made
        .rows("packing")
        .filter((row) => row.base === "B3")
        .map(({ status }) => status),
    ).toContain("HELD");
  });
});

describe("a workbook of lists, to another reader (read-excel-file)", () => {
  it("has the rows of its CSV twins, numbers as numbers, and sums that add up", async () => {
    const made = make(
      inputsWith([drawnBase("B1", drawFrom(1)), drawnBase("B2", drawFrom(2)), drawnBase("B3", drawFrom(3))]),
    );
    const file = made.files.find(({ kind }) => kind === "rod-list-xlsx");
    const sheets = await readXlsxFile((file?.bytes ?? new Uint8Array()).slice().buffer as ArrayBuffer);
    const names = [
      "Rods",
      "Bars to cut",
      "Pieces on bars",
      "Bars by size",
      "Threads",
      "Hardware",
      "Packing",
      "Not given",
    ];
    expect(sheets.map(({ sheet }) => sheet)).toEqual(names);
    const keys = [
      "rods",
      "bars-to-cut",
      "pieces-on-bars",
      "bars-by-size",
      "threads",
      "hardware",
      "packing",
      "not-given",
    ];
    let added = 0;
    for (const [i, key] of keys.entries()) {
      const data = sheets[i]?.data ?? [];
      const rows = made.rows(key);
      const start = data.findIndex(
        (row) => row.length > 1 && row[1] !== null && row[1] === Object.keys(rows[0] ?? {})[1],
      );
      const body = data.slice(start + 1, start + 1 + rows.length);
      expect(body.map((row) => row.map((cell) => (cell === null ? "" : String(cell))))).toEqual(
        rows.map((row) => Object.values(row)),
      );
      added += expectTotals(data.slice(start + 1 + rows.length), body, (data[start] ?? []).map(String));
    }
    expect(added).toBeGreaterThan(8);
  });
});

const SUMMED = /^(quantity|bars|pieces|ends|on rods|spare|to order|weight total|weight on rods|stock used)/;

/** The last row, where there is one, holds the sums of the columns that it fills; how many these are. */
function expectTotals(
  totals: readonly (readonly unknown[])[],
  body: readonly (readonly unknown[])[],
  headings: readonly string[],
): number {
  const [last] = totals.slice(-1);
  let count = 0;
  for (const [i, heading] of headings.entries()) {
    const cell = last?.[i];
    if (typeof cell !== "number" || !SUMMED.test(heading)) continue;
    count += 1;
    const added = body.reduce((all, row) => all + (typeof row[i] === "number" ? row[i] : 0), 0);
    expect([heading, Math.round(cell * 1000)]).toEqual([heading, Math.round(added * 1000)]);
  }
  return count;
}

/** The cut list in a package: as a workbook to a reader that nobody here wrote, as pages with nothing over anything else. Invented data. */
import PDFDocument from "pdfkit";
import { readSheet } from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import type { PdfMaker } from "../../../src/formats/pdf-maker.js";
import type { Job } from "../../../src/job/model/job.js";
import { drawCutList } from "../../../src/outputs/cut-list-pdf.js";
import { findCollisions } from "../../../src/sheets/index.js";
import { build } from "../../../src/tasks/build.js";
import { inputsWith } from "../../delivered.js";
import { jobFixture } from "../../fixture.js";
import { plateFacts } from "../lists/plate-facts.js";
import { textsOf } from "../sheets/scene-walk.js";

const pdf = PDFDocument as unknown as PdfMaker;

const base = (mark: string, x: number, template: string) =>
  `{ mark: ${mark}, quantity: 3, rods: { diameter: 3/4 }, pattern: { kind: rectangle, x: ${x}, y: 8 }, template: { ${template} } }`;
const BASES = [
  base("B1", 8, "thickness: 3/8, grade: A36"),
  base("B2", 9, "thickness: 1/4, grade: A36, quantity: 5"),
  base("B3", 10, "thickness: 3/4, material: plywood, mark: '=T3'"),
  base("B4", 11, "thickness: 3/8, grade: A36, hole: 3/4"),
];

const packageOf = (status = "released") =>
  build(inputsWith(BASES, { status }), { date: "2026-11-24", version: "0", document: newLeanDocument(), pdf }).finish();

describe("the cut list of a package", () => {
  it("counts what the summary counts, to a reader of workbooks that nobody here wrote", async () => {
    const { files, summary } = packageOf();
    const bytes = files.find(({ kind }) => kind === "cut-list-xlsx")?.bytes ?? new Uint8Array();
    const rows = await readSheet(bytes.slice().buffer as ArrayBuffer);
    const head = rows.findIndex((row) => row[0] === "mark");
    const at = (heading: string) => (rows[head] ?? []).indexOf(heading);
    const own = rows
      .slice(head + 1)
      .filter((row) => row[0] !== "TOTAL" && row[0] !== "of which HELD" && row[0] !== null);
    expect(own.map((row) => row[0])).toEqual(["B2", "B1", "B4", "=T3"]);
    for (const row of own) {
      const found = summary.bases.find(({ template }) => template.mark === row[0]);
      if (found === undefined) throw new Error(`${row[0]} is not in the summary`);
      const { template, held, files: listed } = found;
      expect([row[at("quantity")], row[at("grade")]]).toEqual([template.quantity, template.grade ?? "not given"]);
      expect(Number(row[at("net area each, in2")])).toBeCloseTo(template.netArea, 2);
      expect(row[at("status")]).toBe(held ? "HELD" : template.material === "steel" ? "to cut" : "to drill");
      expect(row[at("holes and openings each")]).toBe(template.holes.length);
      const file = row[at("file")];
      expect(file === null ? [] : [`cut/${file}`]).toEqual(
        listed.filter(({ kind }) => kind === "cut-joined" || kind === "drill-list").map(({ path }) => path),
      );
      if (template.material !== "steel") continue;
      expect(row[at("pierces each")]).toBe(template.pierces);
      expect(Number(row[at("cut length each, in")])).toBeCloseTo(template.cutLength, 2);
      expect(Number(row[at("scribe length each, in")])).toBeCloseTo(template.scribeLength ?? Number.NaN, 2);
      expect(Number(row[at("weight each, lb")])).toBeCloseTo(template.weight?.value ?? Number.NaN, 2);
    }
    const total = rows.find((row) => row[0] === "TOTAL");
    expect(total?.[at("quantity")]).toBe(3 + 5 + 3 + 3);
    expect(rows.find((row) => row[0] === "of which HELD")?.[at("quantity")]).toBe(3);
  });

  it("is for a job that is not released named so, and says so", () => {
    const { files } = packageOf("preliminary");
    const names = files.filter(({ kind }) => kind.startsWith("cut-list")).map(({ path }) => path);
    expect(names).toEqual([
      "cut/26-050_rev-A_NOT-RELEASED_cut-list.pdf",
      "cut/26-050_rev-A_NOT-RELEASED_cut-list.xlsx",
      "cut/26-050_rev-A_NOT-RELEASED_cut-list_plates.csv",
      "cut/26-050_rev-A_NOT-RELEASED_cut-list_by-material.csv",
    ]);
    const csv = new TextDecoder().decode(files.find(({ path }) => path.endsWith("plates.csv"))?.bytes);
    expect(csv.match(/NOT RELEASED/g)).toHaveLength(3);
    expect(csv).toContain("\n'=T3,template,3,plywood,");
  });
});

describe("its pages", () => {
  it.each([
    ["in", 1],
    ["in", 90],
    ["mm", 7],
    ["mm", 90],
  ] as const)("in %s of %d marks hold every mark and file, and nothing stands over anything else", (unit, count) => {
    const facts = Array.from({ length: count }, (_, i) => plateFacts(i));
    const scenes = drawCutList({ job: { ...jobFixture(), unit } }, { facts, version: "0" });
    for (const scene of scenes) expect(findCollisions(scene)).toEqual([]);
    const words = scenes.flatMap((scene) => textsOf(scene.items).map(({ text }) => text)).join(" ");
    for (const { template } of facts) expect(words).toContain(template.mark);
    expect(words).toContain("ALL PLATES BY MATERIAL AND THICKNESS");
  });

  const wordsWith = (layers: Partial<Job["shop"]["cutFile"]["layers"]>) => {
    const job = jobFixture();
    const { shop } = job;
    const cutFile = { ...shop.cutFile, layers: { ...shop.cutFile.layers, ...layers } };
    const scenes = drawCutList(
      { job: { ...job, shop: { ...shop, cutFile } } },
      { facts: [plateFacts(0)], version: "0" },
    );
    return scenes.flatMap((scene) => textsOf(scene.items).map(({ text }) => text)).join(" ");
  };

  it("name a layer once, whatever lies on it", () => {
    expect(wordsWith({})).toMatch(/To cut: layers \w+, \w+, \w+, inside before outside/);
    expect(wordsWith({ outline: "CUT", holes: "CUT", openings: "CUT" })).toContain("To cut: layer CUT, inside before");
    expect(wordsWith({ outline: "CUT", holes: "IN", openings: "IN" })).toContain(
      "To cut: layers CUT, IN, inside before",
    );
  });

  it("say of plywood how it is drilled, and nothing of layers; of steel nothing of plywood, and of drills where there are some", () => {
    const said = (numbers: readonly number[]) =>
      drawCutList({ job: jobFixture() }, { facts: numbers.map(plateFacts), version: "0" })
        .flatMap((scene) => textsOf(scene.items).map(({ text }) => text))
        .join(" ");
    const [plywood, steel, drilled] = [said([12]), said([0]), said([1])];
    expect(plywood).toContain("Plywood is drilled by its drill list");
    expect(plywood).not.toMatch(/To cut: layer|To punch|cut\/lines/);
    expect(steel).toContain("To cut: layer");
    expect(steel).not.toMatch(/Plywood is|OF THEM DRILL|that is HELD/);
    expect(drilled).toContain("Holes of the column OF THEM DRILL are punched");
    expect(said([0, 3])).toContain("A plate that is HELD is not cut");
  });

  it("tell holes from openings", () => {
    expect(wordsWith({})).toContain("4 + 1 opening");
  });
});

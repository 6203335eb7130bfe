/**
 * Codes on travellers and labels read back from the printed picture by readers that nobody here wrote: jsQR one by one, and zbar
 * all of a page at once. The pictures are poppler's, grey and in one bit.
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import jsqr from "jsqr";
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { PdfMaker } from "../../src/formats/pdf-maker.js";
import { documentPdf } from "../../src/outputs/document-pdf.js";
import type { OutputFile } from "../../src/outputs/index.js";
import type { Scene } from "../../src/sheets/index.js";
import { drawLabels } from "../../src/sheets/rods/labels.js";
import { drawTravellers } from "../../src/sheets/rods/travellers.js";
import type { Summary } from "../../src/summary/model.js";
import { build } from "../../src/tasks/build.js";
import { inches, millimetres, type Unit } from "../../src/units/index.js";
import { inputsWith, usBase } from "../delivered.js";
import { bottomsOf, papersOf, rodGroup } from "../unit/sheets/rod-cases.js";
import { groupsOf } from "../unit/sheets/scene-walk.js";
import { isSkipped, newFolder, type Raster, readPgm, run } from "./viewers.js";

type Reader = (data: Uint8ClampedArray, width: number, height: number) => { readonly data: string } | null;
const readCode = jsqr as unknown as Reader;
const maker = PDFDocument as unknown as PdfMaker;

/** Pictures of the pages of a PDF, in their order. */
function picturesOf(
  bytes: Uint8Array,
  dotsAnInch: number,
  kind: "-gray" | "-mono",
): { readonly folder: string; readonly names: readonly string[] } {
  const folder = newFolder();
  writeFileSync(join(folder, "it.pdf"), bytes);
  run("pdftoppm", ["-r", String(dotsAnInch), kind, join(folder, "it.pdf"), join(folder, "page")]);
  return {
    folder,
    names: readdirSync(folder)
      .filter((name) => name.startsWith("page"))
      .sort(),
  };
}

/** A square of a picture, millimetres of its page, as jsQR takes it. */
function cut(
  { width, height, grey }: Raster,
  page: Scene,
  { x, top, side }: Readonly<Record<"x" | "top" | "side", number>>,
) {
  const dots = width / page.width;
  const [x0, y0, size] = [Math.round(x * dots), Math.round((page.height - top) * dots), Math.round(side * dots)];
  const data = new Uint8ClampedArray(size * size * 4).fill(255);
  for (let j = 0; j < size; j++)
    for (let i = 0; i < size; i++)
      if (y0 + j < height && x0 + i < width)
        data.fill(grey[(y0 + j) * width + x0 + i] ?? 255, (j * size + i) * 4, (j * size + i) * 4 + 3);
  return { data, size };
}

const codesOf = ({ items }: Scene) =>
  groupsOf(items, "qr-code").map(({ data }) => ({
    text: String(data.text),
    square: { x: Number(data.x), top: Number(data.top), side: Number(data.side) },
  }));

const papersIn = (unit: Unit) => {
  const groups = Object.values(bottomsOf(unit === "in" ? inches(1.25) : millimetres(30))).map((bottom) =>
    rodGroup(unit, { bottom }),
  );
  return papersOf(groups, { unit, number: "24-118 Łódź/7", status: "for approval" });
};

describe.skipIf(isSkipped("pdftoppm"))("codes, to jsQR", () => {
  it.each(["in", "mm"] as const)("say on every traveller what they stand for, in %s", (unit) => {
    const papers = papersIn(unit);
    const pages = drawTravellers(papers);
    const about = { job: papers.job, version: "0", subject: "s" };
    const { folder, names } = picturesOf(documentPdf(maker, pages, about), 150, "-gray");
    const read = pages.flatMap((page, i) => {
      const picture = readPgm(readFileSync(join(folder, names[i] ?? "")));
      return codesOf(page).map(({ text, square }) => {
        const { data, size } = cut(picture, page, square);
        return [text, readCode(data, size, size)?.data];
      });
    });
    expect(read).toHaveLength(papers.lots.length);
    for (const [text, said] of read) expect(said).toBe(text);
    expect(read.map(([text]) => text)).toEqual(
      papers.lots.map(({ mark, total }) =>
        expect.stringMatching(
          new RegExp(`^JOB 24-118 u141odz/7 / ${mark} / REV .* / SHA [0-9a-f]{12} / ${total} OFF$`),
        ),
      ),
    );
  });

  it("say on labels what they stand for, however long", () => {
    const { job } = papersIn("in");
    const label = { large: ["B1"], lines: ["a", "b", "c"], each: "# OF 1", from: 1, count: 1, isHeld: true, data: {} };
    const texts = ["JOB 1 / T1 / REV A / SHEET 1-T1 / SHA 1a2b3c4d5e6f", `JOB ${"very long ".repeat(8)} / T1`, "x"];
    const pages = [...drawLabels({ job, version: "0", labels: texts.map((code) => ({ ...label, code })) })];
    const { folder, names } = picturesOf(documentPdf(maker, pages, { job, version: "0", subject: "s" }), 150, "-gray");
    const [page] = pages;
    if (page === undefined) throw new Error("no page");
    const picture = readPgm(readFileSync(join(folder, names[0] ?? "")));
    const read = codesOf(page).map(({ square }) => {
      const { data, size } = cut(picture, page, square);
      return readCode(data, size, size)?.data;
    });
    expect(read).toEqual(texts.map((text) => text.replace(/\s+/g, " ")));
  });
});

const KINDS = ["cut-joined", "sheet-svg", "rod-detail-pdf", "traveller-pdf", "label-pdf", "summary"] as const;

function makePackage(): { readonly summary: Summary; readonly files: readonly OutputFile[] } {
  const bases = [
    usBase("B1", "mark: T1, thickness: 1/4"),
    usBase("B2", "mark: T1, thickness: 1/4"),
    usBase("B3", "thickness: 1/4", 40),
  ];
  const built = build(inputsWith(bases), {
    date: "2026-11-24",
    version: "0",
    document: newLeanDocument(),
    pdf: maker,
    outputs: KINDS,
  });
  return built.finish();
}

describe.skipIf(isSkipped("pdftoppm", "zbarimg", "qpdf"))("codes of a package, to zbar", () => {
  const { summary, files } = makePackage();
  const bytesOf = (kind: string) => files.find((file) => file.kind === kind)?.bytes ?? new Uint8Array();
  const scan = (kind: string, how: "-gray" | "-mono", dots: number): readonly string[] => {
    const { folder, names } = picturesOf(bytesOf(kind), dots, how);
    const args = [
      "-q",
      "--raw",
      "--nodbus",
      "-Sdisable",
      "-Sqrcode.enable",
      ...names.map((name) => join(folder, name)),
    ];
    return run("zbarimg", args).trimEnd().split("\n").sort();
  };
  const counts = (list: readonly string[]) =>
    [...new Set(list)].map((each) => list.filter((other) => other === each).length);

  it.each([
    ["-gray", 150],
    ["-mono", 200],
  ] as const)("count bundles and template pieces (%s, %i dots an inch)", (how, dots) => {
    const codes = scan("label-pdf", how, dots);
    const bundles = codes.filter((code) => code.includes(" RODS"));
    expect(bundles).toHaveLength(summary.bases.reduce((sum, { quantity, rods }) => sum + quantity * rods.length, 0));
    const made = new Map(summary.bases.map(({ template }) => [template.mark, template.quantity]));
    const pieces = codes.filter((code) => !code.includes(" RODS"));
    expect(counts(pieces).toSorted()).toEqual([...made.values()].toSorted());
    for (const { template, files: own } of summary.bases) {
      const sheet = own.find(({ kind }) => kind === "sheet-svg");
      const code = pieces.find((each) => each.includes(` / ${template.mark} / `));
      expect(code).toContain(`/ SHEET 26-050-${template.mark} /`);
      expect(sheet?.sha256.startsWith(/SHA ([0-9a-f]{12})/.exec(code ?? "")?.[1] ?? "none")).toBe(true);
      const cutFile = own.find(({ kind }) => kind === "cut-joined");
      if (cutFile !== undefined) expect(code).toContain(`/ CUT ${cutFile.sha256.slice(0, 12)}`);
    }
  });

  it("name each lot once on the travellers, with all its rods", () => {
    const codes = scan("traveller-pdf", "-gray", 150);
    const rods = summary.bases.flatMap((base) => base.rods);
    const told = codes.map((code) => Number(/ (\d+) OFF$/.exec(code)?.[1]));
    expect(told.reduce((sum, count) => sum + count, 0)).toBe(rods.reduce((sum, { total }) => sum + total, 0));
  });

  it("stand in files that qpdf finds no fault in, the same bytes twice", () => {
    const again = makePackage();
    for (const kind of ["rod-detail-pdf", "traveller-pdf", "label-pdf"]) {
      const folder = newFolder();
      writeFileSync(join(folder, "it.pdf"), bytesOf(kind));
      expect(run("qpdf", ["--check", join(folder, "it.pdf")])).toContain("No syntax or stream encoding errors found");
      const other = again.files.find((file) => file.kind === kind);
      expect(Buffer.from(other?.bytes ?? []).equals(Buffer.from(bytesOf(kind)))).toBe(true);
    }
  });
});

/**
 * The set of a job as PDF, by qpdf (ISO 32000 syntax) and poppler: page boxes, fonts, texts, and its picture against that of
 * the same sheet's SVG, which Chromium draws with the font that the file carries.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import PDFDocument from "pdfkit";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { PdfMaker } from "../../src/formats/pdf-maker.js";
import { startPdf, writePage } from "../../src/formats/sheet-pdf.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { drawBudgetSheet } from "../../src/sheets/budget-sheet.js";
import { drawPlanSheets, drawSheet, type Scene } from "../../src/sheets/index.js";
import { drawSurveySheet } from "../../src/sheets/survey-sheet.js";
import { placementAt } from "../setting-out-plan.js";
import { moved, surveyCase, surveyOf } from "../survey-case.js";
import { reckonCase } from "../unit/sheets/budget-cases.js";
import { singlePlan } from "../unit/sheets/plan-cases.js";
import { textsOf } from "../unit/sheets/scene-walk.js";
import { sheetCases } from "../unit/sheets/sheet-cases.js";
import { isSkipped, newFolder, type Raster, readPgm, run, shareApart, startChromium } from "./viewers.js";

const maker = PDFDocument as unknown as PdfMaker;
const facts = { title: "Łódź & <co> ⌀", author: "", subject: "s", day: "2026-11-24", program: "rodplate 0" };
const folder = newFolder();

const NAMES = ["simple", "metric", "circle8", "small", "ply"];
const named = Object.entries(sheetCases).filter(([name]) => NAMES.includes(name));

function surveySheet(): Scene {
  const one = surveyCase({ placements: [placementAt(["A", "1"])] });
  const survey = surveyOf(
    one,
    one.points.map((point, i) => (i === 0 ? moved(point, -2.5, 0) : point)),
  );
  const [group] = survey.groups;
  if (group === undefined) throw new Error("no group");
  return drawSurveySheet({ job: one.job, survey, group, version: "0" });
}

/** In every script that the sheet font has. */
function foreignSheet(): Scene {
  const request = sheetCases.metric?.();
  if (request === undefined) throw new Error("no case");
  const job = { ...request.job, title: "Łódź, Διάμετρος, Лист № 4, Ñandú", owner: "Åse Çöß", drawnBy: "ĄĆĘ" };
  return drawSheet({ ...request, job });
}

/** Of every kind of sheet. */
const scenes: readonly Scene[] = [
  ...named.map(([, make]) => drawSheet(make())),
  ...drawPlanSheets(singlePlan()),
  surveySheet(),
  drawBudgetSheet({ ...reckonCase({}), version: "0" }),
  foreignSheet(),
];

function pdfOf(pages: readonly Scene[]): Uint8Array {
  const pdf = startPdf(maker, facts);
  const order = pages.map((scene) => pdf.add(writePage(scene)));
  return pdf.finish(order, [
    { title: "All", page: 1, under: order.map((i) => ({ title: `p ${i}`, page: i + 1, under: [] })) },
  ]);
}

const path = join(folder, "set.pdf");
writeFileSync(path, pdfOf(scenes));

/** Every sign of the sheet font and some that it lacks, as the texts of one sheet. */
function sheetOf(texts: readonly string[]): Scene {
  const items = texts.map((text, i) => {
    const at = { x: 10, y: 190 - 8 * i };
    return { kind: "text", role: "note", text, at, anchor: "start", height: 3, turn: 0, bold: i % 2 === 1 } as const;
  });
  return { size: "A4", width: 297, height: 210, title: "t", description: "d", items };
}

describe.skipIf(isSkipped("qpdf", "pdftotext"))("a set of sheets", () => {
  it("is a PDF without fault, twice the same", () => {
    expect(run("qpdf", ["--check", path])).toContain("No syntax or stream encoding errors found");
    expect(scenes.length).toBeGreaterThan(5);
    expect(Buffer.compare(Buffer.from(pdfOf(scenes)), readFileSync(path))).toBe(0);
  });

  it("has pages of the sheets' true size, which print as they are", () => {
    const boxes = [
      ...run("pdfinfo", ["-box", "-l", "99", path]).matchAll(/MediaBox:\s+0\.00\s+0\.00\s+([\d.]+)\s+([\d.]+)/g),
    ];
    expect(boxes).toHaveLength(scenes.length);
    for (const [i, scene] of scenes.entries()) {
      expect(Number(boxes[i]?.[1])).toBeCloseTo((scene.width * 72) / 25.4, 2);
      expect(Number(boxes[i]?.[2])).toBeCloseTo((scene.height * 72) / 25.4, 2);
    }
    const root = run("qpdf", ["--qdf", "--object-streams=disable", path, "-"]);
    expect(root).toMatch(/\/PrintScaling \/None/);
    expect(root).toMatch(/\/PickTrayByPDFSize true/);
    expect(root).toMatch(/\/Lang \(en\)/);
    expect(run("pdfinfo", [path])).toContain("Łódź & <co> ⌀");
  });

  it("embeds a subset of both weights, with names for the letters, and no other font", () => {
    const rows = run("pdffonts", [path]).trim().split("\n").slice(2);
    expect(rows).toHaveLength(2);
    for (const row of rows)
      expect(row).toMatch(/^[A-Z]{6}\+Arimo-(Regular|Bold)\s+CID TrueType\s+Identity-H\s+yes yes yes/);
  });

  it("has every text of every sheet, to be found", () => {
    for (const [i, scene] of scenes.entries()) {
      const page = run("pdftotext", ["-raw", "-f", `${i + 1}`, "-l", `${i + 1}`, path, "-"]).replace(/\s+/g, "");
      const texts = textsOf(scene.items).filter(({ turn }) => turn === 0);
      expect(texts.length).toBeGreaterThan(30);
      for (const { text } of texts) expect(page, text).toContain(text.replace(/\s+/g, ""));
    }
  });

  it("finds signs and accents again, and boxes stand for what the font lacks", () => {
    const texts = ["⌀20 ± 1/2° ½ ¼ ¾ ⅞ ≤ ≥ × Ø", "Łódź Åse Ñandú çöß ĄĆĘ", "Διάμετρος Лист №4", "漢字 A1 مرحبا 😀 B2"];
    const one = join(folder, "signs.pdf");
    writeFileSync(one, pdfOf([sheetOf(texts)]));
    const found = run("pdftotext", ["-raw", one, "-"]);
    for (const text of texts.slice(0, 3)) expect(found).toContain(text);
    expect(found).toContain("A1");
    expect(found).not.toMatch(/[漢字م😀]/u);
    run("pdftoppm", ["-gray", "-r", "96", one, join(folder, "signs")]);
    const { grey, width } = readPgm(readFileSync(join(folder, "signs-1.pgm")));
    const inkAt = (mm: number, from: number, to: number): number => {
      let ink = 0;
      const y = Math.round((210 - mm) * (96 / 25.4));
      for (let dy = 0; dy < 12; dy++)
        for (let x = Math.round(from * 3.78); x < to * 3.78; x++)
          if ((grey[(y - dy) * width + x] ?? 255) < 128) ink += 1;
      return ink;
    };
    expect(inkAt(190 - 24, 10, 18)).toBeGreaterThan(20);
  });
});

describe.skipIf(isSkipped("chromium", "fonts-dejavu-extra", "pdftoppm"))("a page and the SVG of its sheet", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startChromium(folder);
  });
  afterAll(() => browser?.close());

  /** At 96 dots an inch; Chromium's pages are up to two dots larger than their sheets. */
  const pictureOf = (pdf: string, page: number, { width, height }: Scene): Raster => {
    const out = join(folder, "page");
    const size = [width, height].map((mm) => `${Math.floor((mm * 96) / 25.4)}`);
    const part = ["-x", "0", "-y", "0", "-W", size[0] ?? "", "-H", size[1] ?? ""];
    run("pdftoppm", ["-gray", "-r", "96", "-f", `${page}`, "-l", `${page}`, ...part, "-singlefile", pdf, out]);
    return readPgm(readFileSync(`${out}.pgm`));
  };
  const pictureOfSvg = async (scene: Scene): Promise<Raster> => {
    const page = await browser.newPage();
    const svg = writeSheetSvg(scene, newLeanDocument()).replace(/^<\?xml.*\n/, "");
    await page.setContent(`<!doctype html><style>svg{display:block}body{margin:0}</style><body>${svg}</body>`);
    const path = join(folder, "sheet-by-chromium.pdf");
    await page.pdf({ path, width: `${scene.width}mm`, height: `${scene.height}mm`, pageRanges: "1" });
    await page.close();
    return pictureOf(path, 1, scene);
  };

  it.each(scenes.map((scene, i) => [scene.title, scene, i + 1] as const))(
    "are one picture: %s",
    async (_, scene, page) => {
      expect(shareApart(pictureOf(path, page, scene), await pictureOfSvg(scene))).toBeLessThan(1 / 200);
    },
  );

  it("are two pictures where one of them lacks all but its border", async () => {
    const [scene] = scenes;
    if (scene === undefined) throw new Error("no scene");
    const bare = { ...scene, items: scene.items.filter((item) => item.kind !== "group" || item.name === "frame") };
    expect(shareApart(pictureOf(path, 1, scene), await pictureOfSvg(bare))).toBeGreaterThan(1 / 200);
  });
});

/**
 * Texts of sheets in viewers where DejaVu is the only font installed. Chromium takes the font from the file; without it, and in
 * librsvg, which never does, every text stays in the room that was kept for it. Widths by the viewers themselves.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { writtenText } from "../../src/formats/written-text.js";
import { drawSheet, type Scene } from "../../src/sheets/index.js";
import { textWidth } from "../../src/sheets/text-metrics.js";
import { textsOf } from "../unit/sheets/scene-walk.js";
import { sheetCases } from "../unit/sheets/sheet-cases.js";
import { dejavuAlone, isSkipped, newFolder, run, startChromium } from "./viewers.js";

const folder = newFolder();
const NAMES = ["simple", "metric", "circle8", "small", "ply", "prelim"];
const cases = Object.entries(sheetCases)
  .filter(([name]) => NAMES.includes(name))
  .map(([name, make]) => [name, drawSheet(make())] as const);

const words = ["⌀20 ± 1/2° ½ ≤ 4 × Ø7", "Łódź Åse Ñandú ⅞ → √", "Διάμετρος", "Лист № 4", "WIDE AVAILABLE TAVERN, To."];
const signs: Scene = {
  ...{ size: "A4", width: 297, height: 210, title: "Signs <of> all chunks", description: "d" },
  items: [...words, ...words].map((text, i) => {
    const at = { x: 10, y: 190 - 8 * i };
    return {
      kind: "text",
      role: "note",
      text,
      at,
      anchor: "start",
      height: 3,
      turn: 0,
      bold: i >= words.length,
    } as const;
  }),
};
const all: readonly (readonly [string, Scene])[] = [...cases, ["signs", signs]];
const write = (scene: Scene) => writeSheetSvg(scene, newLeanDocument());

interface Measured {
  readonly text: string;
  /** By the file. */
  readonly length: number;
  /** By the browser. */
  readonly width: number;
}

/** The part of a page that is used here; the library of the DOM is not among the types. */
interface PageScope {
  readonly document: {
    readonly defaultView: unknown;
    readonly fonts: Iterable<{ load(): Promise<unknown> }>;
    querySelectorAll(name: "text"): Iterable<{
      readonly textContent: string;
      getAttribute(name: string): string | null;
      removeAttribute(name: string): void;
      getComputedTextLength(): number;
    }>;
  };
  readonly rodplate: { readonly writeSheetSvg: typeof writeSheetSvg };
}

/** Lengths of all texts, as they are set or, where `free`, as wide as the letters make them. */
async function measure(page: Page, svg: string, free: boolean): Promise<readonly Measured[]> {
  await page.setContent(`<!doctype html><body>${svg.replace(/^<\?xml.*\n/, "")}</body>`);
  return page.evaluate(async (isFree) => {
    const { document } = globalThis as unknown as PageScope;
    await Promise.all([...document.fonts].map((face) => face.load()));
    return [...document.querySelectorAll("text")].map((text) => {
      const length = Number(text.getAttribute("textLength"));
      if (isFree) text.removeAttribute("textLength");
      return { text: text.textContent, length, width: text.getComputedTextLength() };
    });
  }, free);
}

const outside = (measured: readonly Measured[]): readonly Measured[] =>
  measured.filter(({ length, width }) => Math.abs(width - length) > 0.01 * length);

describe.skipIf(isSkipped("chromium", "fonts-dejavu-extra"))("in Chromium", () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await startChromium(folder);
    page = await browser.newPage();
  });
  afterAll(() => browser?.close());

  it.each(all)("the font of the file has the widths that were measured: %s", async (_, scene) => {
    const measured = await measure(page, write(scene), true);
    expect(measured.length).toBeGreaterThan(8);
    expect(outside(measured)).toEqual([]);
  });

  it("many sheets stand in one page, each with its letters, and no name twice", async () => {
    const sheets = all.map(([, scene]) => write(scene).replace(/^<\?xml.*\n/, ""));
    const measured = await measure(page, sheets.join("\n"), true);
    expect(measured.length).toBeGreaterThan(200);
    expect(outside(measured)).toEqual([]);
    for (const sheet of sheets) {
      expect(sheet).toMatch(/^<svg [^>]*role="img" aria-label="[^"]+"/);
      expect(sheet).not.toMatch(/ id=|url\(#|href="#/);
      expect(
        [...sheet.matchAll(/<style>(.*?)<\/style>/g)].map(([, rules]) => rules?.replace(/@font-face\{[^}]*\}/g, "")),
      ).toEqual([""]);
    }
  });

  it.each(all)("without the file's font texts keep their length: %s", async (_, scene) => {
    const svg = write(scene).replace(/<style>.*<\/style>/, "");
    expect(outside(await measure(page, svg, false))).toEqual([]);
    expect(outside(await measure(page, svg, true)).length).toBeGreaterThan(4);
  });

  it("its own document gives the same bytes as a lean one", async () => {
    const entry = join(folder, "entry.ts");
    const writer = new URL("../../src/formats/sheet-svg.ts", import.meta.url).pathname;
    writeFileSync(entry, `export { writeSheetSvg } from ${JSON.stringify(writer)};`);
    const lib = { entry, formats: ["iife" as const], name: "rodplate" };
    await build({
      configFile: false,
      logLevel: "silent",
      build: { outDir: folder, emptyOutDir: false, lib: { ...lib, fileName: () => "writer.js" } },
    });
    await page.goto(pathToFileURL(join(folder, "fonts.conf")).href).catch(() => null);
    await page.setContent("<!doctype html><body></body>");
    await page.addScriptTag({ content: readFileSync(join(folder, "writer.js"), "utf8") });
    const odd = { ...signs, items: [...signs.items, { ...signs.items[0], text: `<a> & "b"\u00a0c` }] } as Scene;
    for (const [, scene] of [...all, ["odd", odd] as const]) {
      const here = write(scene);
      const there = await page.evaluate((drawn) => {
        const { document, rodplate } = globalThis as unknown as PageScope;
        return rodplate.writeSheetSvg(drawn, document);
      }, scene);
      expect(there === here ? "same" : firstDifference(there, here)).toBe("same");
    }
  });
});

function firstDifference(a: string, b: string): string {
  const at = [...a].findIndex((sign, i) => sign !== b[i]);
  return `${a.slice(at - 40, at + 60)} | ${b.slice(at - 40, at + 60)}`;
}

interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Room of each text on the sheet, millimetres, y down. */
function roomsOf(scene: Scene): readonly (Box & { readonly text: string })[] {
  return textsOf(scene.items).map(({ text, at, anchor, height, turn, bold }) => {
    const width = textWidth(text, height, bold);
    const left = { start: 0, middle: -width / 2, end: -width }[anchor];
    const angle = (turn * Math.PI) / 180;
    const corners = [left, left + width].flatMap((u) =>
      [-0.4 * height, 1.4 * height].map((v) => ({
        x: at.x + u * Math.cos(angle) - v * Math.sin(angle),
        y: scene.height - (at.y + u * Math.sin(angle) + v * Math.cos(angle)),
      })),
    );
    const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
    return {
      text: writtenText(text),
      x0: Math.min(...xs),
      y0: Math.min(...ys),
      x1: Math.max(...xs),
      y1: Math.max(...ys),
    };
  });
}

/** Words with their boxes, millimetres, as poppler finds them in librsvg's PDF of the sheet. */
function wordsByRsvg(svg: string): readonly (Box & { readonly text: string })[] {
  const [from, to] = [join(folder, "rsvg.svg"), join(folder, "rsvg.pdf")];
  writeFileSync(from, svg);
  run("rsvg-convert", ["-f", "pdf", "-o", to, from], dejavuAlone(folder));
  expect(run("pdffonts", [to])).toMatch(/DejaVu/);
  const html = run("pdftotext", ["-bbox", to, "-"]);
  const mm = 25.4 / 72;
  return [...html.matchAll(/<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)<\/word>/g)].map((found) => {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = found.slice(1, 5).map((value) => Number(value) * mm);
    return { text: unescaped(found[5] ?? ""), x0, y0, x1, y1 };
  });
}

function unescaped(text: string): string {
  return text
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, "&");
}

describe.skipIf(isSkipped("rsvg-convert", "pdftotext", "fonts-dejavu-extra"))("in librsvg", () => {
  it.each(all)("every word stays in the room of its text, in the narrow font: %s", (_, scene) => {
    const rooms = roomsOf(scene);
    const words = wordsByRsvg(write(scene));
    expect(words.length).toBeGreaterThan(8);
    const slack = 0.3;
    const out = words.filter(
      ({ text, x0, x1, y0, y1 }) =>
        !rooms.some(
          (room) =>
            room.text.includes(text) &&
            x0 >= room.x0 - slack &&
            x1 <= room.x1 + slack &&
            (y0 + y1) / 2 >= room.y0 - slack &&
            (y0 + y1) / 2 <= room.y1 + slack,
        ),
    );
    expect(out.map(({ text }) => text)).toEqual([]);
  });
});

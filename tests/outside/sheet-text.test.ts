/**
 * Every text of a written sheet, measured by the font's own metrics through opentype.js: no two boxes overlap, none leaves
 * the sheet. The SVG is read back by a strict XML parser (sax); none of the program's own metrics take part.
 */
import { readdirSync, readFileSync } from "node:fs";
import { createHTMLWindow } from "svgdom";
import { describe, expect, it } from "vitest";
import { drawSheet } from "../../src/drawing/index.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { sheetCases } from "../unit/drawing/sheet-cases.js";
import { overlappingTexts, textBoxes } from "./text-boxes.js";
import { readWrittenSheet } from "./written-sheet.js";

describe("text of a written sheet", () => {
  for (const [name, make] of Object.entries(sheetCases)) {
    it(`overlaps nothing: ${name}`, () => {
      const scene = drawSheet(make());
      const sheet = readWrittenSheet(writeSheetSvg(scene, createHTMLWindow().document));
      const boxes = textBoxes(sheet);
      expect(overlappingTexts(boxes)).toEqual([]);
      const outside = boxes.filter(({ box }) =>
        box.some(([x, y]) => x < 0 || y < 0 || x > scene.width || y > scene.height),
      );
      expect(outside.map(({ text }) => text)).toEqual([]);
      expect(boxes.length).toBeGreaterThan(60);
    });
  }
});

const samples = new URL("../../samples/", import.meta.url);
const delivered = readdirSync(samples, { recursive: true, encoding: "utf8" }).filter(
  (path) => path.includes("expected") && path.endsWith(".svg"),
);

describe("text of the samples' sheets, as delivered", () => {
  it.skipIf(delivered.length === 0)("overlaps nothing", () => {
    for (const path of delivered) {
      const sheet = readWrittenSheet(readFileSync(new URL(path, samples), "utf8"));
      const boxes = sheet.texts.map((text) => ({ text: text.text, box: boxOf(text) }));
      const over = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter((b) => !apart(a.box, b.box))
          .map((b) => [a.text, b.text]),
      );
      expect(over, path).toEqual([]);
    }
  });
});

describe("the overlap test itself", () => {
  const words = (text: string, x: number, y: number, turn = 0): WrittenText => ({
    text,
    x,
    y,
    size: 5,
    bold: false,
    anchor: "start",
    turn,
  });

  it("sees texts that touch, and not those that do not", () => {
    expect(apart(boxOf(words("AAAA", 0, 0)), boxOf(words("BBBB", 5, 1)))).toBe(false);
    expect(apart(boxOf(words("AAAA", 0, 0)), boxOf(words("BBBB", 5, 6)))).toBe(true);
    expect(apart(boxOf(words("AAAA", 0, 0)), boxOf(words("BBBB", 6, 8, -90)))).toBe(false);
    expect(apart(boxOf(words("AAAA", 0, 0)), boxOf(words("BBBB", 25, 8, -90)))).toBe(true);
  });
});

/**
 * Every text of a written sheet, measured by the font's own metrics through opentype.js: no two boxes overlap, none leaves
 * the sheet. The SVG is read back by a strict XML parser (sax); none of the program's own metrics take part.
 */

import { describe, expect, it } from "vitest";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { drawSheet } from "../../src/sheets/index.js";
import { sheetCases } from "../unit/sheets/sheet-cases.js";
import { apart, boxOf, overlappingTexts, textBoxes } from "./text-boxes.js";
import { readWrittenSheet, type WrittenText } from "./written-sheet.js";

describe("text of a written sheet", () => {
  for (const [name, make] of Object.entries(sheetCases)) {
    it(`overlaps nothing: ${name}`, () => {
      const scene = drawSheet(make());
      const sheet = readWrittenSheet(writeSheetSvg(scene, newLeanDocument()));
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

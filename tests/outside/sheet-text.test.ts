/**
 * Every text of a written sheet, measured by the font's own metrics through opentype.js: no two boxes overlap, none leaves
 * the sheet. The SVG is read back by a strict XML parser (sax); none of the program's own metrics take part.
 */
import { createHTMLWindow } from "svgdom";
import { describe, expect, it } from "vitest";
import { drawSheet } from "../../src/drawing/index.js";
import { writeSheetSvg } from "../../src/formats/sheet-svg.js";
import { sheetCases } from "../unit/drawing/sheet-cases.js";
import { measureGlyph } from "./arimo.js";
import { readWrittenSheet, type WrittenText } from "./written-sheet.js";

type Corner = readonly [number, number];

/** Corners of the text's box in sheet millimetres, y down. */
function boxOf({ text, x, y, size, bold, anchor, turn }: WrittenText): readonly Corner[] {
  const glyphs = [...text].map((character) => {
    const glyph = measureGlyph(character, bold);
    if (glyph === null) throw new Error(`no glyph for ${JSON.stringify(character)} in ${text}`);
    return glyph;
  });
  const em = size / 2048;
  const width = glyphs.reduce((sum, { advance }) => sum + advance, 0) * em;
  const rise = Math.max(0, ...glyphs.map(({ high }) => high)) * em;
  const drop = -Math.min(0, ...glyphs.map(({ low }) => low)) * em;
  const left = { start: 0, middle: -width / 2, end: -width }[anchor] ?? 0;
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const corner = (u: number, v: number): Corner => [x + u * cos - v * sin, y + u * sin + v * cos];
  return [corner(left, -rise), corner(left + width, -rise), corner(left + width, drop), corner(left, drop)];
}

/** Projections on the edges' normals are apart for one edge of either box. */
function apart(a: readonly Corner[], b: readonly Corner[]): boolean {
  return [a, b].some((box) =>
    box.some(([x, y], i) => {
      const [px, py] = box[(i + 1) % box.length] ?? [x, y];
      const [nx, ny] = [py - y, x - px];
      const along = (corners: readonly Corner[]) => corners.map(([cx, cy]) => cx * nx + cy * ny);
      const [pa, pb] = [along(a), along(b)];
      const slack = 1e-3 * Math.hypot(nx, ny);
      return Math.max(...pa) <= Math.min(...pb) + slack || Math.max(...pb) <= Math.min(...pa) + slack;
    }),
  );
}

describe("text of a written sheet", () => {
  for (const [name, make] of Object.entries(sheetCases)) {
    it(`overlaps nothing: ${name}`, () => {
      const scene = drawSheet(make());
      const sheet = readWrittenSheet(writeSheetSvg(scene, createHTMLWindow().document));
      const boxes = sheet.texts.map((text) => ({ text: text.text, box: boxOf(text) }));
      const pairs = boxes.flatMap((a, i) => boxes.slice(i + 1).map((b) => [a, b] as const));
      expect(pairs.filter(([a, b]) => !apart(a.box, b.box)).map(([a, b]) => `${a.text} / ${b.text}`)).toEqual([]);
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

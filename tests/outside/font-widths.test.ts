/** The width table against the font itself, measured by opentype.js. Source: Arimo as embedded, from @expo-google-fonts/arimo. */
import { describe, expect, it } from "vitest";
import { FONT_WIDTHS } from "../../src/sheets/font-widths.js";
import { CAP_PER_EM, measureText } from "../../src/sheets/text-metrics.js";
import { measureGlyph } from "./arimo.js";

const rows = FONT_WIDTHS.trim()
  .split("\n")
  .map((row) => row.split(" "));

describe("width table", () => {
  it("has all of ASCII and of Latin-1, and the signs a sheet uses", () => {
    const known = new Set(rows.map(([code]) => Number.parseInt(code ?? "", 16)));
    for (let code = 0x20; code < 0x7f; code++) expect(known.has(code)).toBe(true);
    for (const sign of "Ø×°±–…ÄÖÜßéçñŁž") expect(known.has(sign.codePointAt(0) ?? 0)).toBe(true);
  });

  it("agrees with the font in every row, regular and bold", () => {
    for (const [code = "", ...figures] of rows) {
      const character = String.fromCodePoint(Number.parseInt(code, 16));
      for (const bold of [false, true]) {
        const [advance = 0, low = 0, high = 0] = figures.slice(bold ? 3 : 0).map(Number);
        const glyph = measureGlyph(character, bold);
        expect(glyph?.advance, `${character} ${bold}`).toBe(advance);
        expect(Math.abs((glyph?.low ?? 99) - low)).toBeLessThan(1.01);
        expect(Math.abs((glyph?.high ?? 99) - high)).toBeLessThan(1.01);
      }
    }
  });

  it("sets capitals at the cap height asked for", () => {
    expect(measureText("H", 2.5, false).rise).toBeCloseTo(2.5, 6);
    expect((measureGlyph("H", false)?.high ?? 0) / 2048).toBeCloseTo(CAP_PER_EM, 6);
  });
});

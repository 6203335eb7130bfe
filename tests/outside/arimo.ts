/** The sheet font as the program embeds it, read by opentype.js: a font library that the program itself never uses. */
import { type Font, parse } from "opentype.js";
import { WHOLE_FONT } from "../../src/formats/sheet-font/whole.js";

function load(base64: string): Font {
  return parse(new Uint8Array(Buffer.from(base64, "base64")).buffer);
}

const FONTS = { regular: load(WHOLE_FONT.regular), bold: load(WHOLE_FONT.bold) };

/** Advance, lowest and highest ink in 1/2048 em; null for a character that the font lacks. */
export function measureGlyph(character: string, bold: boolean): { advance: number; low: number; high: number } | null {
  const font = FONTS[bold ? "bold" : "regular"];
  const glyph = font.charToGlyph(character);
  if (glyph.index === 0) return null;
  const { y1, y2 } = glyph.getBoundingBox();
  const scale = 2048 / font.unitsPerEm;
  return { advance: glyph.advanceWidth * scale, low: y1 * scale, high: y2 * scale };
}

/** Arimo through opentype.js: a font library and a font file that the program itself never uses. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { type Font, parse } from "opentype.js";

const require = createRequire(import.meta.url);

function load(subset: string, weight: 400 | 700): Font {
  const bytes = readFileSync(require.resolve(`@fontsource/arimo/files/arimo-${subset}-${weight}-normal.woff`));
  return parse(new Uint8Array(bytes).buffer);
}

const FONTS = {
  regular: [load("latin", 400), load("latin-ext", 400)],
  bold: [load("latin", 700), load("latin-ext", 700)],
};

/** Advance, lowest and highest ink in 1/2048 em; null for a character that the font files lack. */
export function measureGlyph(character: string, bold: boolean): { advance: number; low: number; high: number } | null {
  for (const font of FONTS[bold ? "bold" : "regular"]) {
    const glyph = font.charToGlyph(character);
    if (glyph.index === 0) continue;
    const { y1, y2 } = glyph.getBoundingBox();
    const scale = 2048 / font.unitsPerEm;
    return { advance: glyph.advanceWidth * scale, low: y1 * scale, high: y2 * scale };
  }
  return null;
}

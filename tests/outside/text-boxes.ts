/** Boxes of the texts of a written sheet, measured by the font's own metrics through opentype.js. */
import { measureGlyph } from "./arimo.js";
import type { WrittenSheet, WrittenText } from "./written-sheet.js";

export type Corner = readonly [number, number];

/** Corners of the text's box in sheet millimetres, y down. */
export function boxOf({ text, x, y, size, bold, anchor, turn }: WrittenText): readonly Corner[] {
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
export function apart(a: readonly Corner[], b: readonly Corner[]): boolean {
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

export interface TextBox {
  readonly text: string;
  readonly box: readonly Corner[];
}

export function textBoxes(sheet: WrittenSheet): readonly TextBox[] {
  return sheet.texts.map((text) => ({ text: text.text, box: boxOf(text) }));
}

/** Pairs of texts whose boxes overlap, as `A / B`. */
export function overlappingTexts(boxes: readonly TextBox[]): readonly string[] {
  const pairs = boxes.flatMap((a, i) => boxes.slice(i + 1).map((b) => [a, b] as const));
  return pairs.filter(([a, b]) => !apart(a.box, b.box)).map(([a, b]) => `${a.text} / ${b.text}`);
}

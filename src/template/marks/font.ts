/**
 * The single-stroke font of @jscad/modeling (Hershey Simplex), taken glyph by glyph. Units: capitals and figures are 21
 * high, baseline at 0.
 */
import text from "@jscad/modeling/src/text/index.js";
import type { Extent } from "../../geometry/index.js";
import { extentOfPoints, joinExtents, NO_EXTENT } from "../../geometry/index.js";

/** Height of a capital in font units. */
export const CAP_HEIGHT = 21;

/** The font's own height option at which its figures come out unscaled. */
const UNSCALED = 14;

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** One character: its strokes in font units, how far the next one stands, and the box around what is drawn. */
export interface Glyph {
  readonly advance: number;
  readonly strokes: readonly (readonly Spot[])[];
  readonly box: Extent;
}

/** Kept: every character of every mark asks for its glyph, and the font never changes; at most 95 entries. */
const glyphs = new Map<string, Glyph>();

/** The glyph of a printable ASCII character; undefined for any other. */
export function glyphOf(character: string): Glyph | undefined {
  const code = character.charCodeAt(0);
  if (character.length !== 1 || code < 32 || code > 126) return undefined;
  const known = glyphs.get(character);
  if (known !== undefined) return known;
  const glyph = readGlyph(character);
  glyphs.set(character, glyph);
  return glyph;
}

/** Strokes of at least two points; the font has no piece twice, which its test proves character by character. */
function readGlyph(character: string): Glyph {
  const { width, segments } = text.vectorChar({ height: UNSCALED }, character);
  const strokes = segments.map((stroke) => stroke.map(([x, y]) => ({ x, y }))).filter((stroke) => stroke.length > 1);
  return { advance: width, strokes, box: strokes.map(extentOfPoints).reduce(joinExtents, NO_EXTENT) };
}

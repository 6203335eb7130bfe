/** Lettering: a block of lines as single strokes about its own lower left, at a letter height. Millimetres. */
import type { Extent, Point } from "../../geometry/index.js";
import { joinExtents, millimetresBetween, NO_EXTENT, point } from "../../geometry/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { CAP_HEIGHT, glyphOf } from "./font.js";

/** From one baseline to the next, in letter heights. */
const LINE_PITCH = 1.7;

/** Pieces of a stroke shorter than this are merged with their neighbour: a torch or scriber cannot follow them. */
const SHORTEST = 0.1;

/** What can be placed on a plate: its size, and its strokes once the lower left of its box is known. */
export interface Block {
  readonly width: number;
  readonly height: number;
  /** True where it reads upwards. */
  readonly upwards: boolean;
  /** Strokes with the lower left of the block at `at`, on the lattice. */
  strokesAt(at: Point): readonly (readonly Point[])[];
}

/** True where the font has every character of the text, and there is something to draw. */
export function canLetter(text: string): boolean {
  return text.trim() !== "" && [...text].every((character) => glyphOf(character) !== undefined);
}

/** Lines of text, centred on each other, letters `height` mm high; `turned` reads upwards, from the right of the plate. */
export function lettering(lines: readonly string[], height: number, turned = false): Block {
  const scale = height / CAP_HEIGHT;
  const boxes = lines.map(lineBox);
  const widest = greatestOf(boxes.map(({ x0, x1 }) => x1 - x0));
  const origins = boxes.map(({ x0, x1 }, i) => ({
    x: (widest - (x1 - x0)) / 2 - x0,
    y: -i * LINE_PITCH * CAP_HEIGHT,
  }));
  const low = leastOf(boxes.map(({ y0 }, i) => (origins[i]?.y ?? 0) + y0));
  const high = greatestOf(boxes.map(({ y1 }, i) => (origins[i]?.y ?? 0) + y1));
  const [width, tall] = [widest * scale, (high - low) * scale];
  const place = (x: number, y: number, at: Point) =>
    turned
      ? point(at.x + tall - (y - low) * scale, at.y + x * scale)
      : point(at.x + x * scale, at.y + (y - low) * scale);
  return {
    width: turned ? tall : width,
    height: turned ? width : tall,
    upwards: turned,
    strokesAt: (at) =>
      lines.flatMap((line, i) => lineStrokes(line, origins[i] ?? { x: 0, y: 0 }, (x, y) => place(x, y, at))),
  };
}

function lineBox(line: string): Extent {
  let [box, x] = [NO_EXTENT, 0];
  for (const character of line) {
    const glyph = glyphOf(character);
    if (glyph === undefined) continue;
    box = joinExtents(box, { ...glyph.box, x0: glyph.box.x0 + x, x1: glyph.box.x1 + x });
    x += glyph.advance;
  }
  return box;
}

function lineStrokes(
  line: string,
  origin: Point,
  place: (x: number, y: number) => Point,
): readonly (readonly Point[])[] {
  const strokes: (readonly Point[])[] = [];
  let x = origin.x;
  for (const character of line) {
    const glyph = glyphOf(character);
    if (glyph === undefined) continue;
    for (const stroke of glyph.strokes) {
      const merged = withoutShortPieces(stroke.map((spot) => place(x + spot.x, origin.y + spot.y)));
      if (merged.length > 1) strokes.push(merged);
    }
    x += glyph.advance;
  }
  return strokes;
}

/** Drops vertices that are too near the one before; the last one stays and takes the place of such a neighbour. */
export function withoutShortPieces(stroke: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const at of stroke) {
    const before = kept.at(-1);
    if (before === undefined || millimetresBetween(before, at) >= SHORTEST) kept.push(at);
    else if (at === stroke.at(-1) && kept.length > 1) kept[kept.length - 1] = at;
  }
  return kept;
}

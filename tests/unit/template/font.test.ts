import { describe, expect, test } from "vitest";
import { millimetresBetween, point } from "../../../src/geometry/index.js";
import { CAP_HEIGHT, glyphOf } from "../../../src/template/marks/font.js";
import { canLetter, lettering, withoutShortPieces } from "../../../src/template/marks/lettering.js";

const ascii = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));
type Spot = { readonly x: number; readonly y: number };
type Piece = readonly [Spot, Spot];

function piecesOf(strokes: readonly (readonly Spot[])[]): readonly Piece[] {
  return strokes.flatMap((stroke) => stroke.slice(1).map((to, i): Piece => [stroke[i] ?? to, to]));
}

/** Length that two collinear pieces share; 0 for others. In font units, which are whole: exact. */
function shared([a, b]: Piece, [p, q]: Piece): number {
  const cross = (s: Spot, t: Spot) => (b.x - a.x) * (t.y - s.y) - (b.y - a.y) * (t.x - s.x);
  if (cross(p, q) !== 0 || cross(a, p) !== 0) return 0;
  const along = ({ x, y }: Spot) => (x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y);
  const [low, high] = [Math.min(along(p), along(q)), Math.max(along(p), along(q))];
  return Math.max(0, Math.min(along(b), high) - Math.max(0, low));
}

describe("the single-stroke font", () => {
  test.each(ascii)("%j has no piece of zero length, none twice, none along another", (character) => {
    const pieces = piecesOf(glyphOf(character)?.strokes ?? []);
    for (const [i, piece] of pieces.entries()) {
      expect(millimetresBetween(piece[0], piece[1])).toBeGreaterThan(0);
      for (const other of pieces.slice(i + 1)) expect(shared(piece, other)).toBe(0);
    }
  });

  test("capitals and figures are 21 units high and stand on the baseline", () => {
    for (const character of "ABCDEFGHIKLMNOPRSTUVXYZ0123456789") {
      const box = glyphOf(character)?.box;
      expect([box?.y0, box?.y1]).toEqual([0, CAP_HEIGHT]);
    }
  });

  test("only printable ASCII can be lettered", () => {
    expect(canLetter("T1 REV B")).toBe(true);
    expect(canLetter("TRÄGER")).toBe(false);
    expect(canLetter("A\n")).toBe(false);
    expect(glyphOf("")).toBeUndefined();
  });
});

describe("lettering", () => {
  test("is as high as asked, inside its box, on the lattice", () => {
    const block = lettering(["TOP"], 12.7);
    expect(block.height).toBeCloseTo(12.7, 12);
    const points = block.strokesAt(point(5, 7)).flat();
    expect(Math.min(...points.map(({ x }) => x))).toBeCloseTo(5, 6);
    expect(Math.min(...points.map(({ y }) => y))).toBeCloseTo(7, 6);
    expect(Math.max(...points.map(({ x }) => x))).toBeCloseTo(5 + block.width, 6);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(7 + 12.7, 6);
    for (const { x, y } of points) expect([x, y]).toEqual([Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6]);
  });

  test("upwards: width and height change places", () => {
    const [flat, upwards] = [lettering(["A1 3/4"], 10), lettering(["A1 3/4"], 10, true)];
    expect([upwards.width, upwards.height]).toEqual([flat.height, flat.width]);
    const points = upwards.strokesAt(point(0, 0)).flat();
    expect(Math.max(...points.map(({ x }) => x))).toBeCloseTo(upwards.width, 6);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(upwards.height, 6);
    expect(Math.min(...points.flatMap(({ x, y }) => [x, y]))).toBeCloseTo(0, 6);
  });

  test("two lines stand one under the other and do not meet", () => {
    const block = lettering(["A1", "3/4"], 10);
    expect(block.height).toBeGreaterThan(20);
    const ys = block.strokesAt(point(0, 0)).map((stroke) => stroke.map(({ y }) => y));
    const upper = ys.slice(0, 4).flat();
    const lower = ys.slice(4).flat();
    expect(Math.min(...upper)).toBeGreaterThan(Math.max(...lower));
  });

  test("pieces under 0.1 mm are merged, ends stay", () => {
    const stroke = [point(0, 0), point(0.05, 0), point(1, 0), point(1.05, 0)];
    expect(withoutShortPieces(stroke)).toEqual([point(0, 0), point(1.05, 0)]);
    expect(withoutShortPieces([point(0, 0), point(0.05, 0)])).toEqual([point(0, 0)]);
    for (const strokes of lettering(["8."], 0.5).strokesAt(point(0, 0))) {
      for (const [from, to] of piecesOf([strokes])) expect(millimetresBetween(from, to)).toBeGreaterThanOrEqual(0.1);
    }
  });
});

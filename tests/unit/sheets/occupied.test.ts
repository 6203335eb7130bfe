/** What lies on the paper: found by cells, whatever its size; nothing is kept of what is far off the paper. */
import { describe, expect, it } from "vitest";
import { type Box, emptyPaper, isTaken, markTouchesBox, occupy } from "../../../src/sheets/occupied.js";
import type { SceneItem } from "../../../src/sheets/scene.js";
import { drawFrom } from "../../seed.js";

const ring = (x: number, y: number, radius: number): SceneItem => {
  return { kind: "stroke", role: "outline", parts: [{ kind: "circle", center: { x, y }, radius }] };
};

const boxAt = (x: number, y: number): Box => [
  { x, y },
  { x: x + 7, y },
  { x: x + 7, y: y + 3 },
  { x, y: y + 3 },
];

describe("circles", () => {
  it("are met where their line runs, as measured without cells", () => {
    const draw = drawFrom(11);
    for (let round = 0; round < 150; round++) {
      const [x, y, radius] = [draw() * 800 - 100, draw() * 800 - 100, draw() ** 3 * 3000 + 0.5];
      const paper = emptyPaper();
      occupy(paper, ring(x, y, radius));
      const box = boxAt(draw() * 600, draw() * 600);
      const mark = { kind: "circle", center: { x, y }, radius, soft: false } as const;
      expect(isTaken(paper, box)).toBe(markTouchesBox(mark, box));
    }
  });

  it("of any size fill no more cells than their line passes through on the paper", () => {
    const cellsOf = (radius: number): number => {
      const paper = emptyPaper();
      occupy(paper, ring(200, 150, radius));
      return paper.strokes.size;
    };
    // a line along a side of the cells that are kept passes through fewer than two in each row and column
    for (const radius of [5, 50, 500, 5000, 1e5, 1e8]) expect(cellsOf(radius)).toBeLessThan(4 * 401);
    expect(cellsOf(100)).toBeGreaterThan(40);
  });
});

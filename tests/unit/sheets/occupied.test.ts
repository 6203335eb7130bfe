/** What lies on the paper: found by cells, whatever its size; nothing is kept of what is far off the paper. */
import { describe, expect, it } from "vitest";
import {
  type Box,
  boxesTouch,
  copyPaper,
  countCrossings,
  crossesText,
  emptyPaper,
  isTaken,
  markTouchesBox,
  occupy,
  textBox,
} from "../../../src/sheets/occupied.js";
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

const strokeFrom = (from: { x: number; y: number }, to: { x: number; y: number }): SceneItem => {
  return { kind: "stroke", role: "outline", parts: [{ kind: "line", from, to }] };
};

describe("straight strokes and texts", () => {
  it("are met where they run, as measured without cells, on the paper and far off it", () => {
    const draw = drawFrom(12);
    for (let round = 0; round < 400; round++) {
      const spread = round % 4 === 0 ? 5000 : 300;
      const point = () => ({ x: draw() * spread - 50, y: draw() * spread - 50 });
      const [from, other] = [point(), point()];
      const to = round % 3 === 0 ? { x: other.x, y: from.y } : other;
      const paper = emptyPaper();
      occupy(paper, strokeFrom(from, to));
      const t = draw();
      const near = boxAt(from.x + (to.x - from.x) * t + draw() * 8 - 8, from.y + (to.y - from.y) * t + draw() * 6 - 5);
      const mark = { kind: "segment", from, to, soft: false } as const;
      expect(isTaken(paper, near)).toBe(markTouchesBox(mark, near));
      expect(isTaken(copyPaper(paper), near)).toBe(markTouchesBox(mark, near));
    }
  });

  it("a text, turned or not, is met by lines and boxes as measured without cells", () => {
    const draw = drawFrom(13);
    for (let round = 0; round < 400; round++) {
      const turn = [0, 90, 90, draw() * 360][round % 4] ?? 0;
      const place = { x: draw() * 300, y: draw() * 300 };
      const item = {
        kind: "text",
        role: "note",
        text: "A1 AT 45°",
        at: place,
        anchor: "middle",
        height: 3,
        turn,
        bold: false,
      } as const;
      const paper = emptyPaper();
      occupy(paper, item);
      const box = boxAt(place.x + draw() * 30 - 18, place.y + draw() * 30 - 18);
      expect(isTaken(paper, box)).toBe(boxesTouch(box, textBox(item)));
      const [from, to] = [box[0], { x: place.x + draw() * 40 - 20, y: place.y + draw() * 40 - 20 }] as const;
      if (from === undefined) throw new Error("a box has corners");
      const mark = { kind: "segment", from, to, soft: false } as const;
      expect(crossesText(paper, from, to)).toBe(markTouchesBox(mark, textBox(item)));
    }
  });

  it("crossings are counted once each, however many cells a stroke passes", () => {
    const paper = emptyPaper();
    for (const x of [20, 40, 60]) occupy(paper, strokeFrom({ x, y: 0 }, { x: x + 3, y: 300 }));
    expect(countCrossings(paper, { x: 0, y: 10 }, { x: 100, y: 290 })).toEqual({ hard: 3, soft: 0 });
    occupy(paper, ring(50, 150, 30));
    expect(countCrossings(paper, { x: 0, y: 150 }, { x: 100, y: 150 })).toEqual({ hard: 4, soft: 0 });
    expect(countCrossings(paper, { x: 0, y: 310 }, { x: 100, y: 310 })).toEqual({ hard: 0, soft: 0 });
  });
});

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
    // a line along a side of the cells passes through fewer than two in each row and column; and those around the sheet
    for (const radius of [5, 50, 500, 5000, 1e5, 1e8]) expect(cellsOf(radius)).toBeLessThan(8 * 122);
    expect(cellsOf(100)).toBeGreaterThan(40);
  });
});

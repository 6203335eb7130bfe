/** Prints at full size: every line of the board is on some tile, at its place, and neighbours show the same crosses. */
import { describe, expect, it } from "vitest";
import { circle, line, point, rectangle, segmentLength, segmentsOf } from "../../../../src/geometry/index.js";
import type { Contour, Segment } from "../../../../src/geometry/vocabulary.js";
import { clipSegments } from "../../../../src/sheets/full-size/clip.js";
import { drawFullSize, type FullSizeRequest } from "../../../../src/sheets/full-size/index.js";
import {
  countOf,
  MOST_TILES,
  OVERLAP,
  registersOf,
  tilePlate,
  tilesOf,
  windowOf,
} from "../../../../src/sheets/full-size/tiling.js";
import type { Scene, SceneItem } from "../../../../src/sheets/scene.js";
import { findCollisions } from "../../../../src/sheets/text-collisions.js";
import type { Hole } from "../../../../src/template/model.js";
import { inches, millimetres } from "../../../../src/units/length.js";
import { plateOf, roundHole, strokes } from "../../../cut-plates.js";
import { jobFixture } from "../../../fixture.js";

const LETTER = { name: "letter", short: 215.9, long: 279.4 };
const A4 = { name: "A4", short: 210, long: 297 };

const drill = (hole: Hole): Hole => ({ ...hole, made: "drill" });
const rods = [
  drill(roundHole("A1", inches(-5), inches(3.5), inches(0.8125))),
  drill(roundHole("A2", inches(5), inches(3.5), inches(0.8125))),
  drill(roundHole("A3", inches(5), inches(-3.5), inches(0.8125))),
  drill(roundHole("A4", inches(-5), inches(-3.5), inches(0.8125))),
];
const top = strokes("top", "TOP", [
  [point(-20, 20), point(20, 20)],
  [point(0, 20), point(0, -20)],
]);

function request(
  outer: Contour,
  changes: Partial<FullSizeRequest> = {},
  holes: readonly Hole[] = rods,
): FullSizeRequest {
  const board = { ...plateOf(outer, holes, [top]), material: "plywood" as const };
  return {
    job: { ...jobFixture(), status: "released" },
    version: "0",
    board,
    held: [],
    released: true,
    paper: LETTER,
    ...changes,
  };
}

const BOARD = rectangle(point(0, 0), inches(20), inches(12));
const CASES: readonly (readonly [string, FullSizeRequest])[] = [
  ["a board on letter", request(BOARD)],
  ["a board on A4, metric", request(BOARD, { paper: A4, job: { ...jobFixture(), unit: "mm" } })],
  ["a ring", request(circle(point(0, 0), inches(30)))],
  ["a small board on one page", request(rectangle(point(0, 0), inches(6), inches(7)), {}, rods.slice(0, 0))],
  [
    "a board with corners cut",
    request(rectangle(point(0, 0), inches(24), inches(24), { kind: "chamfer", x: inches(2), y: inches(1) })),
  ],
  ["a held board", request(BOARD, { held: ["rod play"], released: false })],
  ["one for a plotter", request(rectangle(point(0, 0), inches(90), inches(80)))],
];

const strokesOf = (items: readonly SceneItem[], role: string): readonly Extract<SceneItem, { kind: "stroke" }>[] =>
  items.flatMap((item) =>
    item.kind === "group" ? strokesOf(item.items, role) : item.kind === "stroke" && item.role === role ? [item] : [],
  );

function planOf({ items }: Scene) {
  const plan = items.find((item) => item.kind === "group" && item.name === "plan");
  if (plan?.kind !== "group") throw new Error("no plan");
  return { items: plan.items, x: Number(plan.data.x), y: Number(plan.data.y), scale: plan.data.scale };
}

const wordsOf = (items: readonly SceneItem[]): readonly string[] =>
  items.flatMap((item) => (item.kind === "group" ? wordsOf(item.items) : item.kind === "text" ? [item.text] : []));

describe("a print at full size", () => {
  it.each(CASES)("%s: nothing collides on any page", (_, each) => {
    for (const scene of drawFullSize(each)) expect(findCollisions(scene), scene.title).toEqual([]);
  });

  it.each(CASES)("%s: every hole and all of the outline is on some tile, at full size", (_, each) => {
    const pages = drawFullSize(each).filter(({ items }) =>
      items.some((item) => item.kind === "group" && item.name === "plan"),
    );
    const centers = new Map<string, string[]>();
    for (const scene of pages) {
      const plan = planOf(scene);
      expect(plan.scale).toBe(1);
      for (const { parts } of strokesOf(plan.items, "hole"))
        for (const part of parts)
          if (part.kind === "circle") {
            const key = `${(part.center.x - plan.x).toFixed(6)} ${(part.center.y - plan.y).toFixed(6)}`;
            centers.set(key, [...(centers.get(key) ?? []), scene.title]);
          }
    }
    const labels = pages.flatMap(({ items }) => wordsOf(items));
    for (const { tag, center } of each.board.holes) {
      expect([...centers.keys()]).toContain(`${center.x.toFixed(6)} ${center.y.toFixed(6)}`);
      expect(labels.some((words) => words.startsWith(`${tag} DRILL `))).toBe(true);
    }
    const windows = (() => {
      const tiling = tilePlate(boxOf(each), each.board.holes, each.paper);
      return tilesOf(tiling).map((tile) => windowOf(tiling, tile));
    })();
    // any place of the outline lies in a window, and what windows show of it is at least all of it
    const all = segmentsOf(each.board.region.outer);
    const shown = windows.reduce((sum, window) => sum + lengthOf(clipSegments(all, window)), 0);
    expect(shown).toBeGreaterThanOrEqual(lengthOf(all) - 1e-6);
    for (const { from } of all)
      expect(windows.some(({ x0, y0, x1, y1 }) => from.x >= x0 && from.x <= x1 && from.y >= y0 && from.y <= y1)).toBe(
        true,
      );
  });

  it("has crosses in common with each neighbour, in the overlap", () => {
    const each = request(BOARD);
    const tiling = tilePlate(boxOf(each), rods, LETTER);
    const tiles = tilesOf(tiling);
    expect(countOf(tiling)).toBeGreaterThan(3);
    for (const a of tiles)
      for (const b of tiles) {
        if (Math.abs(a.row - b.row) + Math.abs(a.column - b.column) !== 1) continue;
        const key = ({ x, y }: { readonly x: number; readonly y: number }) => `${x.toFixed(6)} ${y.toFixed(6)}`;
        const others = new Set(registersOf(tiling, b).map(key));
        const common = registersOf(tiling, a).filter((each) => others.has(key(each)));
        expect(common.length).toBeGreaterThanOrEqual(2);
        const w = windowOf(tiling, b);
        for (const { x, y } of common)
          expect(Math.min(x - w.x0, w.x1 - x, y - w.y0, w.y1 - y)).toBeGreaterThanOrEqual(OVERLAP / 2 - 1e-6);
      }
  });

  it("lays the paper the way round that takes fewer sheets", () => {
    const wide = tilePlate(boxOf(request(rectangle(point(0, 0), inches(9.5), inches(6)))), [], LETTER);
    expect([wide.rows, wide.columns, wide.paper.width]).toEqual([1, 1, LETTER.long]);
    const high = tilePlate(boxOf(request(rectangle(point(0, 0), inches(6), inches(9)))), [], LETTER);
    expect([high.rows, high.columns, high.paper.width]).toEqual([1, 1, LETTER.short]);
  });

  it("keeps seams off holes where there is paper to spare", () => {
    const holes = [roundHole("A1", millimetres(0), millimetres(0), millimetres(20))];
    const tiling = tilePlate({ x0: -110, y0: -100, x1: 110, y1: 100 }, holes, A4);
    const seam = tiling.left + tiling.stepX + OVERLAP / 2;
    if (tiling.columns > 1) expect(Math.abs(seam)).toBeGreaterThanOrEqual(10);
    const down = tiling.top - tiling.stepY - OVERLAP / 2;
    if (tiling.rows > 1) expect(Math.abs(down)).toBeGreaterThanOrEqual(10);
    expect(countOf(tiling)).toBeGreaterThan(1);
  });

  it("is one page for a plotter above sixty sheets, and sixty are still tiles", () => {
    const large = tilePlate({ x0: 0, y0: 0, x1: 2400, y1: 2200 }, [], A4);
    expect(countOf(large)).toBe(1);
    expect(large.paper.name).toBe("plotter");
    const tiled = tilePlate({ x0: 0, y0: 0, x1: 1200, y1: 1200 }, [], A4);
    expect(countOf(tiled)).toBeGreaterThan(1);
    expect(countOf(tiled)).toBeLessThanOrEqual(MOST_TILES);
  });

  it("says HELD and NOT RELEASED on every page", () => {
    for (const scene of drawFullSize(
      request(BOARD, { held: ["rod play"], released: false, job: { ...jobFixture(), status: "preliminary" } }),
    )) {
      const words = wordsOf(scene.items).join(" | ");
      expect(words).toMatch(/HELD/);
      expect(words).toMatch(/NOT RELEASED/);
    }
    for (const scene of drawFullSize(request(BOARD)))
      expect(wordsOf(scene.items).join(" | ")).not.toMatch(/HELD|NOT RELEASED/);
  });
});

describe("clipping", () => {
  const window = { x0: -10, y0: -10, x1: 10, y1: 10 };

  it.each([
    ["a line across", [line(point(-30, 0), point(30, 0))], 20],
    ["a line along an edge", [line(point(-30, 10), point(30, 10))], 20],
    ["a line outside", [line(point(-30, 11), point(30, 11))], 0],
    ["a line inside", [line(point(-3, 1), point(3, 1))], 6],
    ["a slanted line at a corner", [line(point(0, 15), point(15, 0))], 5 * Math.SQRT2],
    ["a circle inside", segmentsOf(circle(point(0, 0), millimetres(10))), 10 * Math.PI],
    ["a circle around", segmentsOf(circle(point(0, 0), millimetres(40))), 0],
    // x = 10 and y = 10 cut off what lies within acos(10 / 12) of each axis
    [
      "a circle through all sides",
      segmentsOf(circle(point(0, 0), millimetres(24))),
      12 * (2 * Math.PI - 8 * Math.acos(10 / 12)),
    ],
    ["half of a circle", segmentsOf(circle(point(10, 0), millimetres(10))), 5 * Math.PI],
  ])("%s", (_, segments, length) => {
    const kept = clipSegments(segments, window);
    expect(lengthOf(kept)).toBeCloseTo(length, 9);
    for (const { from, to } of kept)
      for (const { x, y } of [from, to]) expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThanOrEqual(10 + 1e-9);
  });
});

function lengthOf(segments: readonly Segment[]): number {
  return segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
}

function boxOf({ board }: FullSizeRequest) {
  const xs = segmentsOf(board.region.outer).flatMap(({ from }) => [from.x]);
  const ys = segmentsOf(board.region.outer).flatMap(({ from }) => [from.y]);
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
  const round = board.region.outer.kind === "circle";
  return { x0, x1, y0: round ? x0 : Math.min(...ys), y1: round ? x1 : Math.max(...ys) };
}

/**
 * A print at full size as poppler draws it (pdftocairo to SVG, points of 1/72 in): centres of holes on different tiles are as
 * far from each other as in the board, when the tiles are laid so that their register crosses meet.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import type { PdfMaker } from "../../src/formats/pdf-maker.js";
import { point, rectangle } from "../../src/geometry/index.js";
import { documentPdf } from "../../src/outputs/document-pdf.js";
import { drawFullSize, type OfficePaper } from "../../src/sheets/full-size/index.js";
import { inches } from "../../src/units/length.js";
import { plateOf, roundHole } from "../cut-plates.js";
import { jobFixture } from "../fixture.js";
import { isSkipped, newFolder, run } from "./viewers.js";

interface Spot {
  readonly x: number;
  readonly y: number;
}

const HOLES = [
  roundHole("A1", inches(-7), inches(5.5), inches(0.8125)),
  roundHole("A2", inches(7.125), inches(5.5), inches(1.0625)),
  roundHole("A3", inches(7.125), inches(-5.5), inches(1.3125)),
  roundHole("A4", inches(-7), inches(-5.5), inches(1.5625)),
];
const MM = 25.4 / 72;

/** Paths of a page as it is, not fitted to what poppler takes for the paper; their points in millimetres of the paper. */
function pathsOf(pdf: string, page: number): readonly { readonly curves: number; readonly points: readonly Spot[] }[] {
  const svg = join(folder, `page-${page}.svg`);
  run("pdftocairo", ["-svg", "-noshrink", "-nocenter", "-origpagesizes", "-f", `${page}`, "-l", `${page}`, pdf, svg]);
  return [...readFileSync(svg, "utf8").matchAll(/<path ([^>]*)\/>/g)].map(([, words = ""]) => {
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = (/matrix\(([^)]*)\)/.exec(words)?.[1] ?? "1 0 0 1 0 0")
      .split(/[ ,]+/)
      .map(Number);
    const steps = [...(/ d="([^"]*)"/.exec(` ${words}`)?.[1] ?? "").matchAll(/([MLC])([^MLCZ]*)/g)];
    const points = steps.map(([, , numbers = ""]) => {
      const [y = 0, x = 0] = numbers.trim().split(/[ ,]+/).map(Number).reverse();
      return { x: (a * x + c * y + e) * MM, y: (b * x + d * y + f) * MM };
    });
    return { curves: steps.filter(([, letter]) => letter === "C").length, points };
  });
}

const folder = newFolder();

/** Circles by their diameter, and middles of register crosses: two strokes of 14 mm. */
function readPage(pdf: string, page: number) {
  const paths = pathsOf(pdf, page);
  const circles = paths.flatMap(({ curves, points }) => {
    if (curves !== 4) return [];
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    const [low, high] = [Math.min(...xs), Math.max(...xs)];
    return [{ diameter: high - low, x: (low + high) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 }];
  });
  const crosses = paths.flatMap(({ curves, points: [p, q, r, s, ...more] }) => {
    if (curves > 0 || p === undefined || q === undefined || r === undefined || s === undefined || more.length > 0)
      return [];
    const isArm = (u: Spot, v: Spot) => Math.abs(Math.hypot(u.x - v.x, u.y - v.y) - 14) < 0.01;
    return isArm(p, q) && isArm(r, s) ? [{ x: (p.x + q.x) / 2, y: (r.y + s.y) / 2 }] : [];
  });
  return { circles, crosses };
}

const papers: readonly OfficePaper[] = [
  { name: "letter", short: 215.9, long: 279.4 },
  { name: "A4", short: 210, long: 297 },
];

describe.skipIf(isSkipped("pdftocairo"))("a print at full size, read by poppler", () => {
  it.each(papers)("on $name", (paper) => {
    const board = plateOf(rectangle(point(0, 0), inches(18), inches(14)), HOLES);
    const job = jobFixture();
    const scenes = drawFullSize({ job, version: "0", board, held: [], released: true, paper });
    const pdf = join(folder, `${paper.name}.pdf`);
    writeFileSync(pdf, documentPdf(PDFDocument as unknown as PdfMaker, scenes, { job, version: "0", subject: "s" }));
    const tiles = scenes.flatMap(({ title }, i) => {
      const name = /tile (\d)-(\d)$/.exec(title);
      return name === null ? [] : [{ row: Number(name[1]), column: Number(name[2]), ...readPage(pdf, i + 1) }];
    });
    expect(tiles.length).toBeGreaterThanOrEqual(4);
    const found = new Map<string, Spot>();
    const placed = new Map<string, Spot>([["1-1", { x: 0, y: 0 }]]);
    for (const tile of tiles) {
      const { row, column, circles, crosses } = tile;
      // crosses near the left edge are those of the tile before, near the top those of the tile above
      const before = tiles.find((other) => other.row === row && other.column === column - 1);
      const above = tiles.find((other) => other.row === row - 1 && other.column === column);
      const from = before ?? above;
      const at =
        from === undefined
          ? { x: 0, y: 0 }
          : laidOver(placed.get(`${from.row}-${from.column}`), from.crosses, crosses, before === undefined ? "y" : "x");
      placed.set(`${row}-${column}`, at);
      for (const circle of circles)
        for (const { tag, shape } of HOLES)
          if (shape.kind === "circle" && Math.abs(circle.diameter - shape.diameter / 1e6) < 0.05)
            found.set(tag, { x: circle.x + at.x, y: circle.y + at.y });
    }
    expect([...found.keys()].sort()).toEqual(["A1", "A2", "A3", "A4"]);
    for (const a of HOLES)
      for (const b of HOLES) {
        const [p, q] = [found.get(a.tag), found.get(b.tag)];
        if (p === undefined || q === undefined) throw new Error("a hole is not there");
        expect(Math.abs(q.x - p.x - (b.center.x - a.center.x))).toBeLessThan(0.05);
        expect(Math.abs(p.y - q.y - (b.center.y - a.center.y))).toBeLessThan(0.05);
      }
  });
});

/** Where a tile lies when its least crosses along the axis meet the greatest of the tile that it is laid over. */
function laidOver(under: Spot | undefined, those: readonly Spot[], own: readonly Spot[], axis: "x" | "y"): Spot {
  if (under === undefined) throw new Error("laid over nothing");
  const other = axis === "x" ? "y" : "x";
  const ends = (spots: readonly Spot[], side: "least" | "most") => {
    const edge = spots.reduce(
      (best, spot) => (side === "least" ? Math.min(best, spot[axis]) : Math.max(best, spot[axis])),
      side === "least" ? Infinity : -Infinity,
    );
    return spots.filter((spot) => Math.abs(spot[axis] - edge) < 0.1).toSorted((a, b) => a[other] - b[other]);
  };
  const [theirs, ours] = [ends(those, "most"), ends(own, "least")];
  expect(ours.length).toBe(theirs.length);
  expect(ours.length).toBeGreaterThanOrEqual(2);
  const shifts = ours.map((spot, i) => ({ x: (theirs[i]?.x ?? NaN) - spot.x, y: (theirs[i]?.y ?? NaN) - spot.y }));
  const [first] = shifts;
  if (first === undefined) throw new Error("no cross in common");
  for (const { x, y } of shifts) expect(Math.hypot(x - first.x, y - first.y)).toBeLessThan(0.02);
  return { x: under.x + first.x, y: under.y + first.y };
}

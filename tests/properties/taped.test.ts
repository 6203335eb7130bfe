/**
 * The tape check fixes every rod: read back from its printed rows alone. A plane framework of bars cannot give where its rigidity
 * matrix has the rank 2 n - 3 (Laman; the rank by the singular values of ml-matrix, which the program does not use).
 */
import fc from "fast-check";
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { describe, expect, it } from "vitest";
import type { Pattern } from "../../src/job/model/job.js";
import { tapeTable } from "../../src/sheets/tape-table.js";
import { inches, nanometres } from "../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../fixture.js";
import { sheetCase } from "../unit/sheets/sheet-case.js";

type Point = { readonly x: number; readonly y: number };
type Bar = readonly [string, string];

/** Rows of the printed table: names of pairs, and the exact figure in inches; a row without a figure goes on with the last one. */
function printedRows(patterns: readonly Pattern[]) {
  const groups = patterns.map((pattern, i) => groupFixture({ letter: "AB"[i] ?? "A", pattern }));
  const request = sheetCase(jobFixture(), baseFixture({ groups }));
  const places = new Map<string, Point>(
    request.plate.holes.filter(({ role }) => role === "rod").map(({ tag, center }) => [tag, center]),
  );
  const table = tapeTable(request);
  return {
    places,
    rows: table?.rows ?? [],
    isWhole: (table?.foot ?? []).length === 0 && !/ALIKE/.test((table?.rows ?? []).join(" ")),
  };
}

function barsOf(rows: readonly (readonly string[])[], places: ReadonlyMap<string, Point>): readonly Bar[] {
  return rows.flatMap(([names = ""]) =>
    [...names.matchAll(/(W\.P\.|[A-Z]\d+)-([A-Z]\d+)( AND ALL ROUND)?/g)].flatMap(([, a = "", b = "", all]): Bar[] => {
      if (all === undefined) return [[a, b]];
      const ring = [...places.keys()].filter((tag) => tag.startsWith(a.slice(0, 1)));
      const step = ring.indexOf(b) - ring.indexOf(a);
      return ring.map((tag, i) => [tag, ring[(i + step) % ring.length] ?? ""]);
    }),
  );
}

/** Ways in which the points can move while no bar changes its length, besides the three of a whole plate. */
function freedom(bars: readonly Bar[], places: ReadonlyMap<string, Point>): number {
  const all = new Map([...places, ["W.P.", { x: 0, y: 0 }]]);
  const used = [...new Set([...places.keys(), ...bars.flat()])];
  const matrix = Matrix.zeros(Math.max(bars.length, 2 * used.length), 2 * used.length);
  bars.forEach(([a, b], row) => {
    const [p, q] = [all.get(a) ?? { x: 0, y: 0 }, all.get(b) ?? { x: 0, y: 0 }];
    const length = Math.hypot(p.x - q.x, p.y - q.y);
    const [i, j] = [2 * used.indexOf(a), 2 * used.indexOf(b)];
    const set = (column: number, value: number) => matrix.set(row, column, value / length);
    set(i, p.x - q.x);
    set(i + 1, p.y - q.y);
    set(j, q.x - p.x);
    set(j + 1, q.y - p.y);
  });
  const values = new SingularValueDecomposition(matrix, { autoTranspose: true }).diagonal;
  return 2 * used.length - 3 - values.filter((value) => value > 1e-6).length;
}

const isBent = (points: readonly Point[]) =>
  points.some((a) =>
    points.some((b) => points.some((c) => Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) > 1)),
  );

const tick = (low: number, high: number) => fc.integer({ min: low * 16, max: high * 16 }).map((n) => inches(n / 16));

const circle = fc
  .record({ count: fc.integer({ min: 3, max: 24 }), degrees: fc.integer({ min: 0, max: 359 }) })
  .map(({ count, degrees }): readonly Pattern[] => [
    { kind: "circle", diameter: inches(count < 12 ? 24 : 2 * count), count, start: { kind: "degrees", degrees } },
  ]);

const grid = fc
  .record({
    x: tick(10, 40),
    y: tick(10, 40),
    nx: fc.integer({ min: 2, max: 4 }),
    ny: fc.integer({ min: 2, max: 4 }),
    perimeter: fc.boolean(),
  })
  .map((pattern): readonly Pattern[] => [{ kind: "rectangle", ...pattern }]);

/** One rod in each of some fields, so that no two holes meet. */
const scattered = fc
  .uniqueArray(fc.integer({ min: 0, max: 24 }), { minLength: 3, maxLength: 9 })
  .chain((fields) =>
    fc.tuple(
      ...fields.map((field) =>
        fc.record({ x: tick(0, 3), y: tick(0, 3) }).map(({ x, y }) => ({
          x: nanometres(x + inches((field % 5) * 6 - 15)),
          y: nanometres(y + inches(Math.floor(field / 5) * 6 - 15)),
        })),
      ),
    ),
  )
  .map((at): readonly Pattern[] => [{ kind: "points", at }]);

const two = fc
  .record({ count: fc.constantFrom(4, 6, 8), dx: tick(0, 9), dy: tick(0, 9) })
  .map(({ count, dx, dy }): readonly Pattern[] => [
    { kind: "circle", diameter: inches(14), count, start: { kind: "straddle", axis: "x" } },
    {
      kind: "lines",
      x: [nanometres(inches(-25) + dx), nanometres(inches(18) + dx)],
      y: [nanometres(inches(-12) + dy), inches(11)],
      perimeter: false,
    },
  ]);

describe("the tape check", () => {
  it("fixes every rod, so that none can be off and every distance still be right", () => {
    fc.assert(
      fc.property(fc.oneof(circle, grid, scattered, two), (patterns) => {
        const { places, rows, isWhole } = printedRows(patterns);
        fc.pre(isBent([...places.values()]));
        const bars = barsOf(rows, places);
        expect(bars.length).toBeGreaterThan(2);
        if (isWhole) expect(freedom(bars, places)).toBe(0);
      }),
      { numRuns: 60 },
    );
  });

  it("has one figure for what is alike all round, and it is true of every pair", () => {
    fc.assert(
      fc.property(circle, (patterns) => {
        const { places, rows } = printedRows(patterns);
        for (const row of rows) {
          const lengths = barsOf([row], places).map(([a, b]) => {
            const [p, q] = [places.get(a), places.get(b)];
            return Math.hypot((p?.x ?? 0) - (q?.x ?? 0), (p?.y ?? 0) - (q?.y ?? 0)) / 25.4;
          });
          const figure = Number(/\((\d+(?:\.\d+)?)\)/.exec(row[3] ?? "")?.[1] ?? Number.NaN);
          if (!Number.isNaN(figure)) for (const each of lengths) expect(Math.abs(each - figure)).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 12 },
    );
  });
});

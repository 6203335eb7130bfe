/** The cut list of plates: each template once, figures that add up as they are shown, by material and thickness. Invented data. */
import { describe, expect, it } from "vitest";
import { cellText, cellValue, type ListTable } from "../../../src/lists/model.js";
import { plateList, stockList } from "../../../src/lists/plate-list.js";
import { platePages } from "../../../src/lists/plate-pages.js";
import { plateRows, plateStocks } from "../../../src/lists/plate-rows.js";
import type { BaseFacts, PieceFacts } from "../../../src/summary/facts.js";
import { inches, millimetres } from "../../../src/units/length.js";

const FILE = { kind: "cut-joined", bytes: 1, sha256: "0".repeat(64) };

function piece(mark: string, changes: Partial<PieceFacts> = {}): PieceFacts {
  return {
    ...{ role: "template", mark, quantity: 2, material: "steel", grade: "A36", thickness: inches(0.375) },
    // 10 x 8 in with an opening of 2 x 2 in: gross 80, net 76 in2.
    ...{ width: 254, height: 203.2, outlineArea: 80 * 645.16, netArea: 76 * 645.16 },
    ...{ cutLength: 44 * 25.4, scribeLength: 10 * 25.4, pierces: 2, weight: { value: 8.0833, unit: "lb" } },
    holes: { ...NONE, rod: 4, opening: 1 },
    drilled: [],
    board: null,
    files: [
      { ...FILE, kind: "cut-r12", path: `cut/lines/${mark}_lines.dxf` },
      { ...FILE, path: `cut/${mark}.dxf` },
    ],
    ...changes,
  };
}

const NONE: PieceFacts["holes"] = { rod: 0, opening: 0, nail: 0, grout: 0, bolt: 0 };

function facts(
  mark: string,
  pieces: readonly PieceFacts[],
  bases: readonly string[] = [mark],
  held = false,
): BaseFacts {
  const [first] = pieces;
  const template = { mark: first?.mark ?? mark, quantity: first?.quantity ?? 1, bases };
  const made = { files: [], certificates: [], bolted: [] };
  return { mark, quantity: 1, held, template, pieces, ...made, released: true, figure: null };
}

const of = (all: readonly BaseFacts[], status: "released" | "preliminary" = "released") =>
  ({ rows: plateRows(all), unit: "in", status }) as const;

/** A row as a record of its headings. */
function records({ columns, rows }: ListTable): readonly Readonly<Record<string, string | number | null>>[] {
  return rows.map((row) => Object.fromEntries(columns.map(({ heading }, i) => [heading, cellValue(row[i] ?? null)])));
}

describe("the cut list", () => {
  it("has a template of several bases once, with all its bases, and every piece of it", () => {
    const shared = [piece("T1"), piece("T1-L", { role: "lower template" })];
    const list = plateList(
      of([facts("B1", shared, ["B1", "B9"]), facts("B9", shared, ["B1", "B9"]), facts("B2", [piece("T2")])]),
    );
    const rows = records(list);
    expect(rows.map(({ mark, piece: role, bases }) => [mark, role, bases])).toEqual([
      ["T1", "template", "B1 B9"],
      ["T1-L", "lower template", "B1 B9"],
      ["T2", "template", "B2"],
    ]);
  });

  it("gives of one and of all what is weighed, cut and scribed, and the file that the table loads before the other", () => {
    const [row] = records(plateList(of([facts("B1", [piece("T1", { quantity: 3 })])])));
    expect(row).toMatchObject({
      ...{ quantity: 3, material: "steel", grade: "A36", plate: "PL 3/8", "thickness, in": 0.375 },
      ...{ "size x, in": 10, "size y, in": 8, "weight each, lb": 8.083, "weight total, lb": 24.249 },
      ...{ "gross area each, in2": 80, "gross area total, in2": 240, "net area total, in2": 228 },
      ...{ "cut length each, in": 44, "cut length total, in": 132, "pierces total": 6, "scribe length total, in": 30 },
      ...{ "holes and openings each": 5, "of them drilled": 0, drill: "", status: "to cut" },
      ...{ file: "T1.dxf", "other flavour": "lines/T1_lines.dxf" },
    });
  });

  it("says what is held, not released, drilled, and that a grade or weight is not given", () => {
    const drilled = [
      { diameter: inches(0.125), count: 2 },
      { diameter: inches(0.5625), count: 4 },
    ];
    const odd = piece("T1", { grade: null, weight: null, files: [], drilled, holes: { ...NONE, rod: 4, nail: 2 } });
    const [held] = records(plateList(of([facts("B1", [odd], ["B1"], true)])));
    expect(held).toMatchObject({ status: "HELD", file: null, grade: "not given", "weight each, lb": null });
    expect(held).toMatchObject({ "holes and openings each": 6, "of them drilled": 6, drill: "2 x 1/8, 4 x 9/16" });
    const [early] = records(plateList(of([facts("B1", [odd])], "preliminary")));
    expect(early?.status).toBe("NOT RELEASED");
    const [board] = records(plateList(of([facts("B1", [piece("T1", { material: "plywood" })])])));
    expect(board).toMatchObject({ status: "to drill", "cut length each, in": null, "pierces each": null });
  });

  it("orders by material, grade and thickness; a grade is the same in any case and spacing", () => {
    const all = [
      facts("B1", [piece("T1", { material: "plywood", grade: null, thickness: inches(0.75) })]),
      facts("B2", [piece("T2", { thickness: inches(0.5) })]),
      facts("B3", [piece("T3", { grade: null })]),
      facts("B4", [piece("T4", { grade: "a 36" })]),
      facts("B5", [piece("T5", { grade: "A572" })]),
      facts("B6", [piece("T6")]),
    ];
    expect(plateStocks(plateRows(all)).map(({ rows }) => rows.map(({ mark }) => mark))).toEqual([
      ["T4", "T6"],
      ["T2"],
      ["T5"],
      ["T3"],
      ["T1"],
    ]);
  });

  it("adds up: totals are the sums of the rows as they are shown, in all its tables", () => {
    const all = Array.from({ length: 40 }, (_, i) =>
      facts(
        `B${i}`,
        [
          piece(`T${i}`, {
            quantity: 1 + (i % 7),
            thickness: i % 2 === 0 ? inches(0.25) : millimetres(6),
            weight: { value: 3.333333 + i / 7, unit: "lb" },
            netArea: (50 + i / 3) * 645.16,
          }),
        ],
        [`B${i}`],
        i % 9 === 0,
      ),
    );
    for (const unit of ["in", "mm"] as const) {
      const lists = { ...of(all), unit };
      const [plates, stock, pages] = [plateList(lists), stockList(lists), platePages(lists)];
      const sums = [
        "quantity",
        ...plates.columns.map(({ heading }) => heading).filter((each) => / total\b/.test(each)),
      ];
      expect(sums).toHaveLength(7);
      for (const heading of sums) {
        const wanted = heading === "quantity" ? "pieces" : heading;
        const shown = sumOf(plates, heading);
        expect(totalOf(plates, heading), `${heading} ${unit}`).toBeCloseTo(shown, 6);
        expect(sumOf(stock, wanted), heading).toBeCloseTo(shown, 6);
        expect(totalOf(stock, wanted), heading).toBeCloseTo(shown, 6);
      }
      const pieces = pages.figures.map((table) => totalOf(table, "qty")).reduce((a, b) => a + b, 0);
      expect(pieces).toBe(totalOf(plates, "quantity"));
      expect(totalOf(pages.all, "pieces")).toBe(pieces);
      expect(totalOf(pages.all, "of them held")).toBe(totalOf(plates, "quantity", 1));
      expect(pages.toCut.flatMap(({ rows }) => rows.map(([mark]) => cellText(mark ?? null))).sort()).toEqual(
        all.map(({ template }) => template.mark).sort(),
      );
    }
  });
});

const columnOf = ({ columns }: ListTable, heading: string): number =>
  columns.findIndex((each) => each.heading === heading);

function sumOf(table: ListTable, heading: string): number {
  return table.rows.reduce((sum, row) => sum + Number(cellValue(row[columnOf(table, heading)] ?? 0)), 0);
}

function totalOf(table: ListTable, heading: string, row = 0): number {
  return Number(cellValue(table.totals[row]?.[columnOf(table, heading)] ?? null));
}

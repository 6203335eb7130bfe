/** What is put around and between the rows of a table changes nothing of them; and no grid of texts is an exception. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Table } from "../../../src/readers/inputs.js";
import { chooseTable, PLACEMENTS_TABLE, SCHEDULE_TABLE } from "../../../src/schedule/choose-table.js";
import { findTables } from "../../../src/schedule/find-tables.js";
import { explainNoTable } from "../../../src/schedule/no-table.js";
import { rememberedKnown } from "../../../src/schedule/sheet-words.js";
import { drawFrom } from "../../seed.js";
import { type Dress, dress } from "../../untidy/dress.js";
import { knownHeading, sheetOf } from "./drawn-sheet.js";

const HEADINGS = [
  "MARK",
  "QTY",
  "ANCHOR RODS / SIZE",
  "ANCHOR RODS / GRADE",
  "BASE PLATE / X",
  "BASE PLATE / Y",
  "REMARKS",
];
const UNKNOWN = ["FIELD CHECK", "DETAIL REF", "REV BY", "SHIM STACK"];

const cell = fc.constantFrom(
  "3/4",
  '1 1/4"Ø',
  "36",
  "12",
  "DO",
  "HEAVY HEX",
  "-",
  "",
  "SAME AS B1",
  "SEE NOTE 2",
  "M24",
  "HDG",
);
const rowsOf = fc
  .array(fc.array(cell, { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 9 })
  .map((rows) => rows.map((texts, at) => [`B${at + 1}`, "4", ...texts.slice(1)]));
const titles = fc.array(
  fc.constantFrom("INVENTED HALL", "COLUMN BASE SCHEDULE", "", "MARK", "All rods see plan S-101"),
  { maxLength: 6 },
);
const notes = fc
  .array(
    fc.constantFrom("1. ALL RODS HDG", "GENERAL NOTES:", "* SEE PLAN", "DO NOT SCALE THE DRAWING OR THE SKETCHES", ""),
    { maxLength: 5 },
  )
  .map((lines) => ["", "NOTES:", ...lines]);
const dressing: fc.Arbitrary<Dress> = fc.record({
  titles,
  notes,
  groups: fc.constantFrom("merged", "first", "every", "joined"),
  blankEvery: fc.constantFrom(1, 2, 99),
  pageEvery: fc.constantFrom(2, 3, 99),
  blankColumns: fc.constantFrom([], [0], [1], [3], [5], [2, 6], [0, 4]),
  sections: fc.constantFrom({}, { 0: "MAIN BUILDING" }, { 1: "GRID LINE A", 3: "AREA 2" }),
  isMergedDown: fc.boolean(),
});

/** The rows under headings that were there before, whatever came between. */
function under(table: Table, wanted: readonly string[]): (string | undefined)[][] {
  const [found] = findTables(table, knownHeading);
  if (found === undefined) return [];
  const names = found.columns.map(({ group, words }) => `${group} ${words}`.trim());
  const at = wanted.map((heading) => names.indexOf(heading.replace(" / ", " ")));
  return found.rows.map((row) => at.map((index) => row[index]?.text));
}

describe("titles, blank rows and columns, sections, pages, footnotes and unknown columns", () => {
  it("change nothing of the rows", () => {
    fc.assert(
      fc.property(rowsOf, dressing, fc.subarray(UNKNOWN), (texts, how, unknown) => {
        const headings = [...HEADINGS.slice(0, 4), ...unknown, ...HEADINGS.slice(4)];
        const rows = texts.map((row) => ({
          ...Object.fromEntries(unknown.map((name) => [name, "ok"])),
          ...Object.fromEntries(HEADINGS.map((heading, at) => [heading, row[at] ?? ""])),
        }));
        expect(under(dress(headings, rows, how), HEADINGS)).toEqual(
          texts.map((row) => HEADINGS.map((_, at) => row[at] ?? "")),
        );
      }),
      { numRuns: 200 },
    );
  });

  it("across the columns as well", () => {
    fc.assert(
      fc.property(rowsOf, titles, (texts, above) => {
        const rows = texts.map((row) => Object.fromEntries(HEADINGS.map((heading, at) => [heading, row[at] ?? ""])));
        const how: Dress = {
          groups: "joined",
          isTurned: true,
          titles: above.filter((line) => line !== "MARK"),
          notes: ["", "NOTES:", "1. HDG"],
        };
        expect(under(dress(HEADINGS, rows, how), HEADINGS)).toEqual(
          texts.map((row) => HEADINGS.map((_, at) => row[at] ?? "")),
        );
      }),
    );
  });

  it("the order of columns changes nothing but their order", () => {
    fc.assert(
      fc.property(rowsOf, fc.shuffledSubarray([...HEADINGS.keys()], { minLength: HEADINGS.length }), (texts, order) => {
        const headings = order.map((at) => HEADINGS[at] ?? "");
        const rows = texts.map((row) => Object.fromEntries(HEADINGS.map((heading, at) => [heading, row[at] ?? ""])));
        expect(under(dress(headings, rows, { groups: "joined" }), HEADINGS)).toEqual(
          texts.map((row) => HEADINGS.map((_, at) => row[at] ?? "")),
        );
      }),
    );
  });
});

const WORDS = [
  ...[
    "",
    "",
    "",
    "MARK",
    "BASE MARK",
    "TYPE",
    "ROD DIA",
    "ANCHOR RODS",
    "SIZE",
    "GRADE",
    "X",
    "Y",
    "in",
    "(mm)",
    "EA",
    "QTY",
    "NOTES:",
    "1. ALL",
  ],
  ...[
    "B1",
    "B2",
    "3/4",
    "12 x 12",
    "TOTAL",
    "TOTAL 3",
    "HEAVY HEX",
    "-",
    "----",
    "*",
    "\u2020",
    "DO",
    '"',
    "\n",
    "MAIN BUILDING",
    "1",
    "2",
    "A",
    "(1)",
    "#",
  ],
];
const PIECES = [...WORDS, ...Array.from({ length: 240 }, (_, at) => (at % 2 === 0 ? "" : `B${at} x ${at}/8`))];

describe("grids of random texts", () => {
  const known = rememberedKnown(knownHeading);
  const draw = drawFrom(97);
  const pick = (count: number) => Math.floor(draw() * count);
  const text = () =>
    pick(40) === 0 ? String.fromCharCode(33 + pick(900)).repeat(1 + pick(4)) : (PIECES[pick(PIECES.length)] ?? "");
  const place = (row: number, column: number) => `${String.fromCharCode(65 + column)}${row + 1}`;

  it("100,000 cells: no exception, and every text stands somewhere", () => {
    for (let cells = 0; cells < 100_000; ) {
      const [height, width] = [1 + pick(30), 1 + pick(14)];
      const merges = Array.from({ length: pick(4) }, () => {
        const [top, left] = [pick(height), pick(width)];
        return `${place(top, left)}:${place(top + pick(4), left + pick(4))}`;
      });
      const struck = [place(pick(height), pick(width))];
      const table = sheetOf(
        Array.from({ length: height }, () => Array.from({ length: width }, text)),
        { merges, struck },
      );
      cells += height * width;
      const found = findTables(table, known);
      if (found.length > 0 && merges.length === 0) expectComplete(table, found);
      const choices = found.map((each) => ({ table: each }));
      for (const kind of [SCHEDULE_TABLE, PLACEMENTS_TABLE])
        expect(chooseTable(choices, {}, kind).kind).toMatch(/one|asked|none/);
      expect(explainNoTable([table], known, SCHEDULE_TABLE).message).toContain("no table was found");
    }
  });

  function expectComplete(table: Table, found: ReturnType<typeof findTables>): void {
    const seen = new Set<string>();
    const see = ({ line, column }: { line: number; column: number }) => seen.add(`${line} ${column}`);
    for (const each of found) {
      each.rows.flat().forEach(see);
      for (const { cell: at } of each.columns) see(at);
      for (const { cell: at } of each.leftOut) see(at);
    }
    const lost = table.rows.flat().filter((at) => at.text !== "" && !seen.has(`${at.line} ${at.column}`));
    expect(lost).toEqual([]);
  }
});

describe("large sheets", () => {
  const heads = [
    "MARK",
    "ROD DIA",
    "GRADE",
    "X",
    "Y",
    ...Array.from({ length: 55 }, (_, at) => `CHECK OF SHIFT ${String.fromCharCode(65 + (at % 26))}`),
  ];
  const texts = [
    ["COLUMN BASES"],
    heads,
    ...Array.from({ length: 4000 }, (_, row) => heads.map((_, at) => (at === 0 ? `B${row}` : `${row * 7} ${at}/8`))),
  ];
  const time = (table: Table) => {
    const start = performance.now();
    const found = findTables(table, knownHeading);
    return { rows: found[0]?.rows.length, isQuick: performance.now() - start < 2500 };
  };

  it("are read in one go, down and across", () => {
    const down = sheetOf(texts);
    expect(time(down)).toEqual({ rows: 4000, isQuick: true });
    const across: Table = {
      ...down,
      rows: heads.map((_, column) => down.rows.slice(1).flatMap((row) => row[column] ?? [])),
    };
    expect(time(across)).toEqual({ rows: 4000, isQuick: true });
  });

  it("of nothing but headings are no trouble", () => {
    const again = sheetOf(
      Array.from({ length: 1000 }, (_, row) =>
        row % 2 === 0 ? ["MARK", "ROD DIA", "TYPE", "X"] : ["TYPE", "BASE", "MARK", "X"],
      ),
    );
    expect(time(again).isQuick).toBe(true);
    const wide = sheetOf([Array.from({ length: 1500 }, (_, at) => ["MARK", "X", "TYPE"][at % 3] ?? "")]);
    expect(time(wide).isQuick).toBe(true);
  });
});

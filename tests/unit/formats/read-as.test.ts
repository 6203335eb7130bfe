/** The read-as table for a terminal, as CSV and as a workbook. */
import { describe, expect, it } from "vitest";
import { printable } from "../../../src/diagnostics/printable.js";
import { rewordings, takenHeadings, takenTable } from "../../../src/formats/read-as-columns.js";
import { writeReadAsCsv } from "../../../src/formats/read-as-csv.js";
import { writeReadAsText } from "../../../src/formats/read-as-text.js";
import { writeReadAsXlsx } from "../../../src/formats/read-as-xlsx.js";
import { nameOfKey, readAsForm } from "../../../src/outputs/read-as.js";
import { readCsv } from "../../../src/readers/csv.js";
import { openWorkbook } from "../../../src/readers/workbook.js";
import { readAsCase } from "../../read-as-case.js";

const form = readAsForm(readAsCase, "in");
const text = (width: number): string => writeReadAsText(form, { width, color: false });

describe("for a terminal", () => {
  it("is what a checker ticks off, in one look", () => {
    expect(text(100)).toMatchInlineSnapshot(`
      "bases.xlsx, sheet Bases: 4 bases, bare numbers in inches

      Headings, and what they were taken as
        MK                  Mark
        ANCHOR RODS / SIZE  Rod dia, in inches
        BASE PLATE / SIZE   Base plate X, Base plate Y, Base plate thk, in inches
        ERECT               1 kept as a note
        SPACING             1 asked

      Bases, as they were taken
        * other words in the cell, see below; (in brackets) from elsewhere than the base's own row; ?
        asked

              Base   Base   Base
              plate  plate  plate   Template
        Mark  X      Y      thk     thk
        B1    18*    16*    1-1/2*  (1/4)
        B4    (14*)  -      -       -
        B5    (14*)  -      -       -
        B6    (14*)  -      -       -
        every base:  Rod dia 1-1/4*

      Taken otherwise than written
        * Rod dia 1-1/4 in <- "1¼ DIA"
            under ANCHOR RODS / SIZE:   B1
        * Base plate X 18 in; Base plate Y 16 in; Base plate thk 1-1/2 in <- "18x16 PL 1½"
            under BASE PLATE / SIZE:   B1
        * Mark B4, B5, B6 <- "B4-B6"; B4-B6 stands for B4, B5, B6
            under MK:   B4 B5 B6
        * Base plate X 14 in <- "SEE NOTE 2"; note 2
            under BASE PLATE / SIZE:   B4 B5 B6
        * what another cell says <- "DO" in 1 cell: B6 as B5

      Not taken as a value, and why
        - left out: title: "COLUMN SCHEDULE" A1
        - kept as a note of the base under ERECT: "=SEQ 2" D5
        - left out: footnote: "NOTES:" A8

      Asked; each is answered by one of its lines in the job file
         1  does "SPACING" mean from rod to rod, or from the first rod to the last? (E3)
              columns: { SPACING: Pitch X }   from rod to rod
              columns: { SPACING: Overall X }   from the first to the last
         2  what does 11/4 mean? (F5, F6)
              cells: { F5: 1-1/4, F6: 1-1/4 }   a dash is missing
              cells: { F5: 2-3/4, F6: 2-3/4 }   as it stands
         3  the sheet gives no thickness of the templates
              defaults: { template: { thickness: } }   the plate that they are cut from

      "
    `);
  });

  it("fits the width, but for words that are longer", () => {
    for (const width of [60, 80, 100, 120]) {
      const long = text(width)
        .split("\n")
        .filter((line) => line.length > width);
      expect(long.filter((line) => !line.includes("cells: {"))).toEqual([]);
    }
  });

  it("shows no sign that acts on a terminal, and no colour that was not asked for", () => {
    const [first] = form.entries;
    if (first === undefined) throw new Error("no entry");
    const hostile = { ...form, entries: [{ ...first, written: "\u001b[2Jx\u202e", remark: "\u0007" }] };
    const shown = writeReadAsText(hostile, { width: 100, color: false });
    expect(shown).toContain("\\u001b[2Jx\\u202e");
    expect(shown).toBe(shown.split("\n").map(printable).join("\n"));
  });
});

describe("gathered", () => {
  it("gives each base of a shared row its own line", () => {
    const { rows, names } = takenTable(form.entries);
    expect(rows.map(({ mark }) => mark)).toEqual(["B1", "B4", "B5", "B6"]);
    expect(names).toEqual(["Rod dia", "Base plate X", "Base plate Y", "Base plate thk", "Template thk"]);
    expect(rows[2]?.values.get("Rod dia")).toEqual({ text: "1-1/4", isReworded: true, isFromElsewhere: false });
    expect(rows[3]?.values.get("Base plate X")).toEqual({ text: "14", isReworded: true, isFromElsewhere: true });
  });

  it("tells what each heading was taken as, and what became of its other cells", () => {
    expect(takenHeadings(form.entries).map(({ heading, names, besides }) => [heading, names, besides])).toEqual([
      ["MK", ["Mark"], []],
      ["ANCHOR RODS / SIZE", ["Rod dia"], []],
      ["BASE PLATE / SIZE", ["Base plate X", "Base plate Y", "Base plate thk"], []],
      ["ERECT", [], ["1 kept as a note"]],
      ["SPACING", [], ["1 asked"]],
    ]);
  });

  it("names a range of marks once, with all that it stands for", () => {
    const marks = rewordings(form.entries).find(({ heading }) => heading === "MK");
    expect(marks).toMatchObject({ written: "B4-B6", taken: "Mark B4, B5, B6", marks: ["B4", "B5", "B6"] });
  });
});

describe("names of keys", () => {
  it.each([
    ["mark", "Mark"],
    ["rods.diameter", "Rod dia"],
    ["template.outline.kind", "Outline"],
    ["basePlate.washer.size", "Washer"],
    ["baseHole", "Base plate hole"],
    ["groups[1].rods.grade", "Grade"],
    ["pattern.at[0][1]", "Points"],
    ["rods.unheard", "rods.unheard"],
    ["", ""],
  ])("%s is %s", (key, name) => {
    expect(nameOfKey(key)).toBe(name);
  });
});

describe("as a table", () => {
  it("has a line for every line, with the cell's own text beside the value, and room for a tick", () => {
    const csv = writeReadAsCsv(form);
    const read = readCsv(csv, "read-as.csv");
    const rows = read.ok ? read.value.rows.map((row) => row.map((cell) => cell.text)) : [];
    expect(rows.filter((row) => row.length > 1)).toHaveLength(1 + form.entries.length);
    expect(rows[0]).toEqual([
      ...["base", "cell", "heading", "written", "taken as", "key", "value", "unit", "given by", "remark", "ticked"],
    ]);
    expect(rows[5]).toEqual([
      "B1",
      "Bases!B5",
      "ANCHOR RODS / SIZE",
      "1¼ DIA",
      "Rod dia",
      "rods.diameter",
      "1-1/4",
      "in",
      "row",
      "",
      "",
    ]);
    // a spreadsheet must not run what an engineer's cell holds
    expect(csv).toContain(",'=SEQ 2,");
  });

  it("is the same as a workbook, with the job in its title and the questions on a sheet of their own", async () => {
    const job = { number: "24-1", title: "Depot", revision: "B", status: "released", date: "2026-11-24" };
    const bytes = writeReadAsXlsx(form, job);
    const opened = await openWorkbook(bytes, "read-as.xlsx");
    const textsOn = (name: string): string[][] => {
      const table = opened.ok ? opened.value.sheets.find(({ sheet }) => sheet === name) : undefined;
      return (table?.rows ?? []).map((row) => row.map((cell) => cell.text));
    };
    const rows = textsOn("Read as");
    expect(rows.slice(0, 3).map(([first]) => first)).toEqual([
      "READ AS   Job 24-1  Depot",
      "Revision B, released, 2026-11-24",
      "bases.xlsx, sheet Bases; bare numbers in inches. Tick each line off against the print; what is written there holds.",
    ]);
    expect(rows.length).toBe(4 + 2 + form.entries.length);
    expect(rows.flat()).toContain("=SEQ 2");
    expect(textsOn("Asked").flat()).toContain("columns: { SPACING: Pitch X }");
  });
});

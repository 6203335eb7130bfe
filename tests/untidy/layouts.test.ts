/** The same schedule in many layouts gives the same bases, and the same package byte for byte; what is beside it changes no plate. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { OutputKind } from "../../src/outputs/index.js";
import type { Table } from "../../src/readers/inputs.js";
import { build } from "../../src/tasks/build.js";
import { inputsOf } from "../unit/job/files.js";
import type { Dress, PlainRow } from "./dress.js";
import { dress } from "./dress.js";
import { layouts } from "./layouts.js";
import { basesOf, codesOf, read } from "./read-sheet.js";

const HEADINGS = [
  ...["MARK", "QTY", "ANCHOR RODS / NO.", "ANCHOR RODS / SIZE", "ANCHOR RODS / GRADE", "ANCHOR RODS / EMBED"],
  ...["ANCHOR RODS / PROJ", "PATTERN / X", "PATTERN / Y", "BASE PLATE / X", "BASE PLATE / Y", "BASE PLATE / THK"],
  ...["TEMPLATE / THK", "TEMPLATE / SUPPORT"],
];
const UNITS = {
  MARK: "",
  "ANCHOR RODS / SIZE": "in",
  "ANCHOR RODS / EMBED": "(IN.)",
  "ANCHOR RODS / PROJ": "(IN.)",
  "PATTERN / X": "in",
  "PATTERN / Y": "in",
  "BASE PLATE / X": "in",
  "BASE PLATE / Y": "in",
  "BASE PLATE / THK": "in",
  "TEMPLATE / THK": "in",
};
const rowOf = (texts: readonly string[]): PlainRow =>
  Object.fromEntries(HEADINGS.map((heading, at) => [heading, texts[at] ?? ""]));
const ROWS = [
  ["B1", "4", "4", "3/4", "36", "12", "6", "9", "9", "14", "14", "1", "1/4", "form"],
  ["B2", "2", "4", "1", "55", "18", "7", "12", "10", "18", "16", "1-1/4", "1/4", "form"],
  ["B3", "6", "4", "1-1/4", "DO", "DO", "8", "14", "14", "20", "20", "1-1/2", "1/4", "form"],
  ["B4", "1", "4", "7/8", "36", "12", "6", "10", "8", "15", "13", "1", "1/4", "form"],
].map(rowOf);

const JOB = 'job: { number: "1", date: 2026-01-01, status: released }\nunits: in\nshop: laser\nschedule: s.xlsx\n';

/** Everything that needs no drawing. */
const OUTPUTS: readonly OutputKind[] = ["cut-joined", "cut-r12", "ledger", "questions"];
const OPTIONS = { date: "2026-01-01", version: "1", document: null, outputs: OUTPUTS };

/** The package but for what says how the sheet was understood; drawings are left out. */
function packageOf(table: Table): ReadonlyMap<string, string> {
  const made = build(inputsOf(JOB, { "s.xlsx": table }), OPTIONS);
  if (made.job === null) throw new Error(JSON.stringify(made.findings));
  const files = [...made.bases].flatMap((base) => base.files);
  const own = made.finish().files;
  return new Map(
    [...files, ...own]
      .filter(({ path }) => !/^(read-as|summary)/.test(path))
      .map(({ path, bytes }) => [path, Buffer.from(bytes).toString("base64")]),
  );
}

const plain = dress(HEADINGS, ROWS, { groups: "joined" });
const wanted = basesOf(read(plain));

/** X and Y stand over two parts each: groups over the middle of two columns do not say which, and are asked about. */
const READABLE = Object.entries(layouts(UNITS)).filter(([name]) => name !== "groups in the middle");

describe.each(READABLE)("%s", (_, how) => {
  it("gives the same bases", () => {
    const schedule = read(dress(HEADINGS, ROWS, how));
    expect(codesOf(schedule, "error")).toEqual([]);
    expect(basesOf(schedule)).toEqual(wanted);
  });
});

it("five layouts give the same package, byte for byte", () => {
  const chosen = ["titled", "groups over every column", "pages", "blank columns", "across"];
  const made = packageOf(plain);
  expect(made.size).toBeGreaterThan(8);
  for (const name of chosen) expect(packageOf(dress(HEADINGS, ROWS, layouts(UNITS)[name]))).toEqual(made);
});

describe("what changes no plate", () => {
  const shuffled = fc.shuffledSubarray(HEADINGS, { minLength: HEADINGS.length });
  const words = fc.array(fc.constantFrom("INVENTED HALL", "SCHEDULE OF BASES", "ISSUED FOR TENDER", ""), {
    maxLength: 3,
  });
  const dressed: fc.Arbitrary<Dress> = fc.record({
    titles: words,
    blankEvery: fc.constantFrom(1, 2, 3),
    notes: fc.constantFrom(
      [],
      ["", "NOTES:", "1. RODS ARE SET BY TEMPLATE."],
      ["", "* SEE THE ERECTION DRAWINGS FOR THE ORDER OF WORK."],
    ),
  });

  it("order of columns, titles, blank rows and footnotes", () => {
    fc.assert(
      fc.property(shuffled, dressed, (headings, how) => {
        const schedule = read(dress(headings, ROWS, { ...how, groups: "joined" }));
        expect(codesOf(schedule, "error")).toEqual([]);
        expect(basesOf(schedule)).toEqual(wanted);
      }),
      { numRuns: 60 },
    );
  });

  it("columns that are not known change notes alone", () => {
    const unknown = fc.uniqueArray(fc.constantFrom("PAINT", "CREW", "LOAD CASE", "DETAIL REF", "ZONE"), {
      minLength: 1,
    });
    fc.assert(
      fc.property(unknown, (names) => {
        const rows = ROWS.map((row) => ({ ...row, ...Object.fromEntries(names.map((name) => [name, "SHOWN"])) }));
        const schedule = read(dress([...HEADINGS, ...names], rows, { groups: "joined" }));
        const bases = basesOf(schedule);
        const without = Array.isArray(bases)
          ? bases.map((base) => Object.fromEntries(Object.entries(base).filter(([key]) => key !== "note")))
          : [];
        expect(without).toEqual(wanted);
      }),
      { numRuns: 20 },
    );
  });
});

describe("every cell that holds something stands in the read-as table", () => {
  it.each(Object.entries(layouts(UNITS)))("%s", (_, how) => {
    const table = dress(HEADINGS, ROWS, how);
    const told = new Set(read(table).readAs.lines.map(({ cell }) => cell.replace(/^.*!/, "")));
    const filled = table.rows.flatMap((row) => row.filter(({ text }) => text.trim() !== ""));
    const missing = filled.filter(({ line, column }) => !told.has(`${String.fromCharCode(64 + column)}${line}`));
    expect(missing.map(({ text, line, column }) => `${text} ${line}:${column}`)).toEqual([]);
  });
});

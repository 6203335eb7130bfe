/** The answer form, there and back: filled in by a spreadsheet writer of another maker, and by hands that make mistakes. */
import readXlsxFile from "read-excel-file/universal";
import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { readDay } from "../../../src/leaves/written-day.js";
import type { Table, Workbook } from "../../../src/readers/inputs.js";
import { openWorkbook } from "../../../src/readers/workbook.js";
import { type AskedBase, numbersOf, packageOf, tryPackage } from "../../questions-case.js";
import { xlsxOf } from "../../untidy/workbook.js";

const BASES: readonly AskedBase[] = [
  { mark: "B1", washer: "2-1/2" },
  { mark: "B2", washer: "2-1/2" },
  { mark: "B3", washer: "2-3/4" },
  { mark: "B4", hole: "2", washer: "3" },
];
const A = packageOf({ revision: "A", bases: BASES });
const before = A.json;
const HEAD = ["answersFrom: form"];

async function opened(bytes: Uint8Array): Promise<Workbook> {
  const book = await openWorkbook(bytes, "form");
  if (!book.ok) throw new Error(JSON.stringify(book.findings));
  return book.value;
}

type Grid = readonly (readonly (string | undefined)[])[];

/** The form's cells as a grid of texts. */
async function formGrid(): Promise<string[][]> {
  const [sheet] = (await opened(A.bytes("_answers.xlsx"))).sheets;
  const grid: string[][] = [];
  for (const row of sheet?.rows ?? [])
    for (const { text, line, column } of row) {
      while (grid.length < line) grid.push([]);
      (grid[line - 1] ?? [])[column - 1] = text;
    }
  return grid;
}

/** A grid as a workbook that write-excel-file wrote. */
async function workbookOf(grid: Grid): Promise<Workbook> {
  const rows = grid.map((row, i) => Array.from(row, (text = "", k) => ({ text, line: i + 1, column: k + 1 })));
  const table: Table = { kind: "table", sheet: "Answers", rows };
  return opened(await xlsxOf([table]));
}

/** The whole form with these columns filled in, by number. */
async function filled(
  answers: Readonly<Record<string, readonly [answer: string, by: string, date: string]>>,
): Promise<string[][]> {
  const grid = await formGrid();
  const head = grid.findIndex((row) => row.includes("Number"));
  const column = (name: string) => grid[head]?.indexOf(name) ?? -1;
  return grid.map((row) => {
    const said = answers[row[column("Number")] ?? ""];
    if (said === undefined) return row;
    const copy = [...row];
    [copy[column("Answer")], copy[column("By")], copy[column("Date")]] = said;
    return copy;
  });
}

const SAID = ["Use 3 in plate washers", "J. Doe, EOR", "2026-11-28"] as const;

/** What is asked and answered; files where a test looks at one. */
function madeWith(form: Workbook | string, bases = BASES, unwritten = true) {
  return packageOf({ revision: "B", before, bases, head: HEAD, files: { form }, unwritten });
}

function faultsOf(form: Workbook | string): readonly string[] {
  const { findings } = tryPackage({
    revision: "B",
    before,
    bases: BASES,
    head: HEAD,
    files: { form },
    unwritten: true,
  });
  return findings.map(({ at, message }) => `${at.cell ?? at.line ?? ""} ${message}`.trim());
}

describe("the answer form", () => {
  it("has a row a question, with figures and blank cells", async () => {
    const grid = await formGrid();
    expect(grid[1]?.[0]).toBe("Job 24-118, revision A");
    const rows = grid.filter(([number]) => /^Q-\d/.test(number ?? ""));
    expect(rows.map((row) => [row[0], row[1], row[3], row[4], row[5], row[6] ?? ""])).toEqual([
      ["Q-1", "B1 B2", "2.5", "2.875", "in", ""],
      ["Q-2", "B3", "2.75", "2.875", "in", ""],
      ["Q-3", "B4", "2", "2.0625", "in", ""],
    ]);
  });

  it("comes back from a workbook that another program wrote, and answers what it was given for", async () => {
    const made = madeWith(await workbookOf(await filled({ "Q-1": SAID })));
    expect(numbersOf(made)).toEqual(["Q-1 answered 2.5 B1 B2", "Q-2 open 2.75 B3", "Q-3 open 2 B4"]);
    expect(made.summary.questions[0]?.said).toEqual({ by: SAID[1], date: SAID[2], text: SAID[0] });
    const changed = madeWith(await workbookOf(await filled({ "Q-1": SAID })), [{ mark: "B1", washer: "2-5/8" }]);
    expect(numbersOf(changed)[0]).toBe("Q-1 open 2.625 B1");
  });

  it("may have its rows moved, columns put in and renamed, and lines left blank", async () => {
    const grid = await filled({ "Q-1": SAID, "Q-3": ["As drawn", "J. Doe", "2026-11-29"] });
    const head = grid.findIndex((row) => row.includes("Number"));
    const table = grid.slice(head).map((row) => [row[6] ?? "", "our own note", ...row.slice(0, 6), ...row.slice(7)]);
    const [names = [], ...rows] = table;
    const renamed = names.map((name) => ({ Number: "No.", By: "Answered by", "our own note": "Remark" })[name] ?? name);
    const moved = [...grid.slice(0, head), [], renamed, ...rows.toReversed(), [], ["", "seen by all"]];
    expect(numbersOf(madeWith(await workbookOf(moved)))).toEqual([
      "Q-1 answered 2.5 B1 B2",
      "Q-2 open 2.75 B3",
      "Q-3 answered 2 B4",
    ]);
  });

  it("comes back as YAML, and a formula stays a text", () => {
    const form = A.text("_answers.yaml").replace(
      "answer:\n    by:\n    date:",
      'answer: "=1+1 \\"see sketch\\""\n    by: J. Doe\n    date: 2026-11-28',
    );
    const made = madeWith(form, BASES, false);
    expect(numbersOf(made)[0]).toBe("Q-1 answered 2.5 B1 B2");
    expect(made.text("questions.csv")).toContain(`"'=1+1 ""see sketch"""`);
  });

  it("takes a date that the spreadsheet keeps as one, and a value that it keeps as a number", async () => {
    const text = (value: string) => ({ value, type: String });
    const head = ["Number", "Value asked", "Unit", "Answer", "By", "Date"].map(text);
    const day = { value: new Date(Date.UTC(2026, 10, 28)), type: Date, format: "dd.mm.yyyy" };
    const row = [text("Q-1"), { value: 2.5, type: Number }, text("in"), text("yes\nas drawn"), text("J. Doe"), day];
    const bytes = await writeWorkbook([{ data: [head, row], sheet: "Answers" }] as never).toBuffer();
    const made = madeWith(await opened(new Uint8Array(bytes)));
    expect(made.summary.questions[0]).toMatchObject({
      status: "answered",
      said: { by: "J. Doe", date: "2026-11-28", text: "yes as drawn" },
    });
  });

  it("is read, filled in and written anew by other libraries (read-excel-file, write-excel-file), figures as figures", async () => {
    const [sheet] = await readXlsxFile(A.bytes("_answers.xlsx").slice().buffer as ArrayBuffer);
    const grid = sheet?.data ?? [];
    const names = grid.find((row) => row.includes("Number")) ?? [];
    const at = (name: string) => names.indexOf(name);
    const day = new Date(Date.UTC(2026, 10, 28));
    const filledIn = grid.map((row) => {
      if (row[at("Number")] !== "Q-1" && row[at("Number")] !== "Q-3") return row;
      expect(typeof row[at("Value asked")]).toBe("number");
      return names.map(
        (name, i) => ({ Answer: "As drawn", By: "J. Doe, EOR", Date: day })[String(name)] ?? row[i] ?? null,
      );
    });
    const cellOf = (value: (typeof filledIn)[number][number]) => {
      if (value === null) return null;
      if (value instanceof Date) return { value, type: Date, format: "yyyy-mm-dd" };
      return typeof value === "number" ? { value, type: Number } : { value: String(value), type: String };
    };
    const data = filledIn.map((row) => row.map(cellOf));
    const bytes = await writeWorkbook([{ data, sheet: "Answers" }] as never).toBuffer();
    const made = madeWith(await opened(new Uint8Array(bytes)));
    expect(numbersOf(made)).toEqual(["Q-1 answered 2.5 B1 B2", "Q-2 open 2.75 B3", "Q-3 answered 2 B4"]);
    expect(made.summary.questions[2]?.said).toEqual({ by: "J. Doe, EOR", date: "2026-11-28", text: "As drawn" });
  });

  it("left blank says nothing at all", async () => {
    expect(numbersOf(madeWith(await workbookOf(await formGrid())))).toEqual(numbersOf(A));
    expect(numbersOf(madeWith(A.text("_answers.yaml")))).toEqual(numbersOf(A));
  });
});

describe("a date of a form", () => {
  it.each([
    "2026-11-24",
    "2026/11/24",
    "2026-11-24T08:30:00Z",
    "20261124",
    "24 Nov 2026",
    "24-Nov-2026",
    "24. November 2026",
    "24th November, 2026",
    "Nov 24, 2026",
    "NOVEMBER 24 2026",
  ])("%s is the 24th of November", (text) => expect(readDay(text)).toBe("2026-11-24"));

  it("may be written with the short name of any month, or the whole", () => {
    const days = Array.from({ length: 12 }, (_, month) => new Date(Date.UTC(2024, month, 29)));
    for (const length of ["short", "long"] as const)
      for (const day of days) {
        const name = day.toLocaleString("en-US", { month: length, timeZone: "UTC" });
        expect([name, readDay(`29 ${name} 2024`)]).toEqual([name, day.toISOString().slice(0, 10)]);
      }
  });

  it.each([
    "11/12/2026",
    "11-12-2026",
    "24 Nov 26",
    "31 Nov 2026",
    "29 Feb 2026",
    "24 Nove 2026",
    "Nov 2026",
    "2026112",
    "24 Nov 24 2026",
    "3",
  ])("%s is none, or may be two", (text) => expect(readDay(text)).toBeNull());

  it("is read from a form as it is written there", () => {
    const filled = A.text("_answers.yaml").replace(
      "answer:\n    by:\n    date:",
      "answer: as drawn\n    by: J. Doe\n    date: 24 Nov 2026",
    );
    const made = madeWith(filled);
    expect(made.summary.questions[0]?.said).toEqual({ by: "J. Doe", date: "2026-11-24", text: "as drawn" });
  });
});

describe("a form with a fault", () => {
  const withRows = async (...rows: Grid) => {
    const grid = await formGrid();
    const head = grid.findIndex((row) => row.includes("Number"));
    return workbookOf([...grid.slice(0, head + 1), ...rows]);
  };
  const row = (number: string, value: string, answer: string, by = "J. Doe", date = "2026-11-28") => [
    number,
    "",
    "",
    value,
    "",
    "in",
    answer,
    by,
    date,
  ];

  it.each([
    [
      "a number that was never asked",
      [row("Q-9", "2.5", "x")],
      /^Answers!A7 Q-9 was never asked: the register of revision A goes to Q-3$/,
    ],
    ["no number", [row("", "2.5", "x")], /^Answers!A7 has an answer and no number; allowed is one as Q-7$/],
    ["a text for a number", [row("first", "2.5", "x")], /^Answers!A7 "first" is no number of a question/],
    ["no name", [row("Q-1", "2.5", "x", "")], /^Answers!A7 Q-1: there is no name under By$/],
    [
      "no date",
      [row("Q-1", "2.5", "x", "J. Doe", "")],
      /^Answers!A7 Q-1: there is no date; allowed is a day written year-month-day/,
    ],
    [
      "a date that reads two ways",
      [row("Q-1", "2.5", "x", "J. Doe", "11/12/26")],
      /^Answers!I7 Q-1: "11\/12\/26" is no date that reads one way only/,
    ],
    ["no value", [row("Q-1", "", "x")], /^Answers!A7 Q-1: the value asked is missing.*it was 2\.5$/],
    ["a value that is none", [row("Q-1", "as before", "x")], /^Answers!D7 Q-1: "as before" is no value/],
    [
      "an answer without end",
      [row("Q-1", "2.5", "x".repeat(2001))],
      /^Answers!G7 Q-1: the answer has 2001 characters; at most 2000 are taken$/,
    ],
    [
      "two answers that disagree",
      [row("Q-1", "2.5", "yes"), row("Q-2", "2.75", "ok"), row("Q-1", "2.5", "no")],
      /^Answers!G9 Q-1 is answered twice: "yes" by J\. Doe, 2026-11-28 \(Answers!G7\) and "no" by J\. Doe/,
    ],
  ] as const)("%s is told with its place", async (_, rows, message) => {
    expect(faultsOf(await withRows(...rows))).toEqual([expect.stringMatching(message)]);
  });

  it("every one is told at once", async () => {
    const faults = faultsOf(
      await withRows(row("Q-8", "2.5", "x"), row("Q-1", "2.5", "x", "", ""), row("Q-2", "2.75", "fine")),
    );
    expect(faults).toHaveLength(3);
  });

  it("the same answer twice is one", async () => {
    const made = madeWith(await withRows(row("Q-1", "2.5", "yes"), row("q 1", "2-1/2", "yes")));
    expect(numbersOf(made)[0]).toBe("Q-1 answered 2.5 B1 B2");
  });

  it("a value in another unit is that length", async () => {
    const metric = ["Q-1", "", "", "63.5", "", "mm", "yes", "J. Doe", "2026-11-28"];
    expect(numbersOf(madeWith(await withRows(metric)))[0]).toBe("Q-1 answered 2.5 B1 B2");
  });

  it.each([
    [
      "that is of another job",
      (text: string) => text.replace('job: "24-118"', 'job: "99-001"'),
      "the form is of job 99-001, and this is job 24-118",
    ],
    ["without a list", () => "job: 24-118\n", "has no list under answers"],
    [
      "that is a list where a text is asked",
      (text: string) =>
        text.replace("answer:\n    by:\n    date:", "answer: [a]\n    by: J. Doe\n    date: 2026-11-28"),
      "is a group or a list",
    ],
  ])("one %s is told", (_, change, words) => {
    expect(faultsOf(change(A.text("_answers.yaml")))).toEqual([expect.stringContaining(words)]);
  });

  it("that is not there, or has no such headings, is told", async () => {
    const missing = tryPackage({ revision: "B", before, bases: BASES, head: HEAD, unwritten: true });
    expect(missing.findings.map(({ message }) => message)).toEqual([expect.stringContaining("there is no file form")]);
    expect(
      faultsOf(
        await workbookOf([
          ["Mark", "Rod"],
          ["B1", "3/4"],
        ]),
      ),
    ).toEqual([expect.stringContaining("has the headings Number and Answer")]);
  });
});

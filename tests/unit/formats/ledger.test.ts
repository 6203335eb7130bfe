/** Ledger, questions, drill list and summary as text. CSV is read back by papaparse, JSON by the language's own parser. */
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import type { CheckRow, Quantity } from "../../../src/checks/model.js";
import { writeCsvRows } from "../../../src/formats/csv-cells.js";
import { writeDrillList } from "../../../src/formats/drill-list-csv.js";
import { LEDGER_COLUMNS, writeLedgerHead, writeLedgerRows, writeLedgerTail } from "../../../src/formats/ledger-csv.js";
import type { LedgerHeading, LedgerTextOptions } from "../../../src/formats/ledger-text.js";
import { wrap, writeHeadingText, writeRowsText } from "../../../src/formats/ledger-text.js";
import { QUESTION_COLUMNS, writeQuestionRows, writeQuestionsHead } from "../../../src/formats/questions-csv.js";
import { sealEnd } from "../../../src/formats/seal.js";
import { writeSummaryBase, writeSummaryHead, writeSummaryTail } from "../../../src/formats/summary-json.js";
import { given, missing } from "../../../src/job/model/job.js";
import type { Summary, SummaryBase } from "../../../src/summary/model.js";
import type { Question } from "../../../src/summary/questions.js";
import { areaInUnit, summarizeCheck } from "../../../src/summary/summarize.js";
import { weighPlate } from "../../../src/template/weigh.js";
import { inches, millimetres } from "../../../src/units/length.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { sheetCase } from "../sheets/sheet-case.js";

const length = (value: number): Quantity => ({ kind: "length", twice: inches(value) * 2 });

function row(changes: Partial<CheckRow> = {}): CheckRow {
  return {
    rule: "washer-cover",
    plainName: "washer over base-plate hole",
    missing: [],
    chosen: false,
    clause: "s.2.6",
    edition: "Design Guide 1, 2nd ed.",
    subject: "A1",
    severity: "ask",
    value: length(3),
    limit: length(2.875),
    sense: ">=",
    margin: length(0.125),
    status: "pass",
    note: "",
    measured: "the play",
    givenBy: "row",
    answer: null,
    askedAs: null,
    question: null,
    ...changes,
  };
}

const failing = (changes: Partial<CheckRow> = {}): CheckRow =>
  row({ status: "fail", value: length(2.5), margin: length(-0.375), note: "washer 2-1/2, hole 2-1/16", ...changes });

const base: SummaryBase = {
  mark: "B1",
  quantity: 6,
  held: false,
  template: {
    mark: "T1",
    quantity: 2,
    bases: ["B1"],
    outline: { kind: "path", extent: [-10, -9, 10, 9], area: 360, perimeter: 76 },
    thickness: 0.25,
    netArea: 350,
    weight: { value: 24.8, unit: "lb" },
    cutLength: 90,
    pierces: 6,
    holes: [{ tag: "A1", role: "rod", x: -6, y: 5, diameter: 1.3125, rod: 1.25, made: "cut" }],
  },
  rods: [],
  checks: [summarizeCheck(row(), "in"), summarizeCheck(failing({ subject: "A2" }), "in")],
  files: [{ kind: "cut-joined", path: "B1/x.dxf", bytes: 3, sha256: "00", layers: { cut: ["OUTLINE"], mark: [] } }],
};

const parse = (text: string): string[][] => Papa.parse<string[]>(text, { skipEmptyLines: true }).data;

describe("CSV cells", () => {
  it("come back from an independent reader as they went in", () => {
    const cells = ['say "so"', "a,b", "two\r\nlines", " led by a space", "", "plain", "Größe"];
    expect(Papa.parse<string[]>(writeCsvRows([cells, cells]).trimEnd()).data).toEqual([cells, cells]);
  });

  it("are never run as a formula, while numbers stay numbers", () => {
    const texts = ["=1+1", "+1", "-B1", "@SUM(A1)", "\tx", '=HYPERLINK("x")'];
    for (const cell of parse(writeCsvRows([texts]))[0] ?? []) expect(cell.startsWith("'")).toBe(true);
    expect(writeCsvRows([[-0.375, 2.875, 0, -0, 1e-9, 1e-5, null]])).toBe("-0.375,2.875,0,0,0,0.00001,\r\n");
    // Half a nanometre, the finest that a rule compares, in millimetres and in inches.
    expect(writeCsvRows([[5e-7, -2e-8]])).toBe("0.0000005,-0.00000002\r\n");
  });

  it("keep a sign that stands alone: the sense of a rule, a revision that is not given", () => {
    expect(parse(writeCsvRows([["=", "-", "A1"]]))).toEqual([["=", "-", "A1"]]);
  });

  it("end every row with CR LF (RFC 4180)", () => {
    expect(writeCsvRows([["a"], ["b"]])).toBe("a\r\nb\r\n");
  });
});

describe("ledger.csv", () => {
  it("has every row, and closes with what was not checked and the cautions", () => {
    const text =
      writeLedgerHead() +
      writeLedgerRows(
        base,
        base.checks.map(() => "row"),
      ) +
      writeLedgerTail(["welds"], ["Set rods."]);
    const rows = parse(text);
    expect(rows.every((cells) => cells.length === LEDGER_COLUMNS.length)).toBe(true);
    expect(rows.slice(1).map((cells) => cells[LEDGER_COLUMNS.indexOf("status")])).toEqual([
      ...["pass", "fail", "NOT CHECKED AT ALL", "caution"],
    ]);
    const figures = ["value", "sense", "limit", "margin", "unit"] as const;
    expect(figures.map((column) => rows[2]?.[LEDGER_COLUMNS.indexOf(column)])).toEqual([
      "2.5",
      ">=",
      "2.875",
      "-0.375",
      "in",
    ]);
  });
});

describe("drill list", () => {
  it("says how each hole is made as the plate does: an opening of plywood is cut out, rod and nail holes are drilled", () => {
    const job = jobFixture();
    const { template } = baseFixture();
    const wooden = baseFixture({ template: { ...template, material: "plywood", thickness: inches(0.75) } });
    const { plate, measures } = sheetCase(job, wooden);
    const rows = Papa.parse<Record<string, string>>(writeDrillList(plate, measures, "in").trimEnd(), { header: true });
    const made = new Map(plate.holes.map(({ tag, made }) => [tag, made === "cut" ? "cut out" : "drill"]));
    expect(new Map(rows.data.slice(1).map((cells) => [cells.tag, cells.do]))).toEqual(made);
    expect([made.get("OP1"), made.get("A1")]).toEqual(["cut out", "drill"]);
  });
});

describe("questions.csv", () => {
  it("puts one question on a line and says whether it is open", () => {
    const answer = {
      kind: "answered" as const,
      question: "",
      mark: "B1",
      rule: "washer-cover",
      by: "R. Engineer",
      date: "2026-11-01",
      text: "=accepted",
      subject: "",
      value: missing("", ""),
    };
    const checks = [failing(), failing({ answer })].map((each) => summarizeCheck(each, "in"));
    const about = { job: "24-118", revision: "B", mark: "B1", quantity: 6, text: "What is required?" };
    const asked = checks.map(
      (check, i): Question => ({
        ...{ number: `Q-${i + 1}`, ...about, check, status: check.answer === undefined ? "open" : "answered" },
        ...{
          places: [{ mark: "B1", quantity: 6, subjects: ["A1"] }],
          past: "",
          measured: "the play",
          plainName: "washer",
          asked: [],
        },
        parts: { said: "", notes: "", figures: null },
      }),
    );
    const rows = parse(writeQuestionsHead() + writeQuestionRows(asked));
    expect(rows).toHaveLength(3);
    expect(rows.map((cells) => cells[QUESTION_COLUMNS.indexOf("state")])).toEqual(["state", "open", "answered"]);
    expect(rows[2]?.at(-1)).toBe("'=accepted");
    expect(rows.map((cells) => cells.slice(0, 3))).toEqual([
      ["number", "job", "revision"],
      ["Q-1", "24-118", "B"],
      ["Q-2", "24-118", "B"],
    ]);
  });
});

describe("summary.json", () => {
  const job: Summary["job"] = {
    number: "007",
    title: 'a "b"',
    revision: "B",
    status: "released",
    unit: "in",
    editions: {},
  };

  it.each([0, 1, 3])("written in pieces is the whole summary, with %i bases", (count) => {
    const bases = Array.from({ length: count }, () => base);
    const files = [{ kind: "ledger", path: "ledger.csv", bytes: 1, sha256: "11" }];
    const text =
      writeSummaryHead(job) +
      bases.map((each, index) => writeSummaryBase(each, index === 0)).join("") +
      writeSummaryTail({ checks: [], layoutHeld: [], answersNotUsed: [], questions: [], files }) +
      sealEnd("a");
    const rest = { checks: [], layoutHeld: [], answersNotUsed: [], questions: [], files, seal: "a" };
    expect(JSON.parse(text)).toEqual({ schema: 1, sealed: true, job, bases, ...rest });
  });

  it("is valid for a base without checks, holes or files", () => {
    const bare: SummaryBase = {
      ...base,
      checks: [],
      files: [],
      template: { ...base.template, holes: [], weight: null },
    };
    const text =
      writeSummaryHead(job) +
      writeSummaryBase(bare, true) +
      writeSummaryTail({ checks: [], layoutHeld: [], answersNotUsed: [], questions: [], files: [] }) +
      sealEnd("a");
    expect(JSON.parse(text).bases).toEqual([bare]);
  });

  it("gives a count no unit and a half tick its rounding", () => {
    const counted = summarizeCheck(
      row({ value: { kind: "count", count: 4 }, limit: { kind: "count", count: 4 } }),
      "in",
    );
    expect([counted.value, counted.unit]).toEqual([4, ""]);
    const half = summarizeCheck(row({ value: { kind: "length", twice: 396_875 } }), "in");
    expect(half.value).toBe(0.007813);
  });
});

describe("weight and area", () => {
  it("agrees with the handbook weight of a square foot of 1/4 in plate, 10.21 lb (490 lb/ft3)", () => {
    const weight = weighPlate(304.8 ** 2, inches(0.25), given({ value: 490, unit: "lb/ft3" }, "AISC practice"), "in");
    expect(weight?.unit).toBe("lb");
    expect(weight?.value).toBeCloseTo(10.2083, 4);
  });

  it("agrees with 7.85 kg per square metre and millimetre (7850 kg/m3), also across units", () => {
    const steel = given({ value: 7850, unit: "kg/m3" } as const, "EN 1991-1-1");
    expect(weighPlate(1e6, millimetres(1), steel, "mm")).toEqual({ value: 7.85, unit: "kg" });
    expect(weighPlate(1e6, millimetres(1), steel, "in")?.value).toBeCloseTo(7.85 / 0.45359237, 5);
    expect(weighPlate(1e6, millimetres(1), missing("density", "not given"), "mm")).toBeNull();
  });

  it("is given in the job's unit squared", () => {
    expect(areaInUnit(645.16, "in")).toBe(1);
    expect(areaInUnit(645.16, "mm")).toBe(645.16);
  });
});

describe("the ledger on a terminal", () => {
  const options: LedgerTextOptions = { unit: "in", width: 100, color: false, all: false };
  const heading = (changes: Partial<LedgerHeading> = {}): LedgerHeading => ({
    bases: [{ mark: "B1", quantity: 6 }],
    held: true,
    template: { mark: "T1", quantity: 2, bases: ["B1"] },
    ...changes,
  });

  it("heads bases of one template together, with the others that it serves", () => {
    const bases = ["B1", "B4", "B7"].map((mark) => ({ mark, quantity: 2 }));
    const shared = { mark: "T-B1", quantity: 6, bases: ["B1", "B2", "B4", "B7"] };
    const line = (changes: Partial<LedgerHeading>) => writeHeadingText(heading(changes), options);
    expect(line({})).toBe("B1  HELD  6 bases, template T1, quantity 2\n");
    expect(line({ bases, template: shared, held: false })).toBe(
      "B1, B4, B7  6 bases, template T-B1 (also of B2), quantity 6\n",
    );
    expect(line({ bases, template: { ...shared, heldBy: ["B2"] } })).toContain("B7  HELD by B2  6 bases");
    expect(line({ bases, template: { ...shared, heldBy: ["B4", "B1", "B7"] } })).toContain("B7  HELD  6 bases");
  });

  it("joins rows that say the same, counts passes and shows the closest", () => {
    const rows = [failing(), failing({ subject: "A2" }), row(), row({ status: "not-applicable", margin: null })];
    const text = writeRowsText(rows, options);
    expect(text).toContain("FAIL ask  washer-cover  A1 A2  2-1/2 in >= 2-7/8 in  short by 3/8 in");
    expect(text).toContain("1 passed, 0 not checked, 1 not applicable; closest:");
    expect(text).toContain("washer-cover A1 3 in >= 2-7/8 in (1/8 in to spare)");
  });

  it("shows passes of one figure as one of the closest, whatever their notes say", () => {
    const rows = ["A1", "A2", "A3"].map((subject) => row({ subject, note: `from ${subject} to the edge` }));
    const text = writeRowsText([...rows, row({ rule: "hole-edge", margin: length(inches(1)) })], options);
    expect(text).toContain("washer-cover A1 A2 A3 3 in >= 2-7/8 in (1/8 in to spare)");
    expect(text).toContain("hole-edge A1 3 in >= 2-7/8 in");
  });

  it("shows every row on its own with all", () => {
    const rows = [failing(), failing({ subject: "A2" }), row(), row({ subject: "A4", margin: length(0) })];
    const text = writeRowsText(rows, { ...options, all: true });
    expect(text.match(/washer-cover/g)).toHaveLength(4);
    expect(text).toContain("exactly");
  });

  it("keeps to the width, and is plain without colour", () => {
    const note = "a long note ".repeat(30).trim();
    const text = writeRowsText([failing({ note }), failing({ subject: "A9" })], {
      ...options,
      width: 72,
    });
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(72);
    expect(text).not.toContain("\u001b");
    expect(writeRowsText([failing()], { ...options, color: true })).toContain("\u001b[33m");
  });

  it("says that an answered fail is answered", () => {
    const answer = {
      kind: "answered" as const,
      question: "",
      mark: "B1",
      rule: "washer-cover",
      by: "R. Engineer",
      date: "2026-11-01",
      text: "use 3 in",
      subject: "",
      value: missing("", ""),
    };
    const text = writeRowsText([failing({ answer })], { ...options, width: 140 });
    expect(text).toContain("FAIL ask, answered");
    expect(text).toContain("answered by R. Engineer, 2026-11-01: use 3 in");
    const said = "the answer names no value";
    expect([
      text.replace(/\s+/g, " ").includes(said),
      summarizeCheck(failing({ answer }), "in").note.includes(said),
    ]).toEqual([true, true]);
    const valued = failing({ answer: { ...answer, value: given(2.5, "job") } });
    expect(summarizeCheck(valued, "in").note).not.toContain(said);
  });

  it("wraps between words and keeps long words whole", () => {
    expect(wrap("aa bb cc", 40)).toEqual(["aa bb cc"]);
    expect(wrap(`${"x".repeat(50)} y`, 40)).toEqual(["x".repeat(50), "y"]);
    expect(wrap("", 40)).toEqual([]);
  });
});

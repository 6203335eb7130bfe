import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../../src/checks/model.js";
import { missing } from "../../../src/job/model/job.js";
import { checkLines, leastSignersHeight, signersBlock } from "../../../src/sheets/check-table.js";
import type { Prepared } from "../../../src/sheets/request.js";
import { type Lettering, sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { inches } from "../../../src/units/index.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { gapsOnLines, textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";
import { sheetCases } from "./sheet-cases.js";

/** Panels as they stand on sheets: width and lettering. */
const PANELS: readonly (readonly [number, Lettering])[] = [
  [174, { small: 3, body: 3.5, heading: 5, title: 7 }],
  [146, { small: 2.5, body: 3.5, heading: 5, title: 7 }],
];

const prepared = (rows: readonly CheckRow[], request = sheetCase(jobFixture(), baseFixture())): Prepared => ({
  ...request,
  rows,
  lines: checkLines(rows, request.job.unit),
});

function wordsOf(request: Prepared, room: number, [width, lettering] = PANELS[0] ?? []): readonly string[] | null {
  if (width === undefined || lettering === undefined) throw new Error("no panel");
  const piece = signersBlock(request, width, lettering, room, 5);
  if (piece === null) return null;
  expect(piece.height).toBeLessThanOrEqual(room);
  return textsOf([piece.draw(0, 0)]).map(({ text }) => text);
}

const IN = 2 * inches(1);
const length = (inch: number) => ({ kind: "length", twice: inch * IN }) as const;

function row(changes: Partial<CheckRow>): CheckRow {
  return {
    ...{ rule: "washer-room", plainName: "room between washers", clause: "a clause", edition: "geometry" },
    ...{ subject: "A1", severity: "ask", measured: "room", value: length(2), limit: length(1), sense: ">=" },
    ...{ margin: length(1), status: "pass", note: "", missing: [], chosen: false, givenBy: "row", answer: null },
    ...changes,
  } as CheckRow;
}

const failing = (changes: Partial<CheckRow> = {}): CheckRow =>
  row({ status: "fail", value: length(0.5), margin: length(-0.5), ...changes });

const cases = Object.entries(sheetCases).map(([name, make]) => [name, make()] as const);

describe("the signer's block", () => {
  it("has every fail of every case, whatever the room, or is not drawn", () => {
    for (const [name, request] of cases) {
      const own = prepared(request.rows, request);
      const failed = new Set(request.rows.filter(({ status }) => status === "fail").map(({ plainName }) => plainName));
      for (const panel of PANELS)
        for (const room of [40, 80, 120, 200, 400]) {
          const words = wordsOf(own, room, panel)?.join("\n").toLowerCase();
          if (words !== undefined) for (const rule of failed) expect(words, `${name} ${room}`).toContain(rule);
        }
    }
  });

  it("names every rule that was not checked, with its key", () => {
    for (const [, request] of cases) {
      const words = wordsOf(prepared(request.rows, request), 400)?.join(" ") ?? "";
      const open = request.rows.filter(({ status }) => status === "not-checked");
      for (const { plainName, missing: keys } of open)
        for (const word of [plainName, ...keys]) expect(words).toContain(word);
    }
  });

  it("puts fails first, then margins by their share of the limit", () => {
    const rows = [
      failing({ plainName: "fails" }),
      row({ plainName: "half", rule: "a", margin: length(0.5), limit: length(1) }),
      row({ plainName: "a tenth", rule: "b", margin: length(1), limit: length(10) }),
      row({ plainName: "none", rule: "c", margin: length(0), limit: length(1) }),
    ];
    const words = wordsOf(prepared(rows), 400) ?? [];
    const places = ["Fails", "None", "A tenth", "Half"].map((name) => words.indexOf(name));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  });

  it.each([
    ["an equality", { sense: "=", margin: length(0) }],
    ["a count of what was asked", { value: { kind: "count", count: 4 }, margin: { kind: "count", count: 0 } }],
    ["nothing where nothing may be", { sense: "<=", value: length(0), limit: length(0), margin: length(0) }],
    ["a piece sized to its limit", { chosen: true, margin: length(0) }],
  ] as const)("says %s in one line with the others that hold exactly", (_what, changes) => {
    const words = wordsOf(prepared([row({ plainName: "exact one", ...(changes as Partial<CheckRow>) })]), 400) ?? [];
    expect(words.join(" ")).toContain("MET EXACTLY, NO MARGIN ASKED: exact one.");
    expect(words).not.toContain("Exact one");
  });

  it("keeps the zero of a clearance among the margins", () => {
    const words = wordsOf(prepared([row({ plainName: "clearance", margin: length(0), limit: length(2) })]), 400) ?? [];
    expect(words).toContain("Clearance");
    expect(words.join(" ")).not.toContain("MET EXACTLY");
  });

  it("says who answered a fail, and what an open one does", () => {
    const answer = {
      ...{ kind: "answered" as const, question: "" },
      ...{ mark: "B1", rule: "washer-room", by: "engineer of record", date: "2026-11-01", text: "As drawn." },
      ...{ subject: "", value: missing("answers.value", "none") },
    };
    const said = (changes: Partial<CheckRow>) => wordsOf(prepared([failing(changes)]), 400)?.join(" ") ?? "";
    expect(said({ answer })).toContain("ANSWERED BY engineer of record, 2026-11-01");
    expect(said({ answer })).not.toContain("QUESTION OPEN");
    expect(said({})).toContain("QUESTION OPEN");
    expect(said({ severity: "stop", answer })).toContain("HELD BY THIS; ANSWERED BY");
    expect(said({ severity: "advise" })).toContain("ADVICE");
  });

  it.each([
    ["at least", { value: length(0.5), limit: length(1), margin: length(-0.5), sense: ">=" }, "FAIL, SHORT BY 1/2"],
    ["at most", { value: length(2), limit: length(1.5), margin: length(-0.5), sense: "<=" }, "FAIL, OVER BY 1/2"],
    ["equal", { value: length(1), limit: length(1.5), margin: length(-0.5), sense: "=" }, "FAIL, OFF BY 1/2"],
    [
      "a count",
      { value: { kind: "count", count: 1 }, limit: { kind: "count", count: 4 }, margin: { kind: "count", count: -3 } },
      "FAIL, SHORT BY 3",
    ],
  ] as const)("says by how much a fail misses what must be %s", (_what, changes, said) => {
    expect(wordsOf(prepared([row({ ...(changes as Partial<CheckRow>), status: "fail" })]), 400)).toContain(said);
  });

  it("says the edition of a clause of a code, and no word twice", () => {
    const said = (clause: string, edition: string) => wordsOf(prepared([row({ clause, edition })]), 400) ?? [];
    expect(said("2.3.4.2", "ACI 117-10")).toContain("washer-room: ACI 117-10, 2.3.4.2");
    expect(said("ACI 117-10, 2.3.4.2", "ACI 117-10")).toContain("washer-room: ACI 117-10, 2.3.4.2");
    expect(said("h <= H", "geometry")).toContain("washer-room: h <= H");
    expect(said("least edge: shop plasma", "shop")).toContain("washer-room: least edge: shop plasma");
  });

  it("gives up clauses before margins, then says the closest of each rule", () => {
    const rows = Array.from({ length: 6 }, (_, i) =>
      row({ rule: `r${i % 5}`, plainName: `rule ${i % 5}`, clause: `clause ${i}`, margin: length((i + 1) / 16) }),
    );
    const words = (room: number) => wordsOf(prepared(rows), room) ?? [];
    expect(words(400).filter((each) => /: clause/.test(each))).toHaveLength(6);
    const few = words(55);
    expect(few.filter((each) => /: clause/.test(each))).toEqual([]);
    expect(few.filter((each) => /^Rule \d$/.test(each))).toEqual(["Rule 0", "Rule 1", "Rule 2", "Rule 3", "Rule 4"]);
    expect(few).toContain("+ 1 more in ledger.csv");
  });

  it("keeps columns clear of each other at every size of letters", () => {
    for (const [name, request] of cases)
      for (const { lettering, panel, height } of sheetSizes(request.job.unit)) {
        const piece = signersBlock(prepared(request.rows, request), panel - 6, lettering, height, 5);
        if (piece === null) continue;
        for (const { words, gap } of gapsOnLines([piece.draw(0, 0)]))
          expect(gap, `${name}: ${words}`).toBeGreaterThan(lettering.small * 0.6);
      }
  });

  it("says subjects as a person does, never as one and a number", () => {
    const rows = (subjects: readonly string[]) => subjects.map((subject) => failing({ subject }));
    const said = (subjects: readonly string[]) => wordsOf(prepared(rows(subjects)), 400)?.join("\n") ?? "";
    expect(said(["A1", "A2", "A3", "A4"])).toContain("ALL RODS");
    expect(said(["A1", "A3"])).toContain("A1, A3");
    expect(said(["A1-A2", "A2-A3", "A3-A4", "A4-A1"])).toContain("4 PAIRS");
    expect(said(["base plate A1-A2", "base plate A2-A3", "base plate A3-A4", "base plate A4-A1"])).toContain(
      "BASE PLATE 4 PAIRS",
    );
    expect(said(["OP1", "NH1", "NH2", "A1"])).toContain("4 HOLES");
    expect(said(["plate"])).toContain("PLATE");
  });

  it("gathers fails by rule where not even short lines of all have room, then gives up", () => {
    const many = Array.from({ length: 60 }, (_, i) => failing({ subject: `A${i + 1}`, margin: length(-i - 1) }));
    const words = wordsOf(prepared(many), 60) ?? [];
    expect(words).toContain("Room between washers");
    expect(words.filter((word) => word.startsWith("FAIL"))).toHaveLength(1);
    expect(words).toContain("-60");
    expect(wordsOf(prepared(many), 10)).toBeNull();
    const [width, lettering] = PANELS[0] ?? [];
    if (width === undefined || lettering === undefined) throw new Error("no panel");
    const least = leastSignersHeight(prepared(many), width, lettering);
    const inRoom = (room: number) => signersBlock(prepared(many), width, lettering, room, 3);
    expect(inRoom(least + 1e-6)?.height).toBeCloseTo(least, 6);
    expect(inRoom(least - 1e-6)).toBeNull();
  });

  it("never cuts a clause within a word, and wraps what is long", () => {
    const clause = "thread reaches down to the washer, so that the nut can be run down on it, with the rod set high";
    const words = wordsOf(prepared([failing({ clause: `${clause} ${clause}` }), row({ clause })]), 400) ?? [];
    const cut = words.filter((word) => word.endsWith("…"));
    for (const text of cut) expect(`${clause} ${clause} `).toContain(`${text.slice(0, -2).split(": ").at(-1) ?? ""} `);
    expect(words.join(" ")).toContain("thread reaches down to the washer");
  });

  it("spells its clauses as the rules of the job do", () => {
    const rows = [row({ clause: "centred: centre to levelling nut, gauge" })];
    const metric = sheetCases.metric?.();
    if (metric === undefined) throw new Error("no metric case");
    expect(wordsOf(prepared(rows), 400)?.join(" ")).toContain("centered: center to leveling nut, gage");
    expect(wordsOf(prepared(rows, metric), 400)?.join(" ")).toContain("centred: centre to levelling nut, gauge");
  });

  it("shows which of two figures is the larger", () => {
    const limit = { kind: "length", twice: 24 * IN } as const;
    const value = { kind: "length", twice: 24 * IN + 1 } as const;
    const margin = { kind: "length", twice: -1 } as const;
    const words = wordsOf(prepared([failing({ sense: "<=", value, limit, margin })]), 400) ?? [];
    expect(words).toContain("24.00000002");
    expect(words).toContain("<= 24");
  });
});

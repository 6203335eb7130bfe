import { describe, expect, it } from "vitest";
import type { CheckRow, Quantity, Rule, RuleResult } from "../../../src/checks/index.js";
import { isHolding, rules, runChecks, worstFirst } from "../../../src/checks/index.js";
import { marginOf, runRules } from "../../../src/checks/run.js";
import type { Answer } from "../../../src/job/model/job.js";
import { given, missing } from "../../../src/job/model/job.js";
import { contextOf, inch } from "./context.js";

const length = (twice: number): Quantity => ({ kind: "length", twice });
const result = (subject: string, value: number, limit: number, more: Partial<RuleResult> = {}): RuleResult =>
  ({
    kind: "compared",
    subject,
    value: length(value),
    limit: length(limit),
    sense: ">=",
    note: "",
    ...more,
  }) as RuleResult;

function ruleOf(...results: readonly RuleResult[]): Rule {
  return {
    id: "washer-cover",
    plainName: "washer",
    title: "",
    severity: "ask",
    measured: "",
    takes: [],
    clause: () => "c",
    edition: () => "e",
    check: () => results,
  };
}

const answer = (changes: Partial<Answer> = {}): Answer => ({
  kind: "answered",
  question: "",
  mark: "B1",
  rule: "washer-cover",
  by: "EOR",
  date: "2026-11-20",
  text: "see sketch 4",
  subject: "",
  value: missing("answers.value", "none given"),
  ...changes,
});

describe("margin", () => {
  it.each([
    [5, ">=", 3, 2],
    [3, ">=", 5, -2],
    [3, "<=", 5, 2],
    [5, "<=", 3, -2],
    [4, "=", 4, 0],
    [5, "=", 4, -1],
    [3, "=", 4, -1],
  ] as const)("%i %s %i leaves %i", (value, sense, limit, margin) => {
    expect(marginOf(length(value), sense, length(limit))).toEqual(length(margin));
    const counted = marginOf({ kind: "count", count: value }, sense, { kind: "count", count: limit });
    expect(counted).toEqual({ kind: "count", count: margin });
  });

  it("refuses what is not an integer, and mixed quantities", () => {
    expect(() => marginOf(length(0.5), ">=", length(0))).toThrow(RangeError);
    expect(() => marginOf(length(1), ">=", { kind: "count", count: 1 })).toThrow(TypeError);
  });
});

describe("rows", () => {
  it("take clause, edition and severity from the verdict, else from the rule", () => {
    const own = { clause: "own clause", edition: "own edition", severity: "stop" } as const;
    const rows = runRules([ruleOf(result("A1", 1, 1), result("A2", 1, 1, own))], contextOf());
    expect(rows).toMatchObject([{ clause: "c", edition: "e", severity: "ask" }, own]);
  });

  it("are raised by the job, never lowered", () => {
    const raise = (to: "stop" | "advise") => contextOf({ job: { raised: { "washer-cover": to } } });
    const rule = ruleOf(result("A1", 1, 2));
    expect(runRules([rule], raise("stop"))[0]?.severity).toBe("stop");
    expect(runRules([rule], raise("advise"))[0]?.severity).toBe("ask");
  });

  it("of every rule are never missing, and repeat exactly", () => {
    const context = contextOf();
    const rows = runChecks(context);
    expect(new Set(rows.map(({ rule }) => rule))).toEqual(new Set(rules.map(({ id }) => id)));
    expect(runChecks(context)).toEqual(rows);
    expect(rows.every(({ note, clause, edition }) => note !== "" && clause !== "" && edition !== "")).toBe(true);
  });

  it("of 200 rods stay bounded: pairs once, rods once a branch", () => {
    const pattern = { kind: "circle", diameter: inch(400), count: 200, start: { kind: "on-axis" } } as const;
    const rows = runChecks(
      contextOf({
        group: { pattern },
        template: {
          outline: { kind: "ring", outer: inch(420), inner: inch(380), at: { x: inch(0), y: inch(0) } },
          opening: { kind: "none" },
        },
      }),
    );
    const spacing = rows.filter(({ rule }) => rule === "rod-spacing");
    expect(spacing.length).toBeGreaterThanOrEqual(100);
    expect(spacing.length).toBeLessThanOrEqual(200);
    expect(new Set(spacing.map(({ subject }) => subject)).size).toBe(spacing.length);
  });
});

describe("answers", () => {
  const fails = ruleOf(result("A1", 2 * inch(2.5), 2 * inch(2.625)), result("A2", 9, 1));
  const rowsWith = (...answers: readonly Answer[]) => runRules([fails], contextOf({ job: { answers } }));

  it("keep the fail, and never go with a pass", () => {
    const [first, second] = rowsWith(answer());
    expect(first).toMatchObject({ status: "fail", answer: { by: "EOR" } });
    expect(second?.answer).toBeNull();
  });

  it.each([
    ["another mark", { mark: "B2" }],
    ["another rule", { rule: "rod-cover" }],
    ["another subject", { subject: "A4" }],
    ["a value that has changed since", { value: given(2.375, "job") }],
  ])("do not hold for %s", (_, changes) => {
    expect(rowsWith(answer(changes))[0]?.answer).toBeNull();
  });

  it("hold for the subject and the value that were answered", () => {
    expect(rowsWith(answer({ subject: "A1", value: given(2.5, "job") }))[0]?.answer).not.toBeNull();
  });

  it("hold for a count", () => {
    const three = {
      kind: "compared",
      subject: "base",
      value: { kind: "count", count: 3 },
      limit: { kind: "count", count: 4 },
      sense: ">=",
      note: "",
    } as const;
    const rows = (value: number) =>
      runRules([ruleOf(three)], contextOf({ job: { answers: [answer({ value: given(value, "job") })] } }));
    expect(rows(3)[0]?.answer).not.toBeNull();
    expect(rows(2)[0]?.answer).toBeNull();
  });
});

describe("held and worst first", () => {
  const row = (
    name: string,
    status: CheckRow["status"],
    severity: CheckRow["severity"],
    margin = 0,
    limit = 10,
  ): CheckRow => ({
    rule: name,
    plainName: name,
    missing: [],
    chosen: false,
    clause: "",
    edition: "",
    subject: "",
    severity,
    value: length(0),
    limit: length(limit),
    sense: ">=",
    margin: length(margin),
    status,
    note: "",
    measured: "the play",
    givenBy: "row",
    answer: null,
    askedAs: null,
    question: null,
  });

  it("is held by a failing stop alone", () => {
    const rows = [row("a", "fail", "ask"), row("b", "pass", "stop"), row("c", "not-checked", "stop")];
    expect(rows.filter(isHolding)).toEqual([]);
    expect([row("a", "fail", "stop")].filter(isHolding)).toHaveLength(1);
  });

  it("orders by severity, then by margin against the limit, then what was not compared", () => {
    const rows = [
      row("na", "not-applicable", "stop"),
      row("nc", "not-checked", "stop"),
      row("wide pass", "pass", "stop", 50, 10),
      row("tight pass", "pass", "advise", 1, 100),
      row("advise", "fail", "advise", -9),
      row("ask", "fail", "ask", -1),
      row("stop slight", "fail", "stop", -1, 100),
      row("stop gross", "fail", "stop", -5, 10),
    ];
    const order = ["stop gross", "stop slight", "ask", "advise", "tight pass", "wide pass", "nc", "na"];
    expect(worstFirst(rows).map(({ rule }) => rule)).toEqual(order);
  });

  it("puts passes that can have no margin behind those that have one, and a limit met exactly first", () => {
    const count = (value: number): Quantity => ({ kind: "count", count: value });
    const rows: readonly CheckRow[] = [
      { ...row("equal", "pass", "stop", 0, 4), sense: "=" },
      { ...row("none left out", "pass", "advise"), value: count(0), limit: count(0), margin: count(0), sense: "<=" },
      { ...row("rods", "pass", "ask"), value: count(4), limit: count(4), margin: count(0), sense: ">=" },
      { ...row("more rods", "pass", "ask"), value: count(6), limit: count(4), margin: count(2), sense: ">=" },
      row("to spare", "pass", "ask", 1, 100),
      row("exactly", "pass", "ask", 0, 100),
      row("nc", "not-checked", "ask"),
      { ...row("unequal", "fail", "stop", -1, 100), sense: "=" },
    ];
    const order = ["unequal", "exactly", "to spare", "more rods", "equal", "none left out", "rods", "nc"];
    expect(worstFirst(rows).map(({ rule }) => rule)).toEqual(order);
  });

  it("keeps the order of equals and does not change its argument", () => {
    const rows = [row("a", "pass", "ask", 1), row("b", "pass", "ask", 1)];
    expect(worstFirst(rows).map(({ rule }) => rule)).toEqual(["a", "b"]);
    expect(rows.map(({ rule }) => rule)).toEqual(["a", "b"]);
  });
});

/** The layout's rows on their way through the pipeline: summary, ledger, questions, answers. */
import { describe, expect, it } from "vitest";
import type { OutputKind } from "../../../src/outputs/index.js";
import { build } from "../../../src/tasks/build.js";
import { inputsOf } from "../job/files.js";

const OUTPUTS: readonly OutputKind[] = ["ledger", "questions", "summary"];
const BASE = "rods: { diameter: 1 }, pattern: { kind: rectangle, x: 12, y: 10 }, template: { thickness: 1/4 } }";

/** Two bases of 12 x 10 in, 13 - 1/2 in apart: their rods of 1 in overlap by 1/2 in. */
function made(...more: readonly string[]) {
  const text = [
    'job: { number: "1" }',
    "units: in",
    "grid: { x: { names: [1, 2], spacing: 25' }, y: { names: [A, B], spacing: 20' } }",
    "placements: [{ base: B1, at: A-1 }, { base: B2, at: A-1, offset: [12.5, 0] }]",
    ...more,
    "bases:",
    `  - { mark: B1, ${BASE}`,
    `  - { mark: B2, ${BASE}`,
    "",
  ];
  const built = build(inputsOf(text.join("\n")), {
    date: "2026-01-01",
    version: "1",
    document: null,
    outputs: OUTPUTS,
  });
  const { summary, files } = built.finish();
  const text_ = (kind: string) => new TextDecoder().decode(files.find((file) => file.kind === kind)?.bytes);
  return { summary, ledger: text_("ledger"), questions: text_("questions"), written: JSON.parse(text_("summary")) };
}

const rodRow = {
  rule: "neighbour-rods",
  subject: "B1 A-1 - B2 A-1",
  status: "fail",
  value: -0.5,
  limit: 0,
  margin: -0.5,
};

describe("rows of the layout", () => {
  it("stand in the summary, worst first, and in the written one alike", () => {
    const { summary, written } = made();
    expect(summary.checks[0]).toMatchObject(rodRow);
    expect(written.checks).toEqual(summary.checks);
    expect(written.files.map((file: { kind: string }) => file.kind)).toEqual(["ledger", "questions"]);
  });

  it("stand in the ledger after the bases, without a base or template", () => {
    const lines = made().ledger.split("\r\n");
    const row = lines.findIndex((line) => line.startsWith(",,,neighbour-rods,"));
    expect(lines[row]).toMatch(
      /^,,,neighbour-rods,rods cannot pass through each other,geometry,B1 A-1 - B2 A-1,ask,fail,-0\.5,>=,0,/,
    );
    expect(lines.slice(row).some((line) => /^B[12],/.test(line))).toBe(false);
    expect(lines.slice(0, row).some((line) => line.startsWith("ALL,"))).toBe(false);
  });

  it("become questions where they are for the engineer", () => {
    const asked = made()
      .questions.split("\r\n")
      .filter((line) => line.includes("neighbour-rods"));
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatch(
      /^Q-\d+,[^,]*,[^,]*,,,B1 A-1 - B2 A-1,"Layout, B1 A-1 - B2 A-1: the clear distance between the rods of two bases is -1\/2 in; geometry .* asks for at least 0 in/,
    );
    expect(asked[0]).toMatch(/,open,/);
  });

  it("keep their fail when they are answered, by rule and subject", () => {
    const answer = (subject: string) =>
      `answers: [{ mark: B1, rule: neighbour-rods, by: engineer, date: 2026-01-01, text: One group., subject: ${subject} }]`;
    const row = (subject: string) => made(answer(subject)).summary.checks.find(({ rule }) => rule === "neighbour-rods");
    expect(row("B1 A-1 - B2 A-1")).toMatchObject({ status: "fail", answer: { by: "engineer" } });
    expect(row("B1 A-1")).not.toHaveProperty("answer");
  });

  it("take a raised severity", () => {
    const { summary } = made("severities: { neighbour-templates: ask }");
    expect(summary.checks.find(({ rule }) => rule === "neighbour-templates")).toMatchObject({
      status: "fail",
      severity: "ask",
    });
  });
});

describe("a layout that is held", () => {
  const control = (easting: number) => [
    "settingOut: { unit: m }",
    `control: [{ point: CP1, northing: 5000, easting: 2000, plan: [0, 0] }, { point: CP2, northing: 5000, easting: ${easting}, plan: [25', 0] }]`,
  ];

  it("says why in the summary, in the written one alike; control points that close hold nothing", () => {
    const { summary, written } = made(...control(2076.2));
    expect(summary.layoutHeld).toEqual([
      "control points, closure (control-closure) CP1 - CP2: 2700 in, at most 30 in is needed",
      "control points, residual (control-residual) CP1 CP2: 1350 in, at most 30 in is needed",
    ]);
    expect(written.layoutHeld).toEqual(summary.layoutHeld);
    expect(made(...control(2007.62)).summary.layoutHeld).toEqual([]);
    expect(made().summary.layoutHeld).toEqual([]);
  });

  it("by a severity that the job raises to stop too", () => {
    expect(made("severities: { neighbour-rods: stop }").summary.layoutHeld).toEqual([
      "clear of next rods (neighbour-rods) B1 A-1 - B2 A-1: -1/2 in, at least 0 in is needed",
    ]);
  });
});

/** Untidy sheets of every kind, each with the bases of the job that it stands for, or with what is asked. */
import { describe, expect, it } from "vitest";
import { drawSheet } from "../unit/schedule/drawn-sheet.js";
import { METRIC, METRIC_REFUSED } from "./metric-sheets.js";
import { basesOf, codesOf, read, writtenBases } from "./read-sheet.js";
import type { UntidySheet } from "./sheets.js";
import { READ, REFUSED } from "./sheets.js";

const scheduleOf = ({
  lines,
  looks = {},
  unit = "in",
  answers = {},
}: Pick<UntidySheet, "lines" | "looks" | "unit" | "answers">) => read(drawSheet(lines, looks), unit, answers);

describe("read without a question", () => {
  it("are forty or more", () => {
    expect(READ.length).toBeGreaterThanOrEqual(40);
  });

  it.each([...READ, ...METRIC].map((sheet) => [sheet.name, sheet] as const))("%s", (_name, sheet) => {
    const schedule = scheduleOf(sheet);
    expect(schedule.findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(basesOf(schedule, sheet.unit)).toEqual(
      writtenBases(sheet.bases.map((base) => `- ${base}`).join("\n"), sheet.unit),
    );
    expect(codesOf(schedule, "warning")).toEqual(sheet.told ?? []);
    expect(schedule.readAs.questions).toEqual([]);
  });
});

describe("asked, or at fault", () => {
  it.each([...REFUSED, ...METRIC_REFUSED].map((sheet) => [sheet.name, sheet] as const))("%s", (_name, sheet) => {
    const schedule = scheduleOf(sheet);
    expect(codesOf(schedule, "error")).toEqual(sheet.codes);
    const asked = schedule.findings.filter(({ code }) => code.startsWith("asked-"));
    for (const { hint } of asked) expect(hint).toMatch(/columns: \{|cells: \{|notes: \{|defaults: \{|table: |sheet: /);
    expect(schedule.readAs.questions.length).toBe(asked.length);
  });
});

/** `sheet`: one size for all sheets of a job, of the series of its unit. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { SHEET_NAMES } from "../../../src/job/model/sheet-names.js";
import { sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { openJob } from "../../../src/tasks/open.js";

const job = (units: string, lines: readonly string[], diameter: string, quantity: number) =>
  [
    'job: { number: "1", title: Sheets, revision: A, status: released, date: 2026-11-24 }',
    `units: ${units}`,
    ...lines,
    "bases:",
    "  - mark: B1",
    `    quantity: ${quantity}`,
    `    rods: { diameter: ${diameter}, projection: 6, embedment: 12 }`,
    `    pattern: { kind: rectangle, x: ${units === "in" ? "12, y: 10" : "300, y: 250"} }`,
    `    template: { thickness: ${units === "in" ? "1/4" : "6"} }`,
  ].join("\n");

function open(units: string, lines: readonly string[], quantity = 1) {
  const text = job(units, lines, units === "in" ? "1" : "M24", quantity);
  const shop = `templates/shops/${units === "in" ? "plasma" : "plasma-metric"}.yaml`;
  const files = new Map([
    ["job.yaml", text],
    [shop, readFileSync(shop, "utf8")],
  ]);
  return openJob({ job: "job.yaml", files }, { date: "2026-11-24" });
}

describe("sheet", () => {
  it("names the sizes that are drawn, smallest first", () => {
    for (const unit of ["in", "mm"] as const)
      expect(sheetSizes(unit).map(({ name }) => name)).toEqual(SHEET_NAMES[unit]);
  });

  it("is taken as written, and null where the job names none", () => {
    for (const [units, name] of [
      ["in", "C"],
      ["in", "D"],
      ["mm", "A2"],
      ["mm", "A1"],
    ] as const) {
      const opened = open(units, [`sheet: ${name}`]);
      expect(opened.ok && opened.value.job.sheet, name).toBe(name);
    }
    const plain = open("in", []);
    expect(plain.ok && plain.value.job.sheet).toBe(null);
  });

  it("of the other series, or of none, is told with what is allowed", () => {
    for (const [units, name, allowed] of [
      ["in", "A3", "one of A, B, C, D"],
      ["mm", "D", "one of A4, A3, A2, A1"],
      ["in", "E", "one of A, B, C, D"],
    ] as const) {
      const [fault, ...others] = open(units, [`sheet: ${name}`]).findings.filter(
        ({ severity }) => severity === "error",
      );
      expect(fault?.message).toContain(`"${name}" is not allowed; allowed is ${allowed}`);
      expect(others).toEqual([]);
    }
  });

  it("that holds not even what must stand on a sheet is told with the least size that does", () => {
    const [fault] = open("in", ["sheet: A"]).findings.filter(({ code }) => code === "sheet-too-small");
    expect(fault?.message).toMatch(/^A has no room for what must stand on the sheets of /);
    const [, least] =
      /the least size that has is ([BCD]): write sheet: \1, or leave the key out$/.exec(fault?.message ?? "") ?? [];
    expect(open("in", [`sheet: ${least}`]).ok).toBe(true);
  });

  it("too small for templates or plan is refused with one least size, on which both have room", () => {
    const grid = ["grid: { x: { names: [1, 2, 3], spacing: 2 @ 25' }, y: { names: [A, B], spacing: 20' } }"];
    const placed = ["placements: [{ base: B1, every: [[A, B], [1, 2, 3]] }]"];
    for (const sheet of ["A", "B", "C", "D"]) {
      const opened = open("in", [`sheet: ${sheet}`, ...grid, ...placed], 6);
      const small = opened.findings.filter(({ code }) => code === "sheet-too-small");
      expect(opened.ok, JSON.stringify(opened.findings)).toBe(small.length === 0);
      if (sheet === "A") expect(small.map(({ message }) => message).join()).toContain("sheets of the anchor-rod plan");
      const least = small.map(({ message }) => /write sheet: ([A-D])/.exec(message)?.[1] ?? "none");
      expect(new Set(least).size).toBeLessThanOrEqual(1);
      for (const name of least) expect(open("in", [`sheet: ${name}`, ...grid, ...placed], 6).ok).toBe(true);
    }
  });

  it("is at fault at its own line and column", () => {
    const [fault] = open("in", ["sheet: A"]).findings.filter(({ code }) => code === "sheet-too-small");
    expect(fault?.at).toMatchObject({ file: "job.yaml", line: 3, column: 8, path: "sheet" });
  });
});

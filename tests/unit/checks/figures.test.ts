/** A nanometre shows wherever value, limit and margin are printed. */
import { describe, expect, it } from "vitest";
import { heldReasons } from "../../../src/checks/held.js";
import type { CheckRow, Sense } from "../../../src/checks/index.js";
import { judge } from "../../../src/checks/run.js";
import { writeCsvRows } from "../../../src/formats/csv-cells.js";
import { writeLedgerRows } from "../../../src/formats/ledger-csv.js";
import { writeRowsText } from "../../../src/formats/ledger-text.js";
import { summarizeCheck } from "../../../src/summary/summarize.js";
import type { Unit } from "../../../src/units/index.js";
import { contextOf, questionText } from "./context.js";

const length = (twice: number) => ({ kind: "length", twice }) as const;

function rowOf(value: number, sense: Sense, limit: number, severity: "stop" | "ask" = "ask"): CheckRow {
  const result = {
    kind: "compared",
    subject: "A1",
    value: length(value),
    limit: length(limit),
    sense,
    note: "",
  } as const;
  return judge(
    { id: "washer-cover", plainName: "washer", severity, measured: "the size of the washer" },
    result,
    "clause",
    "geometry",
  );
}

const ledger = (row: CheckRow, unit: Unit) => writeRowsText([row], { unit, width: 120, color: false, all: true });
const IN = 25_400_000;
const MM = 1_000_000;

/** Twice the value, sense, twice the limit; how value, limit and the margin's size are written. */
const CASES: readonly (readonly [Unit, number, Sense, number, string, string, string])[] = [
  ["mm", 2 * 5 * MM - 2, ">=", 2 * 5 * MM, "4.999999", "5", "0.000001"],
  ["mm", 2 * 5 * MM - 1, ">=", 2 * 5 * MM, "4.9999995", "5", "0.0000005"],
  ["mm", 2 * 5 * MM + 2, "<=", 2 * 5 * MM, "5.000001", "5", "0.000001"],
  ["mm", 2 * 50.8 * MM - 2000, ">=", 2 * 50.8 * MM, "50.799", "50.8", "0.001"],
  ["mm", 2 * 5 * MM - 2, "=", 2 * 5 * MM, "4.999999", "5", "0.000001"],
  ["in", 2 * 2 * IN - 2, ">=", 2 * 2 * IN, "1.99999996", "2", "0.00000004"],
  ["in", 2 * 2 * IN - 1, ">=", 2 * 2 * IN, "1.99999998", "2", "0.00000002"],
  ["in", (2 * 81 * IN) / 64 - 2, ">=", (2 * 81 * IN) / 64, "1.2656", "1-17/64", "0.00000004"],
  ["in", 2 * 58_648_600 - 2, ">=", 2 * 58_648_600, "2.30899996", "2.309", "0.00000004"],
  ["in", 2 * 31_356_300, ">=", 2 * 31_358_840, "1.2345", "1.2346", "0.0001"],
  ["in", 2 * 3 * IN, ">=", 2 * 4 * IN, "3", "4", "1"],
];

describe("value, limit and margin", () => {
  it.each(CASES)("in %s: %d %s %d as %s, %s, %s", (unit, value, sense, limit, found, asked, by) => {
    const row = rowOf(value, sense, limit, "stop");
    expect(row.status).toBe("fail");
    expect(ledger(row, unit)).toContain(`${found} ${unit} ${sense} ${asked} ${unit}`);
    expect(ledger(row, unit)).toContain(`by ${by} ${unit}`);
    expect(heldReasons([row], unit)[0]).toContain(`${found} ${unit}, `);
    const context = contextOf({ job: { unit } });
    expect(questionText(row, context)).toContain(` is ${found} ${unit}; `);
    expect(questionText(row, context)).toContain(`${asked} ${unit}`);
  });

  it.each(CASES)(
    "in summary.json and ledger.csv differ where they differ: %s, %d %s %d",
    (unit, value, sense, limit) => {
      const check = summarizeCheck(rowOf(value, sense, limit), unit);
      expect(check.value).not.toBe(check.limit);
      expect(check.margin).toBeLessThan(0);
      const cells = writeCsvRows([[check.value, check.limit, check.margin]])
        .trim()
        .split(",");
      expect(cells[0]).not.toBe(cells[1]);
      expect(Number(cells[2])).toBeLessThan(0);
      expect(cells.join()).not.toContain("e");
    },
  );

  it("keep the summary's rounding where that shows the difference", () => {
    expect(summarizeCheck(rowOf(2 * 1_234_567, ">=", 2 * MM), "mm")).toMatchObject({
      value: 1.23457,
      limit: 1,
      margin: 0.23457,
    });
    expect(summarizeCheck(rowOf(2 * 5 * MM, ">=", 2 * 5 * MM), "mm")).toMatchObject({ value: 5, limit: 5, margin: 0 });
  });

  it("never read the other way round: a fraction beside decimals that round past it", () => {
    // 1-1/64 in is 1.015625; 1.01561 and 1.01564 both round to 1.0156, on either side of it.
    const tick = (65 * IN) / 64;
    const above = rowOf(2 * tick, ">=", 2 * 25_797_256);
    expect(ledger(above, "in")).toContain("1-1/64 in >= 1.01564 in");
    const below = rowOf(2 * tick, "<=", 2 * 25_796_494);
    expect(ledger(below, "in")).toContain("1-1/64 in <= 1.0156 in");
  });

  it("in ledger.csv of a base", () => {
    const check = summarizeCheck(rowOf(2 * 5 * MM - 2, ">=", 2 * 5 * MM), "mm");
    const outline = { kind: "path", extent: [0, 0, 0, 0], area: 0, perimeter: 0 } as const;
    const template = {
      mark: "T1",
      quantity: 1,
      bases: ["B1"],
      outline,
      thickness: 0,
      netArea: 0,
      weight: null,
      cutLength: 0,
      pierces: 0,
      holes: [],
    };
    const text = writeLedgerRows({ mark: "B1", quantity: 1, held: false, template, rods: [], checks: [check] }, [
      "row",
    ]);
    expect(text).toContain("4.999999,>=,5,-0.000001,mm");
  });
});

/** ASME B1.1, coarse series (UNC). Threads per inch; tensile stress areas in square inches, tabulated and computed. */
import type { Confidence, StandardTable, ThreadRow } from "../model.js";
import { printedInches } from "../sizes.js";

const NOTES: Readonly<Record<string, string>> = {
  "7/16": "one secondary copy prints .0163, a typo for .1063",
  "1-3/8": "one secondary copy prints 1.160; formula gives 1.155 (B1.1 value 1.155 from memory)",
  "1-1/2": "one secondary copy prints 1.410; formula gives 1.405",
};

/** Size, threads per inch, tabulated stress area (null: none), computed stress area, confidence. */
export const uncThreads: StandardTable<ThreadRow> = {
  edition: "ASME B1.1",
  clause: "UNC series",
  rows: [
    row("1/4", 20, 0.0318, 0.0318, "high"),
    row("5/16", 18, 0.0524, 0.0524, "high"),
    row("3/8", 16, 0.0775, 0.0775, "high"),
    row("7/16", 14, 0.1063, 0.1063, "high"),
    row("1/2", 13, 0.1419, 0.1419, "high"),
    row("9/16", 12, 0.182, 0.1819, "high"),
    row("5/8", 11, 0.226, 0.226, "high"),
    row("3/4", 10, 0.334, 0.3345, "high"),
    row("7/8", 9, 0.462, 0.4617, "high"),
    row("1", 8, 0.606, 0.6057, "high"),
    row("1-1/8", 7, 0.763, 0.7633, "high"),
    row("1-1/4", 7, 0.969, 0.9691, "high"),
    row("1-3/8", 6, 1.155, 1.1549, "high"),
    row("1-1/2", 6, 1.405, 1.4052, "high"),
    row("1-3/4", 5, 1.9, 1.8995, "high"),
    row("2", 4.5, 2.5, 2.4982, "high"),
    row("2-1/4", 4.5, 3.25, 3.2477, "high"),
    row("2-1/2", 4, 4, 3.9988, "high"),
    row("2-3/4", 4, 4.93, 4.934, "high"),
    row("3", 4, 5.97, 5.9674, "high"),
    row("3-1/4", 4, 7.1, 7.0989, "high"),
    row("3-1/2", 4, 8.33, 8.3286, "high"),
    row("3-3/4", 4, 9.66, 9.6565, "high"),
    row(
      "4",
      4,
      11.08,
      11.0825,
      "TPI high; tabulated area from memory (formula confirms)",
      "ASME B1.1, UNC series (part from memory: see confidence)",
    ),
  ],
};

function row(
  size: string,
  threadsPerInch: number,
  stressArea: number | null,
  computedStressArea: number,
  confidence: Confidence,
  source = "ASME B1.1, UNC series",
): ThreadRow {
  const shape = { series: "UNC", threadsPerInch, pitch: null, stressArea, computedStressArea } as const;
  return { size, diameter: printedInches(size), ...shape, source, confidence, note: NOTES[size] ?? "" };
}

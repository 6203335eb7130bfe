/** ASME B1.1, 8-thread series (8UN). Threads per inch; tensile stress areas in square inches, tabulated and computed. */
import type { Confidence, StandardTable, ThreadRow } from "../model.js";
import { printedInches } from "../sizes.js";

/** Size, threads per inch, tabulated stress area (null: none), computed stress area, confidence. */
export const eightUnThreads: StandardTable<ThreadRow> = {
  edition: "ASME B1.1",
  clause: "8UN series",
  rows: [
    row("1", 8, 0.606, 0.6057, "medium-high"),
    row("1-1/8", 8, 0.79, 0.7905, "medium-high"),
    row("1-1/4", 8, 1, 0.9997, "medium-high"),
    row("1-3/8", 8, 1.233, 1.2335, "medium-high"),
    row("1-1/2", 8, 1.492, 1.4918, "medium-high"),
    row("1-5/8", 8, 1.78, 1.7747, "medium-high"),
    row("1-3/4", 8, 2.08, 2.0822, "medium-high"),
    row("1-7/8", 8, 2.41, 2.4141, "medium-high"),
    row("2", 8, 2.77, 2.7706, "medium-high"),
    row("2-1/4", 8, 3.56, 3.5573, "medium-high"),
    row("2-1/2", 8, 4.44, 4.4421, "medium-high"),
    row("2-3/4", 8, 5.43, 5.4251, "medium-high"),
    row("3", 8, 6.51, 6.5063, "medium-high"),
    row("3-1/4", 8, null, 7.6857, "computed"),
    row("3-1/2", 8, null, 8.9632, "computed"),
    row("3-3/4", 8, null, 10.3389, "computed"),
    row("4", 8, null, 11.8128, "computed"),
  ],
};

function row(
  size: string,
  threadsPerInch: number,
  stressArea: number | null,
  computedStressArea: number,
  confidence: Confidence,
  source = "ASME B1.1, 8UN series",
): ThreadRow {
  const shape = { series: "8UN", threadsPerInch, pitch: null, stressArea, computedStressArea } as const;
  return { size, diameter: printedInches(size), ...shape, source, confidence, note: "" };
}

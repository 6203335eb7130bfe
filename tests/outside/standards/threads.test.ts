import { describe, expect, it } from "vitest";
import { eightUnThreads } from "../../../src/standards/asme-b1-1/eight-un.js";
import { uncThreads } from "../../../src/standards/asme-b1-1/unc.js";
import type { ThreadRow } from "../../../src/standards/index.js";
import { metricThreads } from "../../../src/standards/iso-261/coarse-threads.js";

/** ASME B1.1, Appendix B: tensile stress area = 0.7854 (D - 0.9743 / n)^2, in square inches. */
function inchArea({ diameter, threadsPerInch }: ThreadRow): number {
  return 0.7854 * (diameter / 25_400_000 - 0.9743 / (threadsPerInch ?? Number.NaN)) ** 2;
}

/** ISO 898-1: nominal stress area = pi / 4 (d - 0.9382 P)^2, in mm2. */
function metricArea({ diameter, pitch }: ThreadRow): number {
  return (Math.PI / 4) * (diameter / 1e6 - (0.9382 * (pitch ?? Number.NaN)) / 1e6) ** 2;
}

/** Handbooks round to three figures: half a unit of the third figure is at most 0.5 %. The largest here is 0.38 % (M14). */
const ROUNDING = 0.004;

describe.each([
  ["UNC", uncThreads.rows, inchArea, 24],
  ["8UN", eightUnThreads.rows, inchArea, 17],
  ["metric coarse", metricThreads.rows, metricArea, 28],
] as const)("stress areas of %s threads by the formula of the standard", (_name, rows, area, count) => {
  it("holds every row of the table", () => expect(rows.length).toBe(count));

  it.each(rows)("$size", (row) => {
    expect(Math.abs(row.computedStressArea / area(row) - 1)).toBeLessThan(0.002);
    if (row.stressArea !== null) expect(Math.abs(row.stressArea / area(row) - 1)).toBeLessThan(ROUNDING);
  });
});

it("coarse pitches are those of ISO 262 (a second list, typed from memory)", () => {
  const pitches: Readonly<Record<string, number>> = {
    M10: 1.5,
    M12: 1.75,
    M14: 2,
    M16: 2,
    M18: 2.5,
    M20: 2.5,
    M22: 2.5,
    M24: 3,
    M27: 3,
    M30: 3.5,
    M33: 3.5,
    M36: 4,
    M39: 4,
    M42: 4.5,
    M45: 4.5,
    M48: 5,
    M52: 5,
    M56: 5.5,
    M60: 5.5,
    M64: 6,
  };
  const listed = metricThreads.rows.filter((row) => row.diameter <= 64_000_000);
  expect(Object.fromEntries(listed.map((row) => [row.size, (row.pitch ?? 0) / 1e6]))).toEqual(pitches);
});

it("UNC threads per inch are those of ASME B1.1 (a second list, typed from memory)", () => {
  const perInch = [20, 18, 16, 14, 13, 12, 11, 10, 9, 8, 7, 7, 6, 6, 5, 4.5, 4.5, 4, 4, 4, 4, 4, 4, 4];
  expect(uncThreads.rows.map((row) => row.threadsPerInch)).toEqual(perInch);
});

it("areas known from steel handbooks: 1 in UNC 0.606 in2, 1-1/4 in 0.969 in2, M24 353 mm2, M30 561 mm2 (from memory)", () => {
  const at = (rows: readonly ThreadRow[], size: string) => rows.find((row) => row.size === size)?.stressArea;
  expect([at(uncThreads.rows, "1"), at(uncThreads.rows, "1-1/4")]).toEqual([0.606, 0.969]);
  expect([at(metricThreads.rows, "M24"), at(metricThreads.rows, "M30")]).toEqual([353, 561]);
});

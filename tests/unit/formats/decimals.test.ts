/** Figures of drawings, held against the engine's own way to write the nearest thousandth. */
import { describe, expect, it } from "vitest";
import { decimals } from "../../../src/formats/decimals.js";

function written(value: number): string {
  return String(Math.round(value * 1000) / 1000 || 0);
}

describe("a figure of a drawing", () => {
  it.each([
    0, -0, 0.0004, -0.0004, 0.0005, -0.0006, 0.1, -0.1, 1, 1.05, 9.999, 9.9996, -12.345, 279.4, 1189, -100000.25,
  ])("%d", (value) => {
    expect(decimals(value)).toBe(written(value));
  });

  it("of every thousandth of a millimetre to either side", () => {
    for (let i = -2000; i <= 2000; i += 1) expect(decimals(i / 1000)).toBe(written(i / 1000));
  });
});

/** QR codes as pieces: modules as the library gives them, in runs that cover each other's seams, in a quiet zone, none too small. */
import { encode } from "uqr";
import { describe, expect, it } from "vitest";
import { LEAST_MODULE, qrCode, scannable } from "../../../src/sheets/qr.js";
import type { SceneItem } from "../../../src/sheets/scene.js";

const fillsOf = (item: SceneItem) =>
  item.kind === "group" ? item.items.flatMap((each) => (each.kind === "fill" ? [each.points] : [])) : [];

const TEXTS = ["JOB 24-118 / T1 / REV B / SHEET 24-118-T1 / SHA 1a2b3c4d5e6f", "x", "long ".repeat(20)];

describe("a QR code", () => {
  it.each(TEXTS)("of %s covers its dark modules and no light one", (text) => {
    const code = qrCode(text, 30);
    const { module, side } = code;
    const { data, size } = encode(scannable(text), { ecc: "M", border: 0 });
    const bars = fillsOf(code.draw(10, 200));
    const isCovered = (x: number, y: number) =>
      bars.some((points) => {
        const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
        return Math.min(...xs) <= x && x <= Math.max(...xs) && Math.min(...ys) <= y && y <= Math.max(...ys);
      });
    for (let row = -4; row < size + 4; row++)
      for (let column = -4; column < size + 4; column++) {
        const [x, y] = [10 + (column + 4.5) * module, 200 - (row + 4.5) * module];
        expect(isCovered(x, y)).toBe(data[row]?.[column] === true);
      }
    expect(side).toBeCloseTo((size + 8) * module, 9);
    expect(module).toBeGreaterThanOrEqual(LEAST_MODULE);
  });

  it("has no seam between modules that touch along a side", () => {
    const code = qrCode(TEXTS[0] ?? "", 30);
    const { data, size } = encode(TEXTS[0] ?? "", { ecc: "M", border: 0 });
    const bars = fillsOf(code.draw(0, 0));
    const { module } = code;
    const covers = (x: number, y: number) =>
      bars.some((points) => {
        const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
        const [dx, dy] = [0.01, 0.01];
        return (
          Math.min(...xs) < x - dx && x + dx < Math.max(...xs) && Math.min(...ys) < y - dy && y + dy < Math.max(...ys)
        );
      });
    for (let row = 0; row < size; row++)
      for (let column = 0; column < size; column++) {
        if (data[row]?.[column] !== true) continue;
        if (data[row]?.[column + 1] === true) expect(covers((column + 5) * module, -(row + 4.5) * module)).toBe(true);
        if (data[row + 1]?.[column] === true) expect(covers((column + 4.5) * module, -(row + 5) * module)).toBe(true);
      }
  });

  it("grows where its text asks for it, so that no module is less than the least", () => {
    expect(qrCode("long ".repeat(60), 20).side).toBeGreaterThan(20);
    expect(qrCode("long ".repeat(60), 20).module).toBe(LEAST_MODULE);
  });

  it.each([
    ["24-118 Bülach", "24-118 Bulach"],
    ["Łódź 7", "u141odz 7"],
    ["job\n  two", "job two"],
    ["№4", "No4"],
  ])("says %s in letters that every reader takes alike", (text, said) => {
    expect(scannable(text)).toBe(said);
  });
});

/** Which rows of a long table are drawn and asked for, and where keys lead. */
import { describe, expect, it } from "vitest";
import { rowAfter, rowsInSight, rowsToAsk, topFor } from "../../../src/web/ledger/window.js";

const TOTAL = 60_000;

describe("a table of 60,000 rows", () => {
  it.each([0, 1, 35, 36, 1_000_000, TOTAL * 36 - 400, TOTAL * 36])(
    "draws what is in sight at %d and little more",
    (top) => {
      const { from, count } = rowsInSight({ top, height: 400 }, 36, TOTAL);
      const [first, last] = [Math.floor(top / 36), Math.min(TOTAL, Math.ceil((top + 400) / 36))];
      expect(from).toBeLessThanOrEqual(first);
      expect(from + count).toBeGreaterThanOrEqual(last);
      expect(from + count).toBeLessThanOrEqual(TOTAL);
      expect(count).toBeLessThan(60);
      const asked = rowsToAsk({ from, count });
      expect(asked.from).toBeLessThanOrEqual(from);
      expect(asked.from + asked.count).toBeGreaterThanOrEqual(from + count);
      expect(asked.count).toBeLessThanOrEqual(500);
    },
  );

  it("asks for nothing new where it is scrolled by a line", () => {
    const asks = Array.from({ length: 20 }, (_, i) =>
      rowsToAsk(rowsInSight({ top: 36 * (200 + i), height: 400 }, 36, TOTAL)),
    );
    expect(new Set(asks.map((ask) => JSON.stringify(ask))).size).toBeLessThan(4);
  });

  it.each([
    ["ArrowDown", 5, 6],
    ["ArrowUp", 0, 0],
    ["PageDown", 5, 14],
    ["PageUp", 5, 0],
    ["Home", 5, 0],
    ["End", 5, TOTAL - 1],
    ["PageDown", TOTAL - 3, TOTAL - 1],
    ["a", 5, null],
    ["constructor", 5, null],
  ])("%s leads from row %d to %s", (key, from, to) => {
    expect(rowAfter(key, from, 10, TOTAL)).toBe(to);
  });

  it("scrolls as little as brings a row into sight", () => {
    const sight = { top: 360, height: 360 };
    expect(topFor(12, 36, sight)).toBe(360);
    expect(topFor(3, 36, sight)).toBe(108);
    expect(topFor(25, 36, sight)).toBe(576);
  });
});

import fc from "fast-check";
import { expect, it } from "vitest";
import { startLines } from "../../../src/formats/ascii-writer.js";
import { formatTicks } from "../../../src/formats/cut-file.js";

const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** Fixed decimals by the language's own whole numbers. */
function decimalsOf(ticks: number, decimals: number): string {
  const digits = BigInt(Math.abs(ticks))
    .toString()
    .padStart(decimals + 1, "0");
  const split = digits.length - decimals;
  return `${ticks < 0 ? "-" : ""}${digits.slice(0, split)}.${digits.slice(split)}`;
}

it("writes any number of ticks as its decimals, in bytes as in text", () => {
  fc.assert(
    fc.property(fc.maxSafeInteger(), fc.integer({ min: 1, max: 12 }), (ticks, decimals) => {
      const writer = startLines();
      writer.ticks(ticks, decimals);
      expect(textOf(writer.bytes())).toBe(`${decimalsOf(ticks, decimals)}\r\n`);
      expect(formatTicks(ticks, decimals)).toBe(decimalsOf(ticks, decimals));
    }),
    { numRuns: 2000 },
  );
});

it.each([0, -0, 1, -1, 9, 10, 99_999_999, 100_000_000, -100_000_000, 999_999, 1_000_000])("writes %d", (ticks) => {
  const writer = startLines();
  writer.ticks(ticks, 8);
  expect(textOf(writer.bytes())).toBe(`${decimalsOf(ticks, 8)}\r\n`);
});

it("ends lines with CR LF, and grows past its first room", () => {
  const writer = startLines();
  const text = "0\nLINE\n".repeat(40_000);
  writer.lines(text);
  writer.ticks(5, 1);
  expect(textOf(writer.bytes())).toBe(`${text.replaceAll("\n", "\r\n")}0.5\r\n`);
});

it("hands out a copy: the next file does not change the last", () => {
  const first = startLines();
  first.lines("A\n");
  const bytes = first.bytes();
  const second = startLines();
  second.lines("B\n");
  expect(textOf(bytes)).toBe("A\r\n");
  expect(textOf(second.bytes())).toBe("B\r\n");
});

it("two writers that take turns keep to their own lines, however long", () => {
  const [first, second] = [startLines(), startLines()];
  const both: [string, string] = ["", ""];
  for (let turn = 0; turn < 20_000; turn++) {
    first.lines("A\n");
    second.lines("BB\n");
    second.ticks(turn, 3);
    both[0] += "A\r\n";
    both[1] += `BB\r\n${decimalsOf(turn, 3)}\r\n`;
  }
  expect([textOf(first.bytes()), textOf(second.bytes())]).toEqual(both);
});

it.each([Number.NaN, 0.5, 2 ** 53])("%d is no number of ticks", (ticks) => {
  expect(() => startLines().ticks(ticks, 8)).toThrow(RangeError);
});

it.each(["\t", "ö", "\u0000", "\r\n"])("a letter like %j is never written", (text) => {
  expect(() => startLines().lines(text)).toThrow("letter");
});

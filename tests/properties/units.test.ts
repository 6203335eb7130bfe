import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  formatDecimals,
  formatFeetInches,
  formatInches,
  formatLength,
  formatWithUnit,
  nanometres,
  parseLength,
  roundSymmetric,
} from "../../src/units/index.js";

const TICK = 396_875;
const LIMIT = 100_000_000_000;
const onGrid = fc.integer({ min: -12 * 12 * 64, max: 12 * 12 * 64 }).map((ticks) => nanometres(ticks * TICK));
const onMicrometres = fc.integer({ min: -LIMIT / 1000, max: LIMIT / 1000 }).map((um) => nanometres(um * 1000));
const within90m = fc.integer({ min: -90_000_000_000, max: 90_000_000_000 }).map(nanometres);
const anywhere = fc.integer({ min: -LIMIT, max: LIMIT }).map(nanometres);

describe("parse(format(L)) = L", () => {
  it("for every 1/64 in up to 12 ft, in all three ways of writing inches", () => {
    for (let ticks = -12 * 12 * 64; ticks <= 12 * 12 * 64; ticks++) {
      const length = nanometres(ticks * TICK);
      const read = { ok: true, value: length };
      expect(parseLength(formatLength(length, "in"), "in")).toEqual(read);
      expect(parseLength(formatFeetInches(length, 64), "in")).toEqual(read);
      expect(parseLength(formatInches(length, 64), "in")).toEqual(read);
    }
  });

  it("for 1/64 in lengths with their unit, read in a millimetre job", () => {
    fc.assert(
      fc.property(onGrid, (length) => {
        expect(parseLength(formatWithUnit(length, "in"), "mm")).toEqual({ ok: true, value: length });
        expect(parseLength(formatFeetInches(length, 64), "mm")).toEqual({ ok: true, value: length });
      }),
    );
  });

  it("for every micrometre up to 30 mm", () => {
    for (let um = 0; um <= 30_000; um++) {
      const length = nanometres(um * 1000);
      expect(parseLength(formatLength(length, "mm"), "mm")).toEqual({ ok: true, value: length });
    }
  });

  it("for micrometres up to 100 m", () => {
    fc.assert(
      fc.property(onMicrometres, (length) => {
        expect(parseLength(formatLength(length, "mm"), "mm")).toEqual({ ok: true, value: length });
        expect(parseLength(formatWithUnit(length, "mm"), "in")).toEqual({ ok: true, value: length });
      }),
    );
  });

  it("for every nanometre, with six decimals of a millimetre", () => {
    fc.assert(
      fc.property(anywhere, (length) => {
        expect(parseLength(formatDecimals(length, "mm", 6), "mm")).toEqual({ ok: true, value: length });
      }),
    );
  });
});

describe("rounding in text", () => {
  it("stays within half a unit of the last place, and is odd: f(-L) = -f(L)", () => {
    fc.assert(
      fc.property(anywhere, fc.integer({ min: 0, max: 6 }), (length, places) => {
        const text = formatDecimals(length, "in", places);
        expect(Math.abs(Number(text) - length / 25_400_000)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-9);
        const mirrored = formatDecimals(nanometres(-length), "in", places);
        expect(Number(mirrored)).toBe(-Number(text) || 0);
        expect(text).toMatch(/^(?!-0(\.0*)?$)-?\d+(\.\d+)?$/);
      }),
    );
  });

  it("rounds feet and inches to whole ticks", () => {
    fc.assert(
      fc.property(within90m, fc.constantFrom(1, 2, 4, 8, 16, 32, 64), (length, denominator) => {
        const reading = parseLength(formatFeetInches(length, denominator), "in");
        const tick = 25_400_000 / denominator;
        expect(reading).toEqual({ ok: true, value: roundSymmetric(length / tick) * tick });
      }),
    );
  });
});

describe("parseLength", () => {
  it("reads any decimal exactly, without a float on the way", () => {
    fc.assert(
      fc.property(fc.bigInt(0n, 99_999_999_999n), fc.integer({ min: 0, max: 11 }), (digits, places) => {
        const text = digits.toString().padStart(places + 1, "0");
        const decimal = `${text.slice(0, text.length - places)}.${text.slice(text.length - places)}`;
        const [above, below] = [digits * 1_000_000n, 10n ** BigInt(places)];
        const exact = (2n * above + below) / (2n * below);
        const reading = parseLength(decimal, "mm");
        const refused = above > 100_000_000_000n * below || (exact === 0n && above > 0n);
        expect(reading.ok ? BigInt(reading.value) : "refused").toBe(refused ? "refused" : exact);
      }),
    );
  });

  it("never throws, whatever the text", () => {
    const trade = fc.string({ unit: fc.constantFrom(..."0123456789./-'\" mincftM½′″–,e+"), maxLength: 14 });
    fc.assert(
      fc.property(fc.oneof(trade, fc.string(), fc.string({ unit: "binary" })), (text) => {
        const reading = parseLength(text, "in");
        if (reading.ok) expect(Number.isSafeInteger(reading.value)).toBe(true);
        else expect(reading.message.length).toBeGreaterThan(10);
      }),
      { numRuns: 1500 },
    );
  });
});

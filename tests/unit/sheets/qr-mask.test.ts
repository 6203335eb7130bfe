/** The mask that is chosen, against the library's own choice among all eight. */
import { encode } from "uqr";
import { describe, expect, it } from "vitest";
import { encodeQr } from "../../../src/sheets/qr-mask.js";

const lot = (number: number): string =>
  `JOB 24-${number} REV B LOT R${number % 7} SHEET 24-${number}-R1 SHA ${number * 7919}`;
const TEXTS = [
  "",
  "7",
  "A",
  "x".repeat(180),
  ...Array.from({ length: 40 }, (_, i) => lot(100 + i)),
  ...Array.from({ length: 30 }, (_, i) => "0123456789 ABC-xyz/".slice(i % 11).repeat(1 + i)),
];

describe("the mask of a QR code", () => {
  it.each(TEXTS)("of %j is the one that the library chooses", (text) => {
    const { size, data } = encode(text, { ecc: "M", border: 0 });
    expect(encodeQr(text)).toEqual({ size, data });
  });

  it("is not always the same", () => {
    expect(new Set(TEXTS.map((text) => encode(text, { ecc: "M", border: 0 }).maskPattern)).size).toBeGreaterThan(4);
  });
});

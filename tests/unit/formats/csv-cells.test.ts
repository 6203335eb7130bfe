/** Cells of CSV: what a spreadsheet would run (also by full-width signs, as East Asian keyboards type them), and what a terminal would act on. */
import { describe, expect, it } from "vitest";
import { writeCsvRows } from "../../../src/formats/csv-cells.js";

const cell = (text: string): string => writeCsvRows([[text]]).slice(0, -2);

describe("a cell", () => {
  it.each(["=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20"])("that starts with %s is text", (sign) => {
    expect(cell(`${sign}1+1`)).toBe(`'${sign}1+1`);
    expect(cell(`a${sign}1`)).toBe(`a${sign}1`);
    expect(cell(sign)).toBe(sign);
  });

  it.each([
    ["\u001b[2J", "\\u001b[2J"],
    ["a\u0007\u009b\u007f", "a\\u0007\\u009b\\u007f"],
    ["\u202e=1", "\\u202e=1"],
    ["\u0915\u094d\u200d\u0937", "\u0915\u094d\u200d\u0937"],
    ["a\nb", '"a\nb"'],
    ["a\tb", "a\tb"],
  ])("holds nothing that acts on its reader; breaks, tabs and joiners are its own: %j", (text, expected) => {
    expect(cell(text)).toBe(expected);
  });

  // RFC 4180, 2.6 and 2.7
  it.each([
    ["", ""],
    ["a", "a"],
    ["a b.c", "a b.c"],
    ["a.", "a."],
    ["a ", '"a "'],
    [" a", '" a"'],
    ["a,b", '"a,b"'],
    ['1/2" x 3', '"1/2"" x 3"'],
    ["a\r\n", '"a\r\n"'],
    ["\u00e9t\u00e9", "\u00e9t\u00e9"],
    ["a\u202e1", "a\\u202e1"],
  ])("is in quotes where it has to be, and only there: %j", (text, expected) => {
    expect(cell(text)).toBe(expected);
  });
});

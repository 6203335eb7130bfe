/**
 * Number formats (ECMA-376 part 1, 18.8.30 and 18.8.31, and the codes that spreadsheets document with them): what is shown is
 * told by hand from the standard's own rules for sections, literals, placeholders and percent signs.
 */
import { describe, expect, it } from "vitest";
import { builtInFormat, faultOfText, showNumber } from "../../../src/readers/number-format.js";

const shown = (value: number, code: string): unknown => {
  const read = showNumber(value, String(value), code);
  if (read.kind === "number") return read.rounded === null ? read.text : [read.text, read.rounded];
  return read.kind === "date" ? "a date" : { how: read.how };
};

describe("a number is read as it is held where it is shown as a number", () => {
  it.each([
    [12, "General"],
    [12.5, "0.00"],
    [1234.5, "#,##0.00"],
    [12, "#,##0.00_);(#,##0.00)"],
    [-3, "#,##0.00_);(#,##0.00)"],
    [-3, "0.00;[Red]0.00"],
    [-3, "0.00"],
    [0, '0.00;-0.00;"-"0'],
    [0.00001, "0.00E+00"],
    [12, "@"],
    [12, "[Blue]0"],
    [12, "_-* #,##0_-"],
  ])("%d under %s", (value, code) => {
    expect(shown(value, code)).toBe(String(value));
  });
});

describe("a fraction is read as it is shown", () => {
  it.each([
    [1.25, "# ?/?", "1 1/4"],
    [1.4375, "# ??/??", "1 7/16"],
    [1.5, "# ?/16", "1 8/16"],
    [0.75, "# ?/?", "3/4"],
    [-1.25, "# ?/?", "-1 1/4"],
    [12, "# ?/?", "12"],
    [0, "# ?/?", "0"],
    [1.25, '# ?/?\\"', '1 1/4"'],
    [1.25, '# ?/?" in"', "1 1/4 in"],
    [1.25, "?/?", "1 1/4"],
  ])("%d under %s", (value, code, text) => {
    expect(shown(value, code)).toBe(text);
  });
});

describe("a unit that a format adds is read", () => {
  it.each([
    [254, '0.00" mm"', "254.00 mm"],
    [254, '0.0 "mm"', "254.0 mm"],
    [254.5, '0.##" mm"', "254.5 mm"],
    [1234.5, '#,##0.00" mm"', "1234.50 mm"],
    [3.5, "0.00\\'", "3.50'"],
    [3.5, '0.0" M"', { how: expect.stringContaining("shows") }],
    [12.5, 'General" mm"', "12.5 mm"],
    [254, "0\\ \\m\\m", "254 mm"],
    [12, '0.0"cm"', "12.0 cm"],
    [12, '0" in."', "12 in."],
    [12, '0\\"', '12"'],
    [6, "0'", "6'"],
    [6, '0.00" ft";-0.00" ft"', "6.00 ft"],
    [-6, '0.00" ft";-0.00" ft"', "-6.00 ft"],
    [45, "0\u00b0", "45\u00b0"],
    [7, "000", "007"],
  ])("%d under %s", (value, code, text) => {
    expect(shown(value, code)).toEqual(text);
  });

  it("is part of what is told where fewer decimals are shown than are held", () => {
    expect(shown(254.04, '0.0" mm"')).toEqual(["254.04 mm", "254.0 mm"]);
    expect(shown(1.43, '# ?/16\\"')).toEqual(['1.43"', '1 7/16"']);
  });
});

describe("what is shown otherwise than as the number is told", () => {
  it.each([
    [0.12, "0%", "as a percentage"],
    [12, "0.00%", "as a percentage"],
    [12, '0" pcs"', 'shows "0 pcs"'],
    [12, '"B"0', 'shows "B0"'],
    [12, '"$"#,##0', 'shows "$0"'],
    [12, "[$\u20ac-407] 0", "shows"],
    [12_000, "0.0,", "in thousands"],
    [12, ";;;", "shows no number"],
    [12, '"hidden"', "shows no number"],
    [-12, "0.00;0.00", "hides the minus sign"],
    [106, "0'-00\\\"", "between the digits"],
    [5_551_234, "000-0000", "between the digits"],
    [12, '[<20]0" mm";0" in"', "by a condition"],
  ])("%d under %s", (value, code, how) => {
    expect(shown(value, code)).toEqual({ how: expect.stringContaining(how) });
  });

  it("less exactly than it is held", () => {
    expect(shown(12.4, "0")).toEqual(["12.4", "12"]);
    expect(shown(9.2437, "0.00")).toEqual(["9.2437", "9.24"]);
    expect(shown(1.4375, "# ?/?")).toEqual(["1.4375", "1 4/9"]);
    expect(shown(1.43, "# ?/16")).toEqual(["1.43", "1 7/16"]);
    expect(shown(-0.3, "# ?/4")).toEqual(["-0.3", "-1/4"]);
  });

  it("as a date", () => {
    for (const code of ["m/d/yyyy", "d-mmm", "h:mm AM/PM", "[h]:mm", "yyyy;@", "[$-409]mmm\\ d;@"])
      expect(shown(46_085, code)).toBe("a date");
    expect([14, 22, 47].map((id) => shown(46_085, builtInFormat(id)))).toEqual(["a date", "a date", "a date"]);
  });

  it("and so is a text that is shown otherwise", () => {
    expect(["@", "General", "0.00", "0.00;-0.00;0;@"].map(faultOfText)).toEqual([null, null, null, null]);
    expect(faultOfText('@" mm"')).toContain("more than the text");
    expect(faultOfText("0;0;0;")).toContain("no text");
  });
});

it("answers any code, however long", () => {
  for (const code of ["0.".padEnd(400, "0"), '"', "[", "\\", "[<", ";".repeat(300), "?".repeat(300), "#/".repeat(100)])
    expect(["number", "date", "otherwise"]).toContain(showNumber(1.5, "1.5", code).kind);
});

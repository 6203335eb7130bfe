import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { printable, shorten, textWidth, wrap, wrapAtMost } from "../../../src/sheets/text-metrics.js";

const words = fc.array(fc.string({ minLength: 1, maxLength: 40 }), { maxLength: 12 }).map((parts) => parts.join(" "));

describe("wrap", () => {
  it("keeps every character and every line within its width", () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 12, max: 90 }), (text, width) => {
        const lines = wrap(text, width, 2.5);
        for (const line of lines) if ([...line].length > 1) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(width);
        expect(lines.join("").replace(/ /g, "")).toBe(printable(text).replace(/ /g, ""));
      }),
    );
  });

  it("stops after so many lines with an ellipsis", () => {
    const lines = wrapAtMost("one two three four five six seven eight", 20, 2.5, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]?.endsWith("…")).toBe(true);
  });
});

describe("shorten", () => {
  it("fits, and leaves alone what fits", () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 8, max: 200 }), (text, width) => {
        const short = shorten(text, width, 2.5);
        expect(textWidth(short, 2.5)).toBeLessThanOrEqual(width);
        if (textWidth(text, 2.5) <= width) expect(short).toBe(text);
      }),
    );
  });
});

describe("printable", () => {
  it("makes one line of anything", () => {
    expect(printable(" Hall\n2\t\u0000 east\u2028wing ")).toBe("Hall 2 east wing");
  });
});

/** Signs that a terminal acts on, or that hide or reorder what stands around them (Unicode general categories; ECMA-48). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import {
  joinPrintable,
  printable,
  printableJson,
  readable,
  terminalJson,
  terminalLine,
  terminalText,
} from "../../../src/diagnostics/printable.js";

const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;

describe("printable", () => {
  it.each([
    ["escape", "a\u001b[2Jb", "a\\u001b[2Jb"],
    ["null, bell, backspace", "\u0000\u0007\u0008", "\\u0000\\u0007\\u0008"],
    ["breaks and tabs", "a\nb\rc\td", "a\\u000ab\\u000dc\\u0009d"],
    ["DEL", "\u007f", "\\u007f"],
    ["C1: a control sequence introducer of one byte", "\u009b31m", "\\u009b31m"],
    ["right-to-left override, isolates", "\u202e\u2066\u2069\u061c", "\\u202e\\u2066\\u2069\\u061c"],
    ["zero width", "B1\u200b\ufeff", "B1\\u200b\\ufeff"],
    ["line and paragraph separators", "\u2028\u2029", "\\u2028\\u2029"],
    ["a tag above U+FFFF", "\u{e0041}", "\\u{e0041}"],
    ["half a sign", "\ud800", "\\ud800"],
    ["what can be seen stays", 'Ø 1-1/4" é 漢 🔩 \\u001b', 'Ø 1-1/4" é 漢 🔩 \\u001b'],
  ])("%s", (_, text, expected) => {
    expect(printable(text)).toBe(expected);
    expect(printable(printable(text))).toBe(expected);
  });

  it("leaves nothing unseen in any text", () => {
    fc.assert(fc.property(fc.string({ unit: "binary" }), (text) => !UNSEEN.test(printable(text))));
  });
});

describe("readable", () => {
  it.each([
    ["a\tb\r\nc", "a\tb\r\nc"],
    ["\u0915\u094d\u200d\u0937", "\u0915\u094d\u200d\u0937"],
    ["\u001b[2J\u009b\u007f\u0000", "\\u001b[2J\\u009b\\u007f\\u0000"],
    ["\u202e\u2067\u200f\u2028", "\\u202e\\u2067\\u200f\\u2028"],
    ["\ud800\uffff", "\\ud800\\uffff"],
  ])("%j", (text, expected) => {
    expect(readable(text)).toBe(expected);
    expect(readable(readable(text))).toBe(expected);
  });
});

describe("terminalText", () => {
  it("gives its function nothing unseen, however deep it lies", () => {
    const seen: string[] = [];
    const look = (value: unknown): void => {
      if (typeof value === "string") seen.push(value);
      else if (value instanceof Map) for (const [key, part] of value) [key, part].forEach(look);
      else if (value instanceof Set) [...value].forEach(look);
      else if (typeof value === "object" && value !== null)
        for (const each of Object.entries(value)) each.forEach(look);
    };
    const write = terminalText((value: unknown, other: string): string => {
      look(value);
      look(other);
      return "own\n\u001b[1mstyle\u001b[0m";
    });
    fc.assert(
      fc.property(
        fc.anything({ withMap: true, withSet: true, withNullPrototype: true }),
        fc.string(),
        (value, other) => {
          seen.length = 0;
          write({ deep: [value, { "\u001bkey": "\u202e" }] }, other);
          return seen.length > 2 && seen.every((text) => !UNSEEN.test(text));
        },
      ),
    );
    expect(write(0, "")).toBe("own\n\u001b[1mstyle\u001b[0m");
  });

  it("hands over the value itself where nothing is to be escaped, numbers, bytes and functions as they are", () => {
    const clean = { list: ["a", { b: 1 }], bytes: new Uint8Array([27]), none: null, act: () => 1 };
    const given: unknown[] = [];
    terminalText((value: unknown): string => {
      given.push(value);
      return "";
    })(clean);
    expect(given[0]).toBe(clean);
  });

  it("copies what it escapes: the caller's data stay as they were", () => {
    const data = { name: "\u001b", list: ["x", "\u0007"] };
    const write = terminalText((value: typeof data): string => JSON.stringify(value));
    expect(write(data)).toBe(JSON.stringify({ name: "\\u001b", list: ["x", "\\u0007"] }));
    expect(data).toEqual({ name: "\u001b", list: ["x", "\u0007"] });
  });
});

describe("texts for a terminal", () => {
  it("keep what stands in a template and escape what is put in", () => {
    expect(terminalLine`a\n${"b\nc"} ${1}\n`).toBe("a\nb\\u000ac 1\n");
    expect(joinPrintable([terminalLine`a`, terminalLine`b`], "\n")).toBe("a\nb");
  });

  it("of a finding hold nothing unseen in any part of it", () => {
    const at = { file: "a\u001b.yaml", line: 1, column: 2, path: "k\u202e" };
    const finding = { code: "x", severity: "error", at, message: "m\n", hint: "h\u009b" } as const;
    expect(formatFinding(finding)).toBe("a\\u001b.yaml:1:2 k\\u202e: m\\u000a (h\\u009b)");
  });

  it("in machine form say the same, and hold nothing unseen but breaks between values", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: "binary" }), fc.string({ unit: "binary" })), (value) => {
        const plain = JSON.stringify(value);
        expect(JSON.stringify(JSON.parse(printableJson(value)))).toBe(plain);
        expect(JSON.stringify(JSON.parse(terminalJson(value)))).toBe(plain);
        return !UNSEEN.test(terminalJson(value).replaceAll("\n", ""));
      }),
    );
  });
});

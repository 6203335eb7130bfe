/** YAML reader: source text kept, places from 1, bounds looked for before parsing. */
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatFinding } from "../../../src/diagnostics/finding.js";
import type { SourceNode } from "../../../src/readers/source.js";
import { readYaml } from "../../../src/readers/yaml.js";
import { scanTokens } from "../../../src/readers/yaml-depth.js";

/** Values without their places. */
function bare(node: SourceNode): unknown {
  switch (node.kind) {
    case "scalar":
      return node.text;
    case "list":
      return node.items.map(bare);
    case "map":
      return Object.fromEntries(node.entries.map(({ key, value }) => [key, bare(value)]));
  }
}

function faults(input: string | Uint8Array): string[] {
  return readYaml(input, "job.yaml").findings.map(formatFinding);
}

function value(input: string | Uint8Array): unknown {
  const reading = readYaml(input, "job.yaml");
  return reading.ok ? bare(reading.value) : faults(input);
}

describe("scalars are read as written", () => {
  it.each([
    ["007", "007"],
    ["1E2", "1E2"],
    ["yes", "yes"],
    ["0x1F", "0x1F"],
    ["1_000", "1_000"],
    ["2026-11-24", "2026-11-24"],
    ["1-1/4", "1-1/4"],
    ["1'-6 1/2\"", "1'-6 1/2\""],
    ['"1-1/4\\""', '1-1/4"'],
    ["'it''s'", "it's"],
    [".5", ".5"],
    ["~", "~"],
  ])("%s", (written, read) => {
    expect(value(`a: ${written}\n`)).toEqual({ a: read });
  });

  it("remembers line, column and style", () => {
    const reading = readYaml('a:\n  - 1\n  - "2"\n', "job.yaml");
    const list = reading.ok && reading.value.kind === "map" ? reading.value.entries[0]?.value : undefined;
    expect(list).toMatchObject({
      items: [
        { style: "plain", place: { file: "job.yaml", line: 2, column: 5 } },
        { style: "quoted", place: { file: "job.yaml", line: 3, column: 5 } },
      ],
    });
  });

  it("reads JSON, a byte order mark, CRLF and an alias", () => {
    expect(value('{"a": [1, "x", null, true]}')).toEqual({ a: ["1", "x", "null", "true"] });
    expect(value("\uFEFFa: 1\r\nb: 2\r\n")).toEqual({ a: "1", b: "2" });
    expect(value(new Uint8Array([0xef, 0xbb, 0xbf, 0x61, 0x3a, 0x20, 0x31]))).toEqual({ a: "1" });
    expect(value("a: &rods { d: 1 }\nb: *rods\n")).toEqual({ a: { d: "1" }, b: { d: "1" } });
    expect(value("__proto__: 1\n")).toEqual(JSON.parse('{"__proto__": "1"}'));
  });
});

describe("faults carry line and column", () => {
  it.each([
    ["a key twice", "a: 1\nb: 2\na: 3\n", ["job.yaml:3:1: the key a is given twice"]],
    ["a tab", "a:\n\tb: 1\n", ["job.yaml:2:1: a tab is used to indent; spaces are allowed"]],
    [
      "two documents",
      "a: 1\n---\nb: 2\n",
      ["job.yaml:2:1: a second document starts here; one document a file is allowed"],
    ],
    ["a tag", "a: !size 1\n", ["job.yaml:1:4: a tag (!name) is used; plain values are allowed"]],
    ["an alias of nothing", "a: *b\n", ["job.yaml:1:4: *b names no anchor before it"]],
    ["an alias of itself", "a: &a [*a]\n", ["job.yaml:1:8: *a repeats a value that contains it"]],
    ["a key that is a list", "? [1]\n: 2\n", ["job.yaml:1:3: a key that is not a text; plain names are allowed"]],
    ["an open quote", 'a: "x\n', ["job.yaml:2:1: cannot be read as YAML: a text between quotes is not closed"]],
  ])("%s", (_name, text, expected) => {
    expect(faults(text)).toEqual(expected);
  });

  it("tells bytes that are not UTF-8", () => {
    expect(faults(new Uint8Array([97, 58, 32, 10, 98, 58, 32, 0xff, 10]))).toEqual([
      "job.yaml:2:4: a byte that is not UTF-8 text; UTF-8 is allowed (save the file as UTF-8)",
    ]);
    expect(faults(new Uint8Array([0xff, 0xfe, 97, 0]))).toEqual([
      "job.yaml:1:1: the file is UTF-16 text; UTF-8 is allowed (save it as UTF-8)",
    ]);
  });

  it("refuses more than 16 MB", () => {
    expect(faults(" ".repeat(16 * 1024 * 1024 + 1))).toEqual([
      "job.yaml:1:1: the file has 17 MB; at most 16 MB are read",
    ]);
  });
});

describe("nesting is bounded before parsing", () => {
  const levels = 10_000;
  it.each([
    ["flow lists", `a: ${"[".repeat(levels)}${"]".repeat(levels)}`],
    ["flow lists left open", "[".repeat(1_000_000)],
    ["flow maps", "{a: ".repeat(levels)],
    ["dashes", "- ".repeat(levels)],
    ["question marks", "? ".repeat(levels)],
    ["keys on a line", "a: ".repeat(levels)],
    ["indents", Array.from({ length: 3000 }, (_, level) => `${" ".repeat(level)}a:`).join("\n")],
    ["indented dashes", Array.from({ length: 3000 }, (_, level) => `${" ".repeat(level)}-`).join("\n")],
    ["a second document", `a: 1\n---\n${"[".repeat(levels)}`],
  ])("%s", (_name, text) => {
    const started = performance.now();
    expect(readYaml(text, "job.yaml").findings.map(({ code }) => code)).toEqual(["too-deep"]);
    expect(performance.now() - started).toBeLessThan(2000);
  });

  it("passes 64 levels and refuses 65", () => {
    const nested = (depth: number) => `${"[".repeat(depth)}${"]".repeat(depth)}`;
    expect(scanTokens(nested(64)).deep).toBeNull();
    expect(scanTokens(nested(65)).deep).toBe(64);
    const indented = (depth: number) =>
      Array.from({ length: depth }, (_, level) => `${" ".repeat(level)}a:`).join("\n");
    expect(scanTokens(indented(64)).deep).toBeNull();
    expect(scanTokens(indented(65)).deep).not.toBeNull();
  });

  it("does not count brackets that are text", () => {
    const brackets = "[".repeat(100);
    expect(value(`a: "${brackets}"\nb: 'x ${brackets}'\nc: x${brackets} # ${brackets}\n`)).toEqual({
      a: brackets,
      b: `x ${brackets}`,
      c: `x${brackets}`,
    });
  });

  it("does not count rows of a list, or keys beside each other", () => {
    const rows = Array.from({ length: 500 }, (_, row) => `  - a: ${row}\n    b: [1, { c: 2 }]\n`).join("");
    expect(scanTokens(`bases:\n${rows}`).deep).toBeNull();
    expect(scanTokens("- a\n".repeat(500)).deep).toBeNull();
  });

  it("bounds what aliases repeat", () => {
    const names = "abcdefghijkl";
    const row = (name: string, inner: string) => `${name}: &${name} [${Array(9).fill(inner).join(", ")}]`;
    const bomb = [...names].map((name, index) => row(name, index === 0 ? "x" : `*${names[index - 1]}`)).join("\n");
    const started = performance.now();
    expect(faults(bomb)).toEqual([expect.stringContaining("aliases repeat over 10000 values")]);
    expect(performance.now() - started).toBeLessThan(2000);
  });
});

describe("any input", () => {
  it("is read or refused, never thrown at", () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom(..."ab:-?[]{},&*!|>'\"#%@` \n\t01~"), maxLength: 80 }),
    );
    fc.assert(
      fc.property(text, (input) => typeof readYaml(input, "job.yaml").ok === "boolean"),
      { numRuns: 2000 },
    );
    fc.assert(fc.property(fc.uint8Array(), (input) => typeof readYaml(input, "job.yaml").ok === "boolean"));
  });

  it("reads back what JSON writes", () => {
    const json = fc.letrec((tie) => ({
      value: fc.oneof(
        { depthSize: "small" },
        fc.string(),
        fc.array(tie("value")),
        fc.dictionary(fc.string(), tie("value")),
      ),
    })).value;
    fc.assert(
      fc.property(json, (written) => {
        expect(value(JSON.stringify({ written }))).toEqual(JSON.parse(JSON.stringify({ written })));
      }),
      { numRuns: 200 },
    );
  });
});

describe("a long list, read item by item,", () => {
  /** As a whole: an anchor keeps the reader from taking the list apart. */
  const asWhole = (text: string) => readYaml(`${text}\nzz: &whole 1\n`, "job.yaml");
  const item = fc.constantFrom(
    "mark: B1\n    rods: { d: 1-1/4, at: [1, 2] }",
    "mark: 007   # comment\n    # another\n    a: 'it''s'",
    "a:\n      - 1\n      - b: 2\n        c: 3\n    d:\n    - 4",
    "note: |\n      - two\n      lines\n    b: >-\n      folded\n\n      text",
    "a: plain text\n      that goes on\n    b:\n      c: { d: [\n        1, 2 ] }",
    "\n    a: 1\n\n    b: 2",
    "a:\r\n      b: 1",
    '"a": "- x\n      - y"',
    "just a text",
    "[1, 2]",
    "",
    "a: 1\n    a: 2",
    "a: 1\n   b: 2",
    "a: [1",
  );
  const tails = fc.constantFrom("", "\n", "\n# end\n", "\nafter: { x: 1 }\nmore:\n  - a: 1", "\n\n  # c\nafter: 1");

  it("is what it is as a whole, places included", () => {
    const usual = fc.nat(5);
    const lists = fc.tuple(
      fc.array(fc.tuple(usual, item), { minLength: 1, maxLength: 3 }),
      tails,
      fc.constantFrom("  ", ""),
    );
    fc.assert(
      fc.property(lists, ([special, tail, indent]) => {
        const items = Array.from({ length: 120 }, (_, index) => `mark: B${index}\n    x: ${index}`);
        for (const [at, text] of special) items.splice(at * 20 + 3, 0, text);
        const list = items.map((text) => `  - ${text}`.replace(/^ {2}/gm, indent)).join("\n");
        const text = `head: 1\nbases:\n${list}${tail}`;
        const [pieces, whole] = [readYaml(text, "job.yaml"), asWhole(text)];
        expect(pieces.ok).toBe(whole.ok);
        if (!whole.ok || whole.value.kind !== "map") return;
        const entries = whole.value.entries.filter(({ key }) => key !== "zz");
        const expected = { ...whole, value: { ...whole.value, entries } };
        // hundreds of nodes: the platform compares them faster; the test's own comparison tells what differs
        if (!isDeepStrictEqual(pieces, expected)) expect(pieces).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });
});

describe("bounds on how much there is to parse", () => {
  const told = (text: string): unknown => {
    const read = readYaml(text, "a.yaml");
    return read.ok ? "read" : read.findings.map(({ code, message }) => [code, message]);
  };
  const items = (count: number): string => `bases:\n${"  - { mark: B, x: 1 }\n".repeat(count)}`;

  it("refuse a list in brackets that is parsed at once, before it is parsed", () => {
    const most = "keys, values, indents and line ends outside a plain list of bases; at most 500000 are read";
    expect(told(`a: [${"1,".repeat(100_000)}1]`)).toBe("read");
    expect(told(`a: [${"1,".repeat(200_000)}1]`)).toEqual([
      ["too-many-values", `the file has more than 500000 ${most}`],
    ]);
    expect(told(`a: 1${"\n".repeat(600_000)}`)).toEqual([["too-many-values", expect.stringContaining("500000")]]);
  });

  it("let a list of bases have more, since it is read base by base; not where one of them has all of it", () => {
    expect(told(items(30_000))).toBe("read");
    const oneLarge = `${items(200)}  - { mark: C, x: [${"1,".repeat(200_000)}1] }\n`;
    expect(told(oneLarge)).toEqual([["too-many-values", expect.stringContaining("500000")]]);
  });
});

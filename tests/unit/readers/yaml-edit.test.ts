/**
 * Changes of a YAML text: what comes out is read by the `yaml` library, whose reading is held against the change. Documents
 * are drawn: groups and lists in lines and in brackets, comments, quotes, texts over lines, line ends of either kind.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { KeyEdit, KeyPath } from "../../../src/readers/yaml-edit.js";
import { inverse, scalarText, spliced, spliceOf } from "../../../src/readers/yaml-edit.js";
import { startPieceReader } from "../../../src/readers/yaml-pieces.js";

const set = (path: KeyPath, text: string): KeyEdit => ({ kind: "set", path, text });

function after(text: string, edit: KeyEdit): string {
  const splice = spliceOf(text, edit);
  if (splice === null) throw new Error(`no place in ${JSON.stringify(text)}`);
  expect(spliced(spliced(text, splice), inverse(splice))).toBe(text);
  return spliced(text, splice);
}

describe("a change of a text", () => {
  it.each<readonly [string, string, KeyEdit, string]>([
    ["a value before a comment", "a: 1 # one\nb: 2\n", set(["a"], "13-1/2"), "a: 13-1/2 # one\nb: 2\n"],
    ["a value that is not there", "a: # none\nb: 2\n", set(["a"], "1"), "a: 1 # none\nb: 2\n"],
    ["a value written as nothing", "a: ~\n", set(["a", "b"], "1"), "a: { b: 1 }\n"],
    ["a key of a group in braces", "a: { b: 1 } # c\n", set(["a", "c"], "2"), "a: { b: 1, c: 2 } # c\n"],
    ["a key of a group over lines", "a: {\n  b: 1 # one\n}\n", set(["a", "c"], "2"), "a: {\n  b: 1, c: 2 # one\n}\n"],
    ["a key of a group in lines", "a:\n  b: 1 # one\nc: 3\n", set(["a", "d"], "2"), "a:\n  b: 1 # one\n  d: 2\nc: 3\n"],
    ["a text in lines", "a: | # as sent\n  one\n  two\nb: 2\n", set(["a"], "three"), "a: three # as sent\nb: 2\n"],
    [
      "a key below a text in lines",
      "a:\n  b: |\n    one\nc: 3\n",
      set(["a", "d"], "2"),
      "a:\n  b: |\n    one\n  d: 2\nc: 3\n",
    ],
    ["a quoted value stays quoted", 'a: "24-118"\n', set(["a"], "24-119"), 'a: "24-119"\n'],
    ["a quoted key", '"a b": 1\n', set(["a b"], "2"), '"a b": 2\n'],
    ["a text that would be a group", "a: 1\n", set(["a"], "b: c # d"), 'a: "b: c # d"\n'],
    ["an item of a list in brackets", "a: [0, 4, 8]\n", set(["a", 1], "5"), "a: [0, 5, 8]\n"],
    ["one more item in brackets", "a: [0, 4]\n", set(["a", 2], "8"), "a: [0, 4, 8]\n"],
    ["an item of a list in lines", "a:\n  - 0\n  - 4 # four\n", set(["a", 1], "5"), "a:\n  - 0\n  - 5 # four\n"],
    ["one more item in lines", "a:\n- 0\n", set(["a", 1], "5"), "a:\n- 0\n- 5\n"],
    ["line ends of two signs", "a:\r\n  b: 1\r\nc: 3\r\n", set(["a", "d"], "2"), "a:\r\n  b: 1\r\n  d: 2\r\nc: 3\r\n"],
    ["no line end at the end", "a:\n  b: 1", set(["a", "d"], "2"), "a:\n  b: 1\n  d: 2\n"],
    ["a text that says nothing", "", set(["job", "number"], "1"), "job: { number: 1 }\n"],
    ["remarks alone", "# mine\n", set(["units"], "mm"), "# mine\nunits: mm\n"],
    ["a byte order mark", "\uFEFFa: 1\n", set(["a"], "2"), "\uFEFFa: 2\n"],
    ["JSON stays JSON", '{"a": {"b": 1}}', set(["a", "c"], "2"), '{"a": {"b": 1, "c": "2"}}'],
    [
      "a key before the bases",
      "units: in\n\n# bases\nbases:\n  - mark: B1\n",
      set(["sheet"], "A3"),
      "units: in\nsheet: A3\n\n# bases\nbases:\n  - mark: B1\n",
    ],
    ["a list for a value", "a: 1\n", { kind: "set", path: ["a"], text: "[1, 2]", flow: true }, "a: [1, 2]\n"],
    ["a key taken out", "a: 1\nb: 2 # two\nc: 3\n", { kind: "remove", path: ["b"] }, "a: 1\nc: 3\n"],
    ["the key behind a dash", "- a: 1\n  b: 2\n", { kind: "remove", path: [0, "a"] }, "- b: 2\n"],
    ["the only key", "a:\n  b: 1\nc: 3\n", { kind: "remove", path: ["a", "b"] }, "a:\n  {}\nc: 3\n"],
    [
      "an item taken out",
      "a:\n  - b: 1\n    # of b\n  # of c\n  - c: 2\n",
      { kind: "remove", path: ["a", 0] },
      "a:\n  # of c\n  - c: 2\n",
    ],
    ["the only item", "a: # list\n  - b: 1\nc: 3\n", { kind: "remove", path: ["a", 0] }, "a: [] # list\nc: 3\n"],
    [
      "the first item of a list",
      "a: [] # none yet\nc: 3\n",
      { kind: "insert", path: ["a"], index: 0, lines: "b: 1\nd: 2" },
      "a: # none yet\n  - b: 1\n    d: 2\nc: 3\n",
    ],
    [
      "an item between",
      "a:\n  - 1\n  # two\n  - 2\n",
      { kind: "insert", path: ["a"], index: 1, lines: "x" },
      "a:\n  - 1\n  - x\n  # two\n  - 2\n",
    ],
    [
      "an item moved down",
      "a:\n  - 1 # one\n  - 2\n  - 3",
      { kind: "move", path: ["a"], from: 0, to: 2 },
      "a:\n  - 2\n  - 3\n  - 1 # one\n",
    ],
    ["an item moved up in brackets", "a: [1, 2, 3]\n", { kind: "move", path: ["a"], from: 2, to: 0 }, "a: [3, 1, 2]\n"],
    [
      "an item once more",
      "bases:\n  - mark: B1 # first\n    x: { y: 2 }\n  - mark: B3\n",
      { kind: "duplicate", path: ["bases", 0], sets: [{ path: ["mark"], text: "B2" }] },
      "bases:\n  - mark: B1 # first\n    x: { y: 2 }\n  - mark: B2 # first\n    x: { y: 2 }\n  - mark: B3\n",
    ],
    [
      "an item in braces once more",
      "bases: [{ mark: B1 }]\n",
      { kind: "duplicate", path: ["bases", 0], sets: [{ path: ["mark"], text: "B2" }] },
      "bases: [{ mark: B1 }, { mark: B2 }]\n",
    ],
  ])("%s", (_name, text, edit, wanted) => {
    expect(after(text, edit)).toBe(wanted);
  });

  it.each<readonly [string, string, KeyEdit]>([
    ["a text that is no YAML", "a: [1\nb: 2\n", set(["b"], "3")],
    ["below a text", "a: 1\n", set(["a", "b"], "2")],
    ["a value that is named and repeated", "a: &x { b: 1 }\nc: *x\n", set(["a", "b"], "2")],
    ["a value that repeats another", "a: &x { b: 1 }\nc: *x\n", set(["c", "b"], "2")],
    ["beyond the end of a list", "a: [1]\n", set(["a", 4], "2")],
    ["a key given twice", "a: 1\na: 2\n", set(["a"], "3")],
  ])("has no place: %s", (_name, text, edit) => {
    expect(spliceOf(text, edit)).toBeNull();
  });
});

const NASTY = [
  "",
  " ",
  "a: b",
  "# c",
  "- x",
  "[1",
  "{",
  "~",
  "null",
  "'",
  '"',
  "x # y",
  "13-1/2",
  "1'-6\"",
  "é",
  "a\nb",
  "\t",
  "*a",
  "&a",
  "---",
  "yes",
  "@",
  "\u2028",
  "%",
];
const word = fc.oneof(
  fc.constantFrom(...NASTY),
  fc.string({ maxLength: 8 }),
  fc.string({ unit: "grapheme", maxLength: 5 }),
);
const key = fc.constantFrom("mark", "x", "y z", "rods", "at", "1", "a:b");

type Value = string | readonly Value[] | { readonly [key: string]: Value };
const { value } = fc.letrec<{ value: Value }>((tie) => ({
  value: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    word,
    fc.array(tie("value"), { maxLength: 3 }),
    fc.dictionary(key, tie("value"), { maxKeys: 3, noNullPrototype: true }),
  ),
}));

/** Writes values in one of many ways; `draw` chooses. */
function written(of: Value, indent: string, inBrackets: boolean, draw: () => number, eol: string): string {
  const inner = (each: Value) => written(each, `${indent}  `, inBrackets, draw, eol);
  const remark = inBrackets || draw() < 0.7 ? "" : ` # remark ${Math.floor(draw() * 100)}`;
  if (typeof of === "string")
    return inBrackets || !/^[a-z]+$/.test(of) || draw() < 0.8 ? scalarText(of) + remark : `|${eol}${indent}${of}`;
  const isFlow = inBrackets || draw() < 0.4;
  const flow = (each: Value) => written(each, indent, true, draw, eol);
  if (Array.isArray(of)) {
    if (isFlow || of.length === 0) return `[${of.map(flow).join(", ")}]${remark}`;
    return of.map((each) => `${eol}${indent}- ${typeof each === "string" ? inner(each) : flow(each)}`).join("");
  }
  const entries = Object.entries(of as Record<string, Value>);
  if (isFlow || entries.length === 0)
    return `{ ${entries.map(([k, v]) => `${scalarText(k)}: ${flow(v)}`).join(", ")} }${remark}`;
  return entries.map(([k, v]) => `${eol}${indent}${scalarText(k)}: ${inner(v)}`).join("");
}

const read = (text: string): unknown => parse(text, { schema: "failsafe", uniqueKeys: false });

function pathsIn(of: Value, path: KeyPath = []): KeyPath[] {
  if (typeof of === "string") return [path];
  const parts = Array.isArray(of) ? of.map((each, i) => [i, each] as const) : Object.entries(of);
  return [...(path.length > 0 ? [path] : []), ...parts.flatMap(([step, each]) => pathsIn(each, [...path, step]))];
}

function remarksIn(text: string): string[] {
  return (text.match(/ # remark \d+(?=\r?\n|$)/g) ?? []).toSorted();
}

const drawn = fc.record({
  root: fc.dictionary(key, value, { minKeys: 1, maxKeys: 4, noNullPrototype: true }),
  draws: fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
  eol: fc.constantFrom("\n", "\r\n"),
  tail: fc.boolean(),
});

function textOf({ root, draws, eol, tail }: typeof drawn extends fc.Arbitrary<infer T> ? T : never): string {
  const draw = (): number => draws.next().value ?? 0.5;
  const lines = Object.entries(root).map(([k, v]) => `${scalarText(k)}: ${written(v, "  ", false, draw, eol)}`);
  return lines.join(eol) + (tail ? eol : "");
}

describe("a document that is drawn", () => {
  it("reads at the place what was typed, and elsewhere as before; remarks are kept, and the change can be taken back", () => {
    fc.assert(
      fc.property(drawn, word, fc.nat(), (document, typed, pick) => {
        const text = textOf(document);
        const paths = pathsIn(document.root).filter((path) => path.length > 0);
        const path = paths[pick % paths.length] ?? [];
        const splice = spliceOf(text, set(path, typed));
        const isScalar =
          typeof path.reduce<unknown>((node, step) => (node as Record<string, unknown>)[step], document.root) ===
          "string";
        if (splice === null) throw new Error(`no place for ${JSON.stringify(path)} in ${JSON.stringify(text)}`);
        const now = spliced(text, splice);
        expect(valueAt(read(now), path)).toBe(typed);
        expect(without(read(now), path)).toEqual(without(read(text), path));
        if (isScalar) expect(remarksIn(now)).toEqual(remarksIn(text));
        expect(spliced(now, inverse(splice))).toBe(text);
      }),
      { numRuns: 400 },
    );
  });

  it("lacks what was taken out, and nothing else", () => {
    fc.assert(
      fc.property(drawn, fc.nat(), (document, pick) => {
        const text = textOf(document);
        const paths = pathsIn(document.root).filter((path) => path.length > 0);
        const path = paths[pick % paths.length] ?? [];
        const splice = spliceOf(text, { kind: "remove", path });
        if (splice === null) throw new Error(`no place for ${JSON.stringify(path)} in ${JSON.stringify(text)}`);
        expect(read(spliced(text, splice))).toEqual(without(read(text), path));
      }),
      { numRuns: 300 },
    );
  });
});

function valueAt(root: unknown, path: KeyPath): unknown {
  return path.reduce<unknown>((node, step) => (node as Record<string, unknown> | undefined)?.[step], root);
}

function without(root: unknown, path: KeyPath): unknown {
  const copy = structuredClone(root);
  const holder = valueAt(copy, path.slice(0, -1));
  const last = path.at(-1) ?? "";
  if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else if (typeof holder === "object" && holder !== null) delete (holder as Record<string, unknown>)[String(last)];
  return copy;
}

describe("a text in pieces", () => {
  it("gives the change that the whole text gives", () => {
    const text =
      "units: in\nbases:\n  - mark: B1\n    rods: { diameter: 1 }\n  # two\n  - mark: B2\n    note: |\n      x\ngrid: { x: 1 }\n";
    const { pieces } = startPieceReader().read(text, "job.yaml");
    expect(pieces?.starts).toHaveLength(2);
    for (const edit of [
      set(["bases", 1, "note"], "y"),
      set(["bases", 0, "grout"], "1"),
      set(["units"], "mm"),
      set(["bases", 1, "rods", "diameter"], "2"),
    ])
      expect(spliceOf(text, edit, pieces)).toEqual(spliceOf(text, edit));
  });
});

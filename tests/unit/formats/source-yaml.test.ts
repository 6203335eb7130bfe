/** Values written as YAML read back to the same values, and stay as a person would write them. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { writeYamlItems, yamlNode, yamlScalar } from "../../../src/formats/source-yaml.js";
import { toPlain } from "../../../src/job/document.js";
import type { SourceNode } from "../../../src/readers/source.js";
import { readYaml } from "../../../src/readers/yaml.js";
import { SEED } from "../../seed.js";

const place = { file: "a", line: 1, column: 1 };
const scalar = (text: string): SourceNode => ({ kind: "scalar", text, style: "quoted", place });
const list = (...items: SourceNode[]): SourceNode => ({ kind: "list", items, place });
const map = (entries: Record<string, SourceNode>): SourceNode => ({
  kind: "map",
  entries: Object.entries(entries).map(([key, value]) => ({ key, place, value })),
  place,
});

function readBack(text: string): SourceNode {
  const read = readYaml(text, "a");
  if (!read.ok) throw new Error(`${JSON.stringify(read.findings)}\n${text}`);
  return read.value;
}

const base = map({
  mark: scalar("007"),
  quantity: scalar("6"),
  rods: map({ diameter: scalar("1-1/4"), grade: scalar("55"), embedment: scalar(`2'-0"`) }),
  pattern: map({
    kind: scalar("points"),
    at: list(list(scalar("-6"), scalar("5")), list(scalar("6,5"), scalar("1E2"))),
  }),
  note: scalar("Typ. # see 3: SEISMIC"),
});

describe("a base", () => {
  it("is a few lines, groups of keys on one each, and quoted only where YAML would change it", () => {
    expect(`bases:\n${writeYamlItems([base])}`).toBe(`bases:
  - mark: 007
    quantity: 6
    rods: { diameter: 1-1/4, grade: 55, embedment: 2'-0" }
    pattern: { kind: points, at: [ [ -6, 5 ], [ "6,5", 1E2 ] ] }
    note: "Typ. # see 3: SEISMIC"
`);
  });

  it("keeps what looks like nothing, like a number, like yes, or like a sign of YAML", () => {
    for (const text of [
      "",
      "~",
      "null",
      "yes",
      "No",
      "0x1F",
      "1_000",
      "12:30",
      "- a",
      "? b",
      "&c",
      "*d",
      "!e",
      "%f",
      "@g",
      "`h",
      "a: b",
      "[i",
      "{j",
      "'k",
      '"l',
      '6"',
      "#",
      " m ",
      "n\no",
      "\tp",
      "\u0085",
      "\u2028",
      "\uFEFF",
      "\uD800",
      "=1+1",
      "---",
      "...",
    ]) {
      const read = readBack(`a: [${yamlScalar(text)}]\nb: ${yamlScalar(text)}\n`);
      expect(toPlain(read)).toEqual({ a: [text], b: text });
    }
  });
});

/** Texts of the signs that YAML or a spreadsheet makes something of, and any others. */
const text = fc.oneof(
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.string({ unit: fc.constantFrom(..." \t\n\r:#-?,[]{}&*!|>'\"%@`~=\\/0123456789.eE_xoyn'½Ø"), maxLength: 14 }),
  fc.constantFrom("null", "~", "", "true", "<<", "1-1/4", "-", "[]", "{}"),
);
const anyNode: fc.Arbitrary<SourceNode> = fc.letrec<{ node: SourceNode }>((tie) => ({
  node: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    text.map(scalar),
    fc.array(tie("node"), { maxLength: 5 }).map((items) => list(...items)),
    fc.uniqueArray(fc.tuple(text, tie("node")), { maxLength: 6, selector: ([key]) => key }).map(
      (entries): SourceNode => ({
        kind: "map",
        place,
        entries: entries.map(([key, value]) => ({ key, place, value })),
      }),
    ),
  ),
})).node;

describe("any values", () => {
  it("read back to the same plain values, as items of a list and as the value of a key", () => {
    fc.assert(
      fc.property(fc.array(anyNode, { minLength: 1, maxLength: 4 }), anyNode, (items, value) => {
        const wanted = { bases: items.map(toPlain), other: toPlain(value) };
        const written = `bases:\n${writeYamlItems(items)}other: ${yamlNode(value)}\n`;
        expect(toPlain(readBack(written))).toEqual(wanted);
      }),
      { seed: SEED, numRuns: 600 },
    );
  });

  it("of more bases than are parsed at once too", () => {
    const bases = Array.from({ length: 300 }, (_, index) =>
      map({ mark: scalar(`B${index}`), note: scalar(`# ${index}`) }),
    );
    expect(toPlain(readBack(`bases:\n${writeYamlItems(bases)}`))).toEqual({ bases: bases.map(toPlain) });
  });
});

/** Items put into lists of a text that has none of them yet; what comes out is read back by the `yaml` library. */
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { KeyEdit } from "../../../src/readers/yaml-edit.js";
import { spliced, spliceOf, textAfter } from "../../../src/readers/yaml-edit.js";

const ITEM = '{ mark: B1, rule: projection, by: "A, B", date: 2026-11-24, text: as drawn }';
const insert: KeyEdit = { kind: "insert", path: ["answers"], index: 99, lines: ITEM };
const read = { mark: "B1", rule: "projection", by: "A, B", date: "2026-11-24", text: "as drawn" };

function inserted(text: string): string {
  const splice = spliceOf(text, insert);
  if (splice === null) throw new Error("there was no place");
  return spliced(text, splice);
}

describe("an item of a list that is not there yet", () => {
  it.each([
    ["block values before", "job:\n  number: 1\n  title: x\n# the bases\nbases:\n  - mark: B1\n"],
    ["a flow value before", "job: { number: 1 }\n\nbases:\n  - { mark: B1 }\n"],
    ["a comment behind the value before", "units: in   # inches\nbases:\n  - { mark: B1 }"],
    ["bases first", "bases:\n  - mark: B1\nunits: in\n"],
    ["no bases, no line end", "units: in"],
    ["a list in brackets that is empty", "answers: []  # none yet\nbases:\n  - mark: B1\n"],
    ["a key without a value", "answers:\nbases:\n  - mark: B1\n"],
    ["a list in brackets", "answers: [{ mark: B0 }]\nbases:\n  - mark: B1\n"],
    ["a list of lines", "answers:\n  - { mark: B0 }   # of March\nbases:\n  - mark: B1\n"],
  ])("stands last in it: %s", (_name, text) => {
    const before = parse(text) as Record<string, unknown>;
    const after = parse(inserted(text), { schema: "failsafe" }) as { answers: unknown[] };
    expect(after.answers.at(-1)).toEqual(read);
    expect(Object.keys(after).toSorted()).toEqual([...new Set([...Object.keys(before), "answers"])].toSorted());
    for (const comment of text.match(/#.*/g) ?? []) expect(inserted(text)).toContain(comment);
  });

  it("stands above the comment that belongs to the bases", () => {
    const text = inserted("job:\n  number: 1\n#### Below is written anew.\nbases:\n  - mark: B1\n");
    expect(text.indexOf("answers:")).toBeLessThan(text.indexOf("####"));
  });

  it("has no place where the key has a value of another kind", () => {
    expect(spliceOf("answers: none\nbases:\n  - mark: B1\n", insert)).toBeNull();
  });
});

describe("several changes of one text", () => {
  const text = "x:\n  - mark: B1 # north\n    rods: { diameter: 1, grade: '36' }\n    note: as sent\n";
  const edits: readonly KeyEdit[] = [
    { kind: "set", path: ["x", 0, "rods", "diameter"], text: "7/8" },
    { kind: "set", path: ["x", 0, "rods", "grade"], text: "55" },
    { kind: "set", path: ["x", 0, "pattern"], text: "{ kind: rectangle, x: 9, y: 9 }", flow: true },
    { kind: "remove", path: ["x", 0, "note"] },
    { kind: "set", path: ["x", 0, "grout"], text: "yes: 1 # two" },
  ];

  it("come to what each gives after the one before", () => {
    const alone = edits.reduce((now, edit) => {
      const splice = spliceOf(now, edit);
      if (splice === null) throw new Error("there was no place");
      return spliced(now, splice);
    }, text);
    expect(textAfter(text, edits)).toBe(alone);
    expect(parse(alone, { schema: "failsafe" })).toEqual({
      x: [
        {
          mark: "B1",
          rods: { diameter: "7/8", grade: "55" },
          pattern: { kind: "rectangle", x: "9", y: "9" },
          grout: "yes: 1 # two",
        },
      ],
    });
    expect(alone).toContain("# north");
  });

  it("are none where one of them has no place", () => {
    expect(textAfter(text, [...edits, { kind: "remove", path: ["x", 0, "washer"] }])).toBe(null);
  });
});

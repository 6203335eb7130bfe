/** Lists under a key are found where the JSON parser of the platform finds them, whatever the texts around them hold. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { JsonScan } from "../../../src/readers/json-scan.js";

/** Depth of every list under the key, in the order in which they open. */
function listDepths(text: string): number[] {
  const scan = new JsonScan("key");
  const depths: number[] = [];
  for (const byte of new TextEncoder().encode(text)) {
    const before = scan.depth;
    scan.take(byte);
    if (scan.depth > before && scan.isListUnderKey(scan.depth)) depths.push(scan.depth);
  }
  expect([scan.depth, scan.isOutsideText]).toEqual([0, true]);
  return depths;
}

/** The same from the parsed value, by recursion. */
function depthsIn(value: unknown, depth = 1, isUnderKey = false): number[] {
  if (Array.isArray(value)) {
    return [...(isUnderKey ? [depth] : []), ...value.flatMap((each) => depthsIn(each, depth + 1))];
  }
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => depthsIn(each, depth + 1, key === "key"));
}

describe("JsonScan", () => {
  it("finds every list under the key and no other", () => {
    const word = fc.constantFrom("key", "ke", "keys", 'k"ey', "\\key", "ké", "[", "}", "");
    const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 4 },
        word,
        fc.array(tie("tree"), { maxLength: 3 }),
        fc.dictionary(word, tie("tree"), { maxKeys: 3 }),
      ),
    }));
    let found = 0;
    fc.assert(
      fc.property(tree, fc.constantFrom(undefined, 1), (value, indent) => {
        const depths = listDepths(JSON.stringify(value, null, indent));
        found += depths.length;
        expect(depths).toEqual(depthsIn(value));
      }),
      { numRuns: 500 },
    );
    expect(found).toBeGreaterThan(20);
  });

  it.each([
    ["a text in a list is no key", '["key", [1]]', []],
    ["a map under the key is no list", '{"key": {"a": []}}', []],
    ["an escape is not the letter after it", '{"k\\ey": []}', []],
    ["a key of another value", '{"key": 1, "a": []}', []],
    ["both of two", '{"key": [], "a": {"key": [[]]}}', [2, 3]],
  ])("%s", (_, text, depths) => {
    expect(listDepths(text)).toEqual(depths);
  });

  it("counts lines, also in texts that are cut off", () => {
    const scan = new JsonScan("key");
    for (const byte of new TextEncoder().encode('{\n"a\n')) scan.take(byte);
    expect([scan.line, scan.depth, scan.isOutsideText]).toEqual([3, 1, false]);
  });
});

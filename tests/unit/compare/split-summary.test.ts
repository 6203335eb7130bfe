/** A summary taken apart is the summary, whatever its texts hold and however its bytes come. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { splitSummary } from "../../../src/compare/split-summary.js";

function* inChunks(text: string, size: number): Generator<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

const split = (text: string, size: number) => [...splitSummary(inChunks(text, size))];

describe("splitSummary", () => {
  it("gives the bases one by one, then the rest with none", () => {
    const json = fc.jsonValue({ maxDepth: 3 });
    const summaries = fc.record({
      job: json,
      bases: fc.array(fc.record({ mark: fc.string({ unit: "grapheme" }), bases: json, checks: json }), {
        maxLength: 4,
      }),
      files: json,
    });
    fc.assert(
      fc.property(
        summaries,
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom(undefined, 2),
        (summary, size, indent) => {
          const pieces = split(JSON.stringify(summary, null, indent), size);
          const rest = JSON.parse(pieces.at(-1)?.text ?? "");
          const bases = pieces.slice(0, -1).map(({ text }) => JSON.parse(text));
          expect(pieces.map(({ kind }) => kind)).toEqual([...bases.map(() => "base"), "rest"]);
          expect({ ...rest, bases }).toEqual(JSON.parse(JSON.stringify(summary)));
          expect(rest.bases).toEqual([]);
        },
      ),
    );
  });

  it("knows the line in which a base starts", () => {
    const text = '{ "bases": [\n  {\n "a": 1 },\n\n  { "a": 2 } ] }';
    expect(split(text, 7).map(({ line }) => line)).toEqual([2, 5, 1]);
  });

  it.each(["", "{", '{"bases":[', '{"bases":[{"a":1', "]]]]", '{"bases":[}', '{"bases":[{},,{}]}'])(
    "ends on %j",
    (text) => {
      const pieces = split(text, 3);
      expect(pieces.filter(({ kind }) => kind === "rest")).toHaveLength(1);
      expect(pieces.at(-1)?.kind).toBe("rest");
    },
  );
});

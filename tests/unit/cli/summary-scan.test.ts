/** The files listed in a summary are those that the platform's parser sees in it, however its bytes come. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scanListedFiles } from "../../../src/cli/summary-scan.js";

function* inChunks(text: string, size: number): Generator<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

const listedFile = fc.record({
  path: fc.string({ unit: "grapheme" }),
  bytes: fc.nat(),
  sha256: fc.constant("0".repeat(64)),
  layers: fc.constant({ cut: ['"]}', "\\"], mark: [] }),
});

describe("scanListedFiles", () => {
  it("finds the files of the bases and of the job", () => {
    const summaries = fc.record({
      job: fc.record({ title: fc.string({ unit: "grapheme" }) }),
      bases: fc.array(fc.record({ mark: fc.string(), files: fc.array(listedFile, { maxLength: 3 }) }), {
        maxLength: 3,
      }),
      files: fc.array(listedFile, { minLength: 1, maxLength: 3 }),
    });
    fc.assert(
      fc.property(summaries, fc.integer({ min: 1, max: 40 }), (summary, size) => {
        const all = [...summary.bases.flatMap(({ files }) => files), ...summary.files];
        expect(scanListedFiles(inChunks(JSON.stringify(summary), size))).toEqual(all);
      }),
    );
  });

  const entry = '{"path":"a","bytes":1,"sha256":"0"}';
  it.each([
    ["nothing", ""],
    ["no list of files", '{"files":{}}'],
    ["an empty list", '{"files":[]}'],
    ["an entry that is no file", `{"files":[${entry},{"path":"a"}]}`],
    ["an entry that is no JSON", '{"files":[{path}]}'],
    ["an entry beyond all measure", `{"files":[{"path":"${"a".repeat(70_000)}","bytes":1,"sha256":"0"}]}`],
    ["a text that is not closed", `{"files":[${entry}],"a`],
    ["a map that is not closed", `{"files":[${entry}]`],
  ])("takes %s for no summary", (_, text) => {
    expect(scanListedFiles(inChunks(text, 7))).toBeNull();
    expect(scanListedFiles(inChunks(`{"files":[${entry}]}`, 7))).toHaveLength(1);
  });
});

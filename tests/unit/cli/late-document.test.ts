/** A document that is loaded late draws as one that is there from the beginning, and not before it is loaded. */
import { expect, it } from "vitest";
import { build } from "../../../src/build.js";
import { lateDocument } from "../../../src/cli/late-document.js";
import { newDocument } from "../../../src/cli/svg-document.js";
import type { SvgDocument } from "../../../src/outputs.js";
import { makeInputs } from "../../bench/jobs.js";

const draw = (document: SvgDocument) =>
  [...build(makeInputs(1), { date: "2026-11-24", version: "0", document, outputs: ["sheet-svg"] }).bases].map(
    ({ files }) => files.map(({ path, sha256 }) => `${path} ${sha256}`),
  );

it("is not drawn on before it is loaded, and then is a document like another", async () => {
  const document = lateDocument();
  expect(() => draw(document)).toThrow("not loaded");
  await document.load();
  expect(draw(document)).toEqual(draw(newDocument()));
  expect(draw(document)).toEqual([[expect.stringMatching(/^B1\/.*_sheet\.svg [0-9a-f]{64}$/)]]);
});

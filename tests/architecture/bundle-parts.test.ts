/** Whoever takes one function of the library into a bundle gets what it stands on, and nothing else. */
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "vite";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Stages and packages of which some code is left in the bundle of an entry. */
async function partsOf(entry: string): Promise<readonly string[]> {
  const file = fileURLToPath(new URL(`entries/${entry}.ts`, import.meta.url));
  const lib = { entry: file, formats: ["es" as const] };
  const result = await build({ configFile: false, logLevel: "silent", build: { write: false, minify: false, lib } });
  const chunks = [result].flat().flatMap((one) => ("output" in one ? one.output : []));
  const modules = chunks.flatMap((chunk) => (chunk.type === "chunk" ? Object.entries(chunk.modules) : []));
  const left = modules.filter(([, { renderedLength }]) => renderedLength > 0).map(([id]) => relative(root, id));
  return [...new Set(left.map((path) => path.split("/").slice(0, 2).join("/")))].sort();
}

describe("a bundle of one function", () => {
  it("fitPlate: the fit alone", async () => {
    expect(await partsOf("fit-plate")).toEqual(["src/fit"]);
  });

  it("readCutFile: readers, geometry, units, and the facts of the format", async () => {
    expect(await partsOf("read-cut-file")).toEqual(["src/geometry", "src/readers", "src/standards", "src/units"]);
  });
});

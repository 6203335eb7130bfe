/** Bolts of splice plates on the lists of a whole package: counts by the joints of the summary, lengths by hand. Invented jobs. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { build } from "../../../src/tasks/build.js";
import { sharedJob } from "../../shared-job.js";

const SHOP = "templates/shops/plasma.yaml";
const shop = readFileSync(new URL(`../../../${SHOP}`, import.meta.url), "utf8");
const STRIP = ", outline: { kind: rectangle, x: 60, y: 24 }, key: none";

function linesOf(bases: Parameters<typeof sharedJob>[0], name: string) {
  const inputs = {
    job: "job.yaml",
    files: new Map([
      ["job.yaml", sharedJob(bases)],
      [SHOP, shop],
    ]),
  };
  const options = { date: "2026-11-24", version: "test", document: null, outputs: ["rod-lists-csv"] } as const;
  const made = build(inputs, { ...options, includeHeld: true });
  for (const _ of made.bases);
  const { files, summary } = made.finish();
  const file = files.find(({ path }) => path.endsWith(`_${name}.csv`));
  const pieces = (summary.bases[0]?.template.pieces ?? []).filter(({ role }) => role === "splice plate");
  const holes = pieces.reduce((sum, piece) => sum + piece.quantity * piece.holes.length, 0);
  return { lines: new TextDecoder().decode(file?.bytes).split(/\r?\n/), holes };
}

// Plates of 1/4 in: the grip is 1/2 in; with the nut of a 1/2 in bolt, 7/16 in (ASME B18.2.2), and 1/4 in beyond: 1-3/16 in,
// sold as 1-1/4 in.
const THREE = `${STRIP}, segments: { count: 3, bolt: 1/2 }`;

describe("bolts of splice plates", () => {
  it("are on the hardware and packing lists, as many as their templates need, long enough for plates and nut", () => {
    const bases = [{ mark: "B1", quantity: 3, template: `, mark: T1, quantity: 2${THREE}` }];
    for (const name of ["hardware", "packing"]) {
      const { lines, holes } = linesOf(bases, name);
      expect(holes).toBeGreaterThanOrEqual(2 * 2 * 4);
      const bolt = lines.find((line) => line.includes("1/2 x 1-1/4 hex bolt for splice plates of T1")) ?? "";
      const nut = lines.find((line) => line.includes("1/2 hex nut for splice plates of T1")) ?? "";
      expect([bolt, nut].map((line) => line.split(",").includes(String(holes)))).toEqual([true, true]);
    }
  });

  it("are counted once where one template serves several bases, and nowhere where none is bolted", () => {
    const shared = ["B1", "B2"].map((mark) => ({ mark, template: `, mark: T1${THREE}` }));
    const { lines, holes } = linesOf(shared, "packing");
    const counts = lines.filter((line) => line.includes("hex bolt")).map((line) => Number(line.split(",").at(-4)));
    expect(counts).toEqual([holes / 2, holes / 2]);
    expect(linesOf([{ mark: "B1" }], "packing").lines.filter((line) => line.includes("splice"))).toEqual([]);
  });
});

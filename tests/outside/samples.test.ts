/**
 * The samples' packages by outside means: every cut file by readers nobody here wrote (ezdxf's audit with no error and no
 * fix), the two flavours of each plate against each other, every text of every sheet by the font's own metrics.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { readCutFile } from "../../src/readers/dxf.js";
import type { Summary, SummaryFile } from "../../src/summary/model.js";
import { checkCutFilesOutside, cutFilesInPackage, isReaderSkipped, readerNames } from "./readers/harness.js";
import { overlappingTexts, textBoxes } from "./text-boxes.js";
import { readWrittenSheet } from "./written-sheet.js";

const samples = fileURLToPath(new URL("../../samples", import.meta.url));
const packages = readdirSync(samples).map((name) => join(samples, name, "expected"));

const summaryOf = (folder: string): Summary => JSON.parse(readFileSync(join(folder, "summary.json"), "utf8"));
const filesOf = (folder: string): readonly SummaryFile[] => {
  const { bases, files } = summaryOf(folder);
  return [...bases.flatMap((base) => base.files), ...files];
};

describe.each(readerNames)("cut files of the samples, read by %s", (reader) => {
  it.skipIf(isReaderSkipped(reader))("are as summary.json says", () => {
    const files = packages.flatMap((folder) => cutFilesInPackage(folder));
    expect(files.length).toBeGreaterThan(50);
    expect(checkCutFilesOutside(reader, files)).toEqual([]);
  });
});

describe("the two flavours of a plate", () => {
  const plates = packages.flatMap((folder) =>
    summaryOf(folder).bases.flatMap(({ mark, files }) => {
      const path = (kind: string) => files.find((file) => file.kind === kind)?.path;
      const [joined, r12] = [path("cut-joined"), path("cut-r12")];
      return joined === undefined || r12 === undefined
        ? []
        : [{ mark, joined: join(folder, joined), r12: join(folder, r12) }];
    }),
  );

  it.each(plates)("$mark: agree in length, net area and extents", ({ joined, r12 }) => {
    const [a, b] = [joined, r12].map((path) => readCutFile(readFileSync(path)));
    for (const file of [a, b]) expect(file?.findings.filter(({ severity }) => severity === "stop")).toEqual([]);
    expect(b?.pierces).toBe(a?.pierces);
    expect(b?.cutLength).toBeCloseTo(a?.cutLength ?? Number.NaN, 5);
    expect(b?.netArea).toBeCloseTo(a?.netArea ?? Number.NaN, 4);
    for (const [i, side] of (a?.outline?.extent ?? []).entries()) expect(b?.outline?.extent[i]).toBeCloseTo(side, 5);
    expect(a?.outline?.extent).toHaveLength(4);
  });
});

describe("sheets of the samples", () => {
  const sheets = packages.flatMap((folder) =>
    filesOf(folder)
      .filter(({ path }) => path.endsWith(".svg"))
      .map(({ path }) => join(folder, path)),
  );

  it.each(sheets)("%s: no text over another, none off the sheet", (path) => {
    const sheet = readWrittenSheet(readFileSync(path, "utf8"));
    const boxes = textBoxes(sheet);
    expect(boxes.length).toBeGreaterThan(40);
    expect(overlappingTexts(boxes)).toEqual([]);
    const [, , width = 0, height = 0] = (sheet.root.viewBox ?? "").split(" ").map(Number);
    const off = boxes.filter(({ box }) => box.some(([x, y]) => x < 0 || y < 0 || x > width || y > height));
    expect(off.map(({ text }) => text)).toEqual([]);
  });
});

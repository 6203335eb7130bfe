/** What the operator reads is what the cut file and the summary say. */
import { describe, expect, it } from "vitest";
import { cutFileLayers, drawCutFile } from "../../../src/formats/cut-file.js";
import type { Base, Job } from "../../../src/job/model/job.js";
import { operatorBox } from "../../../src/sheets/operator-box.js";
import type { SheetRequest } from "../../../src/sheets/request.js";
import { sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { textWidth } from "../../../src/sheets/text-metrics.js";
import { inches, NM_PER_UNIT } from "../../../src/units/length.js";
import { baseFixture, jobFixture, shopFixture } from "../../fixture.js";
import { gapsOnLines, textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const LETTERING = { small: 3, body: 3.5, heading: 4, title: 6 };
const b = baseFixture();
const shop = shopFixture();

function requestOf(job: Partial<Job> = {}, template: Partial<Base["template"]> = {}): SheetRequest {
  const one = sheetCase(jobFixture(job), baseFixture({ template: { ...b.template, ...template } }));
  const layers = cutFileLayers(one.plate, { layers: one.job.shop.cutFile.layers, marks: true });
  return { ...one, cutFiles: one.cutFiles.map((file) => ({ ...file, layers })) };
}

function said(request: SheetRequest, width = 150): string {
  const piece = operatorBox(request, width, LETTERING);
  if (piece === null) return "";
  return textsOf([piece.draw(0, 200)])
    .map(({ text }) => text)
    .join(" ");
}

const numbers = (words: string): readonly number[] =>
  [...words.matchAll(/-?(?:(\d+)-)?(\d+)(?:\/(\d+)|(\.\d+))?/g)].map(
    ([whole, units = "0", figure = "0", below, tail = ""]) => {
      const size = below === undefined ? Number(`${figure}${tail}`) : Number(units) + Number(figure) / Number(below);
      return whole.startsWith("-") ? -size : size;
    },
  );

const CASES: readonly (readonly [string, SheetRequest])[] = [
  ["lower left", requestOf()],
  [
    "off the working point",
    requestOf(
      {},
      { outline: { ...b.template.outline, at: { x: inches(2.125), y: inches(-1) } } as Base["template"]["outline"] },
    ),
  ],
  ["working point", requestOf({ shop: { ...shop, cutFile: { ...shop.cutFile, origin: "working point" } } })],
  ["millimetres", requestOf({ unit: "mm" })],
];

describe("the box for the cutting table", () => {
  it.each(CASES)("extents and origin are those of the file: %s", (_, request) => {
    const { unit } = request.job;
    const { layers, origin } = request.job.shop.cutFile;
    const drawing = drawCutFile(request.plate, { draws: "whole", unit, layers, origin, marks: true });
    const words =
      said(request)
        .split("EXTENTS ")[1]
        ?.split(/ INCHES| MILLIMETRES/)[0] ?? "";
    const { extent, decimals } = drawing;
    const inFile = [extent.x0, extent.y0, extent.x1, extent.y1].map((ticks) => ticks / 10 ** decimals);
    const read = numbers(words);
    expect(read).toHaveLength(4);
    for (const [i, value] of read.entries()) expect(value).toBeCloseTo(inFile[i] ?? Number.NaN, 3);
    expect(said(request)).toContain(
      origin === "lower left" ? "FILE 0,0 LOWER LEFT OF THE OUTLINE; W.P. AT" : "FILE 0,0 THE WORKING POINT",
    );
  });

  it("layers by their use, cut length, pierces, quantity and weight", () => {
    const request = requestOf();
    const [file] = request.cutFiles;
    const words = said(request);
    expect(words).toContain(
      `LAYERS TO CUT: ${file?.layers?.cut.join(", ")}. TO SCRIBE: ${file?.layers?.mark.join(", ")}.`,
    );
    const length = (request.measures.cutLength * 1e6) / NM_PER_UNIT.in;
    expect(words).toContain(`CUT ${length.toFixed(2)} in, ${request.measures.pierces} PIERCES`);
    expect(words).toContain("QUANTITY 2; NET 31.2 lb EACH, 62.5 lb IN ALL");
    expect(words).toContain("STEEL 1/4, GRADE NOT GIVEN");
    expect(said({ ...request, plate: { ...request.plate, grade: "A572 Gr 50" } })).toContain(
      "STEEL 1/4, GRADE A572 Gr 50",
    );
  });

  it("says that nothing is scribed, and that a weight is not known", () => {
    const one = requestOf();
    const bare = one.cutFiles.map((file) => ({ ...file, layers: { cut: ["CUT"], mark: [] } }));
    expect(said({ ...one, cutFiles: bare, weight: null })).toMatch(/TO CUT: CUT\. TO SCRIBE: NONE\..*WEIGHT NOT KNOWN/);
  });

  it("keeps labels clear of their values, and short values beside each other, at every size of letters", () => {
    for (const unit of ["in", "mm"] as const)
      for (const { lettering, panel } of sheetSizes(unit)) {
        const piece = operatorBox(requestOf(), panel - 6, lettering);
        if (piece === null) throw new Error("no box");
        for (const { words, gap } of gapsOnLines([piece.draw(0, 0)]))
          expect(gap, words).toBeGreaterThan(lettering.small * 0.6);
      }
  });

  it("is not there without a cut file", () => {
    expect(operatorBox({ ...requestOf(), cutFiles: [] }, 150, LETTERING)).toBeNull();
  });

  it("keeps every line inside its width", () => {
    for (const width of [90, 110, 150])
      for (const [, request] of CASES) {
        const piece = operatorBox(request, width, LETTERING);
        const texts = piece === null ? [] : textsOf([piece.draw(0, 200)]);
        expect(texts.length).toBeGreaterThan(8);
        for (const item of texts) {
          expect(item.at.y).toBeGreaterThan(200 - (piece?.height ?? 0));
          expect(item.at.x + textWidth(item.text, item.height, item.bold)).toBeLessThanOrEqual(width);
        }
      }
  });
});

/** Drawings of dxf-writer: entities written as lines are what it draws itself, and no drawing disturbs another. */
import { describe, expect, it } from "vitest";
import { writeJoinedDxf } from "../../../src/formats/cut-dxf-joined.js";
import type { CutDrawing } from "../../../src/formats/cut-file.js";
import { drawCutFile, formatTicks } from "../../../src/formats/cut-file.js";
import { asPrinted, putOnLayer, vertexValues, writeDxf, writeDxfLines } from "../../../src/formats/dxf-drawing.js";
import { cutOptions, cutPlates } from "../../cut-plates.js";

/** A cut drawing with dxf-writer's own circles and polylines. */
function byDxfWriter(cut: CutDrawing, between: () => void = () => undefined): Uint8Array {
  const text = (ticks: number) => asPrinted(formatTicks(ticks, cut.decimals));
  return writeDxf(cut, (drawing) => {
    for (const item of cut.items) {
      between();
      if (item.kind === "circle") drawing.drawCircle(text(item.x), text(item.y), text(item.radius));
      else {
        const vertices = item.vertices.map(({ x, y, bulge }) => vertexValues(text(x), text(y), bulge));
        drawing.drawPolyline(vertices, item.closed);
      }
      putOnLayer(drawing, item.layer);
    }
  });
}

const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

it.each(cutPlates)("$name: the joined file is what dxf-writer draws, handle by handle", ({ unit, plate }) => {
  const options = cutOptions(unit);
  expect(textOf(writeJoinedDxf(plate, options))).toBe(textOf(byDxfWriter(drawCutFile(plate, options))));
});

describe("drawings that are made at the same time", () => {
  const [first, second] = cutPlates.map(({ unit, plate }) => drawCutFile(plate, cutOptions(unit)));
  if (first === undefined || second === undefined) throw new Error("two plates are needed");

  it("keep their handles where each entity of one waits for a whole file", () => {
    const alone = byDxfWriter(first);
    expect(textOf(byDxfWriter(first, () => void byDxfWriter(second)))).toBe(textOf(alone));
  });

  it("keep them too where entities are written as lines", () => {
    const lines = (between: () => void) =>
      writeDxfLines(first, first.items, (_, handle, owner, writer) => {
        between();
        writer.lines(`0\nPOINT\n5\n${handle}\n330\n${owner}\n`);
      });
    const alone = lines(() => undefined);
    expect(textOf(lines(() => void byDxfWriter(second)))).toBe(textOf(alone));
  });

  it("keep them where one is given up half way", () => {
    const alone = byDxfWriter(first);
    const givenUp = () => {
      expect(() => writeDxf(second, fail)).toThrow("given up");
    };
    expect(textOf(byDxfWriter(first, givenUp))).toBe(textOf(alone));
  });
});

function fail(): never {
  throw new Error("given up");
}

it("no handle stands twice in a file", () => {
  for (const { unit, plate } of cutPlates) {
    const lines = textOf(writeJoinedDxf(plate, cutOptions(unit))).split("\r\n");
    const handles = lines.filter((_, i) => i % 2 === 1 && lines[i - 1] === "5");
    // The first is $HANDSEED, which is the next free one.
    expect(new Set(handles).size).toBe(handles.length);
    expect(handles.length).toBeGreaterThan(20);
  }
});

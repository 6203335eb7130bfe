/** The view of what is scribed is the plate's own strokes, mapped exactly, at every size that it offers. */
import { describe, expect, it } from "vitest";
import type { PathPart, SceneItem } from "../../../src/sheets/index.js";
import { marksView } from "../../../src/sheets/marks-view.js";
import type { SheetRequest } from "../../../src/sheets/request.js";
import { scales, sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { baseFixture, jobFixture, shopFixture } from "../../fixture.js";
import { groupsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";
import { sheetCases } from "./sheet-cases.js";

const [sheet] = sheetSizes("in");
if (sheet === undefined) throw new Error("no sheet sizes");
const { lettering } = sheet;

function viewOf(request: SheetRequest) {
  const view = marksView(request, lettering);
  if (view === null) throw new Error(`no view of ${request.plate.mark}`);
  return view;
}

function partsOf(items: readonly SceneItem[]): readonly PathPart[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return partsOf(item.items);
    return item.kind === "stroke" ? item.parts : [];
  });
}

const marking = (how: "scribe" | "paint" | "none") =>
  sheetCase(jobFixture({ shop: shopFixture({ marking: { ...shopFixture().marking, how } }) }), baseFixture());

describe.each(Object.keys(sheetCases))("MARKS ON TOP FACE of %s", (name) => {
  const request = sheetCases[name]?.();
  if (request === undefined) throw new Error(name);
  const { plate, measures, job } = request;
  const view = viewOf(request);

  it("has every stroke of every mark, where it is scribed, and every contour", () => {
    const area = { x0: 30, y0: 20, x1: 330, y1: 320 };
    for (const size of view.sizes) {
      const [drawn] = groupsOf(view.draw(area, size), "marks-view");
      const scale = Number(drawn?.data.scale);
      const { extent } = measures;
      const paper = (at: { readonly x: number; readonly y: number }) => ({
        x: (area.x0 + area.x1) / 2 + (at.x - (extent.x0 + extent.x1) / 2) * scale,
        y: (area.y0 + area.y1) / 2 + (at.y - (extent.y0 + extent.y1) / 2) * scale,
      });
      const scribed = groupsOf(drawn?.items ?? [], "scribed");
      expect(scribed.map(({ data }) => [data.kind, data.text])).toEqual(
        plate.marks.map(({ kind, text }) => [kind, text]),
      );
      scribed.forEach((group, i) => {
        const strokes = plate.marks[i]?.strokes ?? [];
        const wanted = strokes.flatMap((points) => points.slice(1).map((to, k) => ({ from: points[k] ?? to, to })));
        const parts = partsOf(group.items);
        expect(parts).toHaveLength(wanted.length);
        // thousands of ends: only those that are off are handed to the test's own comparison
        const off = parts.flatMap((part, k) => {
          const piece = wanted[k];
          if (part.kind !== "line" || piece === undefined) throw new Error("a straight piece was expected");
          return (["from", "to"] as const).filter((end) => {
            const { x, y } = paper(piece[end]);
            return !(Math.hypot(part[end].x - x, part[end].y - y) < 5e-10);
          });
        });
        expect(off).toEqual([]);
      });
      const contours = [plate.region.outer, ...plate.holes.map(({ contour }) => contour)];
      const count = contours.reduce((sum, each) => sum + (each.kind === "circle" ? 1 : each.segments.length), 0);
      expect(partsOf(drawn?.items.filter(({ kind }) => kind === "stroke") ?? [])).toHaveLength(count);
    }
  });

  it("stays inside each size that it offers, the largest first, each at a scale of the unit", () => {
    const factors = view.sizes.map((size) => {
      const area = { x0: 10, y0: 10, x1: 10 + size.width, y1: 10 + size.height };
      const items = view.draw(area, size);
      for (const part of partsOf(items)) {
        const points = part.kind === "circle" ? [part.center] : [part.from, part.to];
        for (const { x, y } of points) expect(x >= area.x0 && x <= area.x1 && y >= area.y0 && y <= area.y1).toBe(true);
      }
      return Number(groupsOf(items, "marks-view")[0]?.data.scale);
    });
    expect(factors).toEqual([...factors].sort((a, b) => b - a));
    expect(new Set(factors).size).toBe(factors.length);
    const known = scales(job.unit).map(({ factor }) => factor);
    for (const factor of factors) expect(known).toContain(factor);
  });
});

describe("MARKS ON TOP FACE", () => {
  it("says scribed or painted, and its scale", () => {
    const [size] = viewOf(marking("scribe")).sizes;
    if (size === undefined) throw new Error("no size");
    expect(viewOf(marking("scribe")).under(size)).toMatch(/^SCRIBED, 3" = 1'-0" \(1:4\)$/);
    expect(viewOf(marking("paint")).under(size)).toMatch(/^PAINTED, /);
  });

  it("is not drawn for a plate that nothing is scribed on", () => {
    expect(marksView(marking("none"), lettering)).toBeNull();
  });
});

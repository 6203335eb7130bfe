/** What both flavours of a cut file are held to: by the published DXF reference where a code is named. */
import { describe, expect, it } from "vitest";
import { writeJoinedDxf } from "../../../src/formats/cut-dxf-joined.js";
import { writeR12Dxf } from "../../../src/formats/cut-dxf-r12.js";
import {
  type CutFileOptions,
  cutFileLayers,
  type Draws,
  formatFixed,
  formatTicks,
} from "../../../src/formats/cut-file.js";
import { compareCutFile } from "../../../src/formats/read-back.js";
import { circle, point, rectangle } from "../../../src/geometry/index.js";
import { readCutFile } from "../../../src/readers/dxf.js";
import type { Plate } from "../../../src/template/model.js";
import { inches, millimetres, nanometres } from "../../../src/units/length.js";
import { cutOptions, cutPlates, plateOf, roundHole, strokes, testLayers } from "../../cut-plates.js";

const flavours = [
  { flavour: "joined", draws: "whole", write: writeJoinedDxf },
  { flavour: "r12", draws: "pieces", write: writeR12Dxf },
] as const;

const all = cutPlates.flatMap((made) => flavours.map((flavour) => ({ ...made, ...flavour })));

/** True where a contour or stroke is drawn otherwise whole than in pieces: a circle is one entity either way. */
const hasPath = ({ region, marks }: Plate) =>
  marks.some(({ strokes }) => strokes.length > 0) ||
  [region.outer, ...region.inner].some(({ kind }) => kind === "path");

const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** Tags as pairs, without the reader under test. */
function tagsOf(bytes: Uint8Array): [number, string][] {
  const lines = textOf(bytes).split("\r\n");
  return lines
    .slice(0, -1)
    .flatMap((line, i) => (i % 2 === 0 ? [[Number(line), lines[i + 1] ?? ""] as [number, string]] : []));
}

/** Type and layer of each entity, in the file's order. */
function entitiesOf(bytes: Uint8Array): string[] {
  const tags = tagsOf(bytes);
  const start = tags.findIndex(([code, value]) => code === 2 && value === "ENTITIES");
  const found: string[] = [];
  for (let i = start + 1; tags[i]?.[1] !== "ENDSEC"; i++) {
    if (tags[i]?.[0] === 0) found.push(tags[i]?.[1] ?? "");
    if (tags[i]?.[0] === 8) found.push(`${found.pop()} ${tags[i]?.[1]}`);
  }
  return found;
}

function headerOf(bytes: Uint8Array, name: string): string[] {
  const tags = tagsOf(bytes);
  const start = tags.findIndex(([code, value]) => code === 9 && value === name);
  const end = tags.findIndex(([code], i) => i > start && (code === 9 || code === 0));
  return start < 0 ? [] : tags.slice(start + 1, end).map(([code, value]) => `${code} ${value}`);
}

describe("numbers", () => {
  it.each([
    [0, 8, "0.00000000"],
    [-0, 8, "0.00000000"],
    [1, 8, "0.00000001"],
    [-1, 7, "-0.0000001"],
    [123_456_789, 8, "1.23456789"],
    [-2_500_000_000, 8, "-25.00000000"],
    [1e15, 7, "100000000.0000000"],
  ])("%d ticks of %d decimals are %s", (ticks, decimals, text) => {
    expect(formatTicks(ticks, decimals)).toBe(text);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0.5, 1e300])("%d is no number of ticks", (ticks) => {
    expect(() => formatTicks(ticks, 8)).toThrow(RangeError);
  });

  it.each([
    [1e-7, 12, "0.000000100000"],
    [-1e-13, 12, "0.000000000000"],
    [Math.SQRT2 - 1, 12, "0.414213562373"],
    [-0.5, 0, "-1."],
  ])("%d to %d decimals is %s", (value, decimals, text) => {
    expect(formatFixed(value, decimals)).toBe(text);
  });
});

describe.each(all)("$name $flavour", ({ unit, plate, write, draws, flavour }) => {
  const own = cutOptions(unit, { draws });
  const bytes = write(plate, own);

  it("is pure ASCII, every line ended by CR LF, numbers plain", () => {
    expect(textOf(bytes)).toMatch(/^[\x20-\x7e\r\n]*$/);
    expect(textOf(bytes).replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(textOf(bytes).endsWith("0\r\nEOF\r\n")).toBe(true);
    for (const [code, value] of tagsOf(bytes)) {
      expect(Number.isInteger(code)).toBe(true);
      if ((code >= 10 && code < 60) || code === 42) expect(value).toMatch(/^-?\d+(\.\d+)?$/);
      expect(value).not.toMatch(/^-0(\.0*)?$/);
    }
  });

  it("says version, unit and measurement", () => {
    expect(headerOf(bytes, "$ACADVER")).toEqual([flavour === "r12" ? "1 AC1009" : "1 AC1015"]);
    expect(headerOf(bytes, "$INSUNITS")).toEqual([unit === "in" ? "70 1" : "70 4"]);
    expect(headerOf(bytes, "$MEASUREMENT")).toEqual([unit === "in" ? "70 0" : "70 1"]);
  });

  it("draws only what its flavour may hold", () => {
    const types = new Set(entitiesOf(bytes).map((entity) => entity.split(" ")[0]));
    const allowed = flavour === "r12" ? ["LINE", "ARC", "CIRCLE"] : ["LWPOLYLINE", "CIRCLE"];
    expect([...types].filter((type) => !allowed.includes(type ?? ""))).toEqual([]);
  });

  it("draws marks first, then what is drilled, then inner contours, then the outline", () => {
    const layers = entitiesOf(bytes).map((entity) => entity.split(" ")[1] ?? "");
    const order = layers.filter((layer, i) => layer !== layers[i - 1]);
    expect(order).toEqual(["MARKS", "DRILL", "OPENINGS", "HOLES", "OUTLINE"].filter((layer) => layers.includes(layer)));
  });

  it("is the plate when it is read back", () => {
    expect(compareCutFile(bytes, plate, own)).toEqual([]);
  });

  it("is not a file that draws the other way", () => {
    const other = cutOptions(unit, { draws: draws === "whole" ? "pieces" : "whole" });
    expect(compareCutFile(bytes, plate, other)).toHaveLength(hasPath(plate) ? 1 : 0);
  });

  it("is read with no finding but that of the marks", () => {
    expect(readCutFile(bytes).findings.filter(({ code }) => code !== "open-strokes")).toEqual([]);
  });

  it("has the same bytes again, whatever was written in between", () => {
    for (const other of all) other.write(other.plate, cutOptions(other.unit));
    expect(write(plate, own)).toEqual(bytes);
  });

  it("can lie about the working point", () => {
    const options = cutOptions(unit, { draws, origin: "working point" });
    const moved = write(plate, options);
    expect(compareCutFile(moved, plate, options)).toEqual([]);
    expect(compareCutFile(moved, plate, own)).not.toEqual([]);
  });
});

it.each(cutPlates)("$name: the two flavours agree in length, net area and extents", ({ unit, plate }) => {
  const [joined, r12] = flavours.map(({ write }) => readCutFile(write(plate, cutOptions(unit))));
  expect(joined?.cutLength).toBeCloseTo(r12?.cutLength ?? 0, 5);
  expect((joined?.netArea ?? 0) / (r12?.netArea ?? 1)).toBeCloseTo(1, 8);
  expect(joined?.pierces).toBe(r12?.pierces);
  joined?.extent?.forEach((side, i) => {
    expect(side).toBeCloseTo(r12?.extent?.[i] ?? Number.NaN, 6);
  });
});

describe("layers", () => {
  const holes = [
    roundHole("A1", inches(2), inches(0), inches(1)),
    roundHole("OP1", inches(0), inches(0), inches(2), "opening"),
  ];
  const cross = strokes("punch", "NH1", [[point(-60, 0), point(-56, 0)]]);
  const line = strokes("axis", "+x", [[point(-60, 20), point(-40, 20)]]);
  const plate = plateOf(rectangle(point(0, 0), inches(8), inches(8)), holes, [line, cross]);
  const named = (layers: Partial<CutFileOptions["layers"]>, draws: Draws = "whole") =>
    cutOptions("in", { draws, layers: { ...testLayers, ...layers } });

  it("are listed by what is done on them", () => {
    expect(cutFileLayers(plate, cutOptions("in"))).toEqual({
      cut: ["OUTLINE", "HOLES", "OPENINGS"],
      mark: ["MARKS", "DRILL"],
    });
    expect(cutFileLayers(plate, cutOptions("in", { marks: false })).mark).toEqual(["DRILL"]);
    expect(cutFileLayers(plateOf(plate.region.outer, []), cutOptions("in"))).toEqual({ cut: ["OUTLINE"], mark: [] });
    expect(cutFileLayers(plate, named({ holes: "CUT", openings: "CUT", outline: "CUT" })).cut).toEqual(["CUT"]);
  });

  it.each(flavours)(
    "marks are left out of $flavour when the shop does not scribe, drill marks are not",
    ({ write, draws }) => {
      const options = cutOptions("in", { draws, marks: false });
      const bytes = write(plate, options);
      expect(entitiesOf(bytes).filter((entity) => / (MARKS|DRILL)$/.test(entity))).toHaveLength(1);
      expect(compareCutFile(bytes, plate, options)).toEqual([]);
      expect(compareCutFile(bytes, plate, cutOptions("in", { draws }))).not.toEqual([]);
    },
  );

  it.each(flavours)("named by numbers, 0 among them, keep the order of $flavour", ({ write, draws }) => {
    const options = named({ outline: "0", holes: "7", openings: "10", marks: "2", drill: "1" }, draws);
    const bytes = write(plate, options);
    const layers = entitiesOf(bytes).map((entity) => entity.split(" ")[1]);
    expect(layers.filter((layer, i) => layer !== layers[i - 1])).toEqual(["2", "1", "10", "7", "0"]);
    expect(compareCutFile(bytes, plate, options)).toEqual([]);
  });

  it.each(flavours)("may all be one in $flavour", ({ write, draws }) => {
    const options = named({ outline: "CUT", holes: "CUT", openings: "CUT" }, draws);
    expect(compareCutFile(write(plate, options), plate, options)).toEqual([]);
  });

  it.each(flavours)("that differ in the case of their letters are one in $flavour", ({ write, draws }) => {
    const options = named({ outline: "Cut", holes: "CUT", openings: "cut" }, draws);
    const bytes = write(plate, options);
    expect(readCutFile(bytes).layers.filter((name) => name.toUpperCase() === "CUT")).toEqual(["Cut"]);
    expect(compareCutFile(bytes, plate, options)).toEqual([]);
    expect(cutFileLayers(plate, options).cut).toEqual(["Cut"]);
  });

  it.each(["", "a b", "Lochränder", "A\r\n0", "A".repeat(32), "*"])("a name like %j is never written", (outline) => {
    for (const { write } of flavours) expect(() => write(plate, named({ outline }))).toThrow("layer name");
  });
});

describe("extents", () => {
  it("of a disc whose diameter is an odd number of nanometres are half a nanometre exact", () => {
    const plate = plateOf(circle(point(0, 0), nanometres(100_000_001)), []);
    for (const { write, draws } of flavours) {
      const bytes = write(plate, cutOptions("mm", { draws }));
      expect(headerOf(bytes, "$EXTMIN")).toEqual(["10 0.0000000", "20 0.0000000", "30 0.0"]);
      expect(headerOf(bytes, "$EXTMAX")).toEqual(["10 100.0000010", "20 100.0000010", "30 0.0"]);
      expect(textOf(bytes)).toContain("\r\n40\r\n50.0000005\r\n");
    }
  });

  it("hold marks that reach beyond the outline", () => {
    const mark = strokes("axis", "+x", [[point(-60, 0), point(60, 0)]]);
    const plate = plateOf(rectangle(point(0, 0), millimetres(100), millimetres(80)), [], [mark]);
    for (const { write, draws } of flavours) {
      const bytes = write(plate, cutOptions("mm", { draws }));
      expect(headerOf(bytes, "$EXTMIN").slice(0, 2)).toEqual(["10 -10.0000000", "20 0.0000000"]);
      expect(headerOf(bytes, "$LIMMAX")).toEqual(["10 110.0000000", "20 80.0000000"]);
      expect(compareCutFile(bytes, plate, cutOptions("mm", { draws }))).toEqual([]);
    }
  });
});

describe("a held plate, whose cut files are asked for all the same", () => {
  const square = rectangle(point(0, 0), inches(8), inches(8));

  it.each([
    ["across the edge", 4, "8.50000000"],
    ["outside the plate", 6, "10.50000000"],
  ])("is written with a hole %s, extents included", (_, x, high) => {
    const plate = plateOf(square, [roundHole("A1", inches(x), inches(0), inches(1))]);
    for (const { write, draws } of flavours) {
      const bytes = write(plate, cutOptions("in", { draws }));
      expect(headerOf(bytes, "$EXTMAX").slice(0, 2)).toEqual([`10 ${high}`, "20 8.00000000"]);
      expect(compareCutFile(bytes, plate, cutOptions("in", { draws }))).toEqual([]);
    }
  });
});

describe("a plate that is not what its model says", () => {
  const square = rectangle(point(0, 0), inches(8), inches(8));

  it("stops the writer where its outline is not closed", () => {
    const plate = plateOf({ kind: "path", segments: square.segments.slice(1) }, []);
    for (const { write } of flavours) expect(() => write(plate, cutOptions("in"))).toThrow("not closed");
  });

  it("stops the writer where holes and region differ", () => {
    const plate = {
      ...plateOf(square, [roundHole("A1", inches(2), inches(0), inches(1))]),
      region: { outer: square, inner: [] },
    };
    for (const { write } of flavours) expect(() => write(plate, cutOptions("in"))).toThrow("inner contours");
  });

  it("stops the writer where a stroke is a point", () => {
    const plate = plateOf(square, [], [strokes("tag", "A1", [[point(0, 0)]])]);
    for (const { write } of flavours) expect(() => write(plate, cutOptions("in"))).toThrow("stroke of 1 point");
  });
});

/** Files by programs nobody here wrote: maker.js and JSCAD's DXF serializer. Clean ones have no stop; planted faults are found. */

import serializer from "@jscad/dxf-serializer";
import { booleans, primitives, transforms } from "@jscad/modeling";
import maker from "makerjs";
import { describe, expect, it } from "vitest";
import type { Segment } from "../../../src/geometry/vocabulary.js";
import { readCutFile } from "../../../src/readers/dxf.js";
import { bytesOf } from "../../dxf-by-hand.js";
import { codesOf, prove, targetOf } from "../../proof-case.js";

const stopsOf = (bytes: Uint8Array) =>
  readCutFile(bytes)
    .findings.filter(({ severity }) => severity === "stop")
    .map(({ code }) => code);

/** The plate in inches as maker.js draws it: lines for the outline, circles for the holes. */
function makerPlate(mark: string): MakerJs.IModel {
  const { holes, outline } = targetOf(mark);
  const sides = outline?.kind === "path" ? outline.segments : [];
  const line = ({ from, to }: Segment) =>
    new maker.paths.Line([from.x / 25.4, from.y / 25.4], [to.x / 25.4, to.y / 25.4]);
  const circle = (hole: (typeof holes)[number]) =>
    new maker.paths.Circle([hole.at.x / 25.4, hole.at.y / 25.4], hole.diameter / 50.8);
  return {
    units: maker.unitType.Inch,
    paths: Object.fromEntries([
      ...sides.map((side, index) => [`side${index}`, line(side)] as const),
      ...holes.map((hole) => [hole.tag, circle(hole)] as const),
    ]),
  };
}

const written = (model: MakerJs.IModel, options: MakerJs.exporter.IDXFRenderOptions = {}) =>
  bytesOf(maker.exporter.toDXF(model, options));

describe("maker.js", () => {
  it.each([
    ["lines and circles", {}],
    ["POLYLINE", { usePOLYLINE: true }],
  ])("a clean plate of %s has no stop, alone and against its job", (_, options) => {
    const bytes = written(makerPlate("T4"), options);
    expect(stopsOf(bytes)).toEqual([]);
    const file = prove(bytes, "T4.dxf");
    expect(codesOf(file, "stop")).toEqual([]);
    expect(file.match).toMatchObject({ mark: "T4", turn: 0, mirrored: false, missing: 0, extra: 0 });
  });

  it("rounded outlines and rings are clean", () => {
    const rounded: MakerJs.IModel = {
      units: maker.unitType.Millimeter,
      models: {
        plate: new maker.models.RoundRectangle(300, 200, 20),
        holes: new maker.models.BoltRectangle(200, 100, 10),
        slot: maker.model.move(new maker.models.Slot([0, 0], [30, 0], 8), [135, 100]),
      },
    };
    const plain = readCutFile(
      written({
        ...rounded,
        models: { ...rounded.models, holes: maker.model.move(new maker.models.BoltRectangle(200, 100, 10), [50, 50]) },
      }),
    );
    expect(plain.findings.filter(({ severity }) => severity === "stop")).toEqual([]);
    expect(plain.holes).toHaveLength(4);
    expect(plain.openings).toHaveLength(1);
    const slot = 30 * 16 + 64 * Math.PI;
    expect(plain.netArea).toBeCloseTo(60000 - (4 - Math.PI) * 400 - 400 * Math.PI - slot, 3);
    const ring = written({ units: maker.unitType.Millimeter, models: { ring: new maker.models.Ring(200, 150) } });
    expect(stopsOf(ring)).toEqual([]);
  });

  const plate = (change: (paths: MakerJs.IPathMap) => void, mark = "T4") => {
    const model = makerPlate(mark);
    change(model.paths ?? {});
    return model;
  };
  const add = (paths: MakerJs.IPathMap, path: MakerJs.IPath) => {
    paths.more = path;
  };
  const alter = (paths: MakerJs.IPathMap, tag: string, by: Partial<MakerJs.IPathCircle>) => {
    Object.assign(paths[tag] ?? {}, by);
  };
  const faults: readonly (readonly [code: string, what: string, bytes: Uint8Array])[] = [
    ["open-contour", "a side left out", written(plate((paths) => void delete paths.side0))],
    ["crossing", "a hole over another", written(plate((paths) => add(paths, new maker.paths.Circle([6.5, 5], 0.6))))],
    [
      "overlap",
      "a side drawn over in part",
      written(plate((paths) => add(paths, new maker.paths.Line([-5, -9], [5, -9])))),
    ],
    [
      "duplicate",
      "a hole twice",
      written(plate((paths) => add(paths, maker.cloneObject(paths.A1 ?? new maker.paths.Circle(1))))),
    ],
    ["island", "a slug in the opening", written(plate((paths) => add(paths, new maker.paths.Circle([0, 0], 1))))],
    ["no-unit", "no unit", written({ paths: makerPlate("T4").paths ?? {} })],
    ["wrong-unit", "inches called millimetres", written({ ...makerPlate("T4"), units: maker.unitType.Millimeter })],
    ["hole-position", "a hole off by 1/16", written(plate((paths) => alter(paths, "A2", { origin: [6.0625, 5] })))],
    ["hole-diameter", "a hole of 1-1/4", written(plate((paths) => alter(paths, "A2", { radius: 0.625 })))],
    ["hole-missing", "a hole left out", written(plate((paths) => void delete paths.A3))],
    ["mirrored", "mirrored", written(maker.model.mirror(makerPlate("T4"), true, false))],
    [
      "stray-text",
      "a caption",
      written({ ...makerPlate("T4"), caption: { text: "TOP", anchor: new maker.paths.Line([0, 4], [2, 4]) } }),
    ],
  ];

  it.each(faults)("%s: %s", (code, _, bytes) => {
    expect(codesOf(prove(bytes, "T4.dxf"), "stop")).toContain(code);
  });

  it("a plate whose outline is not closed is not flatly called another, nor two", () => {
    const model = makerPlate("T4");
    delete model.paths?.side0;
    const { findings } = prove(written(model), "T4.dxf");
    const hedged = findings.filter(({ code }) => code === "second-outline" || code === "no-match");
    expect(hedged.length).toBeGreaterThan(0);
    for (const { message } of hedged)
      expect(message).toMatch(/ - unless the outline is the contour that is not closed$/);
  });
});

describe("JSCAD", () => {
  const { circle, rectangle } = primitives;
  const { translate } = transforms;
  /** The plate T4 in millimetres, circles of so many chords. */
  const plate = (segments: number, change = (hole: { x: number; y: number; radius: number }) => hole) => {
    const holes = targetOf("T4").holes.map(({ at, diameter }) => {
      const { x, y, radius } = change({ x: at.x, y: at.y, radius: diameter / 2 });
      return translate([x, y, 0], circle({ radius, segments }));
    });
    return booleans.subtract(rectangle({ size: [26 * 25.4, 18 * 25.4] }), ...holes);
  };
  const file = (geometry: unknown, geom2To: "lwpolyline" | "polyline" = "lwpolyline") =>
    bytesOf(serializer.serialize({ geom2To }, geometry).join(""));

  it.each(["lwpolyline", "polyline"] as const)(
    "a clean plate of %s has no stop, and its polygons are holes",
    (kind) => {
      const bytes = file(plate(180), kind);
      expect(stopsOf(bytes)).toEqual([]);
      const read = readCutFile(bytes);
      expect(read.findings.map(({ code }) => code)).toContain("polygon-hole");
      expect(read.holes).toHaveLength(5);
      expect(prove(bytes, "T4.dxf").match).toMatchObject({ mark: "T4", missing: 0, extra: 0, mirrored: false });
    },
  );

  it.each([
    ["coarse-polygon", "holes of 16 chords", plate(16)],
    [
      "hole-diameter",
      "holes of the rod's size",
      plate(180, (hole) => (hole.radius < 50 ? { ...hole, radius: 15.875 } : hole)),
    ],
    [
      "hole-position",
      "a hole off by 2 mm",
      plate(180, (hole) => (hole.x > 100 && hole.y > 0 ? { ...hole, x: hole.x + 2 } : hole)),
    ],
    ["mirrored", "mirrored", transforms.mirrorX(plate(180))],
  ])("%s: %s", (code, _, geometry) => {
    expect(codesOf(prove(file(geometry), "T4.dxf"), "stop")).toContain(code);
  });

  it("second-outline: two plates", () => {
    const two = [plate(180), translate([800, 0, 0], plate(180))];
    expect(stopsOf(bytesOf(serializer.serialize({}, ...two).join("")))).toContain("second-outline");
  });
});

/** Plates made by hand, for tests of the cut files: every outline, corner and opening, inch and metric. Invented data. */
import type { CutFileOptions } from "../src/formats/cut-file.js";
import {
  circle,
  extentOf,
  extentOfPoints,
  measureArea,
  measurePerimeter,
  point,
  polygon,
  rectangle,
  roundedRectangle,
} from "../src/geometry/index.js";
import type { Contour, Point } from "../src/geometry/vocabulary.js";
import type { Hole, HoleRole, Mark, MarkKind, Plate } from "../src/template/model.js";
import { inches, type Length, millimetres, NM_PER_MM, nanometres, type Unit } from "../src/units/length.js";

export interface CutPlate {
  readonly name: string;
  readonly unit: Unit;
  readonly plate: Plate;
  /** Lower left of the outline's extent, millimetres, worked out by hand or, for the slanted outline, by its geometry. */
  readonly lowerLeft: Point;
}

export const testLayers: CutFileOptions["layers"] = {
  outline: "OUTLINE",
  holes: "HOLES",
  openings: "OPENINGS",
  marks: "MARKS",
  drill: "DRILL",
};

/** Of a file that draws contours whole, unless `changes` say otherwise. */
export function cutOptions(unit: Unit, changes: Partial<CutFileOptions> = {}): CutFileOptions {
  return { draws: "whole", unit, layers: testLayers, origin: "lower left", marks: true, ...changes };
}

export function roundHole(tag: string, x: Length, y: Length, diameter: Length, role: HoleRole = "rod"): Hole {
  const center = { x: x / NM_PER_MM, y: y / NM_PER_MM };
  const rod = role === "rod" ? { size: "1", diameter: nanometres(diameter - 1_587_500) } : null;
  return {
    tag,
    role,
    center,
    shape: { kind: "circle", diameter },
    rod,
    made: "cut",
    contour: circle(center, diameter),
  };
}

export function rectangularOpening(width: Length, height: Length, radius: Length, center: Point): Hole {
  const contour = roundedRectangle(center, width, height, radius);
  const shape = { kind: "rectangle", width, height, radius } as const;
  return { tag: "OP1", role: "opening", center, shape, rod: null, made: "cut", contour };
}

export function strokes(kind: MarkKind, text: string, lines: readonly (readonly Point[])[]): Mark {
  return { kind, text, strokes: lines, extent: extentOfPoints(lines.flat()), textHeight: nanometres(0) };
}

export function plateOf(outer: Contour, holes: readonly Hole[], marks: readonly Mark[] = []): Plate {
  const cut = holes.filter((hole) => hole.made === "cut");
  const order = [...cut.filter((hole) => hole.role === "opening"), ...cut.filter((hole) => hole.role !== "opening")];
  return {
    mark: "T1",
    revision: "A",
    quantity: 1,
    material: "steel",
    grade: null,
    thickness: inches(0.25),
    outlineKind: outer.kind,
    region: { outer, inner: order.map((hole) => hole.contour) },
    holes,
    marks,
    omitted: [],
    keyed: null,
    wrong: [],
    sized: [],
    parted: null,
    lower: null,
  };
}

/** Figures by the plate's own geometry, in its unit: what summary.json would say. */
export function figuresOf({ plate, unit }: CutPlate): {
  readonly netArea: number;
  readonly cutLength: number;
  readonly extent: readonly [number, number, number, number];
  readonly pierces: number;
} {
  const { outer, inner } = plate.region;
  const mm = unit === "in" ? 25.4 : 1;
  const box = extentOf(outer);
  return {
    netArea: (measureArea(outer) - inner.reduce((sum, each) => sum + measureArea(each), 0)) / (mm * mm),
    cutLength: [outer, ...inner].reduce((sum, each) => sum + measurePerimeter(each), 0) / mm,
    extent: [0, 0, (box.x1 - box.x0) / mm, (box.y1 - box.y0) / mm],
    pierces: 1 + inner.length,
  };
}

const origin = point(0, 0);

function fourRods(x: Length, y: Length, diameter: Length): readonly Hole[] {
  const [hx, hy] = [nanometres(x / 2), nanometres(y / 2)];
  return [
    roundHole("A1", nanometres(-hx), hy, diameter),
    roundHole("A2", hx, hy, diameter),
    roundHole("A3", hx, nanometres(-hy), diameter),
    roundHole("A4", nanometres(-hx), nanometres(-hy), diameter),
  ];
}

function letters(x: number, y: number): Mark {
  return strokes("top", "TOP", [
    [point(x, y + 12), point(x + 8, y + 12)],
    [point(x + 4, y + 12), point(x + 4, y)],
    [point(x + 12, y), point(x + 20, y), point(x + 20, y + 12), point(x + 12, y + 12), point(x + 12, y)],
    [
      point(x + 24, y),
      point(x + 24, y + 12),
      point(x + 31.4, y + 12),
      point(x + 31.4, y + 5.5),
      point(x + 24, y + 5.5),
    ],
  ]);
}

function drilled(tag: string, x: Length, y: Length): { readonly hole: Hole; readonly mark: Mark } {
  const hole: Hole = { ...roundHole(tag, x, y, inches(0.1875), "nail"), made: "drill" };
  const { x: cx, y: cy } = hole.center;
  const cross = [
    [point(cx - 2, cy), point(cx + 2, cy)],
    [point(cx, cy - 2), point(cx, cy + 2)],
  ];
  return { hole, mark: strokes("punch", tag, cross) };
}

function chamfered(): CutPlate {
  const corner = { kind: "chamfer", x: inches(1), y: inches(1.5) } as const;
  const outer = rectangle(origin, inches(26), inches(18), corner);
  const opening = roundHole("OP1", inches(0), inches(0), inches(6), "opening");
  const nail = drilled("NH1", inches(11), inches(0));
  const holes = [...fourRods(inches(12), inches(10), inches(1.3125)), opening, nail.hole];
  const lines = strokes("centre-line", "", [[point(-320, 0), point(-300, 0)]]);
  return {
    name: "chamfered",
    unit: "in",
    plate: plateOf(outer, holes, [lines, letters(-60, 90), nail.mark]),
    lowerLeft: point(-330.2, -228.6),
  };
}

function rounded(): CutPlate {
  const outer = rectangle(point(37.5, -12.25), millimetres(450), millimetres(380.5), {
    kind: "round",
    radius: millimetres(25),
  });
  const opening = rectangularOpening(millimetres(150), millimetres(120), millimetres(20), point(10, 5));
  const holes = [...fourRods(millimetres(300), millimetres(240), millimetres(33)), opening];
  return {
    name: "rounded",
    unit: "mm",
    plate: plateOf(outer, holes, [letters(-60, 90)]),
    lowerLeft: point(-187.5, -202.5),
  };
}

function notched(): CutPlate {
  const outer = rectangle(origin, inches(15.140625), inches(14), { kind: "notch", x: inches(1.25), y: inches(0.75) });
  return {
    name: "notched",
    unit: "in",
    plate: plateOf(outer, fourRods(inches(9), inches(9), inches(0.953125))),
    lowerLeft: point(-192.285938, -177.8),
  };
}

function disc(): CutPlate {
  const outer = circle(point(3.3, 7.7), millimetres(611.111));
  const holes = Array.from({ length: 8 }, (_, index) => {
    const angle = (index * Math.PI) / 4 + Math.PI / 8;
    const at = point(3.3 + 230 * Math.cos(angle), 7.7 + 230 * Math.sin(angle));
    return roundHole(`A${index + 1}`, millimetres(at.x), millimetres(at.y), millimetres(27));
  });
  return { name: "disc", unit: "mm", plate: plateOf(outer, holes), lowerLeft: { x: -302.2555, y: -297.8555 } };
}

function ring(): CutPlate {
  const outer = circle(origin, inches(42.015625));
  const opening = roundHole("OP1", inches(0), inches(0), inches(30), "opening");
  const holes = Array.from({ length: 12 }, (_, index) => {
    const angle = (index * Math.PI) / 6;
    return roundHole(`A${index + 1}`, inches(18 * Math.cos(angle)), inches(18 * Math.sin(angle)), inches(1.5625));
  });
  return {
    name: "ring",
    unit: "in",
    plate: plateOf(outer, [...holes, opening]),
    lowerLeft: { x: -533.5984375, y: -533.5984375 },
  };
}

/** Six corners, one of them re-entrant: its fillet is hollow, and none of the sides is square to another. */
function filleted(unit: Unit): CutPlate {
  const corners = [
    point(-200.123, -140),
    point(190, -171.5),
    point(240.77, 90),
    point(60, 55.25),
    point(41.3, 190.001),
    point(-180, 160),
  ];
  const outer = polygon(corners, { kind: "round", radius: inches(0.8125) });
  const opening = rectangularOpening(inches(2), inches(1.5), inches(0.25), point(-75, -60));
  const holes = [
    roundHole("A1", millimetres(-150), millimetres(120), inches(1.0625)),
    roundHole("A2", millimetres(180), millimetres(-120), inches(1.0625)),
    opening,
  ];
  return {
    name: `filleted-${unit}`,
    unit,
    plate: plateOf(outer, holes),
    lowerLeft: { x: extentOf(outer).x0, y: extentOf(outer).y0 },
  };
}

function manyHoles(): CutPlate {
  const outer = rectangle(origin, inches(60), inches(30));
  const holes = Array.from({ length: 40 }, (_, index) => {
    const x = inches(-27 + 6 * (index % 10));
    return roundHole(`A${index + 1}`, x, inches(-12 + 8 * Math.floor(index / 10)), inches(1.125));
  });
  return { name: "forty-holes", unit: "in", plate: plateOf(outer, holes), lowerLeft: point(-762, -381) };
}

export const cutPlates: readonly CutPlate[] = [
  chamfered(),
  rounded(),
  notched(),
  disc(),
  ring(),
  filleted("in"),
  filleted("mm"),
  manyHoles(),
];

/** Entities beyond LINE, ARC, CIRCLE and LWPOLYLINE, by hand after the DXF reference: polylines of R12, blocks, curves. */
import { describe, expect, it } from "vitest";
import { readCutFile } from "../../../src/readers/dxf.js";
import type { Tag } from "../../dxf-by-hand.js";
import { arc, box, bytesOf, circle, fileOf, line, polyline } from "../../dxf-by-hand.js";

const read = (text: string) => readCutFile(bytesOf(text));
const codes = (text: string) => read(text).findings.map(({ code }) => code);
const round = (holes: ReturnType<typeof read>["holes"]) =>
  holes.map(({ x, y, diameter }) => [x, y, diameter].map((value) => Math.round(value * 1e6) / 1e6));

const vertex = (x: number, y: number, bulge = 0, flags = 0): readonly Tag[] => [
  [0, "VERTEX"],
  [8, "CUT"],
  [10, x],
  [20, y],
  [42, bulge],
  [70, flags],
];
const oldPolyline = (flags: number, vertices: readonly (readonly Tag[])[]): readonly Tag[] => [
  [0, "POLYLINE"],
  [8, "CUT"],
  [66, 1],
  [70, flags],
  ...vertices.flat(),
  [0, "SEQEND"],
  [8, "CUT"],
];

describe("POLYLINE of R12", () => {
  it("closed, with bulges, is a contour", () => {
    const slot = oldPolyline(1, [vertex(30, 20), vertex(50, 20, 1), vertex(50, 30), vertex(30, 30, 1)]);
    const file = read(fileOf([slot, box]));
    expect(file.findings).toMatchObject([{ code: "old-polyline", severity: "advise" }]);
    // Rectangle 20 x 10 and a circle of diameter 10.
    expect(file.netArea).toBeCloseTo(5000 - 200 - 25 * Math.PI, 9);
    expect(file.openings).toHaveLength(1);
  });

  it("of two half circles is a round hole", () => {
    const file = read(fileOf([oldPolyline(1, [vertex(20, 25, 1), vertex(30, 25, 1)]), box]));
    expect(round(file.holes)).toEqual([[25, 25, 10]]);
  });

  it("passes over the control points of a fitted curve", () => {
    const fitted = oldPolyline(1 + 4, [vertex(9, 9, 0, 16), vertex(20, 25, 1), vertex(30, 25, 1)]);
    expect(round(read(fileOf([fitted, box])).holes)).toEqual([[25, 25, 10]]);
  });

  it.each([
    ["unread-entity", "a mesh", fileOf([oldPolyline(64, [vertex(0, 0), vertex(1, 1)]), box])],
    ["no-seqend", "not ended", fileOf([oldPolyline(1, [vertex(20, 25, 1), vertex(30, 25, 1)]).slice(0, -2), box])],
    [
      "width",
      "with a width",
      fileOf([[...oldPolyline(0, []).slice(0, 4), [40, 2], ...vertex(1, 1), ...vertex(2, 2), [0, "SEQEND"]], box]),
    ],
  ])("%s: %s", (code, _, text) => {
    expect(codes(text)).toContain(code);
  });
});

const block = (name: string, x: number, y: number, content: readonly (readonly Tag[])[]): readonly Tag[] => [
  [0, "BLOCK"],
  [2, name],
  [10, x],
  [20, y],
  ...content.flat(),
  [0, "ENDBLK"],
];
const insert = (name: string, x: number, y: number, ...more: readonly Tag[]): readonly Tag[] => [
  [0, "INSERT"],
  [8, "CUT"],
  [2, name],
  [10, x],
  [20, y],
  ...more,
];

describe("INSERT", () => {
  // A circle of diameter 4, 10 to the right and 2 above the base point.
  const hole = block("HOLE", 1, 1, [circle(11, 3, 2, "0")]);
  const centers = (...entities: readonly (readonly Tag[])[]) =>
    round(read(fileOf([...entities, box], { blocks: hole })).holes);

  it.each([
    ["as it is", insert("HOLE", 20, 20), [[30, 22, 4]]],
    ["by a name in other letters", insert("hole", 20, 20), [[30, 22, 4]]],
    ["scaled", insert("HOLE", 20, 20, [41, 2], [42, 2]), [[40, 24, 8]]],
    ["turned by 90", insert("HOLE", 20, 20, [50, 90]), [[18, 30, 4]]],
    ["mirrored", insert("HOLE", 30, 20, [41, -1]), [[20, 22, 4]]],
    ["mirrored, then turned by 90", insert("HOLE", 30, 30, [41, -1], [50, 90]), [[28, 20, 4]]],
    ["from below", insert("HOLE", -40, 20, [230, -1]), [[30, 22, 4]]],
    [
      "in two columns and two rows",
      insert("HOLE", 10, 10, [70, 2], [71, 2], [44, 20], [45, 15]),
      [
        [20, 12, 4],
        [40, 12, 4],
        [20, 27, 4],
        [40, 27, 4],
      ],
    ],
  ] as const)("%s", (_, entity, expected) => {
    expect(centers(entity)).toEqual(expected);
  });

  it("nested takes layer 0 from the insert", () => {
    const blocks = [
      ...hole,
      ...block(
        "PAIR",
        0,
        0,
        [insert("HOLE", 0, 0), insert("HOLE", 30, 0)].map((each) =>
          each.map((tag) => (tag[0] === 8 ? ([8, "0"] as const) : tag)),
        ),
      ),
    ];
    const file = read(fileOf([insert("PAIR", 10, 20), box], { blocks }));
    expect(file.holes.map(({ x, layer }) => [x, layer])).toEqual([
      [20, "CUT"],
      [50, "CUT"],
    ]);
    expect(file.findings).toMatchObject([{ code: "inserted-block", severity: "advise" }]);
  });

  it("mirrored keeps arcs on their side", () => {
    // A half disc open to the right, mirrored about x = 20: area and box tell the side.
    const blocks = block("D", 0, 0, [arc(0, 0, 5, 270, 90), line(0, -5, 0, 5)]);
    const [opening] = read(fileOf([insert("D", 20, 25, [41, -1]), box], { blocks })).openings;
    expect(opening?.extent.map((value) => Math.round(value * 1e9) / 1e9)).toEqual([15, 20, 20, 30]);
    expect(opening?.area).toBeCloseTo(12.5 * Math.PI, 9);
  });

  const self = block("A", 0, 0, [insert("B", 0, 0)]);
  const other = block("B", 0, 0, [insert("A", 0, 0)]);
  const doubling = Array.from({ length: 25 }, (_, n) =>
    block(`N${n}`, 0, 0, n === 0 ? [circle(0, 0, 1)] : [insert(`N${n - 1}`, 0, 0), insert(`N${n - 1}`, 5, 0)]),
  ).flat();
  it.each([
    ["block-cycle", "a block in itself", fileOf([insert("A", 0, 0), box], { blocks: [...self, ...other] })],
    ["too-many-inserted", "25 blocks that double", fileOf([insert("N24", 0, 0), box], { blocks: doubling })],
    ["too-many-inserted", "a million columns", fileOf([insert("HOLE", 0, 0, [70, 1e6]), box], { blocks: hole })],
    ["uneven-scale", "a circle made an ellipse", fileOf([insert("HOLE", 20, 20, [41, 2]), box], { blocks: hole })],
    ["block-missing", "a block that is not there", fileOf([insert("X", 20, 20), box], { blocks: hole })],
  ])("%s: %s", (code, _, text) => {
    expect(read(text).findings).toContainEqual(expect.objectContaining({ code, severity: "stop" }));
  });
});

const spline = (
  degree: number,
  knots: readonly number[],
  points: readonly (readonly [number, number, number])[],
): readonly Tag[] => [
  [0, "SPLINE"],
  [8, "CUT"],
  [70, 8],
  [71, degree],
  ...knots.map((knot): Tag => [40, knot]),
  ...points.map(([, , weight]): Tag => [41, weight]),
  ...points.flatMap(([x, y]): Tag[] => [
    [10, x],
    [20, y],
  ]),
];
const half = Math.SQRT1_2;
/** The rational quadratic circle of nine points (Piegl and Tiller, The NURBS Book, 2nd ed., example 7.1). */
const circleKnots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4];
const circlePoints = (x: number, y: number, r: number) =>
  (
    [
      [1, 0, 1],
      [1, 1, half],
      [0, 1, 1],
      [-1, 1, half],
      [-1, 0, 1],
      [-1, -1, half],
      [0, -1, 1],
      [1, -1, half],
      [1, 0, 1],
    ] as const
  ).map(([dx, dy, weight]) => [x + r * dx, y + r * dy, weight] as const);
/** Four cubics with handles of 0.5522847498 r: off the circle by 2.7e-4 r at most. */
const k = 0.5522847498;
const bezierCircle = (x: number, y: number, r: number) =>
  spline(
    3,
    [0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 4],
    (
      [
        [1, 0],
        [1, k],
        [k, 1],
        [0, 1],
        [-k, 1],
        [-1, k],
        [-1, 0],
        [-1, -k],
        [-k, -1],
        [0, -1],
        [k, -1],
        [1, -k],
        [1, 0],
      ] as const
    ).map(([dx, dy]) => [x + r * dx, y + r * dy, 1] as const),
  );
const ellipse = (
  x: number,
  y: number,
  major: readonly [number, number],
  ratio: number,
  ...more: readonly Tag[]
): readonly Tag[] => [
  [0, "ELLIPSE"],
  [8, "CUT"],
  [10, x],
  [20, y],
  [11, major[0]],
  [21, major[1]],
  [40, ratio],
  ...more,
];

describe("curves", () => {
  it.each([
    ["a rational spline", spline(2, circleKnots, circlePoints(30, 20, 8)), 16],
    ["a spline of cubics", bezierCircle(30, 20, 8), 16],
    ["an ellipse of one radius", ellipse(30, 20, [0, 8], 1), 16],
  ])("%s that is a circle is one", (_, entity, diameter) => {
    const file = read(fileOf([entity, box]));
    expect(file.findings).toMatchObject([{ code: "round-curve", severity: "advise" }]);
    expect(file.holes).toHaveLength(1);
    expect(Math.hypot((file.holes[0]?.x ?? 0) - 30, (file.holes[0]?.y ?? 0) - 20)).toBeLessThan(0.003);
    expect(Math.abs((file.holes[0]?.diameter ?? 0) - diameter)).toBeLessThan(0.006);
  });

  it("the tolerance is 0.025 mm: cubics of radius 80 hold it, of radius 200 do not", () => {
    const plate = polyline(true, [
      [0, 0],
      [1000, 0],
      [1000, 1000],
      [0, 1000],
    ]);
    expect(codes(fileOf([bezierCircle(500, 500, 80), plate]))).toContain("round-curve");
    expect(codes(fileOf([bezierCircle(500, 500, 200), plate]))).toContain("free-curve");
  });

  it("a spline that is an arc closes with its neighbours", () => {
    const quarter = spline(
      2,
      [0, 0, 0, 1, 1, 1],
      [
        [100, 40, 1],
        [100, 50, half],
        [90, 50, 1],
      ],
    );
    const file = read(
      fileOf([line(0, 0, 100, 0), line(100, 0, 100, 40), quarter, line(90, 50, 0, 50), line(0, 50, 0, 0)]),
    );
    expect(file.findings).toMatchObject([{ code: "round-curve" }]);
    expect(file.netArea).toBeCloseTo(5000 - 100 + 25 * Math.PI, 6);
  });

  it("a half ellipse of one radius is an arc, from below the other one", () => {
    const upper = [41, 0] as const;
    const lower = [42, Math.PI] as const;
    const chord = line(22, 20, 38, 20);
    const extentOf = (...more: readonly Tag[]) =>
      read(fileOf([ellipse(30, 20, [8, 0], 1, upper, lower, ...more), chord, box])).openings[0]?.extent.map(Math.round);
    expect(extentOf()).toEqual([22, 20, 38, 28]);
    expect(extentOf([210, 0], [220, 0], [230, -1])).toEqual([22, 12, 38, 20]);
  });

  it("a spline along a line is a line", () => {
    const side = spline(
      3,
      [0, 0, 0, 0, 1, 1, 1, 1],
      [
        [0, 0, 1],
        [20, 0, 1],
        [60, 0, 1],
        [100, 0, 1],
      ],
    );
    const file = read(fileOf([side, line(100, 0, 100, 50), line(100, 50, 0, 50), line(0, 50, 0, 0)]));
    expect(file).toMatchObject({ netArea: 5000, findings: [{ code: "round-curve" }] });
  });

  it.each([
    ["free-curve", "an ellipse", ellipse(30, 20, [8, 0], 0.5)],
    ["bad-spline", "knots that do not ascend", spline(2, [0, 0, 0, 2, 1, 1], circlePoints(0, 0, 1).slice(0, 3))],
    ["bad-spline", "too few knots", spline(2, [0, 0, 1], circlePoints(0, 0, 1).slice(0, 3))],
    [
      "bad-spline",
      "a weight of zero",
      spline(
        2,
        [0, 0, 0, 1, 1, 1],
        [
          [0, 0, 0],
          [1, 1, 1],
          [2, 0, 1],
        ],
      ),
    ],
    ["bad-spline", "a degree of 40", spline(40, [0, 1], circlePoints(0, 0, 1))],
    ["incomplete", "an ellipse without its ratio", ellipse(30, 20, [8, 0], 0.5).slice(0, -1)],
    ["extrusion", "an ellipse on its side", ellipse(30, 20, [8, 0], 1, [210, 1], [230, 0])],
    ["bad-number", "a spline with a letter", [...spline(2, circleKnots, circlePoints(30, 20, 8)), [40, "x"]] as const],
  ])("%s: %s", (code, _, entity) => {
    expect(codes(fileOf([entity, box]))).toContain(code);
  });
});

describe("entities drawn from below", () => {
  const below: readonly Tag[] = [
    [210, 0],
    [220, 0],
    [230, -1],
  ];
  it("stand at -x: circle, arc and polyline, not a line", () => {
    const file = read(
      fileOf([
        [...circle(-20, 25, 5), ...below],
        [...arc(-60, 25, 5, 270, 90), ...below],
        [...line(60, 20, 60, 30), ...below],
        [
          ...polyline(true, [
            [-80, 10, 1],
            [-90, 10, 1],
          ]),
          ...below,
        ],
        box,
      ]),
    );
    expect(round(file.holes)).toEqual([
      [20, 25, 10],
      [85, 10, 10],
    ]);
    expect(file.openings[0]?.extent.map(Math.round)).toEqual([55, 20, 60, 30]);
    expect(file.findings.map(({ code }) => code)).toEqual(Array(3).fill("mirrored-extrusion"));
  });
});

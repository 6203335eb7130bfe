/** Contours against each other: crossings, overlaps, islands, further outlines; marks told from cuts; polygons for circles. */
import { describe, expect, it } from "vitest";
import { readCutFile } from "../../../src/readers/dxf.js";
import type { Tag } from "../../dxf-by-hand.js";
import { arc, box, bytesOf, circle, extents, fileOf, header, layer, line, polyline } from "../../dxf-by-hand.js";

const read = (text: string) => readCutFile(bytesOf(text));
const codes = (text: string) => read(text).findings.map(({ code }) => code);
const square = (x: number, y: number, side: number, on = "CUT") =>
  polyline(
    true,
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
    on,
  );

describe("what is cut against itself", () => {
  it.each([
    ["crossing", "two holes that overlap", [circle(30, 25, 8), circle(40, 25, 8)]],
    ["crossing", "two holes that touch", [circle(30, 25, 5), circle(40, 25, 5)]],
    ["crossing", "a hole across an opening", [circle(30, 25, 5), square(32, 20, 10)]],
    ["crossing", "a hole across the edge", [circle(99, 25, 5)]],
    ["crossing", "a corner on an edge", [square(0, 10, 10)]],
    [
      "self-crossing",
      "a bow tie",
      [
        polyline(true, [
          [20, 10],
          [40, 30],
          [40, 10],
          [20, 30],
        ]),
      ],
    ],
    ["overlap", "a side shared by two openings", [square(20, 10, 10), square(30, 12, 10)]],
    ["overlap", "a line over part of a side", [line(10, 0, 60, 0, "EXTRA")]],
    ["overlap", "an arc over part of a circle", [circle(30, 25, 8), arc(30, 25, 8, 10, 80)]],
    [
      "overlap",
      "a circle over two half circles",
      [
        circle(30, 25, 8),
        polyline(true, [
          [22, 25, 1],
          [38, 25, 1],
        ]),
      ],
    ],
    [
      "duplicate",
      "two half circles twice, the other way round",
      [
        polyline(true, [
          [22, 25, 1],
          [38, 25, 1],
        ]),
        polyline(true, [
          [22, 25, -1],
          [38, 25, -1],
        ]),
      ],
    ],
  ] as const)("%s: %s", (code, _, entities) => {
    expect(read(fileOf([...entities, box])).findings).toContainEqual(
      expect.objectContaining({ code, severity: "stop" }),
    );
  });

  it("rounded corners and holes near each other do not cross", () => {
    const bulge = Math.SQRT2 - 1;
    const rounded = polyline(true, [
      [5, 0],
      [95, 0, bulge],
      [100, 5],
      [100, 45, bulge],
      [95, 50],
      [5, 50, bulge],
      [0, 45],
      [0, 5, bulge],
    ]);
    expect(codes(fileOf([circle(30, 25, 5), circle(40.1, 25, 5), rounded]))).toEqual([]);
  });
});

describe("what lies in what", () => {
  it("an island in a hole is told, and is material", () => {
    const file = read(fileOf([circle(30, 25, 3), circle(30, 25, 10), box]));
    expect(file.findings).toMatchObject([{ code: "island", severity: "stop", count: 1 }]);
    expect(file.holes).toHaveLength(1);
    expect(file.netArea).toBeCloseTo(5000 - 100 * Math.PI + 9 * Math.PI, 9);
  });

  it("a ring is an outline with a hole about one centre", () => {
    const file = read(
      fileOf([circle(50, 25, 10), circle(50, 25, 24)], { head: [...header, ...extents(26, 1, 74, 49)] }),
    );
    expect(file.findings.filter(({ severity }) => severity === "stop")).toEqual([]);
    expect(file.netArea).toBeCloseTo((24 * 24 - 100) * Math.PI, 9);
  });

  it.each([
    ["second-outline", "two parts", square(120, 0, 40)],
    ["outside-outline", "a small circle beside the part", circle(120, 25, 3)],
  ] as const)("%s: %s", (code, _, entity) => {
    const file = read(fileOf([entity, box], { head: [...header, ...extents(0, 0, 160, 50)] }));
    expect(file.findings).toContainEqual(expect.objectContaining({ code, severity: "stop" }));
    expect(file.netArea).toBe(5000);
  });

  it("an outline of many corners knows what is inside", () => {
    const corners = Array.from({ length: 400 }, (_, index): readonly [number, number] => {
      const [angle, radius] = [(index * Math.PI) / 200, index % 2 === 0 ? 40 : 45];
      return [50 + radius * Math.cos(angle), 50 + radius * Math.sin(angle)];
    });
    const star = (entities: readonly (readonly Tag[])[]) => read(fileOf([...entities, polyline(true, corners)]));
    expect(star([circle(50, 50, 3), circle(80, 50, 3)]).holes).toHaveLength(2);
    expect(star([circle(94, 94, 2)]).findings).toContainEqual(expect.objectContaining({ code: "outside-outline" }));
  });
});

describe("marks", () => {
  const letterT = (on: string) => [line(20, 30, 30, 30, on), line(25, 20, 25, 30, on), line(25, 30, 25, 32, on)];

  it.each([
    ["by their name", "SCRIBE"],
    ["by what they are", "LAYER7"],
  ])("%s may branch, and are no contours", (_, on) => {
    const file = read(fileOf([...letterT(on), square(40, 20, 3, on), box], { layers: [layer("CUT"), layer(on)] }));
    expect(file.findings).toMatchObject([{ code: "open-strokes", severity: "advise", count: 1 }]);
    expect(file).toMatchObject({ pierces: 1, netArea: 5000 });
    expect(file.closedMarks).toHaveLength(1);
  });

  it("closed ones alone are known by the layer's name, or by the names handed in", () => {
    expect(read(fileOf([square(40, 20, 3, "MARK"), box]))).toMatchObject({ pierces: 1 });
    const odd = bytesOf(fileOf([square(40, 20, 3, "LAYER7"), box]));
    expect(readCutFile(odd)).toMatchObject({ pierces: 2 });
    expect(readCutFile(odd, { layers: { cut: ["cut"], mark: ["layer7"] } })).toMatchObject({ pierces: 1 });
  });

  it("open strokes on a layer that is named for cutting are open contours", () => {
    expect(codes(fileOf([...letterT("HOLES"), box]))).toContain("open-contour");
  });

  it("one open stroke among many closed contours is an open contour", () => {
    const file = read(fileOf([circle(20, 25, 3, "L2"), circle(30, 25, 3, "L2"), arc(40, 25, 3, 0, 200, "L2"), box]));
    expect(file.pierces).toBe(3);
    expect(file.findings).toContainEqual(expect.objectContaining({ code: "open-contour", severity: "stop" }));
  });

  it.each([
    ["mark-on-cut", "across a hole", [line(20, 25, 40, 25, "MARK"), circle(30, 25, 5)]],
    ["mark-outside", "beyond the outline", [line(90, 25, 110, 25, "MARK")]],
    ["mark-twice", "drawn twice", [line(20, 25, 40, 25, "MARK"), line(40, 25, 20, 25, "MARK")]],
  ] as const)("%s: %s", (code, _, entities) => {
    expect(read(fileOf([...entities, box])).findings).toContainEqual(
      expect.objectContaining({ code, severity: "advise" }),
    );
  });
});

describe("polygons that stand for circles", () => {
  const polygon = (sides: number, radius: number) =>
    polyline(
      true,
      Array.from({ length: sides }, (_, index): readonly [number, number] => {
        const angle = (2 * Math.PI * index) / sides;
        return [50 + radius * Math.cos(angle), 25 + radius * Math.sin(angle)];
      }),
    );

  it.each([
    // sagitta = r (1 - cos(180 degrees / sides)): 0.012 mm, and 0.34 mm
    ["polygon-hole", "advise", 128],
    ["coarse-polygon", "stop", 24],
  ])("%s (%s): %i sides", (code, severity, sides) => {
    const file = read(fileOf([polygon(sides, 40 / 2), box]));
    if (code === "coarse-polygon") expect(20 * (1 - Math.cos(Math.PI / sides))).toBeGreaterThan(0.15);
    expect(file.findings).toMatchObject([{ code, severity }]);
    expect(file.holes[0]?.diameter).toBeCloseTo(40, 9);
  });

  it("a hexagon is an opening", () => {
    expect(read(fileOf([polygon(6, 10), box]))).toMatchObject({ holes: [], openings: [{}], findings: [] });
  });
});

describe("the whole file", () => {
  it.each([
    ["newer-entity", "stop", fileOf([box]).replace("AC1015", "AC1009")],
    ["odd-size", "advise", fileOf([square(0, 0, 20)], { head: [...header, ...extents(0, 0, 20, 20)] })],
    ["odd-size", "advise", fileOf([box]).replace("$INSUNITS\n70\n4", "$INSUNITS\n70\n6")],
    ["far-away", "advise", fileOf([square(1e6, 1e6, 100)])],
    [
      "stray-text",
      "stop",
      fileOf([
        box,
        [
          [0, "TEXT"],
          [8, "CUT"],
          [10, 5],
          [20, 5],
          [40, 2],
          [1, "TOP"],
        ],
      ]),
    ],
    [
      "stray-text",
      "stop",
      fileOf([
        box,
        [
          [0, "MTEXT"],
          [8, "CUT"],
          [10, 5],
          [20, 5],
          [1, "TOP"],
        ],
      ]),
    ],
    [
      "stray-dimension",
      "stop",
      fileOf([
        box,
        [
          [0, "DIMENSION"],
          [8, "CUT"],
          [10, 5],
          [20, 5],
        ],
      ]),
    ],
    [
      "stray-hatch",
      "stop",
      fileOf([
        box,
        [
          [0, "HATCH"],
          [8, "CUT"],
          [10, 5],
          [20, 5],
        ],
      ]),
    ],
    [
      "stray-point",
      "stop",
      fileOf([
        box,
        [
          [0, "POINT"],
          [8, "CUT"],
          [10, 5],
          [20, 5],
        ],
      ]),
    ],
    [
      "stray-picture",
      "stop",
      fileOf([
        box,
        [
          [0, "IMAGE"],
          [8, "CUT"],
          [10, 5],
          [20, 5],
        ],
      ]),
    ],
    ["layer-hidden", "advise", fileOf([box], { layers: [[...layer("CUT").slice(0, 2), [70, 1], [62, 7]]] })],
  ] as const)("%s (%s)", (code, severity, text) => {
    expect(read(text).findings).toContainEqual(expect.objectContaining({ code, severity }));
  });
});

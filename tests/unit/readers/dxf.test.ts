/** Cut files of other makers, written by hand after the published DXF reference, and what is wrong with them. */
import { describe, expect, it } from "vitest";
import { readCutFile } from "../../../src/readers/dxf.js";
import { arc, box, bytesOf, circle, extents, fileOf, header, join, layer, line, polyline } from "../../dxf-by-hand.js";

const looseBox = [line(0, 0, 100, 0), line(100, 50, 100, 0), line(100, 50, 0, 50), line(0, 0, 0, 50)];

const read = (text: string) => readCutFile(bytesOf(text));
const codesOf = (text: string) => read(text).findings.map(({ code }) => code);

describe("a clean file", () => {
  it("gives contours, holes and figures", () => {
    const file = read(fileOf([circle(20, 25, 5), circle(80, 25, 5), box]));
    expect(file).toMatchObject({ version: "AC1015", unit: "mm", layers: ["CUT", "MARK"], findings: [], pierces: 3 });
    expect(file.outline).toEqual({ layer: "CUT", extent: [0, 0, 100, 50], area: 5000 });
    expect(file.holes).toEqual([
      { x: 20, y: 25, diameter: 10, layer: "CUT" },
      { x: 80, y: 25, diameter: 10, layer: "CUT" },
    ]);
    expect(file.cutLength).toBeCloseTo(300 + 20 * Math.PI, 12);
    expect(file.netArea).toBeCloseTo(5000 - 50 * Math.PI, 12);
  });

  it.each([
    ["CR LF", "\r\n"],
    ["CR", "\r"],
  ])("with lines ended by %s is the same", (_, end) => {
    const text = fileOf([circle(20, 25, 5), box]);
    expect(read(text.replaceAll("\n", end))).toEqual(read(text));
  });

  it("with a byte-order mark, blanks around codes and values, comments and no last line end is the same", () => {
    const text = fileOf([circle(20, 25, 5), box]);
    const padded = text.replace(/^(\d+)\n(.*)$/gm, "  $1\n $2 ");
    expect(read(`\uFEFF999\nmade by hand\n${padded.trimEnd()}`)).toEqual(read(text));
  });

  it("of loose lines in any order and direction has one contour", () => {
    expect(read(fileOf(looseBox))).toMatchObject({ findings: [], pierces: 1, netArea: 5000, cutLength: 300 });
  });

  it("of lines and arcs has true areas and extents", () => {
    const slot = [line(25, 0, 75, 0), arc(75, 25, 25, 270, 90), line(75, 50, 25, 50), arc(25, 25, 25, 90, 270)];
    const file = read(fileOf(slot));
    expect(file.findings).toEqual([]);
    expect(file.netArea).toBeCloseTo(2500 + 625 * Math.PI, 9);
    expect(file.cutLength).toBeCloseTo(100 + 50 * Math.PI, 10);
  });

  it.each([
    [
      "two bulges of 1",
      polyline(true, [
        [10, 25, 1],
        [20, 25, 1],
      ]),
    ],
    [
      "four hollow quarters",
      polyline(
        true,
        [
          [10, 25],
          [15, 30],
          [20, 25],
          [15, 20],
        ].map(([x = 0, y = 0]) => [x, y, 1 - Math.SQRT2] as const),
      ),
    ],
    ["an arc of 360 degrees", arc(15, 25, 5, 0, 360)],
  ])("knows a hole of %s", (_, hole) => {
    const [found] = read(fileOf([hole, box])).holes;
    expect(found?.x).toBeCloseTo(15, 9);
    expect(found?.y).toBeCloseTo(25, 9);
    expect(found?.diameter).toBeCloseTo(10, 9);
  });

  it("keeps marks apart: open strokes, and closed ones on their layer", () => {
    const strokes = [
      line(30, 10, 40, 10, "MARK"),
      polyline(
        true,
        [
          [45, 10],
          [50, 10],
          [50, 15],
        ],
        "MARK",
      ),
    ];
    const file = read(fileOf([...strokes, box]));
    expect(file).toMatchObject({ pierces: 1, netArea: 5000, findings: [{ code: "open-strokes", severity: "advise" }] });
    expect([file.openStrokes.length, file.closedMarks.length]).toEqual([1, 1]);
  });
});

describe("a fault", () => {
  const faults: readonly (readonly [string, string, string])[] = [
    ["no-unit", "a unit that is not said", fileOf([box], { head: extents(0, 0, 100, 50) })],
    [
      "no-version",
      "a version that is not said",
      fileOf([box], { head: [...header.slice(2), ...extents(0, 0, 100, 50)] }),
    ],
    [
      "no-measurement",
      "the measurement missing",
      fileOf([box], { head: [...header.slice(0, 4), ...extents(0, 0, 100, 50)] }),
    ],
    [
      "unit-contradiction",
      "millimetres with English measurement",
      fileOf([box]).replace("$MEASUREMENT\n70\n1", "$MEASUREMENT\n70\n0"),
    ],
    ["no-extents", "extents missing", fileOf([box], { head: header })],
    ["no-extents", "extents unset", fileOf([box], { head: [...header, ...extents(1e20, 1e20, -1e20, -1e20)] })],
    [
      "extents",
      "extents of the ends of an arc only",
      fileOf([arc(50, 0, 50, 0, 180), line(0, 0, 100, 0)], { head: [...header, ...extents(0, 0, 100, 0)] }),
    ],
    ["open-contour", "a gap in the outline", fileOf(looseBox.slice(1))],
    ["open-contour", "a gap in the outline beside a hole", fileOf([circle(50, 25, 5), ...looseBox.slice(1)])],
    [
      "open-contour",
      "the outline open on a layer of its own",
      fileOf([circle(50, 25, 5, "MARK"), ...looseBox.slice(1)]),
    ],
    ["open-contour", "a hole that all but closes", fileOf([arc(50, 25, 5, 0, 357, "INNER"), box])],
    ["no-contour", "nothing closed", fileOf([line(0, 0, 100, 50)])],
    ["duplicate", "a circle twice", fileOf([circle(50, 25, 5), circle(50, 25, 5), box])],
    [
      "duplicate",
      "a contour twice, the other way round",
      fileOf([
        polyline(true, [
          [0, 50],
          [100, 50],
          [100, 0],
          [0, 0],
        ]),
        box,
      ]),
    ],
    ["duplicate", "a line on a polyline's side", fileOf([box, line(100, 0, 0, 0)])],
    ["branch", "a line that ends on a corner", fileOf([...looseBox, line(0, 0, 30, 30)])],
    [
      "closed-flag",
      "a polyline closed by its last vertex only",
      fileOf([
        polyline(false, [
          [0, 0],
          [100, 0],
          [100, 50],
          [0, 50],
          [0, 0],
        ]),
      ]),
    ],
    [
      "repeated-vertex",
      "a closing vertex repeated",
      fileOf([
        polyline(true, [
          [0, 0],
          [100, 0],
          [100, 50],
          [0, 50],
          [0, 0],
        ]),
      ]),
    ],
    ["zero-length", "a line without length", fileOf([box, line(50, 25, 50, 25)])],
    [
      "tiny-segment",
      "a short side",
      fileOf([
        polyline(true, [
          [0, 0],
          [100, 0],
          [100, 50],
          [0.05, 50],
          [0, 50],
        ]),
      ]),
    ],
    ["joint-gap", "ends that just miss", fileOf([...looseBox.slice(1), line(0, 0, 99.995, 0)])],
    ["joint-gap", "ends that miss by a micrometre", fileOf([...looseBox.slice(1), line(0, 0, 99.999, 0)])],
    [
      "outside-outline",
      "a hole beyond the outline",
      fileOf([circle(99, 25, 5), box], { head: [...header, ...extents(0, 0, 104, 50)] }),
    ],
    ["layer-unknown", "a layer that is not in the table", fileOf([box], { layers: [layer("MARK")] })],
    ["layer-hidden", "a layer that is off", fileOf([box], { layers: [layer("CUT", -7)] })],
    [
      "unread-entity",
      "a region",
      fileOf([
        box,
        [
          [0, "REGION"],
          [8, "CUT"],
        ],
      ]),
    ],
    [
      "bad-spline",
      "a spline without points",
      fileOf([
        box,
        [
          [0, "SPLINE"],
          [8, "CUT"],
          [70, 8],
        ],
      ]),
    ],
    [
      "incomplete",
      "a polyline of R12 with one vertex",
      fileOf([
        [
          [0, "POLYLINE"],
          [8, "CUT"],
          [66, 1],
          [70, 1],
        ],
        [
          [0, "VERTEX"],
          [8, "CUT"],
          [10, 0],
          [20, 0],
        ],
        [[0, "SEQEND"]],
      ]),
    ],
    [
      "block-missing",
      "a block that is not there",
      fileOf([
        box,
        [
          [0, "INSERT"],
          [8, "CUT"],
          [2, "HOLE"],
          [10, 0],
          [20, 0],
        ],
      ]),
    ],
    ["extrusion", "a circle on its side", fileOf([box, [...circle(50, 25, 5), [210, 1], [220, 0], [230, 0]]])],
    [
      "mirrored-extrusion",
      "a circle from below",
      fileOf([box, [...circle(-50, 25, 5), [210, 0], [220, 0], [230, -1]]]),
    ],
    ["elevation", "a contour off the plane", fileOf([[...box, [38, 12]]])],
    ["thickness", "a line with a thickness", fileOf([[...box, [39, 12]]])],
    ["invisible", "an entity that is not shown", fileOf([[...box, [60, 1]]])],
    ["paper-space", "an entity on the paper", fileOf([box, [...circle(50, 25, 5), [67, 1]]])],
    ["width", "a polyline with a width", fileOf([[...box, [43, 2]]])],
    ["vertex-count", "a vertex lost", fileOf([box]).replace("\n90\n4\n", "\n90\n5\n")],
    ["bad-radius", "a circle of no radius", fileOf([box, circle(50, 25, 0)])],
    ["bad-number", "a comma for the point", fileOf([box, circle(50, 25, 5)]).replace("40\n5\n", "40\n5,5\n")],
    ["bad-number", "NaN", fileOf([box, circle(50, 25, 5)]).replace("40\n5\n", "40\nNaN\n")],
    ["bad-number", "a number beyond all bounds", fileOf([box, circle(50, 25, 5)]).replace("40\n5\n", "40\n1e999\n")],
    ["incomplete", "a circle without its radius", fileOf([box, circle(50, 25, 5).slice(0, 4)])],
    ["incomplete", "a polyline of one vertex", fileOf([box, polyline(true, [[1, 1]])])],
    ["exponent", "an exponent", fileOf([box, circle(50, 25, 5)]).replace("40\n5\n", "40\n0.5E1\n")],
    ["minus-zero", "a minus zero", fileOf([box, circle(50, 25, 5)]).replace("10\n0\n", "10\n-0.0\n")],
    [
      "block-content",
      "geometry in a block",
      fileOf([box]).replace(
        "0\nSECTION\n2\nENTITIES\n",
        `0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nHOLE\n${join(circle(0, 0, 1))}0\nENDBLK\n0\nENDSEC\n$&`,
      ),
    ],
    ["no-entities", "no entities", fileOf([]).replace("ENTITIES", "OBJECTS")],
    [
      "section-twice",
      "a section twice",
      fileOf([box]).replace("0\nEOF\n", "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n"),
    ],
    ["truncated", "the end missing", fileOf([box]).slice(0, -30)],
    ["truncated", "the end mark missing", fileOf([box]).replace("0\nEOF\n", "")],
    ["truncated", "a section that is not closed", fileOf([box]).replace("0\nENDSEC\n0\nEOF", "0\nEOF")],
    ["after-end", "more after the end", `${fileOf([box])}0\nLINE\n`],
    ["bad-group-code", "a line too many", fileOf([box]).replace("ENTITIES\n", "ENTITIES\nLINE\n")],
    ["non-ascii", "letters outside ASCII", fileOf([box]).replaceAll("MARK", "Zögern")],
    ["empty", "nothing", ""],
    ["binary", "a binary file", "AutoCAD Binary DXF\r\n\x1a\x00rest"],
    ["binary", "NUL bytes", `${fileOf([box])}\x00`],
    ["dwg", "a drawing in the other format", "AC1032\x00\x00"],
  ];

  it.each(faults)("%s: %s", (code, _, text) => {
    expect(codesOf(text)).toContain(code);
  });

  it("is counted, with the place of the first", () => {
    const { findings } = read(
      fileOf([circle(50, 25, 5), circle(50, 25, 5), circle(20, 25, 5), circle(20, 25, 5), box]),
    );
    expect(findings).toEqual([
      { code: "duplicate", severity: "stop", message: "drawn twice: it would be cut twice", count: 2, at: [50, 25] },
    ]);
  });

  it("of one contour drawn twice does not open it", () => {
    expect(read(fileOf([...looseBox, ...looseBox]))).toMatchObject({ pierces: 1, netArea: 5000, cutLength: 300 });
  });
});

it("reads letters by the code page that the header names", () => {
  const text = fileOf([circle(50, 25, 5), box], {
    layers: [layer("CUT"), layer("@")],
    head: [[9, "$DWGCODEPAGE"], [3, "ANSI_1250"], ...header],
  });
  const bytes = bytesOf(text).map((byte) => (byte === 64 ? 0xb3 : byte));
  expect(readCutFile(bytes).layers).toEqual(["CUT", "\u0142"]);
});

it("refuses a file of more than 32 MB with a message", () => {
  const [finding] = readCutFile(new Uint8Array(32_000_001)).findings;
  expect(finding).toMatchObject({ code: "too-large", severity: "stop" });
});

it("joins 40,000 loose lines, shuffled, into their 10,000 contours", () => {
  const squares = Array.from({ length: 10_000 }, (_, i) => [(i % 100) * 10, Math.floor(i / 100) * 10] as const);
  const lines = [0, 1, 2, 3].flatMap((side) =>
    squares.map(([x, y]) => {
      const corners = [
        [x, y],
        [x + 5, y],
        [x + 5, y + 5],
        [x, y + 5],
      ] as const;
      const [from, to] = [corners[side] ?? corners[0], corners[(side + 1) % 4] ?? corners[0]];
      return line(from[0], from[1], to[0], to[1]);
    }),
  );
  const file = read(fileOf(lines));
  expect(file.contours).toHaveLength(10_000);
  expect(file.openStrokes).toEqual([]);
});

describe("bounds", () => {
  const far = 100_000_000;
  const at = (x: number) => codesOf(fileOf([circle(x - 5, 25, 5), box], {}));

  it("leave out what is farther than 100 km from 0,0, in the file's unit, and say so", () => {
    expect(at(far)).not.toContain("too-far");
    expect(at(far + 0.001)).toContain("too-far");
    expect(at(1e13)).toContain("too-far");
    expect(read(fileOf([circle(1e300, 25, 5), circle(20, 25, 5), box])).holes).toHaveLength(1);
    const inches = fileOf([circle(far / 25.4, 0, 1), box]).replace("$INSUNITS\n70\n4", "$INSUNITS\n70\n1");
    expect(codesOf(inches)).toContain("too-far");
  });

  it("tell fifty messages of a kind one by one, and count the others", () => {
    const layers = Array.from({ length: 60 }, (_, i) => circle(10 + i, 25, 0.3, `L${i}`));
    const unknown = read(fileOf([...layers, box])).findings.filter(({ code }) => code === "layer-unknown");
    expect(unknown).toHaveLength(51);
    expect(unknown.at(-1)).toMatchObject({
      message: "further ones of this kind, with other names or lengths",
      count: 10,
    });
  });

  it("end the search for what lies in what where an outline has too many lines beside too many holes", () => {
    const teeth = Array.from({ length: 6000 }, (_, i) => [i / 10, i % 2 === 0 ? 10 : 300, 0] as const);
    const outline = polyline(true, [[0, 0, 0], ...teeth, [600, 0, 0]]);
    const holes = (count: number) =>
      Array.from({ length: count }, (_, i) => circle((i * 600) / count + 0.25, 100, 0.001));
    expect(codesOf(fileOf([outline, ...holes(40)]))).not.toContain("nesting-unsearched");
    expect(codesOf(fileOf([outline, ...holes(8000)]))).toContain("nesting-unsearched");
  });

  it("read no more curves than make three million points, 200,000 of them chords", () => {
    const ellipse = (i: number, ratio: number) =>
      [
        [0, "ELLIPSE"],
        [8, "CUT"],
        [10, i / 10],
        [20, 25],
        [11, 4],
        [21, 0],
        [40, ratio],
        [41, 0],
        [42, 2 * Math.PI],
      ] as const;
    const of = (count: number, ratio: number) =>
      codesOf(fileOf(Array.from({ length: count }, (_, i) => ellipse(i, ratio))));
    expect(of(700, 0.5)).not.toContain("too-many-curves");
    expect(of(900, 0.5)).toContain("too-many-curves");
    expect(of(900, 1)).not.toContain("too-many-curves");
  });

  it("measure a round outline of two hundred thousand chords", () => {
    const points = Array.from({ length: 200_000 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 200_000;
      return [100_000 * Math.cos(angle), 100_000 * Math.sin(angle), 0] as const;
    });
    expect(read(fileOf([polyline(true, points)])).outline?.area).toBeCloseTo(Math.PI * 1e10, -3);
  });
});

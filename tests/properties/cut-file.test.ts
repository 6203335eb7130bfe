/** A cut file read back is the plate's region, whatever the plate; and whatever the bytes, the reader answers. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { writeJoinedDxf } from "../../src/formats/cut-dxf-joined.js";
import { writeR12Dxf } from "../../src/formats/cut-dxf-r12.js";
import { compareCutFile } from "../../src/formats/read-back.js";
import {
  circle,
  extentOf,
  point,
  polygon,
  rectangle,
  segmentsOf,
  twiceEdgeWeb,
  twiceWeb,
} from "../../src/geometry/index.js";
import type { Contour, Point } from "../../src/geometry/vocabulary.js";
import { readCutFile } from "../../src/readers/dxf.js";
import type { Hole, Plate } from "../../src/template/model.js";
import { nanometres, type Unit } from "../../src/units/length.js";
import { cutOptions, cutPlates, figuresOf, plateOf, rectangularOpening, roundHole, strokes } from "../cut-plates.js";

/** Any whole number of nanometres, so that halves and inches do not come out even. */
const length = (least: number, most: number) =>
  fc.integer({ min: least * 1_000_000, max: most * 1_000_000 }).map((value) => nanometres(value));

const center: fc.Arbitrary<Point> = fc
  .tuple(length(-2000, 2000), length(-2000, 2000))
  .map(([x, y]) => point(x / 1e6, y / 1e6));

const corner = fc.oneof(
  fc.constant({ kind: "square" } as const),
  fc.record({ kind: fc.constant("round" as const), radius: length(1, 60) }),
  fc.record({ kind: fc.constant("chamfer" as const), x: length(1, 60), y: length(1, 60) }),
  fc.record({ kind: fc.constant("notch" as const), x: length(1, 60), y: length(1, 60) }),
);

/** A star-shaped outline, its corners rounded: slanted sides, some of the corners hollow. */
const slanted = fc
  .tuple(
    center,
    fc.array(fc.tuple(fc.double({ min: 0.9, max: 1.1, noNaN: true }), length(300, 700)), {
      minLength: 5,
      maxLength: 9,
    }),
    length(1, 15),
  )
  .map(([at, corners, radius]) =>
    polygon(
      corners.map(([turn, reach], i) => {
        const angle = (2 * Math.PI * (i + turn)) / corners.length;
        return point(at.x + (reach / 1e6) * Math.cos(angle), at.y + (reach / 1e6) * Math.sin(angle));
      }),
      { kind: "round", radius },
    ),
  );

const outline: fc.Arbitrary<Contour> = fc.oneof(
  fc
    .tuple(center, length(200, 3000), length(200, 3000), corner)
    .map(([at, x, y, treated]) => rectangle(at, x, y, treated)),
  fc.tuple(center, length(300, 3000)).map(([at, diameter]) => circle(at, diameter)),
  slanted,
);

/** None, or one that is no tiny segment. */
const radius = fc.oneof(fc.constant(nanometres(0)), length(1, 9));

/** Holes on a grid about the outline's middle: the reader's business is not whether they have room. */
const inside = fc.record({
  rods: fc.array(length(6, 20), { maxLength: 12 }),
  opening: fc.option(fc.tuple(length(20, 60), length(20, 60), radius)),
  drilled: fc.boolean(),
  stroke: fc.option(fc.array(fc.tuple(length(-40, 40), length(-40, 40)), { minLength: 2, maxLength: 6 })),
});

const plate: fc.Arbitrary<Plate> = fc.tuple(outline, inside).map(([outer, { rods, opening, drilled, stroke }]) => {
  const { x0, y0, x1, y1 } = extentOf(outer);
  const middle = point((x0 + x1) / 2, (y0 + y1) / 2);
  const place = (i: number) =>
    [
      nanometres((middle.x - 60 + 30 * (i % 4)) * 1e6),
      nanometres((middle.y - 75 + 22 * Math.floor(i / 4)) * 1e6),
    ] as const;
  const holes: Hole[] = rods.map((diameter, i) => roundHole(`A${i + 1}`, ...place(i), diameter));
  const center = point(middle.x, middle.y + 50);
  if (opening !== null) holes.push(rectangularOpening(...opening, center));
  const points = stroke?.map(([x, y]) => point(middle.x + x / 1e6, middle.y + y / 1e6)) ?? [];
  const fresh = points.filter((at, i) => i === 0 || at.x !== points[i - 1]?.x || at.y !== points[i - 1]?.y);
  const marks = fresh.length < 2 ? [] : [strokes(drilled ? "punch" : "mark", "T1", [fresh])];
  return plateOf(outer, holes, marks);
});

const unit = fc.constantFrom<Unit>("in", "mm");
const origin = fc.constantFrom("lower left" as const, "working point" as const);

/** Loose segments below 0.01 mm are passed over by the reader. */
/** Corners nearer than a foreign file's joints (0.01 mm) are taken for one, whether a segment joins them or not. */
function hasNearCorners({ region }: Plate): boolean {
  const corners = segmentsOf(region.outer).map(({ from }) => from);
  return corners.some((a, i) => corners.slice(i + 1).some((b) => Math.hypot(b.x - a.x, b.y - a.y) < 0.02));
}

/** A hole across the edge or across another has no net area that a foreign reader could find. */
function hasCrossings({ region: { outer, inner } }: Plate): boolean {
  return (
    inner.some((contour) => twiceEdgeWeb(contour, outer) <= 0) ||
    inner.some((a, i) => inner.slice(i + 1).some((b) => twiceWeb(a, b) <= 0))
  );
}

describe.each([
  { flavour: "joined", draws: "whole", write: writeJoinedDxf },
  { flavour: "r12", draws: "pieces", write: writeR12Dxf },
] as const)("$flavour", ({ write, draws }) => {
  it("read back is the plate", () => {
    fc.assert(
      fc.property(plate, unit, origin, fc.boolean(), (made, in_, at, marks) => {
        const options = cutOptions(in_, { draws, origin: at, marks });
        const bytes = write(made, options);
        expect(compareCutFile(bytes, made, options)).toEqual([]);
        expect(write(made, options)).toEqual(bytes);
      }),
      { numRuns: 300 },
    );
  });

  it("has the region's area, length and pierces when it is read as a foreign file", () => {
    fc.assert(
      fc.property(plate, unit, (made, in_) => {
        fc.pre(!hasNearCorners(made) && !hasCrossings(made));
        const file = readCutFile(write(made, cutOptions(in_, { marks: false })));
        const expected = figuresOf({ name: "", unit: in_, plate: made, lowerLeft: point(0, 0) });
        expect(file.pierces).toBe(expected.pierces);
        expect(file.cutLength / expected.cutLength).toBeCloseTo(1, 8);
        expect(file.netArea / expected.netArea).toBeCloseTo(1, 7);
        expect(file.outline?.extent[2]).toBeCloseTo(expected.extent[2], 6);
        expect(file.outline?.extent[3]).toBeCloseTo(expected.extent[3], 6);
      }),
      { numRuns: 300 },
    );
  });

  it("with any byte changed is read, and never throws", () => {
    const [first] = cutPlates;
    if (first === undefined) throw new Error("no plate");
    const good = write(first.plate, cutOptions(first.unit));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { minLength: 1, maxLength: 40 }),
        (changes) => {
          const bytes = good.slice();
          for (const [at, value] of changes) bytes[at] = value;
          expect(readCutFile(bytes).pierces).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 500 },
    );
  });
});

it("any bytes at all are read, and are a finding", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      expect(readCutFile(bytes).findings.length).toBeGreaterThan(0);
    }),
  );
});

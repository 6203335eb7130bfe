/**
 * Grid transforms against a general-purpose matrix library (ml-matrix: singular values and products, no surveying in it), and
 * against published setting-out and traverse examples; the source stands beside each.
 */
import fc from "fast-check";
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { given, missing } from "../../src/job/index.js";
import type { ControlPoint, PlanSpec } from "../../src/job/model/plan.js";
import { fitTransform, makeTransform, planToSite, siteToPlan } from "../../src/plan/index.js";
import { coordinate, nanometres, parseBearing, parseCoordinate } from "../../src/units/index.js";
import { planFixture } from "../setting-out-plan.js";

const METRE = 1e9;
const FOOT = 304_800_000;

/** Homogeneous plan points [x, y, 1] x this = [east, north, 1]: the matrix of a plan turned clockwise by `bearing`. */
function planToSiteMatrix(bearing: number, factor: number, east: number, north: number): Matrix {
  const b = (bearing * Math.PI) / 180;
  return new Matrix([
    [factor * Math.cos(b), -factor * Math.sin(b), 0],
    [factor * Math.sin(b), factor * Math.cos(b), 0],
    [east, north, 1],
  ]);
}

describe("against products of matrices (ml-matrix)", () => {
  const angle = fc.double({ min: 0, max: 359.99, noNaN: true });
  const factor = fc.double({ min: 0.9, max: 1.1, noNaN: true });
  const metres = fc.integer({ min: -5000, max: 5000 });

  it("plan to site is the product, site to plan the product with the inverse", () => {
    fc.assert(
      fc.property(angle, factor, metres, metres, metres, metres, (bearing, scaleFactor, x, y, north, east) => {
        const matrix = planToSiteMatrix(bearing, scaleFactor, east, north);
        const expected = new Matrix([[x, y, 1]]).mmul(matrix);
        const motion = {
          bearing,
          scaleFactor,
          origin: { northing: coordinate(north * METRE), easting: coordinate(east * METRE) },
        };
        const site = planToSite(motion, { x: x * 1000, y: y * 1000 });
        expect(site.easting / METRE).toBeCloseTo(expected.get(0, 0), 8);
        expect(site.northing / METRE).toBeCloseTo(expected.get(0, 1), 8);
        const back = siteToPlan(motion, site);
        expect(back.x / 1000).toBeCloseTo(x, 8);
        expect(back.y / 1000).toBeCloseTo(y, 8);
      }),
    );
  });
});

/**
 * Orthogonal Procrustes by singular values (Schoenemann 1966, Kabsch 1976: R = V diag(1, det) U^T; from memory), which shares
 * nothing with the closed form of the program. Rows: plan in, site out, both [x or east, y or north] in metres.
 */
function procrustes(plan: Matrix, site: Matrix, scale: number) {
  const [planMean, siteMean] = [plan.mean("column"), site.mean("column")];
  const p = plan.clone().subRowVector(planMean);
  const s = site.clone().subRowVector(siteMean);
  const { leftSingularVectors: u, rightSingularVectors: v } = new SingularValueDecomposition(p.transpose().mmul(s));
  const turn = u.mmul(v.transpose());
  const sign = turn.get(0, 0) * turn.get(1, 1) - turn.get(0, 1) * turn.get(1, 0) < 0 ? -1 : 1;
  const rotation = u.mmul(Matrix.diag([1, sign])).mmul(v.transpose());
  const fitted = p.mmul(rotation).mul(scale).addRowVector(siteMean);
  return Matrix.sub(site, fitted);
}

describe("least squares against singular values (ml-matrix)", () => {
  const spot = fc.tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 }));
  const noise = fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }));
  const points = fc.uniqueArray(spot, { minLength: 3, maxLength: 8, selector: ([x, y]) => `${x} ${y}` });

  it("leaves the same residuals, to a hundredth of a millimetre", () => {
    fc.assert(
      fc.property(
        points,
        fc.array(noise, { minLength: 8, maxLength: 8 }),
        fc.double({ min: 0, max: 359.99, noNaN: true }),
        fc.constantFrom(1, 0.99987, 1.0002),
        (list, noises, bearing, factor) => {
          const exact = new Matrix(list.map(([x, y]) => [x, y, 1])).mmul(planToSiteMatrix(bearing, factor, 2000, 5000));
          const site = new Matrix(
            list.map((_, i) => [
              exact.get(i, 0) + (noises[i]?.[0] ?? 0) / 1000,
              exact.get(i, 1) + (noises[i]?.[1] ?? 0) / 1000,
            ]),
          );
          const found = fitTransform(
            list.map(([x, y], i) => ({
              name: `P${i}`,
              plan: { x: nanometres(x * METRE), y: nanometres(y * METRE) },
              at: { easting: coordinate(site.get(i, 0) * METRE), northing: coordinate(site.get(i, 1) * METRE) },
            })),
            factor,
          );
          const left = procrustes(new Matrix(list.map(([x, y]) => [x, y])), site, factor);
          for (const [i, { dn, de }] of (found?.residuals ?? []).entries()) {
            expect(de / METRE).toBeCloseTo(left.get(i, 0), 5);
            expect(dn / METRE).toBeCloseTo(left.get(i, 1), 5);
          }
          expect(found?.residuals).toHaveLength(list.length);
        },
      ),
    );
  });
});

const plan = (x: number, y: number, unit: number) => given({ x: nanometres(x * unit), y: nanometres(y * unit) }, "job");
const none = missing("test", "not given");

/** A control point; figures in `unit` nanometres. */
function point(name: string, northing: number, easting: number, at: ControlPoint["plan"], unit: number): ControlPoint {
  return {
    name,
    plan: at,
    northing: coordinate(northing * unit),
    easting: coordinate(easting * unit),
    elevation: none,
  };
}

function transformOf(changes: Partial<PlanSpec>) {
  const transform = makeTransform(planFixture(changes));
  if (transform === null) throw new Error("no transform");
  return transform;
}

/**
 * A published setting-out exercise: four corners of a rectangular building given to 1 mm (askfilo.com, "The four corners A, B,
 * C and D of a rectangular building ... are to be set out from control station P by a total station instrument"). The building
 * is 50 x 70 m with its long side at 45 degrees: plan 0,0 at C, plan north along CB. The page's worked distances and bearings
 * do not all follow from its own coordinates, and are not used.
 */
describe("four corners of a rectangular building", () => {
  const corners = [
    { name: "A", x: 50, y: 70, e: 117.984, n: 92.849 },
    { name: "B", x: 0, y: 70, e: 82.629, n: 128.204 },
    { name: "C", x: 0, y: 0, e: 33.132, n: 78.707 },
    { name: "D", x: 50, y: 0, e: 68.487, n: 43.352 },
  ] as const;
  const origin = {
    kind: "origin",
    northing: coordinate(78.707 * METRE),
    easting: coordinate(33.132 * METRE),
    bearing: 45,
  } as const;

  it.each(corners)("$name by origin and bearing: the printed coordinates, to their last figure", ({ x, y, e, n }) => {
    const { easting, northing } = planToSite(transformOf({ transform: origin }), { x: x * 1000, y: y * 1000 });
    expect(Math.abs(easting / METRE - e)).toBeLessThan(0.001);
    expect(Math.abs(northing / METRE - n)).toBeLessThan(0.001);
  });

  it("the printed corners as control points give bearing 45 degrees and residuals below their rounding", () => {
    const { bearing, residuals } = transformOf({
      transform: { kind: "points", points: corners.map(({ name }) => name) },
      control: corners.map(({ name, x, y, e, n }) => point(name, n, e, plan(x, y, METRE), METRE)),
    });
    expect(bearing).toBeCloseTo(45, 3);
    for (const { dn, de } of residuals) expect(Math.hypot(dn, de) / METRE).toBeLessThan(0.0008);
  });
});

/**
 * Jerry Mahun, Open Access Surveying Library (jerrymahun.com), Traverse Computations: the bearing traverse of chapter E,
 * adjusted lengths, bearings, latitudes and departures; coordinates of chapter F from A at 500.000 N, 2000.000 E. The length of
 * CD is printed as 276.479; its own latitude and departure give 276.497, which is used here.
 */
describe("lines of a published traverse: bearing and length give latitude and departure", () => {
  const lines = [
    { line: "AB", length: 472.715, bearing: "S 68\u00B005'27.4\" W", lat: -176.386, dep: -438.574 },
    { line: "BC", length: 216.122, bearing: "N 19\u00B046'14.9\" W", lat: 203.382, dep: -73.105 },
    { line: "CD", length: 276.497, bearing: "N 45\u00B055'20.7\" E", lat: 192.34, dep: 198.635 },
    { line: "DE", length: 382.237, bearing: "S 54\u00B058'58.0\" E", lat: -219.336, dep: 313.044 },
  ] as const;

  const bearingOf = (text: string) => {
    const reading = parseBearing(text);
    if (!reading.ok) throw new Error(reading.message);
    return reading.value;
  };

  it.each(lines)("$line", ({ length, bearing, lat, dep }) => {
    const motion = {
      bearing: bearingOf(bearing),
      scaleFactor: 1,
      origin: { northing: coordinate(500 * FOOT), easting: coordinate(2000 * FOOT) },
    };
    const end = planToSite(motion, { x: 0, y: length * 304.8 });
    expect(Math.abs(end.northing / FOOT - 500 - lat)).toBeLessThan(0.0015);
    expect(Math.abs(end.easting / FOOT - 2000 - dep)).toBeLessThan(0.0015);
  });

  it("line AC: 512.39 ft at N 86\u00B058'48\" W, as the chapter has it", () => {
    const [dn, de] = [-176.386 + 203.382, -438.574 - 73.105];
    const { bearing } = transformOf({
      transform: { kind: "points", points: ["A", "C"] },
      control: [
        point("A", 500, 2000, plan(0, 0, FOOT), FOOT),
        point("C", 500 + dn, 2000 + de, plan(0, 512.39, FOOT), FOOT),
      ],
    });
    const degrees = 273 + 1 / 60 + 12 / 3600;
    expect(Math.abs(bearing - degrees) * 3600).toBeLessThan(0.5);
    expect(bearingOf("N 86\u00B058'48\" W")).toBeCloseTo(degrees, 10);
  });
});

/**
 * Jerry Mahun, Open Access Surveying Library, COGO chapter J, numeric example: a drainfield survey on assumed coordinates laid
 * on a parcel survey by its line NE-NW. Scale 476.37 / 476.41 = 0.999916; the math check: NW comes out on point 1002.
 */
describe("a published coordinate transformation", () => {
  // "From" coordinates as plan (east, north); NW is 476.41 ft due west of NE.
  const NE = plan(3000, 5000, FOOT);
  const NW = plan(3000 - 476.41, 5000, FOOT);
  const { bearing, residuals, ...rest } = transformOf({
    transform: { kind: "points", points: ["1003", "1002"] },
    control: [point("1003", 4244.27, 2366.04, NE, FOOT), point("1002", 4030.04, 1940.56, NW, FOOT)],
    scaleFactor: given(0.999916, "job"),
  });

  it("NE and NW come out on 1003 and 1002, to the printed hundredth of a foot", () => {
    expect(residuals.map(({ name }) => name)).toEqual(["1003", "1002"]);
    for (const { dn, de } of residuals) expect(Math.hypot(dn, de) / FOOT).toBeLessThan(0.005);
  });

  it("turns N 90 W into the bearing of the line 1003 to 1002", () => {
    // Bearing from 1003 to 1002: 180 + arctan(425.48 / 214.23) degrees; due west is 270.
    const record = 180 + (Math.atan2(2366.04 - 1940.56, 4244.27 - 4030.04) * 180) / Math.PI;
    expect((270 + bearing) % 360).toBeCloseTo(record, 6);
  });

  it("keeps the drainfield inside the parcel and its sides in scale", () => {
    const corners = [
      [2776.03, 4914.03],
      [2786.38, 4814.98],
      [2911.57, 4829.01],
      [2895.69, 4934.06],
    ].map(([e = 0, n = 0]) => ({
      from: [e, n] as const,
      to: planToSite({ bearing, ...rest }, { x: e * 304.8, y: n * 304.8 }),
    }));
    const parcel = [
      [2208.05, 3684.22],
      [1940.56, 4030.04],
      [2366.04, 4244.27],
      [2607.77, 3802.06],
    ] as const;
    for (const [i, { from, to }] of corners.entries()) {
      const next = corners[(i + 1) % 4] ?? { from, to };
      const sides = [
        Math.hypot(next.from[0] - from[0], next.from[1] - from[1]),
        Math.hypot(next.to.easting - to.easting, next.to.northing - to.northing) / FOOT,
      ];
      expect((sides[1] ?? 0) / (sides[0] ?? 1)).toBeCloseTo(0.999916, 6);
      expect(isInside([to.easting / FOOT, to.northing / FOOT], parcel)).toBe(true);
    }
  });
});

/** The parcel's corners run clockwise: a point inside lies to the right of every side. */
function isInside([e, n]: readonly [number, number], corners: readonly (readonly [number, number])[]): boolean {
  return corners.every(([e0, n0], i) => {
    const [e1, n1] = corners[(i + 1) % corners.length] ?? [e0, n0];
    return (e1 - e0) * (n - n0) - (n1 - n0) * (e - e0) < 0;
  });
}

/** US survey foot 1200/3937 m (from memory; NIST SP 811 App. B.6 has it): 1 mile = 5280 of them = 1609.347 219 m. */
it("a US survey mile is 1609.347219 m", () => {
  const reading = parseCoordinate("5280 ft-us", null);
  expect(reading.ok && (reading.value / METRE).toFixed(6)).toBe("1609.347219");
});

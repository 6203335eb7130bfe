/** Properties of the layout: what a move of the whole building changes, and what it does not. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CheckRow } from "../../src/checks/index.js";
import { runJobChecks } from "../../src/checks/index.js";
import { given } from "../../src/job/index.js";
import type { GridLine, Placement, PlanSpec } from "../../src/job/model/plan.js";
import type { Plan, SitePoint } from "../../src/plan/index.js";
import { fitTransform, planToSite, siteToPlan } from "../../src/plan/index.js";
import { placeRods } from "../../src/rods/index.js";
import { makePlateOutline } from "../../src/template/index.js";
import { coordinate, millimetres, nanometres } from "../../src/units/index.js";
import { gridLines, placementAt, planJob } from "../setting-out-plan.js";

const names = (kind: GridLine["kind"]) => gridLines.flatMap((line) => (line.kind === kind ? [line.name] : []));
const placements = fc
  .array(
    fc.record({
      x: fc.constantFrom(...names("x")),
      y: fc.constantFrom(...names("y")),
      turn: fc.constantFrom(0, 15, 30, 45, 90, 180, 270),
      offset: fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((list) =>
    list.map(
      ({ x, y, turn, offset: [dx, dy] }): Placement =>
        placementAt([x, y], { turn, offset: { x: millimetres(dx), y: millimetres(dy) } }),
    ),
  );

const bearings = fc.double({ min: 0, max: 359.999, noNaN: true });
const factors = fc.double({ min: 0.999, max: 1.001, noNaN: true });
const far = fc.integer({ min: -5_000_000, max: 5_000_000 });

const sited = (bearing: number, north: number, east: number, factor = 1): Partial<PlanSpec> => ({
  transform: { kind: "origin", northing: coordinate(north * 1e9), easting: coordinate(east * 1e9), bearing },
  scaleFactor: given(factor, "job"),
});

function rodsOnSite({ bases, transform }: Plan): readonly SitePoint[] {
  if (transform === null) throw new Error("no transform");
  return bases.flatMap(({ rods }) => rods.map(({ plan }) => planToSite(transform, plan)));
}

const span = (a: SitePoint, b: SitePoint) => Math.hypot(a.northing - b.northing, a.easting - b.easting);

/** Everything of a plan but the site coordinates. */
const without = ({ bases, extent }: Plan) => ({
  extent,
  bases: bases.map(({ name, crossing, workingPoint, rods }) => ({
    name,
    crossing,
    workingPoint,
    rods: rods.map(({ plan }) => plan),
  })),
});

/** Rows but those about site coordinates themselves. */
function planRows(site: Partial<PlanSpec>): readonly CheckRow[] {
  const { job, plan } = planJob(site);
  const made = job.bases.flatMap((base) => {
    const rods = placeRods(base);
    const outline = rods.ok ? makePlateOutline(job, base, rods.value) : rods;
    return rods.ok && outline.ok ? [{ base, rods: rods.value, outline: outline.value }] : [];
  });
  return runJobChecks({ job, plan, bases: made }).filter(({ rule }) => !/^(grid|control)-/.test(rule));
}

describe("turning and moving the whole building", () => {
  it("changes site coordinates and nothing else", () => {
    fc.assert(
      fc.property(placements, bearings, far, far, (list, bearing, north, east) => {
        const [here, there] = [sited(0, 0, 0), sited(bearing, north, east)].map((site) => ({
          ...site,
          placements: list,
        }));
        const [a, b] = [planJob(here).plan, planJob(there).plan];
        expect(without(b)).toEqual(without(a));
        expect(planRows(there ?? {})).toEqual(planRows(here ?? {}));
        const moved = rodsOnSite(b);
        for (const [i, at] of rodsOnSite(a).entries()) {
          // Distances from the first rod stay: two ends, each coordinate rounded to 1 nm, beyond 2^53 nm to 2 nm.
          expect(Math.abs(span(at, rodsOnSite(a)[0] ?? at) - span(moved[i] ?? at, moved[0] ?? at))).toBeLessThan(8);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("scales distances by the factor and turns bearings by the bearing", () => {
    fc.assert(
      fc.property(placements, bearings, factors, (list, bearing, factor) => {
        const { plan } = planJob({ ...sited(bearing, 1000, 1000, factor), placements: list });
        const [first] = plan.bases[0]?.rods ?? [];
        const [origin] = rodsOnSite(plan);
        if (first === undefined || origin === undefined) throw new Error("no rods");
        const rods = plan.bases.flatMap((base) => base.rods);
        for (const [i, at] of rodsOnSite(plan).entries()) {
          const { x, y } = rods[i]?.plan ?? first.plan;
          const onPlan = Math.hypot(x - first.plan.x, y - first.plan.y) * 1e6;
          expect(Math.abs(span(at, origin) - onPlan * factor)).toBeLessThan(4);
          if (onPlan < 1e7) continue;
          const planBearing = (Math.atan2(x - first.plan.x, y - first.plan.y) * 180) / Math.PI;
          const siteBearing = (Math.atan2(at.easting - origin.easting, at.northing - origin.northing) * 180) / Math.PI;
          const apart = (((siteBearing - planBearing - bearing + 540) % 360) + 360) % 360;
          expect(Math.abs(apart - 180)).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("goes there and back to the nanometre", () => {
    fc.assert(
      fc.property(
        bearings,
        factors,
        far,
        far,
        fc.integer({ min: -1e9, max: 1e9 }),
        fc.integer({ min: -1e9, max: 1e9 }),
        (bearing, scaleFactor, north, east, x, y) => {
          const motion = {
            bearing,
            scaleFactor,
            origin: { northing: coordinate(north * 1e9), easting: coordinate(east * 1e9) },
          };
          const back = siteToPlan(motion, planToSite(motion, { x: x / 1e6, y: y / 1e6 }));
          expect(Math.hypot(back.x - x / 1e6, back.y - y / 1e6)).toBeLessThan(4e-6);
        },
      ),
    );
  });
});

describe("turning and moving the building on its plan", () => {
  it("a skewed grid is the square one, turned: rods keep their distances", () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 30, 45, 90, 137.5), placements, (degrees, list) => {
        const { plan } = planJob({ placements: list });
        const turned = planJob({
          lines: gridLines.map((line) => asSkewed(line, degrees)),
          placements: list.map((placement) => ({
            ...placement,
            turn: placement.turn + degrees,
            offset: turnOffset(placement.offset, degrees),
          })),
        }).plan;
        const rods = (of: Plan) => of.bases.flatMap((base) => base.rods.map((one) => one.plan));
        const [a, b] = [rods(plan), rods(turned)];
        for (const [i, at] of a.entries()) {
          const [p, q] = [a[0] ?? at, b[0] ?? at];
          const [near, far_] = [
            Math.hypot(at.x - p.x, at.y - p.y),
            Math.hypot((b[i] ?? q).x - q.x, (b[i] ?? q).y - q.y),
          ];
          expect(Math.abs(near - far_)).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** An x or y line, turned about the plan's origin, as a skewed line. */
function asSkewed(line: GridLine, degrees: number): GridLine {
  if (line.kind !== "x" && line.kind !== "y") return line;
  const through = turnOffset(
    line.kind === "x" ? { x: line.at, y: nanometres(0) } : { x: nanometres(0), y: line.at },
    degrees,
  );
  return { kind: "skewed", name: line.name, through, degrees: degrees + (line.kind === "x" ? 90 : 0) };
}

function turnOffset({ x, y }: Placement["offset"], degrees: number): Placement["offset"] {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return { x: nanometres(x * c - y * s), y: nanometres(x * s + y * c) };
}

describe("the transform by control points", () => {
  const spots = fc
    .uniqueArray(fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })), {
      minLength: 2,
      maxLength: 6,
      selector: ([x, y]) => `${x} ${y}`,
    })
    .filter((list) => list.length >= 2);

  it("finds the motion that made the points, and leaves nothing", () => {
    fc.assert(
      fc.property(spots, bearings, factors, far, far, (list, bearing, scaleFactor, north, east) => {
        const motion = {
          bearing,
          scaleFactor,
          origin: { northing: coordinate(north * 1e9), easting: coordinate(east * 1e9) },
        };
        const ties = list.map(([x, y], i) => ({
          name: `P${i}`,
          plan: { x: millimetres(x * 1000), y: millimetres(y * 1000) },
          at: planToSite(motion, { x: x * 1000, y: y * 1000 }),
        }));
        const found = fitTransform(ties, scaleFactor);
        for (const { dn, de } of found?.residuals ?? [{ dn: 1e9, de: 1e9 }]) {
          expect(Math.max(Math.abs(dn), Math.abs(de))).toBeLessThan(16);
        }
      }),
    );
  });

  it("does not depend on the order of the points, to the nanometre", () => {
    fc.assert(
      fc.property(
        spots,
        fc.array(fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })), {
          minLength: 6,
          maxLength: 6,
        }),
        (list, noise) => {
          const ties = list.map(([x, y], i) => ({
            name: `P${i}`,
            plan: { x: millimetres(x * 1000), y: millimetres(y * 1000) },
            at: {
              northing: coordinate((y * 1000 + (noise[i]?.[0] ?? 0)) * 1e6),
              easting: coordinate((x * 1000 + (noise[i]?.[1] ?? 0)) * 1e6),
            },
          }));
          const [a, b] = [fitTransform(ties, 1), fitTransform([...ties].reverse(), 1)];
          for (const { name, dn, de } of a?.residuals ?? []) {
            const other = b?.residuals.find((residual) => residual.name === name);
            expect(Math.hypot(dn - (other?.dn ?? 1e9), de - (other?.de ?? 1e9))).toBeLessThan(8);
          }
        },
      ),
    );
  });
});

describe("bases", () => {
  it("keep the order of the list, and every base has its rods", () => {
    fc.assert(
      fc.property(placements, (list) => {
        const { plan } = planJob({ placements: list });
        expect(plan.bases.map(({ placement }) => placement)).toEqual(list);
        expect(new Set(plan.bases.map(({ name }) => name)).size).toBe(list.length);
        expect(plan.bases.every(({ rods }) => rods.length === 4)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});

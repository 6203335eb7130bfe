/** Layouts of every kind for the plan sheets, made by hand without the readers. Invented data. */

import type { Base, GridLine, Job, Placement, PlanSpec } from "../../../src/job/index.js";
import { given, missing } from "../../../src/job/index.js";
import { makePlan } from "../../../src/plan/index.js";
import { placeRods } from "../../../src/rods/index.js";
import type { PlanRequest } from "../../../src/sheets/index.js";
import { inches, type Length, millimetres, nanometres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";

const zero = nanometres(0);
const feet = (value: number): Length => inches(12 * value);
const metres = (value: number): Length => millimetres(1000 * value);

export function planFixture(changes: Partial<PlanSpec> = {}): PlanSpec {
  return {
    lines: [],
    placements: [],
    control: [],
    trueNorth: missing("north", "true north is not given"),
    transform: { kind: "none" },
    scaleFactor: given(1, "default"),
    settingOut: { order: "PNEZD", unit: "ft" },
    bearings: "decimal",
    controlTolerance: missing("controlTolerance", "not given"),
    ...changes,
  };
}

export function placementOf(
  mark: string,
  lines: readonly [string, string],
  changes: Partial<Placement> = {},
): Placement {
  return {
    place: { file: "job.yaml", line: 1, column: 1, path: "placements" },
    mark,
    lines,
    offset: { x: zero, y: zero },
    near: missing("near", "not needed"),
    turn: 0,
    topOfConcrete: given(feet(100), "job"),
    bottomOfPlate: missing("bottomOfPlate", "not given"),
    delivery: "",
    ...changes,
  };
}

/** A request for this job with this site; throws where the plan has a fault. */
export function planCase(bases: readonly Base[], site: PlanSpec, changes: Partial<Job> = {}): PlanRequest {
  const job = jobFixture({ bases, plan: site, ...changes });
  const placed = bases.map((base) => {
    const rods = placeRods(base);
    if (!rods.ok) throw new Error(`no rods of ${base.mark}`);
    return { base, rods: rods.value };
  });
  const plan = makePlan(job, placed);
  if (plan === null) throw new Error("no plan");
  return {
    job,
    plan,
    held: new Map(),
    layoutOpen: [],
    coordinateFiles: ["PH_rev-B_PNEZD_ft.csv"],
    layoutHeld: { reasons: [], siteOnly: true },
    dxfName: "anchor-rod-plan_rev-B.dxf",
    programVersion: "0.1.0",
  };
}

const wideFlange = given(
  {
    kind: "wide flange",
    depth: inches(10),
    width: inches(8),
    flange: inches(0.5),
    web: inches(0.3125),
    depthAlong: "x",
    at: { x: zero, y: zero },
  } as const,
  "job",
);

/** Types that differ as a real schedule's do. */
function types(): readonly Base[] {
  const round = groupFixture({
    pattern: { kind: "circle", diameter: inches(18), count: 8, start: { kind: "straddle" } },
  });
  const eight = groupFixture({
    pattern: { kind: "rectangle", x: inches(14), y: inches(24), nx: 2, ny: 4, perimeter: false },
  });
  return [
    baseFixture({ mark: "B1", column: wideFlange }),
    baseFixture({
      mark: "B2",
      groups: [round],
      column: given({ kind: "pipe", diameter: inches(12), at: { x: zero, y: zero } } as const, "job"),
    }),
    baseFixture({
      mark: "B3",
      groups: [eight],
      column: wideFlange,
      concrete: {
        ...baseFixture().concrete,
        shape: given({ kind: "rectangle", x: inches(32), y: inches(42), corner: { kind: "square" } } as const, "job"),
      },
      basePlate: {
        ...baseFixture().basePlate,
        shape: given({ kind: "rectangle", x: inches(22), y: inches(32), corner: { kind: "square" } } as const, "job"),
      },
    }),
    baseFixture({ mark: "B4", concrete: { ...baseFixture().concrete, at: { x: inches(3), y: zero } } }),
  ];
}

const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

function nameOf(index: number): string {
  const letter = letters[index % letters.length] ?? "A";
  return index < letters.length ? letter : `${letters[Math.floor(index / letters.length) - 1]}${letter}`;
}

/** Numbered x lines, lettered y lines, `across` by `up` bays of 25 by 20 ft, a base at every crossing. */
export function regularPlan(across: number, up: number, changes: Partial<PlanSpec> = {}): PlanRequest {
  const lines: readonly GridLine[] = [
    ...Array.from({ length: across }, (_, i) => ({ kind: "x", name: String(i + 1), at: feet(25 * i) }) as const),
    ...Array.from({ length: up }, (_, i) => ({ kind: "y", name: nameOf(i), at: feet(20 * i) }) as const),
  ];
  const bases = types();
  const placements = Array.from({ length: across * up }, (_, i) => {
    const [column, row] = [i % across, Math.floor(i / across)];
    const mark = bases[(column + 2 * row) % bases.length]?.mark ?? "B1";
    const onEdge = column === 0 ? { x: inches(4.5), y: zero } : { x: zero, y: zero };
    return placementOf(mark, [String(column + 1), nameOf(row)], { turn: row % 2 === 0 ? 0 : 90, offset: onEdge });
  });
  return planCase(bases, planFixture({ lines, placements, ...changes }));
}

const control = [
  {
    name: "CP-1",
    plan: given({ x: feet(-10), y: feet(-8) }, "job"),
    northing: feet(5000),
    easting: feet(2000),
    elevation: given(feet(99), "job"),
  },
  {
    name: "CP-2",
    plan: given({ x: feet(210), y: feet(-8) }, "job"),
    northing: nanometres(feet(5000) - 11_600_000_000),
    easting: nanometres(feet(2000) + 66_050_000_000),
    elevation: missing("elevation", "not given"),
  },
] as const;

/** Sixty-odd bases with four skewed bays, control points, a true north and a site bearing. */
export function skewedPlan(): PlanRequest {
  const regular = regularPlan(8, 7);
  const { spec: site } = regular.plan;
  const turn = 15;
  const skew = Array.from(
    { length: 5 },
    (_, i): GridLine => ({
      kind: "skewed",
      name: `S${i + 1}`,
      through: { x: feet(200 + 22 * i), y: zero },
      degrees: 90 + turn,
    }),
  );
  const placements = ["A", "B", "C", "D"].flatMap((row) =>
    skew.map(({ name }) => placementOf("B1", [name, row], { turn })),
  );
  return planCase(
    types(),
    planFixture({
      lines: [...site.lines, ...skew],
      placements: [...site.placements, ...placements],
      control,
      trueNorth: given(12.5, "job"),
      transform: { kind: "points", points: ["CP-1", "CP-2"] },
    }),
    {
      revisions: [
        { revision: "A", date: "2026-10-30", text: "First issue for approval", marks: null },
        { revision: "B", date: "2026-11-24", text: "Skewed bays added; released", marks: null },
      ],
      drawnBy: "M. O.",
    },
  );
}

/** Rays and arcs about one centre, millimetres. */
export function radialPlan(): PlanRequest {
  const center = { x: zero, y: zero };
  const rays = Array.from(
    { length: 9 },
    (_, i): GridLine => ({ kind: "radial", name: String(i + 1), center, degrees: 20 + 17.5 * i }),
  );
  const arcs = [12, 18, 24].map(
    (radius, i): GridLine => ({ kind: "arc", name: nameOf(i), center, radius: metres(radius) }),
  );
  const placements = rays.flatMap((ray, i) =>
    arcs.map((arc) =>
      placementOf("B1", [ray.name, arc.name], { turn: 20 + 17.5 * i, topOfConcrete: given(millimetres(-150), "job") }),
    ),
  );
  return planCase(
    [metricBase()],
    planFixture({ lines: [...rays, ...arcs], placements, settingOut: { order: "PENZD", unit: "m" } }),
    METRIC,
  );
}

const METRIC: Partial<Job> = {
  unit: "mm",
  status: "preliminary",
  editions: {
    set: "metric",
    templateHoles: "ISO 273",
    baseHoles: "d + 6 mm",
    placing: "EN 1090-2:2008",
    edges: "EN 1993-1-8:2005",
    concrete: "ACI 318-19",
  },
};

function metricBase(): Base {
  const shape = (x: number, y: number) =>
    given({ kind: "rectangle", x: millimetres(x), y: millimetres(y), corner: { kind: "square" } } as const, "job");
  const fixture = baseFixture();
  return baseFixture({
    groups: [
      groupFixture(
        { pattern: { kind: "rectangle", x: millimetres(300), y: millimetres(250), nx: 2, ny: 2, perimeter: false } },
        {
          size: "M30",
          diameter: millimetres(30),
          thread: "metric coarse",
          projection: given(millimetres(200), "job"),
          embedment: given(millimetres(600), "job"),
        },
      ),
    ],
    basePlate: { ...fixture.basePlate, shape: shape(450, 400) },
    concrete: { ...fixture.concrete, shape: shape(600, 600) },
  });
}

/** A hall in millimetres. */
export function metricPlan(): PlanRequest {
  const lines: readonly GridLine[] = [
    ...[0, 6000, 12000, 18000, 24500].map(
      (at, i): GridLine => ({ kind: "x", name: String(i + 1), at: millimetres(at) }),
    ),
    ...[0, 7200, 14400].map((at, i): GridLine => ({ kind: "y", name: nameOf(i), at: millimetres(at) })),
  ];
  const placements = lines
    .filter(({ kind }) => kind === "x")
    .flatMap((x) =>
      ["A", "B", "C"].map((row) => placementOf("B1", [x.name, row], { topOfConcrete: missing("toc", "not given") })),
    );
  return planCase([metricBase()], planFixture({ lines, placements }), METRIC);
}

/** One base on two lines. */
export function singlePlan(): PlanRequest {
  return regularPlan(1, 1);
}

/** A grid on which nothing stands yet. */
export function barePlan(): PlanRequest {
  const { spec: site } = regularPlan(4, 3).plan;
  return planCase([baseFixture()], { ...site, placements: [] });
}

export const planCases: Readonly<Record<string, () => PlanRequest>> = {
  single: singlePlan,
  bare: barePlan,
  twelve: () => regularPlan(4, 3),
  skewed: skewedPlan,
  radial: radialPlan,
  metric: metricPlan,
  "three hundred": () => regularPlan(20, 15),
};

/**
 * Templates in segments, and lower templates, by outside means: their cut files by readers nobody here wrote; segments put
 * together by the booleans of @jscad/modeling (none overlaps another, together they are the plate) and by closed forms.
 * Invented data.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { booleans, geometries, measurements } from "@jscad/modeling";
import { afterAll, describe, expect, it } from "vitest";
import { flatten, measureArea, moveContour, moveInTurn, shift, turn } from "../../src/geometry/index.js";
import type { Contour } from "../../src/geometry/vocabulary.js";
import { build } from "../../src/index.js";
import { openJob } from "../../src/tasks/open.js";
import { makePlate } from "../../src/template/index.js";
import type { Plate } from "../../src/template/model.js";
import { checkCutFilesOutside, cutFilesInPackage, isReaderSkipped, readerNames } from "./readers/harness.js";

const shops = Object.fromEntries(
  ["plasma", "plasma-metric"].map((name) => {
    const path = `templates/shops/${name}.yaml`;
    return [path, readFileSync(new URL(`../../${path}`, import.meta.url), "utf8")];
  }),
);
const options = { date: "2026-11-24", version: "test", document: null } as const;

function jobOf(unit: "in" | "mm", pattern: string, template: string): string {
  const rods = unit === "in" ? "diameter: 1-1/4, grade: 55" : "diameter: M30, grade: 8.8";
  return [
    'job: { number: "1", revision: A, status: released }',
    `units: ${unit}`,
    "bases:",
    `  - mark: B1`,
    `    rods: { ${rods}, bottom: nut, embedment: ${unit === "in" ? 30 : 800} }`,
    `    pattern: { ${pattern} }`,
    `    template: { mark: T1, ${template} }`,
    "",
  ].join("\n");
}

interface Case {
  readonly name: string;
  readonly job: string;
  /** Area inside the plate, openings taken off, mm2. */
  readonly area: number;
  readonly segments: number;
}

const IN2 = 645.16;
const ring = (outer: number, inner: number) => (Math.PI / 4) * (outer ** 2 - inner ** 2);
const CIRCLE = "kind: circle, diameter: 158, count: 24, start: straddle";
const CASES: readonly Case[] = [
  ...[2, 3, 5, 12].map((count) => ({
    name: `a 14 ft ring in ${count}`,
    job: jobOf(
      "in",
      CIRCLE,
      `thickness: 3/8, key: none, outline: { kind: ring, outer: 168, inner: 148 }, segments: ${count}`,
    ),
    area: ring(168, 148) * IN2,
    segments: count,
  })),
  {
    name: "a ring in millimetres, rods on the axes",
    job: jobOf(
      "mm",
      "kind: circle, diameter: 4000, count: 16, start: on-axis",
      "thickness: 10, key: none, outline: { kind: ring, outer: 4300, inner: 3701 }, segments: 3",
    ),
    area: ring(4300, 3701),
    segments: 3,
  },
  {
    name: "a round plate with an opening in its middle",
    job: jobOf(
      "in",
      "kind: circle, diameter: 60, count: 8, start: straddle",
      "thickness: 3/8, key: none, outline: { kind: circle, diameter: 80 }, opening: { diameter: 30 }, segments: 4",
    ),
    area: ring(80, 30) * IN2,
    segments: 4,
  },
  {
    name: "a round plate without one, in strips",
    job: jobOf(
      "in",
      "kind: circle, diameter: 60, count: 8, start: straddle",
      "thickness: 3/8, key: none, outline: { kind: circle, diameter: 80 }, segments: 3",
    ),
    area: ring(80, 0) * IN2,
    segments: 3,
  },
  {
    name: "a rectangle whose joint runs through its opening",
    job: jobOf(
      "in",
      "kind: rectangle, x: 180, y: 40",
      "thickness: 3/8, key: none, outline: { kind: rectangle, x: 200, y: 60 }, opening: { x: 40, y: 20, radius: 2 }, segments: 2",
    ),
    area: (200 * 60 - (40 * 20 - (4 - Math.PI) * 4)) * IN2,
    segments: 2,
  },
  {
    name: "a rectangle upright, with chamfered corners",
    job: jobOf(
      "in",
      "kind: rectangle, x: 40, y: 180",
      "thickness: 3/8, key: none, outline: { kind: rectangle, x: 60, y: 200, corner: { kind: chamfer, size: 2 } }, segments: 3",
    ),
    area: (60 * 200 - 4 * 2) * IN2,
    segments: 3,
  },
];

function plateOf(job: string): Plate {
  const opened = openJob({ job: "job.yaml", files: new Map(Object.entries({ "job.yaml": job, ...shops })) }, options);
  if (!opened.ok) throw new Error(opened.findings.map(({ message }) => message).join("; "));
  const [first] = opened.value.bases;
  const made = first === undefined ? null : makePlate(opened.value.job, first.base, first.rods);
  if (made === null || !made.ok) throw new Error("no plate");
  return made.value;
}

/** Share of an area within which JSCAD is exact: it puts points together that are nearer than 1e-5 of the size of a shape. */
const SNAPPED = 2e-5;
/** Chord error of what JSCAD is given, mm. */
const TOLERANCE = 0.02;
const polygonOf = (contour: Contour) =>
  geometries.geom2.fromPoints(flatten(contour, TOLERANCE).map(({ x, y }) => [x, y] as [number, number]));

describe.each(CASES)("$name", ({ job, area, segments }) => {
  const plate = plateOf(job);
  const placed = (plate.parted?.segments ?? []).map((each) => {
    const move = moveInTurn(turn(each.turn), shift({ dx: each.shift.x, dy: each.shift.y }));
    return { ...each, move, outer: moveContour(each.plate.region.outer, move) };
  });

  it("is in as many segments, none loose, each square in its own corner", () => {
    expect([placed.length, plate.parted?.loose]).toEqual([segments, 0]);
    expect(plate.parted?.joints.length).toBe(plate.parted?.joints[0]?.degrees === null ? segments - 1 : segments);
  });

  it("has the area of the whole by the closed form", () => {
    const sum = placed.reduce((total, { plate: { region } }) => total + measureArea(region.outer), 0);
    const openings = placed.flatMap((each) => each.plate.holes.filter(({ role }) => role === "opening"));
    const open = openings.reduce((total, { contour }) => total + measureArea(contour), 0);
    expect(Math.abs(sum - open - area)).toBeLessThan(0.05);
  });

  it("overlaps nowhere and leaves nothing out, by @jscad/modeling", () => {
    const shapes = placed.map(({ outer }) => polygonOf(outer));
    const parts = shapes.map((shape) => measurements.measureArea(shape));
    const together = measurements.measureArea(booleans.union(...shapes));
    const sum = parts.reduce((a, b) => a + b, 0);
    expect(Math.abs(together - sum)).toBeLessThan(SNAPPED * area);
    for (const [i, a] of shapes.entries())
      for (const b of shapes.slice(i + 1))
        expect(measurements.measureArea(booleans.intersect(a, b))).toBeLessThan(SNAPPED * area);
  });

  it("carries every hole of the whole once, where it was, and bolts where the splice plates have theirs", () => {
    const whole = plate.holes.filter(({ role }) => role !== "opening").map(({ tag, center }) => ({ tag, center }));
    const found = placed.flatMap(({ plate: own, move }) =>
      own.holes.map(({ tag, role, center }) => ({ tag, role, center: move.apply(center) })),
    );
    const rods = found.filter(({ role }) => role === "rod");
    expect(rods.map(({ tag }) => tag).sort()).toEqual(whole.map(({ tag }) => tag).sort());
    for (const { tag, center } of whole) {
      const own = rods.find((hole) => hole.tag === tag)?.center ?? { x: 1e9, y: 1e9 };
      expect(Math.hypot(own.x - center.x, own.y - center.y)).toBeLessThan(3e-6);
    }
    const bolts = found.filter(({ role }) => role === "bolt").map(({ center }) => center);
    const wanted = (plate.parted?.joints ?? []).flatMap(({ splices }) => splices.flatMap((splice) => splice.bolts));
    expect(bolts).toHaveLength(wanted.length);
    for (const at of wanted)
      expect(Math.min(...bolts.map(({ x, y }) => Math.hypot(x - at.x, y - at.y)))).toBeLessThan(3e-6);
  });
});

describe("their cut files", () => {
  const folder = mkdtempSync(join(tmpdir(), "rodplate-pieces-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const packages = CASES.filter((_, i) => i % 2 === 0).map(({ job }, i) => {
    const lower = job.replace("template: { mark", "template: { lower: { above: 200 mm }, mark");
    const made = build(
      { job: "job.yaml", files: new Map(Object.entries({ "job.yaml": lower, ...shops })) },
      { ...options, includeHeld: true, outputs: ["cut-joined", "cut-r12", "summary"] },
    );
    const own = join(folder, String(i));
    for (const { path, bytes } of [...[...made.bases].flatMap(({ files }) => files), ...made.finish().files]) {
      mkdirSync(dirname(join(own, path)), { recursive: true });
      writeFileSync(join(own, path), bytes);
    }
    return own;
  });

  it.each(readerNames)("read by %s are as summary.json says", (reader) => {
    if (isReaderSkipped(reader)) return;
    const files = packages.flatMap((own) => cutFilesInPackage(own));
    expect(files.length).toBeGreaterThan(50);
    expect(checkCutFilesOutside(reader, files)).toEqual([]);
  });
});

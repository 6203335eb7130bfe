/** The plan as DXF, read by programs that nobody here wrote: every rod where the site plan has it. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseString } from "dxf";
import dxfParser, { type DxfParser } from "dxf-parser";
import { afterAll, describe, expect, it } from "vitest";
import { PLAN_LAYERS, writePlanDxf } from "../../src/formats/plan-dxf.js";
import { planDxfWords } from "../../src/outputs/plan-dxf.js";
import type { PlanRequest } from "../../src/sheets/index.js";
import { NM_PER_MM, NM_PER_UNIT } from "../../src/units/index.js";
import { planCases } from "../unit/sheets/plan-cases.js";
import { isReaderSkipped } from "./readers/harness.js";

interface XYD {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** The package is CommonJS whose default is the class itself; its typings describe another build. */
const Parser = dxfParser as unknown as new () => DxfParser;

const names = ["single", "bare", "skewed", "radial", "metric", "three hundred"];
const folder = mkdtempSync(join(tmpdir(), "plan-dxf-"));
afterAll(() => rmSync(folder, { recursive: true }));

const plans = names.map((name) => {
  const make = planCases[name];
  if (make === undefined) throw new Error(`no case ${name}`);
  const made = make();
  const request = name === "skewed" ? { ...made, held: new Map([["B1", ["a reason"]]]) } : made;
  const path = join(folder, `${name.replace(" ", "-")}.dxf`);
  const bytes = writePlanDxf(request.plan, request.job.unit, planDxfWords(request));
  writeFileSync(path, bytes);
  return { name, request, path, text: new TextDecoder().decode(bytes) };
});

/** Rods of the site plan in the file's unit, sorted. */
function rodsOf({ plan, job }: PlanRequest): readonly XYD[] {
  const perMm = NM_PER_MM / NM_PER_UNIT[job.unit];
  return sorted(
    plan.bases.flatMap(({ rods }) =>
      rods.map(({ plan: at, rod }) => ({
        x: at.x * perMm,
        y: at.y * perMm,
        diameter: rod.group.rod.diameter / NM_PER_UNIT[job.unit],
      })),
    ),
  );
}

function sorted(circles: readonly XYD[]): readonly XYD[] {
  const key = ({ x, y }: XYD) => [Math.round(x * 100), Math.round(y * 100)] as const;
  return circles.toSorted((a, b) => {
    const [p, q] = [key(a), key(b)];
    return p[0] - q[0] || p[1] - q[1];
  });
}

function expectSame(found: readonly XYD[], wanted: readonly XYD[], digits: number): void {
  expect(found).toHaveLength(wanted.length);
  sorted(found).forEach((circle, i) => {
    expect(circle.x).toBeCloseTo(wanted[i]?.x ?? Number.NaN, digits);
    expect(circle.y).toBeCloseTo(wanted[i]?.y ?? Number.NaN, digits);
    expect(circle.diameter).toBeCloseTo(wanted[i]?.diameter ?? Number.NaN, digits);
  });
}

const RODS = PLAN_LAYERS.rods.name;
/** DXF reference, header variables: $INSUNITS 1 inches, 4 millimetres; $MEASUREMENT 0 imperial, 1 metric. */
const INSUNITS = { in: 1, mm: 4 } as const;

describe("a plan as DXF", () => {
  for (const { name, request, text } of plans) {
    it(`is read by dxf-parser: ${name}`, () => {
      const parsed = new Parser().parseSync(text);
      if (parsed === null) throw new Error("dxf-parser reads nothing");
      expect(parsed.header.$INSUNITS).toBe(INSUNITS[request.job.unit]);
      expect(parsed.header.$MEASUREMENT).toBe(request.job.unit === "in" ? 0 : 1);
      const layers = Object.keys(parsed.tables.layer.layers);
      for (const { layer } of parsed.entities) expect(layers).toContain(layer);
      const entities = parsed.entities as unknown as readonly {
        type: string;
        layer: string;
        text?: string;
        radius?: number;
        center?: { x: number; y: number };
      }[];
      const circles = entities.filter(({ type, layer }) => type === "CIRCLE" && layer === RODS);
      const found = circles.map(({ center, radius = 0 }) => ({
        x: center?.x ?? 0,
        y: center?.y ?? 0,
        diameter: 2 * radius,
      }));
      expectSame(found, rodsOf(request), 6);
      const marks = entities.filter(({ type, layer }) => type === "TEXT" && layer === PLAN_LAYERS.marks.name);
      expect(marks.map(({ text: words }) => words)).toEqual(request.plan.bases.map(({ name: base }) => base));
    });

    it(`is read by dxf: ${name}`, () => {
      const { entities } = parseString(text);
      const circles = entities.filter(({ type, layer }) => type === "CIRCLE" && layer === RODS);
      const found = circles.map(({ x = 0, y = 0, r = 0 }) => ({ x, y, diameter: 2 * r }));
      expectSame(found, rodsOf(request), 6);
    });
  }

  it("gives the same bytes twice", () => {
    for (const { request, text } of plans)
      expect(new TextDecoder().decode(writePlanDxf(request.plan, request.job.unit, planDxfWords(request)))).toBe(text);
  });

  it("is plain ASCII, names of other letters as codes", () => {
    const make = planCases.single;
    if (make === undefined) throw new Error("no case");
    const made = make();
    const { plan, job } = made;
    const bases = plan.bases.map((base) => ({ ...base, name: "B1 Ä-1\\^é" }));
    const text = new TextDecoder().decode(writePlanDxf({ ...plan, bases }, job.unit, planDxfWords(made)));
    expect(text).toContain("B1 \\U+00C4-1\\U+005C\\U+005E\\U+00E9\r\n");
  });
});

interface Described {
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly version: string;
  readonly units: number;
  readonly measurement: number;
  readonly extent: readonly [number, number, number, number];
  readonly unlisted: readonly string[];
  readonly kinds: readonly string[];
  readonly circles: readonly (readonly [string, number, number, number])[];
  readonly texts: readonly (readonly [string, string])[];
  readonly open: number;
}

describe.skipIf(isReaderSkipped("ezdxf"))("a plan as DXF in ezdxf", () => {
  const script = join(import.meta.dirname, "plan_by_ezdxf.py");
  const read = (): readonly Described[] =>
    JSON.parse(
      execFileSync("/usr/bin/python3", [script], {
        encoding: "utf8",
        maxBuffer: 1 << 28,
        input: JSON.stringify(plans.map(({ path }) => path)),
      }),
    );

  it("has no error and nothing to fix; rods, grid names and marks are as in the plan", () => {
    read().forEach((described, i) => {
      const { request, name } = plans[i] ?? fail();
      expect(described.errors, name).toEqual([]);
      expect(described.fixes, name).toEqual([]);
      expect(described.unlisted, name).toEqual([]);
      expect(described.version).toBe("AC1015");
      expect(described.units).toBe(INSUNITS[request.job.unit]);
      expect(described.open).toBe(0);
      expect(described.kinds.filter((kind) => !["LINE", "CIRCLE", "ARC", "LWPOLYLINE", "TEXT"].includes(kind))).toEqual(
        [],
      );
      const rods = described.circles.filter(([layer]) => layer === RODS);
      expectSame(
        rods.map(([, x, y, diameter]) => ({ x, y, diameter })),
        rodsOf(request),
        6,
      );
      const gridNames = described.texts
        .filter(([layer]) => layer === PLAN_LAYERS.gridText.name)
        .map(([, words]) => words);
      expect(gridNames).toEqual(request.plan.spec.lines.map(({ name: line }) => line));
      const wordsOn = (layer: string) => described.texts.filter(([own]) => own === layer).map(([, words]) => words);
      const title = wordsOn(PLAN_LAYERS.title.name).join("\n");
      const { job, plan } = request;
      for (const expected of [job.number, job.title, `REVISION ${job.revision}`, job.date])
        expect(title).toContain(expected);
      expect(title).toContain(job.status === "released" ? "STATUS: RELEASED" : "STATUS: NOT RELEASED");
      expect(wordsOn(PLAN_LAYERS.north.name)).toEqual(
        plan.spec.trueNorth.kind === "given" ? ["PLAN NORTH", "TRUE NORTH"] : ["PLAN NORTH"],
      );
      const held = plan.bases.filter(({ placement }) => request.held.has(placement.mark));
      expect(wordsOn(PLAN_LAYERS.held.name)).toEqual(held.map(() => "HELD"));
      if (name === "skewed") expect(held.length).toBeGreaterThan(3);
      const [x0, y0, x1, y1] = described.extent;
      for (const [, x, y, diameter] of described.circles) {
        expect(x - diameter / 2).toBeGreaterThanOrEqual(x0 - 1e-6);
        expect(y - diameter / 2).toBeGreaterThanOrEqual(y0 - 1e-6);
        expect(x + diameter / 2).toBeLessThanOrEqual(x1 + 1e-6);
        expect(y + diameter / 2).toBeLessThanOrEqual(y1 + 1e-6);
      }
    });
  });
});

function fail(): never {
  throw new Error("no plan");
}

describe.skipIf(isReaderSkipped("GDAL"))("a plan as DXF in GDAL", () => {
  interface Feature {
    readonly properties: { readonly Layer: string };
    readonly geometry: { readonly type: string; readonly coordinates: readonly (readonly number[])[] } | null;
  }

  it("has every rod at its place, drawn as a closed line of chords", () => {
    for (const { path, request } of plans) {
      const args = ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=10", "/vsistdout/", path];
      const text = execFileSync("ogr2ogr", args, { encoding: "utf8", maxBuffer: 1 << 28 });
      const { features } = JSON.parse(text) as { features: readonly Feature[] };
      const rods = features.filter(({ properties }) => properties.Layer === RODS);
      const found = rods.map(({ geometry }) => middleOf(geometry?.coordinates ?? []));
      expectSame(found, rodsOf(request), 2);
    }
  });

  function middleOf(points: readonly (readonly number[])[]): XYD {
    const xs = points.map(([x = 0]) => x);
    const ys = points.map(([, y = 0]) => y);
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    return { x: (x0 + x1) / 2, y: (y0 + y1) / 2, diameter: Math.max(x1 - x0, y1 - y0) };
  }
});

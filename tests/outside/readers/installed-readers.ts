/** Cut files as ezdxf and GDAL read them, many in one process. Both are programs of the machine, not of this project. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import type { CutFileToCheck } from "./harness.js";
import { type Edge, type Measured, measureDrawn, type XY } from "./measured.js";

const LARGE = { encoding: "utf8", maxBuffer: 1 << 30 } as const;

/** Debian's interpreter, which python3-ezdxf is installed for. */
const PYTHON = "/usr/bin/python3";

export function hasEzdxf(): boolean {
  return runs(PYTHON, ["-c", "import ezdxf"]);
}

export function hasGdal(): boolean {
  return runs("ogr2ogr", ["--version"]);
}

function runs(command: string, args: readonly string[]): boolean {
  try {
    execFileSync(command, args, { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}

export function measureByEzdxf(files: readonly CutFileToCheck[]): readonly Measured[] {
  const script = join(import.meta.dirname, "measure_by_ezdxf.py");
  const input = JSON.stringify(files.map(({ path, layers }) => ({ path: resolve(path), cut: layers.cut })));
  const answers = JSON.parse(execFileSync(PYTHON, [script], { ...LARGE, input })) as readonly Measured[];
  return answers.map((answer, index) => ({ ...answer, path: files[index]?.path ?? answer.path }));
}

interface GdalFeature {
  readonly properties: { readonly source: string; readonly Layer: string };
  readonly geometry: { readonly type: string; readonly coordinates: readonly (readonly number[])[] } | null;
}

/** One union layer over all the files; arcs come as polylines of steps of a quarter of a degree. */
export function measureByGdal(files: readonly CutFileToCheck[]): readonly Measured[] {
  const folder = mkdtempSync(join(tmpdir(), "cut-files-"));
  try {
    const union = join(folder, "union.vrt");
    writeFileSync(union, unionOf(files));
    const args = ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=10", "/vsistdout/", union];
    const text = execFileSync("ogr2ogr", args, { ...LARGE, env: { ...process.env, OGR_ARC_STEPSIZE: "0.25" } });
    const bySource = new Map<string, GdalFeature[]>();
    for (const feature of (JSON.parse(text) as { features: readonly GdalFeature[] }).features) {
      const { source } = feature.properties;
      const others = bySource.get(source);
      if (others === undefined) bySource.set(source, [feature]);
      else others.push(feature);
    }
    return files.map((file, index) => measureFeatures(file, bySource.get(`f${index}`) ?? []));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function unionOf(files: readonly CutFileToCheck[]): string {
  const inXml = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  const layers = files.map(
    ({ path }, index) =>
      `<OGRVRTLayer name="f${index}"><SrcDataSource>${inXml(resolve(path))}</SrcDataSource>` +
      "<SrcLayer>entities</SrcLayer></OGRVRTLayer>",
  );
  return `<OGRVRTDataSource><OGRVRTUnionLayer name="all"><SourceLayerFieldName>source</SourceLayerFieldName>${layers.join(
    "",
  )}</OGRVRTUnionLayer></OGRVRTDataSource>`;
}

function measureFeatures({ path, layers }: CutFileToCheck, features: readonly GdalFeature[]): Measured {
  const faults: string[] = [];
  const cutEdges: Edge[] = [];
  const otherEdges: Edge[] = [];
  for (const { properties, geometry } of features) {
    if (geometry?.type !== "LineString") {
      faults.push(`a feature of type ${geometry?.type}`);
      continue;
    }
    const points: readonly XY[] = geometry.coordinates.map(([x = 0, y = 0]) => ({ x, y }));
    (layers.cut.includes(properties.Layer) ? cutEdges : otherEdges).push({ kind: "points", points });
  }
  const head = { unit: undefined, measurement: undefined, headerExtent: null, circles: null };
  return { path, faults, ...head, ...measureDrawn({ cutEdges, circles: [], otherEdges }) };
}

/** Setting-out files as GDAL reads them: the same points, with a header row and without. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { PlanSpec } from "../../src/job/model/plan.js";
import { coordinateSystems, planToSite, settingOutPoints } from "../../src/plan/index.js";
import { nanometres } from "../../src/units/length.js";
import { controlPoint, placementAt, planJob, settingOutTexts } from "../setting-out-plan.js";
import { isReaderSkipped } from "./readers/harness.js";

/** Millimetres in the unit: NIST SP 811 (2008), B.6. */
const MILLIMETRES: Readonly<Record<PlanSpec["settingOut"]["unit"], number>> = {
  m: 1000,
  mm: 1,
  ft: 304.8,
  "ft-us": 1_200_000 / 3937,
};

interface ReadPoint {
  readonly properties: Readonly<Record<string, string | number>>;
  readonly geometry: { readonly coordinates: readonly number[] };
}

function readByGdal(
  text: string,
  columns: { x: string; y: string; z: string },
  headers: "YES" | "NO",
): readonly ReadPoint[] {
  const folder = mkdtempSync(join(tmpdir(), "setting-out-"));
  try {
    const file = join(folder, "points.csv");
    writeFileSync(file, text);
    const { x, y, z } = columns;
    const names = [`X_POSSIBLE_NAMES=${x}`, `Y_POSSIBLE_NAMES=${y}`, `Z_POSSIBLE_NAMES=${z}`, `HEADERS=${headers}`];
    const options = ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=6", ...names.flatMap((name) => ["-oo", name])];
    const read = execFileSync("ogr2ogr", [...options, "/vsistdout/", file], { encoding: "utf8", maxBuffer: 1 << 28 });
    return (JSON.parse(read) as { features: readonly ReadPoint[] }).features;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe.skipIf(isReaderSkipped("GDAL"))("GDAL", () => {
  const cases = (["PNEZD", "PENZD"] as const).flatMap((order) =>
    (["m", "mm", "ft", "ft-us"] as const).map((unit) => ({ order, unit })),
  );

  it.each(cases)("reads the points of $order in $unit where they are", ({ order, unit }) => {
    const { plan } = planJob({
      settingOut: { order, unit },
      transform: { kind: "origin", northing: nanometres(4.2e14), easting: nanometres(6.1e14), bearing: 17.25 },
      placements: [placementAt(["A", "1"]), placementAt(["C", "2"], { turn: 33 })],
      control: [controlPoint("CP1", nanometres(4.2e14), nanometres(-6.1e11))],
    });
    const { transform } = plan;
    if (transform === null) throw new Error("plan and site are tied");
    const [north, east] = order === "PNEZD" ? [2, 3] : [3, 2];
    for (const system of coordinateSystems(plan)) {
      const { headed, bare } = settingOutTexts(plan, system);
      const wanted = settingOutPoints(plan).flatMap(({ name, plan: at, given, elevation }) => {
        const local = at && { northing: at.y * 1e6, easting: at.x * 1e6 };
        const place = system === "local" ? local : (given ?? (at && planToSite(transform, at)));
        return place === null ? [] : [{ name, ...place, elevation }];
      });
      const reads = [
        readByGdal(headed, { x: "easting", y: "northing", z: "elevation" }, "YES"),
        readByGdal(bare, { x: `field_${east}`, y: `field_${north}`, z: "field_4" }, "NO"),
      ];
      for (const points of reads) {
        expect(points.map(({ properties }) => properties.point ?? properties.field_1)).toEqual(
          wanted.map(({ name }) => name),
        );
        for (const [index, { northing, easting, elevation }] of wanted.entries()) {
          const [x = Number.NaN, y = Number.NaN, z] = points[index]?.geometry.coordinates ?? [];
          // Half of the last place: 0.05 mm, or half of 1e-4 ft, and what a double and GDAL's 6 decimals leave.
          const slack = unit === "m" || unit === "mm" ? 0.0511 : 0.0153;
          expect(Math.abs(x * MILLIMETRES[unit] - easting / 1e6)).toBeLessThan(slack);
          expect(Math.abs(y * MILLIMETRES[unit] - northing / 1e6)).toBeLessThan(slack);
          if (elevation === null) expect(z).toBeUndefined();
          else expect(Math.abs((z ?? Number.NaN) * MILLIMETRES[unit] - elevation / 1e6)).toBeLessThan(slack);
        }
      }
    }
  });
});

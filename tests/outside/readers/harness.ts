/**
 * Holds cut files against what is expected of them, by readers nobody here wrote. ezdxf and GDAL are not npm packages: on a
 * machine without them their checks are skipped, unless RODPLATE_REQUIRE_OUTSIDE=1 makes them required, as in CI.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Summary, SummaryPlate } from "../../../src/summary/model.js";
import { hasEzdxf, hasGdal, measureByEzdxf, measureByGdal } from "./installed-readers.js";
import type { Measured } from "./measured.js";
import { measureByDxf, measureByDxfParser } from "./npm-readers.js";

/** A cut file and what summary.json says about it. Lengths in `unit`, in base axes. */
export interface CutFileToCheck {
  readonly path: string;
  readonly unit: "in" | "mm";
  readonly layers: { readonly cut: readonly string[]; readonly mark: readonly string[] };
  /** Extent of the outline, x0, y0, x1, y1. */
  readonly extent: readonly number[];
  readonly netArea: number;
  readonly cutLength: number;
  readonly pierces: number;
  /** Every round hole that is cut. A round outline is a circle too: `roundOutline` is its diameter. */
  readonly holes: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  readonly roundOutline: number | null;
  /** Where 0,0 of the file lies; by default at the lower left of the outline. */
  readonly origin?: "lower left" | "working point";
}

export type ReaderName = "dxf-parser" | "dxf" | "ezdxf" | "GDAL";

interface Reader {
  readonly isThere: () => boolean;
  readonly measure: (files: readonly CutFileToCheck[]) => readonly Measured[];
  /**
   * Share of a figure, or length in the file's unit, by which it may differ: summary.json is rounded to 1e-5 mm, and GDAL
   * draws arcs as chords.
   */
  readonly tolerance: number;
}

const readers: Readonly<Record<ReaderName, Reader>> = {
  "dxf-parser": { isThere: () => true, measure: measureByDxfParser, tolerance: 2e-5 },
  dxf: { isThere: () => true, measure: measureByDxf, tolerance: 2e-5 },
  ezdxf: { isThere: hasEzdxf, measure: measureByEzdxf, tolerance: 2e-5 },
  GDAL: { isThere: hasGdal, measure: measureByGdal, tolerance: 1e-3 },
};

export const readerNames: readonly ReaderName[] = ["dxf-parser", "dxf", "ezdxf", "GDAL"];

/** True where a reader's checks are to be skipped; says so on standard error. Never true where readers are required. */
export function isReaderSkipped(name: ReaderName): boolean {
  if (process.env.RODPLATE_REQUIRE_OUTSIDE === "1" || readers[name].isThere()) return false;
  process.stderr.write(
    `SKIPPED: ${name} is not installed (apt-get install python3-ezdxf gdal-bin); nothing is checked by it\n`,
  );
  return true;
}

/** The cut files of a package, with what its summary.json says about them. */
export function cutFilesInPackage(folder: string): readonly CutFileToCheck[] {
  const { job, bases } = JSON.parse(readFileSync(join(folder, "summary.json"), "utf8")) as Summary;
  return bases.flatMap(({ template, files }) => {
    const plates = template.pieces ?? [template];
    return plates.flatMap((plate) =>
      filesOfPlate(
        plate,
        files.filter(({ piece }) => (piece ?? template.mark) === plate.mark),
      ),
    );
  });

  function filesOfPlate(plate: SummaryPlate, own: Summary["bases"][number]["files"]): readonly CutFileToCheck[] {
    const { outline, netArea, cutLength, pierces } = plate;
    const [x0, , x1] = outline.extent;
    const holes = plate.holes.flatMap(({ made, x, y, diameter }) =>
      made === "cut" && diameter !== undefined ? [{ x, y, diameter }] : [],
    );
    const roundOutline = outline.kind === "circle" ? x1 - x0 : null;
    const figures = { unit: job.unit, extent: outline.extent, netArea, cutLength, pierces, holes, roundOutline };
    return own.flatMap(({ path, layers }) =>
      layers === undefined ? [] : [{ path: join(folder, path), layers, ...figures }],
    );
  }
}

/** Everything that one reader finds different from what is expected, as sentences; empty when all the files are right. */
export function checkCutFilesOutside(name: ReaderName, files: readonly CutFileToCheck[]): readonly string[] {
  if (files.length === 0) return ["no cut file is given to be checked"];
  const { measure, tolerance } = readers[name];
  const measured = measure(files);
  return files.flatMap((file, index) => {
    const found = measured[index];
    if (found === undefined) return [`${file.path}: ${name} says nothing`];
    const faults = found.faults.length > 0 ? found.faults : compare(file, found, tolerance);
    return faults.map((fault) => `${file.path}, read by ${name}: ${fault}`);
  });
}

function compare(file: CutFileToCheck, found: Measured, tolerance: number): readonly string[] {
  const same = (a: number, b: number) => Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(b));
  const faults: string[] = [];
  const hold = (what: string, is: unknown, must: unknown, isSame = is === must) => {
    if (!isSame) faults.push(`${what} is ${JSON.stringify(is)}, must be ${JSON.stringify(must)}`);
  };
  const box = boxInFile(file);
  const sameBox = (extent: readonly number[]) =>
    extent.length === 4 && box.every((side, i) => same(extent[i] ?? 0, side));
  if (found.unit !== undefined) hold("unit", found.unit, file.unit);
  if (found.measurement !== undefined) hold("$MEASUREMENT", found.measurement, file.unit === "mm" ? 1 : 0);
  hold("extent", found.extent, box, sameBox(found.extent));
  if (found.headerExtent !== null) hold("$EXTMIN/$EXTMAX", found.headerExtent, box, sameBox(found.headerExtent));
  hold("number of open contours", found.open, 0);
  hold("number of pierces", found.pierces, file.pierces);
  hold("cut length", found.cutLength, file.cutLength, same(found.cutLength, file.cutLength));
  hold("net area", found.netArea, file.netArea, same(found.netArea, file.netArea));
  return found.circles === null ? faults : [...faults, ...compareCircles(file, found.circles, same)];
}

/** The outline's box in the file; marks lie inside it. */
function boxInFile({ extent, origin }: CutFileToCheck): readonly number[] {
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = extent;
  return origin === "working point" ? [x0, y0, x1, y1] : [0, 0, x1 - x0, y1 - y0];
}

function compareCircles(
  file: CutFileToCheck,
  circles: readonly (readonly [number, number, number])[],
  same: (a: number, b: number) => boolean,
): readonly string[] {
  const [x0 = 0, y0 = 0] = file.origin === "working point" ? [] : file.extent;
  const count = file.holes.length + (file.roundOutline === null ? 0 : 1);
  const missing = file.holes.filter(
    ({ x, y, diameter }) => !circles.some(([cx, cy, d]) => same(cx, x - x0) && same(cy, y - y0) && same(d, diameter)),
  );
  const outline = file.roundOutline;
  return [
    ...(circles.length === count ? [] : [`${circles.length} circles, must be ${count}`]),
    ...missing.map(({ x, y, diameter }) => `no circle of ${diameter} for the hole at ${x},${y}`),
    ...(outline === null || circles.some(([, , d]) => same(d, outline))
      ? []
      : [`no circle of ${outline} for the outline`]),
  ];
}

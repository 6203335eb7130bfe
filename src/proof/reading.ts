/** The figures of a file that its certificate states. */
import type { CertifiedReading } from "../summary/certificate.js";
import type { ProvedFile } from "./model.js";

/** What the reader measured of a file, rounded. */
export function readingOf(
  file: ProvedFile,
): Pick<CertifiedReading, "contours" | "holes" | "openings" | "extent" | "area" | "netArea" | "cutLength" | "pierces"> {
  const { outline, holes, openings, netArea, cutLength, pierces } = file;
  const extent = outline?.extent ?? null;
  return {
    ...{ contours: pierces, holes: holes.length, openings: openings.length },
    extent: extent && [rounded(extent[0]), rounded(extent[1]), rounded(extent[2]), rounded(extent[3])],
    ...{ area: rounded(outline?.area ?? 0), netArea: rounded(netArea), cutLength: rounded(cutLength), pierces },
  };
}

/** To 1e-6, as the lengths of summary.json in inches. */
function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6 || 0;
}

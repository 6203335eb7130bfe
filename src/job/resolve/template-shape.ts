/** Outlines and openings of templates as written -> those of the model. */
import type { Length } from "../../units/index.js";
import { nanometres } from "../../units/index.js";
import type { DocumentPath } from "../document.js";
import type { OpeningSpec, OutlineSpec } from "../model/job.js";
import type { OpeningDocument, OutlineDocument } from "../schema/job.js";
import type { BaseReport } from "./base-report.js";
import { judgeListLength, offsetOf, resolveCorner } from "./shapes.js";

/** An outline written at `path`. */
export function resolveOutline(
  outline: OutlineDocument | undefined,
  path: DocumentPath,
  report: BaseReport,
): OutlineSpec {
  if (outline === undefined || outline === "auto") return { kind: "auto", corner: { kind: "square" } };
  const corner = [...path, "corner"];
  switch (outline.kind) {
    case "auto":
      return { kind: "auto", corner: resolveCorner(outline.corner, corner, null, report) };
    case "rectangle": {
      const { x, y } = outline;
      return {
        kind: "rectangle",
        x,
        y,
        at: offsetOf(outline.at),
        corner: resolveCorner(outline.corner, corner, [x, y], report),
      };
    }
    case "circle":
      return { kind: "circle", diameter: outline.diameter, at: offsetOf(outline.at) };
    case "ring":
      return resolveRing(outline, path, report);
    case "polygon":
      judgeListLength(outline.at.length, 3, [...path, "at"], report);
      return {
        kind: "polygon",
        at: outline.at.map(offsetOf),
        corner: resolveCorner(outline.corner, corner, null, report),
      };
  }
}

function resolveRing(
  ring: Extract<OutlineDocument, { kind: "ring" }>,
  path: DocumentPath,
  report: BaseReport,
): OutlineSpec {
  const { outer, inner } = ring;
  if (inner >= outer) {
    const message = `${report.show(inner)} is not inside the ring; allowed is less than the outer diameter, ${report.show(outer)}`;
    report.fault([...path, "inner"], "inverted-ring", message);
  }
  return { kind: "ring", outer, inner, at: offsetOf(ring.at) };
}

/** An opening written at `path`; none where nothing is. */
export function resolveOpening(
  opening: OpeningDocument | undefined,
  path: DocumentPath,
  report: BaseReport,
): OpeningSpec {
  if (opening === undefined || opening === "none") return { kind: "none" };
  if (opening === "auto") return { kind: "auto" };
  const { diameter, x, y } = opening;
  const at = offsetOf(opening.at);
  if (diameter !== undefined) {
    for (const key of ["x", "y", "radius"] as const) {
      if (opening[key] !== undefined)
        report.fault([...path, key], "shape-twice", "is given beside diameter; allowed is diameter, or x and y");
    }
    return { kind: "circle", diameter, at };
  }
  if (x === undefined || y === undefined) {
    const lacks = x === undefined && y === undefined ? [] : [x === undefined ? "x" : "y"];
    report.fault([...path, ...lacks], "required", "is incomplete; allowed is diameter, or x and y");
    return { kind: "none" };
  }
  return rectangularOpening({ x, y, radius: opening.radius ?? nanometres(0), at }, path, report);
}

function rectangularOpening(
  { x, y, radius, at }: Omit<Extract<OpeningSpec, { kind: "rectangle" }>, "kind">,
  path: DocumentPath,
  report: BaseReport,
): OpeningSpec {
  const least = Math.min(x, y);
  if (2 * radius > least) {
    const message = `${report.show(radius)} is more than half of a side; at most ${report.show(least / 2)} is allowed`;
    report.fault([...path, "radius"], "corner-too-large", message);
  }
  return { kind: "rectangle", x, y, radius, at };
}

/** An opening as large as the plate leaves none. `path`: where the opening is written. */
export function judgeOpening(opening: OpeningSpec, outline: OutlineSpec, path: DocumentPath, report: BaseReport): void {
  if (opening.kind === "none" || opening.kind === "auto") return;
  if (outline.kind === "ring") {
    report.fault(path, "opening-in-ring", "is given beside a ring, which is open in the middle; allowed is none");
    return;
  }
  const plate = outlineSides(outline);
  if (plate === null) return;
  const [x, y] = opening.kind === "circle" ? [opening.diameter, opening.diameter] : [opening.x, opening.y];
  if (x < plate[0] && y < plate[1]) return;
  const message = `${report.show(x)} by ${report.show(y)} is not inside the plate, ${report.show(plate[0])} by ${report.show(plate[1])}`;
  report.fault(path, "opening-too-large", message);
}

/** null where the sides are not given by the outline itself. */
function outlineSides(outline: OutlineSpec): readonly [Length, Length] | null {
  switch (outline.kind) {
    case "rectangle":
      return [outline.x, outline.y];
    case "circle":
      return [outline.diameter, outline.diameter];
    case "auto":
    case "ring":
    case "polygon":
      return null;
  }
}

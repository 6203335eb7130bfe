/** Plan shapes and corners as written -> those of the model, with the faults that a schema cannot see. */
import { MOST_RODS } from "../../patterns/index.js";
import type { Length } from "../../units/index.js";
import { nanometres } from "../../units/index.js";
import type { DocumentPath } from "../document.js";
import type { Corner, Input, Offset, PlanShape } from "../model/job.js";
import { given, missing } from "../model/job.js";
import type { CornerDocument } from "../schema/job.js";
import type { BaseReport } from "./base-report.js";

interface WrittenPlan {
  readonly x?: Length | undefined;
  readonly y?: Length | undefined;
  readonly diameter?: Length | undefined;
  readonly corner?: CornerDocument | undefined;
}

/** Rectangle by x and y, circle by diameter; half of a rectangle, or both, is a fault. */
export function resolvePlanShape(
  written: WrittenPlan | undefined,
  path: DocumentPath,
  why: string,
  report: BaseReport,
): Input<PlanShape> {
  const { x, y, diameter, corner } = written ?? {};
  const key = path.join(".");
  if (diameter !== undefined) {
    const other = (["x", "y", "corner"] as const).filter((name) => written?.[name] !== undefined);
    for (const name of other)
      report.fault([...path, name], "shape-twice", "is given beside diameter; allowed is x and y, or diameter");
    return given({ kind: "circle", diameter }, report.from([...path, "diameter"]));
  }
  if (x !== undefined && y !== undefined) {
    const shape = {
      kind: "rectangle",
      x,
      y,
      corner: resolveCorner(corner, [...path, "corner"], [x, y], report),
    } as const;
    return given(shape, report.from([...path, "x"]));
  }
  for (const [name, other] of [
    ["x", "y"],
    ["y", "x"],
  ] as const) {
    const half = written?.[other] !== undefined && written[name] === undefined;
    if (half) report.fault([...path, name], "required", `is required beside ${other}; allowed is x and y, or diameter`);
  }
  return missing(key, why);
}

/** Corner treatment; it may not reach beyond half of the shortest side that it stands on. Sides [x, y], or null. */
export function resolveCorner(
  corner: CornerDocument | undefined,
  path: DocumentPath,
  sides: readonly [Length, Length] | null,
  report: BaseReport,
): Corner {
  const resolved = corner === undefined ? ({ kind: "square" } as const) : cornerOf(corner, path, report);
  if (sides === null || resolved.kind === "square") return resolved;
  const [x, y] = resolved.kind === "round" ? [resolved.radius, resolved.radius] : [resolved.x, resolved.y];
  const tooLarge = 2 * x > sides[0] || 2 * y > sides[1];
  if (tooLarge) {
    const message = `reaches beyond half of a side; at most ${report.show(sides[0] / 2)} along x and ${report.show(sides[1] / 2)} along y are allowed`;
    report.fault(path, "corner-too-large", message);
  }
  return resolved;
}

function cornerOf(corner: CornerDocument, path: DocumentPath, report: BaseReport): Corner {
  switch (corner.kind) {
    case "square":
      return { kind: "square" };
    case "round":
      return roundCorner(corner, path, report);
    case "chamfer":
    case "notch":
      return leggedCorner(corner, path, report);
  }
}

function roundCorner(
  corner: Extract<CornerDocument, { kind: "round" }>,
  path: DocumentPath,
  report: BaseReport,
): Corner {
  const { radius, size } = corner;
  if (radius !== undefined && size !== undefined)
    report.fault([...path, "size"], "shape-twice", "is given beside radius; allowed is one of them");
  const either = radius ?? size;
  if (either !== undefined) return { kind: "round", radius: either };
  report.fault([...path, "radius"], "required", "is required; allowed is a length above zero");
  return { kind: "square" };
}

function leggedCorner(
  corner: Extract<CornerDocument, { kind: "chamfer" | "notch" }>,
  path: DocumentPath,
  report: BaseReport,
): Corner {
  const { kind, size, x, y } = corner;
  if (size !== undefined && (x !== undefined || y !== undefined)) {
    report.fault([...path, "size"], "shape-twice", "is given beside x or y; allowed is size, or x and y");
  }
  const [along, across] = [x ?? size, y ?? size];
  if (along !== undefined && across !== undefined) return { kind, x: along, y: across };
  report.fault([...path, "size"], "required", "is required; allowed is size, or x and y");
  return { kind: "square" };
}

/** Most points of a polygon or holes of a list. */
export function judgeListLength(length: number, least: number, path: DocumentPath, report: BaseReport): void {
  if (length >= least && length <= MOST_RODS) return;
  report.fault(path, "bad-value", `is a list of ${length}; allowed are ${least} to ${MOST_RODS} points`);
}

const ORIGIN: Offset = { x: nanometres(0), y: nanometres(0) };

/** A point as written, or 0,0. */
export function offsetOf(at: readonly [Length, Length] | undefined): Offset {
  return at === undefined ? ORIGIN : { x: at[0], y: at[1] };
}

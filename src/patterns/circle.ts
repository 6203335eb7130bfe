/** Rods at one pitch on a bolt circle about the working point. */
import * as z from "zod";
import type { Point } from "../geometry/index.js";
import { pointInNanometres, turnOf } from "../geometry/index.js";
import { countLeaf, keys, leaf, lengthLeaf } from "../leaves/leaves.js";
import type { Unit } from "../units/index.js";
import { parseAngle } from "../units/index.js";
import type { BoltCircle, CircleStart, PatternDefinition, PatternDoubt } from "./model.js";

/** The circle and where its first rod stands; the others follow counter-clockwise. */
export interface CirclePattern extends BoltCircle {
  readonly kind: "circle";
}

function schema(unit: Unit) {
  return keys(
    {
      kind: z.literal("circle"),
      diameter: lengthLeaf(unit, "above zero", "Diameter of the bolt circle."),
      count: countLeaf(2, 1_000_000, "Rods on the circle."),
      start: startLeaf(
        "Degrees counter-clockwise from +x, or straddle, or on-axis; with x or y where the count is no multiple of 4.",
      ),
    },
    "Rods on a bolt circle.",
  );
}

const START_WORD = /^(straddle|on-axis)(?:-([xy])(?:-axis)?)?$/;

/** Degrees counter-clockwise from +x, or one of the words, with its axis or without. */
function startLeaf(description: string) {
  const allowed = "degrees counter-clockwise from +x, straddle or on-axis";
  return leaf<CircleStart>(allowed, description, (text) => {
    const [, kind, axis] = START_WORD.exec(text.trim().toLowerCase().replace(/\s+/g, "-")) ?? [];
    if (kind === "straddle" || kind === "on-axis") {
      return { ok: true, value: axis === "x" || axis === "y" ? { kind, axis } : { kind } };
    }
    const reading = parseAngle(text);
    if (!reading.ok) return { ok: false, message: `${reading.message}; or straddle, or on-axis` };
    return { ok: true, value: { kind: "degrees", degrees: reading.value } };
  });
}

/**
 * Where the rods of a named start stand to the axes, where that is not the same for both: "straddles the x axis; rods stand on
 * the y axis". null for an angle, and for a count that is a multiple of 4.
 */
export function standsToAxes({ count, start }: BoltCircle): string | null {
  if (start.kind === "degrees" || count % 4 === 0) return null;
  const axis = start.axis ?? "x";
  const other = axis === "x" ? "y" : "x";
  if (count % 2 === 1) {
    return start.kind === "straddle"
      ? `straddles +${axis}; a rod stands on -${axis}`
      : `a rod stands on +${axis}; straddles -${axis}`;
  }
  return start.kind === "straddle"
    ? `straddles the ${axis} axis; rods stand on the ${other} axis`
    : `rods stand on the ${axis} axis; straddles the ${other} axis`;
}

/** A named start without its axis, where the two axes differ. */
function doubtsOf(circle: BoltCircle): readonly PatternDoubt[] {
  const { start, count } = circle;
  const words = standsToAxes(circle);
  if (words === null || start.kind === "degrees" || start.axis !== undefined) return [];
  const message = `${start.kind} of ${count} rods names no axis, and the two differ; read as ${start.kind} x: ${words}`;
  return [{ key: "start", code: "axis-not-named", message, hint: `write ${start.kind} x or ${start.kind} y` }];
}

/** A position between two points of the lattice is rounded half away from zero. */
function positions({ diameter, count, start }: CirclePattern): readonly Point[] {
  return Array.from({ length: count }, (_, i) => {
    const { cos, sin } = turnOf(startNumerator(start, count) + 360 * i, count);
    return pointInNanometres((diameter * cos) / 2, (diameter * sin) / 2);
  });
}

/** The first rod's angle in degrees times the count: whole for the named starts, so that folding is exact. */
function startNumerator(start: CircleStart, count: number): number {
  switch (start.kind) {
    case "degrees":
      return start.degrees * count;
    case "straddle":
      return axisNumerator(start.axis, count) + 180;
    case "on-axis":
      return axisNumerator(start.axis, count);
  }
}

function axisNumerator(axis: "x" | "y" | undefined, count: number): number {
  return axis === "y" ? 90 * count : 0;
}

/** The kind `circle`. */
export const circle: PatternDefinition<ReturnType<typeof schema>, CirclePattern> = {
  kind: "circle",
  also: ["circular", "bolt circle"],
  schema,
  columns: {
    diameter: {
      name: "Bolt circle",
      also: ["BC", "BCD", "Bolt circle dia", "Rod circle"],
      cell: "length",
      example: "24",
    },
    count: { name: "Count", also: ["Rods on circle"], cell: "text", example: "8" },
    start: {
      name: "Start",
      also: ["Start angle", "First rod"],
      cell: "word",
      example: "straddle; straddle y; on-axis; 22.5",
    },
  },
  isMeant: ({ diameter }) => diameter !== undefined,
  resolve: (document) => ({ pattern: document, faults: [], doubts: doubtsOf(document) }),
  count: ({ count }) => count,
  positions,
  boltCircle: (pattern) => pattern,
};

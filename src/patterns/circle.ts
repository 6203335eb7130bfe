/** Rods at one pitch on a bolt circle about the working point. */
import * as z from "zod";
import type { Point } from "../geometry/index.js";
import { pointInNanometres, turnOf } from "../geometry/index.js";
import { countLeaf, keys, leaf, lengthLeaf } from "../leaves/leaves.js";
import type { Unit } from "../units/index.js";
import { parseAngle } from "../units/index.js";
import type { BoltCircle, CircleStart, PatternDefinition } from "./model.js";

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
      start: startLeaf("Degrees counter-clockwise from +x, straddle, or on-axis."),
    },
    "Rods on a bolt circle.",
  );
}

/** Degrees counter-clockwise from +x, or one of the words. */
function startLeaf(description: string) {
  const allowed = "degrees counter-clockwise from +x, straddle or on-axis";
  return leaf<CircleStart>(allowed, description, (text) => {
    const word = text.trim().toLowerCase().replace(/\s+/g, "-");
    if (word === "straddle" || word === "on-axis") return { ok: true, value: { kind: word } };
    const reading = parseAngle(text);
    if (!reading.ok) return { ok: false, message: `${reading.message}; or straddle, or on-axis` };
    return { ok: true, value: { kind: "degrees", degrees: reading.value } };
  });
}

/** A position between two points of the lattice is rounded half away from zero. */
function positions({ diameter, count, start }: CirclePattern): readonly Point[] {
  return Array.from({ length: count }, (_, i) => {
    const { cos, sin } = turnOf(startNumerator(start, count) + 360 * i, count);
    return pointInNanometres((diameter * cos) / 2, (diameter * sin) / 2);
  });
}

/** The first rod's angle in degrees times the count: whole for the two named starts, so that folding is exact. */
function startNumerator(start: CircleStart, count: number): number {
  switch (start.kind) {
    case "degrees":
      return start.degrees * count;
    case "straddle":
      return 180;
    case "on-axis":
      return 0;
  }
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
    count: { name: "Count", also: ["Rods on circle", "Rod count", "No. of rods"], cell: "text", example: "8" },
    start: { name: "Start", also: ["Start angle", "First rod"], cell: "word", example: "straddle; on-axis; 22.5" },
  },
  isMeant: ({ diameter }) => diameter !== undefined,
  resolve: (document) => ({ pattern: document, faults: [] }),
  count: ({ count }) => count,
  positions,
  boltCircle: (pattern) => pattern,
};

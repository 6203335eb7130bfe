/** Rods where they are listed. */
import * as z from "zod";
import { pointAt } from "../geometry/index.js";
import { keys, pointsLeaf } from "../leaves/leaves.js";
import type { Unit } from "../units/index.js";
import type { Offset, PatternDefinition } from "./model.js";

/** The rods one by one, in the order written. */
export interface PointsPattern {
  readonly kind: "points";
  readonly at: readonly Offset[];
}

function schema(unit: Unit) {
  return keys({ kind: z.literal("points"), at: pointsLeaf(unit) }, "Rods as listed.");
}

const NONE = { key: "at", code: "required", message: "is an empty list; allowed is one point or more" };

/** The kind `points`. */
export const points: PatternDefinition<ReturnType<typeof schema>, PointsPattern> = {
  kind: "points",
  also: [],
  schema,
  columns: {
    at: { name: "Points", also: ["Rod points", "Coordinates"], cell: "points", example: "-6,5; 6,5; 6,-5; -6,-5" },
  },
  isMeant: ({ at }) => at !== undefined,
  resolve: ({ kind, at }) =>
    at.length === 0
      ? { pattern: null, faults: [NONE] }
      : { pattern: { kind, at: at.map(([x, y]) => ({ x, y })) }, faults: [] },
  count: ({ at }) => at.length,
  positions: ({ at }) => at.map(({ x, y }) => pointAt(x, y)),
  boltCircle: () => null,
};

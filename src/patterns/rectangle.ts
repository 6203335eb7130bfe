/** Rods evenly on a rectangle about the working point. */
import * as z from "zod";
import { countLeaf, keys, lengthLeaf } from "../leaves/leaves.js";
import type { Length, Unit } from "../units/index.js";
import { countCrossings, crossings, PERIMETER, perimeterLeaf } from "./crossings.js";
import type { PatternDefinition } from "./model.js";
import { MOST_RODS } from "./model.js";

/** `x` and `y` overall, centred on the working point; `perimeter` leaves the inside out. */
export interface RectanglePattern {
  readonly kind: "rectangle";
  readonly x: Length;
  readonly y: Length;
  readonly nx: number;
  readonly ny: number;
  readonly perimeter: boolean;
}

function schema(unit: Unit) {
  const spacing = (axis: string) => lengthLeaf(unit, "above zero", `Overall spacing in ${axis}, centred on 0,0.`);
  const count = (axis: string) => countLeaf(2, MOST_RODS, `Rods in ${axis}; omitted: 2.`).optional();
  const perimeter = perimeterLeaf();
  return keys(
    { kind: z.literal("rectangle"), x: spacing("x"), y: spacing("y"), nx: count("x"), ny: count("y"), perimeter },
    "Rods on a rectangle.",
  );
}

/** `count` lines in nanometres, evenly over `overall`, centred on 0: k overall / (2 (count - 1)) for k = -(count - 1), ... */
function spaced(overall: number, count: number): readonly number[] {
  if (count === 1) return [0];
  return Array.from({ length: count }, (_, i) => (overall * (2 * i - count + 1)) / (2 * (count - 1)));
}

/** The kind `rectangle`. */
export const rectangle: PatternDefinition<ReturnType<typeof schema>, RectanglePattern> = {
  kind: "rectangle",
  also: ["rect"],
  schema,
  columns: {
    x: { name: "X", also: ["Overall X", "Pattern X"], cell: "length", example: "12", hasPitch: true },
    y: { name: "Y", also: ["Overall Y", "Pattern Y"], cell: "length", example: "10", hasPitch: true },
    nx: { name: "nx", also: ["Rods in X", "Count X"], cell: "text", example: "3" },
    ny: { name: "ny", also: ["Rods in Y", "Count Y"], cell: "text", example: "2" },
    perimeter: PERIMETER,
  },
  isMeant: ({ x, y }) => x !== undefined || y !== undefined,
  resolve: ({ kind, x, y, nx = 2, ny = 2, perimeter = false }) => ({
    pattern: { kind, x, y, nx, ny, perimeter },
    faults: [],
  }),
  count: ({ nx, ny, perimeter }) => countCrossings(nx, ny, perimeter),
  positions: ({ x, y, nx, ny, perimeter }) => crossings(spaced(x, nx), spaced(y, ny), perimeter),
  boltCircle: () => null,
};

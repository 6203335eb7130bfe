/** Rods where listed lines cross. */
import * as z from "zod";
import { keys, lengthLeaf, rows } from "../leaves/leaves.js";
import type { Length, Unit } from "../units/index.js";
import { countCrossings, crossings, PERIMETER, perimeterLeaf } from "./crossings.js";
import type { PatternDefinition, PatternFault } from "./model.js";

/** Positions of the lines in the base's own axes, in the order written; `perimeter` leaves the inside out. */
export interface LinesPattern {
  readonly kind: "lines";
  readonly x: readonly Length[];
  readonly y: readonly Length[];
  readonly perimeter: boolean;
}

function schema(unit: Unit) {
  const line = lengthLeaf(unit, "any sign", "Position of a line.");
  const lines = (axis: string) => rows(line, "a list of lengths").describe(`The lines in ${axis}.`);
  return keys(
    { kind: z.literal("lines"), x: lines("x"), y: lines("y"), perimeter: perimeterLeaf() },
    "Rods where lines cross.",
  );
}

function faultsOf(key: string, lines: readonly Length[]): readonly PatternFault[] {
  const isEmpty = lines.length === 0;
  const twice = "lists a line twice; allowed are lines that differ";
  return [
    ...(isEmpty ? [{ key, code: "required", message: "is an empty list; allowed is one line or more" }] : []),
    ...(new Set(lines).size < lines.length ? [{ key, code: "coincident-lines", message: twice }] : []),
  ];
}

function ascending(lines: readonly number[]): readonly number[] {
  return [...lines].sort((a, b) => a - b);
}

/** The kind `lines`. */
export const lines: PatternDefinition<ReturnType<typeof schema>, LinesPattern> = {
  kind: "lines",
  also: [],
  schema,
  columns: {
    x: { name: "Lines X", also: [], cell: "lengths", example: "-9; 0; 9" },
    y: { name: "Lines Y", also: [], cell: "lengths", example: "-6; 6" },
    perimeter: PERIMETER,
  },
  isMeant: ({ x, y }) => (x ?? y)?.kind === "list",
  resolve: ({ kind, x, y, perimeter = false }) => ({
    pattern: x.length * y.length === 0 ? null : { kind, x, y, perimeter },
    faults: [...faultsOf("x", x), ...faultsOf("y", y)],
  }),
  count: ({ x, y, perimeter }) => countCrossings(x.length, y.length, perimeter),
  positions: ({ x, y, perimeter }) => crossings(ascending(x), ascending(y), perimeter),
  boltCircle: () => null,
};

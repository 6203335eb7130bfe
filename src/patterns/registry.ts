/** Every kind of rod pattern, a line each; all else about patterns is derived from this list or asked of it. */
import * as z from "zod";
import type { Point } from "../geometry/index.js";
import type { Unit } from "../units/index.js";
import { circle } from "./circle.js";
import { lines } from "./lines.js";
import type { BoltCircle, PatternCells, PatternColumn, PatternDefinition, ResolvedPattern } from "./model.js";
import { points } from "./points.js";
import { rectangle } from "./rectangle.js";

/** In the order in which they are named to a user. */
const PATTERNS = {
  rectangle,
  lines,
  circle,
  points,
};

/** A rod pattern, whole. */
export type Pattern = NonNullable<ReturnType<(typeof PATTERNS)[keyof typeof PATTERNS]["resolve"]>["pattern"]>;

/** A rod pattern as a job file writes it. */
export type PatternDocument = z.output<ReturnType<(typeof PATTERNS)[keyof typeof PATTERNS]["schema"]>>;

type AnyDefinition = PatternDefinition<z.ZodType<PatternDocument>, Pattern>;

/** The same under one type; the compiler holds that each stands under its own kind. */
const byKind: { readonly [Kind in Pattern["kind"]]: AnyDefinition & { readonly kind: Kind } } = PATTERNS;

/** The kinds, in order. */
export const PATTERN_KINDS: readonly Pattern["kind"][] = Object.values(PATTERNS).map(({ kind }) => kind);

/** The `pattern` key of a job file whose bare numbers are in `unit`. */
export function patternChoice(unit: Unit) {
  const [first, ...others] = Object.values(PATTERNS).map(({ schema }) => schema(unit));
  const kinds = `${PATTERN_KINDS.slice(0, -1).join(", ")} or ${PATTERN_KINDS.at(-1)}`;
  return z
    .discriminatedUnion("kind", [first ?? rectangle.schema(unit), ...others], { error: () => `kind: ${kinds}` })
    .describe("Where the rods stand, in the base's own axes, exactly as typed.");
}

/** The pattern as written -> with its defaults, and the faults that a schema cannot see. */
export function resolvePattern(document: PatternDocument): ResolvedPattern<Pattern> {
  return byKind[document.kind].resolve(document);
}

/** How many rods the pattern has, without laying them out. */
export function countRods(pattern: Pattern): number {
  return byKind[pattern.kind].count(pattern);
}

/** Positions of a pattern in the base's own axes, exactly as typed: nothing is re-centred. */
export function rodPositions(pattern: Pattern): readonly Point[] {
  return byKind[pattern.kind].positions(pattern);
}

/** The circle on which all rods of the pattern stand at one pitch, or null. */
export function boltCircleOf(pattern: Pattern): BoltCircle | null {
  return byKind[pattern.kind].boltCircle(pattern);
}

/** Columns of a schedule for the keys of a pattern, each once, in the order of the starting spreadsheet. */
export const PATTERN_COLUMNS: ReadonlyMap<PatternColumn, string> = new Map(
  Object.values(PATTERNS).flatMap(({ columns }) =>
    Object.entries(columns).map(([key, column]): [PatternColumn, string] => [column, key]),
  ),
);

/** What prints write for a kind -> the kind. */
export const PATTERN_SYNONYMS: Readonly<Record<string, string>> = Object.fromEntries(
  Object.values(PATTERNS).flatMap(({ kind, also }) => also.map((word) => [word, kind])),
);

/** The kind that the filled cells of a row mean: the last of the list that takes them, as the more particular one. */
export function kindMeant(cells: PatternCells): Pattern["kind"] | null {
  return PATTERN_KINDS.findLast((kind) => byKind[kind].isMeant(cells)) ?? null;
}

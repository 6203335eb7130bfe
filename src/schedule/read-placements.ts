/** Rows of a placement list -> placements, as a job file would have them, with the cell that each value stands in. */
import type { Finding } from "../diagnostics/finding.js";
import type { Table } from "../readers/inputs.js";
import type { SourceEntry, SourceMap, SourceNode, SourcePlace } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import { scalar } from "./cell-forms.js";
import type { PlacementHeading, PlacementKey } from "./placement-headings.js";
import { findPlacementHeading, PLACEMENT_HEADINGS, placementHeadingOf } from "./placement-headings.js";
import type { HeadingSet, SheetRow } from "./sheet-reading.js";
import { readSheet } from "./sheet-reading.js";

/** The placements of a list; those of faulty cells are left in, so that the other faults are told too. */
export interface PlacementList {
  readonly placements: readonly SourceNode[];
  readonly findings: readonly Finding[];
  /** The heading under which a key of a placement stands. */
  readonly headingOf: (path: readonly PropertyKey[]) => string | null;
}

/** Most bases of one plan. */
export const MOST_PLACEMENTS = 10_000;

const SHEET: HeadingSet<PlacementHeading> = {
  all: PLACEMENT_HEADINGS,
  find: findPlacementHeading,
  mostRows: MOST_PLACEMENTS,
};

/** Reads a placement list: one row is one placement. */
export function readPlacements(table: Table, file: string, unit: Unit): PlacementList {
  const isMark = ({ key }: PlacementHeading) => key === "base";
  const sheet = readSheet(table, file, unit, SHEET, isMark, "Mark, Line 1, Line 2, ...");
  const read = sheet.rows.map(toPlacement);
  return {
    placements: read.map(({ placement }) => placement),
    findings: [...sheet.findings, ...read.flatMap(({ findings }) => findings)],
    headingOf: placementHeadingOf,
  };
}

type Values = ReadonlyMap<PlacementKey, SourceNode>;

interface ReadPlacement {
  readonly placement: SourceMap;
  readonly findings: readonly Finding[];
}

function toPlacement({ place, values }: SheetRow<PlacementHeading>): ReadPlacement {
  const byKey: Values = new Map(values.map(({ heading, node }) => [heading.key, node]));
  const { at, findings } = crossing(byKey, place);
  const written: Readonly<Record<string, SourceNode | undefined>> = {
    base: byKey.get("base"),
    at,
    offset: pointOf(byKey, "offset", place),
    near: pointOf(byKey, "near", place),
    turn: byKey.get("turn"),
    topOfConcrete: byKey.get("topOfConcrete"),
    bottomOfPlate: byKey.get("bottomOfPlate"),
    hand: byKey.get("hand"),
  };
  const entries = Object.entries(written).flatMap(([key, value]): SourceEntry[] =>
    value === undefined ? [] : [{ key, place: value.place, value }],
  );
  return { placement: { kind: "map", entries, place }, findings };
}

interface ReadCrossing {
  readonly at: SourceNode | undefined;
  readonly findings: readonly Finding[];
}

/** Grid, or Line 1 and Line 2: one of the two ways. */
function crossing(values: Values, place: SourcePlace): ReadCrossing {
  const [whole, first, second] = [values.get("at"), values.get("line1"), values.get("line2")];
  const either = first ?? second;
  if (either === undefined) return { at: whole, findings: [] };
  if (whole !== undefined) {
    const message = "is given beside Grid; allowed is Grid, or Line 1 and Line 2";
    return { at: whole, findings: [errorAt(either.place, "crossing-twice", message)] };
  }
  if (first !== undefined && second !== undefined) return { at: listOf([listOf([first, second])]), findings: [] };
  const [written, lacks] = first === undefined ? ["Line 2", "Line 1"] : ["Line 1", "Line 2"];
  const message = `has ${written} without ${lacks}; allowed are both, or Grid`;
  const { file, line, column, label } = place;
  const blank = { file, line, column, label: `${label ?? ""} Line 1` };
  return { at: undefined, findings: [errorAt(blank, "cell-fault", message)] };
}

/** A column of two: what one of them leaves blank is 0. */
function pointOf(values: Values, key: "offset" | "near", place: SourcePlace): SourceNode | undefined {
  const [x, y] = [values.get(`${key}.x`), values.get(`${key}.y`)];
  return x === undefined && y === undefined ? undefined : listOf([x ?? scalar("0", place), y ?? scalar("0", place)]);
}

function listOf(items: readonly SourceNode[]): SourceNode {
  return { kind: "list", items, place: items[0]?.place ?? { file: "", line: 1, column: 1 } };
}

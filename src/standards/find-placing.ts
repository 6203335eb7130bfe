/** Placing tolerances by edition. */
import type { Length } from "../units/length.js";
import { aci117Placing } from "./aci-117-10/placing.js";
import { accumulation, aisc303TenPlacing } from "./aisc-303-10/placing.js";
import { aisc303Placing } from "./aisc-303-22/placing.js";
import { unknownEdition } from "./editions.js";
import { en1090Placing } from "./en-1090-2/placing.js";
import type { ElevationRow, Lookup, PlacingRow, Sized, Sourced, StandardTable } from "./model.js";
import type { PlacingItem, PlacingTableRow } from "./placing.js";
import { nearestSizes } from "./sized-index.js";
import { printedInches } from "./sizes.js";

/** How a foundation bolt is set, for EN 1090-2: cast in fixed, or adjustable in a pocket or sleeve. */
export type BoltFixing = "fixed" | "adjustable";

/** A tolerance between groups: `growth` for each length of line, never more than `tolerance` in total. */
export interface GroupPlacingRow extends Sourced {
  readonly item: string;
  readonly tolerance: Length;
  readonly growth: { readonly tolerance: Length; readonly per: Length } | null;
}

interface PlacingIndex {
  readonly edition: string;
  /** Rows that hold for every diameter. */
  readonly every: PlacingTableRow | undefined;
  readonly byDiameter: ReadonlyMap<Length, PlacingTableRow>;
  readonly sizes: readonly Sized[];
  readonly top: PlacingTableRow | undefined;
  readonly rows: readonly PlacingTableRow[];
}

const fixed = en1090Placing.rows.filter((row) => row.fixing === "fixed");
const adjustable = en1090Placing.rows.filter((row) => row.fixing === "adjustable");
const INDEXES: ReadonlyMap<string, Readonly<Record<BoltFixing, PlacingIndex>>> = new Map([
  ["ACI 117-10", both(index(aci117Placing))],
  ["AISC 303-10", both(index(aisc303TenPlacing))],
  ["AISC 303-22", both(index(aisc303Placing))],
  [
    "EN 1090-2",
    { fixed: index({ ...en1090Placing, rows: fixed }), adjustable: index({ ...en1090Placing, rows: adjustable }) },
  ],
]);

/**
 * As-placed tolerance in plan for a rod diameter. ACI 117-10, AISC 303-22 and EN 1090-2 limit each rod's position, AISC 303-10
 * the spacing of any two rods of a group.
 */
export function findPlacing(edition: string, diameter: Length, fixing: BoltFixing = "fixed"): Lookup<PlacingRow> {
  const table = INDEXES.get(edition)?.[fixing] ?? unknownEdition("placing", edition);
  const row = table.byDiameter.get(diameter) ?? table.every;
  if (row === undefined || row.plus === null) return { found: false, nearest: nearestSizes(table.sizes, diameter) };
  const { item, source, confidence, note, plus } = row;
  const limits = row.about === "rod spacing" ? "spacing" : "position";
  const placing: PlacingRow = { limits, tolerance: plus, item, source, confidence, note };
  return { found: true, row: placing, edition: table.edition, clause: row.clause };
}

/** Tolerance of the top of a rod. */
export function findElevation(edition: string, fixing: BoltFixing = "fixed"): Lookup<ElevationRow> {
  const { top, edition: printed } = INDEXES.get(edition)?.[fixing] ?? unknownEdition("placing", edition);
  if (top === undefined || top.minus === null || top.plus === null) return { found: false, nearest: [] };
  const { item, source, confidence, note, minus, plus, clause } = top;
  return { found: true, row: { low: minus, high: plus, item, source, confidence, note }, edition: printed, clause };
}

/** Tolerance between groups, where the edition has one: adjacent group centres, or what may add up along a column line. */
export function findGroupPlacing(
  edition: string,
  about: Extract<PlacingItem, "adjacent groups" | "group position" | "accumulated along a column line">,
): Lookup<GroupPlacingRow> {
  const { rows, edition: printed } = INDEXES.get(edition)?.fixed ?? unknownEdition("placing", edition);
  const row = rows.find((each) => each.about === about);
  if (row === undefined || row.plus === null) return { found: false, nearest: [] };
  const { item, source, confidence, note, plus, clause } = row;
  const growth = about === "accumulated along a column line" ? accumulation : null;
  return { found: true, row: { tolerance: plus, growth, item, source, confidence, note }, edition: printed, clause };
}

function both(table: PlacingIndex): Readonly<Record<BoltFixing, PlacingIndex>> {
  return { fixed: table, adjustable: table };
}

function index(table: StandardTable<PlacingTableRow>): PlacingIndex {
  const inPlan = table.rows.filter((row) => row.about === "rod position" || row.about === "rod spacing");
  const sized = inPlan.flatMap((row) => (row.sizes === "all" ? [] : row.sizes.map((size) => sizedRow(row, size))));
  return {
    edition: table.edition,
    every: inPlan.find((row) => row.sizes === "all"),
    byDiameter: new Map(sized.map((row) => [row.diameter, row])),
    sizes: sized.toSorted((a, b) => a.diameter - b.diameter),
    top: table.rows.find((row) => row.about === "top of rod"),
    rows: table.rows,
  };
}

function sizedRow(row: PlacingTableRow, size: string): PlacingTableRow & Sized {
  return { ...row, size, diameter: printedInches(size) };
}

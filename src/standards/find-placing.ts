/** Placing tolerances by edition. */
import type { Length } from "../units/length.js";
import { aci117Placing } from "./aci-117-10/placing.js";
import { aisc303TenPlacing } from "./aisc-303-10/placing.js";
import { aisc303Placing } from "./aisc-303-22/placing.js";
import type { PlacingEdition } from "./editions.js";
import { en1090Placing } from "./en-1090-2/placing.js";
import type { ElevationRow, Lookup, PlacingRow, Sized, Sourced, StandardTable } from "./model.js";
import type { Growth, PlacingItem, PlacingTableRow } from "./placing.js";
import { nearestSizes } from "./sized-index.js";
import { printedInches } from "./sizes.js";

/** How a foundation bolt is set, for EN 1090-2: cast in fixed, or adjustable in a pocket or sleeve. */
export type BoltFixing = "fixed" | "adjustable";

/** A tolerance between groups: `growth` for each length of line, never more than `tolerance` in total. */
export interface GroupPlacingRow extends Sourced {
  readonly item: string;
  readonly tolerance: Length;
  readonly growth: Growth | null;
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

const INDEXES: Readonly<Record<PlacingEdition, Readonly<Record<BoltFixing, PlacingIndex>>>> = {
  "ACI 117-10": both(index(aci117Placing)),
  "AISC 303-10": both(index(aisc303TenPlacing)),
  "AISC 303-22": both(index(aisc303Placing)),
  "EN 1090-2:2008": { fixed: foundationBolts("fixed"), adjustable: foundationBolts("adjustable") },
};

/**
 * As-placed tolerance in plan for a rod diameter. ACI 117-10, AISC 303-22 and EN 1090-2 limit each rod's position, AISC 303-10
 * the spacing of any two rods of a group.
 */
export function findPlacing(
  edition: PlacingEdition,
  diameter: Length,
  fixing: BoltFixing = "fixed",
): Lookup<PlacingRow> {
  const table = INDEXES[edition][fixing];
  const row = table.byDiameter.get(diameter) ?? table.every;
  if (row === undefined || row.plus === null) return { found: false, nearest: nearestSizes(table.sizes, diameter) };
  const { item, source, confidence, note, plus } = row;
  const limits = row.about === "rod spacing" ? "spacing" : "position";
  const placing: PlacingRow = { limits, tolerance: plus, item, source, confidence, note };
  return { found: true, row: placing, edition: table.edition, clause: row.clause };
}

/** Tolerance of the top of a rod. */
export function findElevation(edition: PlacingEdition, fixing: BoltFixing = "fixed"): Lookup<ElevationRow> {
  const { top, edition: printed } = INDEXES[edition][fixing];
  if (top === undefined || top.minus === null || top.plus === null) return { found: false, nearest: [] };
  const { item, source, confidence, note, minus, plus, clause } = top;
  return { found: true, row: { low: minus, high: plus, item, source, confidence, note }, edition: printed, clause };
}

/** Whose tolerance of the top of concrete goes with an edition: AISC 303 has none, ACI 117 holds for concrete beside it. */
const CONCRETE_TOPS: Readonly<Record<PlacingEdition, PlacingIndex>> = {
  "ACI 117-10": INDEXES["ACI 117-10"].fixed,
  "AISC 303-10": INDEXES["ACI 117-10"].fixed,
  "AISC 303-22": INDEXES["ACI 117-10"].fixed,
  "EN 1090-2:2008": INDEXES["EN 1090-2:2008"].fixed,
};

/** Tolerance of the top of concrete under a base plate: tops of foundations, of EN 1090-2 the level of the support. */
export function findConcreteTop(placing: PlacingEdition): Lookup<ElevationRow> {
  const { rows, edition } = CONCRETE_TOPS[placing];
  const row = rows.find(({ about }) => about === "top of concrete");
  if (row === undefined || row.minus === null || row.plus === null) return { found: false, nearest: [] };
  const { item, source, confidence, note, minus, plus, clause } = row;
  return { found: true, row: { low: minus, high: plus, item, source, confidence, note }, edition, clause };
}

/** Tolerance between groups, where the edition has one: adjacent group centres, or what may add up along a column line. */
export function findGroupPlacing(
  edition: PlacingEdition,
  about: Extract<PlacingItem, "adjacent groups" | "group position" | "accumulated along a column line">,
): Lookup<GroupPlacingRow> {
  const { rows, edition: printed } = INDEXES[edition].fixed;
  const row = rows.find((each) => each.about === about);
  if (row === undefined || row.plus === null) return { found: false, nearest: [] };
  const { item, source, confidence, note, plus, growth, clause } = row;
  return { found: true, row: { tolerance: plus, growth, item, source, confidence, note }, edition: printed, clause };
}

/** All rows of an edition in the order printed; of EN 1090-2 those of bolts that are cast in fixed. */
export function placingRows(edition: PlacingEdition): readonly PlacingTableRow[] {
  return INDEXES[edition].fixed.rows;
}

function both(table: PlacingIndex): Readonly<Record<BoltFixing, PlacingIndex>> {
  return { fixed: table, adjustable: table };
}

/** The rows of EN 1090-2 for bolts set in a way, with those for any. */
function foundationBolts(fixing: BoltFixing): PlacingIndex {
  const rows = en1090Placing.rows.filter((row) => row.fixing === fixing || row.fixing === "any");
  return index({ ...en1090Placing, rows });
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

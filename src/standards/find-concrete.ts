/** Spacing of cast-in rods and concrete cover, by edition. */
import { inches, type Length } from "../units/length.js";
import { aci318ElevenSpacing } from "./aci-318-11/cast-in.js";
import { aci318FourteenSpacing } from "./aci-318-14/cast-in.js";
import { aci318Cover, aci318Spacing, type CoverTableRow } from "./aci-318-19/cast-in.js";
import { editionsOf, unknownEdition } from "./editions.js";
import type { CoverRow, Exposure, Lookup, SpacingRow, SpacingTableRow, StandardTable } from "./model.js";
import { found } from "./sized-index.js";

const SPACING: ReadonlyMap<string, StandardTable<SpacingTableRow>> = new Map([
  ["ACI 318-19", aci318Spacing],
  ["ACI 318-14", aci318FourteenSpacing],
  ["ACI 318-11", aci318ElevenSpacing],
]);

/** No. 5 bars are 5/8 in: the largest diameter that takes the smaller cover when exposed. */
const NO_5 = inches(5 / 8);

/** Least spacing, and least edge distance where it is a multiple of the diameter, for torqued or untorqued cast-in rods. */
export function findSpacing(edition: string, torqued: boolean): Lookup<SpacingRow> {
  const table = SPACING.get(edition) ?? unknownEdition("concrete", edition);
  const row = table.rows.find((candidate) => candidate.torqued === torqued);
  return row === undefined ? { found: false, nearest: [] } : found(table, row);
}

/**
 * Cover to a rod (or to the nut or plate at its bottom) in a pedestal, column or footing. Held for ACI 318-19; for the earlier
 * editions the nearest edition is named.
 */
export function findCover(edition: string, exposure: Exposure, diameter: Length): Lookup<CoverRow> {
  if (!editionsOf("concrete").includes(edition)) return unknownEdition("concrete", edition);
  if (edition !== aci318Cover.edition) return { found: false, nearest: [aci318Cover.edition] };
  const row = aci318Cover.rows.find((candidate) => applies(candidate, exposure, diameter));
  return row === undefined ? { found: false, nearest: [] } : found(aci318Cover, row);
}

function applies(row: CoverTableRow, exposure: Exposure, diameter: Length): boolean {
  if (row.exposure !== exposure || row.member === "slab, joist or wall") return false;
  return row.bars === "all" || (row.bars === "No. 5 and smaller") === diameter <= NO_5;
}

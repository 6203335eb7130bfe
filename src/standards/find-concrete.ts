/** Spacing of cast-in rods and concrete cover, by edition. */
import type { Length } from "../units/length.js";
import { aci318ElevenSpacing } from "./aci-318-11/cast-in.js";
import { aci318FourteenSpacing } from "./aci-318-14/cast-in.js";
import { aci318Cover, aci318Spacing, type CoverTable, type CoverTableRow } from "./aci-318-19/cast-in.js";
import { aci318MetricCover, aci318MetricSpacing } from "./aci-318m-19/cast-in.js";
import type { ConcreteEdition } from "./editions.js";
import type { CoverRow, Exposure, Lookup, SpacingRow, SpacingTableRow, StandardTable } from "./model.js";
import { found } from "./sized-index.js";

const SPACING: Readonly<Record<ConcreteEdition, StandardTable<SpacingTableRow>>> = {
  "ACI 318-19": aci318Spacing,
  "ACI 318M-19": aci318MetricSpacing,
  "ACI 318-14": aci318FourteenSpacing,
  "ACI 318-11": aci318ElevenSpacing,
};

/** null: the edition's own cover table is not held, and no other stands in for it. */
const COVER: Readonly<Record<ConcreteEdition, CoverTable | null>> = {
  "ACI 318-19": aci318Cover,
  "ACI 318M-19": aci318MetricCover,
  "ACI 318-14": null,
  "ACI 318-11": null,
};

/** Where an edition states its rules: of spacing (and of the edge of a torqued rod), and of cover. */
export interface ConcreteClauses {
  readonly spacing: string;
  /** 318-14 by the note of 318-19's own table; 318-11 from memory. */
  readonly cover: string;
}

const COVER_CLAUSES: Readonly<Record<ConcreteEdition, string>> = {
  "ACI 318-19": "20.5.1.3",
  "ACI 318M-19": "20.5.1.3",
  "ACI 318-14": "20.6.1.3",
  "ACI 318-11": "7.7.1",
};

/** The clauses of an edition. */
export function concreteClauses(edition: ConcreteEdition): ConcreteClauses {
  return { spacing: SPACING[edition].clause, cover: COVER_CLAUSES[edition] };
}

/** Least spacing, and least edge distance where it is a multiple of the diameter, for torqued or untorqued cast-in rods. */
export function findSpacing(edition: ConcreteEdition, torqued: boolean): Lookup<SpacingRow> {
  const table = SPACING[edition];
  const row = table.rows.find((candidate) => candidate.torqued === torqued);
  return row === undefined ? { found: false, nearest: [] } : found(table, row);
}

/**
 * Cover to a rod (or to the nut or plate at its bottom) in a pedestal, column or footing. Held for ACI 318-19 and its metric
 * companion; for the earlier editions the nearest edition is named.
 */
export function findCover(edition: ConcreteEdition, exposure: Exposure, diameter: Length): Lookup<CoverRow> {
  const table = COVER[edition];
  if (table === null) return { found: false, nearest: [aci318Cover.edition] };
  const row = table.rows.find((candidate) => applies(table, candidate, exposure, diameter));
  return row === undefined ? { found: false, nearest: [] } : found(table, row);
}

function applies({ smallBars }: CoverTable, row: CoverTableRow, exposure: Exposure, diameter: Length): boolean {
  if (row.exposure !== exposure || row.member === "slab, joist or wall") return false;
  return row.bars === "all" || (row.bars === smallBars.printed) === diameter <= smallBars.greatest;
}

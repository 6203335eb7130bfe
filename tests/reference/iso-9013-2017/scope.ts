/** ISO 9013:2017: scope, and mean height of the profile Rz5. */
import type { Sourced, StandardTable } from "../../../src/standards/model.js";
import { type Length, millimetres } from "../../../src/units/length.js";

const SOURCE = "ISO 9013:2017";

/** Rz5 in micrometres: base + perMillimetre x a, a being the thickness in mm. */
export interface RoughnessRow extends Sourced {
  readonly range: 1 | 2 | 3 | 4;
  readonly baseMicrometres: number;
  readonly perMillimetre: number;
}

/** Range, base, per millimetre of thickness. */
export const roughness: StandardTable<RoughnessRow> = {
  edition: "ISO 9013:2017",
  clause: "mean height of the profile Rz5",
  rows: [roughnessRow(1, 10, 0.6), roughnessRow(2, 40, 0.8), roughnessRow(3, 70, 1.2), roughnessRow(4, 110, 1.8)],
};

/** Thicknesses that the standard covers, ends included. */
export interface ScopeRow extends Sourced {
  readonly process: "flame" | "plasma" | "laser";
  readonly least: Length;
  readonly greatest: Length;
}

/** Process, least and greatest thickness in mm. */
export const scope: StandardTable<ScopeRow> = {
  edition: "ISO 9013:2017",
  clause: "scope",
  rows: [scopeRow("flame", 3, 300), scopeRow("plasma", 0.5, 150), scopeRow("laser", 0.5, 32)],
};

function roughnessRow(range: RoughnessRow["range"], baseMicrometres: number, perMillimetre: number): RoughnessRow {
  return { range, baseMicrometres, perMillimetre, source: SOURCE, confidence: "medium-high", note: "" };
}

function scopeRow(process: ScopeRow["process"], least: number, greatest: number): ScopeRow {
  const range = { least: millimetres(least), greatest: millimetres(greatest) };
  return { process, ...range, source: SOURCE, confidence: "high", note: "" };
}

/** ISO 9013:2017: scope. */
import type { Sourced, StandardTable } from "../../../src/standards/model.js";
import { type Length, millimetres } from "../../../src/units/length.js";

const SOURCE = "ISO 9013:2017";

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

function scopeRow(process: ScopeRow["process"], least: number, greatest: number): ScopeRow {
  const range = { least: millimetres(least), greatest: millimetres(greatest) };
  return { process, ...range, source: SOURCE, confidence: "high", note: "" };
}

/** The published DXF reference: values of `$INSUNITS` that drawings of plates use. */
import { surveyMillimetres } from "../../units/coordinate.js";
import type { Sourced } from "../model.js";

/** A unit of drawing files. */
export interface DrawingUnitRow extends Sourced {
  /** As it stands in the file. */
  readonly code: string;
  /** Short name, as findings print it. */
  readonly unit: string;
  readonly millimetres: number;
  /** What `$MEASUREMENT` says beside it: 1 metric, 0 English. */
  readonly metric: boolean;
}

/** Code, short name, millimetres. 0, unitless, is no row. */
export const drawingUnits: readonly DrawingUnitRow[] = [
  row("1", "in", 25.4, false),
  row("2", "ft", surveyMillimetres("ft"), false),
  row("3", "mi", 1_609_344, false),
  row("4", "mm", 1, true),
  row("5", "cm", 10, true),
  row("6", "m", 1000, true),
  row("7", "km", 1e6, true),
  row("8", "microinch", 25.4e-6, false),
  row("9", "mil", 0.0254, false),
  row("10", "yd", 914.4, false),
  row("21", "US survey foot", surveyMillimetres("ft-us"), false),
];

function row(code: string, unit: string, millimetres: number, metric: boolean): DrawingUnitRow {
  const source = "published DXF reference; ezdxf documentation";
  return { code, unit, millimetres, metric, source, confidence: "high", note: "" };
}

/** Zinc coatings: ASTM F2329 and A153, and what is typical of bolts. Thicknesses in mils (0.001 in). */
import type { ZincRow } from "../../../src/standards/astm-f2329/zinc.js";
import type { Confidence } from "../../../src/standards/model.js";
import { inches } from "../../../src/units/length.js";

/** Specification, item, least and greatest thickness in mils, confidence, source. */
export const zincRows: readonly ZincRow[] = [
  row("ASTM F2329", ">3/8 in dia, average of production lot", 2, 2, "high"),
  row("ASTM F2329", ">3/8 in dia, batch and individual", 1.7, 1.7, "high"),
  row("ASTM F2329", "<=3/8 in dia, individual and average", 1.5, 1.7, "high"),
  row("ASTM A153 class C", "individual and average", 1.7, 2.1, "high"),
  row("typical bolts", "coating thickness", 1.8, 3.5, "medium-high"),
];

function row(specification: string, item: string, least: number, greatest: number, confidence: Confidence): ZincRow {
  const span = { least: inches(least / 1000), greatest: inches(greatest / 1000) };
  return { specification, item, ...span, source: "secondary copy", confidence, note: "" };
}

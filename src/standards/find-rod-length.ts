/** Tolerance of the length of a rod by its grade's specification. */
import type { Length } from "../units/length.js";
import { f1554Lengths, type LengthToleranceRow } from "./astm-f1554/lengths.js";
import type { GradeRow, Lookup } from "./model.js";

/** Plus and minus on the overall length of a rod; ISO 898-1 has none. */
export function findLengthTolerance(
  { specification }: Pick<GradeRow, "specification">,
  length: Length,
): Lookup<LengthToleranceRow> {
  const { rows, edition, clause } = f1554Lengths;
  const row = rows.find(({ upTo }) => upTo === null || length <= upTo);
  if (specification !== "ASTM F1554" || row === undefined) return { found: false, nearest: [] };
  return { found: true, row, edition, clause };
}

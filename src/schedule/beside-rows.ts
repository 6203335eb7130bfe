/** Texts in the rows of bases that no heading stands over: they are left out, and told once. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { cellInSheet, placeOfCell } from "../readers/cell-place.js";
import { errorAt } from "../readers/source.js";
import type { FoundTable } from "./model.js";

const MOST_NAMED = 10;

/** One warning for all of them. */
export function besideRows({ rows, leftOut, sheet, isTurned }: FoundTable, file: string): readonly Finding[] {
  const lineOf = ({ line, column }: { line: number; column: number }) => (isTurned ? column : line);
  const ofBases = new Set(rows.flatMap((row) => row.slice(0, 1).map(lineOf)));
  const stray = leftOut.filter(({ cell, why }) => why.endsWith("under no heading") && ofBases.has(lineOf(cell)));
  const [first] = stray;
  if (first === undefined) return [];
  const places = listed(
    stray.map(({ cell }) => cellInSheet(cell)),
    MOST_NAMED,
  );
  const message = `${stray.length === 1 ? "1 text stands" : `${stray.length} texts stand`} beside bases under no heading and ${stray.length === 1 ? "is" : "are"} left out: ${places}`;
  const hint = "write a heading over them, and they are kept as notes";
  return [{ ...errorAt(placeOfCell(file, sheet, first.cell), "no-heading", message, hint), severity: "warning" }];
}

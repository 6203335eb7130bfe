/** Marks with a dash or commas that may name one base or several: where two rows would name one base twice, they do not. */
import { markKey } from "./mark-key.js";
import type { PossibleReading } from "./model.js";
import type { SheetCell, TableRow } from "./sheet-cell.js";

/** Rows whose marks are settled where the other rows prove a reading; what they do not prove stays open. */
export function settleMarks(rows: readonly TableRow[]): readonly TableRow[] {
  const cells = rows.flatMap((row) => row.cells.filter(isMarkCell));
  if (!cells.some(({ reading }) => reading?.kind === "choice")) return rows;
  const named = timesNamed(cells);
  return rows.map((row) => ({
    ...row,
    cells: row.cells.map((cell) => (isMarkCell(cell) ? settled(cell, named) : cell)),
  }));
}

function isMarkCell({ column: { role } }: SheetCell): boolean {
  return role.kind === "value" && role.key === "mark";
}

/** Marks -> how many of the open cells name them in one of their readings; a sure mark in an open range may be a slip. */
function timesNamed(cells: readonly SheetCell[]): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const { reading } of cells) {
    const readings = reading?.kind === "choice" ? reading.readings : [];
    for (const mark of new Set(readings.flatMap(marksOf))) times.set(mark, (times.get(mark) ?? 0) + 1);
  }
  return times;
}

function marksOf({ parts }: Pick<PossibleReading, "parts">): readonly string[] {
  return parts.flatMap(({ key, node }) => (key === "mark" && node.kind === "scalar" ? [markKey(node.text)] : []));
}

function settled(cell: SheetCell, named: ReadonlyMap<string, number>): SheetCell {
  if (cell.reading?.kind !== "choice") return cell;
  const isOnce = (reading: PossibleReading) => marksOf(reading).every((mark) => named.get(mark) === 1);
  const [only, ...others] = cell.reading.readings.filter(isOnce);
  if (only === undefined || others.length > 0) return cell;
  const how = `${only.how}: otherwise a mark would stand in two rows`;
  return { ...cell, reading: { kind: "value", parts: only.parts, how } };
}

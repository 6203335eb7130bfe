/** A table that was found -> its rows with the cells that hold something, the job's answers for cells in their place. */
import type { Cell } from "../readers/inputs.js";
import type { RowSource } from "./cell-under-column.js";
import { cellUnder, rowLabel } from "./cell-under-column.js";
import { spreadMerged } from "./merged-cells.js";
import type { FoundTable } from "./model.js";
import type { SheetCell, TableRow } from "./sheet-cell.js";

/** The row of a table at an index; null where it holds nothing. */
export function tableRow(index: number, source: RowSource): TableRow | null {
  const cells = spreadMerged(
    source.table.rows[index] ?? [],
    filledCells(source.table.rows[index] ?? [], source),
    source,
  );
  const [first] = cells;
  return first === undefined ? null : { place: rowPlace(first, source.table), cells };
}

function filledCells(cells: readonly Cell[], source: RowSource): readonly SheetCell[] {
  const filled: SheetCell[] = [];
  for (const column of source.columns) {
    const cell = cells[column.index];
    if (cell === undefined) continue;
    const answer = source.answers.ofCell(cell);
    const text = answer ?? cell.text;
    if (text.trim() !== "" || cell.fault !== undefined) filled.push(cellUnder(column, cell, answer, source));
  }
  return filled;
}

function rowPlace({ cell, place }: SheetCell, table: FoundTable): TableRow["place"] {
  return { ...place, label: rowLabel(cell, table) };
}

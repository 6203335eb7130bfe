/** Cells that are merged over several columns of a row: what they say of each. */
import { cellInSheet } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { RowSource } from "./cell-under-column.js";
import { cellUnder } from "./cell-under-column.js";
import type { CellPart } from "./model.js";
import { readerNamed } from "./read-columns.js";
import type { ReadColumn, SheetCell } from "./sheet-cell.js";

/** How a cell that another covers says so. */
const COVERED = /(?:^|; )merged into ([A-Z]+\d+)$/;

/** The filled cells of a row, each also under the columns that it is merged over where it means them too. */
export function spreadMerged(
  cells: readonly Cell[],
  filled: readonly SheetCell[],
  source: RowSource,
): readonly SheetCell[] {
  const covered = coveredBy(cells, source.columns);
  if (covered.size === 0) return filled;
  return filled.flatMap((cell) => {
    const others = covered.get(cellInSheet(cell.cell)) ?? [];
    return others.length === 0 || cell.isAnswered ? [cell] : spread(cell, others, source);
  });
}

/** Columns whose cells of the row are covered, by the place of the cell that covers them. */
function coveredBy(cells: readonly Cell[], columns: readonly ReadColumn[]): ReadonlyMap<string, readonly ReadColumn[]> {
  const covered = new Map<string, ReadColumn[]>();
  for (const column of columns) {
    const over = COVERED.exec(cells[column.index]?.remark ?? "")?.[1];
    if (over !== undefined) covered.set(over, [...(covered.get(over) ?? []), column]);
  }
  return covered;
}

/** A reference holds for every column; one number over X and Y for both; any other value is in doubt. */
function spread(cell: SheetCell, others: readonly ReadColumn[], source: RowSource): readonly SheetCell[] {
  const { reading, column } = cell;
  const paired = pairReading(cell, others, source);
  if (paired !== null) return [{ ...cell, reading: paired }];
  if (column.role.kind !== "value" || reading === null || reading.kind === "blank" || reading.kind === "fault")
    return [cell];
  if (reading.kind === "reference")
    return [cell, ...others.map((other) => cellUnder(other, cell.cell, undefined, source))];
  const over = others.filter(({ role }) => role.kind === "value" || role.kind === "asked");
  const keys = reading.kind === "value" ? reading.parts.map(({ key }) => key) : [];
  if (over.every(({ role }) => role.kind === "value" && keys.includes(role.key))) return [cell];
  const both = reading.kind === "value" ? equalInBoth(reading.parts, over) : null;
  if (both !== null)
    return [
      {
        ...cell,
        reading: {
          kind: "value",
          parts: both,
          how: `"${cell.text}" over ${column.name} and ${over[0]?.name ?? ""}: equal in both`,
        },
      },
    ];
  const names = [column, ...over].map(({ name }) => name).join(", ");
  const message = `"${cell.text}" is merged over ${names}, and is no value for all of them; allowed is a cell for each, or an answer for ${cellInSheet(cell.cell)} that gives them`;
  return [{ ...cell, reading: { kind: "fault", message } }];
}

/** Columns of sides that one cell may give together, by the heading that gives them. */
const PAIRS: readonly (readonly [x: string, y: string, name: string])[] = [
  ["pattern.x", "pattern.y", "Pattern size"],
  ["basePlate.x", "basePlate.y", "Base plate size"],
  ["concrete.x", "concrete.y", "Pier size"],
];

/** `12 x 10` over the columns of X and Y alone. */
function pairReading(
  { column, text, place }: SheetCell,
  others: readonly ReadColumn[],
  { unit }: RowSource,
): SheetCell["reading"] {
  const keys = [column, ...others].map(({ role }) => (role.kind === "value" ? role.key : ""));
  const name = PAIRS.find(([x, y]) => keys.length === 2 && keys[0] === x && keys[1] === y)?.[2];
  const reading = name === undefined ? undefined : readerNamed(name, unit, column.found.unit)?.read(text, place);
  const parts = reading?.kind === "value" ? reading.parts.map(({ key }) => key) : [];
  return reading !== undefined && keys.every((key) => parts.includes(key)) ? reading : null;
}

function equalInBoth(
  [first, ...more]: readonly CellPart[],
  [other, ...others]: readonly ReadColumn[],
): readonly CellPart[] | null {
  if (first === undefined || other === undefined || more.length > 0 || others.length > 0) return null;
  const key = /^(.*\.)x$/.exec(first.key)?.[1];
  if (key === undefined || other.role.kind !== "value" || other.role.key !== `${key}y`) return null;
  return [first, { key: `${key}y`, node: first.node }];
}

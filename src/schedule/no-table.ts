/** What to tell where no sheet has a table that is understood: what was looked for, and what came nearest. */
import { listed } from "../diagnostics/listed.js";
import type { Cell, Table } from "../readers/inputs.js";
import type { TableKind } from "./choose-table.js";
import type { KnownHeading } from "./sheet-words.js";
import { hasFigure, oneLine, rememberedKnown, unitNamed } from "./sheet-words.js";

/** Words for a finding, and the cell that it is about, where there is one. */
export interface NoTable {
  readonly message: string;
  readonly hint: string;
  readonly sheet: string;
  readonly cell: Cell | null;
}

/** Rows of a sheet, and cells of a row, that are looked at. */
const [MOST_ROWS, MOST_CELLS] = [200, 200];

interface BestRow {
  readonly sheet: string;
  readonly row: number;
  readonly cells: readonly Cell[];
  readonly known: readonly string[];
  readonly unknown: readonly string[];
}

/** Says why none of the sheets gives a table of the kind. */
export function explainNoTable(sheets: readonly Table[], known: KnownHeading, kind: TableKind): NoTable {
  const names = sheets.map(({ sheet }) => sheet).filter((name) => name !== "");
  const where = names.length === 0 ? "" : ` on ${names.length === 1 ? "the sheet" : "the sheets"} ${listed(names, 6)}`;
  const looked = `no table was found${where}; a table has a heading Mark and others beside or below it, ${kind.wanted}`;
  const best = bestRow(sheets, known);
  if (best === null)
    return {
      message: `${looked}; no text of any row is a known heading`,
      hint: HINT,
      sheet: names[0] ?? "",
      cell: null,
    };
  const others = best.unknown.length === 0 ? "" : `, not known ${listed(best.unknown, 6)}`;
  const message = `${looked}; nearest is row ${best.row}${best.sheet === "" ? "" : ` of ${best.sheet}`}: known ${listed(best.known, 6)}${others}`;
  return { message, hint: HINT, sheet: best.sheet, cell: best.cells[0] ?? null };
}

const HINT = "write Mark over the column of the marks, or name the sheet that is meant: sheet: NAME";

function bestRow(sheets: readonly Table[], known: KnownHeading): BestRow | null {
  const isKnown = rememberedKnown(known);
  let best: BestRow | null = null;
  for (const { rows, sheet } of sheets)
    for (const [index, row] of rows.slice(0, MOST_ROWS).entries()) {
      const texts = row
        .slice(0, MOST_CELLS)
        .filter(({ text }) => text !== "" && text.length <= 80 && unitNamed(text) === null);
      const cells = texts.filter(({ text }) => isKnown(oneLine(text), ""));
      if (cells.length <= (best?.known.length ?? 0)) continue;
      const unknown = texts.filter((cell) => !cells.includes(cell) && !hasFigure(cell.text));
      const words = (list: readonly Cell[]) => list.map(({ text }) => oneLine(text));
      best = { sheet, row: index + 1, cells, known: words(cells), unknown: words(unknown) };
    }
  return best;
}

/** A list as a table of a page. */
import { cellText, type ListTable } from "../lists/index.js";
import type { TableText } from "./table.js";

/** Its sums are bold rows under the others; its remarks stand below. Columns for machines alone are left off. */
export function listBlock(list: ListTable): TableText {
  const shown = list.columns.flatMap(({ isLeftOffPages }, i) => (isLeftOffPages ? [] : [i]));
  const kept = (cells: readonly string[]) => shown.map((i) => cells[i] ?? "");
  const widths = shown.reduce((sum, i) => sum + (list.columns[i]?.width ?? 0), 0);
  return {
    name: `list-${list.key}`,
    heading: list.title,
    columns: shown.flatMap((i) => {
      const column = list.columns[i];
      if (column === undefined) return [];
      const title = column.heading.toUpperCase();
      return [{ title, share: column.width / widths, align: column.isFigure ? ("end" as const) : ("start" as const) }];
    }),
    rows: [...list.rows, ...list.totals].map((row) => kept(row.map(cellText))),
    foot: list.remarks,
    under: [],
    strong: new Set(list.totals.map((_, i) => list.rows.length + i)),
  };
}

/** A list as tables of a page. */
import { cellText, type ListTable } from "../lists/index.js";
import type { TableText } from "./table.js";

/** One table a view: sums are bold rows under the others, remarks below the last. A column of words in which nothing stands is left out. */
export function listBlocks(list: ListTable): readonly TableText[] {
  return list.views.map((view, v) => {
    const columns = view.columns
      .map(([heading, short]) => ({ short, at: list.columns.findIndex((column) => column.heading === heading) }))
      .filter(({ at }, k) => k === 0 || !isEmptyColumn(list, at));
    const shown = columns.map(({ at }) => at);
    const pick = (row: ListTable["rows"][number]) => shown.map((i) => cellText(row[i] ?? null));
    const sums = list.totals
      .map((row) => [cellText(row[0] ?? null), ...pick(row).slice(1)])
      .filter((row) => row.filter((cell) => cell !== "").length > 1);
    return {
      name: `list-${list.key}-${v + 1}`,
      heading: view.title,
      columns: columns.map(({ short, at }) => {
        const { width = 1, isFigure } = list.columns[at] ?? {};
        return { title: short.toUpperCase(), share: width, align: isFigure ? ("end" as const) : ("start" as const) };
      }),
      rows: [...list.rows.map(pick), ...sums],
      foot: v === list.views.length - 1 ? list.remarks : [],
      under: [],
      strong: new Set(sums.map((_, i) => list.rows.length + i)),
    };
  });
}

function isEmptyColumn({ columns, rows }: ListTable, at: number): boolean {
  return rows.length > 0 && columns[at]?.isFigure !== true && rows.every((row) => cellText(row[at] ?? null) === "");
}

/** A list as tables of a page. */
import { cellText, type ListTable } from "../lists/index.js";
import type { TableText } from "./table.js";

/** One table a view: sums are bold rows under the others; remarks stand below the last. */
export function listBlocks(list: ListTable): readonly TableText[] {
  return list.views.map((view, v) => {
    const shown = view.columns.map(([heading]) => list.columns.findIndex((column) => column.heading === heading));
    const pick = (row: ListTable["rows"][number]) => shown.map((i) => cellText(row[i] ?? null));
    const sums = list.totals
      .map((row) => [cellText(row[0] ?? null), ...pick(row).slice(1)])
      .filter((row) => row.filter((cell) => cell !== "").length > 1);
    return {
      name: `list-${list.key}-${v + 1}`,
      heading: view.title,
      columns: view.columns.map(([, short], k) => {
        const { width = 1, isFigure } = list.columns[shown[k] ?? 0] ?? {};
        return { title: short.toUpperCase(), share: width, align: isFigure ? ("end" as const) : ("start" as const) };
      }),
      rows: [...list.rows.map(pick), ...sums],
      foot: v === list.views.length - 1 ? list.remarks : [],
      under: [],
      strong: new Set(sums.map((_, i) => list.rows.length + i)),
    };
  });
}

/** One value for each key of a row: cells that say the same are one, cells that differ are a fault that names both. */
import type { Finding } from "../diagnostics/finding.js";
import { errorAt } from "../readers/source.js";
import type { RowValues } from "./row-values.js";
import { isSameValue } from "./same-value.js";
import type { Taken } from "./sheet-cell.js";

/** Keys that several cells of a row may fill. */
const SEVERAL = new Set(["note", "mark"]);

/** The row with the first value of each key; what says the same again is not taken twice. */
export function withoutConflicts(row: RowValues): RowValues {
  const first = new Map<string, Taken>();
  const findings: Finding[] = [];
  const taken: Taken[] = [];
  const again: RowValues["notTaken"][number][] = [];
  for (const value of row.taken) {
    const known = SEVERAL.has(value.key) ? undefined : first.get(value.key);
    if (known === undefined) {
      first.set(value.key, value);
      taken.push(value);
    } else if (known.origin === "asked" || value.origin === "asked" || isSameValue(known.node, value.node)) {
      again.push({ from: value.from, origin: "left out", remark: `says the same as ${known.from.place.cell ?? ""}` });
    } else findings.push(conflict(value, known));
  }
  if (taken.length === row.taken.length) return row;
  return { ...row, taken, notTaken: [...row.notTaken, ...again], findings: [...row.findings, ...findings] };
}

function conflict({ from }: Taken, { from: first }: Taken): Finding {
  const where = `${first.column.name} (${first.place.cell ?? ""})`;
  const message =
    from.cell === first.cell
      ? `"${from.text}" gives two values for one thing; allowed is one`
      : `"${from.text}" is not what ${where} says for the same, "${first.text}"; allowed is one of them`;
  return errorAt(from.place, "values-differ", message);
}

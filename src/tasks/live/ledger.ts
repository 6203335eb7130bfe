/** The ledger of the whole job: rows of every base that is checked, and of the job itself. */
import type { CheckRow, CheckStatus } from "../../checks/model.js";
import { worstFirst } from "../../checks/run.js";
import { compareMarks } from "../../job/model/mark-order.js";
import { groupBy } from "../../units/group-by.js";
import type { Unit } from "../../units/index.js";
import { liveCheck } from "./live-check.js";
import type { LedgerAsk, LedgerOrder, LedgerRow, LedgerSlice } from "./model.js";
import { MOST_ROWS } from "./model.js";

/** Rows of one base, or of the job (`path` null). */
export interface RowsOf {
  readonly path: string | null;
  readonly mark: string;
  readonly rows: readonly CheckRow[];
}

/** Every row with whose it is, worst first; made once for each state of the job. */
export type WholeLedger = readonly (Omit<RowsOf, "rows"> & { readonly row: CheckRow })[];

/** Bases in the order of the job, then the job's own rows. */
export function wholeLedger(parts: readonly RowsOf[]): WholeLedger {
  const ownerOf = new Map<CheckRow, RowsOf>();
  for (const part of parts) for (const row of part.rows) ownerOf.set(row, part);
  return worstFirst([...ownerOf.keys()]).flatMap((row) => {
    const owner = ownerOf.get(row);
    return owner === undefined ? [] : [{ path: owner.path, mark: owner.mark, row }];
  });
}

/** What is asked for; bounded, whatever is asked. */
export function ledgerSlice(ledger: WholeLedger, ask: LedgerAsk, unit: Unit): Omit<LedgerSlice, "turn" | "isSettled"> {
  const counts: Record<CheckStatus, number> = { fail: 0, pass: 0, "not-checked": 0, "not-applicable": 0 };
  const meant = ledger.filter((each) => isMeant(each, ask));
  for (const { row } of meant) counts[row.status] += 1;
  const shown = ask.statuses.length === 0 ? meant : meant.filter(({ row }) => ask.statuses.includes(row.status));
  const from = Math.max(0, Math.floor(ask.from));
  const rows = inOrder(shown, ask.order ?? "worst").slice(
    from,
    from + Math.min(MOST_ROWS, Math.max(0, Math.floor(ask.count))),
  );
  return {
    counts,
    total: shown.length,
    rows: rows.map(({ path, mark, row }): LedgerRow => ({ path, mark, check: liveCheck(row, unit) })),
    rules: rulesOf(ledger),
  };
}

function isMeant(
  { path, mark, row }: WholeLedger[number],
  { rule, severity, mark: wanted, words }: LedgerAsk,
): boolean {
  if (severity !== undefined && severity !== null && row.severity !== severity) return false;
  if (rule !== null && row.rule !== rule) return false;
  if (wanted !== null && (wanted === "" ? path !== null : mark !== wanted)) return false;
  if (words === "") return true;
  return [mark, row.subject, row.rule, row.plainName, row.clause, row.note]
    .join("\n")
    .toLowerCase()
    .includes(words.toLowerCase());
}

/** The sorts are stable: under one mark or rule the worst stays first. Rows of the job come last. */
function inOrder(ledger: WholeLedger, order: LedgerOrder): WholeLedger {
  switch (order) {
    case "worst":
      return ledger;
    case "rule":
      return ledger.toSorted((a, b) => (a.row.rule < b.row.rule ? -1 : a.row.rule > b.row.rule ? 1 : 0));
    case "mark":
      return [...groupBy(ledger, ({ path }) => path ?? "").values()]
        .toSorted(
          ([a], [b]) =>
            Number(a?.path === null) - Number(b?.path === null) || compareMarks(a?.mark ?? "", b?.mark ?? ""),
        )
        .flat();
  }
}

function rulesOf(ledger: WholeLedger): LedgerSlice["rules"] {
  const names = new Map(ledger.map(({ row }) => [row.rule, row.plainName]));
  return [...names].map(([rule, plainName]) => ({ rule, plainName })).sort((a, b) => (a.rule < b.rule ? -1 : 1));
}

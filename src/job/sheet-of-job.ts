/** The sheet that a job names, with what it says beside it, read apart from the rest of the job. */
import type { Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import type { BesideTable, TableAnswers } from "../schedule/index.js";
import { NOTHING_BESIDE } from "../schedule/index.js";
import type { SourceDocument } from "./document.js";
import { besideTable, namedTable } from "./resolve/named-table.js";
import { parseForgiving } from "./schema/forgiving.js";
import { tableChoice } from "./schema/plan.js";

/** What a sheet is read with. */
export interface SheetOfJob {
  readonly answers: TableAnswers;
  readonly beside: BesideTable;
}

const NO_ANSWERS: TableAnswers = { columns: new Map(), notes: new Map(), cells: new Map() };

/** What a job says beside the sheet that it names with `schedule` or `readFrom`; nothing where there is no job. */
export function sheetOfJob(root: SourceNode | null): Outcome<SheetOfJob> {
  const key = findNode(root ?? undefined, "schedule") === undefined ? "readFrom" : "schedule";
  const named = findNode(root ?? undefined, key);
  if (root === null || named === undefined)
    return { ok: true, value: { answers: NO_ANSWERS, beside: NOTHING_BESIDE }, findings: [] };
  const part: SourceDocument = { root: named, path: key, nameOf: () => null };
  const { findings } = parseForgiving(tableChoice(), part, {});
  if (hasErrors(findings)) return { ok: false, findings };
  const { answers } = namedTable(named);
  const beside = besideTable({ root, path: "", nameOf: () => null }, key);
  return { ok: true, value: { answers, beside }, findings };
}

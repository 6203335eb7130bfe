/** The job as it was last right, with the ledgers of its bases. */
import type { CheckedBase } from "../../checks/checked.js";
import { checkBase } from "../../checks/checked.js";
import type { CheckRow } from "../../checks/model.js";
import { isShared } from "../../job/index.js";
import type { ShapedBase } from "../../template/index.js";
import type { OpenedJob } from "../opened-job.js";
import type { Standing } from "./base-line.js";
import { standingOf } from "./base-line.js";
import type { OpenText } from "./open-text.js";

/** Ledger of a base, as long as the base stays what it is. */
export interface Slot {
  /** Base and what its ledger hangs on; bases of shared templates have none, and are checked again. */
  readonly key: string | null;
  readonly shaped: ShapedBase;
  /** null: not checked yet. */
  ledger: { readonly standing: Standing; readonly rows: readonly CheckRow[] } | null;
}

/** The job as it was last right. */
export interface Right {
  readonly opened: OpenedJob;
  readonly slots: readonly Slot[];
}

/** A job that is at fault leaves the one that was last right. */
export function rightOf({ opened }: OpenText, before: Right | null): Right | null {
  if (opened === null) return before;
  const known = new Map(before?.slots.map((slot) => [slot.key, slot]));
  const around = aroundOf(opened);
  const slots = opened.bases.map((shaped): Slot => {
    const key = slotKey(shaped, around);
    const same = key === null ? undefined : known.get(key);
    return { key, shaped, ledger: same?.ledger ?? null };
  });
  return { opened, slots };
}

/** What of a job the ledgers of its bases hang on, beside the bases. */
function aroundOf({ job }: OpenedJob): string {
  const { bases: _bases, readAs: _readAs, plan: _plan, ...around } = job;
  return JSON.stringify(around);
}

/** Where a base stands in its file says nothing of it. */
function slotKey({ base }: ShapedBase, around: string): string | null {
  const { place: _place, ...said } = base;
  return isShared(base) ? null : `${JSON.stringify(said)}${around}`;
}

/** The base checked, and its ledger kept. */
export function checkSlot({ opened }: Right, slot: Slot): CheckedBase {
  const checked = checkBase(opened.job, slot.shaped);
  slot.ledger ??= { standing: standingOf(checked), rows: checked.rows };
  return checked;
}

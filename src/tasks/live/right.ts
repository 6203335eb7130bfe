/** The job with the ledgers of its bases. */
import { isAsking } from "../../checks/asking.js";
import type { CheckedBase } from "../../checks/checked.js";
import { checkBase } from "../../checks/checked.js";
import type { CheckRow } from "../../checks/model.js";
import type { Memory } from "../../job/index.js";
import { makePlan } from "../../plan/index.js";
import type { Plan } from "../../plan/model.js";
import type { ShapedBase } from "../../template/index.js";
import { baseKey } from "../base-key.js";
import type { LaidJob } from "../open.js";
import type { OpenedJob } from "../opened-job.js";
import type { Standing } from "./base-line.js";
import { standingOf } from "./base-line.js";

/** Ledger of a base, as long as the base stays what it is. */
export interface Ledger {
  readonly standing: Standing;
  readonly rows: readonly CheckRow[];
  /** Those that are put to the engineer of record. */
  readonly asking: readonly CheckRow[];
}

/** A base that has no fault. */
export interface Slot {
  /** Of its line. */
  readonly index: number;
  /** What its ledger hangs on. */
  readonly key: string;
  readonly shaped: ShapedBase;
  /** Without numbers of questions; null: not checked yet. */
  bare: Ledger | null;
  /** As it is shown, with numbers once the job has them. */
  ledger: Ledger | null;
  /** How the base of the same mark stood before: shown until it is checked. */
  readonly before: Standing | null;
}

/** A job whose bases can be shown. */
export interface Right {
  readonly opened: OpenedJob;
  readonly slots: readonly Slot[];
  /** By the index of its line. */
  readonly slotAt: ReadonlyMap<number, Slot>;
}

/** `before`: whose standings are shown of bases that are not checked yet. */
export function rightOf(opened: LaidJob, before: Right | null, memory: Memory): Right {
  const stood = new Map(
    before?.slots.map(({ shaped, ledger, before }) => [shaped.base.mark, ledger?.standing ?? before]),
  );
  const slots = opened.bases.map((shaped, order): Slot => {
    const key = ledgerKey(opened, shaped, memory);
    const bare = memory.known<Ledger>("ledger", key) ?? null;
    return {
      index: indexOf(shaped, order),
      key,
      shaped,
      bare,
      ledger: bare,
      before: stood.get(shaped.base.mark) ?? null,
    };
  });
  return { opened: withPlan(opened), slots, slotAt: new Map(slots.map((slot) => [slot.index, slot])) };
}

/** The layout is made when it is asked for. */
function withPlan({ job, bases }: LaidJob): OpenedJob {
  let made: { readonly plan: Plan | null } | null = null;
  return {
    ...{ job, bases },
    get plan() {
      made ??= { plan: makePlan(job, bases) };
      return made.plan;
    },
  };
}

/** The index of its line: that of its path in the job file, of a schedule its order. */
function indexOf({ base }: ShapedBase, order: number): number {
  const index = /^bases\[(\d+)\]$/.exec(base.place.path ?? "")?.[1];
  return index === undefined ? order : Number(index);
}

/** A template that serves several bases is held with the others. */
function ledgerKey({ job }: LaidJob, { base, shared }: ShapedBase, memory: Memory): string {
  const others =
    shared === undefined
      ? ""
      : memory.short(JSON.stringify([shared.held.map(({ marks, reasons }) => [[...marks], reasons]), shared.open]));
  return `${others} ${baseKey(job, base, memory)}`;
}

/** The base checked, and its ledger kept. */
export function checkSlot({ opened: { job } }: Right, slot: Slot, memory: Memory): CheckedBase {
  const checked = checkBase(job, slot.shaped);
  if (slot.bare === null) {
    const { rows, held, open } = checked;
    slot.bare = { rows, asking: rows.filter(isAsking), standing: standingOf(rows, held, open.length, job.unit) };
    slot.ledger = slot.bare;
    memory.keep("ledger", slot.key, slot.bare);
  }
  return checked;
}

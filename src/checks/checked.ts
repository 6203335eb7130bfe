/** Bases and jobs with their ledgers: what sheets, tables and cut files are written from. */
import { listed } from "../diagnostics/listed.js";
import { ProgramFault } from "../diagnostics/program-fault.js";
import type { Base, Job } from "../job/model/job.js";
import { isShared } from "../job/model/shared.js";
import type { Plan } from "../plan/model.js";
import type { OutlinedBase, PlacedRod } from "../rods/model.js";
import type { HoldingBases, ShapedBase, SharedTemplate, TemplatePiece } from "../template/index.js";
import { listPieces, makePlate, measurePlate, weighTemplate } from "../template/index.js";
import type { Plate, PlateMeasures } from "../template/model.js";
import type { Weight } from "../template/weigh.js";
import type { HeldLayout } from "./held.js";
import { heldReasons } from "./held.js";
import { runChecks, runJobChecks } from "./index.js";
import type { CheckRow } from "./model.js";
import { giveNumbers } from "./numbered.js";
import type { OpenQuestion } from "./release.js";
import { openQuestionsOf } from "./release.js";
import { isAsking, worstFirst } from "./run.js";

/** One base, checked. */
export interface CheckedBase {
  readonly job: Job;
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly plate: Plate;
  readonly measures: PlateMeasures;
  /** Worst first. */
  readonly rows: readonly CheckRow[];
  /** Why the base is held, one sentence each; empty when it is not. */
  readonly held: readonly string[];
  /** Open questions of every base that the template serves: it is not released; empty where none is. */
  readonly open: readonly OpenQuestion[];
  /** Of one template, put together where it is in segments; null without a density. */
  readonly weight: Weight | null;
  /** What is cut or drilled, in order: the template itself, or its parts, then what goes with it. */
  readonly pieces: readonly TemplatePiece[];
  /** Of a template that serves other bases too; null where it serves this base alone. */
  readonly shared: SharedTemplate | null;
}

/** The whole job, when all its bases are checked. Plates are not kept: they are large. */
export interface CheckedJob {
  readonly job: Job;
  /** null: the job has no grid. */
  readonly plan: Plan | null;
  /** What of the layout is not to be set out by, and why. */
  readonly layoutHeld: HeldLayout;
  /** Open questions about the layout: plan and setting-out files are not released; empty where none is. */
  readonly layoutOpen: readonly OpenQuestion[];
  /** Rows of the job itself, not of its bases; worst first. */
  readonly rows: readonly CheckRow[];
  /** Marks of the held bases, and why, one sentence each. */
  readonly held: ReadonlyMap<string, readonly string[]>;
}

/**
 * Makes the plate of a base and runs its rules. The base has no fault left: one that comes up here is the program's. A template
 * of several bases is held for all where one of them is held.
 */
export function checkBase(job: Job, shaped: ShapedBase): CheckedBase {
  const ahead = checkedAhead.get(shaped);
  checkedAhead.delete(shaped);
  return ahead?.job === job ? ahead : checkOnce(job, shaped);
}

/** The same for who only looks whether there will be a fault: the next `checkBase` of the base is given what is known by then. */
export function checkAhead(job: Job, shaped: ShapedBase): CheckedBase {
  const checked = checkOnce(job, shaped);
  checkedAhead.set(shaped, checked);
  return checked;
}

/** Each is given away once, so that plates are not kept. */
const checkedAhead = new WeakMap<ShapedBase, CheckedBase>();

function checkOnce(job: Job, shaped: ShapedBase): CheckedBase {
  const own = checkAlone(job, shaped);
  const { base, shared } = shaped;
  if (!isShared(base)) return own;
  if (shared === undefined)
    throw new ProgramFault(`base ${base.mark}: nothing is known of the others that its template serves`);
  const others = shared.held.filter(({ marks }) => !marks.has(base.mark));
  const reasons = others.map((each) => `template ${base.template.mark} also serves ${holdWords(each)}`);
  const open = [...own.open, ...shared.open.filter(({ mark }) => mark !== base.mark)];
  return { ...own, held: [...own.held, ...reasons], open, shared };
}

const MOST_MARKS = 8;

function holdWords({ marks, reasons }: HoldingBases): string {
  return `${listed([...marks], MOST_MARKS)}, which ${marks.size === 1 ? "is" : "are"} held: ${reasons.join("; ")}`;
}

/** The same without a look at other bases that its template serves: nothing may be cut by what it says. */
export function checkAlone(job: Job, shaped: ShapedBase): CheckedBase {
  const { base, rods } = shaped;
  const plate = plateOf(job, shaped);
  const rows = giveNumbers(worstFirst(runChecks({ job, base, rods, plate })), job, base.mark);
  const measures = measurePlate(plate);
  const pieces = listPieces(job, plate);
  const weight = weighTemplate(pieces, plate);
  const [held, open] = [heldReasons(rows, job.unit), openQuestionsOf(base.mark, rows)];
  return { job, base, rods, plate, measures, rows, held, open, weight, pieces, shared: null };
}

/** Rows of a base that are put to the engineer of record, worst first, without numbers of this job: what numbers are given by. */
export function askingRows(job: Job, shaped: ShapedBase): readonly CheckRow[] {
  const { base, rods } = shaped;
  return worstFirst(runChecks({ job, base, rods, plate: plateOf(job, shaped) }).filter(isAsking));
}

function plateOf(job: Job, { base, rods, shape }: ShapedBase): Plate {
  const made = makePlate(job, base, rods, shape);
  if (!made.ok) throw new ProgramFault(`base ${base.mark}: a fault that was not found when the job was opened`);
  return made.value;
}

/** The rows of the whole job, worst first. */
export function checkWholeJob(job: Job, plan: Plan | null, bases: readonly OutlinedBase[]): readonly CheckRow[] {
  return giveNumbers(worstFirst(runJobChecks({ job, plan, bases })), job, null);
}

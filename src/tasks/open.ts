/** Opening a job: what every task begins with. The job file is read once, and every fault is told at once. */
import { ruleSeverities } from "../checks/index.js";
import type { Finding, Outcome, Place } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { Base, Job, JobOptions, Memory, Vocabulary } from "../job/index.js";
import { movedFindings, readJobParts } from "../job/index.js";
import { isDay } from "../leaves/leaves.js";
import { countRods } from "../patterns/index.js";
import { makePlan } from "../plan/index.js";
import type { Inputs } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { placeRods } from "../rods/index.js";
import type { ShapedBase } from "../template/index.js";
import { makePlateShape } from "../template/index.js";
import { baseKey } from "./base-key.js";
import { numberQuestions } from "./number-questions.js";
import type { OpenedJob } from "./opened-job.js";
import { pieceMarkFaults } from "./piece-marks.js";
import { shareTemplates } from "./share-templates.js";
import { placeOfSheetKey, sheetRoomFaults } from "./sheet-room.js";
import { unwrittenLetters } from "./unwritten-letters.js";

/** What jobs may cite: the rules. */
export const vocabulary: Vocabulary = { rules: ruleSeverities };

/** What a job that names no date takes for its own. */
export interface OpenOptions {
  /** ISO date, `2026-11-24`. */
  readonly date: string;
}

/**
 * Reads a job and goes through every base once, so that every fault is told before anything is made. Throws RangeError on a
 * date that is none: the caller's mistake, not the user's.
 */
export function openJob(inputs: Inputs, { date }: OpenOptions): Outcome<OpenedJob> {
  const { findings, whole } = openParts(inputs, { date });
  if (whole === null) return { ok: false, findings };
  const opened = { ...whole, plan: makePlan(whole.job, whole.bases) };
  if (opened.job.sheet === null) return { ok: true, value: opened, findings };
  // numbers stand on sheets, and take room
  const value = numberQuestions(opened);
  const small = sheetRoomFaults(value, placeOfSheetKey(inputs));
  return small.length === 0 ? { ok: true, value, findings } : { ok: false, findings: [...findings, ...small] };
}

/** A job and its bases, before its layout is made. */
export type LaidJob = Pick<OpenedJob, "job" | "bases">;

/** A job as it is opened, with what is sound of it where it has faults. */
export interface OpenedParts {
  readonly findings: readonly Finding[];
  /** null: something is at fault. */
  readonly whole: LaidJob | null;
  /** The bases that have no fault, in a job without a plan; null where head, shop or marks are at fault. Else the whole. */
  readonly sound: LaidJob | null;
  /** The bases as written, with what defaults and kinds give them. */
  readonly roots: readonly SourceNode[];
}

/** Opens a job up to its layout and the room on its sheets; `memory`: of a job that is edited. */
export function openParts(inputs: Inputs, { date, memory }: OpenOptions & Pick<JobOptions, "memory">): OpenedParts {
  if (!isDay(date)) throw new RangeError(`${JSON.stringify(date)} is no date; allowed is an ISO date as 2026-11-24`);
  const { job, sound, findings, roots } = readJobParts(inputs, { date, vocabulary, ...(memory && { memory }) });
  if (job === null) {
    if (sound === null) return { findings, roots, whole: null, sound: null };
    const laid = layOut(sound, [], { memory, isWhole: false });
    return { findings: [...findings, ...laid.findings], roots, whole: null, sound: laid };
  }
  const many = tooManyPlaced(job, inputs.job);
  if (many !== null) return { findings: [...findings, many], roots, whole: null, sound: null };
  const laid = layOut(job, [...findings, ...unwrittenLetters(job, inputs.job)], { memory, isWhole: true });
  if (!hasErrors(laid.findings)) return { findings: laid.findings, roots, whole: laid, sound: laid };
  return { findings: laid.findings, roots, whole: null, sound: { ...laid, job: { ...laid.job, plan: null } } };
}

/** Most rods of a layout: each is a point to set out, and is held against those of its neighbours. */
const MOST_PLACED_RODS = 50_000;

function tooManyPlaced({ plan, bases }: Job, file: string): Finding | null {
  const counts = bases.flatMap(({ groups, quantity }) => groups.map(({ pattern }) => quantity * countRods(pattern)));
  const rods = counts.reduce((sum, count) => sum + count, 0);
  if (plan === null || rods <= MOST_PLACED_RODS) return null;
  const message = `the layout has ${rods} rods to set out; at most ${MOST_PLACED_RODS} are: make a job of each part of it`;
  return { code: "too-many-rods", severity: "error", at: { file, line: 1, column: 1 }, message };
}

interface LayOptions {
  readonly memory: Memory | undefined;
  readonly isWhole: boolean;
}

function layOut(job: Job, told: readonly Finding[], { memory, isWhole: isComplete }: LayOptions) {
  const findings: Finding[] = [...told];
  const bases: ShapedBase[] = [];
  for (const base of job.bases) {
    const shaped = memory === undefined ? shapeBase(job, base) : knownShape(job, base, memory);
    for (const finding of shaped.findings) findings.push(finding);
    if (shaped.value !== null) bases.push(shaped.value);
  }
  const isWhole = isComplete && !hasErrors(findings);
  const shared = shareTemplates(job, bases, { isWhole, memory });
  const ofPieces = pieceMarkFaults(shared.value.bases);
  for (const finding of [...shared.findings, ...ofPieces]) findings.push(finding);
  return { ...shared.value, findings };
}

function shapeBase(job: Job, base: Base): Shaped {
  const rods = placeRods(base);
  if (!rods.ok) return { value: null, findings: rods.findings };
  const shape = makePlateShape(job, base, rods.value);
  const findings = [...rods.findings, ...shape.findings];
  if (!shape.ok) return { value: null, findings };
  return { value: { base, rods: rods.value, outline: shape.value.outline.contour, shape: shape.value }, findings };
}

interface Shaped {
  readonly value: ShapedBase | null;
  readonly findings: readonly Finding[];
}

/** As it was made for the same base, wherever that stood. */
function knownShape(job: Job, base: Base, memory: Memory): Shaped {
  const key = baseKey(job, base, memory);
  const known = memory.known<Shaped & { readonly at: Place }>("shape", key);
  const moved = known === undefined ? null : movedFindings(known.findings, placed(known.at), placed(base.place));
  if (known === undefined || moved === null) {
    const made = shapeBase(job, base);
    memory.keep("shape", key, { ...made, at: base.place });
    return made;
  }
  if (known.value === null || known.value.base === base) return { value: known.value, findings: moved };
  return { value: { ...known.value, base }, findings: moved };
}

function placed({ path = "", line = 0 }: Place) {
  return { path, line };
}

/** Opening a job: what every task begins with. The job file is read once, and every fault is told at once. */
import { ruleSeverities } from "../checks/index.js";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { Job, Vocabulary } from "../job/index.js";
import { readJob } from "../job/index.js";
import { isDay } from "../leaves/leaves.js";
import { countRods } from "../patterns/index.js";
import { makePlan } from "../plan/index.js";
import type { Inputs } from "../readers/inputs.js";
import { placeRods } from "../rods/index.js";
import type { ShapedBase } from "../template/index.js";
import { makePlateShape } from "../template/index.js";
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
  if (!isDay(date)) throw new RangeError(`${JSON.stringify(date)} is no date; allowed is an ISO date as 2026-11-24`);
  const read = readJob(inputs, { date, vocabulary });
  if (!read.ok) return read;
  const many = tooManyPlaced(read.value, inputs.job);
  if (many !== null) return { ok: false, findings: [...read.findings, many] };
  const opened = layOut(read.value, [...read.findings, ...unwrittenLetters(read.value, inputs.job)]);
  if (!opened.ok) return opened;
  if (opened.value.job.sheet === null) return opened;
  // numbers stand on sheets, and take room
  const value = numberQuestions(opened.value);
  const small = sheetRoomFaults(value, placeOfSheetKey(inputs));
  return small.length === 0 ? { ...opened, value } : { ok: false, findings: [...opened.findings, ...small] };
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

function layOut(job: Job, told: readonly Finding[]): Outcome<OpenedJob> {
  const findings: Finding[] = [...told];
  const bases: ShapedBase[] = [];
  for (const base of job.bases) {
    const rods = placeRods(base);
    for (const finding of rods.findings) findings.push(finding);
    if (!rods.ok) continue;
    const shape = makePlateShape(job, base, rods.value);
    for (const finding of shape.findings) findings.push(finding);
    if (!shape.ok) continue;
    bases.push({ base, rods: rods.value, outline: shape.value.outline.contour, shape: shape.value });
  }
  const isWhole = !hasErrors(findings);
  const shared = shareTemplates(job, bases, { isWhole });
  for (const finding of [...shared.findings, ...pieceMarkFaults(shared.value.bases)]) findings.push(finding);
  if (hasErrors(findings)) return { ok: false, findings };
  const { value } = shared;
  return { ok: true, value: { ...value, plan: makePlan(value.job, value.bases) }, findings };
}

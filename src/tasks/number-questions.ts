/** Numbers of a job's questions, given before anything is drawn: a package made again of the same job has the same bytes. */
import { askingRows, checkWholeJob } from "../checks/checked.js";
import type { CheckRow } from "../checks/index.js";
import { giveNumbers } from "../checks/numbered.js";
import type { OpenQuestion } from "../checks/release.js";
import { openQuestionsOf } from "../checks/release.js";
import type { Job } from "../job/index.js";
import { startQuestions } from "../summary/questions.js";
import type { ShapedBase, SharedTemplate } from "../template/index.js";
import type { OpenedJob } from "./opened-job.js";

/** An opened job, with what its whole layout was found to be. */
export interface LaidOutJob extends OpenedJob {
  /** Rows of the whole job, worst first. */
  readonly layout: readonly CheckRow[];
}

/** The same without numbers, where nobody sees them: the rules run once. */
export function checkLayout(opened: OpenedJob): LaidOutJob {
  return { ...opened, layout: checkWholeJob(opened.job, opened.plan, opened.bases) };
}

/** Rows of a base that are put to the engineer of record, worst first, without numbers. */
type AskingRows = typeof askingRows;

/**
 * Runs the rules of every base once ahead for what they ask. Kept of a base are the numbers of its questions, and
 * of one whose template serves others too its failing rows meanwhile. A job that has its numbers keeps them.
 */
export function numberQuestions(opened: OpenedJob, rowsOf: AskingRows = askingRows): LaidOutJob {
  const { job, bases } = opened;
  const { layout } = checkLayout(opened);
  if (job.numbers !== null) return { ...opened, layout };
  const asked = startQuestions(job);
  const shared = new Map<string, readonly CheckRow[]>();
  for (const shaped of bases) {
    const { base } = shaped;
    const rows = rowsOf(job, shaped);
    asked.addBase({ base, rows });
    if (shaped.shared !== undefined && rows.length > 0) shared.set(base.mark, rows);
  }
  asked.addLayout(layout);
  const numbered: Job = { ...job, numbers: asked.numbers() };
  const open = new Map(
    [...shared].map(([mark, rows]) => [mark, openQuestionsOf(mark, giveNumbers(rows, numbered, mark))]),
  );
  const renewed = renewOpen(bases, open);
  return { ...opened, job: numbered, bases: renewed, layout: giveNumbers(layout, numbered, null) };
}

/** All bases of one template go on with one object. */
function renewOpen(
  bases: readonly ShapedBase[],
  open: ReadonlyMap<string, readonly OpenQuestion[]>,
): readonly ShapedBase[] {
  const known = new Map<SharedTemplate, SharedTemplate>();
  return bases.map((shaped) => {
    const { shared } = shaped;
    if (shared === undefined || shared.open.length === 0) return shaped;
    const renewed = known.get(shared) ?? { ...shared, open: numberedOpen(shared, open) };
    known.set(shared, renewed);
    return { ...shaped, shared: renewed };
  });
}

function numberedOpen(
  { open }: SharedTemplate,
  numbered: ReadonlyMap<string, readonly OpenQuestion[]>,
): readonly OpenQuestion[] {
  return [...new Set(open.map(({ mark }) => mark))].flatMap((mark) => numbered.get(mark) ?? []);
}

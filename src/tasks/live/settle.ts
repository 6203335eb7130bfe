/** What is known of a job once every base is checked: numbers of its questions, rows of the layout, the room on its sheets. */
import { heldLayout } from "../../checks/held.js";
import { giveNumbers } from "../../checks/numbered.js";
import { openQuestionsOf } from "../../checks/release.js";
import type { Finding } from "../../diagnostics/finding.js";
import type { Question } from "../../summary/questions.js";
import { startQuestions } from "../../summary/questions.js";
import type { ShapedBase } from "../../template/index.js";
import type { LaidOutJob } from "../number-questions.js";
import { numberQuestions } from "../number-questions.js";
import { standingOf } from "./base-line.js";
import { liveCheck } from "./live-check.js";
import type { LiveJob, LiveQuestion } from "./model.js";
import type { Ledger, Right, Slot } from "./right.js";

/** A job that is settled. */
export interface Settled {
  /** null where the job never was right. */
  readonly laid: LaidOutJob | null;
  readonly said: Pick<LiveJob, "checks" | "layoutHeld" | "questions" | "hasPlan">;
  /** That its size of sheets has no room; told once all is drawn. */
  readonly findings: readonly Finding[];
}

/** Of a job that never was right. */
export const UNSETTLED: Settled = {
  laid: null,
  said: { checks: [], layoutHeld: [], questions: [], hasPlan: false },
  findings: [],
};

/** Every base of the job is checked; their ledgers are given the numbers of the job. */
export function settle({ opened, slots }: Right): Settled {
  const rowsOf = new Map(slots.map(({ shaped, bare }) => [shaped, bare?.asking ?? []]));
  const laid = numberQuestions(opened, (_job, shaped) => rowsOf.get(shaped) ?? []);
  const { job, bases, layout } = laid;
  for (const [order, slot] of slots.entries()) slot.ledger = numberedLedger(slot, bases[order] ?? slot.shaped, laid);
  const questions = startQuestions(job);
  for (const { shaped, ledger } of slots) questions.addBase({ base: shaped.base, rows: ledger?.asking ?? [] });
  questions.addLayout(layout);
  return {
    laid,
    said: {
      checks: layout.map((row) => liveCheck(row, job.unit)),
      layoutHeld: heldLayout(layout, job.unit).reasons,
      questions: questions.list().map(asked),
      hasPlan: laid.plan !== null,
    },
    findings: [],
  };
}

/** The same object while its numbers and what was said by them are those of before: the line of its base is not sent again. */
function numberedLedger({ bare }: Slot, { base, shared }: ShapedBase, { job }: LaidOutJob): Ledger | null {
  if (bare === null || (shared === undefined && bare.asking.length === 0)) return bare;
  const asking = giveNumbers(bare.asking, job, base.mark);
  const others = shared?.open.filter(({ mark }) => mark !== base.mark) ?? [];
  const open = openQuestionsOf(base.mark, asking).length + others.length;
  const said = JSON.stringify([open, asking.map(({ question, answer }) => [question, answer])]);
  const before = lastNumbered.get(bare);
  if (before?.said === said) return before.ledger;
  const standing = standingOf(bare.rows, bare.standing.held, open, job.unit);
  const ledger = { rows: giveNumbers(bare.rows, job, base.mark), asking, standing };
  lastNumbered.set(bare, { said, ledger });
  return ledger;
}

const lastNumbered = new WeakMap<Ledger, { readonly said: string; readonly ledger: Ledger }>();

function asked({ number, places, text, status, check }: Question): LiveQuestion {
  return { number, text, status, check, rule: check.rule, marks: places.map(({ mark }) => mark) };
}

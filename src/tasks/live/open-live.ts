/**
 * A job that is edited: its text, and everything that a page shows of it. After an edit inside one base, that base alone is
 * read and checked again; rows of the job and questions follow when there is time. Any other edit opens the job anew, and
 * bases that came out as before keep their ledgers.
 */
import type { CheckedBase } from "../../checks/checked.js";
import { checkWholeJob } from "../../checks/checked.js";
import { heldLayout } from "../../checks/held.js";
import type { CheckRow } from "../../checks/model.js";
import type { Job } from "../../job/index.js";
import type { Inputs } from "../../readers/inputs.js";
import { contentOf } from "../../readers/inputs.js";
import { decodeText } from "../../readers/text.js";
import type { KeyEdit, Splice } from "../../readers/yaml-edit.js";
import { spliceBetween, spliced, spliceOf } from "../../readers/yaml-edit.js";
import type { Question, Questions } from "../../summary/questions.js";
import { startQuestions } from "../../summary/questions.js";
import { summarizeJob } from "../../summary/summarize.js";
import { answerEdits } from "./answering.js";
import { textsUnderKeys, unchecked } from "./base-line.js";
import type { RowsOf } from "./ledger.js";
import { ledgerSlice, wholeLedger } from "./ledger.js";
import { liveCheck } from "./live-check.js";
import { liveDigest } from "./live-digest.js";
import { addParts, liveQuestions } from "./live-questions.js";
import type {
  AnswerDraft,
  AnsweredResult,
  LedgerAsk,
  LedgerSlice,
  LiveBase,
  LiveBaseView,
  LiveDigest,
  LiveHead,
  LiveJob,
  LiveQuestion,
  LiveQuestions,
  LiveResult,
  Watch,
} from "./model.js";
import { editBase } from "./one-base.js";
import { type OpenText, openText } from "./open-text.js";
import type { LivePlan, LivePoints, Room, Zoom } from "./plan-model.js";
import { livePlan, livePoints } from "./plan-view.js";
import { checkSlot, type Right, rightOf } from "./right.js";
import { takeBases } from "./take-bases.js";
import { viewOfBase } from "./view.js";

/** A job in memory. */
export interface Live {
  readonly text: () => string;
  /** Changes keys; an edit whose place the text does not have changes nothing. */
  edit(edits: readonly KeyEdit[], watch: Watch): LiveResult;
  /** Changes the text itself: an edit taken back, or one of another tab. */
  splice(splices: readonly Splice[], watch: Watch): LiveResult;
  /** Another base, or the same in another room. */
  look(watch: Watch): LiveBaseView | null;
  /** The base as it was last right, checked; null where it is at fault. */
  checked(path: string): CheckedBase | null;
  state(): LiveJob;
  /** Every scalar as written under keys of the first level, by key path. */
  written(keys: readonly string[]): Readonly<Record<string, string>>;
  /** The layout drawn in a room; null where no job was ever right. */
  plan(room: Room, zoom: Zoom): LivePlan | null;
  points(): LivePoints | null;
  /** Takes the bases of the schedule that the job names into the job file. */
  takeBases(watch: Watch): LiveResult;
  /** Rows of every base that is checked, and of the job itself. */
  ledger(ask: LedgerAsk): LedgerSlice;
  digest(): LiveDigest | null;
  questions(): LiveQuestions | null;
  /** Writes answers into the job file, as one edit. */
  answer(drafts: readonly AnswerDraft[], watch: Watch): AnsweredResult;
  /** Checks one base that waits, or settles the rows of the job; false where nothing is left to do. */
  work(): boolean;
}

/** Opens a job to be edited. Files beside the job are handed in as for `openJob`; `date` as there. */
export function openLive(inputs: Inputs, options: { readonly date: string }): Live {
  let turn = 0;
  let text = openText({ inputs, text: textOf(inputs), date: options.date }, null);
  let right = rightOf(text, null);
  let settled = settle(right);
  let whole: Settled | null = null;

  const change = (splices: readonly Splice[], watch: Watch): LiveResult => {
    turn += 1;
    for (const splice of splices) {
      const one = right === null ? null : editBase(text, right, splice);
      if (one === null) {
        text = openText({ inputs, text: spliced(text.text, splice), date: options.date }, text);
        right = rightOf(text, right);
      } else {
        text = one.text;
        right = one.right;
      }
    }
    whole = null;
    const view = look(watch);
    return { refused: [], splices, job: state(), view };
  };
  const checked = (path: string): CheckedBase | null => {
    const index = text.lines.findIndex((line) => line.path === path);
    const slot = right?.slots[index];
    return right === null || slot === undefined || text.faulty.has(index) ? null : checkSlot(right, slot);
  };
  const look = ({ base: path, room }: Watch): LiveBaseView | null => {
    const base = path === null ? null : checked(path);
    const said = text.lines.find((line) => line.path === path);
    return path === null || base === null || said === undefined ? null : viewOfBase(path, base, room, said);
  };
  const state = (): LiveJob => {
    const from = whole ?? settled;
    const bases = text.lines.map((line, index) => lineOf(line, index, text, right));
    const { findings, unit } = text;
    return {
      turn,
      findings,
      unit,
      bases,
      head: headOf(right),
      said: text.said,
      basesIn: text.basesIn,
      files: filesOf(text),
      ...from.said,
      isSettled: whole !== null,
    };
  };
  return {
    text: () => text.text,
    edit: (edits, watch) => {
      const splices: Splice[] = [];
      let now = text.text;
      for (const edit of edits) {
        const splice = spliceOf(now, edit);
        if (splice === null || splice.was === splice.now) continue;
        now = spliced(now, splice);
        splices.push(splice);
      }
      return change(splices, watch);
    },
    splice: change,
    takeBases: (watch) => {
      const taken = takeBases(text);
      return taken.ok ? change([taken.splice], watch) : { ...change([], watch), refused: taken.why };
    },
    look,
    checked,
    state,
    written: (keys) => textsUnderKeys(text.root, keys),
    plan: (room, zoom) => livePlan(text, right, (whole ?? settled).rows, room, zoom),
    points: () => livePoints(right, (whole ?? settled).rows),
    ledger: (ask) => {
      const isSettled = whole !== null;
      const of = wholeLedger(partsOf(text, right, (whole ?? settled).rows));
      return { turn, isSettled, ...ledgerSlice(of, ask, text.unit) };
    },
    digest: () => {
      const parts = partsOf(text, right, (whole ?? settled).rows);
      return right && { turn, isSettled: whole !== null, ...liveDigest(right, parts) };
    },
    questions: () => {
      if (right === null) return null;
      const { job } = right.opened;
      const parts = partsOf(text, right, (whole ?? settled).rows);
      const root = text.opened === null ? null : text.root;
      return { turn, isSettled: whole !== null, ...liveQuestions(job, parts, gathered(job, parts), root) };
    },
    answer: (drafts, watch) => {
      const parts = partsOf(text, right, (whole ?? settled).rows);
      const questions = right === null ? [] : gathered(right.opened.job, parts).list();
      const { edits, left, faults } = answerEdits(drafts, questions, right?.opened.job ?? { register: null });
      const now = edits.reduce((each, edit) => {
        const splice = spliceOf(each, edit);
        return splice === null ? each : spliced(each, splice);
      }, text.text);
      const splices = now === text.text ? [] : [spliceBetween(text.text, now)];
      return { ...change(splices, watch), refused: left, faults };
    },
    work: () => {
      const waiting = right?.slots.find(({ ledger }) => ledger === null);
      if (right !== null && waiting !== undefined) checkSlot(right, waiting);
      else if (whole === null) {
        settled = settle(right);
        whole = settled;
      } else return false;
      return true;
    },
  };
}

function textOf({ job, files }: Inputs): string {
  const content = contentOf(files.get(job)) ?? "";
  const decoded = decodeText(content, job, "allowed is YAML");
  return decoded.ok ? decoded.text : "";
}

function filesOf({ requests, inputs: { files } }: OpenText): LiveJob["files"] {
  const own = requests.filter(({ relativeTo }) => relativeTo === "job");
  return own.map(({ name, key, kind }) => ({ name, kind, isThere: files.has(name) || files.has(key ?? name) }));
}

function lineOf(line: OpenText["lines"][number], index: number, text: OpenText, right: Right | null): LiveBase {
  if (text.faulty.has(index)) return { ...line, ...unchecked("faulty") };
  const slot = right?.slots[index];
  return { ...line, ...(slot?.ledger?.standing ?? unchecked("waiting")) };
}

function headOf(right: Right | null): LiveHead | null {
  if (right === null) return null;
  const { number, title, revision, status, date, owner, drawnBy, unit, shop } = right.opened.job;
  const { editions } = summarizeJob(right.opened.job);
  return { number, title, revision, status, date, owner, drawnBy, unit, editions, shop: shop.name };
}

function partsOf(text: OpenText, right: Right | null, rows: readonly CheckRow[]): readonly RowsOf[] {
  const slots = right?.slots ?? [];
  const bases = slots.flatMap(({ shaped, ledger }, index): RowsOf[] => {
    const path = text.lines[index]?.path;
    return ledger === null || path === undefined ? [] : [{ path, mark: shaped.base.mark, rows: ledger.rows }];
  });
  return [...bases, { path: null, mark: "", rows }];
}

function gathered(job: Job, parts: readonly RowsOf[]): Questions {
  const questions = startQuestions(job);
  addParts(questions, job, parts);
  return questions;
}

interface Settled {
  readonly rows: readonly CheckRow[];
  readonly said: Pick<LiveJob, "checks" | "layoutHeld" | "questions" | "hasPlan">;
}

/** Rows of the job and questions of every base whose ledger is there. */
function settle(right: Right | null): Settled {
  if (right === null) return { rows: [], said: { checks: [], layoutHeld: [], questions: [], hasPlan: false } };
  const { job, bases, plan } = right.opened;
  const questions = startQuestions(job);
  for (const { shaped, ledger } of right.slots)
    if (ledger !== null) questions.addBase({ base: shaped.base, rows: ledger.rows });
  const rows = checkWholeJob(job, plan, bases);
  questions.addLayout(rows);
  return {
    rows,
    said: {
      checks: rows.map((row) => liveCheck(row, job.unit)),
      layoutHeld: heldLayout(rows, job.unit).reasons,
      questions: questions.list().map(asked),
      hasPlan: plan !== null,
    },
  };
}

function asked({ number, places, text, status, check }: Question): LiveQuestion {
  return { number, text, status, check, rule: check.rule, marks: places.map(({ mark }) => mark) };
}

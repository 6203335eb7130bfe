/**
 * A job that is edited: its text, and everything that a page shows of it. After each edit the whole way from the text is gone
 * again, but what was read, laid out or checked before is known (`Memory`): a base that came out as before costs next to
 * nothing. The base that is watched is checked at once; the others, numbers of questions and rows of the layout follow when
 * there is time. Of a job with faults the bases without one go on; what is of the job as a whole stays as it was last right.
 */
import type { CheckedBase } from "../../checks/checked.js";
import { checkBase } from "../../checks/checked.js";
import { joinPath } from "../../job/document.js";
import type { Job } from "../../job/index.js";
import type { Inputs } from "../../readers/inputs.js";
import { contentOf } from "../../readers/inputs.js";
import type { KeyEdit, Splice } from "../../readers/yaml-edit.js";
import { spliceBetween, spliced, spliceOf } from "../../readers/yaml-edit.js";
import { findPieces } from "../../readers/yaml-pieces.js";
import type { Questions } from "../../summary/questions.js";
import { startQuestions } from "../../summary/questions.js";
import { summarizeJob } from "../../summary/summarize.js";
import { answerEdits } from "./answering.js";
import type { Standing, WrittenLine } from "./base-line.js";
import { textsUnderKeys, unchecked } from "./base-line.js";
import type { RowsOf, WholeLedger } from "./ledger.js";
import { ledgerSlice, wholeLedger } from "./ledger.js";
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
  LiveQuestions,
  LiveResult,
  Watch,
} from "./model.js";
import type { OpenText } from "./open-text.js";
import { startTextOpener } from "./open-text.js";
import type { LivePlan, LivePoints, Room, Zoom } from "./plan-model.js";
import { livePlan, livePoints } from "./plan-view.js";
import type { Right, Slot } from "./right.js";
import { checkSlot, rightOf } from "./right.js";
import type { Settled } from "./settle.js";
import { settle, UNSETTLED } from "./settle.js";
import { sheetFaults } from "./sheet-faults.js";
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
  /** The base as it stands, checked; null where it is at fault. */
  checked(path: string): CheckedBase | null;
  state(): LiveJob;
  /** Every scalar as written under keys of the first level, by key path. */
  written(keys: readonly string[]): Readonly<Record<string, string>>;
  /** The layout drawn in a room, as it was last right; null where no job was ever right. */
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
  /** Checks one base that waits, settles the rows of the job, or draws a sheet whose size is named; false where nothing is left to do. */
  work(): boolean;
}

/** Opens a job to be edited. Files beside the job are handed in as for `openJob`; `date` as there. */
export function openLive(inputs: Inputs, options: { readonly date: string }): Live {
  return new LiveText(inputs, options);
}

/** Where the job stands between two asks. */
class LiveText implements Live {
  private turn = 0;
  private readonly opener;
  private now: OpenText;
  private right: Right | null;
  /** As it was when the job had no fault. */
  private wholeRight: Right | null = null;
  /** As it was last settled while it was right. */
  private settled: Settled = UNSETTLED;
  private isSettled = false;
  /** Its questions have their numbers, and its layout is judged. */
  private isNumbered = false;
  private sheets: ReturnType<typeof sheetFaults> | null = null;
  private head: LiveHead | null = null;
  private ledgerOfAll: WholeLedger | null = null;

  constructor(inputs: Inputs, options: { readonly date: string }) {
    this.opener = startTextOpener(inputs, options);
    this.now = this.opener.open(textOf(inputs));
    this.right = this.rightNow(null);
  }

  text(): string {
    return this.now.text;
  }

  edit(edits: readonly KeyEdit[], watch: Watch): LiveResult {
    const { splices, refused } = madeBy(edits, this.now);
    if (refused.length > 0) return { ...this.change([], watch), refused: refused.slice(0, 1).map(noPlaceWords) };
    return this.change(splices, watch);
  }

  splice(splices: readonly Splice[], watch: Watch): LiveResult {
    return this.change(splices, watch);
  }

  takeBases(watch: Watch): LiveResult {
    const taken = takeBases(this.now);
    return taken.ok ? this.change([taken.splice], watch) : { ...this.change([], watch), refused: taken.why };
  }

  answer(drafts: readonly AnswerDraft[], watch: Watch): AnsweredResult {
    const job = this.settled.laid?.job ?? null;
    const questions = job === null ? [] : gathered(job, this.parts()).list();
    const { edits, left, faults } = answerEdits(drafts, questions, job ?? { register: null });
    const { text } = this.now;
    const made = madeBy(edits, this.now);
    const splices = made.splices.length === 0 ? [] : [spliceBetween(text, made.text)];
    return { ...this.change(splices, watch), refused: left, faults };
  }

  look({ base: path, room }: Watch): LiveBaseView | null {
    const base = path === null ? null : this.checked(path);
    const said = this.now.lines.find((line) => line.path === path);
    return path === null || base === null || said === undefined ? null : viewOfBase(path, base, room, said);
  }

  checked(path: string): CheckedBase | null {
    const { now, right } = this;
    const index = now.lines.findIndex((line) => line.path === path);
    const slot = right?.slotAt.get(index);
    if (right === null || slot === undefined || now.sound === null || now.faulty.has(index)) return null;
    const checked = checkSlot(right, slot, this.opener.memory);
    const { laid } = this.settled;
    const renewed = this.isNumbered && now.whole !== null ? laid?.bases[right.slots.indexOf(slot)] : undefined;
    return laid === null || renewed === undefined ? checked : checkBase(laid.job, renewed);
  }

  written(keys: readonly string[]): Readonly<Record<string, string>> {
    return textsUnderKeys(this.now.root, keys);
  }

  plan(room: Room, zoom: Zoom): LivePlan | null {
    return livePlan(this.now, this.wholeRight ?? this.right, this.settled.laid?.layout ?? [], room, zoom);
  }

  points(): LivePoints | null {
    return livePoints(this.wholeRight ?? this.right, this.settled.laid?.layout ?? []);
  }

  state(): LiveJob {
    const { findings, unit, said, basesIn, lines, repeats } = this.now;
    const { settled, isSettled, turn, head } = this;
    return {
      ...{ turn, unit, said, basesIn, repeats, head, files: filesOf(this.now), ...settled.said },
      findings: isSettled && this.now.whole !== null ? [...findings, ...settled.findings] : findings,
      bases: lines.map((line, index) => lineOf(line, index, this.now, this.right)),
      isSettled,
    };
  }

  ledger(ask: LedgerAsk): LedgerSlice {
    const { turn, isSettled } = this;
    this.ledgerOfAll ??= wholeLedger(this.parts());
    const slice = { turn, isSettled, ...ledgerSlice(this.ledgerOfAll, ask, this.now.unit) };
    if (!isSettled) this.ledgerOfAll = null;
    return slice;
  }

  digest(): LiveDigest | null {
    const { turn, isSettled, right } = this;
    return right && { turn, isSettled, ...liveDigest(right, this.parts()) };
  }

  questions(): LiveQuestions | null {
    const { turn, isSettled, now } = this;
    const job = this.settled.laid?.job ?? null;
    if (job === null) return null;
    const [parts, root] = [this.parts(), now.whole === null ? null : now.root];
    return { turn, isSettled, ...liveQuestions(job, parts, gathered(job, parts), root) };
  }

  work(): boolean {
    const { right, now, isSettled, isNumbered } = this;
    if (isSettled) return false;
    const waiting = right?.slots.find(({ bare }) => bare === null);
    if (right !== null && waiting !== undefined) checkSlot(right, waiting, this.opener.memory);
    else if (right === null || now.whole === null) this.isSettled = true;
    else if (!isNumbered) this.numberAll(right);
    else this.drawNextSheet();
    return true;
  }

  private numberAll(right: Right): void {
    this.settled = settle(right);
    this.isNumbered = true;
    this.ledgerOfAll = null;
  }

  private drawNextSheet(): void {
    const { settled, now, opener } = this;
    if (settled.laid !== null) this.sheets ??= sheetFaults(settled.laid, now.inputs, opener.memory);
    const step = this.sheets?.next();
    if (step?.done === false) return;
    this.settled = { ...settled, findings: step?.value ?? [] };
    this.isSettled = true;
  }

  /** A fault of the program on the way leaves all as it was. */
  private change(splices: readonly Splice[], watch: Watch): LiveResult {
    const { now, right, wholeRight, turn, isSettled, isNumbered, head } = this;
    try {
      if (splices.length > 0) this.takeIn(splices.reduce(spliced, now.text));
      const view = this.look(watch);
      return { refused: [], splices, job: this.state(), view };
    } catch (error) {
      Object.assign(this, { now, right, wholeRight, turn, isSettled, isNumbered, head });
      throw error;
    }
  }

  private takeIn(text: string): void {
    this.now = this.opener.open(text);
    this.turn += 1;
    this.right = this.rightNow(this.right);
    this.isSettled = false;
    this.isNumbered = false;
    this.sheets = null;
    this.ledgerOfAll = null;
  }

  /** Where head, shop or marks are at fault the bases stay as they were last right. */
  private rightNow(before: Right | null): Right | null {
    const { sound, whole } = this.now;
    if (whole !== null) this.head = headOf(whole.job);
    const right = sound === null ? before : rightOf(sound, before, this.opener.memory);
    if (whole !== null) this.wholeRight = right;
    return right;
  }

  private parts(): readonly RowsOf[] {
    const bases = (this.right?.slots ?? []).flatMap(({ index, shaped, ledger }): RowsOf[] => {
      const path = this.now.lines[index]?.path;
      return ledger === null || path === undefined ? [] : [{ path, mark: shaped.base.mark, rows: ledger.rows }];
    });
    return [...bases, { path: null, mark: "", rows: this.settled.laid?.layout ?? [] }];
  }
}

/** As the page has it: bytes that are no text are shown as what they are taken for. */
function textOf({ job, files }: Inputs): string {
  const content = contentOf(files.get(job)) ?? "";
  return typeof content === "string" ? content : new TextDecoder().decode(content);
}

/** Edits made one after the other; `refused`: those that have no sure place. */
function madeBy(edits: readonly KeyEdit[], now: Pick<OpenText, "text" | "pieces">) {
  const [splices, refused]: [Splice[], KeyEdit[]] = [[], []];
  let { text, pieces } = now;
  for (const edit of edits) {
    const splice = spliceOf(text, edit, pieces);
    if (splice === null) refused.push(edit);
    if (splice === null || splice.was === splice.now) continue;
    text = spliced(text, splice);
    pieces = pieces && findPieces(text);
    splices.push(splice);
  }
  return { text, splices, refused };
}

function noPlaceWords({ path }: KeyEdit): string {
  const key = joinPath("", path);
  return `The job file is written in such a way that ${key} cannot be changed here; nothing was changed. Change it in the text of the job.`;
}

function filesOf({ requests, inputs: { files } }: OpenText): LiveJob["files"] {
  const own = requests.filter(({ relativeTo }) => relativeTo === "job");
  return own.map(({ name, key, kind }) => ({ name, kind, isThere: files.has(name) || files.has(key ?? name) }));
}

/** The line as it stands; while neither what is written nor how it stands changes it is the same object. */
function lineOf(line: WrittenLine, index: number, { faulty, sound }: OpenText, right: Right | null): LiveBase {
  const standing = faulty.has(index) ? FAULTY : (standingAt(line, right?.slotAt.get(index), sound !== null) ?? WAITING);
  const known = shownLines.get(line);
  if (known?.standing === standing) return known.base;
  const base = { ...line, ...standing };
  shownLines.set(line, { standing, base });
  return base;
}

const [FAULTY, WAITING] = [unchecked("faulty"), unchecked("waiting")];
const shownLines = new WeakMap<WrittenLine, { readonly standing: Standing; readonly base: LiveBase }>();

/** Where the bases are those of before, a base that is another now has none. */
function standingAt(line: WrittenLine, slot: Slot | undefined, isNow: boolean): Standing | null {
  if (slot === undefined || (!isNow && slot.shaped.base.mark !== line.mark)) return null;
  return slot.ledger?.standing ?? slot.before;
}

function headOf(job: Job): LiveHead {
  const { number, title, revision, status, date, owner, drawnBy, unit, shop } = job;
  const { editions } = summarizeJob(job);
  return { number, title, revision, status, date, owner, drawnBy, unit, editions, shop: shop.name };
}

function gathered(job: Job, parts: readonly RowsOf[]): Questions {
  const questions = startQuestions(job);
  addParts(questions, job, parts);
  return questions;
}

/** How the open job changes: a step is made by the engine, shown, kept, and made after those of other tabs where they were first. */
import { inverse, spliced } from "../../readers/yaml-edit.js";
import type { Splice, Watch } from "../../tasks/live/model.js";
import type { Engine } from "../engine/engine.js";
import type { EngineAnswer, EngineAsk } from "../engine/protocol.js";
import { messageOf, Refused } from "../engine/refused.js";
import type { Keeper } from "./keeper.js";
import { UNTOUCHED } from "./left.js";
import { filesNow, type OpenJob, type PageState, type Step } from "./model.js";
import { differenceOf, fits, movedOver } from "./splice-merge.js";
import type { Store } from "./store.js";

/** What steps stand on. */
export interface StepWork {
  readonly store: Store;
  readonly engine: Engine;
  readonly keeper: Keeper;
  /** ISO date of the shell's clock. */
  today(): string;
}

/** What actions of the page have in common. */
export interface Steps {
  say(text: string, tone?: "said" | "fault"): void;
  /** Asks the engine; a fault of the program is told and thrown on. */
  ask(body: EngineAsk): Promise<EngineAnswer>;
  watch(): Watch;
  /** Shows what the engine answered. */
  take(answer: EngineAnswer): void;
  /** One change at a time: each is an edit of the text that the one before left. */
  inTurn(work: () => Promise<void>): Promise<void>;
  /** The job as another tab left it, where that was first; null: ours is kept, or the browser refuses, which is told. */
  keep(): Promise<OpenJob | null>;
  /** Opens a job in the engine and shows it. */
  load(job: OpenJob, base?: string): Promise<void>;
  /** Shows the job as another tab left it. */
  adopt(newer: OpenJob): Promise<void>;
  makeStep(name: string, body: EngineAsk): Promise<EngineAnswer>;
  /** Puts another text in the place of the job's, as one step; no step where it is the same. */
  makeText(name: string, text: string): Promise<void>;
  /** Takes back the last step that is made. */
  undo(): Promise<void>;
  /** Makes the step again that was taken back last. */
  redo(): Promise<void>;
}

/** Steps of the job that the store has open. */
export function startSteps(work: StepWork): Steps {
  const { store } = work;
  const say = startSaying(store);
  const shown: Shown = {
    ...{ ...work, say },
    ask: startAsking(work, say),
    watch: () => ({ base: store.get().base, room: store.get().room }),
    take: ({ job, view }) =>
      store.set({ ...(job === null ? {} : { live: job }), sheet: view ?? keptSheet(store.get()) }),
  };
  hearNews(shown);
  return {
    ...{ say, ask: shown.ask, watch: shown.watch, take: shown.take, inTurn: startTurns(store) },
    keep: () => keep(shown),
    load: (job, base) => load(shown, job, base),
    adopt: (newer) => adopt(shown, newer),
    makeStep: (name, body) => makeStep(shown, name, body),
    makeText: (name, text) => makeText(shown, name, text),
    undo: () => undo(shown),
    redo: () => redo(shown),
  };
}

type Shown = StepWork & Pick<Steps, "say" | "ask" | "watch" | "take">;

function startSaying(store: Store): Steps["say"] {
  let notices = 0;
  return (text, tone = "said") => {
    notices += 1;
    store.set({ notices: [...store.get().notices, { id: notices, tone, text }] });
  };
}

function startAsking({ store, engine }: StepWork, say: Steps["say"]): Steps["ask"] {
  return async (body) => {
    store.set({ working: true });
    try {
      return await engine.ask(body);
    } catch (error) {
      say(faultWords(error), "fault");
      throw error;
    } finally {
      store.set({ working: false });
    }
  };
}

/** What is told of anything that was thrown: what the user can put right by its own words. */
export function faultWords(error: unknown): string {
  return error instanceof Refused ? error.message : `A fault of the program: ${messageOf(error)}`;
}

function startTurns(store: Store): Steps["inTurn"] {
  let last: Promise<void> = Promise.resolve();
  return (work) => {
    const turn = last.then(work, work);
    const end = (): void => {
      if (last === turn) store.set({ changing: false });
    };
    last = turn;
    store.set({ changing: true });
    turn.then(end, end);
    return turn;
  };
}

/** What the engine says unasked is shown where the job is still the one that it speaks of. */
function hearNews({ store, engine, say }: Shown): void {
  engine.onNews(
    ({ job, view }) => {
      const { live, base, sheet } = store.get();
      if (job !== null && job.turn === live?.turn) store.set({ live: job });
      // a view alone is of the turn that was told before it: edits since then would have kept it from being sent
      if (view !== null && view !== sheet && view.path === base) store.set({ sheet: view });
    },
    (why) => say(`A fault of the program: ${why}`, "fault"),
  );
}

async function keep({ store, keeper }: Shown): Promise<OpenJob | null> {
  const { job, live } = store.get();
  if (job === null) return null;
  if (store.get().keeping.kind === "kept") store.set({ keeping: { kind: "keeping" } });
  try {
    const kept = await keeper.keep(job, titleOf(live));
    store.set({ keeping: { kind: "kept" } });
    return kept.kind === "outdated" ? kept.job : null;
  } catch (error) {
    store.set({ keeping: { kind: "refused", why: messageOf(error) } });
    return null;
  }
}

async function load({ store, ask, today }: Shown, job: OpenJob, base = "bases[0]"): Promise<void> {
  const watch = { base, room: store.get().room };
  const answer = await ask({ kind: "open", files: filesNow(job), date: today(), watch });
  const { job: before, drafts, left } = store.get();
  const kept = before?.id === job.id ? { drafts, left } : { drafts: {}, left: UNTOUCHED };
  store.set({ job, live: answer.job, sheet: answer.view, base, ...kept, pointed: null });
}

async function adopt(shown: Shown, newer: OpenJob): Promise<void> {
  const { store, ask, watch, take } = shown;
  const { job, base } = store.get();
  if (job === null || !haveSameFiles(job, newer)) return load(shown, newer, base ?? undefined);
  const other = differenceOf(job.text, newer.text);
  if (other === null) {
    store.set({ job: newer });
    return;
  }
  const answer = await ask({ kind: "splice", splices: [other], watch: watch() });
  store.set({ job: newer });
  take(answer);
}

async function makeStep(shown: Shown, name: string, body: EngineAsk): Promise<EngineAnswer> {
  const { store, ask, say, take } = shown;
  const answer = await ask(body);
  for (const why of answer.refused ?? []) say(why, "fault");
  const { job } = store.get();
  const isMade = job !== null && answer.splices.length > 0;
  const step = { name, splices: answer.splices };
  if (isMade) store.set({ job: withStep(job, step) });
  take(answer);
  if (isMade) await keepStep(shown, job, step);
  return answer;
}

async function makeText(shown: Shown, name: string, text: string): Promise<void> {
  const { store, watch } = shown;
  const { job } = store.get();
  const splice = job === null ? null : differenceOf(job.text, text);
  if (splice !== null) await makeStep(shown, name, { kind: "splice", splices: [splice], watch: watch() });
}

/** Keeps a step; where another tab was first, its steps are taken and this one is made after them, if its place is still there. */
async function keepStep(shown: Shown, before: OpenJob, { name, splices }: Step): Promise<void> {
  const { store, ask, say, take, watch } = shown;
  const newer = await keep(shown);
  if (newer === null) return;
  const other = differenceOf(before.text, newer.text);
  await adopt(shown, newer);
  const moved = other === null ? splices : movedOver(splices, other);
  if (moved === null || !fits(newer.text, moved)) {
    say(`Not made: ${name}. Another tab changed the same place first; what it wrote stands.`, "fault");
    return;
  }
  const answer = await ask({ kind: "splice", splices: moved, watch: watch() });
  const step = { name, splices: moved };
  store.set({ job: withStep(newer, step) });
  take(answer);
  await keepStep(shown, newer, step);
}

async function undo(shown: Shown): Promise<void> {
  const { job } = shown.store.get();
  const step = job?.steps[job.made - 1];
  if (job === null || step === undefined) return;
  await replay(shown, step.splices.toReversed().map(inverse), job.made - 1);
}

async function redo(shown: Shown): Promise<void> {
  const { job } = shown.store.get();
  const step = job?.steps[job.made];
  if (job === null || step === undefined) return;
  await replay(shown, step.splices, job.made + 1);
}

/** `made`: how many steps are made afterwards. */
async function replay(shown: Shown, splices: readonly Splice[], made: number): Promise<void> {
  const { store, ask, say, take, watch } = shown;
  const answer = await ask({ kind: "splice", splices, watch: watch() });
  const { job } = store.get();
  if (job === null) return;
  store.set({ job: { ...job, text: splices.reduce(spliced, job.text), made } });
  take(answer);
  const newer = await keep(shown);
  if (newer === null) return;
  await adopt(shown, newer);
  say("Another tab changed the job at the same moment: its step stands, and nothing was taken back.", "fault");
}

/** The drawing of a base that is at fault now stays as it was last right. */
function keptSheet({ sheet, base }: PageState): PageState["sheet"] {
  return sheet?.path === base ? sheet : null;
}

/** Number, title and revision, for lists of jobs. */
function titleOf(live: PageState["live"]): string {
  const head = live?.head ?? null;
  return head === null ? "" : `${head.number}  ${head.title}, rev ${head.revision}`;
}

function haveSameFiles({ files: { job, files: mine } }: OpenJob, { files: { files: theirs } }: OpenJob): boolean {
  return mine.size === theirs.size && [...mine].every(([name, file]) => name === job || isSame(file, theirs.get(name)));
}

function isSame(mine: string | Uint8Array, theirs: string | Uint8Array | undefined): boolean {
  if (typeof mine === "string" || typeof theirs === "string" || theirs === undefined) return mine === theirs;
  return mine.length === theirs.length && mine.every((byte, index) => byte === theirs[index]);
}

/** Steps that were taken back are gone once another is made. */
function withStep(job: OpenJob, step: Step): OpenJob {
  const steps = [...job.steps.slice(0, job.made), step];
  return { ...job, text: step.splices.reduce(spliced, job.text), steps, made: steps.length };
}

/** What can be done on the page. Each action changes the state, asks the engine where the job changes, and keeps the job. */
import { inverse, spliced } from "../../readers/yaml-edit.js";
import { answerStep } from "../../tasks/live/answer-step.js";
import type {
  AnswerDraft,
  AnswerFaults,
  KeyEdit,
  LedgerAsk,
  LedgerSlice,
  LiveDigest,
  LiveQuestions,
  Splice,
  Watch,
} from "../../tasks/live/model.js";
import type { LiveSolid } from "../../tasks/live/solid.js";
import type { Engine } from "../engine/engine.js";
import type { EngineAnswer, EngineAsk } from "../engine/protocol.js";
import { Refused } from "../engine/refused.js";
import type { BeginActions } from "./begin-actions.js";
import { startBeginActions } from "./begin-actions.js";
import type { JobActions } from "./job-actions.js";
import { startJobActions } from "./job-actions.js";
import type { Keeper } from "./keeper.js";
import { type LookActions, startLookActions } from "./look-actions.js";
import type { OpenJob, PageState, Pointed, Step, ViewName } from "./model.js";
import { filesNow } from "./model.js";
import { differenceOf, fits, movedOver } from "./splice-merge.js";
import type { Store } from "./store.js";
import { startWorkActions, type WorkActions } from "./work-actions.js";

/** All of them. */
export interface Actions extends JobActions, BeginActions, LookActions, WorkActions {
  /** Changes keys of the job, as one step that can be taken back. */
  edit(name: string, edits: readonly KeyEdit[]): Promise<void>;
  /** Changes the text itself, as one step: many items of a list at once. Made of the text as it stands when its turn comes; null: nothing. */
  rewrite(name: string, change: (text: string) => Splice | null): Promise<void>;
  /** Takes the bases of the schedule that the job names into the job file, as one step. */
  takeBases(): Promise<void>;
  /** Rows of every base of the job; null where no job is open. */
  ledger(ask: LedgerAsk): Promise<LedgerSlice | null>;
  /** What all rows of the job come to; null where no job is open, or it never was right. */
  digest(): Promise<LiveDigest | null>;
  questions(): Promise<LiveQuestions | null>;
  /** Writes answers into the job, as one step; gives why not, by the field that is at fault. */
  answer(drafts: readonly AnswerDraft[]): Promise<AnswerFaults>;
  /** Keeps what is typed of an answer; null: it is written, or given up. */
  draft(number: string, draft: AnswerDraft | null): void;
  undo(): Promise<void>;
  redo(): Promise<void>;
  show(view: ViewName): void;
  /** Shows a base: its template, or in another view. */
  choose(base: string, view?: ViewName): Promise<void>;
  resize(room: PageState["room"]): Promise<void>;
  /** Triangles of a base's template and rods, for the view that shows them; null while the base is at fault. Rejects where its code does not come. */
  solid(base: string): Promise<LiveSolid | null>;
  point(pointed: Pointed | null): void;
  /** Shows the template of a base, null: of the one that is shown, and takes the user to the field of a key that is missing. */
  goTo(base: string | null, key: string): Promise<void>;
  /** The field of the goal has the focus, or there is none for it. */
  reached(): void;
  /** ISO date of the shell's clock. */
  today(): string;
  say(text: string, tone?: "said" | "fault"): void;
  hush(id: number): void;
}

/** Actions on a store by an engine. `today`: the clock of the shell. */
export function startActions(store: Store, engine: Engine, keeper: Keeper, today: () => string): Actions {
  const watch = (): Watch => ({ base: store.get().base, room: store.get().room });
  const ask = async (body: EngineAsk): Promise<EngineAnswer> => {
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
  /** The job as another tab left it, where that was first; null: ours is kept, or the browser refuses, which is told. */
  const keep = async (): Promise<OpenJob | null> => {
    const { job, live } = store.get();
    if (job === null) return null;
    if (store.get().keeping.kind === "kept") store.set({ keeping: { kind: "keeping" } });
    try {
      const kept = await keeper.keep(job, titleOf(live));
      store.set({ keeping: { kind: "kept" } });
      return kept.kind === "outdated" ? kept.job : null;
    } catch (error) {
      store.set({ keeping: { kind: "refused", why: error instanceof Error ? error.message : String(error) } });
      return null;
    }
  };
  /** Opens a job in the engine and shows it. */
  const load = async (job: OpenJob, base = "bases[0]"): Promise<void> => {
    const answer = await ask({
      kind: "open",
      files: filesNow(job),
      date: today(),
      watch: { base, room: store.get().room },
    });
    const drafts = store.get().job?.id === job.id ? store.get().drafts : {};
    store.set({ job, live: answer.job, sheet: answer.view, base, drafts, pointed: null });
  };
  /** Shows the job as another tab left it. */
  const adopt = async (newer: OpenJob): Promise<void> => {
    const { job, base } = store.get();
    if (job === null || !haveSameFiles(job, newer)) return load(newer, base ?? undefined);
    const other = differenceOf(job.text, newer.text);
    if (other === null) {
      store.set({ job: newer });
      return;
    }
    const answer = await ask({ kind: "splice", splices: [other], watch: watch() });
    store.set({ job: newer });
    take(answer);
  };
  /** Keeps a step; where another tab was first, its steps are taken and this one is made after them, if its place is still there. */
  const keepStep = async (before: OpenJob, { name, splices }: Step): Promise<void> => {
    const newer = await keep();
    if (newer === null) return;
    const other = differenceOf(before.text, newer.text);
    await adopt(newer);
    const moved = other === null ? splices : movedOver(splices, other);
    if (moved === null || !fits(newer.text, moved)) {
      say(`Not made: ${name}. Another tab changed the same place first; what it wrote stands.`, "fault");
      return;
    }
    const answer = await ask({ kind: "splice", splices: moved, watch: watch() });
    const step = { name, splices: moved };
    store.set({ job: withStep(newer, step) });
    take(answer);
    await keepStep(newer, step);
  };
  const take = (answer: EngineAnswer): void => {
    store.set({
      ...(answer.job === null ? {} : { live: answer.job }),
      sheet: answer.view ?? keptSheet(store.get()),
    });
  };
  engine.onNews(
    ({ job, view }) => {
      const { live, base } = store.get();
      if (job === null || job.turn !== live?.turn) return;
      store.set({ live: job, ...(view === null || view.path !== base ? {} : { sheet: view }) });
    },
    (why) => say(`A fault of the program: ${why}`, "fault"),
  );
  let notices = 0;
  const say: Actions["say"] = (text, tone = "said") => {
    notices += 1;
    store.set({ notices: [...store.get().notices, { id: notices, tone, text }] });
  };
  /** One change at a time: each is an edit of the text that the one before left. */
  let turn: Promise<void> = Promise.resolve();
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    turn = turn.then(work, work);
    return turn;
  };
  const makeStep = async (name: string, body: EngineAsk): Promise<EngineAnswer> => {
    const answer = await ask(body);
    for (const why of answer.refused ?? []) say(why, "fault");
    const { job } = store.get();
    const isMade = job !== null && answer.splices.length > 0;
    const step = { name, splices: answer.splices };
    if (isMade) store.set({ job: withStep(job, step) });
    take(answer);
    if (isMade) await keepStep(job, step);
    return answer;
  };
  const replay = async (splices: readonly Splice[], made: number): Promise<void> => {
    const answer = await ask({ kind: "splice", splices, watch: watch() });
    const { job } = store.get();
    if (job === null) return;
    store.set({ job: { ...job, text: splices.reduce(spliced, job.text), made } });
    take(answer);
    const newer = await keep();
    if (newer === null) return;
    await adopt(newer);
    say("Another tab changed the job at the same moment: its step stands, and nothing was taken back.", "fault");
  };
  const choose: Actions["choose"] = async (base, view = "template") => {
    store.set({ base, view, pointed: null });
    take(await ask({ kind: "look", watch: watch() }));
  };
  const jobs = startJobActions({ store, keeper, ask, say, inTurn, load, adopt, keep, makeStep, watch });
  return {
    ...jobs,
    ...startBeginActions({ store, open: jobs.open, say }),
    ...startLookActions(engine),
    ...startWorkActions(store),
    rewrite: (name, change) =>
      inTurn(async () => {
        const splice = change(store.get().job?.text ?? "");
        if (splice !== null) await makeStep(name, { kind: "splice", splices: [splice], watch: watch() });
      }),
    edit: (name, edits) => inTurn(async () => void (await makeStep(name, { kind: "edit", edits, watch: watch() }))),
    takeBases: () =>
      inTurn(async () => void (await makeStep("bases taken into the job", { kind: "take-bases", watch: watch() }))),
    answer: async (drafts) => {
      let faults: AnswerFaults = {};
      await inTurn(async () => {
        const answer = await makeStep(answerStep(drafts), { kind: "answer", drafts, watch: watch() });
        faults = answer.faults ?? {};
      });
      return faults;
    },
    draft: (number, draft) => {
      const { [number]: _typed, ...others } = store.get().drafts;
      store.set({ drafts: draft === null ? others : { ...others, [number]: draft } });
    },
    digest: async () => (store.get().job === null ? null : ((await engine.ask({ kind: "digest" })).digest ?? null)),
    questions: async () =>
      store.get().job === null ? null : ((await engine.ask({ kind: "questions" })).questions ?? null),
    ledger: async (wanted) => {
      if (store.get().job === null) return null;
      return (await engine.ask({ kind: "ledger", ledger: wanted })).ledger ?? null;
    },
    undo: () =>
      inTurn(async () => {
        const { job } = store.get();
        const step = job?.steps[job.made - 1];
        if (job === null || step === undefined) return;
        await replay(step.splices.toReversed().map(inverse), job.made - 1);
      }),
    redo: () =>
      inTurn(async () => {
        const { job } = store.get();
        const step = job?.steps[job.made];
        if (job === null || step === undefined) return;
        await replay(step.splices, job.made + 1);
      }),
    show: (view) => {
      store.set({ view });
      if (view === "begin") void jobs.list();
    },
    choose,
    resize: async (room) => {
      store.set({ room });
      if (store.get().job !== null) take(await ask({ kind: "look", watch: watch() }));
    },
    solid: async (base) => (await engine.ask({ kind: "solid", base })).solid ?? null,
    point: (pointed) => store.set({ pointed }),
    goTo: async (base, key) => {
      store.set({ view: "template", goal: { base, key } });
      if (base !== null && base !== store.get().base) await choose(base);
    },
    reached: () => store.set({ goal: null }),
    today,
    say,
    hush: (id) => store.set({ notices: store.get().notices.filter((notice) => notice.id !== id) }),
  };
}

function faultWords(error: unknown): string {
  if (error instanceof Refused) return error.message;
  return `A fault of the program: ${error instanceof Error ? error.message : String(error)}`;
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
  const size = (file: string | Uint8Array | undefined): number => file?.length ?? -1;
  return (
    mine.size === theirs.size &&
    [...mine].every(([name, file]) => name === job || size(theirs.get(name)) === size(file))
  );
}

/** Steps that were taken back are gone once another is made. */
function withStep(job: OpenJob, step: Step): OpenJob {
  const steps = [...job.steps.slice(0, job.made), step];
  return { ...job, text: step.splices.reduce(spliced, job.text), steps, made: steps.length };
}

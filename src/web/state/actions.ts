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
import type { EngineAnswer, EngineAsk, JobFiles } from "../engine/protocol.js";
import type { BeginActions } from "./begin-actions.js";
import { startBeginActions } from "./begin-actions.js";
import type { JobActions } from "./job-actions.js";
import { startJobActions } from "./job-actions.js";
import type { OpenJob, PageState, Pointed, Step, ViewName } from "./model.js";
import type { Store } from "./store.js";

/** Keeps a job where it outlives the page. */
export interface Keeper {
  keep(job: OpenJob): Promise<void>;
  reopen(id: string): Promise<void>;
  throwAway(id: string): Promise<void>;
}

/** All of them. */
export interface Actions extends JobActions, BeginActions {
  /** Opens a job beside those that are kept; `from`: where it comes from, as `sample machine-hall`. */
  open(files: JobFiles, from: string): Promise<void>;
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
  /** Every scalar of the job as written under keys of its first level, by key path. */
  written(keys: readonly string[]): Promise<Readonly<Record<string, string>>>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  show(view: ViewName): void;
  /** Shows a base: its template, or in another view. */
  choose(base: string, view?: ViewName): Promise<void>;
  resize(room: PageState["room"]): Promise<void>;
  /** Triangles of a base's template and rods, for the view that shows them; null while the base is at fault. */
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
      say(`A fault of the program: ${error instanceof Error ? error.message : String(error)}`, "fault");
      throw error;
    } finally {
      store.set({ working: false });
    }
  };
  const keep = async (): Promise<void> => {
    const { job } = store.get();
    if (job === null) return;
    store.set({ keeping: { kind: "keeping" } });
    await keeper.keep(job).then(
      () => store.set({ keeping: { kind: "kept" } }),
      (error: unknown) =>
        store.set({ keeping: { kind: "refused", why: error instanceof Error ? error.message : String(error) } }),
    );
  };
  const take = (answer: EngineAnswer): void => {
    store.set({
      ...(answer.job === null ? {} : { live: answer.job }),
      sheet: answer.view ?? keptSheet(store.get(), answer),
    });
  };
  engine.onNews((answer) => {
    const { live } = store.get();
    if (answer.job !== null && answer.job.turn === live?.turn) store.set({ live: answer.job });
  });
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
    if (job !== null && answer.splices.length > 0) store.set({ job: withStep(job, { name, splices: answer.splices }) });
    take(answer);
    await keep();
    return answer;
  };
  const replay = (splices: readonly Splice[], made: number): Promise<void> =>
    ask({ kind: "splice", splices, watch: watch() }).then((answer) => {
      const { job } = store.get();
      if (job === null) return;
      store.set({ job: { ...job, text: splices.reduce(spliced, job.text), made } });
      take(answer);
      return keep();
    });
  const choose: Actions["choose"] = async (base, view = "template") => {
    store.set({ base, view, pointed: null });
    take(await ask({ kind: "look", watch: watch() }));
  };
  const open: Actions["open"] = (files, from) =>
    inTurn(async () => {
      const text = files.files.get(files.job);
      const job: OpenJob = {
        id: from,
        files,
        text: typeof text === "string" ? text : new TextDecoder().decode(text),
        steps: [],
        made: 0,
        home: { kind: "none" },
        saved: null,
      };
      const answer = await ask({
        kind: "open",
        files,
        date: today(),
        watch: { base: "bases[0]", room: store.get().room },
      });
      store.set({ job, live: answer.job, sheet: answer.view, base: "bases[0]", view: "template", pointed: null });
      await keep();
    });
  return {
    open,
    ...startJobActions({ open, say, keeper }),
    ...startBeginActions({ store, open, say }),
    rewrite: (name, change) =>
      inTurn(async () => {
        const splice = change(store.get().job?.text ?? "");
        if (splice !== null) await makeStep(name, { kind: "splice", splices: [splice], watch: watch() });
      }),
    written: async (keys) => (await engine.ask({ kind: "written", keys })).written ?? {},
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
    show: (view) => store.set({ view }),
    choose,
    resize: async (room) => {
      store.set({ room });
      if (store.get().job !== null) take(await ask({ kind: "look", watch: watch() }));
    },
    solid: async (base) => (await ask({ kind: "solid", base })).solid ?? null,
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

/** The drawing of a base that is at fault now stays as it was last right. */
function keptSheet({ sheet, base }: PageState, { job }: EngineAnswer): PageState["sheet"] {
  return job !== null && sheet?.path === base ? sheet : null;
}

/** Steps that were taken back are gone once another is made. */
function withStep(job: OpenJob, step: Step): OpenJob {
  const steps = [...job.steps.slice(0, job.made), step];
  return { ...job, text: step.splices.reduce(spliced, job.text), steps, made: steps.length };
}

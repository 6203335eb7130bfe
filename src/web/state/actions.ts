/** What can be done on the page. Each action changes the state, asks the engine where the job changes, and keeps the job. */
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
} from "../../tasks/live/model.js";
import type { LiveSolid } from "../../tasks/live/solid.js";
import type { Engine } from "../engine/engine.js";
import type { BeginActions } from "./begin-actions.js";
import { startBeginActions } from "./begin-actions.js";
import type { JobActions } from "./job-actions.js";
import { startJobActions } from "./job-actions.js";
import type { Keeper } from "./keeper.js";
import type { Left } from "./left.js";
import { type LookActions, startLookActions } from "./look-actions.js";
import type { PageState, Pointed, ViewName } from "./model.js";
import { type Steps, startSteps } from "./steps.js";
import type { Store } from "./store.js";
import { startWorkActions, type WorkActions } from "./work-actions.js";

/** All of them. */
export interface Actions extends JobActions, BeginActions, LookActions, WorkActions {
  /** Changes keys of the job, as one step that can be taken back. Edits that hang on the steps before are made when their turn comes. */
  edit(name: string, edits: readonly KeyEdit[] | (() => readonly KeyEdit[])): Promise<void>;
  /** Changes the text itself, as one step: many items of a list at once. Made of the text as it stands when its turn comes; null: nothing. */
  rewrite(name: string, change: (text: string) => Splice | null | Promise<Splice | null>): Promise<void>;
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
  /** Looks at a table of the job in another way. */
  leave(left: Partial<Left>): void;
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
  const steps = startSteps({ store, engine, keeper, today });
  const jobs: JobActions = startJobActions({
    ...{ store, keeper, ...steps },
    readSheet: (sheet) => beginning.readSheet(sheet),
    readInto: (sheet) => beginning.readInto(sheet),
  });
  const beginning = startBeginActions({ store, keeper, ...steps, open: jobs.open, putBeside: jobs.putBeside });
  return {
    ...jobs,
    ...beginning,
    ...startLookActions(engine),
    ...startWorkActions(store),
    ...startChanges(store, steps),
    ...startReading(store, engine),
    ...startShowing(store, steps, jobs.list),
    today,
    say: steps.say,
    hush: (id) => store.set({ notices: store.get().notices.filter((notice) => notice.id !== id) }),
  };
}

type Changes = Pick<Actions, "rewrite" | "edit" | "takeBases" | "answer" | "draft" | "undo" | "redo">;

function startChanges(store: Store, { inTurn, makeStep, watch, undo, redo }: Steps): Changes {
  return {
    rewrite: (name, change) =>
      inTurn(async () => {
        store.set({ working: true });
        const made = Promise.resolve(change(store.get().job?.text ?? ""));
        const splice = await made.finally(() => store.set({ working: false }));
        if (splice !== null) await makeStep(name, { kind: "splice", splices: [splice], watch: watch() });
      }),
    edit: (name, wanted) =>
      inTurn(async () => {
        const edits = typeof wanted === "function" ? wanted() : wanted;
        if (edits.length > 0) await makeStep(name, { kind: "edit", edits, watch: watch() });
      }),
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
    undo: () => inTurn(undo),
    redo: () => inTurn(redo),
  };
}

/** Asks that change nothing and show no work. */
function startReading(store: Store, engine: Engine): Pick<Actions, "digest" | "questions" | "ledger" | "solid"> {
  const isOpen = (): boolean => store.get().job !== null;
  return {
    digest: async () => (isOpen() ? ((await engine.ask({ kind: "digest" })).digest ?? null) : null),
    questions: async () => (isOpen() ? ((await engine.ask({ kind: "questions" })).questions ?? null) : null),
    ledger: async (ledger) => (isOpen() ? ((await engine.ask({ kind: "ledger", ledger })).ledger ?? null) : null),
    solid: async (base) => (await engine.ask({ kind: "solid", base })).solid ?? null,
  };
}

type Showing = Pick<Actions, "show" | "choose" | "leave" | "resize" | "point" | "goTo" | "reached">;

function startShowing(store: Store, { ask, take, watch }: Steps, list: Actions["list"]): Showing {
  const choose: Actions["choose"] = async (base, view = "template") => {
    store.set({ base, view, pointed: null });
    take(await ask({ kind: "look", watch: watch() }));
  };
  return {
    show: (view) => {
      store.set({ view });
      if (view === "begin") void list();
    },
    choose,
    leave: (change) => store.set({ left: { ...store.get().left, ...change } }),
    resize: async (room) => {
      store.set({ room });
      if (store.get().job !== null) take(await ask({ kind: "look", watch: watch() }));
    },
    point: (pointed) => store.set({ pointed }),
    goTo: async (base, key) => {
      store.set({ view: "template", goal: { base, key } });
      if (base !== null && base !== store.get().base) await choose(base);
    },
    reached: () => store.set({ goal: null }),
  };
}

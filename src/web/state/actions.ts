/** What can be done on the page. Each action changes the state, asks the engine where the job changes, and keeps the job. */
import { inverse, spliced } from "../../readers/yaml-edit.js";
import type { KeyEdit, Splice, Watch } from "../../tasks/live/model.js";
import type { Engine } from "../engine/engine.js";
import type { EngineAnswer, EngineAsk, JobFiles } from "../engine/protocol.js";
import type { OpenJob, PageState, Pointed, Step, ViewName } from "./model.js";
import type { Store } from "./store.js";
import { startWorkActions, type WorkActions } from "./work-actions.js";

/** Keeps a job where it outlives the page. */
export interface Keeper {
  keep(job: OpenJob): Promise<void>;
}

/** All of them. */
export interface Actions extends WorkActions {
  open(files: JobFiles, id: string): Promise<void>;
  /** Changes keys of the job, as one step that can be taken back. */
  edit(name: string, edits: readonly KeyEdit[]): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  show(view: ViewName): void;
  /** Shows the template of a base. */
  choose(base: string): Promise<void>;
  resize(room: PageState["room"]): Promise<void>;
  point(pointed: Pointed | null): void;
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
  const replay = (splices: readonly Splice[], made: number): Promise<void> =>
    ask({ kind: "splice", splices, watch: watch() }).then((answer) => {
      const { job } = store.get();
      if (job === null) return;
      store.set({ job: { ...job, text: splices.reduce(spliced, job.text), made } });
      take(answer);
      return keep();
    });
  return {
    ...startWorkActions(store),
    open: (files, id) =>
      inTurn(async () => {
        const text = files.files.get(files.job);
        const job: OpenJob = {
          id,
          files,
          text: typeof text === "string" ? text : new TextDecoder().decode(text),
          steps: [],
          made: 0,
        };
        const answer = await ask({
          kind: "open",
          files,
          date: today(),
          watch: { base: "bases[0]", room: store.get().room },
        });
        store.set({ job, live: answer.job, sheet: answer.view, base: "bases[0]", view: "template", pointed: null });
        await keep();
      }),
    edit: (name, edits) =>
      inTurn(async () => {
        const answer = await ask({ kind: "edit", edits, watch: watch() });
        const { job } = store.get();
        if (job !== null && answer.splices.length > 0)
          store.set({ job: withStep(job, { name, splices: answer.splices }) });
        take(answer);
        await keep();
      }),
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
    choose: async (base) => {
      store.set({ base, view: "template", pointed: null });
      take(await ask({ kind: "look", watch: watch() }));
    },
    resize: async (room) => {
      store.set({ room });
      if (store.get().job !== null) take(await ask({ kind: "look", watch: watch() }));
    },
    point: (pointed) => store.set({ pointed }),
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

/** What can be done where a job begins: figures typed, a sheet read, its questions answered, its bases taken. */
import type { JobTitle } from "../../tasks/answered-sheet.js";
import type { JobFiles } from "../engine/protocol.js";
import { Refused } from "../engine/refused.js";
import type { ReadAnswer } from "../engine/task-model.js";
import type { Running } from "../engine/tasks.js";
import { startTask } from "../engine/tasks.js";
import type { Beginning, Given, GivenSheet, SheetBeingRead } from "./beginning.js";
import type { Store } from "./store.js";

/** All of it. */
export interface BeginActions {
  begin(beginning: Beginning): void;
  /** Opens the job of a first template. */
  openFirst(text: string): Promise<void>;
  /** Reads a sheet that was handed over. */
  readSheet(sheet: GivenSheet): Promise<void>;
  /** Reads the sheet that the tab had before it was loaded again. */
  readOn(): Promise<void>;
  /** Answers a question, and reads again. */
  answerSheet(given: Given): Promise<void>;
  /** Takes back the answer at this place of the list, and reads again. */
  takeBack(index: number): Promise<void>;
  /** Gives the reading up: what was understood before stays. */
  stopReading(): void;
  /** Makes the job of a sheet that is understood, and opens it with the sheet beside it. */
  takeSheet(title: JobTitle): Promise<void>;
}

/** What they stand on. */
export interface BeginWork {
  readonly store: Store;
  open(files: JobFiles, from: string): Promise<void>;
  say(text: string, tone?: "said" | "fault"): void;
}

const JOB_NAME = "job.yaml";

/** The actions. */
export function startBeginActions({ store, open, say }: BeginWork): BeginActions {
  let running: Running<"read"> | null = null;
  const begin = (beginning: Beginning): void => {
    running?.cancel();
    running = null;
    store.set({ beginning, view: "begin" });
  };
  const change = (now: Partial<SheetBeingRead>): void => {
    const { beginning } = store.get();
    if (beginning.kind === "read") store.set({ beginning: { ...beginning, ...now } });
  };
  const run = async (title: JobTitle | null): Promise<ReadAnswer | null> => {
    const { beginning } = store.get();
    if (beginning.kind !== "read") return null;
    running?.cancel();
    const { sheet, given } = beginning;
    const ask = { ...sheet, answers: given.flatMap(({ answers }) => answers), jobName: JOB_NAME, title };
    const own = startTask("read", ask, (going) => change({ going }));
    running = own;
    change({ going: { done: 0, of: 3, what: `opening ${sheet.name}` } });
    try {
      const found = await own.answer;
      change({ found, refused: [], going: null });
      return found;
    } catch (error) {
      if (!(error instanceof Refused))
        say(`A fault of the program: ${error instanceof Error ? error.message : String(error)}`, "fault");
      change({ refused: error instanceof Refused ? error.why : [], going: null });
      return null;
    }
  };
  const giveAnd = async (change_: (given: readonly Given[]) => readonly Given[]): Promise<void> => {
    const { beginning } = store.get();
    if (beginning.kind !== "read") return;
    change({ given: change_(beginning.given) });
    await run(null);
  };
  return {
    begin,
    openFirst: async (text) => {
      await open({ job: JOB_NAME, files: new Map([[JOB_NAME, text]]) }, "first template");
      store.set({ beginning: { kind: "choice" } });
    },
    readSheet: async (sheet) => {
      begin({ kind: "read", sheet, given: [], going: null, found: null, refused: [] });
      await run(null);
    },
    readOn: async () => {
      const { beginning } = store.get();
      if (beginning.kind === "read" && beginning.found === null) await run(null);
    },
    answerSheet: (given) => giveAnd((before) => [...before, given]),
    takeBack: (index) => giveAnd((before) => before.toSpliced(index, 1)),
    stopReading: () => {
      running?.cancel();
      running = null;
      change({ going: null });
    },
    takeSheet: async (title) => {
      const { beginning } = store.get();
      const job = (await run(title))?.job ?? null;
      if (job === null || beginning.kind !== "read") return;
      const { name, content } = beginning.sheet;
      const files = new Map<string, string | Uint8Array>([
        [JOB_NAME, job],
        [name, content],
      ]);
      await open({ job: JOB_NAME, files }, `schedule ${name}`);
      store.set({ beginning: { kind: "choice" } });
    },
  };
}

/** What can be done where a job begins: figures typed, a sheet read, its questions answered, its bases taken. */
import type { JobTitle } from "../../tasks/answered-sheet.js";
import { readingInto } from "../../tasks/answered-sheet.js";
import type { JobFiles } from "../engine/protocol.js";
import { Refused } from "../engine/refused.js";
import type { ReadAnswer } from "../engine/task-model.js";
import type { Running } from "../engine/tasks.js";
import { startTask } from "../engine/tasks.js";
import type { Beginning, BegunWork, Given, GivenSheet, ReadInto, SheetBeingRead } from "./beginning.js";
import type { BegunKeeping } from "./begun.js";
import { startBegunKeeping } from "./begun.js";
import type { Keeper } from "./keeper.js";
import type { OpenJob } from "./model.js";
import { faultWords, type Steps } from "./steps.js";
import type { Store } from "./store.js";

/** All of it. */
export interface BeginActions {
  begin(beginning: Beginning): void;
  /** Opens the job of a first template. */
  openFirst(text: string): Promise<void>;
  /** Reads a sheet that was handed over. */
  readSheet(sheet: GivenSheet): Promise<void>;
  /** Reads a newer sheet in the place of the one that is read, by the answers so far; absent: the same again. */
  readAgain(sheet?: GivenSheet): Promise<void>;
  /** Reads a newer sheet into the open job, which names it, by the answers that the job holds. */
  readInto(sheet: GivenSheet): Promise<void>;
  /** Answers a question, and reads again. */
  answerSheet(given: Given): Promise<void>;
  /** Takes back the answer at this place of the list, and reads again. */
  takeBack(index: number): Promise<void>;
  /** Gives the reading up: what was understood before stays. */
  stopReading(): void;
  /** Makes the job of a sheet that is understood, and opens it with the sheet beside it; or puts the bases into the job that it is read into. */
  takeSheet(title: JobTitle): Promise<void>;
  /** Finds again what this tab had begun when it was loaded. */
  findBegun(): Promise<void>;
  /** Goes on with what was begun and left. */
  goOn(id: string): Promise<void>;
  removeBegun(id: string): Promise<void>;
  listBegun(): Promise<void>;
}

/** What they stand on. */
export interface BeginWork extends Pick<Steps, "say" | "inTurn" | "makeText"> {
  readonly store: Store;
  readonly keeper: Keeper;
  open(files: JobFiles, from: string): Promise<void>;
  putBeside(files: ReadonlyMap<string, string | Uint8Array>): Promise<void>;
}

const JOB_NAME = "job.yaml";

/** The actions. */
export function startBeginActions(work: BeginWork): BeginActions {
  const { store, say } = work;
  const kept = startBegunKeeping(store, work.keeper, say);
  const reading = startReading(store, say);
  const begin = (beginning: Beginning): void => {
    reading.stop();
    if (store.get().beginning.kind !== beginning.kind) void kept.leave();
    store.set({ beginning, view: "begin" });
    kept.keep();
  };
  const readFirst = async (sheet: GivenSheet, into: ReadInto | null): Promise<void> => {
    reading.stop();
    // cells that were pasted are now the sheet
    if (store.get().beginning.kind !== "paste") void kept.leave();
    store.set({ beginning: { kind: "read", sheet, into, given: [], ...UNREAD }, view: "begin" });
    kept.keep();
    await reading.run(null);
  };
  const changeAnd = async (change: (read: SheetBeingRead) => Partial<SheetBeingRead>): Promise<void> => {
    const { beginning } = store.get();
    if (beginning.kind !== "read") return;
    store.set({ beginning: { ...beginning, ...change(beginning) } });
    kept.keep();
    await reading.run(null);
  };
  return {
    begin,
    openFirst: async (text) => {
      const files = new Map([[JOB_NAME, text]]);
      await openJob(work, kept, { job: JOB_NAME, files }, "first template");
    },
    readSheet: (sheet) => readFirst(sheet, null),
    readAgain: (sheet) => changeAnd(() => (sheet === undefined ? {} : { sheet })),
    readInto: async (sheet) => {
      const { job } = store.get();
      if (job !== null) await readFirst(sheet, { id: job.id, job: job.files.job });
    },
    answerSheet: (given) => changeAnd((read) => ({ given: withGiven(read.given, given) })),
    takeBack: (index) => changeAnd((read) => ({ given: read.given.toSpliced(index, 1) })),
    stopReading: reading.stop,
    takeSheet: async (title) => {
      const { beginning } = store.get();
      const job = (await reading.run(title))?.job ?? null;
      if (job !== null && beginning.kind === "read") await takeJob(work, kept, beginning, job);
    },
    ...startFinding(store, kept, () => reading.run(null)),
  };
}

const UNREAD = { going: null, found: null, refused: [] } as const;

/** An answer to all that an earlier one answered stands in its place, as the answer to what was asked then. */
function withGiven(before: readonly Given[], given: Given): readonly Given[] {
  const paths = new Set(given.answers.map(({ path }) => path.join("\n")));
  const isAnew = ({ answers }: Given): boolean => answers.every(({ path }) => paths.has(path.join("\n")));
  const asked = before.find(isAnew)?.asked ?? given.asked;
  return [...before.filter((each) => !isAnew(each)), { ...given, asked }];
}

/** What was begun stays where the job is not opened. */
async function openJob({ store, open }: BeginWork, kept: BegunKeeping, files: JobFiles, from: string): Promise<void> {
  const before = store.get().job?.id;
  await open(files, from);
  if (store.get().job?.id === before) return;
  store.set({ beginning: { kind: "choice" } });
  await kept.finish();
}

async function takeJob(work: BeginWork, kept: BegunKeeping, read: SheetBeingRead, job: string): Promise<void> {
  const { store, inTurn, makeText, putBeside } = work;
  const { sheet, into } = read;
  const { name, content } = sheet;
  if (into === null) {
    const files = new Map<string, string | Uint8Array>([
      [JOB_NAME, job],
      [name, content],
    ]);
    return openJob(work, kept, { job: JOB_NAME, files }, `schedule ${name}`);
  }
  await putBeside(new Map([[name, content]]));
  await inTurn(() => makeText(`${name} read again`, job));
  store.set({ beginning: { kind: "choice" }, view: "schedule" });
  await kept.finish();
}

type Finding = Pick<BeginActions, "findBegun" | "goOn" | "removeBegun" | "listBegun">;

function startFinding(store: Store, kept: BegunKeeping, read: () => Promise<unknown>): Finding {
  const show = async (work: BegunWork | null): Promise<void> => {
    if (work === null) return;
    store.set({ beginning: work.kind === "read" ? { ...work, ...UNREAD } : work });
    if (work.kind === "read") await read();
  };
  return {
    findBegun: async () => show(await kept.find()),
    goOn: async (id) => show(await kept.find(id)),
    removeBegun: kept.remove,
    listBegun: kept.list,
  };
}

interface Reading {
  run(title: JobTitle | null): Promise<ReadAnswer | null>;
  stop(): void;
}

/** Reads the sheet of the store in a thread of its own; one at a time. */
function startReading(store: Store, say: BeginWork["say"]): Reading {
  let running: Running<"read"> | null = null;
  const change = (now: Partial<SheetBeingRead>): void => {
    const { beginning } = store.get();
    if (beginning.kind === "read") store.set({ beginning: { ...beginning, ...now } });
  };
  const stop = (): void => {
    running?.cancel();
    running = null;
    change({ going: null });
  };
  const run: Reading["run"] = async (title) => {
    const { beginning, job } = store.get();
    if (beginning.kind !== "read") return null;
    running?.cancel();
    const { sheet, given, into } = beginning;
    const why = whyNotInto(into, job);
    if (why !== null) {
      change({ refused: [why], going: null });
      return null;
    }
    const answers = given.flatMap((each) => each.answers);
    const ask = { ...sheet, answers, title, jobName: into?.job ?? JOB_NAME, into: into === null ? null : textOf(job) };
    running = startTask("read", ask, (going) => change({ going }));
    change({ going: { done: 0, of: 3, what: `opening ${sheet.name}` } });
    try {
      const found = await running.answer;
      // with the job come no cells: those stay that it was made of
      change({ ...(found.job === null ? { found } : {}), refused: [], going: null });
      return found;
    } catch (error) {
      if (!(error instanceof Refused)) say(faultWords(error), "fault");
      change({ refused: error instanceof Refused ? error.why : [], going: null });
      return null;
    }
  };
  return { run, stop };
}

const textOf = (job: OpenJob | null): string => job?.text ?? "";

/** A sentence; null where nothing is in the way. */
function whyNotInto(into: ReadInto | null, job: OpenJob | null): string | null {
  if (into === null) return null;
  if (job?.id !== into.id) return `${into.job}, into which this sheet is read, is not open: open it, then read again.`;
  if (readingInto(job.text) !== "no reading wrote it") return null;
  return `No sheet was read into ${into.job}: its bases stand in it as they were typed, and stay.`;
}

/**
 * Keeps jobs in this browser, so that nothing is lost on reload or crash: every step as its splices, with the text at one of
 * them. Tabs share the jobs: what is put down on an outdated state is refused, and who has the job open is told of each change.
 * Writing transactions of one database follow each other in all tabs (W3C, "Indexed Database API", 2.7.2), so no further lock is
 * needed for that; a shared Web Lock says only that a job is open somewhere.
 */
import { inverse, spliced } from "../../readers/yaml-edit.js";
import type { Begun, BegunWork } from "./beginning.js";
import type { Beside, Head, Records, TextAt } from "./kept-records.js";
import { openRecords, within } from "./kept-records.js";
import type { KeptJob, OpenJob, Step } from "./model.js";
import { fits } from "./splice-merge.js";

/** What became of a job that was to be kept. `outdated`: another tab was first; this is the job as it left it. */
export type Kept = { readonly kind: "kept" } | { readonly kind: "outdated"; readonly job: OpenJob };

/** The kept jobs of this browser. What the browser refuses rejects, with a sentence. */
export interface Keeper {
  /** Puts down how the job stands; `title`: for lists. */
  keep(job: OpenJob, title: string): Promise<Kept>;
  /** The job as another tab left it; null where nothing is newer than what this tab knows. */
  newer(id: string): Promise<OpenJob | null>;
  read(id: string): Promise<OpenJob | null>;
  /** The last changed first. */
  list(): Promise<readonly KeptJob[]>;
  /** The last changed of those whose home is the job that the program serves under this key; null: none. */
  findServed(key: string): Promise<string | null>;
  remove(id: string): Promise<void>;
  /** What was begun and is no job yet, the last changed first. */
  begun(): Promise<readonly Begun[]>;
  /** Puts down how far a beginning has come. */
  keepBegun(id: string, work: BegunWork): Promise<void>;
  removeBegun(id: string): Promise<void>;
  /** Says that this tab has the job open, and no other one. */
  hold(id: string | null): void;
  /** True where any tab has it open, this one too. */
  isHeld(id: string): Promise<boolean>;
  /** Called when another tab changed the job, or removed or added one. */
  onNews(hear: (id: string) => void): void;
}

/** What this tab knows to be kept of a job. */
interface Known {
  readonly job: OpenJob;
  readonly version: number;
}

/** Kept jobs of this origin. `now`: the clock, in milliseconds. */
export function startKeeper(now: () => number): Keeper {
  let database: Promise<IDBDatabase> | null = null;
  let known: Known | null = null;
  const news = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel("rodplate jobs");
  const use: Use = async (mode, work) => {
    try {
      database ??= openDatabase(() => {
        database = null;
      });
      return await within(await database, mode, work);
    } catch (error) {
      database = null;
      throw new Error(refusedWords(error));
    }
  };
  const held = startHolding();
  return {
    keep: async (job, title) => {
      const before = known?.job.id === job.id ? known : null;
      const version = await use("readwrite", async (records) => {
        const head = await records.head(job.id);
        if (head !== undefined && head.version !== before?.version) return null;
        return putJob(records, job, title, head === undefined ? null : before, now());
      });
      if (version !== null) {
        known = { job, version };
        news?.postMessage(job.id);
        return { kind: "kept" };
      }
      const read = await use("readonly", (records) => readJob(records, job.id));
      if (read === null) throw new Error("another tab threw the job away");
      known = read;
      return { kind: "outdated", job: read.job };
    },
    newer: async (id) => {
      const before = known;
      const read = await use("readonly", async (records) => {
        const head = await records.head(id);
        return head === undefined || (before?.job.id === id && head.version === before.version)
          ? null
          : readJob(records, id);
      });
      if (read !== null) known = read;
      return read?.job ?? null;
    },
    read: async (id) => {
      const read = await use("readonly", (records) => readJob(records, id));
      known = read ?? known;
      return read?.job ?? null;
    },
    list: async () => {
      const heads = await use("readonly", (records) => records.heads());
      return heads.map(keptOf).toSorted((a, b) => b.changed - a.changed);
    },
    findServed: async (key) => {
      const heads = await use("readonly", (records) => records.heads());
      const found = heads.filter(({ home }) => home.kind === "server" && home.key === key);
      return found.toSorted((a, b) => b.changed - a.changed)[0]?.id ?? null;
    },
    remove: async (id) => {
      await use("readwrite", async (records) => records.remove(id));
      news?.postMessage(id);
    },
    ...begunIn(use, now),
    ...held,
    onNews: (hear) => news?.addEventListener("message", ({ data }: MessageEvent<unknown>) => hear(String(data))),
  };
}

type Use = <T>(mode: "readonly" | "readwrite", work: (records: Records) => Promise<T>) => Promise<T>;

function begunIn(use: Use, now: () => number): Pick<Keeper, "begun" | "keepBegun" | "removeBegun"> {
  return {
    begun: async () => {
      const begun = await use("readonly", (records) => records.begun());
      return begun.toSorted((a, b) => b.changed - a.changed);
    },
    keepBegun: (id, work) => use("readwrite", async (records) => records.putBegun({ id, changed: now(), work })),
    removeBegun: (id) => use("readwrite", async (records) => records.removeBegun(id)),
  };
}

async function openDatabase(gone: () => void): Promise<IDBDatabase> {
  const opened = await openRecords();
  opened.onclose = gone;
  return opened;
}

function keptOf({ id, title, job, steps, changed, isUnsaved }: Head): KeptJob {
  return { id, title, file: job, steps, changed, isUnsaved };
}

/** After so many steps the text is put down anew, so that few of them have to be gone over when the job is read. */
const STEPS_APART = 200;

/** Puts down what is not kept yet; `known`: what is. The version that it has now. */
async function putJob(
  records: Records,
  job: OpenJob,
  title: string,
  known: Known | null,
  changed: number,
): Promise<number> {
  const { id, made, steps, home, from: origin, files } = job;
  const before = known?.job.steps ?? [];
  const from = known === null ? 0 : sharedSteps(before, steps);
  if (known === null || from < before.length || from < steps.length) records.putSteps(id, from, steps.slice(from));
  const text = known === null ? undefined : await records.text(id);
  if (text === undefined || text.at > from || Math.abs(text.at - made) >= STEPS_APART)
    records.putText(id, { text: job.text, at: made });
  if (known?.job.files !== files) records.putBeside(id, besideOf(job));
  if (known === null || known.job.saved !== job.saved) records.putSaved(id, job.saved);
  const version = (known?.version ?? 0) + 1;
  const isUnsaved = job.saved !== job.text;
  records.putHead({
    id,
    version,
    job: files.job,
    title,
    changed,
    made,
    steps: steps.length,
    home,
    from: origin,
    isUnsaved,
  });
  return version;
}

function besideOf({ files: { job, files } }: OpenJob): Beside {
  return new Map([...files].filter(([name]) => name !== job));
}

/** How many of the first are the same. */
function sharedSteps(before: readonly Step[], steps: readonly Step[]): number {
  const least = Math.min(before.length, steps.length);
  if (least > 0 && before[least - 1] === steps[least - 1]) return least;
  const first = before.findIndex((step, index) => step !== steps[index]);
  return first < 0 ? least : first;
}

async function readJob(records: Records, id: string): Promise<Known | null> {
  const [head, text, steps, saved, beside] = await Promise.all([
    records.head(id),
    records.text(id),
    records.steps(id),
    records.saved(id),
    records.beside(id),
  ]);
  if (head === undefined || text === undefined) return null;
  const now = textAfter(text, steps, head.made);
  const files = new Map([...(beside ?? []), [head.job, now ?? text.text] as const]);
  const rest = { id, home: head.home, from: head.from, saved: saved ?? null, files: { job: head.job, files } };
  const job: OpenJob =
    now === null ? { ...rest, text: text.text, steps: [], made: 0 } : { ...rest, text: now, steps, made: head.made };
  return { job, version: head.version };
}

/** null where the steps are not of this text, as after a disk that lost a part of them. */
function textAfter({ text, at }: TextAt, steps: readonly Step[], made: number): string | null {
  const way =
    at <= made
      ? steps.slice(at, made).flatMap(({ splices }) => splices)
      : steps
          .slice(made, at)
          .toReversed()
          .flatMap(({ splices }) => splices.toReversed().map(inverse));
  return fits(text, way) ? way.reduce(spliced, text) : null;
}

/** What the browser said, in words that a person can do something about. */
function refusedWords(error: unknown): string {
  const { name, message } = error instanceof Error ? error : { name: "", message: String(error) };
  if (name === "QuotaExceededError") return "the browser's storage is full";
  if (name === "SecurityError" || name === "InvalidStateError")
    return "the browser refuses its storage (a private window, or a setting)";
  return message === "" ? "the browser refuses its storage" : message;
}

/** A shared lock for as long as the tab has a job open: it ends with the tab, whatever ends it. */
function startHolding(): Pick<Keeper, "hold" | "isHeld"> {
  let release: () => void = () => {};
  const nameOf = (id: string): string => `rodplate job ${id}`;
  const locks = typeof navigator === "undefined" || !("locks" in navigator) ? null : navigator.locks;
  return {
    hold: (id) => {
      release();
      release = () => {};
      if (id === null || locks === null) return;
      const until = new Promise<void>((resolve) => {
        release = resolve;
      });
      void locks.request(nameOf(id), { mode: "shared" }, () => until).catch(() => {});
    },
    isHeld: async (id) => {
      const { held = [] } = (await locks?.query().catch(() => null)) ?? {};
      return held.some(({ name }) => name === nameOf(id));
    },
  };
}

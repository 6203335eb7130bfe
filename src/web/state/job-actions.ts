/** What can be done with a job as a whole: opened, saved, shared, kept, thrown away. */
import type { JobFiles } from "../engine/protocol.js";
import { Refused } from "../engine/refused.js";
import { pickFiles } from "./browser-files.js";
import { glanceAt, readGiven } from "./given-files.js";
import type { GivenFile } from "./model.js";
import { lookAtDisk, openServed, takeDisk } from "./on-disk.js";
import { type JobWork, type Opening, type OpeningActions, startOpening, wouldLose } from "./opening.js";
import { type SavingActions, startSaving } from "./saving.js";
import { servedKey } from "./served-job.js";
import { readSession, writeSession } from "./session.js";
import { isLink, readLink } from "./share-link.js";
import type { Store } from "./store.js";
import { findBeside, putBeside, takeFiles } from "./taking.js";

/** All of it. */
export interface JobActions extends OpeningActions, SavingActions {
  /** Opens the job among these files with what it names; files that the open job lacks are put beside it. */
  take(files: readonly GivenFile[]): Promise<void>;
  /** Asks for files of this machine, then as `take`. */
  openFromDisk(): Promise<void>;
  /** Asks for the file that the job has this name for. */
  findBeside(name: string): Promise<void>;
  /** Puts files beside the open job, by the names that it has for them. */
  putBeside(files: ReadonlyMap<string, string | Uint8Array>): Promise<void>;
  /** Asks whether a kept job is to be removed from this browser for good. */
  throwAway(id: string): Promise<void>;
  /** Does what is asked under the job's line: opens the link, takes what is on the disk, removes the job. */
  agree(): Promise<void>;
  /** Leaves what is asked under the job's line. */
  decline(): void;
  /** Closes the job, which stays kept, and shows the beginning. */
  close(): Promise<void>;
  /** Finds again what this tab had open, the job that the program serves, and what the address holds. */
  restore(): Promise<void>;
  /** Looks whether other tabs or programs changed the job. */
  lookAround(): Promise<void>;
  /** Takes a link that was put into the address. */
  readAddress(): Promise<void>;
  /** Brings the list of kept jobs up to date. */
  list(): Promise<void>;
}

/** The actions. */
export function startJobActions(work: JobWork): JobActions {
  const opening = startOpening(work);
  const saving = startSaving(work);
  const { store, say, inTurn, keeper } = work;
  const list: JobActions["list"] = async () => {
    const kept = await keeper.list().catch(() => null);
    if (kept !== null) store.set({ kept });
  };
  const sayRefused = (error: unknown): void => {
    if (!(error instanceof Refused)) throw error;
    say(error.message, "fault");
  };
  const take: JobActions["take"] = async (given) => {
    const read = await readGiven(given);
    for (const why of read.refused) say(why, "fault");
    if (read.files.length > 0) await takeFiles(work, opening, read.files).catch(sayRefused);
  };
  keeper.onNews((id) => {
    if (store.get().view === "begin") void list();
    if (store.get().job?.id === id) void inTurn(() => takeNews(work));
  });
  return {
    ...opening,
    ...saving,
    list,
    take,
    openFromDisk: async () => take(await pickFiles()),
    findBeside: (name) => findBeside(work, name),
    putBeside: (files) => putBeside(work, files),
    throwAway: async (id) => {
      await list();
      const job = store.get().kept.find((each) => each.id === id);
      if (job !== undefined) store.set({ asking: { kind: "throw", job } });
    },
    agree: () => agree(work, opening, list),
    decline: () => store.set({ asking: null }),
    close: () =>
      inTurn(async () => {
        if (wouldLose(work)) return;
        keeper.hold(null);
        store.set({ job: null, live: null, sheet: null, base: null, asking: null, view: "begin" });
        await list();
      }),
    restore: async () => {
      await list();
      await restoreTab(work, opening);
      // not before: what the tab had open would be forgotten while it is read
      rememberTab(store);
      await readAddress(work);
    },
    readAddress: () => readAddress(work),
    lookAround: async () => {
      await inTurn(() => takeNews(work));
      await lookAtDisk(work);
    },
  };
}

/** From now on what this tab has open is put down whenever it is another. */
function rememberTab(store: Store): void {
  let written = "";
  const write = (): void => {
    const { job, view, base, drafts } = store.get();
    const session = job === null ? null : { id: job.id, view, base, drafts };
    const now = JSON.stringify(session);
    if (now === written) return;
    written = now;
    writeSession(session);
  };
  store.subscribe(write);
  write();
}

async function takeNews({ store, keeper, adopt }: JobWork): Promise<void> {
  const { job } = store.get();
  const newer = job === null ? null : await keeper.newer(job.id).catch(() => null);
  if (newer !== null) await adopt(newer);
}

async function restoreTab(work: JobWork, opening: Opening): Promise<void> {
  const { keeper, inTurn, store } = work;
  const session = readSession();
  const job = session === null ? null : await keeper.read(session.id).catch(() => null);
  const key = servedKey();
  const isServed = job?.home.kind === "server" && job.home.key === key;
  if (key !== null && (job === null || isServed)) await openServed(work, opening, key);
  else if (job !== null) await inTurn(() => opening.begin(job, session?.base ?? undefined));
  if (session !== null && store.get().job?.id === session.id) {
    store.set({ view: session.view, drafts: session.drafts });
    if (session.view === "begin") await keeper.list().then((kept) => store.set({ kept }));
  }
}

async function agree(work: JobWork, opening: Opening, list: () => Promise<void>): Promise<void> {
  const { store, inTurn, keeper, say } = work;
  const { asking } = store.get();
  store.set({ asking: null });
  switch (asking?.kind) {
    case "link":
      return opening.open(asking.files, "link");
    case "changed":
      return inTurn(() => takeDisk(work, asking.name, asking.text, asking.home));
    case "throw": {
      const { id } = asking.job;
      if (await keeper.isHeld(id)) say("This job is open, here or in another tab: close it there first.", "fault");
      else await keeper.remove(id).catch(() => say("The browser refuses to remove it.", "fault"));
      return list();
    }
    default:
  }
}

/** A link opens nothing by itself: what it holds is shown, and the address is cleared of it. */
async function readAddress({ store }: JobWork): Promise<void> {
  const { hash, pathname, search } = window.location;
  if (!isLink(hash)) return;
  window.history.replaceState(null, "", `${pathname}${search}`);
  const linked = readLink(hash);
  if (typeof linked === "string") {
    store.set({ asking: { kind: "broken", why: linked } });
    return;
  }
  const { name, text, lacks } = linked;
  const { title, bases } = await glanceAt(name, text).catch(() => ({ title: "", bases: 0 }));
  const files: JobFiles = { job: name, files: new Map([[name, text]]) };
  store.set({ asking: { kind: "link", files, title, bases, lacks } });
}

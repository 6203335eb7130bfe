/** What can be done with a job as a whole: opened, saved, shared, kept, thrown away. */
import { decodeText } from "../../readers/text.js";
import type { JobFiles } from "../engine/protocol.js";
import { Refused } from "../engine/refused.js";
import type { BeginActions } from "./begin-actions.js";
import { pickFiles } from "./browser-files.js";
import { sheetFileName } from "./file-names.js";
import { findJobs, glanceAt, MAY_BE_JOB, placeFiles, type ReadFile, readGiven } from "./given-files.js";
import { type Saved, saveDownload, saveElsewhere, saveHome } from "./job-home.js";
import type { Keeper } from "./keeper.js";
import type { GivenFile, Home, OpenJob } from "./model.js";
import { isWorthKeeping, sheetReadInto } from "./model.js";
import { newId } from "./new-id.js";
import { readServed, readServedBeside, type ServedText, servedKey } from "./served-job.js";
import { readSession, writeSession } from "./session.js";
import { isLink, LONGEST_LINK, linkOf, readLink } from "./share-link.js";
import { differenceOf } from "./splice-merge.js";
import type { Steps } from "./steps.js";
import type { Store } from "./store.js";

/** All of it. */
export interface JobActions {
  /** Opens a job beside those that are kept; `from`: where it comes from, as `sample machine-hall`. */
  open(files: JobFiles, from: string): Promise<void>;
  /** Opens the job among these files with what it names; files that the open job lacks are put beside it. */
  take(files: readonly GivenFile[]): Promise<void>;
  /** Asks for files of this machine, then as `take`. */
  openFromDisk(): Promise<void>;
  /** Asks for the file that the job has this name for. */
  findBeside(name: string): Promise<void>;
  /** Puts files beside the open job, by the names that it has for them. */
  putBeside(files: ReadonlyMap<string, string | Uint8Array>): Promise<void>;
  /** Opens a job that is kept in this browser, with all its steps. */
  reopen(id: string): Promise<void>;
  /** Asks whether a kept job is to be removed from this browser for good. */
  throwAway(id: string): Promise<void>;
  /** Does what is asked under the job's line: opens the link, takes what is on the disk, removes the job. */
  agree(): Promise<void>;
  /** Leaves what is asked under the job's line. */
  decline(): void;
  save(): Promise<void>;
  saveAs(): Promise<void>;
  download(): Promise<void>;
  share(): void;
  /** Closes the job, which stays kept, and shows the beginning. */
  close(): Promise<void>;
  /** Tries again to keep the job in this browser. */
  keepAgain(): Promise<void>;
  /** Finds again what this tab had open, the job that the program serves, and what the address holds. */
  restore(): Promise<void>;
  /** Looks whether other tabs or programs changed the job. */
  lookAround(): Promise<void>;
  /** Takes a link that was put into the address. */
  readAddress(): Promise<void>;
  /** Brings the list of kept jobs up to date. */
  list(): Promise<void>;
}

/** What they stand on. */
export interface JobWork extends Steps, Pick<BeginActions, "readSheet" | "readInto"> {
  readonly store: Store;
  readonly keeper: Keeper;
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

type Opening = Pick<JobActions, "open" | "reopen"> & { begin(job: OpenJob, base?: string): Promise<void> };

function startOpening(work: JobWork): Opening {
  const { store, keeper, say, inTurn, load, keep } = work;
  const begin: Opening["begin"] = async (job, base) => {
    if (wouldLose(work)) return;
    const { job: before, view } = store.get();
    await load(job, base);
    // who went on to another view meanwhile stays there
    store.set({ view: store.get().view === view ? "template" : store.get().view, asking: null });
    keeper.hold(job.id);
    const newer = await keep();
    if (newer !== null) await work.adopt(newer);
    if (before !== null && before.id !== job.id) await forget(work, before);
  };
  return {
    begin,
    open: (files, from) =>
      inTurn(async () => {
        const read = decodeText(files.files.get(files.job) ?? "", files.job, "allowed is a job file (YAML)");
        if (!read.ok) say(`${files.job}: ${read.finding.message}.`, "fault");
        else await begin(newJob(files, read.text, from));
      }),
    reopen: (id) =>
      inTurn(async () => {
        const job = await keeper.read(id).catch(() => null);
        if (job === null) say("This job is no longer kept in this browser.", "fault");
        else await begin(job);
      }),
  };
}

function newJob(files: JobFiles, text: string, from: string, home: Home = { kind: "none" }): OpenJob {
  const saved = home.kind === "none" ? null : text;
  return { id: newId(), files, text, steps: [], made: 0, from, home, saved };
}

/** A job that is neither kept nor saved is not left; this is told. */
function wouldLose({ store, say }: JobWork): boolean {
  const { job, keeping } = store.get();
  if (job === null || keeping.kind !== "refused" || !isWorthKeeping(job)) return false;
  say("This job is not kept, and not saved: save or download it first.", "fault");
  return true;
}

/** A sample that was only looked at is not kept. */
async function forget({ keeper }: JobWork, job: OpenJob): Promise<void> {
  if (job.steps.length > 0 || !job.from.startsWith("sample ") || (await keeper.isHeld(job.id))) return;
  await keeper.remove(job.id).catch(() => {});
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

/** The job among files, or what the open job lacks. */
async function takeFiles(work: JobWork, { begin }: Opening, files: readonly ReadFile[]): Promise<void> {
  const { say, store, inTurn } = work;
  const { jobs, refused } = await findJobs(files);
  for (const why of refused) say(why, "fault");
  const [found, ...others] = jobs;
  if (found === undefined) return takeBeside(work, files);
  if (others.length > 0) {
    const names = jobs.map(({ file }) => file.name).join(", ");
    return say(`Each of these is a job: ${names}. Hand over one of them, with the files that it names.`, "fault");
  }
  const { placed, left } = placeFiles(
    files.filter((file) => file !== found.file),
    found.glance.names,
  );
  const { name, handle } = found.file;
  const home: Home = handle === null ? { kind: "none" } : { kind: "file", handle };
  const job = newJob(
    { job: name, files: new Map<string, string | Uint8Array>([...placed, [name, found.text]]) },
    found.text,
    `file ${name}`,
    home,
  );
  await inTurn(() => begin({ ...job, saved: found.text }));
  if (store.get().job?.id === job.id) sayLeft(work, left);
}

async function takeBeside(work: JobWork, files: readonly ReadFile[]): Promise<void> {
  const { store, say } = work;
  const { live, job } = store.get();
  if (job === null || live === null) {
    const [sheet] = files;
    if (sheet !== undefined && files.length === 1 && !MAY_BE_JOB.test(sheet.name))
      return work.readSheet({ name: sheetFileName(sheet.name), content: sheet.bytes });
    const names = files.map(({ name }) => name).join(", ");
    return say(
      `None of these files is a job: ${names}. A job is YAML, with job, bases or schedule at its top.`,
      "fault",
    );
  }
  const { placed, left } = placeFiles(
    files,
    live.files.map(({ name }) => name),
  );
  const again = sheetReadInto(live);
  const newer = again === null ? undefined : placed.get(again);
  const beside = new Map([...placed].filter(([name]) => name !== again));
  if (beside.size > 0) await putBeside(work, beside);
  sayLeft(work, left);
  if (again !== null && newer !== undefined) await work.readInto({ name: again, content: newer });
}

function sayLeft({ say }: JobWork, left: readonly ReadFile[]): void {
  for (const { name } of left)
    say(`${name} is left out: the job does not name it. In the view Begin it is read as a schedule of another job.`);
}

async function findBeside(work: JobWork, name: string): Promise<void> {
  const [given] = await pickFiles();
  const read = await readGiven(given === undefined ? [] : [given]);
  for (const why of read.refused) work.say(why, "fault");
  const [file] = read.files;
  if (file === undefined) return;
  await putBeside(work, new Map([[name, file.bytes]]));
  if (file.name !== name) work.say(`${file.name} is taken as ${name}.`);
}

/** Puts files beside the open job; its text and steps stay. */
function putBeside(
  { inTurn, store, load, keep, adopt }: JobWork,
  files: ReadonlyMap<string, string | Uint8Array>,
): Promise<void> {
  return inTurn(async () => {
    const { job, base } = store.get();
    if (job === null) return;
    await load({ ...job, files: { ...job.files, files: new Map([...job.files.files, ...files]) } }, base ?? undefined);
    const newer = await keep();
    if (newer !== null) await adopt(newer);
  });
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

/** The job that the program serves; with the steps that are kept of it, where it is still the one that they lead to. */
async function openServed(work: JobWork, { begin }: Opening, key: string): Promise<void> {
  const { say, keeper, inTurn } = work;
  const served = await readServed();
  const read =
    typeof served === "string" ? null : decodeText(served.bytes, served.name, "allowed is a job file (YAML)");
  if (typeof served === "string") return say(`The job was not opened: ${served}.`, "fault");
  if (read?.ok !== true) return say(`${served.name}: ${read?.finding.message ?? ""}.`, "fault");
  const { files, refused } = await readServedBeside();
  for (const why of refused) say(why, "fault");
  const home: Home = { kind: "server", key, hash: served.hash };
  const id = await keeper.findServed(key).catch(() => null);
  const kept = id === null ? null : await keeper.read(id).catch(() => null);
  const beside: JobFiles = {
    job: served.name,
    files: new Map<string, string | Uint8Array>([...files, [served.name, read.text]]),
  };
  if (kept === null) return inTurn(() => begin(newJob(beside, read.text, `file ${served.name}`, home)));
  await inTurn(() =>
    begin({ ...kept, files: withBeside(kept, beside), ...(kept.saved === read.text ? { home } : {}) }),
  );
  await inTurn(() => meetDisk(work, served, read.text, home));
}

function withBeside({ files }: OpenJob, beside: JobFiles): JobFiles {
  return { job: beside.job, files: new Map([...files.files, ...beside.files]) };
}

/** The file is another than the one that was kept: taken as a step where nothing of ours is unsaved, else asked. */
async function meetDisk(work: JobWork, { name }: Pick<ServedText, "name">, text: string, home: Home): Promise<void> {
  const { job } = work.store.get();
  if (job === null || job.saved === text) return;
  if (job.text === text) await settleHome(work, home, text);
  else if (job.text === job.saved) await takeDisk(work, name, text, home);
  else work.store.set({ asking: { kind: "changed", name, text, home } });
}

async function takeDisk(work: JobWork, name: string, text: string, home: Home): Promise<void> {
  const { store, makeStep, watch } = work;
  const { job } = store.get();
  const splice = job === null ? null : differenceOf(job.text, text);
  if (splice !== null)
    await makeStep(`${name} as it is on the disk`, { kind: "splice", splices: [splice], watch: watch() });
  await settleHome(work, home, text);
}

/** Puts down where the job is saved, and as what; where another tab was first its steps are taken too. */
async function settleHome({ store, keep, adopt }: JobWork, home: Home, saved: string): Promise<void> {
  const { job } = store.get();
  if (job === null) return;
  store.set({ job: { ...job, home, saved } });
  const newer = await keep();
  if (newer === null) return;
  await adopt({ ...newer, home, saved });
  await keep();
}

async function lookAtDisk(work: JobWork): Promise<void> {
  const { store, inTurn } = work;
  const { job, asking } = store.get();
  if (job?.home.kind !== "server" || asking !== null) return;
  const { home } = job;
  const now = await readServed();
  const read = typeof now === "string" || now.hash === home.hash ? null : decodeText(now.bytes, now.name);
  if (typeof now === "string" || read?.ok !== true) return;
  const { text } = read;
  await inTurn(async () => {
    const after = store.get().job;
    if (after?.id === job.id && after.home === home) await meetDisk(work, now, text, { ...home, hash: now.hash });
  });
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

function startSaving(work: JobWork): Pick<JobActions, "save" | "saveAs" | "download" | "share" | "keepAgain"> {
  const { store, say, inTurn, keep, adopt } = work;
  const saveBy = (how: (job: OpenJob) => Saved | Promise<Saved>): Promise<void> =>
    inTurn(async () => {
      const { job } = store.get();
      const saved = job === null ? null : await how(job);
      if (job === null || saved === null) return;
      switch (saved.kind) {
        case "saved":
          return settleHome(work, saved.home, job.text);
        case "changed":
          return store.set({ asking: saved });
        case "refused":
          return say(`Not saved: ${saved.why}.`, "fault");
        case "given up":
      }
    });
  return {
    save: () => saveBy(saveHome),
    saveAs: () => saveBy(saveElsewhere),
    download: () => saveBy(saveDownload),
    share: () => {
      const { job, live } = store.get();
      if (job === null) return;
      const lacks = (live?.files ?? []).map(({ name }) => name);
      const fragment = linkOf({ name: job.files.job, text: job.text, lacks });
      // not by its origin, which from the disk is none
      const [address = ""] = window.location.href.split(/[?#]/);
      const link = fragment.length > LONGEST_LINK ? null : `${address}${fragment}`;
      store.set({ asking: { kind: "shared", link, signs: fragment.length, lacks } });
    },
    keepAgain: () =>
      inTurn(async () => {
        const newer = await keep();
        if (newer !== null) await adopt(newer);
      }),
  };
}

/** Opens a job in the place of the one that is open, which is not lost. */
import { decodeText } from "../../readers/text.js";
import type { JobFiles } from "../engine/protocol.js";
import type { BeginActions } from "./begin-actions.js";
import type { Keeper } from "./keeper.js";
import type { Home, OpenJob } from "./model.js";
import { isWorthKeeping } from "./model.js";
import { newId } from "./new-id.js";
import type { Steps } from "./steps.js";
import type { Store } from "./store.js";

/** What they stand on. */
export interface JobWork extends Steps, Pick<BeginActions, "readSheet" | "readInto"> {
  readonly store: Store;
  readonly keeper: Keeper;
}

/** The ways to open one. */
export interface OpeningActions {
  /** Opens a job beside those that are kept; `from`: where it comes from, as `sample machine-hall`. */
  open(files: JobFiles, from: string): Promise<void>;
  /** Opens a job that is kept in this browser, with all its steps. */
  reopen(id: string): Promise<void>;
}

/** With what the page itself opens one by. */
export interface Opening extends OpeningActions {
  /** With its steps, at a base. */
  begin(job: OpenJob, base?: string): Promise<void>;
}

/** Each waits for the change that is under way. */
export function startOpening(work: JobWork): Opening {
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

/** A job that no step was made of yet, under an id of its own. */
export function newJob(files: JobFiles, text: string, from: string, home: Home = { kind: "none" }): OpenJob {
  const saved = home.kind === "none" ? null : text;
  return { id: newId(), files, text, steps: [], made: 0, from, home, saved };
}

/** A job that is neither kept nor saved is not left; this is told. */
export function wouldLose({ store, say }: JobWork): boolean {
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

/** The job as it stands in its file, which others may change meanwhile. */
import { decodeText } from "../../readers/text.js";
import type { JobFiles } from "../engine/protocol.js";
import type { Home, OpenJob } from "./model.js";
import { type JobWork, newJob, type Opening } from "./opening.js";
import { readServed, readServedBeside, type ServedText } from "./served-job.js";

/** The job that the program serves; with the steps that are kept of it, where it is still the one that they lead to. */
export async function openServed(work: JobWork, { begin }: Opening, key: string): Promise<void> {
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

/** The file as it is now, as one step that can be taken back. */
export async function takeDisk(work: JobWork, name: string, text: string, home: Home): Promise<void> {
  await work.makeText(`${name} as it is on the disk`, text);
  await settleHome(work, home, text);
}

/** Puts down where the job is saved, and as what; where another tab was first its steps are taken too. */
export async function settleHome({ store, keep, adopt }: JobWork, home: Home, saved: string): Promise<void> {
  const { job } = store.get();
  if (job === null) return;
  store.set({ job: { ...job, home, saved } });
  const newer = await keep();
  if (newer === null) return;
  await adopt({ ...newer, home, saved });
  await keep();
}

/** Looks whether somebody changed the file that the program serves. */
export async function lookAtDisk(work: JobWork): Promise<void> {
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

/** Files that are handed over: a job with what it names, or what the open job lacks. */
import { pickFiles } from "./browser-files.js";
import { sheetFileName } from "./file-names.js";
import { findJobs, MAY_BE_JOB, placeFiles, type ReadFile, readGiven } from "./given-files.js";
import type { Home } from "./model.js";
import { sheetReadInto } from "./model.js";
import { type JobWork, newJob, type Opening } from "./opening.js";

/** The job among files, or what the open job lacks. */
export async function takeFiles(work: JobWork, { begin }: Opening, files: readonly ReadFile[]): Promise<void> {
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

/** Asks for the file that the job names so, whatever it is called on the disk. */
export async function findBeside(work: JobWork, name: string): Promise<void> {
  const [given] = await pickFiles();
  const read = await readGiven(given === undefined ? [] : [given]);
  for (const why of read.refused) work.say(why, "fault");
  const [file] = read.files;
  if (file === undefined) return;
  await putBeside(work, new Map([[name, file.bytes]]));
  if (file.name !== name) work.say(`${file.name} is taken as ${name}.`);
}

/** Puts files beside the open job; its text and steps stay. */
export function putBeside(
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

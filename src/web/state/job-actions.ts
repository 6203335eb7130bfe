/** What can be done with a job as a whole: opened, saved, shared, kept, thrown away. */
import type { JobFiles } from "../engine/protocol.js";
import type { Keeper } from "./actions.js";
import type { GivenFile } from "./model.js";

/** All of it. */
export interface JobActions {
  /** Opens the job among these files with what it names; files that the open job lacks are put beside it. */
  take(files: readonly GivenFile[]): Promise<void>;
  /** Asks for files of this machine, then as `take`. */
  openFromDisk(): Promise<void>;
  /** Opens a job that is kept in this browser, with all its steps. */
  reopen(id: string): Promise<void>;
  /** Removes a kept job from this browser for good. */
  throwAway(id: string): Promise<void>;
}

/** What they stand on. */
export interface JobWork {
  open(files: JobFiles, from: string): Promise<void>;
  say(text: string, tone?: "said" | "fault"): void;
  readonly keeper: Keeper;
}

/** The actions. */
export function startJobActions({ open, say, keeper }: JobWork): JobActions {
  const take: JobActions["take"] = async (given) => {
    const job = given.find(({ file }) => /\.(ya?ml|json)$/i.test(file.name));
    if (job === undefined) return say("None of these files is a job (YAML).", "fault");
    const read = async ({ file }: GivenFile) => [file.name, new Uint8Array(await file.arrayBuffer())] as const;
    await open({ job: job.file.name, files: new Map(await Promise.all(given.map(read))) }, job.file.name);
  };
  return {
    take,
    openFromDisk: async () => take(await chooseFiles()),
    reopen: (id) => keeper.reopen(id),
    throwAway: (id) => keeper.throwAway(id),
  };
}

/** Files that the user picks; none where the choice is given up. */
function chooseFiles(): Promise<readonly GivenFile[]> {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.multiple = true;
    input.addEventListener("change", () => resolve([...(input.files ?? [])].map((file) => ({ file, handle: null }))));
    input.addEventListener("cancel", () => resolve([]));
    input.click();
  });
}

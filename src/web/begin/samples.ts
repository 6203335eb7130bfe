/** The samples that come with the program, loaded when they are asked for. */
import type { JobFiles } from "../engine/protocol.js";

const TEXTS = import.meta.glob<string>("../../../samples/*/job.yaml", { query: "?raw", import: "default" });

const nameOf = (path: string): string => path.split("/").at(-2) ?? path;

/** Their names. */
export const SAMPLES: readonly string[] = Object.keys(TEXTS).map(nameOf);

/** The job file of a sample. */
export async function sampleFiles(name: string): Promise<JobFiles> {
  const found = Object.entries(TEXTS).find(([path]) => nameOf(path) === name);
  if (found === undefined) throw new Error(`there is no sample ${name}`);
  return { job: "job.yaml", files: new Map([["job.yaml", await found[1]()]]) };
}

/** A folder of this machine as the page has it: its files by their names, the job among them. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { JobFiles } from "../../../../src/web/engine/protocol.js";
import { Refused } from "../../../../src/web/engine/refused.js";

/** The day on which the clock of the command line stands still. */
export const DAY = "2026-11-24";

/** Every file that lies in the folder itself. */
export function givenJob(folder: string, job: string): JobFiles {
  const entries = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
  return { job, files: new Map(entries.map(({ name }) => [name, readFileSync(join(folder, name))])) };
}

/** What is refused, a sentence each; none where something came of it. */
export async function refusedWith(work: Promise<unknown>): Promise<readonly string[]> {
  try {
    await work;
    return [];
  } catch (error) {
    if (error instanceof Refused) return error.why;
    throw error;
  }
}

/** Causes on standard error, without the line that ends them. */
export function causesIn(stderr: string): readonly string[] {
  return stderr
    .trimEnd()
    .split("\n")
    .filter((line) => !/ (was|were) written$/.test(line));
}

/** Runs the cases of a class and counts how they ended, how long the slowest took and what memory there was. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { cpuUsage, memoryUsage } from "node:process";
import { drawsOf } from "./draw.js";
import type { Ending, FuzzCase, FuzzClass } from "./model.js";

/** An exception, or a result that is wrong. */
export interface ProgramFault {
  readonly index: number;
  readonly error: string;
  readonly input: FuzzCase;
}

/** What became of the cases of a class. */
export interface Count {
  readonly name: string;
  readonly cases: number;
  readonly ends: Readonly<Record<Ending, number>>;
  readonly faults: readonly ProgramFault[];
  /** Cases over ten seconds of processor time. */
  readonly slow: readonly number[];
  readonly slowest: number;
  /** Most of the heap in use after a case, in MB. */
  readonly heap: number;
}

/** Processor seconds that a case may take. */
const MOST_SECONDS = 10;

/** Draws and runs the cases `first`, `first + 1`, ... of a class. */
export async function runClass(fuzz: FuzzClass, seed: number, first: number, count: number): Promise<Count> {
  const ends: Record<Ending, number> = { ok: 0, held: 0, fault: 0 };
  const faults: ProgramFault[] = [];
  const slow: number[] = [];
  let [slowest, heap] = [0, 0];
  for (let index = first; index < first + count; index++) {
    const input = fuzz.draw(drawsOf(seed * 1_000_003 + index * 7919), index);
    const start = cpuUsage();
    try {
      ends[await input.run()] += 1;
    } catch (error) {
      faults.push({ index, error: error instanceof Error ? (error.stack ?? error.message) : String(error), input });
    }
    const { user } = cpuUsage(start);
    slowest = Math.max(slowest, user / 1e6);
    heap = Math.max(heap, memoryUsage().heapUsed / 1e6);
    if (user / 1e6 > MOST_SECONDS) slow.push(index);
  }
  return { name: fuzz.name, cases: count, ends, faults, slow, slowest, heap };
}

/** Writes the files of a case into a folder, to try again by hand; says where. */
export function keepCase(folder: string, name: string, { index, error, input }: ProgramFault): string {
  const into = join(folder, `${name.replaceAll(/\W+/g, "-")}-${index}`);
  mkdirSync(into, { recursive: true });
  for (const [path, content] of input.files) writeFileSync(join(into, path.replaceAll("/", "_")), content);
  writeFileSync(join(into, "error.txt"), error);
  return into;
}

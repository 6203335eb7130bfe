/** Bases made by several threads at once, handed out in the order of the job: the same as those of one. */
import { on } from "node:events";
import { Worker } from "node:worker_threads";
import { ProgramFault } from "../diagnostics/program-fault.js";
import type { BaseAlone } from "../tasks/make-base.js";
import type { OpenedJob } from "../tasks/opened-job.js";
import type { ShapedBase } from "../template/index.js";
import type { ThreadWork } from "./base-thread.js";

/** Fewer templates are made before a thread has loaded the program and run it warm. */
const LEAST_TEMPLATES = 40;

/** More would wait for the one that writes. */
const MOST_THREADS = 4;

/** Each thread holds the job: more bases than these would take more memory than a small machine has to spare. */
const MOST_BASES = 4000;

/** How many threads make the bases of a job; 0: none but the program's own, which is soonest through. */
export function threadsFor(bases: readonly ShapedBase[], processors: number): number {
  const templates = new Set(bases.map(({ base }) => base.template.mark)).size;
  const isAlone = processors < 2 || templates < LEAST_TEMPLATES || bases.length > MOST_BASES;
  return isAlone ? 0 : Math.min(processors, MOST_THREADS);
}

/** Bases that are asked for before their turn comes: threads find the next one waiting, and memory holds few. */
const AHEAD = 24;

/** Starts threads, which load the program while the job is numbered. */
export function startThreads(count: number): readonly Thread[] {
  return Array.from({ length: count }, startThread);
}

/**
 * Threads make the first bases at once. They end when the bases were gone through, are left, or one of them fails: what that
 * one threw is thrown here.
 */
export function makeInThreads(
  { job, bases }: OpenedJob,
  options: ThreadWork["options"],
  threads: readonly Thread[],
): AsyncGenerator<BaseAlone> {
  for (const thread of threads) thread.begin({ job, bases, options });
  const turns = shareOut(bases, threads);
  for (const [index, thread] of turns.slice(0, AHEAD).entries()) thread.ask(index);
  return handOut(threads, turns);
}

async function* handOut(threads: readonly Thread[], turns: readonly Thread[]): AsyncGenerator<BaseAlone> {
  try {
    for (const [index, thread] of turns.entries()) {
      const made = await thread.next();
      turns[index + AHEAD]?.ask(index + AHEAD);
      yield made;
    }
  } finally {
    await Promise.all(threads.map((thread) => thread.end()));
  }
}

/** Whose turn each base is: in turn by templates, since all bases of one go to the same thread. */
function shareOut(bases: readonly ShapedBase[], threads: readonly Thread[]): readonly Thread[] {
  const threadOf = new Map<string, Thread | undefined>();
  return bases.flatMap(({ base: { template } }) => {
    if (!threadOf.has(template.mark)) threadOf.set(template.mark, threads[threadOf.size % threads.length]);
    return threadOf.get(template.mark) ?? [];
  });
}

/** A thread that waits for its work. */
export interface Thread {
  begin(work: ThreadWork): void;
  ask(index: number): void;
  /** The base asked for first of those that were not handed out yet. */
  next(): Promise<BaseAlone>;
  end(): Promise<unknown>;
}

/** Of what is new, megabytes: a base makes much that is soon done with, and is through sooner where less of it is moved. */
const YOUNG = 96;

function startThread(): Thread {
  const worker = new Worker(new URL("./base-thread.js", import.meta.url), {
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
  });
  const answers: AsyncIterator<readonly BaseAlone[]> = on(worker, "message", { close: ["exit"] });
  // it keeps the program going only while it is waited for, so that a fault before that ends both
  worker.unref();
  return {
    begin: (work) => worker.postMessage(work),
    ask: (index) => worker.postMessage(index),
    next: async () => {
      worker.ref();
      const made = (await answers.next()).value?.[0];
      if (made === undefined) throw new ProgramFault("a thread ended before its bases were made");
      return made;
    },
    end: () => worker.terminate(),
  };
}

/** Threads of the page, from files of their own. In the page as one script `threads-from-disk.ts` stands in this file's place. */

/** Starts the engine's thread. */
export function startEngineThread(): Worker {
  return new Worker(new URL("./engine-worker.ts", import.meta.url), { type: "module", name: "engine" });
}

/** Starts a thread for one piece of long work. */
export function startTaskThread(name: string): Worker {
  return new Worker(new URL("./task-worker.ts", import.meta.url), { type: "module", name });
}

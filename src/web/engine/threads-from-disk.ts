/** In the place of `threads.ts` where browsers refuse threads from files: their code is a part of the page's one script. */
import EngineThread from "./engine-worker.ts?worker&inline";
import TaskThread from "./task-worker.ts?worker&inline";

/** Starts the engine's thread. */
export function startEngineThread(): Worker {
  return new EngineThread({ name: "engine" });
}

/** Starts a thread for one piece of long work. */
export function startTaskThread(name: string): Worker {
  return new TaskThread({ name });
}

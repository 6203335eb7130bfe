/** The page's end of long work: started, watched, given up. */
import { NotLoaded } from "./not-loaded.js";
import { Refused } from "./refused.js";
import type { Progress, TaskKind, TaskKinds, TaskMessage } from "./task-model.js";
import { startTaskThread } from "./threads.js";

/** Work that goes on. `cancel` ends its thread at once; its promise is then never settled. */
export interface Running<K extends TaskKind> {
  readonly answer: Promise<TaskKinds[K]["answer"]>;
  cancel(): void;
}

/** Starts work in a thread of its own. Rejects with `Refused` for what the user can put right, else with a fault of the program. */
export function startTask<K extends TaskKind>(
  kind: K,
  ask: TaskKinds[K]["ask"],
  tell: (progress: Progress) => void,
): Running<K> {
  const worker = startTaskThread(kind);
  const answer = new Promise<TaskKinds[K]["answer"]>((resolve, reject) => {
    // without words: the thread's own file did not come
    worker.addEventListener("error", ({ message }) =>
      reject(message === undefined ? new NotLoaded() : new Error(message)),
    );
    worker.addEventListener("message", ({ data }: MessageEvent<TaskMessage>) => {
      switch (data.kind) {
        case "progress":
          tell(data.progress);
          return;
        case "done":
          resolve(data.answer as TaskKinds[K]["answer"]);
          break;
        case "refused":
          reject(new Refused(data.why, data.findings));
          break;
        case "not-loaded":
          reject(new NotLoaded());
          break;
        case "fault":
          reject(new Error(data.fault));
      }
      worker.terminate();
    });
    worker.postMessage({ kind, ask });
  });
  return { answer, cancel: () => worker.terminate() };
}

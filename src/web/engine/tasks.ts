/** The page's end of long work: started, watched, given up. */

import { Refused } from "./refused.js";
import type { Progress, TaskKind, TaskKinds, TaskMessage } from "./task-model.js";

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
  const worker = new Worker(new URL("./task-worker.ts", import.meta.url), { type: "module", name: kind });
  const answer = new Promise<TaskKinds[K]["answer"]>((resolve, reject) => {
    worker.addEventListener("error", ({ message }) => reject(new Error(message)));
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
        case "fault":
          reject(new Error(data.fault));
      }
      worker.terminate();
    });
    worker.postMessage({ kind, ask });
  });
  return { answer, cancel: () => worker.terminate() };
}

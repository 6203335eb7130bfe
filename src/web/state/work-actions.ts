/** What can be done with long work: start it, give it up, put its answer away. */
import type { JobFiles } from "../engine/protocol.js";
import { messageOf, Refused } from "../engine/refused.js";
import type { TaskKind, TaskKinds } from "../engine/task-model.js";
import { type Running, startTask } from "../engine/tasks.js";
import type { OpenJob } from "./model.js";
import type { Store } from "./store.js";
import type { Work } from "./work.js";

/** All of them. */
export interface WorkActions {
  /** Starts work anew; what ran of its kind is given up. */
  work<K extends TaskKind>(kind: K, ask: TaskKinds[K]["ask"]): void;
  /** Ends it where it runs, and puts away what came of it. */
  putAway(kind: TaskKind): void;
}

/** Actions on a store. */
export function startWorkActions(store: Store): WorkActions {
  const running = new Map<TaskKind, Running<TaskKind>>();
  const end = (kind: TaskKind): void => {
    running.get(kind)?.cancel();
    running.delete(kind);
  };
  const tell = <K extends TaskKind>(kind: K, work: Work<K> | undefined): void => {
    const { [kind]: _before, ...others } = store.get().works;
    store.set({ works: work === undefined ? others : { ...others, [kind]: work } });
  };
  return {
    work: (kind, ask) => {
      end(kind);
      tell(kind, { kind: "running", progress: null });
      const task = startTask(kind, ask, (progress) => {
        if (running.get(kind) === task) tell(kind, { kind: "running", progress });
      });
      running.set(kind, task);
      const finish = (work: Work<typeof kind>): void => {
        if (running.get(kind) !== task) return;
        running.delete(kind);
        tell(kind, work);
      };
      task.answer.then(
        (answer) => finish({ kind: "done", ask, answer }),
        (error: unknown) => finish(endOf(error)),
      );
    },
    putAway: (kind) => {
      end(kind);
      tell(kind, undefined);
    },
  };
}

function endOf(error: unknown): Extract<Work<TaskKind>, { kind: "refused" | "fault" }> {
  if (error instanceof Refused) return { kind: "refused", why: error.why, findings: error.findings };
  return { kind: "fault", fault: messageOf(error) };
}

/** True where the job has other text than this work was asked about. */
export function isOfBefore(asked: JobFiles, job: OpenJob | null): boolean {
  return job === null || asked.job !== job.files.job || asked.files.get(asked.job) !== job.text;
}

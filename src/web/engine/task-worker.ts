/** One thread for one piece of work; its code is loaded when it is asked for. */
import { config } from "zod";
import { isNotLoaded } from "./not-loaded.js";
import { Refused } from "./refused.js";
import type { TaskKind, TaskMessage, TaskWork } from "./task-model.js";

// the page's policy lets nothing be compiled from a text
config({ jitless: true });

const WORK: { readonly [K in TaskKind]: () => Promise<TaskWork<K>> } = {
  package: async () => (await import("./package-work.js")).makePackageZip,
  glance: async () => (await import("./glance-work.js")).glanceAtJob,
  read: async () => (await import("./read-work.js")).readSchedule,
  hints: async () => (await import("./hints-work.js")).findHints,
  print: async () => (await import("./print-work.js")).drawPrints,
  papers: async () => (await import("./papers-work.js")).makePapers,
  "answer-form": async () => (await import("./answer-form-work.js")).readAnswers,
  register: async () => (await import("./register-work.js")).findRegister,
  sign: async () => (await import("./sign-work.js")).signPackage,
  survey: async () => (await import("./survey-work.js")).surveyPointsOf,
  proof: async () => (await import("./proof-work.js")).proveDropped,
  compare: async () => (await import("./compare-work.js")).compareSources,
  budget: async () => (await import("./budget-work.js")).reckonJob,
  check: async () => (await import("./check-work.js")).checkInText,
};

const tell = (message: TaskMessage): void => self.postMessage(message);

async function run({ kind, ask }: { readonly kind: TaskKind; readonly ask: never }): Promise<TaskMessage> {
  try {
    const work = await WORK[kind]();
    return { kind: "done", answer: await work(ask, (progress) => tell({ kind: "progress", progress })) };
  } catch (error) {
    if (isNotLoaded(error)) return { kind: "not-loaded" };
    if (error instanceof Refused) return { kind: "refused", why: error.why, findings: error.findings };
    return { kind: "fault", fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

self.addEventListener("message", ({ data }: MessageEvent<{ readonly kind: TaskKind; readonly ask: never }>) => {
  void run(data).then(tell);
});

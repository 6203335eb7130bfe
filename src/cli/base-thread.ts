/** A thread that makes bases: told its work, then asked for bases by their numbers in the job, it answers with all that its package needs of each. */
import { parentPort } from "node:worker_threads";
import { ProgramFault } from "../diagnostics/program-fault.js";
import { newLeanDocument } from "../formats/lean-document.js";
import type { Job } from "../job/model/job.js";
import type { AloneOptions, BaseAlone } from "../tasks/make-base.js";
import { startBases } from "../tasks/make-base.js";
import type { ShapedBase } from "../template/index.js";
import { startSha256 } from "./sha256.js";

/** What a thread is told first: plain data. */
export interface ThreadWork {
  readonly job: Job;
  readonly bases: readonly ShapedBase[];
  readonly options: Omit<AloneOptions, "document" | "startSha256">;
}

let make: (index: number) => BaseAlone = () => {
  throw new ProgramFault("a thread was asked for a base before it was told its work");
};

function startMaking({ job, bases, options }: ThreadWork): typeof make {
  const makeBase = startBases(job, { ...options, document: newLeanDocument(), startSha256 });
  return (index) => {
    const base = bases[index];
    if (base === undefined) throw new RangeError(`the job has no base ${index}`);
    return makeBase(base);
  };
}

parentPort?.on("message", (asked: ThreadWork | number) => {
  if (typeof asked !== "number") {
    make = startMaking(asked);
    return;
  }
  const made = make(asked);
  const buffers = new Set(made.files.map(({ bytes }) => bytes.buffer as ArrayBuffer));
  parentPort?.postMessage(made, [...buffers]);
});

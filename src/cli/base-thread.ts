/** A thread that makes bases: asked for one by its number in the job, it answers with all that its package needs of it. */
import { parentPort, workerData } from "node:worker_threads";
import { newLeanDocument } from "../formats/lean-document.js";
import type { Job } from "../job/model/job.js";
import type { AloneOptions } from "../tasks/make-base.js";
import { startBases } from "../tasks/make-base.js";
import type { ShapedBase } from "../template/index.js";
import { startSha256 } from "./sha256.js";

/** What a thread starts with: plain data. */
export interface ThreadWork {
  readonly job: Job;
  readonly bases: readonly ShapedBase[];
  readonly options: Omit<AloneOptions, "document" | "startSha256">;
}

const { job, bases, options }: ThreadWork = workerData;
const make = startBases(job, { ...options, document: newLeanDocument(), startSha256 });

parentPort?.on("message", (index: number) => {
  const base = bases[index];
  if (base === undefined) throw new RangeError(`the job has no base ${index}`);
  const made = make(base);
  const buffers = new Set(made.files.map(({ bytes }) => bytes.buffer as ArrayBuffer));
  parentPort?.postMessage(made, [...buffers]);
});

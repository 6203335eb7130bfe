/** DIR of a package as one thing: locked, put right after a kill, written whole or not at all. */
import { existsSync, mkdirSync } from "node:fs";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { findFault } from "./file-system.js";
import { inspectPackage } from "./package-contents.js";
import type { Lock } from "./package-lock.js";
import { lockTarget } from "./package-lock.js";
import { clearLeftovers, restorePackage } from "./package-repair.js";
import type { Settlement } from "./package-settle.js";
import type { PackageTarget } from "./package-target.js";
import { packageFault, packageWarning, targetOf, unwrittenPackage } from "./package-target.js";
import type { PackageWriter, StartedPackage } from "./package-writer.js";
import { addFile, startPackage } from "./package-writer.js";
import type { PackageJob } from "./summary-scan.js";

/** What is to be written. */
export interface PackageWork<Made, Look> {
  /** Whose package it is: that of another job in DIR is not replaced, unless `replace`. */
  readonly job: PackageJob;
  /** The earlier package is erased, not kept. */
  readonly replace: boolean;
  /** Adds the files. An exception leaves the earlier package. */
  fill(writer: PackageWriter): Promise<Made>;
  /** Looks at the earlier package and at the one that is written, each in its folder, before one takes the place of the other. */
  look(old: string, fresh: string): Look;
}

/** What was written, and what became of the package before it. */
export interface WrittenPackage<Made, Look> {
  readonly made: Made;
  /** null where DIR held no package. */
  readonly look: Look | null;
  /** What became of the package that was in DIR; null where there was none, or it could not be settled yet. */
  readonly settled: Settlement | null;
  /** What an interrupted run before had left to settle. */
  readonly leftover: Settlement | null;
}

/** DIR, looked at and put right: it may be replaced. */
export interface PackageFolder {
  /** Its path. */
  readonly folder: string;
  /** Replaces the package; or leaves the earlier one and says why. Warnings may come with what was written. */
  write<Made, Look>(work: PackageWork<Made, Look>): Promise<Outcome<WrittenPackage<Made, Look>>>;
  /** Adds one file to the package that is there, whole or not at all; the path that it got, which was free. */
  add(path: string, bytes: Uint8Array): Outcome<string>;
}

/**
 * Runs `work` with DIR, which no other run writes meanwhile: the lock is held until `work` is through. Where the folder
 * around DIR is not there yet, it and the lock are made when `work` writes. Nothing is removed before `work` writes.
 */
export async function withPackageFolder<T>(
  dir: string,
  currentFolder: string,
  work: (folder: PackageFolder) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const target = targetOf(dir, currentFolder);
  if (!target.ok) return target;
  const lock = new HeldLock(target.value);
  try {
    const fault = existsSync(target.value.parent) ? lock.take() : null;
    if (fault !== null) return refuse(fault);
    const restored = restorePackage(target.value);
    if (!restored.ok) return restored;
    const done = await work(folderOf(target.value, lock));
    const told = restored.value ? [packageWarning(target.value, RESTORED)] : [];
    return { ...done, findings: [...told, ...done.findings] };
  } finally {
    lock.giveBack();
  }
}

const RESTORED = "an interrupted make had left the earlier package beside it; that one was put back first";

const refuse = (fault: Finding): Outcome<never> => ({ ok: false, findings: [fault] });

/** The lock of one target, taken once. */
class HeldLock {
  readonly #target: PackageTarget;
  #lock: Lock | null = null;

  constructor(target: PackageTarget) {
    this.#target = target;
  }

  take(): Finding | null {
    if (this.#lock !== null) return null;
    const locked = lockTarget(this.#target);
    if (!locked.ok) return locked.findings[0] ?? null;
    this.#lock = locked.value;
    return null;
  }

  get isOurs(): boolean {
    return this.#lock?.isOurs() ?? false;
  }

  giveBack(): void {
    this.#lock?.giveBack();
    this.#lock = null;
  }
}

function folderOf(target: PackageTarget, lock: HeldLock): PackageFolder {
  const makeParent = (): null => {
    mkdirSync(target.parent, { recursive: true });
    return null;
  };
  return {
    folder: target.folder,
    write: async (work) => {
      const fault = findFault(makeParent, unwrittenPackage(target)) ?? lock.take() ?? findOtherJob(target, work);
      return fault === null ? writeLocked(target, lock, work) : refuse(fault);
    },
    add: (path, bytes) => {
      const fault = lock.take();
      if (fault !== null) return refuse(fault);
      return lock.isOurs ? addFile(target, path, bytes) : refuse(packageFault(target.name, LOST));
    },
  };
}

/** Another job over this folder is a slip, unless it is meant. */
function findOtherJob(target: PackageTarget, work: Pick<PackageWork<never, never>, "job" | "replace">): Finding | null {
  const found = inspectPackage(target.folder);
  if (found.kind !== "package" || work.replace) return null;
  const [held, own] = [found.contents.job.number, work.job.number];
  if (held === own || held === "") return null;
  const how = "name another folder, or give --replace to erase that package";
  return packageFault(target.name, `it holds the package of job ${held}, and this is job ${own}: ${how}`);
}

async function writeLocked<Made, Look>(
  target: PackageTarget,
  lock: HeldLock,
  work: PackageWork<Made, Look>,
): Promise<Outcome<WrittenPackage<Made, Look>>> {
  const cleared = clearLeftovers(target);
  if (!cleared.ok) return cleared;
  const started = startPackage(target);
  if (!started.ok) return started;
  const writer = started.value;
  const giveUp = (): void => {
    writer.discard();
    process.exit(130);
  };
  process.once("SIGINT", giveUp);
  try {
    const made = await work.fill(writer);
    await writer.flushed();
    const look = lookAtBoth(target, writer, work);
    if (!writer.isStopped && !lock.isOurs) {
      writer.discard();
      return refuse(packageFault(target.name, LOST));
    }
    const finished = writer.finish(work);
    if (!finished.ok) return finished;
    const value = { made, look, settled: finished.value, leftover: cleared.value };
    return { ok: true, value, findings: finished.findings };
  } catch (error) {
    writer.discard();
    throw error;
  } finally {
    process.off("SIGINT", giveUp);
  }
}

const LOST =
  "another make or sign has taken the lock meanwhile, or somebody removed it; this package is not put in place";

function lookAtBoth<Look>(
  { folder, fresh }: PackageTarget,
  writer: StartedPackage,
  { look }: Pick<PackageWork<never, Look>, "look">,
): Look | null {
  writer.flush();
  return writer.isStopped || inspectPackage(folder).kind !== "package" ? null : look(folder, fresh);
}

/** DIR of a package as one thing: locked, put right after a kill, written whole or not at all. */
import { existsSync, mkdirSync } from "node:fs";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { findFault } from "./file-system.js";
import type { Unlock } from "./package-lock.js";
import { lockTarget } from "./package-lock.js";
import type { PackageTarget } from "./package-target.js";
import { targetOf, unwrittenPackage } from "./package-target.js";
import type { PackageWriter } from "./package-writer.js";
import { repairPackage, startPackage } from "./package-writer.js";

/** DIR, looked at and put right: it may be replaced. */
export interface PackageFolder {
  /** Its path. */
  readonly folder: string;
  /**
   * Replaces the package by what `fill` adds, and gives back what `fill` does; or leaves the earlier one and says why.
   * An exception of `fill` leaves the earlier one too.
   */
  write<T>(fill: (writer: PackageWriter) => Promise<T>): Promise<Outcome<T>>;
}

/**
 * Runs `work` with DIR, which no other run writes meanwhile: the lock is held until `work` is through. Where the folder
 * around DIR is not there yet, it and the lock are made when `work` writes.
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
    const fault = (existsSync(target.value.parent) ? lock.take() : null) ?? repairPackage(target.value);
    return fault === null ? await work(folderOf(target.value, lock)) : refuse(fault);
  } finally {
    lock.giveBack();
  }
}

const refuse = (fault: Finding): Outcome<never> => ({ ok: false, findings: [fault] });

/** The lock of one target, taken once. */
class HeldLock {
  readonly #target: PackageTarget;
  #unlock: Unlock | null = null;

  constructor(target: PackageTarget) {
    this.#target = target;
  }

  take(): Finding | null {
    if (this.#unlock !== null) return null;
    const locked = lockTarget(this.#target);
    if (!locked.ok) return locked.findings[0] ?? null;
    this.#unlock = locked.value;
    return null;
  }

  giveBack(): void {
    this.#unlock?.();
    this.#unlock = null;
  }
}

function folderOf(target: PackageTarget, lock: HeldLock): PackageFolder {
  const makeParent = (): null => {
    mkdirSync(target.parent, { recursive: true });
    return null;
  };
  return {
    folder: target.folder,
    write: async (fill) => {
      const fault = findFault(makeParent, unwrittenPackage(target)) ?? lock.take();
      return fault === null ? writeLocked(target, fill) : refuse(fault);
    },
  };
}

async function writeLocked<T>(target: PackageTarget, fill: (writer: PackageWriter) => Promise<T>): Promise<Outcome<T>> {
  const started = startPackage(target);
  if (!started.ok) return started;
  const writer = started.value;
  const giveUp = (): void => {
    writer.discard();
    process.exit(130);
  };
  process.once("SIGINT", giveUp);
  try {
    const value = await fill(writer);
    const fault = writer.finish();
    return fault === null ? { ok: true, value, findings: [] } : refuse(fault);
  } catch (error) {
    writer.discard();
    throw error;
  } finally {
    process.off("SIGINT", giveUp);
  }
}

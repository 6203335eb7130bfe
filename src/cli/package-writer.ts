/**
 * Writes a package whole or not at all. Everything goes to .DIR.new and is flushed to the disk; then DIR becomes .DIR.old
 * and .DIR.new becomes DIR. A kill at any moment leaves a whole package, old or new, in DIR or in .DIR.old.
 */
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmdirSync, rmSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { attempt, findFault, removeIfPossible } from "./file-system.js";
import type { Inspection, PackageTarget } from "./package-target.js";
import { inspectPackage, packageFault, unwrittenPackage } from "./package-target.js";

/** Called after each change on the disk, with what was done: the tests stop here as a kill would. */
export type Step = (what: string) => void;
const noStep: Step = () => {};

/** Takes the files of a package one by one. Once the system has refused something, nothing more is written. */
export interface PackageWriter {
  /** True once the system has refused: what else would be added is in vain, and `finish` says why. */
  readonly isStopped: boolean;
  /** A file of its own. Folders are made as needed. */
  add(path: string, bytes: Uint8Array): void;
  /** More bytes for a file that is written in parts. */
  append(path: string, bytes: Uint8Array): void;
  /** Flushes and puts the package in place; or says why not, and removes what was written. */
  finish(): Finding | null;
  /** Gives up: removes what was written so far. */
  discard(): void;
}

/**
 * Puts right what a killed run left behind, and makes sure that DIR may be replaced. A finding, with nothing touched, when
 * DIR or .DIR.old is not a package of this program.
 */
export function repairPackage(target: PackageTarget, step: Step = noStep): Finding | null {
  return findFault(() => {
    const { name, folder, fresh, old } = target;
    const now = inspectPackage(folder);
    if (now.kind === "foreign") return packageFault(name, `${folder} is not replaced: ${now.offence}`);
    const fault = now.kind === "whole" ? null : restoreOld(target, now, step);
    if (fault !== null) return fault;
    remove(old, step);
    remove(fresh, step);
    return null;
  }, unwrittenPackage(target));
}

/** DIR is absent or empty: an earlier package in .DIR.old comes back. */
function restoreOld({ name, folder, fresh, old }: PackageTarget, now: Inspection, step: Step): Finding | null {
  const earlier = inspectPackage(old);
  switch (earlier.kind) {
    case "absent":
    case "empty":
      return null;
    case "whole":
      putInPlace(old, folder, now, step);
      return null;
    case "foreign":
      break;
  }
  if (inspectPackage(fresh).kind !== "whole") {
    const how = `${earlier.offence}; move it away and try again`;
    return packageFault(name, `${folder} cannot be put right from ${old}: ${how}`);
  }
  putInPlace(fresh, folder, now, step);
  return null;
}

function putInPlace(from: string, folder: string, now: Inspection, step: Step): void {
  if (now.kind === "empty") rmdirSync(folder);
  renameSync(from, folder);
  syncFolder(dirname(folder));
  step(`rename ${from}`);
}

function remove(path: string, step: Step): void {
  rmSync(path, { recursive: true, force: true });
  step(`remove ${path}`);
}

/** Starts a package in .DIR.new; its parent folder must be there. */
export function startPackage(target: PackageTarget, step: Step = noStep): Outcome<PackageWriter> {
  return attempt(() => {
    rmSync(target.fresh, { recursive: true, force: true });
    mkdirSync(target.fresh);
    step("start");
    return { ok: true, value: writerFor(target, step), findings: [] };
  }, unwrittenPackage(target));
}

function writerFor(target: PackageTarget, step: Step): PackageWriter {
  const files = new FreshFiles(target.fresh);
  let fault: Finding | null = null;
  const goOn = (action: () => void): void => {
    fault ??= findFault(() => {
      action();
      return null;
    }, unwrittenPackage(target));
  };
  const discard = (): void => {
    files.close();
    removeIfPossible(target.fresh);
  };
  return {
    get isStopped() {
      return fault !== null;
    },
    add: (path, bytes) =>
      goOn(() => {
        files.add(path, bytes);
        step(`write ${path}`);
      }),
    append: (path, bytes) => goOn(() => files.append(path, bytes)),
    finish: () => {
      goOn(() => {
        files.flush(step);
        swap(target, step);
      });
      if (fault !== null) discard();
      return fault;
    },
    discard,
  };
}

/** The files of a package that is being written, and the folders made for them. */
class FreshFiles {
  readonly #fresh: string;
  readonly #folders: Set<string>;
  /** Open files that are written in parts. */
  readonly #growing = new Map<string, number>();

  constructor(fresh: string) {
    this.#fresh = fresh;
    this.#folders = new Set([fresh]);
  }

  add(path: string, bytes: Uint8Array): void {
    writeAndSync(this.#open(path), bytes);
  }

  append(path: string, bytes: Uint8Array): void {
    const file = this.#growing.get(path) ?? this.#open(path);
    this.#growing.set(path, file);
    writeAll(file, bytes);
  }

  /** Everything to the disk, the entries of the folders last. */
  flush(step: Step): void {
    for (const file of this.#growing.values()) fsyncSync(file);
    this.close();
    step("close");
    for (const folder of this.#folders) syncFolder(folder);
  }

  close(): void {
    const files = [...this.#growing.values()];
    this.#growing.clear();
    for (const file of files) closeSync(file);
  }

  #open(path: string): number {
    const file = join(this.#fresh, path);
    const folder = dirname(file);
    if (!this.#folders.has(folder)) mkdirSync(folder, { recursive: true });
    this.#folders.add(folder);
    return openSync(file, "wx");
  }
}

function writeAndSync(file: number, bytes: Uint8Array): void {
  try {
    writeAll(file, bytes);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A write may take fewer bytes than it was given, as on a disk that fills up. */
function writeAll(file: number, bytes: Uint8Array): void {
  let at = 0;
  while (at < bytes.length) at += writeSync(file, bytes, at);
}

/** DIR was found absent, empty or whole before; what it holds now is looked at again by nobody, since the lock is ours. */
function swap({ parent, folder, fresh, old }: PackageTarget, step: Step): void {
  if (inspectPackage(fresh).kind !== "whole") throw new Error(`${fresh} is not the package that was written`);
  if (moveAway(folder, old)) step("rename DIR to .DIR.old");
  renameSync(fresh, folder);
  step("rename .DIR.new to DIR");
  syncFolder(parent);
  remove(old, step);
}

function moveAway(folder: string, old: string): boolean {
  try {
    renameSync(folder, old);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return false;
    throw error;
  }
}

/** Flushes a folder's own entries. Windows has no such thing and refuses to open it. */
function syncFolder(folder: string): void {
  if (process.platform === "win32") return;
  const file = openSync(folder, "r");
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

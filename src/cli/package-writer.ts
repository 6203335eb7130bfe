/**
 * Writes a package whole or not at all. Everything goes to .DIR.new-TOKEN and is flushed to the disk; then DIR becomes
 * .DIR.old and .DIR.new-TOKEN becomes DIR. A kill at any moment leaves a whole package, old or new, in DIR or in .DIR.old.
 */
import { closeSync, fsync, fsyncSync, mkdirSync, openSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Disk } from "./disk.js";
import { diskWith, freePath, isThere, syncFile } from "./disk.js";
import { attempt, findFault, removeIfPossible } from "./file-system.js";
import { assertWhole } from "./package-contents.js";
import { UNFINISHED } from "./package-repair.js";
import type { Settlement } from "./package-settle.js";
import { settleOld } from "./package-settle.js";
import type { PackageTarget } from "./package-target.js";
import { displacedPackage, packageWarning, unsettledPackage, unwrittenPackage } from "./package-target.js";

/** Takes the files of a package one by one. Once the system has refused something, nothing more is written. */
export interface PackageWriter {
  /** True once the system has refused: what else would be added is in vain, and `finish` says why. */
  readonly isStopped: boolean;
  /** A file of its own. Folders are made as needed. */
  add(path: string, bytes: Uint8Array): void;
  /** More bytes for a file that is written in parts. */
  append(path: string, bytes: Uint8Array): void;
}

/** A writer, and what ends it. */
export interface StartedPackage extends PackageWriter {
  /** Resolves when the files that were added are flushed as far as they are by themselves: waiting for it is quicker than `flush`. */
  flushed(): Promise<void>;
  /** Flushes all that was added. */
  flush(): void;
  /**
   * Puts the package in place, and settles the one that was there: null where there was none. Or says why not, and removes what
   * was written. Once the package is in place, what goes wrong is a warning.
   */
  finish(choice: { readonly replace: boolean }): Outcome<Settlement | null>;
  /** Gives up: removes what was written so far. */
  discard(): void;
}

/** Starts a package in .DIR.new-TOKEN; its parent folder must be there. */
export function startPackage(target: PackageTarget, disk: Disk = diskWith()): Outcome<StartedPackage> {
  return attempt(() => {
    disk.step(`make ${target.fresh}`);
    mkdirSync(target.fresh);
    const files = new FreshFiles(target.fresh);
    disk.step("write the mark");
    files.add(UNFINISHED, new Uint8Array());
    return { ok: true, value: writerFor(target, files, disk), findings: [] };
  }, unwrittenPackage(target));
}

function writerFor(target: PackageTarget, files: FreshFiles, disk: Disk): StartedPackage {
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
  const refuse = (why: Finding): Outcome<never> => {
    discard();
    return { ok: false, findings: [why] };
  };
  return {
    get isStopped() {
      return fault !== null;
    },
    add: (path, bytes) =>
      goOn(() => {
        disk.step(`write ${path}`);
        files.add(path, bytes);
      }),
    append: (path, bytes) => goOn(() => files.append(path, bytes)),
    flushed: () => files.flushed(),
    flush: () => goOn(() => files.flush(disk)),
    finish: ({ replace }) => {
      goOn(() => {
        files.flush(disk);
        disk.removeFile(join(target.fresh, UNFINISHED));
        disk.syncFolder(target.fresh);
        assertWhole(target.fresh);
      });
      if (fault !== null) return refuse(fault);
      const notSwapped = swap(target, disk);
      return notSwapped === null ? settle(target, { replace }, disk) : refuse(notSwapped);
    },
    discard,
  };
}

/**
 * Adds a file to the package in DIR: written and flushed in .DIR.new-TOKEN, then put in its place by one rename. A kill leaves
 * the package as it was, and a folder that the next make removes.
 */
export function addFile(
  target: PackageTarget,
  path: string,
  bytes: Uint8Array,
  disk: Disk = diskWith(),
): Outcome<string> {
  const files = new FreshFiles(target.fresh);
  const added = attempt(() => {
    disk.step(`make ${target.fresh}`);
    mkdirSync(target.fresh);
    files.add(UNFINISHED, new Uint8Array());
    disk.step(`write ${path}`);
    files.add(ADDED, bytes);
    files.flush(disk);
    const folder = dirname(join(target.folder, path));
    disk.makeFolder(folder);
    const free = freePath(target.folder, path);
    disk.rename(join(target.fresh, ADDED), join(target.folder, free));
    disk.syncFolder(folder);
    disk.syncFolder(dirname(folder));
    return { ok: true, value: free, findings: [] };
  }, unwrittenPackage(target));
  removeIfPossible(target.fresh);
  return added;
}

/** Name of the file to be added, until it is in its place. */
const ADDED = "added";

/** DIR was found absent, empty or a package before; where the second rename fails, the first is taken back. */
function swap(target: PackageTarget, disk: Disk): Finding | null {
  const { folder, fresh, old } = target;
  const isReplaced = isThere(folder);
  const moved = findFault(() => {
    if (isReplaced) disk.rename(folder, old);
    return null;
  }, unwrittenPackage(target));
  if (moved !== null) return moved;
  const placed = findFault(() => {
    disk.rename(fresh, folder);
    return null;
  }, unwrittenPackage(target));
  if (placed === null || !isReplaced) return placed;
  const back = findFault(() => {
    disk.rename(old, folder);
    return null;
  }, displacedPackage(target));
  return back ?? placed;
}

/** The package is in DIR: whatever the system refuses from here on is put right by the next run. */
function settle(target: PackageTarget, choice: { readonly replace: boolean }, disk: Disk): Outcome<Settlement | null> {
  const settled = attempt(() => {
    disk.syncFolder(target.parent);
    return { ok: true, value: settleOld(target, choice, disk), findings: [] };
  }, unsettledPackage(target));
  if (!settled.ok) return { ok: true, value: null, findings: settled.findings };
  const left = settled.value?.left ?? null;
  const told =
    left === null ? [] : [packageWarning(target, `${left} holds what is not of the earlier package: left there`)];
  return { ...settled, findings: told };
}

/** The files of a package that is being written, and the folders made for them. */
class FreshFiles {
  readonly #fresh: string;
  readonly #folders: Set<string>;
  /** By path, files that were written whole and are being flushed. */
  readonly #flushing = new Map<string, Promise<void>>();
  /** What the system said to the first of them that it refused. */
  #refusal: Error | null = null;
  /** Open files that are written in parts. */
  readonly #growing = new Map<string, number>();

  constructor(fresh: string) {
    this.#fresh = fresh;
    this.#folders = new Set([fresh]);
  }

  /** Written; flushed by another thread while the next files are made, since a flush takes longer than making a file. */
  add(path: string, bytes: Uint8Array): void {
    const file = this.#open(path);
    try {
      writeAll(file, bytes);
    } catch (error) {
      closeSync(file);
      throw error;
    }
    if (this.#flushing.size >= MOST_FLUSHING) syncAndClose(file);
    else this.#startFlushing(join(this.#fresh, path), file);
  }

  /** Resolves when no file is being flushed any more. */
  async flushed(): Promise<void> {
    await Promise.all(this.#flushing.values());
  }

  #startFlushing(path: string, file: number): void {
    const done = new Promise<void>((resolve) => {
      fsync(file, (error) => {
        this.#flushing.delete(path);
        this.#refusal ??= error;
        closeSync(file);
        resolve();
      });
    });
    this.#flushing.set(path, done);
  }

  append(path: string, bytes: Uint8Array): void {
    const file = this.#growing.get(path) ?? this.#open(path);
    this.#growing.set(path, file);
    writeAll(file, bytes);
  }

  /** Everything to the disk, the entries of the folders last. */
  flush(disk: Disk): void {
    disk.step("flush the files");
    for (const file of this.#growing.values()) fsyncSync(file);
    this.close();
    if (this.#refusal !== null) throw this.#refusal;
    for (const path of this.#flushing.keys()) syncFile(path);
    for (const folder of this.#folders) disk.syncFolder(folder);
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

/** So many files are open at a time to be flushed; what comes beyond is flushed at once. */
const MOST_FLUSHING = 64;

function syncAndClose(file: number): void {
  try {
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

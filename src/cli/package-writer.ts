/**
 * Writes a package whole or not at all. Everything goes to .DIR.new-TOKEN and is flushed to the disk; then DIR becomes
 * .DIR.old and .DIR.new-TOKEN becomes DIR. A kill at any moment leaves a whole package, old or new, in DIR or in .DIR.old.
 */
import { closeSync, fsyncSync, mkdirSync, openSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Disk } from "./disk.js";
import { diskWith, isThere, syncFile } from "./disk.js";
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
  /** Paths of files that were written whole, and are not flushed yet. */
  readonly #whole: string[] = [];
  /** Open files that are written in parts. */
  readonly #growing = new Map<string, number>();

  constructor(fresh: string) {
    this.#fresh = fresh;
    this.#folders = new Set([fresh]);
  }

  /** Written, and flushed with all others: one flush after another while files are made would cost a third of a large package's time. */
  add(path: string, bytes: Uint8Array): void {
    const file = this.#open(path);
    try {
      writeAll(file, bytes);
    } finally {
      closeSync(file);
    }
    this.#whole.push(join(this.#fresh, path));
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
    for (const file of this.#whole.splice(0)) syncFile(file);
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

/** A write may take fewer bytes than it was given, as on a disk that fills up. */
function writeAll(file: number, bytes: Uint8Array): void {
  let at = 0;
  while (at < bytes.length) at += writeSync(file, bytes, at);
}

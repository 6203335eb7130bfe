/**
 * Writes a package whole or not at all. Everything goes to .DIR.new and is flushed to the disk; then DIR becomes .DIR.old
 * and .DIR.new becomes DIR. A kill at any moment leaves a whole package, old or new, in DIR or in .DIR.old.
 */
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmdirSync, rmSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Inspection, PackageTarget } from "./package-target.js";
import { inspectPackage, PackageFault } from "./package-target.js";

/** Called after each change on the disk, with what was done: the tests stop here as a kill would. */
export type Step = (what: string) => void;
const noStep: Step = () => {};

export interface PackageWriter {
  /** A file of its own. Folders are made as needed. */
  add(path: string, bytes: Uint8Array): void;
  /** More bytes for a file that is written in parts. */
  append(path: string, bytes: Uint8Array): void;
  /** Flushes and puts the package in place. */
  finish(): void;
  /** Gives up: removes what was written so far. */
  discard(): void;
}

/**
 * Puts right what a killed run left behind, and makes sure that DIR may be replaced. Throws PackageFault, with nothing
 * touched, when DIR or .DIR.old is not a package of this program.
 */
export function repairPackage(target: PackageTarget, step: Step = noStep): void {
  const { folder, fresh, old } = target;
  const now = inspectPackage(folder);
  if (now.kind === "foreign") throw new PackageFault(`${folder} is not replaced: ${now.offence}`);
  if (now.kind !== "whole") restoreOld(target, now, step);
  remove(old, step);
  remove(fresh, step);
}

/** DIR is absent or empty: an earlier package in .DIR.old comes back. */
function restoreOld({ folder, fresh, old }: PackageTarget, now: Inspection, step: Step): void {
  const earlier = inspectPackage(old);
  switch (earlier.kind) {
    case "absent":
    case "empty":
      return;
    case "whole":
      putInPlace(old, folder, now, step);
      return;
    case "foreign":
      break;
  }
  if (inspectPackage(fresh).kind !== "whole") {
    throw new PackageFault(`${folder} cannot be put right from ${old}: ${earlier.offence}; move it away and try again`);
  }
  putInPlace(fresh, folder, now, step);
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
export function startPackage(target: PackageTarget, step: Step = noStep): PackageWriter {
  const { fresh } = target;
  rmSync(fresh, { recursive: true, force: true });
  mkdirSync(fresh);
  step("start");
  const folders = new Set<string>([fresh]);
  const growing = new Map<string, number>();
  const place = (path: string): string => {
    const file = join(fresh, path);
    const folder = dirname(file);
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    return file;
  };
  const close = (): void => {
    for (const file of growing.values()) closeSync(file);
    growing.clear();
  };
  return {
    add: (path, bytes) => {
      const file = openSync(place(path), "wx");
      writeAndSync(file, bytes);
      step(`write ${path}`);
    },
    append: (path, bytes) => {
      const file = growing.get(path) ?? openSync(place(path), "wx");
      growing.set(path, file);
      writeAll(file, bytes);
    },
    finish: () => {
      for (const file of growing.values()) fsyncSync(file);
      close();
      step("close");
      for (const folder of folders) syncFolder(folder);
      swap(target, step);
    },
    discard: () => {
      close();
      rmSync(fresh, { recursive: true, force: true });
    },
  };
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

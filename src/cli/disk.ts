/** Changes on the disk, each announced before it is made: the tests stop there as a kill or a refusing disk would. */
import {
  closeSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmdirSync,
  rmSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { numberedPath } from "../tasks/package-files.js";

/** Called before each change on the disk, with what is about to be done. */
export type Step = (what: string) => void;

/** The changes that a package is put in place by. Paths are absolute. */
export interface Disk {
  readonly step: Step;
  rename(from: string, to: string): void;
  makeFolder(path: string): void;
  removeFile(path: string): void;
  /** Only when it is empty. True when it is gone. */
  removeFolder(path: string): boolean;
  /** With all that it holds: for what this program alone has written. */
  removeAll(path: string): void;
  /** Flushes a folder's own entries. Windows has no such thing and refuses to open it. */
  syncFolder(path: string): void;
}

const noStep: Step = () => {};

/** The disk itself. */
export function diskWith(step: Step = noStep): Disk {
  return {
    step,
    rename: (from, to) => {
      step(`rename ${from} to ${to}`);
      renameSync(from, to);
    },
    makeFolder: (path) => {
      step(`make ${path}`);
      mkdirSync(path, { recursive: true });
    },
    removeFile: (path) => {
      step(`remove ${path}`);
      rmSync(path, { force: true });
    },
    removeFolder: (path) => {
      step(`remove ${path}`);
      return removeEmpty(path);
    },
    removeAll: (path) => {
      step(`remove all of ${path}`);
      rmSync(path, { recursive: true, force: true });
    },
    syncFolder: (path) => {
      if (process.platform === "win32") return;
      step(`flush ${path}`);
      syncFile(path);
    },
  };
}

function removeEmpty(path: string): boolean {
  try {
    rmdirSync(path);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT") return true;
    if (code === "ENOTEMPTY" || code === "EEXIST" || code === "ENOTDIR") return false;
    throw error;
  }
}

/** What was written to a file is on the disk when it returns. */
export function syncFile(path: string): void {
  const file = openSync(path, "r");
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Whether anything stands at a path; a link counts, wherever it leads. */
export function isThere(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

/** Names in a folder in a fixed order; none where there is no folder. */
export function namesIn(folder: string): readonly string[] {
  return lstatSync(folder, { throwIfNoEntry: false })?.isDirectory() === true ? readdirSync(folder).sort() : [];
}

/** `path` inside `folder`, with forward slashes; where something stands there already, numbered before its ending: `a_2.csv`. */
export function freePath(folder: string, path: string): string {
  return numberedPath(path, (each) => isThere(join(folder, each)));
}

/** True where nothing stands at `path` in `folder`, and no file stands in the way there. */
export function isFree(folder: string, path: string): boolean {
  for (let way = dirname(path); way !== "." && way !== "/"; way = dirname(way)) {
    const stat = lstatSync(join(folder, way), { throwIfNoEntry: false });
    if (stat !== undefined && !stat.isDirectory()) return false;
  }
  return !isThere(join(folder, path));
}

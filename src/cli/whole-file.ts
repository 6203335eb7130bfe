/** One file, written whole or not at all: beside its place first, then put there by one step. */
import { randomBytes } from "node:crypto";
import {
  chmodSync,
  closeSync,
  fsyncSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import type { Finding } from "../diagnostics/finding.js";
import type { Refusal } from "./file-system.js";
import { findFault, removeIfPossible, writtenWords } from "./file-system.js";
import { fileFault } from "./findings.js";

/** A file as the user calls it, with its path and what goes into it. */
export interface WholeFile {
  readonly name: string;
  readonly path: string;
  readonly bytes: Uint8Array;
  /** Code of a refusal. */
  readonly code: string;
}

/** Writes a file that is not there yet; null when it was written. What is there is never written over. */
export function writeNewFile(file: WholeFile): Finding | null {
  return placeWhole(file, (fresh) => {
    try {
      linkSync(fresh, file.path);
    } catch (error) {
      if (!hasCode(error, NO_LINKS)) throw error;
      writeOnce(file.path, file.bytes);
    }
    rmSync(fresh);
    return null;
  });
}

/** Writes over a file that still holds `earlier`, with its permissions; one that holds something else, or is write-protected, is left alone. */
export function replaceFile(file: WholeFile, earlier: Uint8Array): Finding | null {
  return placeWhole(file, (fresh) => {
    const { mode } = statSync(file.path);
    if ((mode & ANY_WRITE) === 0)
      return fileFault(
        file.name,
        file.code,
        "is write-protected, and was left as it is; take that off, or name another file",
      );
    if (!isSame(readFileSync(file.path), earlier))
      return fileFault(file.name, file.code, "was changed meanwhile, and was left as it is; read again");
    chmodSync(fresh, mode & PERMISSIONS);
    renameSync(fresh, file.path);
    return null;
  });
}

/** Bits of a file's mode: that anybody may write it, and who may do what. */
const [ANY_WRITE, PERMISSIONS] = [0o222, 0o777];

/** What systems say of links that their disk does not have. */
const NO_LINKS: ReadonlySet<string> = new Set(["EPERM", "ENOSYS", "ENOTSUP", "EOPNOTSUPP", "EMLINK", "EXDEV"]);

function hasCode(error: unknown, codes: ReadonlySet<string>): boolean {
  return error instanceof Error && "code" in error && typeof error.code === "string" && codes.has(error.code);
}

function placeWhole({ name, path, bytes, code }: WholeFile, put: (fresh: string) => Finding | null): Finding | null {
  const fresh = join(dirname(path), `.${basename(path)}.new-${randomBytes(8).toString("hex")}`);
  try {
    return findFault(
      () => {
        writeOnce(fresh, bytes);
        return put(fresh);
      },
      (refusal) => fileFault(name, code, refusedWords(refusal)),
    );
  } finally {
    removeIfPossible(fresh);
  }
}

function writeOnce(path: string, bytes: Uint8Array): void {
  const file = openSync(path, "wx");
  try {
    writeFileSync(file, bytes);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}

function refusedWords(refusal: Refusal): string {
  switch (refusal.code) {
    case "EEXIST":
      return "is there already; name a file that is not";
    case "ENOENT":
    case "ENOTDIR":
      return "its folder is not there";
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return "no permission to write";
    default:
      return writtenWords(refusal);
  }
}

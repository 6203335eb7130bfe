/** The boundary to the file system: what it refuses is a finding, told in words that name neither Node nor errno. */
import { closeSync, openSync, readFileSync, readSync, rmSync, statSync } from "node:fs";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { fileFault } from "./findings.js";
import { refusalWords, WORDS } from "./refusal-words.js";

/** A call that the system refused. */
export interface Refusal {
  /** The system's own code, as ENOSPC. */
  readonly code: string;
  /** What the code says, in a few words; the code itself where it is none of those known. */
  readonly words: string;
  /** The path of the call, where the system tells it. */
  readonly path: string | null;
}

/**
 * Runs what calls the file system. A refusal of the system, in the words of `tell`, is the user's to put right; any other
 * exception is a bug and goes on.
 */
export function attempt<T>(action: () => Outcome<T>, tell: (refusal: Refusal) => Finding): Outcome<T> {
  try {
    return action();
  } catch (error) {
    return { ok: false, findings: [tell(refusalOf(error))] };
  }
}

/** The same for what gives back no value: null when nothing is wrong. */
export function findFault(action: () => Finding | null, tell: (refusal: Refusal) => Finding): Finding | null {
  try {
    return action();
  } catch (error) {
    return tell(refusalOf(error));
  }
}

/** Throws again what is no refusal. Two of Node's own codes come from no call, but from a file or a name that is at fault. */
function refusalOf(error: unknown): Refusal {
  if (!(error instanceof Error)) throw error;
  const { code, path, syscall }: NodeJS.ErrnoException = error;
  if (code === undefined || (syscall === undefined && WORDS[code] === undefined)) throw error;
  return { code, words: refusalWords(error), path: path ?? null };
}

/** What to say of a file or folder that could not be written, and which path the system names. */
export function writtenWords({ words, path }: Refusal): string {
  return `could not be written: ${words}${path === null ? "" : ` (${path})`}`;
}

/** Runs what reads the file, or the folder, that the user calls `name`; it must be there. */
export function attemptReading<T>(action: () => T, name: string): Outcome<T> {
  return attempt(
    () => ({ ok: true, value: action(), findings: [] }),
    ({ code, words }) =>
      code === "ENOENT"
        ? fileFault(name, "missing-file", "there is no such file")
        : fileFault(name, "unreadable-file", `cannot be read: ${words}`),
  );
}

/** The largest file that is opened, in bytes; readers of their own formats may refuse smaller ones. */
const LARGEST_FILE = 32_000_000;

/** The bytes of a file that must be there; `name` as the user calls it. Pipes, devices and what is too large are not opened. */
export function readBytes(path: string, name: string): Outcome<Uint8Array> {
  const stat = attemptReading(() => statSync(path), name);
  if (!stat.ok) return stat;
  const refusal = stat.value.isDirectory() ? null : refuseStat(stat.value.isFile(), stat.value.size);
  if (refusal !== null) return { ok: false, findings: [fileFault(name, refusal.code, refusal.message)] };
  return attemptReading(() => readFileSync(path), name);
}

/** Why a file is not opened, by what the system says of it. */
function refuseStat(isFile: boolean, size: number): { readonly code: string; readonly message: string } | null {
  if (!isFile) {
    return {
      code: "unreadable-file",
      message: "cannot be read: it is a pipe or a device; allowed is a file on a disk",
    };
  }
  if (size <= LARGEST_FILE) return null;
  const megabytes = (bytes: number) => `${Math.ceil(bytes / 1_000_000)} MB`;
  return {
    code: "file-too-large",
    message: `the file has ${megabytes(size)}; at most ${megabytes(LARGEST_FILE)} are read`,
  };
}

/** The same; null where there is no such file. */
export function readBytesIfThere(path: string, name: string): Outcome<Uint8Array | null> {
  const read = readBytes(path, name);
  const isMissing = !read.ok && read.findings.every(({ code }) => code === "missing-file");
  return isMissing ? { ok: true, value: null, findings: [] } : read;
}

/** Removes what was begun, as far as the system lets: what went wrong before is what is told. */
export function removeIfPossible(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true });
  } catch (error) {
    refusalOf(error);
  }
}

const CHUNK = 1 << 20;

/** A file piece by piece; each chunk is valid until the next one is asked for. */
export function* chunksOf(path: string): Generator<Uint8Array> {
  const file = openSync(path, "r");
  try {
    const buffer = new Uint8Array(CHUNK);
    for (let size = readSync(file, buffer); size > 0; size = readSync(file, buffer)) yield buffer.subarray(0, size);
  } finally {
    closeSync(file);
  }
}

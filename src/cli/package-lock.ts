/** One `make` at a time into one DIR: a lock file beside it that names the process holding it. */
import { closeSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";
import { basename } from "node:path";
import type { Outcome } from "../diagnostics/finding.js";
import { attempt, removeIfPossible } from "./file-system.js";
import type { PackageTarget } from "./package-target.js";
import { packageFault, unwrittenPackage } from "./package-target.js";

interface Holder {
  readonly pid: number;
  /** When the process started, in the kernel's count since boot; "" where the system does not tell. */
  readonly started: string;
}

/** Gives the lock back, as the end of the process does. */
export type Unlock = () => void;

/** Takes the lock, also from a process that is no longer there. */
export function lockTarget(target: PackageTarget): Outcome<Unlock> {
  return attempt(() => {
    const other = takeLock(target.lock);
    if (other === null) return { ok: true, value: holdLock(target.lock), findings: [] };
    return { ok: false, findings: [packageFault(target.name, wordsOf(other, target))] };
  }, unwrittenPackage(target));
}

function wordsOf(other: Holder | "unknown", { folder, lock }: PackageTarget): string {
  const name = basename(folder);
  if (other === "unknown") return `another make has just begun to write ${name}`;
  return `another make (process ${other.pid}) is writing ${name}; if not, remove ${lock}`;
}

/** null when the lock is ours, else who holds it: unknown when it was taken at this moment. */
function takeLock(lock: string): Holder | "unknown" | null {
  const mine: Holder = { pid: process.pid, started: startOf(process.pid) };
  if (create(lock, mine)) return null;
  const holder = readHolder(lock) ?? readHolderAgain(lock);
  if (holder !== null && isRunning(holder)) return holder;
  rmSync(lock, { force: true });
  return create(lock, mine) ? null : "unknown";
}

function holdLock(lock: string): Unlock {
  const giveBack = (): void => {
    removeIfPossible(lock);
    process.off("exit", giveBack);
  };
  process.on("exit", giveBack);
  return giveBack;
}

function create(lock: string, holder: Holder): boolean {
  try {
    const file = openSync(lock, "wx");
    writeSync(file, JSON.stringify(holder));
    closeSync(file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}

/** The holder named in the lock file; null when it was killed before it could write its name. */
function readHolder(lock: string): Holder | null {
  try {
    const holder: unknown = JSON.parse(readFileSync(lock, "utf8"));
    return isHolder(holder) ? holder : null;
  } catch {
    return null;
  }
}

/** A lock file without a name may be one that is just being written. */
function readHolderAgain(lock: string): Holder | null {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
  return readHolder(lock);
}

function isHolder(value: unknown): value is Holder {
  if (typeof value !== "object" || value === null) return false;
  const { pid, started } = value as Partial<Record<string, unknown>>;
  return typeof pid === "number" && Number.isSafeInteger(pid) && pid > 0 && typeof started === "string";
}

/** A process number is used again after a while (in a container at once): the start time tells two apart. */
function isRunning({ pid, started }: Holder): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ESRCH") return false;
  }
  const now = startOf(pid);
  return now === "" || started === "" || now === started;
}

/** Field 22 of /proc/PID/stat (proc(5)): the name in field 2 may hold spaces, so count from its closing bracket. */
function startOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? "";
  } catch {
    return "";
  }
}

/** One `make` at a time into one DIR: a lock file beside it that names the process holding it. */
import { closeSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";
import { basename } from "node:path";
import type { PackageTarget } from "./package-target.js";
import { PackageFault } from "./package-target.js";

interface Holder {
  readonly pid: number;
  /** When the process started, in the kernel's count since boot; "" where the system does not tell. */
  readonly started: string;
}

/** Takes the lock, also from a process that is no longer there. Returns the function that gives it back, as the end of the process does. */
export function lockTarget({ lock, folder }: PackageTarget): () => void {
  const mine: Holder = { pid: process.pid, started: startOf(process.pid) };
  if (!create(lock, mine)) {
    const holder = readHolder(lock) ?? readHolderAgain(lock);
    if (holder !== null && isRunning(holder)) {
      const name = basename(folder);
      throw new PackageFault(`another make (process ${holder.pid}) is writing ${name}; if not, remove ${lock}`);
    }
    rmSync(lock, { force: true });
    if (!create(lock, mine)) throw new PackageFault(`another make has just begun to write ${basename(folder)}`);
  }
  const giveBack = (): void => {
    rmSync(lock, { force: true });
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

/** One `make` at a time into one DIR: a lock file beside it that names the process holding it. */
import {
  closeSync,
  linkSync,
  lstatSync,
  openSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmSync,
  writeSync,
} from "node:fs";
import { hostname } from "node:os";
import { basename } from "node:path";
import type { Outcome } from "../diagnostics/finding.js";
import { attempt, removeIfPossible } from "./file-system.js";
import type { PackageTarget } from "./package-target.js";
import { packageFault, unwrittenPackage } from "./package-target.js";

/** Who holds a lock; "" for what its file does not say. */
interface Holder {
  readonly host: string;
  /** The space in which process numbers count: two containers of one machine have each their own. */
  readonly space: string;
  readonly pid: number;
  /** When the process started, in the kernel's count since boot; "" where the system does not tell. */
  readonly started: string;
  /** Of the run: a process number may be the same in the next one. */
  readonly token: string;
}

/** A lock that is held. */
export interface Lock {
  /** Whether the lock file still names this run: nobody has removed it or taken it over. */
  isOurs(): boolean;
  /** Removes the lock file if it is still ours, as the end of the process does. */
  giveBack(): void;
}

/** Takes the lock, also from a process of this machine that is no longer there. */
export function lockTarget(target: PackageTarget): Outcome<Lock> {
  return attempt(() => {
    if (isForeign(target.lock)) return { ok: false, findings: [packageFault(target.name, foreignWords(target))] };
    const other = takeLock(target);
    if (other === null) return { ok: true, value: holdLock(target), findings: [] };
    return { ok: false, findings: [packageFault(target.name, wordsOf(other, target))] };
  }, unwrittenPackage(target));
}

function foreignWords({ folder, lock }: PackageTarget): string {
  return `${folder} is written under a lock beside it, and ${lock} is in the way, and is no lock of ours; move it away and try again`;
}

type Judgement = "dead" | "running" | "other host" | "other space";

interface Refused {
  readonly holder: Holder | null;
  readonly judgement: Judgement;
}

function wordsOf({ holder, judgement }: Refused, { folder, lock }: PackageTarget): string {
  const name = basename(folder);
  if (holder === null) return `another make or sign has just begun to write ${name}; try again`;
  const process = `another make or sign (process ${holder.pid}`;
  const remove = `if it is not running any more, remove ${lock}`;
  switch (judgement) {
    case "other host":
      return `${process} on ${holder.host}) is writing ${name}; look there, and ${remove}`;
    case "other space":
      return `${process} in another container of this machine) is writing ${name}; look there, and ${remove}`;
    case "running":
    case "dead":
      return `${process}) is writing ${name}; ${remove}`;
  }
}

/** null when the lock is ours, else who holds it: null when it was taken at this moment. */
function takeLock(target: PackageTarget): Refused | null {
  const mine = ownHolder(target);
  if (create(target.lock, mine)) return null;
  const holder = readHolder(target.lock) ?? readHolderAgain(target.lock);
  const judgement = holder === null ? "dead" : judge(holder, mine);
  if (judgement !== "dead") return { holder, judgement };
  takeAway(target, holder);
  return create(target.lock, mine) ? null : { holder: readHolder(target.lock), judgement: "running" };
}

/**
 * Renames a lock that was found dead out of the way: only one of several runs succeeds with that file. If another run has
 * put its own lock there since, that one is put back.
 */
function takeAway({ lock, token }: PackageTarget, dead: Holder | null): void {
  const aside = `${lock}-${token}`;
  try {
    renameSync(lock, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return;
    throw error;
  }
  const taken = readHolder(aside);
  if (JSON.stringify(taken) !== JSON.stringify(dead)) putBack(aside, lock);
  rmSync(aside, { force: true });
}

/** By a link, which takes no place that is taken; where a file system has none, by a rename. */
function putBack(aside: string, lock: string): void {
  try {
    linkSync(aside, lock);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") renameSync(aside, lock);
  }
}

function holdLock({ lock, token }: PackageTarget): Lock {
  const isOurs = (): boolean => readHolder(lock)?.token === token;
  const giveBack = (): void => {
    if (isOurs()) removeIfPossible(lock);
    process.off("exit", giveBack);
  };
  process.on("exit", giveBack);
  return { isOurs, giveBack };
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

/** Bytes of a lock file at most: names of hosts and spaces are short. */
const LARGEST_LOCK = 4096;

/** How a lock file begins: a run that was killed in writing it may leave less. */
const LOCK_START = '{"host":';

/** True where something stands that no run has put there as its lock. */
export function isForeign(lock: string): boolean {
  if (lstatSync(lock, { throwIfNoEntry: false }) === undefined) return false;
  const text = readLock(lock);
  return text === null || !(LOCK_START.startsWith(text.slice(0, LOCK_START.length)) || holdsNumber(text));
}

/** null where there is no file that could be a lock: links, pipes, folders and large files are not opened. */
function readLock(lock: string): string | null {
  const stat = lstatSync(lock, { throwIfNoEntry: false });
  return stat?.isFile() === true && stat.size <= LARGEST_LOCK ? readFileSync(lock, "utf8") : null;
}

function holdsNumber(text: string): boolean {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null && Object.hasOwn(value, "pid");
  } catch {
    return false;
  }
}

/** The holder named in the lock file; null when it was killed before it could write its name. */
function readHolder(lock: string): Holder | null {
  try {
    return holderOf(JSON.parse(readLock(lock) ?? ""));
  } catch {
    return null;
  }
}

/** A lock file without a name may be one that is just being written. */
function readHolderAgain(lock: string): Holder | null {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
  return readHolder(lock);
}

function holderOf(value: unknown): Holder | null {
  if (typeof value !== "object" || value === null) return null;
  const { host, space, pid, started, token } = value as Partial<Record<string, unknown>>;
  if (typeof pid !== "number" || !Number.isSafeInteger(pid) || pid <= 0) return null;
  const text = (each: unknown): string => (typeof each === "string" ? each : "");
  return { host: text(host), space: text(space), pid, started: text(started), token: text(token) };
}

function ownHolder({ token }: PackageTarget): Holder {
  return { host: hostname(), space: ownSpace(), pid: process.pid, started: startOf(process.pid), token };
}

/** Only of a process that counts in our own space can be told whether it is there. Our own number is ours, whatever the token. */
function judge(holder: Holder, mine: Holder): Judgement {
  if (holder.host !== "" && holder.host !== mine.host) return "other host";
  if (holder.space !== "" && mine.space !== "" && holder.space !== mine.space) return "other space";
  return holder.pid !== mine.pid && isRunning(holder) ? "running" : "dead";
}

/** A process number is used again after a while: the start time tells two apart. */
function isRunning({ pid, started }: Holder): boolean {
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

/** The process-number space as pid_namespaces(7) names it; "" where the system has none. */
function ownSpace(): string {
  try {
    return readlinkSync("/proc/self/ns/pid");
  } catch {
    return "";
  }
}

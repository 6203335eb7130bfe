/** DIR and the names beside it. */
import { randomBytes } from "node:crypto";
import { realpathSync } from "node:fs";
import { basename, dirname, join, parse, relative, resolve, sep } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { Refusal } from "./file-system.js";
import { writtenWords } from "./file-system.js";
import { fileFault } from "./findings.js";

/** Where a package goes: all five lie in one folder, so that renames are atomic. */
export interface PackageTarget {
  /** DIR as the user wrote it, for findings. */
  readonly name: string;
  readonly parent: string;
  /** DIR itself. */
  readonly folder: string;
  /** Random, of this run alone, in hexadecimal. */
  readonly token: string;
  /** `.DIR.new-TOKEN`: the package being written. */
  readonly fresh: string;
  /** `.DIR.old`: the package being replaced. */
  readonly old: string;
  /** `.DIR.erase-TOKEN`: a replaced package whose files are being removed. */
  readonly erased: string;
  /** `.DIR.lock`: says which process is writing. */
  readonly lock: string;
}

/** Why a package cannot be written into the folder that the user calls `name`; what stands there is untouched. */
export function packageFault(name: string, message: string): Finding {
  return fileFault(name, "package-folder", message);
}

/** The same, for what the system refused. */
export function unwrittenPackage({ name }: PackageTarget): (refusal: Refusal) => Finding {
  return (refusal) => packageFault(name, `the package ${writtenWords(refusal)}`);
}

const TOKEN_BYTES = 12;

/** Whether a name beside DIR is one that a single run uses, and what for; null for any other name. */
export function runNameKind(name: string, { folder }: PackageTarget): "new" | "erase" | "lock" | null {
  const start = `.${basename(folder)}.`;
  if (!name.startsWith(start)) return null;
  const [, kind] = /^(new|erase|lock)-[0-9a-f]{24}$/.exec(name.slice(start.length)) ?? [];
  return kind === "new" || kind === "erase" || kind === "lock" ? kind : null;
}

/** The package is not in DIR, and the earlier one is not back in it: the only fault after which DIR is not as it was. */
export function displacedPackage({ name, folder, old }: PackageTarget): (refusal: Refusal) => Finding {
  return ({ words }) => {
    const where = `the earlier package is whole in ${old}; the next make puts it back, or rename it to ${folder}`;
    return fileFault(
      name,
      DISPLACED,
      `the package could not be put in place, nor the earlier one back: ${words}; ${where}`,
    );
  };
}

/** Code of the finding after which DIR is not as it was. */
export const DISPLACED = "package-displaced";

/** The package is in DIR, and what it replaced could not be settled. */
export function unsettledPackage(target: PackageTarget): (refusal: Refusal) => Finding {
  return ({ words, path }) => {
    const where = path === null ? "" : ` (${path})`;
    return packageWarning(
      target,
      `the package is written; what it replaced is not cleared away yet: ${words}${where}; ${NEXT}`,
    );
  };
}

const NEXT = "the next make goes on with it";

/** What is to be known of a folder whose package is in place. */
export function packageWarning({ name }: Pick<PackageTarget, "name">, message: string): Finding {
  return { ...fileFault(name, "package-folder", message), severity: "warning" };
}

/** The names for DIR in one run. Refuses what cannot be renamed: the root, and a folder that holds the current one. */
export function targetOf(name: string, currentFolder: string): Outcome<PackageTarget> {
  const folder = resolve(currentFolder, name);
  const offence = offenceOf(name, folder, currentFolder);
  if (offence !== null) return { ok: false, findings: [packageFault(name, offence)] };
  const parent = dirname(folder);
  const beside = (end: string): string => join(parent, `.${basename(folder)}.${end}`);
  const token = randomBytes(TOKEN_BYTES).toString("hex");
  const value: PackageTarget = {
    ...{ name, parent, folder, token, old: beside("old"), lock: beside("lock") },
    ...{ fresh: beside(`new-${token}`), erased: beside(`erase-${token}`) },
  };
  return { ok: true, value, findings: [] };
}

function offenceOf(name: string, folder: string, currentFolder: string): string | null {
  if (name.trim() === "") return "the name of the package folder is empty";
  if (folder === parse(folder).root) return `${name} is the root of the file system`;
  if (!holds(physical(folder), currentFolder)) return null;
  return `${name} holds the folder you are in; a package is replaced by renames, so name another one`;
}

function physical(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function holds(folder: string, inner: string): boolean {
  const way = relative(folder, inner);
  return way === "" || !(way === ".." || way.startsWith(`..${sep}`) || parse(way).root !== "");
}

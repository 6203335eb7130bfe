/** DIR and the names beside it, and what stands there now. */
import { lstatSync, readdirSync, realpathSync } from "node:fs";
import { basename, dirname, join, parse, relative, resolve, sep } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { summaryPath } from "../outputs/index.js";
import type { Refusal } from "./file-system.js";
import { chunksOf, writtenWords } from "./file-system.js";
import { fileFault } from "./findings.js";
import type { ListedFile } from "./listed-file.js";
import { findDamage } from "./listed-file.js";
import { scanListedFiles } from "./summary-scan.js";

/** Where a package goes: all four lie in one folder, so that renames are atomic. */
export interface PackageTarget {
  /** DIR as the user wrote it, for findings. */
  readonly name: string;
  readonly parent: string;
  /** DIR itself. */
  readonly folder: string;
  /** `.DIR.new`: the package being written. */
  readonly fresh: string;
  /** `.DIR.old`: the package being replaced. */
  readonly old: string;
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

/** The names for DIR. Refuses what cannot be renamed: the root, and a folder that holds the current one. */
export function targetOf(name: string, currentFolder: string): Outcome<PackageTarget> {
  const folder = resolve(currentFolder, name);
  const offence = offenceOf(name, folder, currentFolder);
  if (offence !== null) return { ok: false, findings: [packageFault(name, offence)] };
  const parent = dirname(folder);
  const beside = (end: string): string => join(parent, `.${basename(folder)}.${end}`);
  const value = { name, parent, folder, fresh: beside("new"), old: beside("old"), lock: beside("lock") };
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

/** What stands at a path: nothing, an empty folder, a whole package, or something else, with the first thing that is wrong. */
export type Inspection =
  | { readonly kind: "absent" | "empty" | "whole" }
  | { readonly kind: "foreign"; readonly offence: string };

/** Name of the summary in a package. */
export const SUMMARY = summaryPath;

const foreign = (offence: string): Inspection => ({ kind: "foreign", offence });

/** Looks at every file: a whole package holds exactly the files its summary lists, each with its size and hash. */
export function inspectPackage(folder: string): Inspection {
  const stat = lstatSync(folder, { throwIfNoEntry: false });
  if (stat === undefined) return { kind: "absent" };
  if (stat.isSymbolicLink()) return foreign("it is a symbolic link; name the folder itself");
  if (!stat.isDirectory()) return foreign("it is not a folder");
  const found = walk(folder, "");
  if (found.length === 0) return { kind: "empty" };
  if (!found.some(({ path, kind }) => path === SUMMARY && kind === "file")) {
    return foreign(`it holds ${found[0]?.path} and no ${SUMMARY}: it is not an earlier package`);
  }
  const listed = scanListedFiles(chunksOf(join(folder, SUMMARY)));
  if (listed === null) return foreign(`its ${SUMMARY} is not the summary of a package`);
  const offence = firstOffence(folder, found, listed);
  return offence === null ? { kind: "whole" } : foreign(offence);
}

interface Entry {
  readonly path: string;
  readonly kind: "file" | "folder" | "other";
}

/** Every entry below a folder, by path with forward slashes, in a fixed order. Links are not followed. */
function walk(folder: string, prefix: string): Entry[] {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry): Entry[] => {
    const path = `${prefix}${entry.name}`;
    if (entry.isFile()) return [{ path, kind: "file" }];
    if (!entry.isDirectory()) return [{ path, kind: "other" }];
    return [{ path, kind: "folder" }, ...walk(join(folder, entry.name), `${path}/`)];
  });
}

function firstOffence(folder: string, found: readonly Entry[], listed: readonly ListedFile[]): string | null {
  const files = new Map(listed.map((file) => [file.path, file]));
  const folders = new Set(listed.flatMap(({ path }) => foldersOf(path)));
  for (const { path, kind } of found) {
    const known = kind === "folder" ? folders.has(path) : kind === "file" && (files.has(path) || path === SUMMARY);
    if (!known) return `it holds ${path}, which its ${SUMMARY} does not list`;
  }
  const present = new Set(found.map(({ path }) => path));
  const absent = listed.find(({ path }) => !present.has(path));
  if (absent !== undefined) return `${absent.path} is missing, though its ${SUMMARY} lists it`;
  const changed = listed.find((file) => findDamage(folder, file) !== null);
  return changed === undefined ? null : `${changed.path} was changed after it was written`;
}

function foldersOf(path: string): string[] {
  const names = path.split("/").slice(0, -1);
  return names.map((_, index) => names.slice(0, index + 1).join("/"));
}

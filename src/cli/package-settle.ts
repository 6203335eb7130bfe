/**
 * What becomes of a package that another one has replaced: it stands in .DIR.old, and goes from there into DIR or is erased.
 * Every step is a rename or removes a file that is ours byte for byte, and may be the last one of a run: the next run goes on.
 */
import { dirname, join } from "node:path";
import { compareSides, countRecuts, countRemade } from "../compare/index.js";
import { roleOf, SET_ASIDE, SIGNED, SUPERSEDED, safeForFileName } from "../outputs/index.js";
import type { Disk } from "./disk.js";
import { freePath, isFree, namesIn } from "./disk.js";
import type { PackageContents } from "./package-contents.js";
import { findChanged, inspectPackage, SHELVES, SUMMARY } from "./package-contents.js";
import type { PackageTarget } from "./package-target.js";
import { readPackage } from "./read-package.js";
import type { PackageJob } from "./summary-scan.js";

/** A file or folder of a person in an earlier package; paths with forward slashes. */
export interface PersonsFile {
  readonly what: "added" | "changed";
  /** In the earlier package. */
  readonly path: string;
  /** In DIR, where it stands now. */
  readonly to: string;
  /** A template is cut or drilled by it. */
  readonly isMaking: boolean;
}

/** What became of an earlier package. */
export interface Settlement {
  readonly job: PackageJob;
  /** The folder in DIR where it is kept; null: it was erased. */
  readonly kept: string | null;
  readonly people: readonly PersonsFile[];
  /** Files that it listed and did not hold. */
  readonly missing: readonly string[];
  /** A path where something is left that could not be accounted for; null: nothing is. */
  readonly left: string | null;
}

/** True for packages of one job and one revision: the later one takes the place of the earlier one. */
function isSameRevision(a: PackageJob, b: PackageJob): boolean {
  return a.number === b.number && a.revision === b.revision;
}

/** True where a released package tells to cut or make something otherwise than the later one. Both must be readable to be compared. */
function isSuperseded(old: string, fresh: string): boolean {
  const [before, after] = [readPackage(old, old), readPackage(fresh, fresh)];
  if (!before.ok || !after.ok || before.value.side.job.status !== "released") return false;
  const comparison = compareSides(before.value.side, after.value.side);
  return countRecuts(comparison) + countRemade(comparison) > 0;
}

/**
 * Settles .DIR.old under the package that is in DIR: kept when it is of another revision, or of the same one and what was cut or
 * made by it is otherwise now, unless `replace`; else erased but for what people added or changed. null where there is none.
 */
export function settleOld(
  target: PackageTarget,
  { replace }: { readonly replace: boolean },
  disk: Disk,
): Settlement | null {
  const { old, folder } = target;
  const found = inspectPackage(old);
  if (found.kind === "empty") disk.removeFolder(old);
  if (found.kind !== "package") return null;
  const now = inspectPackage(folder);
  if (now.kind !== "package") return null;
  const { contents } = found;
  const before = keptName(contents.job, now.contents.job);
  for (const shelf of SHELVES)
    carryShelf(
      target,
      shelf,
      contents.job.number === now.contents.job.number ? "" : safeForFileName(contents.job.number),
      disk,
    );
  const changed = new Set(findChanged(old, contents));
  const isKept = !replace && (!isSameRevision(contents.job, now.contents.job) || isSuperseded(old, folder));
  if (!isKept) carrySignatures(target, contents, disk);
  const settled = isKept
    ? keep(target, contents, changed, before, disk)
    : erase(target, contents, changed, before, disk);
  disk.syncFolder(folder);
  disk.syncFolder(target.parent);
  return { job: contents.job, missing: contents.missing, ...settled };
}

/** `rev-A`; with the job's number where it is another job's. */
function keptName(old: PackageJob, now: PackageJob): string {
  const revision = `rev-${safeForFileName(old.revision)}`;
  return old.number === now.number ? revision : `${safeForFileName(old.number)}_${revision}`;
}

/** Revisions that were kept before, and files set aside before, go on into DIR; `under` tells those of another job apart. */
function carryShelf({ old, folder }: PackageTarget, shelf: string, under: string, disk: Disk): void {
  const names = namesIn(join(old, shelf));
  for (const name of names) {
    const to = freePath(folder, [shelf, under === "" ? name : `${under}_${name}`].join("/"));
    disk.makeFolder(join(folder, shelf));
    disk.rename(join(old, shelf, name), join(folder, to));
  }
  if (names.length > 0) disk.syncFolder(join(folder, shelf));
  disk.removeFolder(join(old, shelf));
}

/** Signatures of a package that is not kept go on into DIR, where each tells whether it still stands. */
function carrySignatures({ old, folder }: PackageTarget, { signatures }: PackageContents, disk: Disk): void {
  for (const path of signatures) {
    disk.makeFolder(dirname(join(folder, path)));
    disk.rename(join(old, path), join(folder, freePath(folder, path)));
  }
  if (signatures.length > 0) disk.syncFolder(join(folder, SIGNED));
}

type Settled = Pick<Settlement, "kept" | "people" | "left">;

/** The whole folder as it stands, with what people did to it. */
function keep(
  { old, folder }: PackageTarget,
  contents: PackageContents,
  changed: ReadonlySet<string>,
  name: string,
  disk: Disk,
): Settled {
  const kept = freePath(folder, `${SUPERSEDED}/${name}`);
  disk.makeFolder(join(folder, SUPERSEDED));
  disk.rename(old, join(folder, kept));
  disk.syncFolder(join(folder, SUPERSEDED));
  const people = personsFiles(contents, changed).map((file) => ({ ...file, to: `${kept}/${file.path}` }));
  return { kept, people, left: null };
}

function personsFiles({ added, listed }: PackageContents, changed: ReadonlySet<string>): Omit<PersonsFile, "to">[] {
  const isMaking = (path: string): boolean => {
    const role = roleOf(listed.get(path)?.kind ?? "");
    return role === "cut" || role === "drill";
  };
  return [
    ...[...changed].map((path) => ({ what: "changed" as const, path, isMaking: isMaking(path) })),
    ...added.map((path) => ({ what: "added" as const, path, isMaking: false })),
  ];
}

/** What people added stays where it was; what they changed, and what finds its place taken, is set aside. */
function erase(
  { old, folder, erased }: PackageTarget,
  contents: PackageContents,
  changed: ReadonlySet<string>,
  name: string,
  disk: Disk,
): Settled {
  const people = personsFiles(contents, changed).map((file): PersonsFile => {
    const stays = file.what === "added" && isFree(folder, file.path);
    const to = stays ? file.path : freePath(folder, `${SET_ASIDE}/${name}/${file.path}`);
    disk.makeFolder(dirname(join(folder, to)));
    disk.rename(join(old, file.path), join(folder, to));
    return { ...file, to };
  });
  disk.rename(old, erased);
  const ours = contents.present.filter((path) => !changed.has(path));
  return { kept: null, people, left: removeOurs(erased, contents, ours, disk) ? null : erased };
}

/** Goes on where an earlier run was stopped in erasing. True when nothing is left. */
export function eraseRest(folder: string, disk: Disk): boolean {
  const found = inspectPackage(folder);
  if (found.kind === "absent") return true;
  if (found.kind !== "package") return removeHollow(folder, disk);
  const changed = new Set(findChanged(folder, found.contents));
  return removeOurs(
    folder,
    found.contents,
    found.contents.present.filter((path) => !changed.has(path)),
    disk,
  );
}

/** The summary goes last of the files: by it the next run knows what is ours. */
function removeOurs(folder: string, { folders }: PackageContents, files: readonly string[], disk: Disk): boolean {
  for (const path of files) disk.removeFile(join(folder, path));
  const inside = [...folders].reverse().map((path) => disk.removeFolder(join(folder, path)));
  if (inside.includes(false) || namesIn(folder).some((name) => name !== SUMMARY)) return false;
  disk.removeFile(join(folder, SUMMARY));
  return disk.removeFolder(folder);
}

/** Removes folders in which there is no file. */
function removeHollow(folder: string, disk: Disk): boolean {
  for (const name of namesIn(folder)) removeHollow(join(folder, name), disk);
  return namesIn(folder).length === 0 && disk.removeFolder(folder);
}

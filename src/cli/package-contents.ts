/** What stands at a path: nothing, a package of this program with what people did to it, or something that is not ours. */
import { lstatSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { SET_ASIDE, SIGNED, SUPERSEDED, summaryPath } from "../outputs/index.js";
import { chunksOf } from "./file-system.js";
import type { ListedFile } from "./listed-file.js";
import { findDamage } from "./listed-file.js";
import { signaturePaths } from "./signature-files.js";
import type { PackageJob } from "./summary-scan.js";
import { scanListedFiles, scanPackageJob } from "./summary-scan.js";

/** Name of the summary in a package. */
export const SUMMARY = summaryPath;

/** The folders of a package that hold what earlier makes left: no summary lists them. */
export const SHELVES: readonly string[] = [SUPERSEDED, SET_ASIDE];

/** A package as it stands. Paths are inside it, with forward slashes. */
export interface PackageContents {
  readonly job: PackageJob;
  /** What its summary lists, by path. */
  readonly listed: ReadonlyMap<string, ListedFile>;
  /** Listed files that are there, changed or not; without the summary itself. */
  readonly present: readonly string[];
  /** Listed files that are not there. */
  readonly missing: readonly string[];
  /** Records of signatures. */
  readonly signatures: readonly string[];
  /** Files and folders that somebody added: the topmost that no listed file has a part in. */
  readonly added: readonly string[];
  /** Folders of listed files, outermost first. */
  readonly folders: readonly string[];
}

/** What stands at a path; `offence`: what makes it no package. */
export type Inspection<Contents = PackageContents> =
  | { readonly kind: "absent" | "empty" }
  | { readonly kind: "package"; readonly contents: Contents }
  | { readonly kind: "foreign"; readonly offence: string };

/** What names alone tell: the summary is not gone through a second time for its job. */
type FileContents = Omit<PackageContents, "job">;

const foreign = (offence: string): Inspection<never> => ({ kind: "foreign", offence });

/** Looks at names, not at bytes: `findChanged` holds those against the summary. Links are not followed. */
export function inspectPackage(folder: string): Inspection {
  const found = inspectFiles(folder);
  if (found.kind !== "package") return found;
  const job = scanPackageJob(chunksOf(join(folder, SUMMARY)));
  return { kind: "package", contents: { job, ...found.contents } };
}

function inspectFiles(folder: string): Inspection<FileContents> {
  const stat = lstatSync(folder, { throwIfNoEntry: false });
  if (stat === undefined) return { kind: "absent" };
  if (stat.isSymbolicLink()) return foreign("it is a symbolic link; name the folder itself");
  if (!stat.isDirectory()) return foreign("it is not a folder");
  const [first] = readdirSync(folder).sort();
  if (first === undefined) return { kind: "empty" };
  if (lstatSync(join(folder, SUMMARY), { throwIfNoEntry: false })?.isFile() !== true)
    return foreign(`it holds ${first} and no ${SUMMARY}: it is not an earlier package`);
  const listed = scanListedFiles(chunksOf(join(folder, SUMMARY)));
  if (listed === null) return foreign(`its ${SUMMARY} is not the summary of a package`);
  return inspectEntries(folder, listed);
}

function inspectEntries(folder: string, listed: readonly ListedFile[]): Inspection<FileContents> {
  const files = new Map(listed.map((file) => [file.path, file]));
  const known = new Set([...listed.flatMap(({ path }) => foldersOf(path)), ...foldersOf(`${SIGNED}/`)]);
  const found = walk(folder, "", known);
  const other = found.find(({ kind }) => kind === "other");
  if (other !== undefined) return foreign(`it holds ${other.path}, which is a link or no file; move it away`);
  const signatures = signaturePaths(folder);
  const isOurs = ({ path, kind }: Entry): boolean =>
    kind === "folder"
      ? known.has(path) || SHELVES.includes(path)
      : files.has(path) || path === SUMMARY || signatures.includes(path);
  const present = found.filter(({ path, kind }) => kind === "file" && files.has(path)).map(({ path }) => path);
  const there = new Set(present);
  const contents: FileContents = {
    listed: files,
    present,
    missing: [...files.keys()].filter((path) => !there.has(path)),
    signatures,
    added: found.filter((entry) => !isOurs(entry)).map(({ path }) => path),
    folders: found.filter(({ path, kind }) => kind === "folder" && known.has(path)).map(({ path }) => path),
  };
  return { kind: "package", contents };
}

/** Present files whose bytes are not those that the summary lists; reads them all. */
export function findChanged(folder: string, { listed, present }: FileContents): readonly string[] {
  return present.filter((path) => {
    const file = listed.get(path);
    return file === undefined || findDamage(folder, file) !== null;
  });
}

/** Throws where the folder is not exactly the package that was written, byte for byte. */
export function assertWhole(folder: string): void {
  const found = inspectFiles(folder);
  const isWhole =
    found.kind === "package" &&
    found.contents.added.length + found.contents.missing.length === 0 &&
    findChanged(folder, found.contents).length === 0;
  if (!isWhole) throw new Error(`${folder} is not the package that was written`);
}

interface Entry {
  readonly path: string;
  readonly kind: "file" | "folder" | "other";
}

/** Every entry, by path, in a fixed order; of folders that are not `known` not what they hold. Links are not followed. */
function walk(folder: string, prefix: string, known: ReadonlySet<string>): Entry[] {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry): Entry[] => {
    const path = `${prefix}${entry.name}`;
    if (entry.isFile()) return [{ path, kind: "file" }];
    if (!entry.isDirectory()) return [{ path, kind: "other" }];
    return [{ path, kind: "folder" }, ...(known.has(path) ? walk(join(folder, entry.name), `${path}/`, known) : [])];
  });
}

function foldersOf(path: string): string[] {
  const names = path.split("/").slice(0, -1);
  return names.map((_, index) => names.slice(0, index + 1).join("/"));
}

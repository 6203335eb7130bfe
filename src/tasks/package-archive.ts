/** A package in a ZIP archive, as files; it may lie there in a folder of its own. */
import { fileFault, type Outcome } from "../diagnostics/finding.js";
import { summaryPath } from "../outputs/index.js";
import { type Archive, type ArchiveEntry, openArchive } from "../readers/archive.js";
import { startOwnSha256 } from "./hash.js";
import type { FoundFile, PackageFiles } from "./package-files.js";
import type { PackageNames } from "./prove-package.js";

/** A package, and the archive that it is in. */
export interface PackagedArchive {
  readonly archive: Archive;
  /** The folder of the package in the archive, with a slash at its end; "" for none. */
  readonly folder: string;
  readonly files: PackageFiles;
  readonly names: PackageNames;
}

/** Opens the package in an archive; `name` is the archive's own. */
export function openPackage(bytes: Uint8Array, name: string): Outcome<PackagedArchive> {
  const opened = openArchive(bytes, name);
  if (!opened.ok) return opened;
  const archive = opened.value;
  const folder = folderOf(archive);
  if (folder === null) {
    const message = `holds no ${summaryPath}: it is not a package`;
    return { ok: false, findings: [fileFault(name, "no-package", message)] };
  }
  const names = { name, of: (path: string) => `${name}/${path}` };
  return { ok: true, value: { archive, folder, files: archiveFiles(archive, folder), names }, findings: [] };
}

/** Where the outermost summary lies; null: there is none, or two equally far out. */
function folderOf({ entries }: Archive): string | null {
  const found = entries
    .filter(({ path, kind }) => kind === "file" && (path === summaryPath || path.endsWith(`/${summaryPath}`)))
    .map(({ path }) => path.slice(0, -summaryPath.length))
    .sort((a, b) => depthOf(a) - depthOf(b));
  const [first, second] = found;
  if (first === undefined || (second !== undefined && depthOf(first) === depthOf(second))) return null;
  return first;
}

const depthOf = (folder: string): number => folder.split("/").length;

/** What systems put into archives beside the files of a person. */
const SYSTEMS_OWN = /(^|\/)(__MACOSX\/|\.DS_Store$|Thumbs\.db$|desktop\.ini$)/;

/** The files of an archive below a folder. */
function archiveFiles(archive: Archive, folder: string): PackageFiles {
  const own = archive.entries.filter(({ path }) => path.startsWith(folder) && !SYSTEMS_OWN.test(path));
  const entries = new Map(own.map((entry) => [entry.path.slice(folder.length), entry]));
  return {
    list: () => listed(entries),
    namesIn: (path) =>
      [...entries.keys()]
        .filter((each) => each.startsWith(`${path}/`) && !each.slice(path.length + 1).includes("/"))
        .map((each) => each.slice(path.length + 1))
        .sort(),
    sizeOf: (path) => {
      const entry = entries.get(path);
      if (entry === undefined) return null;
      return entry.kind === "file" ? entry.size : "no-file";
    },
    chunks: (path) => {
      const entry = entries.get(path);
      const bytes = entry === undefined ? null : archive.read(entry);
      return bytes === null ? [] : [bytes];
    },
    startSha256: startOwnSha256,
  };
}

/** A package of its own, as an earlier revision is, is one thing. */
function listed(entries: ReadonlyMap<string, ArchiveEntry>): readonly FoundFile[] {
  const inner = [...entries.keys()]
    .filter((path) => path.endsWith(`/${summaryPath}`))
    .map((path) => path.slice(0, -summaryPath.length - 1));
  const outermost = inner.filter((path) => !inner.some((other) => path.startsWith(`${other}/`)));
  const loose = [...entries].filter(([path]) => !outermost.some((folder) => path.startsWith(`${folder}/`)));
  return [
    ...loose.map(([path, { kind }]): FoundFile => ({ path, kind: kind === "file" ? "file" : "other" })),
    ...outermost.map((path): FoundFile => ({ path, kind: "package" })),
  ].sort((a, b) => (a.path < b.path ? -1 : 1));
}

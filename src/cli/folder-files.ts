/** A package in its folder, as files. Links are not followed. */
import type { Dirent } from "node:fs";
import { existsSync, lstatSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { summaryPath } from "../outputs/index.js";
import type { FoundFile, PackageFiles } from "../tasks/package-files.js";
import { MOST_ENTRIES } from "../tasks/prove-package.js";
import { chunksOf } from "./file-system.js";
import { startSha256 } from "./sha256.js";

/** The files of the package in a folder. */
export function folderFiles(folder: string): PackageFiles {
  const stat = (path: string) => lstatSync(join(folder, path), { throwIfNoEntry: false });
  return {
    list: () => walkFolder(folder),
    namesIn: (path) => (stat(path)?.isDirectory() === true ? readdirSync(join(folder, path)).sort() : []),
    sizeOf: (path) => {
      const found = stat(path);
      if (found === undefined) return null;
      return found.isFile() ? found.size : "no-file";
    },
    chunks: (path) => chunksOf(join(folder, path)),
    startSha256,
  };
}

/** Every file below a folder, in a fixed order; a package of its own is not entered. Null: too many. */
export function walkFolder(folder: string): readonly FoundFile[] | null {
  const found: FoundFile[] = [];
  const open = [""];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const entry of readdirSync(join(folder, at), { withFileTypes: true })) {
      const path = `${at}${entry.name}`;
      const kind = kindOf(entry, join(folder, path));
      if (kind === "folder") open.push(`${path}/`);
      else found.push({ path, kind });
      if (found.length + open.length > MOST_ENTRIES) return null;
    }
  }
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}

function kindOf(entry: Dirent, path: string): FoundFile["kind"] | "folder" {
  if (entry.isFile()) return "file";
  if (!entry.isDirectory()) return "other";
  return existsSync(join(path, summaryPath)) ? "package" : "folder";
}

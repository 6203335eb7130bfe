/** A folder handed to `proof`: a package, every file against its summary; or any folder, every DXF file in it. */
import { existsSync } from "node:fs";
import { join } from "node:path";
import type { Outcome } from "../diagnostics/finding.js";
import type { ProvedPackage } from "../proof/index.js";
import {
  bereftFault,
  bereftPackages,
  type FileToProve,
  isDxf,
  type LookedPackage,
  lookAtPackage as lookAtFiles,
  tooManyFiles,
} from "../tasks/prove-package.js";
import { attemptReading } from "./file-system.js";
import { fileFault } from "./findings.js";
import { folderFiles, walkFolder } from "./folder-files.js";
import { SUMMARY } from "./package-contents.js";

/** What is to be proved of a folder; a folder without a summary may hold packages. */
export interface FolderToProve {
  readonly files: readonly FileToProve[];
  readonly packages: readonly ProvedPackage[];
}

/** `name` is the folder as the user named it, for paths and findings. */
export function lookIntoFolder(folder: string, name: string): Outcome<FolderToProve> {
  const looked = attemptReading(
    () => (existsSync(join(folder, SUMMARY)) ? lookIntoPackage(folder, name) : findDxfFiles(folder, name)),
    name,
  );
  return looked.ok ? looked.value : looked;
}

const refuse = (name: string, code: string, message: string): Outcome<never> => ({
  ok: false,
  findings: [fileFault(name, code, message)],
});

function findDxfFiles(folder: string, name: string): Outcome<FolderToProve> {
  const found = walkFolder(folder);
  if (found === null) return tooManyFiles(name);
  const files = found.filter(({ path, kind }) => kind === "file" && isDxf(path));
  const within = found.filter(({ kind }) => kind === "package");
  const bereft = bereftPackages(found).map((path) => bereftFault(join(name, path)));
  if (files.length + within.length + bereft.length === 0) {
    const message = `is a folder without ${SUMMARY} and without a DXF file: name a package, or files to prove`;
    return refuse(name, "nothing-to-prove", message);
  }
  const looked = within.map(({ path }) => lookIntoPackage(join(folder, path), join(name, path)));
  const findings = [...bereft, ...looked.flatMap((each) => each.findings)];
  const known = looked.flatMap((each) => (each.ok ? [each.value] : []));
  const loose = files.map(({ path }): FileToProve => ({ path: join(name, path), listed: null }));
  const value = {
    files: [...loose, ...known.flatMap((each) => each.files)],
    packages: known.flatMap(({ packages }) => packages),
  };
  return { ok: true, value, findings };
}

function lookIntoPackage(folder: string, name: string): Outcome<FolderToProve> {
  const looked = lookAtPackage(folder, name);
  return looked.ok ? { ...looked, value: { files: looked.value.files, packages: [looked.value.proved] } } : looked;
}

/** `name` is the folder as the user named it. */
export function lookAtPackage(folder: string, name: string): Outcome<LookedPackage> {
  return lookAtFiles(folderFiles(folder), { name, of: (path) => join(name, path) });
}

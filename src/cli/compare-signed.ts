/** `compare` where OLD was signed: whether that stands for NEW, and what is to be looked at again. */
import { existsSync } from "node:fs";
import { basename, resolve } from "node:path";
import type { FoundRecord, SignatureState, SignedState } from "../signature/index.js";
import { findSignatures, readSignedState } from "../tasks/signed-state.js";
import { attemptReading } from "./file-system.js";
import { folderFiles } from "./folder-files.js";
import { SUMMARY } from "./package-contents.js";
import { lookAtPackage } from "./proof-folder.js";
import type { Shell } from "./shell.js";

/** A package that somebody signed. */
export interface SignedOld {
  readonly records: readonly FoundRecord[];
  /** Each as it stands in OLD itself. */
  readonly states: readonly SignatureState[];
}

/** null where OLD is no package, or nobody signed it. */
export function signedPackage(name: string, { currentFolder }: Shell): SignedOld | null {
  const folder = packageFolderOf(resolve(currentFolder, name));
  if (folder === null) return null;
  const looked = attemptReading(() => {
    const records = findSignatures(folderFiles(folder));
    const own = records.length === 0 ? null : lookAtPackage(folder, name);
    return own?.ok ? { records, states: own.value.proved.signatures } : null;
  }, name);
  return looked.ok ? looked.value : null;
}

function packageFolderOf(path: string): string | null {
  const folder = basename(path) === SUMMARY ? resolve(path, "..") : path;
  return existsSync(resolve(folder, SUMMARY)) ? folder : null;
}

/** null where NEW cannot be read, which is told elsewhere. */
export function packageState(name: string, { currentFolder }: Shell): SignedState | null {
  const folder = packageFolderOf(resolve(currentFolder, name));
  const read = folder === null ? null : readSignedState(folderFiles(folder), name);
  return read?.ok ? read.value.state : null;
}

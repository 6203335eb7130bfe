/** A folder of tables and sheets, written whole or not at all into a place that is absent or empty. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import type { Finding } from "../diagnostics/finding.js";
import type { Refusal } from "./file-system.js";
import { findFault, removeIfPossible, writtenWords } from "./file-system.js";
import { fileFault } from "./findings.js";

/** Bytes and the name of their file in the folder. */
export interface NamedBytes {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What forbids to write into `folder`, which the user calls `name`; `code` is that of the findings. */
export function targetFaults(folder: string, name: string, code: string): readonly Finding[] {
  const offence = findFault(
    () => {
      const isTaken = existsSync(folder) && readdirSync(folder).length > 0;
      return isTaken ? fileFault(name, code, `is not empty; ${ALLOWED}`) : null;
    },
    (refusal) => fileFault(name, code, refusal.code === "ENOTDIR" ? `is a file; ${ALLOWED}` : writtenWords(refusal)),
  );
  return offence === null ? [] : [offence];
}

const ALLOWED = "allowed is a folder that is absent or empty";

/** Everything beside the folder first, then one rename: whole or not there at all. */
export function writeFolder(folder: string, files: Iterable<NamedBytes>, name: string, code: string): Finding | null {
  const fresh = join(dirname(folder), `.${basename(folder)}.new`);
  const tell = (refusal: Refusal): Finding => fileFault(name, code, writtenWords(refusal));
  try {
    return findFault(() => {
      rmSync(fresh, { recursive: true, force: true });
      mkdirSync(fresh, { recursive: true });
      for (const { path, bytes } of files) writeFileSync(join(fresh, path), bytes);
      if (existsSync(folder)) rmSync(folder, { recursive: true });
      renameSync(fresh, folder);
      return null;
    }, tell);
  } finally {
    removeIfPossible(fresh);
  }
}

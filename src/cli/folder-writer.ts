/** A folder of tables and sheets, written whole or not at all into a place that is absent or empty. */

import { randomBytes } from "node:crypto";
import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmdirSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import type { Finding } from "../diagnostics/finding.js";
import type { Refusal } from "./file-system.js";
import { findFault, removeIfPossible, writtenWords } from "./file-system.js";
import { fileFault } from "./findings.js";

/** Bytes and the name of their file in the folder. */
export interface NamedBytes {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Where a result goes: the folder as the user named it, and the code of the findings about it. */
export interface ResultTarget {
  readonly out: string;
  readonly code: string;
  readonly currentFolder: string;
}

const ALLOWED = "allowed is a folder that is absent or empty";

/** What forbids to write there. */
export function targetFaults({ out, code, currentFolder }: ResultTarget): readonly Finding[] {
  const offence = findFault(
    () => {
      const words = offenceOf(resolve(currentFolder, out), currentFolder);
      return words === null ? null : fileFault(out, code, `${words}; ${ALLOWED}`);
    },
    (refusal) => fileFault(out, code, refusal.code === "ENOTDIR" ? `is a file; ${ALLOWED}` : writtenWords(refusal)),
  );
  return offence === null ? [] : [offence];
}

function offenceOf(folder: string, currentFolder: string): string | null {
  const stat = lstatSync(folder, { throwIfNoEntry: false });
  if (stat === undefined) return null;
  if (stat.isSymbolicLink()) return "is a symbolic link";
  if (!stat.isDirectory()) return "is a file";
  if (realpathSync(folder) === realpathSync(currentFolder)) return "is the folder you are in";
  return readdirSync(folder).length > 0 ? "is not empty" : null;
}

/**
 * Everything into a folder of its own beside the place, under a name that nobody else has; then one rename: whole or not
 * there at all. Of two that write at once one is refused by the rename, since the place is then not empty.
 */
export function writeFolder(files: Iterable<NamedBytes>, target: ResultTarget): Finding | null {
  const folder = resolve(target.currentFolder, target.out);
  const fresh = join(dirname(folder), `.${basename(folder)}.new-${randomBytes(8).toString("hex")}`);
  const tell = (words: string): Finding => fileFault(target.out, target.code, words);
  const write = (): null => {
    if (!existsSync(dirname(folder))) mkdirSync(dirname(folder), { recursive: true });
    mkdirSync(fresh);
    for (const { path, bytes } of files) writeFileSync(join(fresh, path), bytes, { flag: "wx" });
    return null;
  };
  try {
    const fault = findFault(write, (refusal) => tell(writtenWords(refusal)));
    return (
      fault ??
      findFault(
        () => moveInto(folder, fresh),
        (refusal) => tell(movedWords(refusal)),
      )
    );
  } finally {
    removeIfPossible(fresh);
  }
}

/** Only an empty folder is removed to make room, and a rename goes over no folder that holds something. */
function moveInto(folder: string, fresh: string): null {
  if (existsSync(folder)) rmdirSync(folder);
  renameSync(fresh, folder);
  return null;
}

/** What the system says of a place that was filled meanwhile. */
const FILLED = new Set(["ENOTEMPTY", "EEXIST"]);

function movedWords(refusal: Refusal): string {
  return FILLED.has(refusal.code)
    ? `could not be written: something else was written there meanwhile; ${ALLOWED}`
    : writtenWords(refusal);
}

/** Files that are written on request, and never over one that is there. */
import { closeSync, fsyncSync, openSync, writeFileSync } from "node:fs";
import type { Finding } from "../diagnostics/finding.js";
import type { Refusal } from "./file-system.js";
import { findFault, removeIfPossible, writtenWords } from "./file-system.js";
import { fileFault } from "./findings.js";

/** Writes a file that is not there yet, which the user calls `name`; where the disk is full, nothing of it stays. `code` is that of a refusal. */
export function writeNewFile(path: string, content: string | Uint8Array, name: string, code: string): Finding | null {
  return findFault(
    () => {
      const file = openSync(path, "wx");
      let isWritten = false;
      try {
        writeFileSync(file, content);
        fsyncSync(file);
        isWritten = true;
      } finally {
        closeSync(file);
        if (!isWritten) removeIfPossible(path);
      }
      return null;
    },
    (refusal) => fileFault(name, code, unwrittenWords(refusal)),
  );
}

function unwrittenWords(refusal: Refusal): string {
  switch (refusal.code) {
    case "EEXIST":
      return "is there already; name a file that is not";
    case "ENOENT":
    case "ENOTDIR":
      return "its folder is not there";
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return "no permission to write";
    default:
      return writtenWords(refusal);
  }
}

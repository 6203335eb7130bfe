/** A folder of tables and sheets, written whole or not at all into a place that is absent or empty. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import type { Finding } from "../diagnostics/finding.js";
import { fileFault } from "./findings.js";

/** Bytes and the name of their file in the folder. */
export interface NamedBytes {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What forbids to write into `folder`, which the user calls `name`; `code` is that of the findings. */
export function targetFaults(folder: string, name: string, code: string): readonly Finding[] {
  if (!existsSync(folder)) return [];
  try {
    if (readdirSync(folder).length === 0) return [];
  } catch {
    return [fileFault(name, code, "is a file; allowed is a folder that is absent or empty")];
  }
  return [fileFault(name, code, "is not empty; allowed is a folder that is absent or empty")];
}

/** Everything beside the folder first, then one rename: whole or not there at all. */
export function writeFolder(folder: string, files: Iterable<NamedBytes>, name: string, code: string): Finding | null {
  const fresh = join(dirname(folder), `.${basename(folder)}.new`);
  try {
    rmSync(fresh, { recursive: true, force: true });
    mkdirSync(fresh, { recursive: true });
    for (const { path, bytes } of files) writeFileSync(join(fresh, path), bytes);
    if (existsSync(folder)) rmSync(folder, { recursive: true });
    renameSync(fresh, folder);
    return null;
  } catch (error) {
    rmSync(fresh, { recursive: true, force: true });
    if (!(error instanceof Error && "syscall" in error)) throw error;
    return fileFault(name, code, `could not be written: ${error.message}`);
  }
}

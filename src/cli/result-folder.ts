/** The files of a budget or a survey, written into a folder of their own. */
import { resolve } from "node:path";
import type { Finding } from "../diagnostics/finding.js";
import { terminalLine } from "../diagnostics/printable.js";
import type { ResultOutput } from "../outputs/index.js";
import type { NamedBytes } from "./folder-writer.js";
import { writeFolder } from "./folder-writer.js";
import type { Shell } from "./shell.js";
import { readVersion } from "./shell.js";

/** `out` as the user named it; `code` is that of the finding that says why nothing was written. */
export async function writeResult<Result>(
  outputs: readonly ResultOutput<Result>[],
  result: Result,
  { out, code }: { readonly out: string; readonly code: string },
  shell: Shell,
): Promise<Finding | null> {
  const { newDocument } = await import("./svg-document.js");
  const around = { document: newDocument(), version: readVersion() };
  return writeFolder(resolve(shell.currentFolder, out), filesOf(outputs, result, around), out, code);
}

/** Says that the folder was written, where standard output could not be. */
export async function tellWritten(out: string | null, shell: Shell): Promise<void> {
  if (out !== null && shell.out.refusal !== null)
    await shell.err.write(terminalLine`tables and sheets were written: they are whole in ${out}\n`);
}

function* filesOf<Result>(
  outputs: readonly ResultOutput<Result>[],
  result: Result,
  around: Parameters<ResultOutput<Result>["write"]>[1],
): Generator<NamedBytes> {
  for (const output of outputs) yield* output.write(result, around);
}

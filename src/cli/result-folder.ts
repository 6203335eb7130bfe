/** The files of a budget or a survey, written into a folder of their own. */
import type { Finding } from "../diagnostics/finding.js";
import { terminalLine } from "../diagnostics/printable.js";
import type { ResultOutput } from "../outputs/index.js";
import type { NamedBytes, ResultTarget } from "./folder-writer.js";
import { writeFolder } from "./folder-writer.js";
import type { Shell } from "./shell.js";
import { readVersion } from "./shell.js";

/** null when it was written; else the finding that says why nothing was. */
export async function writeResult<Result>(
  outputs: readonly ResultOutput<Result>[],
  result: Result,
  target: ResultTarget,
): Promise<Finding | null> {
  const { newLeanDocument } = await import("../formats/lean-document.js");
  const { pdfMaker } = await import("./pdf-maker.js");
  const around = { document: newLeanDocument(), version: readVersion(), pdf: pdfMaker };
  return writeFolder(filesOf(outputs, result, around), target);
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

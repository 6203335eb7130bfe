/** `--faults FILE`: every finding of the input as CSV, in a file that is not there yet. */
import { resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { writeFindingsCsv } from "../formats/findings-csv.js";
import type { FaultsFile } from "./findings.js";
import { showFindings } from "./findings.js";
import type { Shell } from "./shell.js";
import { writeNewFile } from "./whole-file.js";

/** A command that writes its faults on request. */
export interface FaultsCommand {
  readonly kind: "check" | "make";
  readonly job: string;
  readonly out?: string;
  readonly faults: string | null;
  readonly json: boolean;
}

/** Shows what was found of the input, written where that is asked for; false where that file cannot be written: the command then ends. */
export async function tellInput(opened: Outcome<unknown>, command: FaultsCommand, shell: Shell): Promise<boolean> {
  const { faults, json } = command;
  const refusal = faults === null ? null : writeFaults(faults, opened.findings, shell);
  const findings = refusal === null ? opened.findings : [refusal, ...opened.findings];
  const out = command.out === undefined ? "" : ` --out ${command.out}`;
  const faultsFile: FaultsFile = {
    command: `${command.kind} ${command.job}${out}`,
    written: refusal === null ? faults : null,
  };
  await showFindings(findings, json, shell, faultsFile);
  return refusal === null && opened.ok;
}

function writeFaults(name: string, findings: readonly Finding[], { currentFolder }: Shell): Finding | null {
  const bytes = new TextEncoder().encode(writeFindingsCsv(findings));
  return writeNewFile({ name, path: resolve(currentFolder, name), bytes, code: "faults-file" });
}

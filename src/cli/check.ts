/** `rodplate check JOB`: reads, computes, prints the ledger, writes nothing but its faults on request. */
import type { Part } from "../tasks/growing-files.js";
import { makePackageInParts } from "../tasks/package.js";
import type { Command } from "./arguments.js";
import { tellInput } from "./faults-file.js";
import { openFile } from "./open.js";
import { startProgress } from "./progress.js";
import { startReport } from "./report.js";
import type { ExitCode, Shell } from "./shell.js";
import { readVersion } from "./shell.js";

/** In machine form the summary is printed as it grows; it lists no files, since none are made. */
export async function runCheck(command: Extract<Command, { kind: "check" }>, shell: Shell): Promise<ExitCode> {
  const { json, all } = command;
  const opened = await openFile(command.job, shell);
  const isGood = await tellInput(opened, command, shell);
  if (!opened.ok || !isGood) return 2;
  const { job } = opened.value;
  const outputs = json ? (["summary"] as const) : [];
  const made = makePackageInParts(opened.value, { version: readVersion(), document: null, outputs });
  const report = startReport(job, shell, { all, onlyFailing: false });
  const progress = startProgress(shell, "checked");
  const print = async (parts: readonly Part[]): Promise<void> => {
    for (const { bytes } of parts) await shell.out.write(bytes);
  };
  await print(made.head);
  let done = 0;
  for (const base of made.bases) {
    report.add(base);
    await print(base.parts);
    done += 1;
    await progress.show(done, job.bases.length);
  }
  await progress.end();
  const rest = made.rest();
  report.addJob(rest);
  await print(rest.parts);
  if (!json) for (const text of report.texts()) await shell.out.write(text);
  return report.isHeld ? 1 : 0;
}

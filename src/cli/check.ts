/** `rodplate check JOB`: reads, computes, prints the ledger, writes nothing. */
import { buildInParts } from "../build.js";
import { jobOutputs } from "../outputs.js";
import type { Command } from "./arguments.js";
import { showFindings } from "./findings.js";
import { loadInputs } from "./load.js";
import { startProgress } from "./progress.js";
import { startReport } from "./report.js";
import type { ExitCode, Shell } from "./shell.js";
import { readVersion, todayOf } from "./shell.js";

export async function runCheck(command: Extract<Command, { kind: "check" }>, shell: Shell): Promise<ExitCode> {
  const { json, all } = command;
  const inputs = await loadInputs(command.job, shell);
  if (!inputs.ok) {
    await showFindings(inputs.findings, json, shell);
    return 2;
  }
  const options = {
    date: todayOf(shell),
    version: readVersion(),
    document: null,
    outputs: json ? (["summary"] as const) : [],
  };
  const built = buildInParts(inputs.value, options);
  await showFindings(built.findings, json, shell);
  if (built.job === null) return 2;
  const report = startReport(built.job, shell, { all, onlyFailing: false });
  const progress = startProgress(shell, "checked");
  const summary = jobOutputs.find(({ kind }) => kind === "summary")?.path;
  const print = async (parts: typeof built.head): Promise<void> => {
    if (json) for (const { path, bytes } of parts) if (path === summary) await shell.out.write(bytes);
  };
  await print(built.head);
  let done = 0;
  for (const { parts, ...base } of built.bases) {
    report.add(base);
    await print(parts);
    done += 1;
    await progress.show(done, built.job.bases.length);
  }
  await progress.end();
  const end = built.tail();
  report.addJob(end);
  await print(end.parts);
  if (!json) for (const text of report.texts()) await shell.out.write(text);
  return report.held > 0 ? 1 : 0;
}

/** `rodplate check JOB [MARK...]`: reads, computes, prints what it finds, writes nothing but its faults on request. */
import { FOLDERS } from "../outputs/index.js";
import type { Part } from "../tasks/growing-files.js";
import { findNamedBases } from "../tasks/named-bases.js";
import { checkLayout, numberQuestions } from "../tasks/number-questions.js";
import { makePackageInParts } from "../tasks/package.js";
import { startReport } from "../tasks/report.js";
import type { Command } from "./arguments.js";
import { tellInput } from "./faults-file.js";
import { showFindings } from "./findings.js";
import { openFile } from "./open.js";
import { startProgress } from "./progress.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, readVersion, widthOf } from "./shell.js";

type CheckCommand = Extract<Command, { kind: "check" }>;

/**
 * In machine form the summary is printed as it grows; it lists no files, since none are made. Where marks are named, the whole job
 * is checked all the same: numbers of questions and templates of several bases hang on all.
 */
export async function runCheck(command: CheckCommand, shell: Shell): Promise<ExitCode> {
  const { json, all } = command;
  const opened = await openFile(command.job, shell);
  const isGood = await tellInput(opened, command, shell);
  if (!opened.ok || !isGood) return 2;
  const { job } = opened.value;
  const named = findNamedBases(opened.value, command.marks, command.job);
  if (!named.ok) {
    await showFindings(named.findings, json, shell);
    return 2;
  }
  const only = named.value;
  const outputs = json ? (["summary"] as const) : [];
  const options = { version: readVersion(), document: null, outputs, ...(only === null ? {} : { only }) };
  // a screen needs no numbers beforehand where nothing is said by them
  const isNumbered = json || job.answers.some(({ question }) => question !== "");
  const made = makePackageInParts(isNumbered ? numberQuestions(opened.value) : checkLayout(opened.value), options);
  const report = startReport(
    job,
    { width: widthOf(shell), color: hasColor(shell) },
    { all, only, rest: whereTheRestIs(command) },
  );
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

function whereTheRestIs({ job }: CheckCommand): readonly string[] {
  return [
    `One base with all its values: rodplate check ${job} MARK. Every row: --all. Ledger, questions and a page to check by: make, in ${FOLDERS.engineer}/.`,
  ];
}

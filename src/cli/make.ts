/** `rodplate make JOB --out DIR`: the whole package into DIR, or nothing. */
import { join, relative } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { formatFinding } from "../diagnostics/finding.js";
import { joinPrintable, printableJson, terminalJson, terminalLine, terminalText } from "../diagnostics/printable.js";
import { aboutKind, FOLDERS, type GuidedFile, guidePackage } from "../outputs/index.js";
import type { Part } from "../tasks/growing-files.js";
import { makeBases } from "../tasks/make-base.js";
import { numberQuestions } from "../tasks/number-questions.js";
import type { OpenedJob } from "../tasks/opened-job.js";
import { hasSet, startPackage } from "../tasks/package.js";
import { reducedWords, registerWords } from "../tasks/package-words.js";
import { type Report, startReport } from "../tasks/report.js";
import type { Command } from "./arguments.js";
import { makeInThreads, startThreads, threadsFor } from "./base-threads.js";
import type { EarlierLook } from "./earlier-package.js";
import { compareEarlier, earlierForm, earlierText, leftoverWarnings, settlementWarnings } from "./earlier-package.js";
import type { EarlierRegister } from "./earlier-register.js";
import { findEarlierRegister } from "./earlier-register.js";
import { tellInput } from "./faults-file.js";
import { chunksOf } from "./file-system.js";
import { showFindings } from "./findings.js";
import { guideText } from "./guide-text.js";
import { openFile } from "./open.js";
import { SUMMARY } from "./package-contents.js";
import type { PackageFolder, WrittenPackage } from "./package-folder.js";
import { withPackageFolder } from "./package-folder.js";
import { DISPLACED } from "./package-target.js";
import type { PackageWriter } from "./package-writer.js";
import { startProgress } from "./progress.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, readVersion, widthOf } from "./shell.js";

type MakeCommand = Extract<Command, { kind: "make" }>;

/** What is wrong with DIR or the disk is the user's to put right: exit code 2, and DIR is as it was, or it is said where it is. */
export async function runMake(command: MakeCommand, shell: Shell): Promise<ExitCode> {
  const made = await withPackageFolder(command.out, shell.currentFolder, (folder) => makeInto(folder, command, shell));
  if (!made.ok) return refuseFolder(made.findings, command, shell);
  await showFindings(made.findings, command.json, shell);
  return made.value;
}

/** A fault of the folder or the disk, not of the job. */
async function refuseFolder(
  findings: readonly Finding[],
  { json }: MakeCommand,
  { out, err }: Shell,
): Promise<ExitCode> {
  if (json) await out.write(terminalJson({ findings }));
  else for (const finding of findings) await err.write(joinPrintable([formatFinding(finding), terminalLine`\n`]));
  if (!json && !findings.some(({ code }) => code === DISPLACED))
    await err.write(terminalLine`no package was written\n`);
  return 2;
}

async function makeInto(dir: PackageFolder, command: MakeCommand, shell: Shell): Promise<Outcome<ExitCode>> {
  const earlier = findEarlierRegister(dir.folder);
  const opened = await openFile(command.job, shell, earlier?.content);
  const isGood = await tellInput(opened, command, shell);
  if (!opened.ok || !isGood) return { ok: true, value: 2, findings: [] };
  if (!command.json) await tellRegister(earlier, opened.value.job, command.out, shell);
  const written = await dir.write<MadePackage, EarlierLook>({
    job: opened.value.job,
    replace: command.replace,
    fill: (writer) => writeFiles(command, writer, opened.value, shell),
    look: (old, fresh) => compareEarlier(old, fresh, command.out),
  });
  if (!written.ok) return written;
  await showResult(command, dir, written.value, shell);
  const { made, settled, leftover } = written.value;
  const told = [leftoverWarnings(leftover, command.out), settlementWarnings(settled, command.out), written.findings];
  return { ok: true, value: made.report.isHeld ? 1 : 0, findings: told.flat() };
}

/** What is shown of a package that was written. */
interface MadePackage {
  readonly report: Report;
  /** Every file but the summary, in the order in which they were begun. */
  readonly files: readonly GuidedFile[];
}

/** Where numbers of questions go on from, where that is the package in the folder. */
async function tellRegister(
  earlier: EarlierRegister | null,
  job: OpenedJob["job"],
  out: string,
  { err }: Shell,
): Promise<void> {
  const words = registerWords(earlier, job, earlier === null || earlier.where === "" ? out : join(out, earlier.where));
  if (words !== null) await err.write(terminalLine`${words}\n`);
}

async function writeFiles(
  { all, includeHeld, paper, job, out }: MakeCommand,
  writer: PackageWriter,
  unnumbered: OpenedJob,
  shell: Shell,
): Promise<MadePackage> {
  const threads = startThreads(threadsFor(unnumbered.bases, shell.processors));
  const { newLeanDocument } = await import("../formats/lean-document.js");
  const { pdfMaker } = await import("./pdf-maker.js");
  const options = { version: readVersion(), paper, includeHeld };
  const here = { ...options, document: newLeanDocument(), pdf: pdfMaker, startSha256 };
  // while threads load
  const opened = numberQuestions(unnumbered);
  const inSet = hasSet(here);
  const bases =
    threads.length > 0 ? makeInThreads(opened, { ...options, inSet }, threads) : makeBases(opened, { ...here, inSet });
  const made = startPackage(opened, here);
  const report = startReport(
    opened.job,
    { width: widthOf(shell), color: hasColor(shell) },
    { all, only: null, rest: whereTheRestIs(job, out) },
  );
  const progress = startProgress(shell, "made");
  const append = (parts: readonly Part[]): void => {
    for (const { path, bytes } of parts) writer.append(path, bytes);
  };
  const files: GuidedFile[] = [];
  const note = ({ kind, path }: GuidedFile): void => void files.push({ kind, path });
  append(made.head);
  for (const part of made.head) if (part.path !== SUMMARY) note(part);
  let done = 0;
  for await (const alone of bases) {
    const base = made.add(alone);
    for (const file of base.files) {
      writer.add(file.path, file.bytes);
      note(file);
    }
    append(base.parts);
    report.add(base);
    done += 1;
    await progress.show(done, opened.job.bases.length);
    await nextTurn();
    if (writer.isStopped) break;
  }
  await progress.end();
  if (writer.isStopped) return { report, files };
  for (const file of made.documents) {
    writer.add(file.path, file.bytes);
    note(file);
    await nextTurn();
  }
  const rest = made.rest();
  if (rest.reduced.length > 0) await shell.err.write(reducedLine(rest.reduced, paper ?? ""));
  report.addJob(rest);
  append(rest.parts);
  return { report, files };
}

function whereTheRestIs(job: string, out: string): readonly string[] {
  const folder = join(out, FOLDERS.engineer);
  return [
    `One base with all its values: rodplate check ${job} MARK. Every row: ${join(folder, "ledger.csv")}. To check by, and then sign: the checking PDF in ${folder}.`,
  ];
}

/** Which pages of the set are not at their scales. */
const reducedLine = terminalText(
  (pages: Parameters<typeof reducedWords>[0], paper: string) => `warning: ${reducedWords(pages, paper)}\n`,
);

/** Lets signals and output through. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

async function showResult(
  { json }: MakeCommand,
  target: PackageFolder,
  { made, look, settled }: WrittenPackage<MadePackage, EarlierLook>,
  shell: Shell,
): Promise<void> {
  const from = relative(shell.currentFolder, target.folder);
  const shown = from.startsWith("..") ? target.folder : from;
  if (json) await showJson(target, look === null ? null : earlierForm(look, settled), shell);
  else {
    for (const text of made.report.texts()) await shell.out.write(text);
    const options = { shown, width: widthOf(shell), color: hasColor(shell) };
    if (look !== null) await shell.out.write(joinPrintable([earlierText(look, settled, options), terminalLine`\n`]));
    const entries = guidePackage(made.files, aboutKind);
    await shell.out.write(guideText(entries, { shown, files: made.files.length + 1 }));
  }
  if (shell.out.refusal !== null)
    await shell.err.write(terminalLine`the package was written: it is whole in ${shown}\n`);
}

/** How summary.json ends. */
const END = "\n}\n";

/** summary.json as it stands; where there was a package before, with the key `earlier` beside the others. */
async function showJson(target: PackageFolder, earlier: object | null, { out }: Shell): Promise<void> {
  let last = new Uint8Array();
  for (const chunk of chunksOf(join(target.folder, SUMMARY))) {
    const text = Buffer.concat([last, chunk]);
    const end = Math.max(0, text.length - END.length);
    await out.write(text.subarray(0, end));
    last = text.subarray(end);
  }
  if (earlier === null) await out.write(last);
  else await out.write(joinPrintable([terminalLine`,\n  "earlier": `, printableJson(earlier), terminalLine`\n}\n`]));
}

/** `rodplate read FILE`: what is understood of a schedule as it was sent; on request the job that it gives, and its read-as table. */
import { dirname, join, relative, resolve } from "node:path";
import { counted } from "../checks/words.js";
import { formatCause } from "../diagnostics/cause-words.js";
import type { Finding } from "../diagnostics/finding.js";
import { gatherFindings } from "../diagnostics/gather.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalJson, terminalLine } from "../diagnostics/printable.js";
import { writeFindingsCsv } from "../formats/findings-csv.js";
import { writeTextList } from "../formats/ledger-text.js";
import { writeReadAsCsv } from "../formats/read-as-csv.js";
import { writeReadAsText } from "../formats/read-as-text.js";
import { writeReadAsXlsx } from "../formats/read-as-xlsx.js";
import { readForm } from "../formats/read-json.js";
import { toPlain } from "../job/document.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import type { SheetReading } from "../tasks/read.js";
import { readSheetAsSent } from "../tasks/read.js";
import { namingReadFrom, writeJobAgain, writeNewJob } from "../tasks/read-job.js";
import type { Unit } from "../units/index.js";
import type { Command } from "./arguments.js";
import { fileFault, showFindings } from "./findings.js";
import type { ReadSource } from "./read-source.js";
import { openReadSource } from "./read-source.js";
import type { ReadTarget } from "./read-target.js";
import { answeringJob, openReadTarget } from "./read-target.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, INSTALLED, widthOf } from "./shell.js";
import { replaceFile, writeNewFile } from "./whole-file.js";

type ReadCommand = Extract<Command, { kind: "read" }>;

/** 0 all is understood, 1 something is asked or at fault in the sheet, 2 the file cannot be read, or a file not be written. */
export async function runRead(command: ReadCommand, shell: Shell): Promise<ExitCode> {
  const { json } = command;
  const refuse = async (findings: readonly Finding[]): Promise<ExitCode> => {
    await showFindings(findings, json, shell);
    return 2;
  };
  const faults = optionFaults(command);
  if (faults.length > 0) return refuse(faults);
  const source = await openReadSource(command.file, shell);
  if (!source.ok) return refuse(source.findings);
  const target = command.out === null ? null : openReadTarget(command.out, source.value, shell);
  if (target !== null && !target.ok) return refuse(target.findings);
  const job = answeringJob(target?.value ?? null, source.value.job);
  const otherUnit = unitFault(command, job, target?.value ?? null);
  if (otherUnit !== null) return refuse([otherUnit]);
  const { name, file } = source.value;
  const read = readSheetAsSent({ name: target?.value.sheet ?? name, file, job, unit: unitOf(command) });
  if (!read.ok) return refuse(read.findings);
  const written = writeFiles(
    command,
    { source: source.value, target: target?.value ?? null, reading: read.value },
    shell,
  );
  if (!written.ok) return refuse(written.findings);
  if (json) await shell.out.write(terminalJson(jsonOf(read.value)));
  else await shell.out.write(textOf(read.value, command, written.names, shell));
  return read.value.isUnderstood ? 0 : 1;
}

function optionFaults({ unit, table }: ReadCommand): readonly Finding[] {
  const ofUnit = unit === null || unit === "in" || unit === "mm";
  const ofTable = table === null || /\.(csv|xlsx)$/i.test(table);
  return [
    ...(ofUnit
      ? []
      : [fileFault("--unit", "bad-option", `${JSON.stringify(unit)} is no unit here; allowed are in and mm`)]),
    ...(ofTable
      ? []
      : [fileFault(table, "bad-option", "is no name of a table; allowed is one that ends in .csv or .xlsx")]),
  ];
}

function unitOf({ unit }: ReadCommand): Unit | null {
  return unit === "in" || unit === "mm" ? unit : null;
}

/** A job has its own unit, or is given one where it is written, so that it is read the same again. */
function unitFault({ unit }: ReadCommand, job: SourceNode | null, target: ReadTarget | null): Finding | null {
  if (unit === null || job === null) return null;
  const units = findNode(job, "units");
  const written = units?.kind === "scalar" ? units.text : null;
  if (written === unit) return null;
  const where = target?.there === null || target === null ? "the job" : target.name;
  const says = written === null ? "has no units yet" : `says units: ${written}`;
  return fileFault(
    "--unit",
    "bad-option",
    `is ${unit}, but ${where} ${says}; write units: ${unit} there, or leave --unit out`,
  );
}

interface Read {
  readonly source: ReadSource;
  readonly target: ReadTarget | null;
  readonly reading: SheetReading;
}

type Written =
  | { readonly ok: true; readonly names: readonly string[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** The job last: it is what goes on from here. */
function writeFiles(command: ReadCommand, read: Read, shell: Shell): Written {
  const { table, faults } = command;
  const { reading, target } = read;
  const names: string[] = [];
  const steps: (readonly [string | null, () => Finding | null])[] = [
    [table, () => writeBeside(table ?? "", tableBytes(table ?? "", reading), shell)],
    [faults, () => writeBeside(faults ?? "", faultsBytes(reading), shell)],
    [target?.name ?? null, () => (target === null ? null : writeJob(target, read))],
  ];
  for (const [name, write] of steps) {
    if (name === null) continue;
    const fault = write();
    if (fault !== null) return { ok: false, findings: [fault] };
    names.push(name);
  }
  return { ok: true, names };
}

/** Code of a result that could not be written. */
const CODE = "written-file";

function writeBeside(name: string, bytes: Uint8Array, shell: Shell): Finding | null {
  return writeNewFile({ name, path: resolve(shell.currentFolder, name), bytes, code: CODE });
}

const encoder = new TextEncoder();

function tableBytes(name: string, { form }: SheetReading): Uint8Array {
  return /\.csv$/i.test(name) ? encoder.encode(writeReadAsCsv(form)) : writeReadAsXlsx(form, null);
}

/** Questions stand among the faults, with their first line as what would put them right. */
function faultsBytes({ findings, form }: SheetReading): Uint8Array {
  const asked = form.questions.map(({ cells, text, choices }): Finding => {
    const [cell] = cells;
    const at = { file: form.file, ...(cell === undefined ? {} : { cell }) };
    const hint = choices.map(({ line, means }) => `${line} (${means})`).join("; or ");
    return { code: "asked", severity: "error", at, message: text, hint };
  });
  return encoder.encode(writeFindingsCsv([...findings, ...asked]));
}

function writeJob(target: ReadTarget, { source, reading }: Read): Finding | null {
  const { name, path, there } = target;
  if (there !== null) {
    const bytes = writeJobAgain(there.own, name, reading);
    return replaceFile({ name, path, bytes, code: CODE }, there.bytes);
  }
  const bytes = newJobBytes(target, source, reading);
  return bytes === null
    ? fileFault(source.job?.name ?? name, "read-target", UNPARTED)
    : writeNewFile({ name, path, bytes, code: CODE });
}

const UNPARTED =
  "its key schedule does not stand at the start of a line of its own, so that it cannot be replaced; allowed is schedule: FILE on one line";

/** The first time: the job that names the sheet with readFrom in the place of schedule, or a part that is to be filled in. */
function newJobBytes({ name, path, sheet }: ReadTarget, { job }: ReadSource, reading: SheetReading): Uint8Array | null {
  if (job === null) {
    const schema = relative(dirname(path), join(INSTALLED, "templates", "job.schema.json")).replaceAll("\\", "/");
    return writeNewJob({ name, schema, file: sheet }, reading);
  }
  const text = namingReadFrom(new TextDecoder().decode(job.bytes));
  return text === null ? null : writeJobAgain(encoder.encode(text), name, reading);
}

function jsonOf({ form, bases, findings, isUnderstood }: SheetReading) {
  return readForm(form, { understood: isUnderstood, bases: bases.map(toPlain), findings });
}

const MOST_CAUSES = 20;

function textOf(reading: SheetReading, command: ReadCommand, written: readonly string[], shell: Shell): Printable {
  const { form, findings } = reading;
  const options = { unit: reading.unit ?? "in", width: widthOf(shell), color: hasColor(shell), all: true };
  return joinPrintable([
    writeReadAsText(form, options),
    writeTextList("At fault or doubtful in the sheet", faultLines(findings), options),
    terminalLine`${counted(reading.bases.length, "base")}; ${counted(form.questions.length, "question")} open, ${counted(errorsIn(findings), "fault")} in the sheet.\n`,
    ...written.map((name) => terminalLine`${name} was written.\n`),
    nextLine(reading, command),
  ]);
}

/** Each cause once, those that forbid going on first; the others are counted. */
function faultLines(findings: readonly Finding[]): readonly string[] {
  const causes = [...gatherFindings(findings)].sort((a, b) => rank(a.first) - rank(b.first));
  const told = causes.slice(0, MOST_CAUSES);
  const lines = told.map((cause) => `${cause.first.severity === "warning" ? "warning: " : ""}${formatCause(cause)}`);
  const untold = causes.length - told.length;
  return untold === 0 ? lines : [...lines, `and ${untold} more: --faults FILE has them all`];
}

const rank = ({ severity }: Finding): number => (severity === "error" ? 0 : 1);

function errorsIn(findings: readonly Finding[]): number {
  return findings.filter(({ severity }) => severity === "error").length;
}

function nextLine({ isUnderstood }: SheetReading, { file, out }: ReadCommand): Printable {
  if (out === null) return terminalLine`Next: rodplate read ${file} --out job.yaml\n`;
  if (isUnderstood) return terminalLine`Next: fill in the head of ${out}, then rodplate check ${out}\n`;
  return terminalLine`Next: answer in ${out}, or mend the sheet; then rodplate read ${out} --out ${out}\n`;
}

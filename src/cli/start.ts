/** `rodplate start [NAME] --out FILE`: writes a commented starter job from templates/, and the schedule that it names. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import type { Finding } from "../diagnostics/finding.js";
import { formatFinding } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, printable, terminalLine } from "../diagnostics/printable.js";
import { requestedFiles } from "../job/index.js";
import type { Command } from "./arguments.js";

import type { ExitCode, Shell } from "./shell.js";
import { INSTALLED } from "./shell.js";
import { writeNewFile } from "./whole-file.js";

const TEMPLATES = join(INSTALLED, "templates");
const STARTER_FOLDER = join(TEMPLATES, "start");
/** How a starter job names its schema, from its own folder; in the user's folder it is another way there. */
const SCHEMA = "$schema=../job.schema.json";
const ENDING = ".yaml";
const FIRST = "us";

/** Names of the starter jobs, the one that is taken without a name first. */
export function starterNames(): readonly string[] {
  const names = readdirSync(STARTER_FOLDER)
    .filter((name) => name.endsWith(ENDING))
    .map((name) => name.slice(0, -ENDING.length))
    .sort();
  return [...names.filter((name) => name === FIRST), ...names.filter((name) => name !== FIRST)];
}

/** 0 written, 2 refused; a file that is there is never written over. */
export async function runStart(command: Extract<Command, { kind: "start" }>, shell: Shell): Promise<ExitCode> {
  const names = starterNames();
  const name = command.name ?? names[0];
  if (name === undefined || !names.includes(name)) return refuse(printable(unknownStarter(name ?? "", names)), shell);
  const folder = dirname(resolve(shell.currentFolder, command.out));
  const text = readFileSync(join(STARTER_FOLDER, `${name}${ENDING}`), "utf8");
  const path = resolve(shell.currentFolder, command.out);
  const fault = writeStarter(path, new TextEncoder().encode(withSchemaFrom(folder, text)), command.out);
  if (fault !== null) return refuse(formatFinding(fault), shell);
  for (const table of tablesOf(text)) await shell.out.write(copyTable(table, folder));
  await shell.out.write(terminalLine`${command.out}: starter job ${name}. Next: rodplate check ${command.out}\n`);
  if (shell.out.refusal !== null) await shell.err.write(terminalLine`${command.out} was written\n`);
  return 0;
}

function withSchemaFrom(folder: string, text: string): string {
  const path = relative(folder, join(TEMPLATES, "job.schema.json")).replaceAll("\\", "/");
  return text.replace(SCHEMA, () => `$schema=${path}`);
}

/** The spreadsheets that a starter job names; they stand in templates/. */
function tablesOf(text: string): readonly string[] {
  const requests = requestedFiles({ job: "job", files: new Map([["job", text]]) });
  return requests.filter(({ relativeTo }) => relativeTo === "job").map(({ name }) => name);
}

function writeStarter(path: string, bytes: Uint8Array, name: string): Finding | null {
  return writeNewFile({ name, path, bytes, code: "starter-file" });
}

/** Copies a spreadsheet beside the job, never over a file; what was done, in a line. */
function copyTable(table: string, folder: string): Printable {
  const fault = writeStarter(join(folder, table), readFileSync(join(TEMPLATES, table)), table);
  return fault === null
    ? terminalLine`${table}: its schedule, beside it\n`
    : joinPrintable([formatFinding(fault), terminalLine`\n`]);
}

function unknownStarter(name: string, names: readonly string[]): string {
  const nearest = nearestWord(name, names);
  const hint = nearest === undefined ? "" : `; did you mean ${nearest}?`;
  return `no starter job ${JSON.stringify(name)}: there are ${names.join(", ")}${hint}`;
}

async function refuse(message: Printable, shell: Shell): Promise<ExitCode> {
  await shell.err.write(joinPrintable([message, terminalLine`\n`]));
  return 2;
}

/** `rodplate start [NAME] --out FILE`: writes a commented starter job from templates/. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { nearestWord } from "../diagnostics/nearest.js";
import type { Command } from "./arguments.js";
import type { ExitCode, Shell } from "./shell.js";
import { INSTALLED } from "./shell.js";

const STARTER_FOLDER = join(INSTALLED, "templates", "start");
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

export async function runStart(command: Extract<Command, { kind: "start" }>, shell: Shell): Promise<ExitCode> {
  const names = starterNames();
  const name = command.name ?? names[0];
  if (name === undefined || !names.includes(name)) return refuse(unknownStarter(name ?? "", names), shell);
  const text = readFileSync(join(STARTER_FOLDER, `${name}${ENDING}`));
  try {
    writeFileSync(resolve(shell.currentFolder, command.out), text, { flag: "wx" });
  } catch (error) {
    return refuse(writeFault(command.out, error as NodeJS.ErrnoException), shell);
  }
  await shell.out.write(`${command.out}: starter job ${name}. Next: rodplate check ${command.out}\n`);
  return 0;
}

function unknownStarter(name: string, names: readonly string[]): string {
  const nearest = nearestWord(name, names);
  const hint = nearest === undefined ? "" : `; did you mean ${nearest}?`;
  return `no starter job ${JSON.stringify(name)}: there are ${names.join(", ")}${hint}`;
}

function writeFault(file: string, { code, message }: NodeJS.ErrnoException): string {
  switch (code) {
    case "EEXIST":
      return `${file}: is there already; name a file that is not`;
    case "ENOENT":
    case "ENOTDIR":
      return `${file}: its folder is not there`;
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return `${file}: no permission to write`;
    default:
      return `${file}: could not be written: ${message}`;
  }
}

async function refuse(message: string, shell: Shell): Promise<ExitCode> {
  await shell.err.write(`${message}\n`);
  return 2;
}

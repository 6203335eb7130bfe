/** Runs the program as a user would, in a folder of its own, and looks at packages without the program's own code. */
import type { ChildProcess, SpawnSyncReturns } from "node:child_process";
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { runProgram as runInShell } from "../../src/cli/run.js";
import type { ExitCode, Output, Shell } from "../../src/cli/shell.js";

/** The built program. */
export const MAIN = fileURLToPath(new URL("../../dist/bin/rodplate.js", import.meta.url));

/** A new, empty folder for one test, named as a process in it sees it. */
export function newFolder(): string {
  return realpathSync(mkdtempSync(join(tmpdir(), "rodplate-cli-")));
}

/** What a run leaves beside its files. */
export interface Ended {
  readonly status: ExitCode;
  readonly stdout: string;
  readonly stderr: string;
}

/** What a run sees of the outside beside its folder. By default: no variables, no terminal. */
export interface Outside {
  readonly environment?: Shell["environment"];
  /** Columns of a terminal that both streams go to. */
  readonly terminal?: number;
}

/** A morning in November 2026; the clock of every run in this process stands still at it. */
const NOW = Date.UTC(2026, 10, 24, 9);

/** Runs a command in this process, to its end, with streams, environment, current folder and clock of its own. */
export async function runProgram(
  folder: string,
  args: readonly string[],
  { environment = {}, terminal }: Outside = {},
): Promise<Ended> {
  const [out, err] = [collect(terminal), collect(terminal)];
  const shell: Shell = { environment, currentFolder: folder, out, err, processors: 1, now: () => NOW };
  const status = await runInShell(args, shell);
  return { status, stdout: out.text(), stderr: err.text() };
}

/** What `make` wrote and said before in this process, by what it was given. */
const packages = new Map<string, { readonly kept: string; readonly ended: Ended }>();

/**
 * Runs `make ... --out DIR` for a test that begins where it ended: where DIR is not there, and the same files were given the
 * same way before, its package is copied.
 */
export async function givePackage(folder: string, args: readonly string[]): Promise<Ended> {
  const out = join(folder, args[args.indexOf("--out") + 1] ?? "");
  if (existsSync(out)) return runProgram(folder, args);
  const given = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
  const key = JSON.stringify([args, given.map(({ name }) => [name, readFileSync(join(folder, name), "base64")])]);
  const before = packages.get(key);
  if (before !== undefined) {
    cpSync(before.kept, out, { recursive: true });
    return before.ended;
  }
  const ended = await runProgram(folder, args);
  if (existsSync(out)) {
    const kept = join(newFolder(), "package");
    cpSync(out, kept, { recursive: true });
    packages.set(key, { kept, ended });
  }
  return ended;
}

function collect(columns: number | undefined): Output & { text(): string } {
  const chunks: Buffer[] = [];
  return {
    isTerminal: columns !== undefined,
    columns,
    refusal: null,
    // copied at once: the program may use the same bytes again for the next piece
    write: async (text) => void chunks.push(typeof text === "string" ? Buffer.from(text) : Buffer.from(text)),
    text: () => Buffer.concat(chunks).toString("utf8"),
  };
}

const bare = { PATH: process.env.PATH, HOME: process.env.HOME };

/** Runs the built program as a process, to its end. */
export function runProcess(
  folder: string,
  args: readonly string[],
  extra: NodeJS.ProcessEnv = {},
): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [MAIN, ...args], { cwd: folder, encoding: "utf8", env: { ...bare, ...extra } });
}

/** The built program in a line of the shell, as `rodplate("check job.yaml") + " | head -1"`. */
export const rodplate = (args: string): string => `'${process.execPath}' '${MAIN}' ${args}`;

/** Runs a line of the shell, with as few variables as a process has here: colours that are forced are told on standard error. */
export function runShell(folder: string, line: string): SpawnSyncReturns<string> {
  return spawnSync("sh", ["-c", line], { cwd: folder, encoding: "utf8", env: bare });
}

/** Starts the built program as a process; resolves when it has ended. */
export function startProcess(
  folder: string,
  args: readonly string[],
): { child: ChildProcess; ended: Promise<number | null> } {
  const child = spawn(process.execPath, [MAIN, ...args], { cwd: folder, stdio: "ignore", env: bare });
  const ended = new Promise<number | null>((resolve) => child.on("exit", (code) => resolve(code)));
  return { child, ended };
}

/** A job of a few bases in inches. `held` makes the first one too small for its form. */
export function writeJob(
  folder: string,
  name: string,
  { revision = "A", status = "released", bases = 2, held = false, date = "2026-11-24", washer = "3" } = {},
): void {
  const base = (index: number): string => `  - mark: B${index + 1}
    quantity: 2
    rods: { diameter: 3/4, grade: 36, finish: plain, projection: 8, embedment: 14, torqued: false }
    pattern: { kind: rectangle, x: ${8 + index}, y: 8 }
    basePlate: { x: ${14 + index}, y: 14, thickness: 1, hole: 1-5/16, washer: { shape: square, size: ${washer}, thickness: 1/4 } }
    concrete: { x: ${held && index === 0 ? 40 : 20 + index}, y: 20 }
    template:
      thickness: 1/4
      support: form
      outline: { kind: rectangle, x: ${22 + index}, y: 12 }
      opening: { diameter: 4 }
`;
  const dated = date === "" ? "" : `, date: ${date}`;
  const head = `job: { number: "26-007", title: "=Invented depot", revision: "${revision}", status: ${status}${dated} }\nunits: in\nrules: us\nshop: plasma\nbases:\n`;
  writeFileSync(join(folder, name), head + Array.from({ length: bases }, (_, index) => base(index)).join(""));
}

export interface ListedFile {
  readonly kind: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface ReadSummary {
  readonly schema: number;
  readonly job: { readonly revision: string };
  readonly bases: readonly { readonly mark: string; readonly held: boolean; readonly files: readonly ListedFile[] }[];
  readonly files: readonly ListedFile[];
}

export function readSummary(folder: string): ReadSummary {
  return JSON.parse(readFileSync(join(folder, "summary.json"), "utf8"));
}

/** Paths of all files below a folder, sorted. */
export function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => name.replaceAll("\\", "/"))
    .sort();
}

/**
 * What is wrong with a package: nothing, when it holds exactly the files its summary lists, each with size and hash, beside
 * what earlier ones left in superseded and set-aside, and `added` files of somebody's.
 */
export function packageFaults(folder: string, added: readonly string[] = []): string[] {
  const { bases, files } = readSummary(folder);
  const listed = [...bases.flatMap((base) => base.files), ...files];
  const isOwn = (path: string): boolean =>
    path !== "summary.json" && !/^(superseded|set-aside)\//.test(path) && !added.includes(path);
  const found = filesIn(folder).filter(isOwn);
  const faults = found
    .filter((path) => !listed.some((file) => file.path === path))
    .map((path) => `${path} is not listed`);
  for (const { path, bytes, sha256 } of listed) {
    if (!found.includes(path)) faults.push(`${path} is missing`);
    else {
      const content = readFileSync(join(folder, path));
      if (content.length !== bytes) faults.push(`${path} has ${content.length} bytes, not ${bytes}`);
      if (createHash("sha256").update(content).digest("hex") !== sha256) faults.push(`${path} has another hash`);
    }
  }
  return faults;
}

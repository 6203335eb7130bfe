/** The command line: every command with random options, in a folder of its own. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Output, Shell } from "../../src/cli/shell.js";
import { changedText, oddText } from "./draw.js";
import { type Draw, type Ending, type FuzzClass, WrongResult } from "./model.js";
import { layoutWithTable, STARTERS, TABLES } from "./starters.js";

/** The program as a function. */
export type Program = (args: readonly string[], shell: Shell) => Promise<number>;

/** Commands with their options, on whole and on changed files. */
export function commandClass(run: Program): FuzzClass {
  return {
    name: "command line",
    cases: 600,
    draw: (random) => {
      const files = filesOf(random);
      const commands = Array.from({ length: 1 + random.below(3) }, () => drawCommand(random));
      const kept = new Map([...files, ["commands.txt", commands.map((args) => args.join(" ")).join("\n")]]);
      return { files: kept, run: () => runAll(run, files, commands) };
    },
  };
}

function filesOf(random: Draw): ReadonlyMap<string, string> {
  const job = random.pick(["us", "metric", "ring", "layout", "schedule"]);
  const whole = random.once(6) ? layoutWithTable("placements.csv") : (STARTERS.get(job) ?? "");
  return new Map([
    ["job.yaml", random.once(3) ? changedText(whole, random) : whole],
    ["other.yaml", STARTERS.get("us") ?? ""],
    ["points.csv", "P,N,E,Z,D\nB1-1,10,20,3,ROD\n"],
    ["part.dxf", "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n"],
    ...TABLES,
  ]);
}

const FILES = ["job.yaml", "other.yaml", "points.csv", "part.dxf", "out", "absent", "schedule.csv", "."];
const OPTIONS = [
  "--json",
  "--all",
  "--include-held",
  "--out",
  "--against",
  "--unit",
  "--order",
  "--accuracy",
  "--height",
  "--within",
];

function drawCommand(random: Draw): readonly string[] {
  const name = random.pick(["check", "make", "compare", "proof", "budget", "survey", "start", "help", oddText(random)]);
  const plain = random.once(4) ? random.pick(FILES) : "job.yaml";
  const second = name === "compare" || name === "survey" || name === "proof" ? [random.pick(FILES)] : [];
  const out = name === "make" || name === "start" ? ["--out", random.pick(["out", "out2", "job.yaml", "a/b"])] : [];
  const options = Array.from({ length: random.below(4) }, () => {
    const option = random.pick(OPTIONS);
    return /json|all|held/.test(option)
      ? [option]
      : [option, random.pick(["out", "ft", "PNEZD", "1/4", "top", oddText(random)])];
  });
  return [name, plain, ...second, ...out, ...options.flat()];
}

async function runAll(
  run: Program,
  files: ReadonlyMap<string, string>,
  commands: readonly (readonly string[])[],
): Promise<Ending> {
  const folder = mkdtempSync(join(tmpdir(), "rodplate-fuzz-"));
  try {
    for (const [name, text] of files) writeFileSync(join(folder, name), text);
    let worst = 0;
    for (const args of commands) worst = Math.max(worst, await runOne(run, folder, args));
    return worst === 2 ? "fault" : worst === 1 ? "held" : "ok";
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function runOne(run: Program, folder: string, args: readonly string[]): Promise<number> {
  const [out, err] = [collected(), collected()];
  const shell: Shell = {
    environment: {},
    currentFolder: folder,
    out,
    err,
    processors: 1,
    now: () => Date.UTC(2026, 10, 24, 9),
  };
  const status = await run(args, shell);
  if (status === 3) throw new WrongResult(`exit 3: ${args.join(" ")}\n${err.text()}`);
  if (/^\s+at .+:\d+:\d+/m.test(err.text() + out.text())) throw new WrongResult(`a stack trace: ${args.join(" ")}`);
  const raw = [...(out.text() + err.text())].find(isControl);
  if (raw !== undefined)
    throw new WrongResult(`a control character (${raw.codePointAt(0)}) is printed: ${args.join(" ")}`);
  if (args.includes("--json") && args[0] !== "help" && out.text() !== "") JSON.parse(out.text());
  return status;
}

/** C0 but for the line end, DEL and C1: what a terminal obeys. */
function isControl(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0;
  return (code < 32 && letter !== "\n") || (code >= 127 && code < 160);
}

function collected(): Output & { text(): string } {
  const chunks: Buffer[] = [];
  return {
    isTerminal: false,
    columns: undefined,
    refusal: null,
    write: async (text) => void chunks.push(Buffer.from(typeof text === "string" ? text : Uint8Array.from(text))),
    text: () => Buffer.concat(chunks).toString("utf8"),
  };
}

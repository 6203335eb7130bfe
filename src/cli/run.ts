/** The program as a function: arguments and a shell in, an exit code out. */
import { joinPrintable, printable, terminalLine } from "../diagnostics/printable.js";
import { parseCommand } from "./arguments.js";
import { helpText } from "./help.js";
import type { ExitCode, Shell } from "./shell.js";
import { readVersion } from "./shell.js";

/** Commands are loaded when they are called for: what they stand on takes longer to load than a small command to run. */
async function runCommand(args: readonly string[], shell: Shell): Promise<ExitCode> {
  const parsed = parseCommand(args);
  if (!parsed.ok) {
    for (const message of parsed.messages) await shell.err.write(terminalLine`rodplate: ${message}\n`);
    await shell.err.write(terminalLine`rodplate --help lists commands and options\n`);
    return 2;
  }
  const { command } = parsed;
  switch (command.kind) {
    case "help":
      await shell.out.write(helpText(command.about, (await import("./start.js")).starterNames()));
      return 0;
    case "version":
      await shell.out.write(terminalLine`${readVersion()}\n`);
      return 0;
    case "open":
      return (await import("./serve.js")).runOpen(command, shell);
    case "start":
      return (await import("./start.js")).runStart(command, shell);
    case "read":
      return (await import("./read.js")).runRead(command, shell);
    case "check":
      return (await import("./check.js")).runCheck(command, shell);
    case "make":
      return (await import("./make.js")).runMake(command, shell);
    case "compare":
      return (await import("./compare.js")).runCompare(command, shell);
    case "proof":
      return (await import("./proof.js")).runProof(command, shell);
    case "sign":
      return (await import("./sign.js")).runSign(command, shell);
    case "budget":
      return (await import("./budget.js")).runBudget(command, shell);
    case "survey":
      return (await import("./survey.js")).runSurvey(command, shell);
  }
}

/** A bug is an exception: it ends here, with what to report, and leaves no package behind. */
async function reportFault(error: unknown, args: readonly string[], shell: Shell): Promise<ExitCode> {
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  const { version, platform } = process;
  await shell.err.write(
    joinPrintable([
      terminalLine`rodplate ${readVersion()}: a fault of the program, not of the input; no file of this run was delivered.\n`,
      terminalLine`Please report it with the job file and these lines:\n  command: ${args.join(" ")}\n  node ${version}, ${platform}\n`,
      joinPrintable(what.split("\n").map(printable), "\n"),
      terminalLine`\n`,
    ]),
  );
  return 3;
}

/** What was to be shown and could not be is a fault outside the program, whatever was made. */
async function endOutput(code: ExitCode, { out, err }: Shell): Promise<ExitCode> {
  if (out.refusal === null || code === 3) return code;
  await err.write(terminalLine`rodplate: standard output could not be written: ${out.refusal}\n`);
  return 2;
}

/** Runs the program. Never rejects. */
export async function runProgram(args: readonly string[], shell: Shell): Promise<ExitCode> {
  try {
    return await endOutput(await runCommand(args, shell), shell);
  } catch (error) {
    return reportFault(error, args, shell);
  }
}

/** `rodplate open [JOB]`: serves the page on loopback and opens it. */
import { terminalLine } from "../diagnostics/printable.js";
import type { Command } from "./arguments.js";
import { showFindings } from "./findings.js";
import { openBrowser } from "./serve-browser.js";
import { type PageServer, startPageServer, type ToServe } from "./serve-files.js";
import { type ServedJob, serveJob } from "./serve-job.js";
import { pageFiles } from "./serve-page.js";
import type { ExitCode, Shell } from "./shell.js";

/** The same each time where it is free: what a browser keeps, it keeps by the address. */
const USUAL_PORT = 24118;

/** Runs until it is told to end; 0 then, 2 where the job or the port is at fault. */
export async function runOpen(command: Extract<Command, { kind: "open" }>, shell: Shell): Promise<ExitCode> {
  const job = command.job === null ? null : serveJob(command.job, shell.currentFolder);
  if (job !== null && !job.ok) {
    await showFindings(job.findings, false, shell);
    return 2;
  }
  const pages = pageFiles(job?.value.key ?? null);
  if (pages === null) {
    await shell.err.write(terminalLine`rodplate: the page is not built; npm run build in its folder builds it\n`);
    return 2;
  }
  const server = await startAt(command.port, { pages, job: job?.value ?? null });
  if (typeof server === "string") {
    await shell.err.write(terminalLine`rodplate: ${server}\n`);
    return 2;
  }
  await tell(server, job?.value ?? null, shell);
  if (command.opens) openBrowser(server.address, shell, process.platform);
  await endAsked();
  await server.close();
  return 0;
}

/** The server, or why there is none. Without a port of the user's the usual one, else any that is free. */
async function startAt(port: number | null, serve: Omit<ToServe, "port">): Promise<PageServer | string> {
  try {
    return await startPageServer({ ...serve, port: port ?? USUAL_PORT });
  } catch (error) {
    const { code = "" } = error as NodeJS.ErrnoException;
    if (port === null) return startPageServer({ ...serve, port: 0 });
    if (code === "EADDRINUSE") return `port ${port} is in use; name another, or leave --port away`;
    if (code === "EACCES") return `port ${port} may not be used here; name one above 1023, or leave --port away`;
    throw error;
  }
}

async function tell({ address }: PageServer, job: ServedJob | null, { out, err }: Shell): Promise<void> {
  await out.write(terminalLine`${address}\n`);
  const what = job === null ? "The page" : `${job.job} on the page`;
  await err.write(terminalLine`${what}, for this machine alone, until Ctrl-C. Nothing is sent anywhere.\n`);
}

/** Resolves when the user ends it, or the terminal goes away. */
function endAsked(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(signal, () => resolve());
  });
}

/** The page's server: built files, the job, and nothing else; on loopback alone. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { type Asked, isOfJob, JOB_PATH, METHODS, pathOf, type Refusal, refuseAsked } from "./serve-asked.js";
import {
  filesBeside,
  LARGEST_JOB,
  nameOf,
  readBeside,
  readServedJob,
  type Served,
  type ServedJob,
  saveServedJob,
} from "./serve-job.js";
import type { PageFile } from "./serve-page.js";

/** A server that runs. */
export interface PageServer {
  readonly address: string;
  close(): Promise<void>;
}

/** What it serves. */
export interface ToServe {
  readonly pages: ReadonlyMap<string, PageFile>;
  readonly job: ServedJob | null;
  /** 0: any that is free. */
  readonly port: number;
}

/** Starts it; rejects where the system refuses the port. */
export function startPageServer(serve: ToServe): Promise<PageServer> {
  const server = createServer((request, response) => {
    void answer(serve, request, response, portOf(server)).catch(() => {
      if (!response.headersSent) refuse(response, { status: 500, message: "A fault of the program." });
      response.destroy();
    });
  });
  server.maxConnections = 100;
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(serve.port, "127.0.0.1", () => {
      server.off("error", reject);
      resolve({ address: `http://127.0.0.1:${portOf(server)}/`, close: () => closed(server) });
    });
  });
}

function portOf(server: Server): number {
  return (server.address() as AddressInfo | null)?.port ?? 0;
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

/** Nothing but the page's own files runs, nothing of other places is loaded, and nobody frames it. */
const HEADERS: Readonly<Record<string, string>> = {
  "content-security-policy":
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  "x-content-type-options": "nosniff",
  "x-frame-options": "DENY",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy": "camera=(), microphone=(), geolocation=()",
  "cache-control": "no-store",
};

async function answer(
  { pages, job }: ToServe,
  request: IncomingMessage,
  response: ServerResponse,
  port: number,
): Promise<void> {
  const asked: Asked = { method: request.method ?? "", target: request.url ?? "", headers: request.headers };
  const path = pathOf(asked);
  const refusal = refuseAsked(asked, port);
  if (refusal !== null) return refuse(response, refusal);
  if (isOfJob(path)) return answerJob(job, path, request, response);
  if (asked.method === "PUT") return refuse(response, { status: 405, message: "Only the job file is written." });
  const file = pages.get(path);
  if (file === undefined) return refuse(response, { status: 404, message: "There is no such file here." });
  return send(response, file.read(), { "content-type": file.type });
}

async function answerJob(
  job: ServedJob | null,
  path: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  if (job === null)
    return refuse(response, { status: 404, message: "No job is served: rodplate open JOB serves one." });
  const beside = `${JOB_PATH}/beside`;
  if (request.method === "PUT")
    return path === JOB_PATH
      ? saveJob(job, request, response)
      : refuse(response, { status: 405, message: "Only the job file is written." });
  if (path === JOB_PATH) return sendServed(response, readServedJob(job), nameOf(job));
  if (path === beside) return sendJson(response, { name: nameOf(job), files: filesBeside(job) });
  const name = path.startsWith(`${beside}/`) ? decoded(path.slice(beside.length + 1)) : null;
  if (name === null) return refuse(response, { status: 404, message: "There is no such file here." });
  return sendServed(response, readBeside(job, name), null);
}

function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
}

/** The page says with which hash it read the job; what it writes is taken whole before anything is touched. */
async function saveJob(job: ServedJob, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const hash = /^"([0-9a-f]{64})"$/.exec(request.headers["if-match"] ?? "")?.[1];
  if (hash === undefined)
    return refuse(response, { status: 428, message: "A save says with If-Match which state of the file it is of." });
  const bytes = await bodyOf(request);
  if (bytes === null) {
    const message = `A job has at most ${LARGEST_JOB / 1024 / 1024} MB; this one is larger, and nothing was written.`;
    response.setHeader("connection", "close");
    return refuse(response, { status: 413, message });
  }
  const saved = saveServedJob(job, bytes, hash);
  if (!("bytes" in saved)) return refuse(response, saved);
  return send(response, new Uint8Array(), { etag: `"${saved.hash}"` });
}

/** null: larger than is taken. */
async function bodyOf(request: IncomingMessage): Promise<Uint8Array | null> {
  if (Number(request.headers["content-length"] ?? 0) > LARGEST_JOB) return null;
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Uint8Array>) {
    size += chunk.length;
    if (size > LARGEST_JOB) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function sendServed(response: ServerResponse, served: Served | Refusal, name: string | null): void {
  if (!("bytes" in served)) {
    refuse(response, served);
    return;
  }
  const type = { "content-type": "application/octet-stream", etag: `"${served.hash}"` };
  const named = name === null ? {} : { "x-job-name": encodeURIComponent(name) };
  send(response, served.bytes, { ...type, ...named });
}

function sendJson(response: ServerResponse, value: unknown): void {
  send(response, new TextEncoder().encode(JSON.stringify(value)), {
    "content-type": "application/json; charset=utf-8",
  });
}

function refuse(response: ServerResponse, { status, message }: Refusal): void {
  const allow = status === 405 ? { allow: METHODS.join(", ") } : {};
  response.statusCode = status;
  send(response, new TextEncoder().encode(`${message}\n`), { "content-type": "text/plain; charset=utf-8", ...allow });
}

/** A request for the headers alone gets no body: node:http leaves it out. */
function send(response: ServerResponse, bytes: Uint8Array, headers: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries({ ...HEADERS, ...headers })) response.setHeader(name, value);
  response.setHeader("content-length", bytes.length);
  response.end(bytes);
}

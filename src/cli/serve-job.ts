/**
 * The job that the page works on, and of its folder the files that it names: those that the command line would open, and of
 * these only what lies in the folder itself, by its real path. There is no listing.
 */
import { realpathSync } from "node:fs";
import { basename, dirname, isAbsolute, relative, resolve } from "node:path";
import type { Outcome } from "../diagnostics/finding.js";
import type { RequestedFile } from "../job/index.js";
import { readJobFile } from "../job/index.js";
import { decodeText } from "../readers/text.js";
import { readBytes } from "./file-system.js";
import { foreignPathOffence } from "./foreign-path.js";
import type { Refusal } from "./serve-asked.js";
import { startSha256 } from "./sha256.js";
import { replaceFile } from "./whole-file.js";

/** A job that is served. */
export interface ServedJob {
  /** As the user named it. */
  readonly job: string;
  readonly path: string;
  /** Tells jobs apart, by their real paths, and says nothing of them. */
  readonly key: string;
}

/** Bytes that are handed out, with their hash. */
export interface Served {
  readonly bytes: Uint8Array;
  readonly hash: string;
}

/** Largest job that is taken, in bytes: as large as is read. */
export const LARGEST_JOB = 16 * 1024 * 1024;

/** The job at a path, which must be there and be a text. */
export function serveJob(job: string, folder: string): Outcome<ServedJob> {
  const path = resolve(folder, job);
  const read = readBytes(path, job);
  if (!read.ok) return read;
  const text = decodeText(read.value, job, "allowed is a job file (YAML)");
  if (!text.ok) return { ok: false, findings: [text.finding] };
  return { ok: true, value: { job, path, key: keyOf(path) }, findings: [] };
}

function sha256Of(bytes: Uint8Array): string {
  const hasher = startSha256();
  hasher.update(bytes);
  return hasher.hex();
}

function keyOf(path: string): string {
  return sha256Of(new TextEncoder().encode(realpathSync(path)));
}

/** Name of the job file itself. */
export function nameOf({ path }: ServedJob): string {
  return basename(path);
}

/** The job as it stands on the disk now. */
export function readServedJob(served: ServedJob): Served | Refusal {
  return readAt(served.path, nameOf(served));
}

function readAt(path: string, name: string): Served | Refusal {
  const read = readBytes(path, name);
  if (read.ok) return { bytes: read.value, hash: sha256Of(read.value) };
  const [fault] = read.findings;
  const message = `${name}: ${fault?.message ?? "cannot be read"}`;
  return { status: fault?.code === "missing-file" ? 404 : 403, message };
}

/** A file that the job on the disk names; `why` it cannot be had, null where it can. */
export interface Beside {
  readonly name: string;
  readonly why: string | null;
}

/** All of them, each once. */
export function filesBeside(served: ServedJob): readonly Beside[] {
  return namesBeside(served).map((name) => {
    const place = placeBeside(served, name);
    return { name, why: typeof place === "string" ? null : place.message };
  });
}

function namesBeside(served: ServedJob): readonly string[] {
  return [...new Set(requestsOf(served).map(({ name }) => name))];
}

function requestsOf(served: ServedJob): readonly RequestedFile[] {
  const read = readServedJob(served);
  if (!("bytes" in read)) return [];
  return readJobFile(read.bytes, nameOf(served)).requests.filter(({ relativeTo }) => relativeTo === "job");
}

/** A file that the job names, by that name alone. */
export function readBeside(served: ServedJob, name: string): Served | Refusal {
  if (!namesBeside(served).includes(name)) return { status: 404, message: "The job on the disk names no such file." };
  const place = placeBeside(served, name);
  return typeof place === "string" ? readAt(place, name) : place;
}

/** Its real path, or why it is not opened. */
function placeBeside({ path: job }: ServedJob, name: string): string | Refusal {
  const path = resolve(dirname(job), name);
  const offence = foreignPathOffence(name, path);
  if (offence !== null) return { status: 403, message: `"${name}" ${offence}` };
  const place = realPathIn(dirname(job), path);
  if (place !== null) return place;
  const message = `${name} is not there, or lies outside of the job's folder, of which alone the page reads; copy it beside the job`;
  return { status: 404, message };
}

/** Where a path really leads; null where that is not within the folder, or nothing is there. */
function realPathIn(folder: string, path: string): string | null {
  try {
    const [inside, real] = [realpathSync(folder), realpathSync(path)];
    const way = relative(inside, real);
    return way === "" || way === ".." || /^\.\.[\\/]/.test(way) || isAbsolute(way) ? null : real;
  } catch {
    return null;
  }
}

/** Writes the job whole, where it still is what it was when it had this hash. */
export function saveServedJob(served: ServedJob, bytes: Uint8Array, hash: string): Served | Refusal {
  const name = nameOf(served);
  const text = decodeText(bytes, name, "a job file is text");
  if (!text.ok) return { status: 422, message: `${name}: ${text.finding.message}` };
  const now = readServedJob(served);
  if (!("bytes" in now)) return { ...now, status: 410 };
  if (now.hash !== hash) return changed(name);
  const path = realpathSync(served.path);
  const fault = replaceFile({ name, path, bytes, code: "job-file" }, now.bytes);
  if (fault === null) return { bytes, hash: sha256Of(bytes) };
  const after = readServedJob(served);
  if ("bytes" in after && after.hash !== hash) return changed(name);
  return { status: 507, message: `${name} ${fault.message}` };
}

function changed(name: string): Refusal {
  return { status: 412, message: `${name} was changed on the disk since it was opened, and was left as it is.` };
}

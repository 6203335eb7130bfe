/** Finds the files that a summary.json lists without holding it in memory: it grows with the job. */
import { splitSummary } from "../compare/split-summary.js";
import { JsonScan } from "../readers/json-scan.js";
import type { ListedFile } from "./listed-file.js";

/** Bytes of an entry that are kept; a longer one is none of ours. */
const LARGEST_ENTRY = 65_536;

/** What stands in brackets in lists under the key `files`, parsed one by one; null when brackets or texts are not closed. */
function readEntries(chunks: Iterable<Uint8Array>): readonly unknown[] | null {
  const scan = new JsonScan("files");
  const entries: unknown[] = [];
  let [entry, around]: [number[] | null, number] = [null, 0];
  for (const chunk of chunks) {
    for (let at = 0; at < chunk.length; at += 1) {
      if (entry === null) at = scan.skipText(chunk, at);
      const byte = chunk[at];
      if (byte === undefined) break;
      const before = scan.depth;
      scan.take(byte);
      if (entry === null && scan.depth > before && scan.isListUnderKey(before)) [entry, around] = [[], before];
      if (entry === null) continue;
      if (entry.length < LARGEST_ENTRY) entry.push(byte);
      if (scan.depth > around) continue;
      entries.push(JSON.parse(Buffer.from(entry).toString("utf8")));
      entry = null;
    }
  }
  return scan.depth === 0 && scan.isOutsideText ? entries : null;
}

/** The files listed in a summary, or null when these bytes are not a summary of a package. */
export function scanListedFiles(chunks: Iterable<Uint8Array>): readonly ListedFile[] | null {
  try {
    const entries = readEntries(chunks);
    const listed = entries?.filter(isListedFile) ?? [];
    return listed.length > 0 && listed.length === entries?.length ? listed : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

function isListedFile(value: unknown): value is ListedFile {
  if (typeof value !== "object" || value === null) return false;
  const { kind, path, bytes, sha256 } = value as Partial<Record<string, unknown>>;
  if (kind !== undefined && typeof kind !== "string") return false;
  return typeof path === "string" && typeof bytes === "number" && typeof sha256 === "string";
}

/** Which job and revision a package is of; "" where its summary does not tell. */
export interface PackageJob {
  readonly number: string;
  readonly revision: string;
}

/** The job that a summary names; its bases are passed over. */
export function scanPackageJob(chunks: Iterable<Uint8Array>): PackageJob {
  let rest = "";
  for (const piece of splitSummary(chunks)) if (piece.kind === "rest") rest = piece.text;
  try {
    const { job }: { readonly job?: unknown } = JSON.parse(rest);
    return { number: textOf(job, "number"), revision: textOf(job, "revision") };
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return { number: "", revision: "" };
    throw error;
  }
}

function textOf(holder: unknown, key: string): string {
  if (typeof holder !== "object" || holder === null) return "";
  const value: unknown = Object.hasOwn(holder, key) ? Reflect.get(holder, key) : undefined;
  return typeof value === "string" ? value : "";
}

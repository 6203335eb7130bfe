/**
 * A job as the fragment of an address, which no browser sends to a server: `#job=` and a version, a check sum, and the
 * deflated job in base64url (RFC 4648, 5).
 */
import { sha256 } from "@noble/hashes/sha2.js";
import { deflateSync, Inflate } from "fflate";

/** The job of a link: its text, and the files beside it that it names, which are not in the link. */
export interface LinkedJob {
  readonly name: string;
  readonly text: string;
  readonly lacks: readonly string[];
}

const START = "#job=1.";

/** Longest fragment that is made, in signs: longer ones are cut by programs that pass them on. */
export const LONGEST_LINK = 30_000;

/** Longest that is read, in signs; and the most that one may hold, in bytes. */
const [LONGEST_READ, LARGEST] = [2_000_000, 16 * 1024 * 1024];

/** True for a fragment that says of itself that it holds a job. */
export function isLink(fragment: string): boolean {
  return fragment.startsWith("#job=");
}

/** The fragment of a job; it may be too long to be passed on. */
export function linkOf(job: LinkedJob): string {
  const bytes = deflateSync(new TextEncoder().encode(JSON.stringify([job.name, job.text, job.lacks])), { level: 9 });
  return `${START}${sumOf(bytes)}.${toBase64(bytes)}`;
}

/** The job in a fragment; or, in a sentence, why there is none. */
export function readLink(fragment: string): LinkedJob | string {
  if (!fragment.startsWith(START)) return "This link is of another version of rodplate, or was cut short.";
  if (fragment.length > LONGEST_READ)
    return `This link has ${fragment.length} characters; at most ${LONGEST_READ} are read.`;
  const [sum = "", text = ""] = fragment.slice(START.length).split(".");
  const bytes = fromBase64(text);
  if (bytes === null || sumOf(bytes) !== sum)
    return "This link is broken: a part of it was lost or changed on its way.";
  const inflated = inflate(bytes);
  if (inflated === null) return "This link is broken, or holds more than a job may have (16 MB).";
  return jobOf(inflated) ?? "This link holds no job.";
}

/** The first 36 bits of SHA-256: against a link that was cut or mistyped, not against forgery. */
function sumOf(bytes: Uint8Array): string {
  return toBase64(sha256(bytes)).slice(0, 6);
}

/** Stops where more comes out than may. */
function inflate(bytes: Uint8Array): Uint8Array | null {
  const chunks: Uint8Array[] = [];
  let size = 0;
  const stream = new Inflate((chunk) => {
    size += chunk.length;
    if (size > LARGEST) throw new Error("too large");
    chunks.push(chunk);
  });
  try {
    for (let at = 0; at < bytes.length; at += 4096)
      stream.push(bytes.subarray(at, at + 4096), at + 4096 >= bytes.length);
  } catch {
    return null;
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function jobOf(bytes: Uint8Array): LinkedJob | null {
  try {
    const value: unknown = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    if (!Array.isArray(value)) return null;
    const [name, text, lacks] = value as readonly unknown[];
    if (typeof name !== "string" || typeof text !== "string" || !Array.isArray(lacks)) return null;
    return { name, text, lacks: lacks.filter((each): each is string => typeof each === "string") };
  } catch {
    return null;
  }
}

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

function toBase64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
    const bits = (a << 16) | (b << 8) | c;
    const count = Math.min(3, bytes.length - at) + 1;
    for (let each = 0; each < count; each += 1) text += LETTERS[(bits >> (18 - 6 * each)) & 63];
  }
  return text;
}

/** null where a sign is none of the alphabet, or the length is impossible. */
function fromBase64(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let [bits, held, at] = [0, 0, 0];
  for (const letter of text) {
    bits = ((bits << 6) | LETTERS.indexOf(letter)) & 0xffffff;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at] = (bits >> held) & 255;
    at += 1;
  }
  return bytes;
}
